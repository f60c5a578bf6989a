//! The arrows between the floors, held: a lower floor never names a higher one, nothing below the page
//! touches the browser or the clock, and no file grows past what can be read at a sitting.

use std::path::{Path, PathBuf};

/// Each floor and the floors it may name beside itself.
const MAY_NAME: [(&str, &[&str]); 10] = [
    ("quantity", &[]),
    ("science", &["quantity"]),
    ("advice", &["quantity", "science"]),
    ("batch", &["quantity", "science", "advice"]),
    ("chart", &["quantity"]),
    ("store", &["quantity", "science", "advice", "batch"]),
    ("exchange", &["quantity", "science", "advice", "batch"]),
    ("words", &["quantity", "science", "advice", "batch", "chart", "store", "exchange"]),
    ("app", &["quantity", "science", "advice", "batch", "chart", "store", "exchange", "words"]),
    ("page", &["quantity", "batch", "chart", "store", "app"]),
];
/// Time, storage and the screen come in as arguments below the page.
const OF_THE_BROWSER: [&str; 9] = [
    "leptos",
    "web_sys",
    "js_sys",
    "wasm_bindgen",
    "wasm_bindgen_futures",
    "gloo_storage",
    "SystemTime",
    "Instant",
    "console_error_panic_hook",
];
/// The one file below the page that keeps things in the browser.
const BROWSER_STORE: &str = "store/browser.rs";
const LONGEST: usize = 320;

/// One file of the source: its place under `src` with forward strokes, and its text.
pub struct File {
    pub place: String,
    pub text: String,
}

impl File {
    /// The floor it belongs to, `None` for the files that stand above them all.
    pub fn floor(&self) -> Option<&str> {
        let first = self.place.split('/').next().expect("a place");
        let first = first.strip_suffix(".rs").unwrap_or(first);
        MAY_NAME.iter().map(|(floor, _)| *floor).find(|floor| *floor == first)
    }

    /// How many `super` reach the crate's own root: one for each folder, one more for a file that is
    /// not the folder's own.
    fn supers_to_root(&self) -> usize {
        self.place.matches('/').count() + usize::from(!self.place.ends_with("/mod.rs"))
    }
}

pub fn files() -> Vec<File> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    walk(&root, &root, &mut files);
    assert!(files.len() > 10, "only {} files were seen", files.len());
    files
}

fn walk(root: &Path, folder: &Path, files: &mut Vec<File>) {
    let entries = std::fs::read_dir(folder).expect("a folder of the source");
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.expect("an entry").path()).collect();
    paths.sort();
    for path in paths {
        if path.is_dir() {
            walk(root, &path, files);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            let place = path.strip_prefix(root).expect("under the root").to_string_lossy();
            let text = std::fs::read_to_string(&path).expect("text");
            files.push(File { place: place.replace('\\', "/"), text });
        }
    }
}

/// The code without comments and without what stands in quotes, where a name names nothing. A stroke
/// pair within quotes cuts a line short, which can hide no path: none is spelt in a string.
pub fn code_of(text: &str) -> String {
    text.lines()
        .map(|line| line.split_once("//").map_or(line, |(code, _)| code))
        .map(|line| line.split('"').step_by(2).collect::<Vec<_>>().join("\"\""))
        .collect::<Vec<_>>()
        .join("\n")
}

/// The words of a text, and `::` between them where it stood; spaces do not part a path.
pub fn tokens(code: &str) -> Vec<String> {
    let mut tokens: Vec<String> = Vec::new();
    let mut word = String::new();
    let mut characters = code.chars().peekable();
    let end_word = |word: &mut String, tokens: &mut Vec<String>| {
        if !word.is_empty() {
            tokens.push(std::mem::take(word));
        }
    };
    while let Some(c) = characters.next() {
        if c.is_alphanumeric() || c == '_' {
            word.push(c);
            continue;
        }
        end_word(&mut word, &mut tokens);
        if c == ':' && characters.peek() == Some(&':') {
            characters.next();
            tokens.push("::".to_owned());
        } else if !c.is_whitespace() {
            tokens.push(c.to_string());
        }
    }
    end_word(&mut word, &mut tokens);
    tokens
}

