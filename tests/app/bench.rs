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
