//! What the laws share.

use proptest::prelude::ProptestConfig;

/// Enough cases to find what is wrong somewhere, few enough to run at every change.
pub fn cases() -> ProptestConfig {
    ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() }
}

/// Equal but for the last bits.
pub fn close(a: f64, b: f64, within: f64) -> bool {
    (a - b).abs() <= within
}
