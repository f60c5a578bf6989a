//! What the lower floors offer is shown in examples that run with the tests: a true sum, and what is
//! refused.

use crate::floors::{File, files};

/// Floors whose functions answer a brewer's question, and how many of their public functions need no
/// example of their own: a getter, a row of a table, what a neighbour's example shows. Lower it freely.
const WITHOUT: [(&str, usize); 3] = [("quantity", 19), ("science", 11), ("advice", 28)];
/// Its errors cannot be brought about from outside: the jar is held within limits.
const NEVER_FAILS: &str = "advice/pitch/satellite.rs";

/// A public function: its name, and whether its docs hold an example.
fn functions(text: &str) -> Vec<(String, bool)> {
    let (mut found, mut shown) = (Vec::new(), false);
    for line in before_tests(text).lines().map(str::trim) {
        let public = line.strip_prefix("pub ").map(|rest| rest.trim_start_matches("const "));
        if let Some(rest) = public.and_then(|rest| rest.strip_prefix("fn ")) {
            let name = rest.split(['(', '<']).next().unwrap_or_default();
            found.push((name.to_owned(), shown));
        }
        let of_the_docs = line.starts_with("///") || line.starts_with("#[");
        shown = of_the_docs && (shown || line.starts_with("/// ```"));
    }
    found
}

fn before_tests(text: &str) -> &str {
    text.split("#[cfg(test)]").next().unwrap_or_default()
}

fn of_floor<'a>(files: &'a [File], floor: &str) -> impl Iterator<Item = &'a File> {
    files.iter().filter(move |file| file.floor() == Some(floor))
}

#[test]
fn public_functions_are_shown_in_examples() {
    let files = files();
    for (floor, most) in WITHOUT {
        let all = of_floor(&files, floor)
            .flat_map(|file| functions(&file.text).into_iter().map(|found| (&file.place, found)));
        let (shown, bare): (Vec<_>, Vec<_>) = all.partition(|(_, (_, shown))| *shown);
        let bare: Vec<String> =
            bare.iter().map(|(place, (name, _))| format!("{place}: {name}")).collect();
        assert!(shown.len() > most, "{floor}: only {} functions are shown", shown.len());
        assert!(bare.len() <= most, "{floor}, {} bare:\n{}", bare.len(), bare.join("\n"));
    }
}

#[test]
fn what_can_fail_is_seen_to_fail() {
    let (files, mut seen, mut silent) = (files(), 0, Vec::new());
    for file in WITHOUT.iter().flat_map(|(floor, _)| of_floor(&files, floor)) {
        let docs: Vec<&str> = before_tests(&file.text)
            .lines()
            .filter_map(|line| line.trim().strip_prefix("///"))
            .collect();
        if !docs.iter().any(|line| line.trim() == "# Errors") || file.place == NEVER_FAILS {
            continue;
        }
        seen += 1;
        let refused = ["Err(", "is_err()", "unwrap_err()"];
        if !docs.iter().any(|line| refused.iter().any(|word| line.contains(word))) {
            silent.push(file.place.as_str());
        }
    }
    assert!(seen > 20, "only {seen} files that can fail were seen");
    assert!(silent.is_empty(), "nothing is refused in {}", silent.join(", "));
}

#[test]
fn functions_and_their_examples_are_told_apart() {
    let text = "/// Shown.\n/// ```\n/// f();\n/// ```\n#[must_use]\npub const fn f<T>() {}\n\
                /// Bare.\npub fn g(x: f64) {}\n/// ```\n/// ```\nfn own() {}\npub(super) fn h() {}\n\
                pub struct S;\n#[cfg(test)]\nmod tests {\n    pub fn t() {}\n}\n";
    let found = functions(text);
    assert_eq!(found, [("f".to_owned(), true), ("g".to_owned(), false)]);
}
