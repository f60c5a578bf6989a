//! Bodies of every kind as released: they read to the same entries for ever, and are written as then.

use fermentside::advice::bottle::history::{Past, Seal, Working};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::Bottles;
use fermentside::advice::family::{Family, Span};
use fermentside::advice::own_ends::Ended;
use fermentside::batch::{
    Added, BatchHeading, BottlesItem, BottlingRecord, Clarity, Copied, Entry, Fizz, Grounds,
    HydrometerItem, Id, Kind, MadeSafe, OpeningRecord, PitchRecord, Reading, Refractometer, SafeBy,
    Settings, SugarItem, Theme, Units, Vessel,
};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, Gravity, GravityChange, GravityUnit, Hours,
    LengthUnit, Litres, MassUnit, Metres, Plato, Share, SpecificGravity, TemperatureUnit,
    VolumeUnit,
};
use fermentside::science::hydrometer::Hydrometer;
use fermentside::science::hydrometer_sample::Condition;
use fermentside::science::priming::{KeptWort, OwnSugar, Sugar};
use std::fs;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released/1/bodies")
}

/// The text of one file, without the line's end after it.
pub fn text(name: &str) -> String {
    let path = folder().join(format!("{name}.json"));
    let text = fs::read_to_string(&path).unwrap_or_else(|why| panic!("{path:?}: {why}"));
    text.strip_suffix('\n').expect("a line").to_owned()
}

fn at(text: &str) -> fermentside::quantity::Moment {
    text.parse().expect("a moment")
}

fn id(text: &str) -> Id {
    Id::new(text).expect("an identity")
}

fn sg(value: f64) -> SpecificGravity {
    SpecificGravity::literal(value)
}

