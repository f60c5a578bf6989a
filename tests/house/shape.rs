//! The shape of the house within its floors: screens keep to themselves, no files go round in a circle,
//! and what is said to people is said in one place.

use crate::floors::{File, code_of, files, tokens};
use std::collections::{BTreeMap, BTreeSet};

/// Screens and stages: what two of them share stands beside them, not in one of them.
const SCREENS: [&str; 9] =
    ["batch", "batches", "bench", "bottle", "gear", "now", "open", "pitch", "watch"];

/// Names that are no words for people: keys of a keyboard, names of the browser's own.
const NO_WORDS: [&str; 10] = [
    "ArrowUp",
    "ArrowRight",
    "ArrowDown",
    "ArrowLeft",
    "PageUp",
    "PageDown",
    "Home",
    "End",
    "wakeLock",
    "userSpaceOnUse",
];

/// The module that a file is, from its floor on.
fn module(file: &File) -> Vec<String> {
    let place = file.place.trim_end_matches(".rs").trim_end_matches("/mod");
    place.split('/').map(str::to_owned).collect()
}

/// Every module that a file names within the crate, in full.
fn named(file: &File) -> BTreeSet<Vec<String>> {
    let tokens = tokens(&code_of(&file.text));
    let mut found = BTreeSet::new();
    let mut at = 0;
    while at < tokens.len() {
        let starts = matches!(tokens[at].as_str(), "crate" | "super" | "self");
        let fresh = at == 0 || tokens[at - 1] != "::";
        if starts && fresh && tokens.get(at + 1).is_some_and(|next| next == "::") {
            let mut path = module(file);
            match tokens[at].as_str() {
                "crate" => path.clear(),
                "super" => drop(path.pop()),
                _ => {}
            }
            at = follow(&tokens, at + 2, path, &mut found);
        } else {
            at += 1;
        }
    }
    found
}

/// Goes on along a path, into each of its braces; gives where it ends.
fn follow(
    tokens: &[String],
    mut at: usize,
    mut path: Vec<String>,
    found: &mut BTreeSet<Vec<String>>,
) -> usize {
    while let Some(token) = tokens.get(at) {
        if token == "{" {
            at += 1;
            while tokens.get(at).is_some_and(|token| token != "}") {
                at = follow(tokens, at, path.clone(), found);
                if tokens.get(at).is_some_and(|token| token == ",") {
                    at += 1;
                }
            }
            return at + 1;
        }
        match token.as_str() {
            "super" => drop(path.pop()),
            "self" => {}
            word if word.chars().all(|c| c.is_alphanumeric() || c == '_') => {
                path.push(word.to_owned());
            }
            _ => break,
        }
        if tokens.get(at + 1).is_none_or(|next| next != "::") {
            at += 1;
            break;
        }
        at += 2;
    }
    found.insert(path);
    at
}

#[test]
fn paths_are_followed_into_braces() {
    let file = File {
        place: "app/pitch/cool.rs".to_owned(),
        text: "use super::{day::Day, known};\nuse crate::app::part::{Part, self};\nsuper::super::fold::fold()"
            .to_owned(),
    };
    let named: Vec<String> = named(&file).into_iter().map(|path| path.join("/")).collect();
    let want =
        ["app/fold/fold", "app/part", "app/part/Part", "app/pitch/day/Day", "app/pitch/known"];
    assert_eq!(named, want);
}

#[test]
fn no_screen_imports_another() {
    let mut wrong = vec![];
    for file in files().iter().filter(|file| file.floor() == Some("app")) {
        let own = module(file);
        let Some(screen) = own.get(1).filter(|unit| SCREENS.contains(&unit.as_str())) else {
            continue;
        };
        for path in named(file) {
            let other = path.get(1).filter(|_| path[0] == "app");
            if other.is_some_and(|other| other != screen && SCREENS.contains(&other.as_str())) {
                wrong.push(format!("{} names {}", file.place, path.join("::")));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn no_files_go_round_in_a_circle() {
    // In each folder: which of its files and folders names which. A folder's own `mod.rs` stands for it.
    let all = files();
    let units: BTreeSet<Vec<String>> = all.iter().map(module).collect();
    let mut names: BTreeMap<Vec<String>, BTreeMap<String, BTreeSet<String>>> = BTreeMap::new();
    for file in all.iter().filter(|file| file.floor().is_some()) {
        let own = module(file);
        for path in named(file) {
            let together = own.iter().zip(&path).take_while(|(a, b)| a == b).count();
            let (Some(mine), Some(other)) = (own.get(together), path.get(together)) else {
                continue;
            };
            let there = path[..=together].to_vec();
            if together == 0 || !units.iter().any(|unit| unit.starts_with(&there)) {
                continue;
            }
            let folder = names.entry(own[..together].to_vec()).or_default();
            folder.entry(mine.clone()).or_default().insert(other.clone());
        }
    }
    let mut circles = vec![];
    for (folder, edges) in &names {
        for start in edges.keys() {
            let (mut seen, mut next) = (BTreeSet::new(), vec![start]);
            while let Some(unit) = next.pop() {
                for other in edges.get(unit).into_iter().flatten() {
                    if other == start {
                        circles.push(format!("{}: {start} by way of {unit}", folder.join("/")));
                    }
                    if seen.insert(other) {
                        next.push(other);
                    }
                }
            }
        }
    }
    assert!(names.len() > 10, "only {} folders were looked at", names.len());
    assert!(circles.is_empty(), "{}", circles.join("\n"));
}

/// The texts in quotes of a file's code, its tests and its comments left out.
fn texts(file: &File) -> Vec<String> {
    let code = file.text.split("#[cfg(test)]").next().unwrap_or_default();
    code.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(|line| line.split('"').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>())
        .collect()
}

/// Three letters that begin a word, the first of them large: how a text for people begins, and nothing else
/// here.
fn is_said(text: &str) -> bool {
    let letters: Vec<char> = std::iter::once(' ').chain(text.chars()).collect();
    !NO_WORDS.iter().any(|name| text.starts_with(name))
        && letters.windows(4).any(|four| {
            !four[0].is_alphabetic()
                && four[1].is_uppercase()
                && four[2].is_lowercase()
                && four[3].is_lowercase()
        })
}

#[test]
fn what_is_said_to_people_is_said_in_words() {
    assert!(is_said("Save the reading") && is_said("Now") && is_said("\u{201C}Enough\u{201D}"));
    assert!(!is_said("bench/gravity/reading") && !is_said(" viewBox="));
    let mut said = vec![];
    let mut seen = 0;
    for file in files().iter().filter(|file| matches!(file.floor(), Some("app" | "page"))) {
        for text in texts(file) {
            seen += 1;
            if is_said(&text) {
                said.push(format!("{}: {text}", file.place));
            }
        }
    }
    assert!(seen > 300, "only {seen} texts were seen");
    assert!(said.is_empty(), "{}", said.join("\n"));
}
