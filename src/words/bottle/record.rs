//! A bottling as it was recorded, in rows, as the screen and the batch sheet have it.

use crate::advice::bottle::stock::Bottles;
use crate::batch::BottlingRecord;
use crate::words::write::{self, Writer};

/// The rows.
pub(super) fn rows(w: Writer, record: &BottlingRecord) -> Vec<(String, String)> {
    let names = &w.words.names;
    let grounds = record.grounds.clone().unwrap_or_default();
    let own = Some(grounds.sugar_name).filter(|name| !name.is_empty());
    let sugar = own.unwrap_or_else(|| (names.sugar)(record.sugar).to_owned());
    let into = if grounds.by_bottle { ", into each bottle" } else { "" };
    let mut rows = vec![
        ("Bottled", write::moment(record.at)),
        ("Beer", w.volume(record.beer.value())),
        ("Sugar", format!("{} {sugar}{into}", w.mass(record.weighed))),
        ("Carbonation wanted", w.volumes_in_full(record.target)),
        ("Expected", write::volumes(record.expected())),
        ("At worst", write::volumes(record.worst)),
        ("Weakest bottle", (names.bottle)(record.weakest).to_owned()),
    ];
    if !grounds.filled.is_empty() {
        let each = |own: &Bottles| bottles(w, *own);
        rows.push(("Filled", grounds.filled.iter().map(each).collect::<Vec<_>>().join(", ")));
    }
    rows.push(("Warmest since it ended", w.temperature(record.warmest)));
    rows.push(("Hottest place", w.temperature(record.hottest)));
    rows.extend(record.place.map(|t| ("They stand at", w.temperature(t))));
    rows.extend(record.made_safe.as_ref().map(|safe| {
        ("Made safe", format!("{}: {}", write::moment(safe.at), (w.words.open.safe.by)(safe.by)))
    }));
    if !record.went_on_because.is_empty() {
        rows.push(("Went on because", record.went_on_because.clone()));
    }
    if !record.note.is_empty() {
        rows.push(("Note", record.note.clone()));
    }
    rows.into_iter().map(|(name, figure)| (name.to_owned(), figure)).collect()
}

/// `36 × 500 mL`.
pub(super) fn bottles(w: Writer, own: Bottles) -> String {
    format!("{}\u{A0}×\u{A0}{}", own.count, w.small(own.size))
}
