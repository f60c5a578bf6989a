//! The sums of the Bench.

use crate::paper::{Paper, golden};

#[test]
fn the_true_gravity_reads_well() {
    let mut phone = Paper::new();
    phone.tap("Bench");
    golden("bench", &phone.text());
    phone.tap("True gravity");
    phone.type_into("Hydrometer reads", "1.048");
    phone.type_into("Sample temperature", "31");
    phone.tap("How this was worked out");
    golden("bench-gravity", &phone.text());
}

#[test]
fn strength_follows_both_gravities_and_says_what_cannot_be() {
    let mut phone = Paper::new();
    phone.go("#/bench/strength");
    phone.sees("= Alcohol by volume: –  | Give both gravities.");
    phone.type_into("Starting gravity (OG)", "1.050");
    phone.type_into("Gravity now", "1.010");
    phone.tap("How this was worked out");
    golden("bench-strength", &phone.text());
    phone.type_into("Gravity now", "1.060");
    phone.sees("The gravity now is above the start.");
    phone.sees_no("UK duty table");
}

#[test]
fn a_gravity_stands_on_every_scale() {
    let mut phone = Paper::new();
    phone.go("#/bench/scales");
    phone.type_into("Gravity", "1.050");
    phone.tap("How this was worked out");
    golden("bench-scales", &phone.text());
    phone.type_into("Gravity", "12.4 P");
    phone.sees("= On the other scale: 1.0501 SG 20/20 | 50.1 points");
    // Below water there is no extract in a litre.
    phone.type_into("Gravity", "0.998");
    phone.sees_no("Extract in a litre");
    phone.sees("Density at 20 °C: 996.");
}

#[test]
fn dry_yeast_is_told_in_grams_and_sachets() {
    let mut phone = Paper::new();
    phone.go("#/bench/yeast");
    phone.sees("Give the volume and the gravity.");
    phone.type_into("Wort", "20");
    phone.type_into("Gravity", "1.048");
    phone.sees("= Dry yeast: 10 to 16 g by the makers' dose");
    phone.tap("Cold: lager");
    phone.tap("How this was worked out");
    golden("bench-yeast", &phone.text());
    // Without the size of a sachet the grams stand alone.
    phone.type_into("One sachet holds", "");
    phone.sees("by the makers' dose | By cell count");
}
