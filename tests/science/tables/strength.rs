//! Strength: the UK duty table, and Balling's balance and factors.

use super::table::{Found, Row};
use fermentside::quantity::{
    AlcoholByMass, Estimate, GravityChange, Measured, Plato, SpecificGravity,
};
use fermentside::science::strength;

/// HMRC Notice 226: worked from two gravities.
pub fn duty_examples(row: &Row) -> Vec<Found> {
    let gravity =
        |column| Estimate::exact(SpecificGravity::literal(1.0 + row.number(column) / 1000.0));
    let found = strength::strength(gravity("og_points"), gravity("pg_points")).expect("in range");
    vec![Found::within_own(row, found.by_duty_table.value(), row.number("abv_pct"))]
}

/// HMRC Notice 226: the factor holds from the first to the last tenth of its step, and gives the
/// strengths printed beside it. Those are tenths, rounded either way.
pub fn duty_factors(row: &Row) -> Vec<Found> {
    let (from, to) = (row.number("og_minus_pg_from"), row.number("og_minus_pg_to"));
    let factor = |points: f64| {
        // A difference of two gravities cannot pass 0.1; the last row ends beyond it.
        strength::duty_factor(GravityChange::nearest(points / 1000.0)).value()
    };
    let mut found: Vec<Found> = [from, 0.5 * (from + to), to]
        .map(|points| Found::same(factor(points), row.number("factor")))
        .into();
    // A step is printed as beginning where the step below it ended, a tenth of a point lower.
    for (points, column) in [((from - 0.1).max(0.0), "abv_from"), (to, "abv_to")] {
        let by_factor = points * factor(points);
        found.push(Found { found: Some(by_factor), known: row.number(column), within: 0.1 });
    }
    found
}

/// Eckhardt, from Balling's tables.
pub fn alcohol_factors(row: &Row) -> Vec<Found> {
    let found = strength::alcohol_factor(Plato::literal(row.number("oe_plato")));
    vec![Found::within_own(row, found.value(), row.number("abw_per_apparent_plato_drop"))]
}

/// Balling's balance.
pub fn original_extract(row: &Row) -> Vec<Found> {
    let alcohol = AlcoholByMass::literal(row.number("abw_pct"));
    let real = Plato::literal(row.number("re_plato"));
    let found = strength::original_extract(alcohol, real).expect("in range");
    vec![Found::within_own(row, found.value(), row.number("oe_plato"))]
}
