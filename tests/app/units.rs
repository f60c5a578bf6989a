//! Whoever brews in gallons meets no litre, whoever brews in degrees Plato no point: every screen of a whole
//! job is read through, with all that is folded away.

use crate::paper::Paper;
use fermentside::app::{Part, Screen, What};

/// What is searched for.
#[derive(Clone, Copy)]
struct Banned {
    /// Behind a number.
    units: &'static [&'static str],
    /// Anywhere.
    words: &'static [&'static str],
}

const US: Banned = Banned {
    units: &["mL", "L", "points", "point", "kg", "bar", "m³", "kg/m³"],
    words: &["mg/L", "g/L", "litre", "litres", "kg/m³"],
};
const PLATO: Banned = Banned { units: &["points", "point"], words: &["Points"] };

/// All that a part says; not the units that are offered to choose from, nor what is handed out.
fn said(part: &Part) -> String {
    match &part.what {
        What::Number(number) => {
            let text = format!("{} {}", number.text, number.unit);
            [&number.label, &number.hint, &text, &number.error, &number.understood]
                .map(String::as_str)
                .join(" | ")
        }
        What::HandOut(file) => file.label.clone(),
        What::Choice(choice) | What::Pick(choice) => {
            let all = choice.options.iter().map(|(_, words)| words.as_str());
            format!("{} | {} | {}", choice.label, choice.hint, all.collect::<Vec<_>>().join(" | "))
        }
        // Only what stands in quotes is said.
        other => {
            let all = format!("{other:?}").replace("\\u{a0}", " ");
            all.split('"').skip(1).step_by(2).collect::<Vec<_>>().join(" | ")
        }
    }
}

fn all_parts(screen: &Screen) -> Vec<Part> {
    let mut all = vec![];
    for part in screen.notices.iter().chain(&screen.main).chain(&screen.undo) {
        part.each(&mut |part| all.push(part.clone()));
    }
    all
}

/// Opens every fold, those in folds too.
fn unfold(phone: &mut Paper) {
    loop {
        let shut = all_parts(&phone.screen())
            .into_iter()
            .find(|part| matches!(&part.what, What::Fold(fold) if !fold.open));
        let Some(fold) = shut else { return };
        phone.touch(&fold, "");
    }
}

/// Reads the screen through, with all its folds open.
#[track_caller]
fn read_through(phone: &mut Paper, banned: Banned) -> usize {
    unfold(phone);
    let place = phone.place();
    let mut read = 0;
    for part in all_parts(&phone.screen()) {
        // There units are chosen.
        if part.name.starts_with("settings/") || part.name.starts_with("gear/") {
            continue;
        }
        let text = said(&part).replace('\u{A0}', " ");
        let plain =
            |word: &str| word.trim_matches(|c: char| !c.is_alphanumeric() && c != '³').to_owned();
        let words: Vec<String> = text.split_whitespace().map(plain).collect();
        for (at, word) in words.iter().enumerate() {
            let behind_number =
                at > 0 && words[at - 1].chars().next_back().is_some_and(|c| c.is_ascii_digit());
            let bad = banned.words.contains(&word.as_str())
                || behind_number && banned.units.contains(&word.as_str());
            assert!(!bad, "{word:?} at {place}, {}:\n{text}", part.name);
        }
        read += words.len();
    }
    read
}

struct Units {
    banned: Banned,
    gravity: fn(f64) -> String,
    warm: fn(f64) -> String,
    volume: &'static str,
}

fn sg(sg: f64) -> String {
    format!("{sg:.3}")
}

fn plato(sg: f64) -> String {
    format!("{:.1} P", (sg - 1.0) * 256.0)
}

