//! How strong, and how far gone.

use crate::advice::practice::HALF_DIVISION;
use crate::page::ask::{AskGravity, ask_gravity};
use crate::page::parts::answer::{Answer, Said};
use crate::page::parts::field::NumberField;
use crate::page::parts::figures::Figures;
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::{words, write};
use crate::quantity::{Estimate, Measured, SpecificGravity, write_number};
use crate::science::strength::{Strength, strength};
use crate::science::{ScienceError, sucrose};
use leptos::prelude::*;

/// The figures of a strength, each under its rule's name.
pub fn rules(found: &Strength) -> Vec<(&'static str, String)> {
    vec![
        ("Balling's tables (main figure)", write::strength(found.alcohol.value())),
        ("UK duty table", write::strength(found.by_duty_table)),
        ("Points × 0.131", write::strength(found.by_common_rule)),
        ("Apparent attenuation", write::attenuation(found.apparent.value())),
        ("Real attenuation", write::attenuation(found.real)),
    ]
}

/// What the answer says of a strength.
pub fn strength_said(found: &Strength) -> Said {
    Said {
        main: write::strength(found.alcohol.value()),
        beside: format!("±\u{A0}{} ABV", write_number(found.alcohol.sigma(), 1)),
        below: format!(
            "By Balling's tables. Apparent attenuation {}.",
            write::attenuation(found.apparent.value())
        ),
    }
}

/// The sum.
#[component]
pub fn StrengthSum() -> impl IntoView {
    let session = use_session();
    let unit = session.units_now().gravity;
    let gravity = |key, label, start| {
        let hint = "Corrected for the sample's temperature.";
        let start = SpecificGravity::literal(start);
        ask_gravity("bench/strength/", AskGravity { key, label, hint, unit, first: None, start })
    };
    let original = gravity("original", "Gravity at the start", 1.050);
    let present = gravity("present", "Gravity now, or at the end", 1.010);
    let (og, fg) = (original.value, present.value);
    let found = move || -> Option<Result<Strength, ScienceError>> {
        let read = |gravity| Estimate::new(sucrose::as_specific(gravity), HALF_DIVISION.value());
        Some(strength(read(og.get().ok()?), read(fg.get().ok()?)))
    };
    let said = move || match found() {
        None => Said::only("Give both gravities."),
        Some(Err(why)) => Said::only(words::science_error(why)),
        Some(Ok(found)) => strength_said(&found),
    };
    let ok = move || found().and_then(Result::ok);
    let figures = move || ok().as_ref().map(rules).unwrap_or_default();
    let worked = move || ok().map(|found| found.worked);
    let writer = move || session.writer();
    view! {
        <Answer label="Alcohol by volume" said />
        <NumberField face=original.face />
        <NumberField face=present.face />
        <Figures rows=figures />
        <p class="small">
            "The ± takes each reading to half a line of a scale in 0.002, and the spread of the rules. Priming sugar adds about 0.07 % for each gram a litre."
        </p>
        <p class="small">{words::STRENGTH_CAUTION}</p>
        <HowWorked worked writer doubt_in=(2, 1.0, "% ABV") />
    }
}
