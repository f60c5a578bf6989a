//! What the laws of several floors share.

// Each floor uses its part of it.
#![allow(dead_code)]

use proptest::prelude::{ProptestConfig, Strategy};

/// Enough cases to find what is wrong somewhere, few enough to run at every change.
pub fn cases() -> ProptestConfig {
    ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() }
}

/// Equal but for the last bits.
pub fn close(a: f64, b: f64, within: f64) -> bool {
    (a - b).abs() <= within
}

/// Text made of what numbers and units are made of, so that many get past the first look.
pub fn near_numbers() -> impl Strategy<Value = String> {
    "[-+0-9., \u{2212}\u{66B}\u{660}-\u{669}\u{FF0E}\u{FF10}-\u{FF19}°a-zA-Z/]{0,14}"
}