/// A whole job, from a kit's wort to a bottle that gushed, and every sum.
fn job(phone: &mut Paper, units: &Units) -> usize {
    let Units { banned, gravity, warm, volume } = *units;
    let mut read = 0;
    let mut look = |phone: &mut Paper| read += read_through(phone, banned);
    phone.go("#/batches/new");
    phone.type_into("Name", "Cellar bitter");
    phone.type_into("Volume in the fermenter", volume);
    phone.choose("Yeast", "Ale, clean");
    look(phone);
    phone.tap("Start");
    phone.type_into("Wort now", &warm(31.0));
    look(phone);
    phone.type_into("Water at hand", &warm(8.0));
    phone.type_into("Clean ice at hand", "4");
    look(phone);
    phone.type_into("Wort now", &warm(19.0));
    phone.tap("Next");
    phone.type_into("Hydrometer reads", &gravity(1.046));
    phone.type_into("Sample temperature", &warm(24.0));
    look(phone);
    phone.choose("Ingredient 1", "Malt syrup");
    phone.type_into("Mass of ingredient 1", "3.6");
    look(phone);
    phone.type_into("Mass of ingredient 1", "4.4");
    look(phone);
    phone.tap("Next");
    phone.choose("Sachets", "1");
    phone.tap("Rehydrated in water");
    look(phone);
    phone.tap("Next");
    phone.tap("Set");
    look(phone);
    phone.tap("Next");
    phone.type_into("Splashed or shaken for", "5");
    look(phone);
    phone.tap("Next");
    phone.type_into("Room where it will stand", &warm(18.0));
    look(phone);
    phone.type_into("Size of the room", "300");
    look(phone);
    phone.tap("Next");
    look(phone);
    phone.tap("The yeast is in");
    look(phone);
    for (days, sg) in [(2.0, 1.030), (2.0, 1.018), (3.0, 1.012), (2.0, 1.012), (3.0, 1.012)] {
        phone.days(days);
        phone.go("#/now");
        look(phone);
        phone.go("#/batches");
        look(phone);
        phone.tap("Cellar bitter");
        phone.tap("Watch");
        if !phone.text().contains("Hydrometer reads") {
            phone.tap("Add a reading");
        }
        phone.type_into("Hydrometer reads", &gravity(sg));
        phone.type_into("Sample temperature", &warm(21.0));
        look(phone);
        phone.tap("Save the reading");
        look(phone);
        phone.tap("Bottle");
        look(phone);
        phone.type_into("Beer to bottle", volume);
        phone.type_into("Warmest since it ended", &warm(20.0));
        phone.choose("Weakest bottle", "Thin");
        look(phone);
        phone.choose("Weakest bottle", "Sound");
        look(phone);
    }
    phone.choose("Chilled since", "Yes");
    phone.type_into("Coldest it got", &warm(4.0));
    look(phone);
    phone.choose("Chilled since", "No");
    phone.choose("The sugar goes", "Into each bottle");
    look(phone);
    phone.choose("The sugar goes", "Into the vessel");
    phone.choose("Sugar", "Wort kept back");
    look(phone);
    phone.choose("Sugar", "Table");
    phone.tap("It is bottled");
    phone.sees("In the bottle");
    look(phone);
    phone.tap("Print the batch sheet");
    look(phone);
    phone.days(21.0);
    phone.tap("Open");
    look(phone);
    phone.tap("4 much");
    phone.tap("Save");
    look(phone);
    for seen in ["One has burst", "All of them gush", "All are flat", "Some are flat"] {
        phone.tap(seen);
        look(phone);
    }
    phone.tap("5 gushes");
    phone.tap("Save");
    look(phone);
    for place in ["#/batches", "#/now", "#/gear", "#/bench"] {
        phone.go(place);
        look(phone);
    }
    sums(phone, units, &mut look);
    read
}

fn sums(phone: &mut Paper, units: &Units, look: &mut impl FnMut(&mut Paper)) {
    let Units { gravity, warm, volume, .. } = *units;
    phone.go("#/bench/gravity");
    phone.type_into("Hydrometer reads", &gravity(1.048));
    phone.type_into("Sample temperature", &warm(31.0));
    look(phone);
    phone.go("#/bench/strength");
    phone.type_into("Starting gravity (OG)", &gravity(1.050));
    phone.type_into("Gravity now", &gravity(1.010));
    look(phone);
    phone.go("#/bench/scales");
    phone.type_into("Gravity", &gravity(1.050));
    look(phone);
    phone.go("#/bench/yeast");
    look(phone);
    phone.go("#/bench/cooling");
    phone.type_into("Wort now", &warm(30.0));
    phone.type_into("How much wort", volume);
    phone.type_into("Its gravity", &gravity(1.060));
    phone.type_into("Water to add", &warm(8.0));
    look(phone);
    phone.go("#/bench/sugar");
    look(phone);
    phone.type_into("Beer to bottle", volume);
    phone.type_into("Warmest since it ended", &warm(20.0));
    phone.choose("Weakest bottle", "Sound");
    phone.type_into("It read the same twice", &gravity(1.010));
    phone.type_into("Days between them", "4");
    phone.type_into("Days since pitching", "14");
    phone.type_into("Starting gravity (OG)", &gravity(1.048));
    phone.choose("Yeast", "Ale, clean");
    look(phone);
}

#[test]
fn who_brews_in_gallons_meets_no_litre_and_no_point() {
    let mut phone = Paper::new();
    phone.go("#/gear");
    phone.tap("US");
    let warm = |c: f64| format!("{:.0}", c * 1.8 + 32.0);
    let units = Units { banned: US, gravity: sg, warm, volume: "5" };
    let read = job(&mut phone, &units);
    println!("{read} words read");
    assert!(read > 10_000, "{read}");
}

#[test]
fn who_brews_in_plato_meets_no_point() {
    let mut phone = Paper::new();
    phone.go("#/gear");
    phone.tap("One by one");
    phone.tap("°P");
    let units = Units { banned: PLATO, gravity: plato, warm: |c| format!("{c:.0}"), volume: "20" };
    let read = job(&mut phone, &units);
    assert!(read > 10_000, "{read}");
}
