//! A beer bottle, and how far the gas in it reaches towards what it can hold.

use super::lettering::apart;

/// The glass below the cap, in a picture 120 wide and 260 high.
pub const OUTLINE: &str = "M46 24V58C46 88 20 92 20 126V238Q20 248 30 248H90Q100 248 100 238V126\
                           C100 92 74 88 74 58V24Z";
const BASE: f64 = 248.0;
const CEILING: f64 = 96.0;
const LIP: f64 = 24.0;
/// Room for a mark's two lines of words.
const LABEL: f64 = 40.0;

/// Where the marks on the glass stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BottleLevels {
    /// The most the glass is trusted with.
    pub ceiling: f64,
    /// The worst case; never above the lip.
    pub level: f64,
    /// The middle of the words for the ceiling.
    pub ceiling_label: f64,
    /// The middle of the words for the worst case.
    pub level_label: f64,
    /// The foot of the bottle.
    pub base: f64,
}

/// Marks for a worst case that is `fraction` of the ceiling. What is no number counts as full: a
/// drawing must not look safer than what is known.
#[must_use]
pub fn bottle_levels(fraction: f64) -> BottleLevels {
    let fraction = if fraction.is_nan() { f64::INFINITY } else { fraction.max(0.0) };
    let level = (BASE - fraction * (BASE - CEILING)).max(LIP + 4.0);
    let above = level < CEILING;
    let wished = if above { [level, CEILING] } else { [CEILING, level] };
    let placed = apart(&wished, &[LABEL; 2], 4.0, BASE);
    let (first, second) = (placed.first().copied(), placed.last().copied());
    let (first, second) = (first.unwrap_or(level), second.unwrap_or(level));
    let (level_label, ceiling_label) = if above { (first, second) } else { (second, first) };
    BottleLevels { ceiling: CEILING, level, ceiling_label, level_label, base: BASE }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn more_gas_stands_higher() {
        assert!(bottle_levels(0.5).level > bottle_levels(0.9).level);
        assert_eq!(bottle_levels(1.0).level, CEILING);
        assert!(bottle_levels(1.2).level < CEILING);
        assert_eq!(bottle_levels(f64::NAN), bottle_levels(f64::INFINITY));
        assert_eq!(bottle_levels(0.0).level, BASE);
    }

    proptest! {
        #[test]
        fn words_keep_apart_and_in_the_picture(fraction in any::<f64>()) {
            let levels = bottle_levels(fraction);
            prop_assert!((levels.level_label - levels.ceiling_label).abs() > LABEL - 0.1);
            for at in [levels.level_label, levels.ceiling_label] {
                prop_assert!((0.0..=260.0).contains(&at));
            }
            prop_assert!((LIP..=BASE).contains(&levels.level));
        }
    }
}