/// The modules of the crate's root that a text names: after `crate::`, `fermentside::` or as many
/// `super::` as reach the root, alone or in braces.
fn named_from_root(code: &str, supers_to_root: usize) -> Vec<String> {
    let tokens = tokens(code);
    let is = |at: usize, text: &str| tokens.get(at).is_some_and(|token| token == text);
    let mut named = Vec::new();
    for start in 0..tokens.len() {
        let mut at = start;
        if is(at, "crate") || is(at, "fermentside") {
            at += 1;
        } else if is(at, "super") && !(at > 0 && is(at - 1, "::")) {
            let mut supers = 1;
            at += 1;
            while is(at, "::") && is(at + 1, "super") {
                supers += 1;
                at += 2;
            }
            if supers < supers_to_root {
                continue;
            }
        } else {
            continue;
        }
        if is(at, "as") {
            named.push("self".to_owned());
        }
        if !is(at, "::") {
            continue;
        }
        at += 1;
        if !is(at, "{") {
            named.extend(tokens.get(at).cloned());
            continue;
        }
        // In braces, a name after the opening or after a comma of the outer list.
        let mut depth = 0;
        for (place, token) in tokens.iter().enumerate().skip(at) {
            match token.as_str() {
                "{" => depth += 1,
                "}" => depth -= 1,
                _ if depth == 1 && (is(place - 1, "{") || is(place - 1, ",")) => {
                    named.push(token.clone());
                }
                _ => {}
            }
            if depth == 0 {
                break;
            }
        }
    }
    named
}

#[test]
fn a_lower_floor_never_names_a_higher_one() {
    let (mut wrong, mut seen) = (Vec::new(), 0);
    for file in files() {
        let Some(floor) = file.floor() else { continue };
        let (_, may) = MAY_NAME.iter().find(|(name, _)| *name == floor).expect("a floor");
        let named = named_from_root(&code_of(&file.text), file.supers_to_root());
        for name in named {
            seen += 1;
            let is_floor = MAY_NAME.iter().any(|(floor, _)| *floor == name);
            if is_floor && name != floor && !may.contains(&name.as_str()) {
                wrong.push(format!("{} names {name}", file.place));
            }
            // A glob, or another name for the root, would bring every floor with it.
            if name == "*" || name == "self" {
                wrong.push(format!("{} takes the root itself", file.place));
            }
        }
    }
    assert!(seen > 10, "only {seen} paths from the root were seen");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn nothing_below_the_page_touches_the_browser_or_the_clock() {
    let mut wrong = Vec::new();
    for file in files() {
        let below = file.floor().is_some_and(|floor| floor != "page");
        if !below || file.place == BROWSER_STORE {
            continue;
        }
        for token in tokens(&code_of(&file.text)) {
            if OF_THE_BROWSER.contains(&token.as_str()) {
                wrong.push(format!("{} names {token}", file.place));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn no_file_is_too_long() {
    let long: Vec<String> = files()
        .iter()
        .map(|file| (file.text.lines().count(), &file.place))
        .filter(|(lines, _)| *lines > LONGEST)
        .map(|(lines, place)| format!("{place} has {lines} lines"))
        .collect();
    assert!(long.is_empty(), "{}", long.join("\n"));
}

#[test]
fn every_floor_there_is_has_its_place_in_the_order() {
    let mut folders: Vec<String> = files()
        .iter()
        .filter_map(|file| Some(file.place.split_once('/')?.0.to_owned()))
        .filter(|folder| folder != "bin")
        .collect();
    folders.dedup();
    assert!(folders.len() > 3, "{folders:?}");
    for folder in folders {
        assert!(MAY_NAME.iter().any(|(floor, _)| *floor == folder), "{folder} has no place");
    }
}

#[test]
fn the_ways_to_name_a_floor_are_seen() {
    for (code, supers, named) in [
        ("use crate::page::shell;", 2, vec!["page"]),
        ("use crate :: {quantity::{Celsius, page}, store};", 2, vec!["quantity", "store"]),
        ("use super::super::page;", 2, vec!["page"]),
        ("let x = super::super::super::page::f();", 2, vec!["page"]),
        ("use super::page;", 2, vec![]),
        ("use super::page;", 1, vec!["page"]),
        ("use super::{page, chart as c};", 1, vec!["page", "chart"]),
        ("pub(in crate::page) fn f() {}", 2, vec!["page"]),
        ("use crate::*;", 1, vec!["*"]),
        ("use crate as root;", 1, vec!["self"]),
        ("use crate::{self as root};", 1, vec!["self"]),
        ("use fermentside::page;", 1, vec!["page"]),
    ] {
        assert_eq!(named_from_root(&code_of(code), supers), named, "{code}");
    }
    let quiet = "// crate::page\nlet x = \"crate::page\"; /// see crate::store";
    assert_eq!(named_from_root(&code_of(quiet), 1), Vec::<String>::new());
    assert!(tokens("std::time::Instant::now()").contains(&"Instant".to_owned()));
}
