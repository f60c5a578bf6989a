//! The record of pitching day: what was stored before is read, and the start follows the choice.

use fermentside::advice::family::Family;
use fermentside::advice::pitch::yeast::Method;
use fermentside::batch::{
    AddedWater, BatchHeading, Change, Entry, GoesBy, HydrometerItem, Id, Journal, Kind,
    OriginalFrom, PitchRecord, Reading, Summary, Vessel,
};
use fermentside::quantity::{
    Celsius, Grams, Gravity, GravityChange, Hours, Litres, Measured, Moment, SpecificGravity,
};
use fermentside::science::hydrometer::{Hydrometer, SugarCheck};
use fermentside::science::hydrometer_sample::Condition;
use fermentside::science::kit_gravity::{Fermentable, Ingredient};
use fermentside::science::self_heating;

fn at(hours: f64) -> Moment {
    let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    start.after(Hours::literal(hours))
}

fn batch() -> Id {
    Id::random(*b"testbrew")
}

fn kit() -> PitchRecord {
    PitchRecord {
        volume: Some(Litres::literal(20.0)),
        water: Some(AddedWater {
            volume: Litres::literal(10.0),
            temperature: Some(Celsius::literal(8.0)),
        }),
        ice: Some(Grams::literal(500.0)),
        ingredients: vec![
            Ingredient::usual(Fermentable::MaltSyrup, Grams::literal(3400.0)),
            Ingredient::usual(Fermentable::Sucrose, Grams::literal(300.0)),
        ],
        yeast: Some(Grams::literal(12.0)),
        product: "Ale, from under the lid".to_owned(),
        sachets: Some(2),
        method: Some(Method::Rehydrated),
        aerated: Some(Hours::literal(0.1)),
        satellite: Some(true),
        vessel: Some(self_heating::Vessel::Bucket),
        room: Some(Celsius::literal(18.0)),
        place: "Cupboard under the stairs".to_owned(),
        wort: Some(Celsius::literal(19.0)),
        ..PitchRecord::new(batch(), at(0.0))
    }
}

/// A batch that states 1.044, with a reading before pitching if there is one.
fn summary(pitch: PitchRecord, reading: Option<f64>, hydrometer: Hydrometer) -> Summary {
    let mut journal = Journal::default();
    let mut put = |id: Id, entry| journal.apply(Change::put(id, entry)).expect("applies");
    put(
        batch(),
        Entry::Batch(BatchHeading {
            name: "Kit".to_owned(),
            started: at(0.0),
            volume: Litres::literal(23.0),
            family: Family::CleanAle,
            packet: None,
            expected_start: Some(SpecificGravity::literal(1.044)),
            expected_end: None,
            hydrometer: HydrometerItem::usual_id(),
            target: None,
            own_ends: vec![],
        }),
    );
    let item = HydrometerItem { instrument: hydrometer, ..HydrometerItem::usual() };
    put(HydrometerItem::usual_id(), Entry::Hydrometer(item));
    if let Some(sg) = reading {
        put(
            Id::random(*b"reading1"),
            Entry::Reading(Reading {
                batch: batch(),
                at: at(0.0),
                vessel: Vessel::Main,
                as_read: Some(Gravity::Specific(SpecificGravity::literal(sg))),
                typed: String::new(),
                sample: Some(Celsius::literal(20.0)),
                condition: Condition::Still,
                hydrometer: HydrometerItem::usual_id(),
                refractometer: None,
                added: None,
                beer: None,
                room: None,
                note: String::new(),
                doubtful: false,
            }),
        );
    }
    put(Id::random(*b"pitching"), Entry::Pitch(pitch));
    Summary::of(&journal, &batch(), at(9000.0)).expect("the batch")
}

fn start(summary: &Summary) -> f64 {
    summary.original.expect("a start").value().value()
}

