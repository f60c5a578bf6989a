//! Every reader of outside data, on texts that nobody chose: sound ones with parts cut out, doubled, swapped
//! and written over. None may stop the page, run on, or take what it would not write again.
//!
//! `make fuzz` tries ten million; `cargo test` some thousands, others when `FUZZ_SEED` says so.

use crate::chance::Chance;
use crate::copies::{copy, thing};
use fermentside::batch::{Entry, Id, Journal, Kind};
use fermentside::exchange::bring::compare;
use fermentside::exchange::copy::{read as read_copy, write as write_copy};
use fermentside::exchange::table::{read as read_table, write as write_table};
use fermentside::json::read_texts;
use fermentside::quantity::{
    Bounds, GravityUnit, Measured, Moment, TemperatureUnit, VolumeUnit, Zone, read, read_gravity,
};
use fermentside::store::Revision;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

impl Chance {
    fn below(&mut self, end: usize) -> usize {
        (self.number() % end.max(1) as u64) as usize
    }
}

/// What does harm somewhere.
const HOSTILE: [&str; 40] = [
    "",
    "NaN",
    "1e999",
    "-0",
    "1e-400",
    "99999999999999999999",
    "null",
    "true",
    "[]",
    "{}",
    "[[[[",
    "\"",
    "\\",
    "\\u0000",
    "\\ud800",
    "\u{0}",
    "\u{202E}",
    "\u{2067}",
    "\u{FEFF}",
    "٠٫٥",
    "１．０５０",
    "½",
    "9999-12-31T23:59-12:00",
    "0000-01-01T00:00+23:59",
    "2026-02-30T00:00+01:00",
    "=1+1",
    "'=",
    ";;;;",
    ",",
    "\r",
    "\n\n",
    "\t",
    "<script>",
    "../..",
    "1,050",
    "1.050.1",
    "-",
    "settings",
    "fermentside 4294967295 0 00000000\n",
    "\u{1F37A}",
];

fn changed(chance: &mut Chance, text: &str) -> String {
    let mut letters: Vec<char> = text.chars().collect();
    for _ in 0..=chance.below(4) {
        let at = chance.below(letters.len() + 1);
        let to = (at + chance.below(12)).min(letters.len());
        match chance.below(6) {
            0 => drop(letters.drain(at..to)),
            1 => {
                let again = letters[at..to].to_vec();
                letters.splice(at..at, again);
            }
            2 => letters.truncate(at),
            3 => {
                let other = HOSTILE[chance.below(HOSTILE.len())].chars();
                drop(letters.splice(at..to, other));
            }
            4 if at < letters.len() => {
                letters[at] = char::from_u32(chance.below(0x300) as u32).unwrap_or('?');
            }
            _ => {
                let digit = char::from_digit(chance.below(10) as u32, 10).unwrap_or('0');
                letters.splice(at..at, [digit]);
            }
        }
    }
    letters.into_iter().collect()
}

/// Sound texts to begin with: of each reader some.
struct Corpus {
    bodies: Vec<(Kind, String)>,
    stored: Vec<String>,
    copies: Vec<String>,
    tables: Vec<String>,
    typed: Vec<String>,
}

impl Corpus {
    fn new() -> Self {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released/1");
        let texts = |folder: &Path, ending: &str| -> Vec<(String, String)> {
            let mut all: Vec<_> = fs::read_dir(folder)
                .expect("a folder")
                .map(|file| file.expect("a file").path())
                .filter(|path| path.extension().is_some_and(|e| e == ending))
                .map(|path| {
                    let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
                    (name, fs::read_to_string(&path).expect("text"))
                })
                .collect();
            all.sort();
            all
        };
        let bodies: Vec<_> = texts(&root.join("bodies"), "json")
            .into_iter()
            .map(|(name, text)| {
                let kind = name.split('-').next().and_then(Kind::named).expect("a kind");
                (kind, text.trim_end().to_owned())
            })
            .collect();
        let stored = texts(&root, "txt").into_iter();
        let stored = stored.filter_map(|(_, t)| t.split_once('\n').map(|(_, t)| t.to_owned()));
        let one = |(kind, body): &(Kind, String)| {
            let id = if *kind == Kind::Batch { "7Q-a1" } else { "r" };
            write_copy(&copy(vec![thing(kind.name(), id, body)])).expect("written")
        };
        Self {
            copies: bodies.iter().map(one).collect(),
            stored: stored.collect(),
            bodies,
            tables: vec![
                "Date,Gravity (SG),Sample (°C),Note\r\n2026-03-07 18:30,1.048,23.5,\"a, b\"\r\n"
                    .to_owned(),
                "Date;Gravity (°P);Beer (°F);State\n2026-03-07T18:30+01:00;12,4;68;foam\n"
                    .to_owned(),
            ],
            typed: ["1.050", "12,4 P", "5 us gal", "68 F", "2026-03-07T18:30+01:00", "-2", "1 050"]
                .map(str::to_owned)
                .into(),
        }
    }
}

fn of<'a, T>(chance: &mut Chance, all: &'a [T]) -> &'a T {
    &all[chance.below(all.len())]
}

fn changed_one(chance: &mut Chance, all: &[String]) -> String {
    let text = of(chance, all);
    changed(chance, text)
}