/// With every field: what each file must read to.
fn full() -> Vec<(&'static str, Entry)> {
    let heading = BatchHeading {
        name: "Brown ale, \"dry\" \u{1f37a}".to_owned(),
        started: at("2026-03-01T09:30+01:00"),
        volume: Litres::literal(20.5),
        family: Family::EnglishAle,
        packet: Some(Span::new(Celsius::literal(15.0), Celsius::literal(22.0))),
        expected_start: Some(sg(1.048)),
        expected_end: Some(sg(1.012)),
        hydrometer: id("6879-h1"),
        target: None,
        own_ends: vec![],
    };
    let pitching = PitchRecord {
        batch: id("7Q-a1"),
        at: at("2026-03-01T14:05+01:00"),
        wort: Some(Celsius::literal(19.25)),
        yeast: Some(Grams::literal(11.0)),
        note: "rehydrated".to_owned(),
        ..PitchRecord::new(id("7Q-a1"), at("2026-03-01T14:05+01:00"))
    };
    let reading = Reading {
        batch: id("7Q-a1"),
        at: at("2026-03-09T18:00-03:30"),
        vessel: Vessel::Main,
        as_read: Some(Gravity::Specific(sg(1.014))),
        typed: "1,014".to_owned(),
        sample: Some(Celsius::literal(23.5)),
        condition: Condition::Gassy,
        hydrometer: id("6879-h1"),
        refractometer: None,
        added: None,
        beer: Some(Celsius::literal(19.0)),
        room: Some(Celsius::literal(17.5)),
        note: "line one\nline two".to_owned(),
        doubtful: false,
    };
    let bottling = BottlingRecord {
        batch: id("7Q-a1"),
        at: at("2026-03-20T10:00+01:00"),
        beer: Estimate::new(Litres::literal(18.7), 0.25),
        sugar: Sugar::DextroseMonohydrate,
        weighed: Grams::literal(121.5),
        target: CarbonDioxideVolumes::literal(2.3),
        warmest: Celsius::literal(20.5),
        weakest: Bottle::ReusableGlass,
        hottest: Celsius::literal(27.0),
        place: Some(Celsius::literal(20.0)),
        moved: None,
        worst: CarbonDioxideVolumes::literal(3.0625),
        went_on_because: "third equal reading on paper".to_owned(),
        note: "38 bottles".to_owned(),
        grounds: None,
        made_safe: None,
    };
    let of = |size, class, count| Bottles { size: Litres::literal(size), class, count };
    let judged = BottlingRecord {
        sugar: Sugar::Own(OwnSugar {
            fermentable: Share::literal(0.95),
            water: Share::literal(0.25),
        }),
        grounds: Some(Grounds {
            past: Some(Past {
                warm_for: Some(Hours::literal(96.0)),
                coldest: Some(Celsius::literal(2.5)),
                seal: Seal::Sealed,
                when_chilled: Working::Unsure,
            }),
            already_in: Some(Estimate::new(CarbonDioxideVolumes::literal(0.8125), 0.0625)),
            points_left: Some(GravityChange::literal(0.001)),
            filled: vec![of(0.75, Bottle::HeavyGlass, 6), of(0.5, Bottle::ReusableGlass, 28)],
            by_bottle: true,
            scale: Some(Grams::literal(0.1)),
            sugar_name: "Golden syrup".to_owned(),
        }),
        ..bottling.clone()
    };
    let moved = BottlingRecord { moved: Some(at("2026-03-28T19:30+01:00")), ..bottling.clone() };
    let wort = BottlingRecord {
        sugar: Sugar::Wort(KeptWort { gravity: sg(1.048), end: sg(1.012) }),
        grounds: Some(Grounds::default()),
        ..bottling.clone()
    };
    let opening = OpeningRecord {
        batch: id("7Q-a1"),
        at: at("2026-04-05T20:15+02:00"),
        fizz: Fizz::new(4).expect("one to five"),
        clarity: None,
        taste: String::new(),
        note: "clear, a little sharp".to_owned(),
        burst: false,
    };
    let tasted = OpeningRecord {
        clarity: Some(Clarity::Hazy),
        taste: "bread, a little green apple".to_owned(),
        ..opening.clone()
    };
    let burst = OpeningRecord { burst: true, ..opening.clone() };
    let wished =
        BatchHeading { target: Some(CarbonDioxideVolumes::literal(2.6)), ..heading.clone() };
    let own_ends = vec![
        Ended { start: sg(1.048), end: sg(1.011) },
        Ended { start: sg(1.055), end: sg(1.013) },
    ];
    let by_own = BatchHeading { own_ends, ..heading.clone() };
    let doubtful = Reading { doubtful: true, ..reading.clone() };
    let safe = MadeSafe { at: at("2026-04-06T09:00+02:00"), by: SafeBy::Vented };
    let safe = BottlingRecord { made_safe: Some(safe), ..bottling.clone() };
    let hydrometer = HydrometerItem {
        name: "The long one".to_owned(),
        instrument: Hydrometer {
            reference: Celsius::literal(15.56),
            division: GravityChange::literal(0.001),
            offset: GravityChange::literal(-0.002),
            sugar: None,
        },
    };
    let units = Units {
        gravity: GravityUnit::Plato,
        temperature: TemperatureUnit::Fahrenheit,
        volume: VolumeUnit::ImperialGallons,
        mass: MassUnit::Ounces,
        height: LengthUnit::Feet,
    };
    let settings = Settings {
        units,
        height: Metres::literal(1524.0),
        theme: Theme::Night,
        in_hand: Some(id("7Q-a1")),
        scale: None,
        copied: None,
    };
    let weighing = Settings { scale: Some(Grams::literal(0.1)), ..settings.clone() };
    let copied = Copied { at: at("2026-03-21T20:00+01:00"), readings: 12, bottled: 1 };
    let copied = Settings { copied: Some(copied), ..weighing.clone() };
    let bottles = BottlesItem {
        name: "Swing-tops, \u{bd} L".to_owned(),
        bottles: of(0.5, Bottle::HeavyGlass, 24),
    };
    let syrup = SugarItem {
        name: "Golden syrup".to_owned(),
        sugar: OwnSugar { fermentable: Share::literal(1.0), water: Share::literal(0.2) },
    };
    vec![
        ("batch", Entry::Batch(heading)),
        ("pitch", Entry::Pitch(pitching)),
        ("reading", Entry::Reading(reading)),
        ("bottling", Entry::Bottling(bottling)),
        ("opening", Entry::Opening(opening)),
        ("hydrometer", Entry::Hydrometer(hydrometer)),
        ("settings", Entry::Settings(settings)),
        ("bottles", Entry::Bottles(bottles)),
        ("sugar", Entry::Sugar(syrup)),
        ("bottling-judged", Entry::Bottling(judged)),
        ("bottling-moved", Entry::Bottling(moved)),
        ("bottling-wort", Entry::Bottling(wort)),
        ("opening-tasted", Entry::Opening(tasted)),
        ("settings-scale", Entry::Settings(weighing)),
        ("settings-copied", Entry::Settings(copied)),
        ("batch-target", Entry::Batch(wished)),
        ("reading-doubtful", Entry::Reading(doubtful)),
        ("bottling-safe", Entry::Bottling(safe)),
        ("opening-burst", Entry::Opening(burst)),
        ("batch-own-ends", Entry::Batch(by_own)),
    ]
}

