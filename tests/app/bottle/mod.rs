//! Bottling day and paper: an ale to be bottled, and what stands on the phone then.

mod kept;
mod laws;
mod plan;
mod rows;

pub use crate::records::id;

use crate::paper::{Paper, Shelf, brewing_day};
use crate::records;
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::Bottles;
use fermentside::advice::family::Family;
use fermentside::app::{Effect, Event, Judged, Keeper, Part, What};
use fermentside::batch::{
    BatchHeading, BottlesItem, BottlingRecord, Change, Entry, HydrometerItem, PitchRecord, Reading,
    SugarItem,
};
use fermentside::quantity::{Celsius, Hours, Litres, Measured, Moment, Share, Zone};
use fermentside::science::priming::{OwnSugar, Sugar};
use fermentside::store::Token;

pub const BOTTLE: &str = "#/batch/b/bottle";

/// So many days after the yeast went in.
pub fn day(days: f64) -> Moment {
    brewing_day().after(Hours::nearest(24.0 * days))
}

pub fn reading(days: f64, sg: f64, beer: Option<f64>) -> Entry {
    let beer = beer.map(Celsius::literal);
    Entry::Reading(Reading { beer, ..records::reading("b", day(days), sg) })
}

/// An ale of 1.048 with these readings (days after pitching, gravity, beer), seen at Bottle 40 days after.
pub fn brewed(readings: &[(f64, f64, Option<f64>)]) -> Paper {
    brewed_as(Family::CleanAle, Some(1.048), readings, 40.0)
}

/// The same of another yeast or start, seen so many days after.
pub fn brewed_as(
    family: Family,
    start: Option<f64>,
    readings: &[(f64, f64, Option<f64>)],
    seen: f64,
) -> Paper {
    let heading = BatchHeading {
        name: "Cellar bitter".to_owned(),
        started: day(0.0),
        volume: Litres::literal(20.0),
        family,
        packet: None,
        expected_start: None,
        expected_end: None,
        hydrometer: HydrometerItem::usual_id(),
        target: None,
        own_ends: vec![],
    };
    let bottles = |name: &str, size, class, count| {
        let bottles = Bottles { size: Litres::literal(size), class, count };
        Entry::Bottles(BottlesItem { name: name.to_owned(), bottles })
    };
    let syrup = OwnSugar::by_label(Share::literal(0.8));
    let mut entries = vec![
        ("b".to_owned(), Entry::Batch(heading)),
        ("p".to_owned(), Entry::Pitch(PitchRecord::new(id("b"), day(0.1)))),
        ("halves".to_owned(), bottles("Brown halves", 0.5, Bottle::ReusableGlass, 60)),
        ("swing".to_owned(), bottles("Swing-tops", 0.75, Bottle::HeavyGlass, 4)),
        (
            "syrup".to_owned(),
            Entry::Sugar(SugarItem { name: "Beet syrup".to_owned(), sugar: syrup }),
        ),
    ];
    entries.extend(start.map(|sg| ("start".to_owned(), reading(0.0, sg, None))));
    for (at, (days, sg, beer)) in readings.iter().enumerate() {
        entries.push((format!("r{at}"), reading(*days, *sg, *beer)));
    }
    let shelf = Shelf::default();
    let mut keeper = Keeper::new(shelf.clone());
    for (at, (name, entry)) in entries.into_iter().enumerate() {
        let mut token = || Token::from_random((at as u64 + 9000).to_be_bytes());
        let change = Change::put(id(&name), entry);
        assert_eq!(keeper.save(1, (&change, &change), day(seen), &mut token), Event::Saved(1));
    }
    let mut phone = Paper::with(shelf, day(seen), Zone::fixed(60), 7);
    phone.go(BOTTLE);
    open_granted(&mut phone);
    phone.asked.clear();
    phone
}

/// Finished beyond doubt, its temperature not noted.
pub fn finished() -> Paper {
    brewed(&[(10.0, 1.010, None), (14.0, 1.010, None)])
}

/// The same with what the plan needs typed in.
pub fn ready() -> Paper {
    let mut phone = finished();
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Sound");
    phone
}

pub fn answer(phone: &Paper) -> String {
    answer_in(&phone.parts())
}

pub fn answer_in(parts: &[Part]) -> String {
    plate_in(parts).figure.0.replace('\u{A0}', " ")
}

/// The one plate of the screen.
pub fn plate_in(parts: &[Part]) -> Judged {
    let plates: Vec<_> = parts
        .iter()
        .filter_map(|part| match &part.what {
            What::Verdict(judged) => Some((part.name.as_str(), judged.clone())),
            What::Answer(answer) => panic!("a second plate: {answer:?}"),
            _ => None,
        })
        .collect();
    let [(name, judged)] = plates.as_slice() else { panic!("not one plate: {plates:?}") };
    // The same part whatever it says, so that a change is said aloud.
    assert_eq!(*name, "dose/plate");
    judged.clone()
}

/// What the plate says of why.
pub fn why(phone: &Paper) -> String {
    let judged = plate_in(&phone.parts());
    format!("{}. {} {}", judged.word, judged.sentence, judged.reasons.join(" "))
}

/// Opens what is taken for granted, for its fields.
pub fn open_granted(phone: &mut Paper) {
    let name = "granted".to_owned();
    phone.happens(Event::Folded { name, open: true });
}

pub fn record(phone: &Paper) -> Option<BottlingRecord> {
    phone.model.journal.bottling(&id("b")).map(|(_, record)| record.clone())
}

/// What stands in a row of figures, as a number.
pub fn figure(parts: &[Part], row: &str) -> Option<f64> {
    let rows = parts.iter().filter_map(|part| match &part.what {
        What::Figures(rows) => Some(rows),
        _ => None,
    });
    let (_, figure) = rows.flatten().find(|(name, _)| name == row)?;
    figure.split('\u{A0}').next()?.parse().ok()
}