fn id(name: &str) -> Id {
    Id::new(name).expect("an identity")
}

fn reads_copy(text: &str) -> bool {
    let taken = read_copy(text);
    if let Ok(copy) = &taken {
        // What is taken can be written, and reads back the same.
        let again = write_copy(copy).expect("it is written");
        assert_eq!(read_copy(&again).as_ref(), Ok(copy));
        let found = compare(&copy.things, &[], &Journal::default());
        let mut journal = Journal::default();
        journal.take_as_it_is(found.change());
    }
    taken.is_ok()
}

fn reads_table(text: &str, zone: &Zone) -> bool {
    let taken = read_table(text, &id("b"), &id("h"), zone);
    if let Ok(table) = &taken {
        let all: Vec<_> = table.readings.iter().map(|r| (id("r"), r.clone())).collect();
        if !all.is_empty() {
            let again = read_table(&write_table(&all, false), &id("b"), &id("h"), zone);
            assert_eq!(again.expect("a table").readings.len(), all.len());
        }
    }
    taken.is_ok()
}

fn reads_body(kind: Kind, text: &str) -> bool {
    let taken = Entry::read(kind, text);
    if let Ok((entry, unknown)) = &taken {
        let again = entry.to_text_with(unknown).expect("it is written");
        let (same, _) = Entry::read(kind, &again).expect("it reads back");
        assert_eq!(same, *entry);
    }
    taken.is_ok()
}

fn reads_time(text: &str, zone: &Zone) -> bool {
    let taken = text.parse::<Moment>();
    if let Ok(moment) = taken {
        assert_eq!(moment.to_string().parse(), Ok(moment));
    }
    taken.is_ok() || zone.local(text).is_ok()
}

fn reads_typed(text: &str) -> bool {
    let gravity = read_gravity(text, GravityUnit::SpecificGravity).is_ok();
    let plato = read_gravity(text, GravityUnit::Plato).is_ok();
    let warm = read(text, TemperatureUnit::Celsius, Bounds::all()).is_ok();
    gravity || plato || warm || read(text, VolumeUnit::Litres, Bounds::all()).is_ok()
}

/// One text at one reader. Whether it was taken.
fn try_one(chance: &mut Chance, corpus: &Corpus, zone: &Zone) -> bool {
    match chance.below(8) {
        0 => reads_copy(&changed_one(chance, &corpus.copies)),
        1 => reads_table(&changed_one(chance, &corpus.tables), zone),
        2 | 3 => {
            let (kind, body) = of(chance, &corpus.bodies).clone();
            reads_body(kind, &changed(chance, &body))
        }
        4 => Revision::decode(&changed_one(chance, &corpus.stored)).is_ok(),
        5 => {
            read_texts(&changed(chance, "{\"reading/new/gravity\":\"1.050\",\"b\":\"x\"}")).is_ok()
        }
        6 => reads_time(&changed_one(chance, &corpus.typed), zone),
        _ => reads_typed(&changed_one(chance, &corpus.typed)),
    }
}

/// What once did harm somewhere, and what was feared to: each text at each reader.
#[test]
fn what_was_found_before_does_no_harm_any_more() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/exchange/corpus");
    let zones = [Zone::fixed(60), Zone::fixed(-480), Zone::fixed(840)];
    let mut count = 0;
    for file in fs::read_dir(folder).expect("a folder") {
        let text = fs::read_to_string(file.expect("a file").path()).expect("text");
        let text = text.strip_suffix('\n').unwrap_or(&text);
        reads_copy(text);
        let _ = (Revision::decode(text), read_texts(text));
        for kind in Kind::ALL {
            reads_body(kind, text);
        }
        for zone in &zones {
            reads_table(text, zone);
            reads_time(text, zone);
        }
        reads_typed(text);
        // As what it is, or not at all.
        if let Ok(volume) = read(text, VolumeUnit::Litres, Bounds::all()) {
            assert!([0.5, 1.05].contains(&volume.value()), "{text} was read as {volume:?}");
        }
        count += 1;
    }
    assert!(count >= 12, "{count}");
}

fn wish(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

#[test]
fn no_text_from_outside_stops_a_reader() {
    let (cases, seed) = (wish("FUZZ_CASES", 20_000), wish("FUZZ_SEED", 1));
    let (corpus, zone) = (Corpus::new(), Zone::fixed(60));
    let (mut taken, mut slowest) = (0_u64, Duration::ZERO);
    for case in 0..cases {
        // Each case stands alone: `FUZZ_SEED` of the one that failed begins with it.
        let mut chance = Chance(seed.wrapping_add(case));
        let begun = Instant::now();
        let done = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| {
            try_one(&mut chance, &corpus, &zone)
        }));
        match done {
            Ok(was_taken) => taken += u64::from(was_taken),
            Err(_) => panic!("FUZZ_SEED={} FUZZ_CASES=1 shows it again", seed.wrapping_add(case)),
        }
        slowest = slowest.max(begun.elapsed());
    }
    println!("{cases} texts, {taken} taken, the slowest {slowest:?}");
    assert!(cases < 1000 || taken > cases / 50, "too few were sound: {taken}");
    assert!(slowest < Duration::from_secs(10), "one ran on for {slowest:?}");
}
