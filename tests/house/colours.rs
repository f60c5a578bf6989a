//! The colours of the style sheet: every text stands at least 7:1 on every ground it is put on.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

type Tokens = BTreeMap<String, [f64; 3]>;

/// The tokens that are colours, of the block that begins with `selector`.
fn tokens(sheet: &str, selector: &str) -> Tokens {
    let block = sheet.split(selector).nth(1).and_then(|rest| rest.split('}').next());
    let lines = block.expect("the block is there").lines();
    let colour = |line: &str| {
        let (name, value) = line.trim().strip_prefix("--")?.split_once(": #")?;
        let part = |at: usize| u8::from_str_radix(value.get(at..at + 2)?, 16).ok().map(f64::from);
        Some((name.to_owned(), [part(0)?, part(2)?, part(4)?]))
    };
    lines.filter_map(colour).collect()
}

/// Relative luminance, WCAG 2.2.
fn luminance(colour: [f64; 3]) -> f64 {
    let [r, g, b] = colour.map(|part| {
        let share = part / 255.0;
        if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

fn contrast(a: [f64; 3], b: [f64; 3]) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// Each text, the grounds it is put on, and how far it stands out at the least.
const PAIRS: [(&[&str], &[&str], f64); 6] = [
    (&["ink", "quiet", "accent"], &["paper", "paper-2", "paper-3"], 7.0),
    (&["go", "wait", "stop", "cant"], &["paper", "paper-2"], 7.0),
    (&["on-accent"], &["accent"], 7.0),
    (&["paper"], &["ink"], 7.0),
    (
        &["plate-ink", "plate-quiet", "plate-go", "plate-wait", "plate-stop", "plate-cant"],
        &["plate"],
        7.0,
    ),
    // The frame of a control, which is no text.
    (&["edge"], &["paper", "paper-2"], 3.0),
];

#[test]
fn every_text_is_seven_to_one() {
    let sheet = Path::new(env!("CARGO_MANIFEST_DIR")).join("style/tokens.css");
    let sheet = fs::read_to_string(sheet).expect("the tokens are there");
    let day = tokens(&sheet, ":root {");
    let night: Tokens =
        day.clone().into_iter().chain(tokens(&sheet, ":root[data-theme=\"night\"] {")).collect();
    let by_phone = tokens(&sheet, ":root:not([data-theme=\"day\"]) {");
    assert!(by_phone.iter().all(|(name, colour)| night.get(name) == Some(colour)));
    let mut faint = vec![];
    for (time, tokens) in [("day", day), ("night", night)] {
        for (texts, grounds, least) in PAIRS {
            for (text, ground) in texts.iter().flat_map(|t| grounds.iter().map(move |g| (t, g))) {
                let found = contrast(tokens[*text], tokens[*ground]);
                if found < least {
                    faint.push(format!("{time}: {text} on {ground} is {found:.2}:1"));
                }
            }
        }
    }
    assert_eq!(faint, Vec::<String>::new());
}