/// With nothing that may be missing.
fn least() -> Vec<(&'static str, Entry)> {
    let of = |name: &str| {
        let found = full().into_iter().find(|(other, _)| *other == name);
        found.expect("a kind").1
    };
    let mut least = Vec::new();
    if let Entry::Batch(full) = of("batch") {
        let name = "Kit".to_owned();
        let heading = BatchHeading {
            name,
            family: Family::Unknown,
            packet: None,
            expected_start: None,
            expected_end: None,
            ..full
        };
        least.push(("batch-least", Entry::Batch(heading)));
    }
    if let Entry::Pitch(full) = of("pitch") {
        let pitching = PitchRecord { wort: None, yeast: None, note: String::new(), ..full };
        least.push(("pitch-least", Entry::Pitch(pitching)));
    }
    if let Entry::Reading(full) = of("reading") {
        let empty = Reading {
            typed: String::new(),
            sample: None,
            beer: None,
            room: None,
            note: String::new(),
            ..full
        };
        let satellite = Reading {
            vessel: Vessel::Satellite,
            as_read: Some(Gravity::Plato(Plato::literal(2.6))),
            condition: Condition::Still,
            ..empty.clone()
        };
        least.push(("reading-plato", Entry::Reading(satellite)));
        let note = "the lid was tight".to_owned();
        let look = Reading { as_read: None, note, condition: Condition::Foam, ..empty.clone() };
        least.push(("reading-least", Entry::Reading(look)));
        let refractometer = Refractometer {
            brix: Plato::literal(6.4),
            factor: fermentside::quantity::WortFactor::literal(1.04),
        };
        let empty = Reading { as_read: None, condition: Condition::Still, ..empty };
        let looked = Reading { refractometer: Some(refractometer), ..empty.clone() };
        least.push(("reading-refractometer", Entry::Reading(looked)));
        let fed = Reading { added: Some(Added::Fruit), ..empty };
        least.push(("reading-fed", Entry::Reading(fed)));
    }
    if let Entry::Bottling(full) = of("bottling") {
        let bottling = BottlingRecord {
            beer: Estimate::new(Litres::literal(18.7), f64::INFINITY),
            place: None,
            went_on_because: String::new(),
            note: String::new(),
            ..full
        };
        least.push(("bottling-least", Entry::Bottling(bottling)));
    }
    if let Entry::Opening(full) = of("opening") {
        least
            .push(("opening-least", Entry::Opening(OpeningRecord { note: String::new(), ..full })));
    }
    least.push(("settings-least", Entry::Settings(Settings::default())));
    least
}

#[test]
fn bodies_read_to_the_same_entries_and_are_written_the_same() {
    let all = || full().into_iter().chain(least());
    for (name, entry) in all() {
        if std::env::var_os("FERMENTSIDE_WRITE_BODIES").is_some() {
            // What was released is never written again.
            let path = folder().join(format!("{name}.json"));
            if !path.exists() {
                fs::write(path, entry.to_text().expect("written") + "\n").expect("kept");
            }
        }
        let text = text(name);
        assert_eq!(Entry::from_text(entry.kind(), &text).expect("read"), entry, "{name}");
        assert_eq!(entry.to_text().expect("written"), text, "{name}");
    }
    // Every kind has its file, and every file its test.
    for kind in Kind::ALL {
        assert!(full().iter().any(|(name, entry)| *name == kind.name() && entry.kind() == kind));
        assert_eq!(Kind::named(kind.name()), Some(kind));
    }
    let mut files: Vec<_> = fs::read_dir(folder())
        .expect("the folder")
        .map(|file| file.expect("a file").file_name().to_string_lossy().into_owned())
        .collect();
    let mut known: Vec<_> = all().map(|(name, _)| format!("{name}.json")).collect();
    files.sort();
    known.sort();
    assert_eq!(files, known);
}
