//! Strength, wherever it is told.

use super::model::Model;
use super::part::Answer;
use crate::science::strength::Strength;
use crate::words::write;

/// The figures of a strength, each under its rule's name.
pub fn rules(m: &Model, found: &Strength) -> Vec<(String, String)> {
    let words = &m.words.strength;
    [
        (words.by_tables, write::strength(found.alcohol.value())),
        (words.by_duty_table, write::strength(found.by_duty_table)),
        (words.by_points, write::strength(found.by_common_rule)),
        (words.apparent, write::attenuation(found.apparent.value())),
        (words.real, write::attenuation(found.real)),
    ]
    .map(|(name, figure)| (name.to_owned(), figure))
    .into()
}

/// What the answer says of a strength.
pub fn answer(m: &Model, found: &Strength) -> Answer {
    let words = &m.words.strength;
    Answer {
        label: words.label.to_owned(),
        main: write::strength(found.alcohol.value()),
        beside: (words.doubt)(found.alcohol),
        below: (words.below)(found.apparent.value()),
    }
}
