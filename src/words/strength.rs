//! The words of strength and attenuation.

use super::texts::texts;
use super::write;
use crate::quantity::{AlcoholByVolume, Attenuation, Estimate, write_number};

texts! {
    /// What is said of strength.
    StrengthWords, STRENGTH {
        label: "Alcohol by volume",
        give_both: "Give both gravities.",
        original: "Starting gravity (OG)",
        present: "Gravity now (FG at the end)",
        corrected: "Corrected for the sample's temperature.",
        by_tables: "Balling's tables (main figure)",
        by_duty_table: "UK duty table",
        by_points: "(OG − FG) × 131",
        apparent: "Apparent attenuation",
        real: "Real attenuation",
        limits: "The ± takes each reading to half a line of a scale in 0.002, and the spread of the rules. Bottled beer is told with its priming sugar, which adds about 0.4 %.",
    } says {
        doubt: fn(Estimate<AlcoholByVolume>) -> String = doubt,
        below: fn(Attenuation) -> String = below,
    }
}

fn doubt(alcohol: Estimate<AlcoholByVolume>) -> String {
    format!("±\u{A0}{} ABV", write_number(alcohol.sigma(), 1))
}

fn below(apparent: Attenuation) -> String {
    format!("By Balling's tables. Apparent attenuation {}.", write::attenuation(apparent))
}