#[test]
fn what_was_stored_before_is_read_and_written_back_the_same() {
    let id = batch();
    let id = id.as_str();
    for text in [
        format!(r#"{{"batch":"{id}","at":"2026-04-01T18:00+01:00"}}"#),
        format!(
            r#"{{"batch":"{id}","at":"2026-04-01T18:00+01:00","wort":19.5,"yeast":11.0,"note":"went in foaming"}}"#
        ),
    ] {
        let entry = Entry::from_text(Kind::Pitch, &text).expect("reads");
        let Entry::Pitch(record) = &entry else { panic!("{entry:?}") };
        assert_eq!(record.goes_by, GoesBy::Sample);
        assert!(
            record.ingredients.is_empty() && record.by_ingredients(Litres::literal(20.0)).is_none()
        );
        assert_eq!(entry.to_text().expect("writes"), text);
    }
}

#[test]
fn all_of_it_is_read_back() {
    let full = PitchRecord { goes_by: GoesBy::Ingredients, note: "late".to_owned(), ..kit() };
    let entry = Entry::Pitch(full);
    let text = entry.to_text().expect("writes");
    for name in ["\"malt_syrup\"", "\"ingredients\"", "\"rehydrated\"", "\"bucket\""] {
        assert!(text.contains(name), "{name} in {text}");
    }
    assert_eq!(Entry::from_text(Kind::Pitch, &text).expect("reads"), entry);
}

#[test]
fn the_start_follows_the_choice_and_both_are_kept() {
    let by_sample = summary(kit(), Some(1.062), Hydrometer::USUAL);
    assert_eq!(by_sample.original_from, Some(OriginalFrom::Sample));
    assert!((start(&by_sample) - 1.062).abs() < 1e-9);
    let chosen = PitchRecord { goes_by: GoesBy::Ingredients, ..kit() };
    let by_weight = summary(chosen.clone(), Some(1.062), Hydrometer::USUAL);
    assert_eq!(by_weight.original_from, Some(OriginalFrom::Ingredients));
    // 3.02 kg of extract in the 20 L of the mark, not the 23 L of the heading.
    assert!((start(&by_weight) - 1.058).abs() < 0.001, "{}", start(&by_weight));
    for summary in [&by_sample, &by_weight] {
        assert!(summary.original_was_read);
        assert!((summary.by_sample.expect("read").value().value() - 1.062).abs() < 1e-9);
        assert!(summary.by_ingredients.is_some());
    }
    // A choice that has nothing to go by takes what there is.
    let unread = summary(kit(), None, Hydrometer::USUAL);
    assert_eq!(unread.original_from, Some(OriginalFrom::Ingredients));
    let bare = PitchRecord { goes_by: GoesBy::Ingredients, ..PitchRecord::new(batch(), at(0.0)) };
    let read = summary(bare.clone(), Some(1.050), Hydrometer::USUAL);
    assert_eq!(read.original_from, Some(OriginalFrom::Sample));
    let stated = summary(bare, None, Hydrometer::USUAL);
    assert_eq!(stated.original_from, Some(OriginalFrom::Stated));
    assert!(!stated.original_was_read && (start(&stated) - 1.044).abs() < 1e-12);
}

#[test]
fn a_new_check_of_the_instrument_moves_what_was_read_before() {
    let before = summary(kit(), Some(1.050), Hydrometer::USUAL);
    let check = SugarCheck {
        sugar: Grams::literal(30.0),
        water: Grams::literal(220.0),
        shown: Gravity::Specific(SpecificGravity::literal(1.044)),
        temperature: Celsius::literal(20.0),
    };
    let offset = GravityChange::literal(0.001);
    let checked = Hydrometer { offset, sugar: Some(check), ..Hydrometer::USUAL };
    let after = summary(kit(), Some(1.050), checked);
    // 12 % stands at 1.048 and was shown as 1.044; the reading above it is held at that correction.
    assert!((start(&after) - start(&before) - 0.0043).abs() < 0.0003, "{}", start(&after));
    assert_eq!(after.lines[0].reading, before.lines[0].reading);
}
