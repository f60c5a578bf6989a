//! The words of paper: the batch sheet and the labels.

use super::texts::texts;
use super::write::{self, Writer};
use crate::batch::{OpeningRecord, ReadingLine, Summary, Vessel};
use crate::quantity::{Estimate, Moment, write_gravity, write_number};

texts! {
    /// What stands at paper: the batch sheet and the labels.
    PrintWords, PRINT {
        print_sheet: "Print the batch sheet",
        print_labels: "Print labels",
        brew: "The brew",
        stands: "It stands at",
        readings: "Readings",
        bottles: "Bottles",
        opened: "Opened",
        notes: "Notes",
        pour_gently: "Pour gently, keep cool.",
    } says {
        start: fn(Writer, &Summary) -> Vec<(String, String)> = start,
        reading_head: [&'static str; 6] = ["When", "Read", "Sample", "True", "Beer", "Note"],
        reading: fn(Writer, &ReadingLine) -> [String; 6] = reading,
        opening: fn(&OpeningRecord) -> (String, String) = opening,
        bottled: fn(&Summary) -> String = bottled,
        figures: fn(&Summary) -> String = figures,
        try_from: fn(Moment) -> String = try_from,
    }
}

/// Strength with its ±, once it is known.
fn strength(summary: &Summary) -> Option<String> {
    let so_far = || summary.strength.as_ref().map(|found| found.alcohol);
    let alcohol = summary.strength_in_bottle().or_else(so_far)?;
    let doubt = write_number(alcohol.sigma(), 1);
    Some(format!("{} ±\u{A0}{doubt} ABV", write::strength(alcohol.value())))
}

/// How it was brewed and pitched, and what it came to.
fn start(w: Writer, summary: &Summary) -> Vec<(String, String)> {
    let heading = &summary.heading;
    let mut rows = vec![
        ("Brewed", write::full_day(heading.started)),
        ("Volume", w.volume(heading.volume)),
        ("Yeast", (w.words.names.family)(heading.family).to_owned()),
    ];
    if let Some((_, pitch)) = &summary.pitch {
        let wort = pitch.wort.map(|t| format!(", wort {}", w.temperature(t))).unwrap_or_default();
        rows.push(("Pitched", format!("{}{wort}", write::moment(pitch.at))));
    }
    let gravity = |sg: Estimate<_>| w.gravity(sg.value());
    rows.extend(summary.original.map(|og| ("Start", gravity(og))));
    rows.extend(summary.present.map(|sg| ("Last gravity", gravity(sg))));
    rows.extend(strength(summary).map(|strength| ("Strength", strength)));
    rows.into_iter().map(|(name, figure)| (name.to_owned(), figure)).collect()
}

/// One reading, in the columns of `reading_head`.
fn reading(w: Writer, line: &ReadingLine) -> [String; 6] {
    let reading = &line.reading;
    let satellite = (reading.vessel == Vessel::Satellite).then(|| "satellite".to_owned());
    let note = Some(reading.note.clone()).filter(|note| !note.is_empty());
    let corrected = line.gravity();
    let doubt = |found: Estimate<_>| w.gravity_doubt(found.sigma());
    [
        Some(write::moment(reading.at)),
        reading.as_read.map(write_gravity),
        reading.sample.map(|t| w.temperature(t)),
        corrected.map(|found| format!("{} {}", w.gravity(found.value()), doubt(found))),
        reading.beer.map(|t| w.temperature(t)),
        Some([satellite, note].into_iter().flatten().collect::<Vec<_>>().join(", ")),
    ]
    .map(Option::unwrap_or_default)
}

/// One opened bottle.
fn opening(opening: &OpeningRecord) -> (String, String) {
    let fizz = opening.fizz.value();
    let said = format!("fizz {fizz} of 5 {} {}", opening.taste, opening.note);
    (write::moment(opening.at), said.trim().to_owned())
}

/// When it was bottled, on a label; nothing before.
fn bottled(summary: &Summary) -> String {
    let day = |(_, record): &(_, crate::batch::BottlingRecord)| write::full_day(record.at);
    summary.bottling.as_ref().map(|it| format!("Bottled {}", day(it))).unwrap_or_default()
}

/// From when one may be tried, on a label.
fn try_from(at: Moment) -> String {
    format!("Try from {}", write::full_day(at))
}

/// Strength and carbon dioxide, on a label.
fn figures(summary: &Summary) -> String {
    let gas = summary.bottling.as_ref().map(|(_, record)| write::volumes(record.expected()));
    [strength(summary), gas].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}
