//! The paper scale inside a hydrometer's stem: its lines, its numbers and the steps a reader can tell.

use crate::quantity::write_number;

/// A scale as printed. Larger numbers stand lower, so that a denser liquid, which lifts the stem,
/// brings them up to its surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PaperScale {
    plato: bool,
    division: f64,
    /// Picture units for one of the scale's own.
    stretch: f64,
    /// Between two numbers.
    numbered: f64,
}

/// What stands on the paper; each place in picture units below the line for water.
#[derive(Clone, Debug, PartialEq)]
pub struct Printed {
    /// Long lines, each with its number.
    pub long: Vec<(f64, String)>,
    /// Lines halfway between two numbers, where the division allows one.
    pub middle: Vec<f64>,
    /// A line each division.
    pub short: Vec<f64>,
}

/// The least that half a division may take: less cannot be stepped by a finger.
const HALF_DIVISION: f64 = 3.0;
/// The least from number to number.
const NUMBER: f64 = 48.0;

impl PaperScale {
    /// A scale in degrees Plato or in specific gravity, with a line every `division` of that scale. A
    /// division that no paper has is replaced by the nearest that one could have.
    #[must_use]
    pub fn new(plato: bool, division: f64) -> Self {
        // Both show the same liquid at about the same size: 4 points of gravity are 1 °P.
        let (usual, least, most, plain) =
            if plato { (0.5, 0.05, 1.0, 24.0) } else { (0.002, 0.0002, 0.005, 6000.0) };
        let division = if division > 0.0 { division.clamp(least, most) } else { usual };
        let stretch = f64::max(plain, 2.0 * HALF_DIVISION / division);
        let choices = if plato { [0.5, 1.0, 2.0, 5.0] } else { [0.001, 0.002, 0.005, 0.01] };
        let numbered = choices.into_iter().find(|n| n * stretch > NUMBER - 0.1);
        Self { plato, division, stretch, numbered: numbered.unwrap_or(choices[3]) }
    }

    /// The lowest and the highest reading.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        if self.plato { (-5.0, 40.0) } else { (0.98, 1.18) }
    }

    /// What it shows in water.
    #[must_use]
    pub fn water(&self) -> f64 {
        if self.plato { 0.0 } else { 1.0 }
    }

    /// How far below the line for water a reading stands on the paper.
    #[must_use]
    pub fn below_water(&self, reading: f64) -> f64 {
        let (low, high) = self.range();
        let reading = if reading.is_nan() { self.water() } else { reading.clamp(low, high) };
        (reading - self.water()) * self.stretch
    }

    /// The nearest reading an eye can tell: on a line or halfway between two.
    #[must_use]
    pub fn snap(&self, reading: f64) -> f64 {
        let (low, high) = self.range();
        if reading.is_nan() {
            return self.water();
        }
        let half = self.division / 2.0;
        let snapped = (reading.clamp(low, high) / half).round() * half;
        // Multiplying leaves a last bit behind that a typed number does not have.
        ((snapped * 1e6).round() / 1e6).clamp(low, high)
    }

    /// The reading after the stem is lifted by so much of the picture.
    #[must_use]
    pub fn lifted(&self, from: f64, by: f64) -> f64 {
        self.snap(from + by / self.stretch)
    }

    /// The reading `halves` half divisions on.
    #[must_use]
    pub fn stepped(&self, from: f64, halves: i32) -> f64 {
        self.snap(self.snap(from) + f64::from(halves) * self.division / 2.0)
    }

    /// The reading ten points of gravity (or 2 °P) on, up or down.
    #[must_use]
    pub fn paged(&self, from: f64, up: bool) -> f64 {
        let page = if self.plato { 2.0 } else { 0.01 };
        self.snap(from + if up { page } else { -page })
    }

    /// All that is printed.
    #[must_use]
    pub fn printed(&self) -> Printed {
        let half = self.numbered / 2.0;
        let places = match (self.plato, self.numbered < 1.0) {
            (false, _) => 3,
            (true, fine) => usize::from(fine),
        };
        let long = self.every(self.numbered);
        let middle = if multiple(half, self.division) { self.every(half) } else { Vec::new() };
        let place = |v: f64| self.below_water(v);
        Printed {
            middle: middle
                .into_iter()
                .filter(|v| !multiple(*v, self.numbered))
                .map(place)
                .collect(),
            short: self
                .every(self.division)
                .into_iter()
                .filter(|v| !multiple(*v, half))
                .map(place)
                .collect(),
            long: long.into_iter().map(|v| (place(v), write_number(v, places))).collect(),
        }
    }

    fn every(&self, step: f64) -> Vec<f64> {
        let (low, high) = self.range();
        let (first, last) =
            ((low / step - 1e-6).ceil() as i64, (high / step + 1e-6).floor() as i64);
        (first..=last).map(|i| i as f64 * step).collect()
    }
}

fn multiple(value: f64, of: f64) -> bool {
    let times = value / of;
    (times - times.round()).abs() < 1e-6
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn is_printed_like_the_paper_in_a_stem() {
        let printed = PaperScale::new(false, 0.001).printed();
        let numbers: Vec<_> = printed.long.iter().map(|(_, n)| n.as_str()).collect();
        assert_eq!((numbers[0], numbers[2], numbers[20]), ("0.980", "1.000", "1.180"));
        assert_eq!((printed.long[2].0, printed.middle.len(), printed.short.len()), (0.0, 20, 160));
        // Lines every two points have none at five.
        assert!(PaperScale::new(false, 0.002).printed().middle.is_empty());
        assert_eq!(PaperScale::new(true, 0.5).printed().long[2].1, "0");
    }

    #[test]
    fn larger_numbers_stand_lower_and_a_lift_reads_more() {
        let scale = PaperScale::new(false, 0.002);
        assert!(scale.below_water(1.05) > scale.below_water(1.04));
        assert_eq!(scale.lifted(1.05, 12.0), 1.052);
        assert_eq!(scale.stepped(1.05, 1), 1.051);
        assert_eq!(scale.paged(1.05, false), 1.04);
        assert_eq!(scale.stepped(1.18, 1), 1.18);
        assert_eq!(PaperScale::new(true, 0.5).stepped(12.0, 1), 12.25);
    }

    proptest! {
        #[test]
        fn snapping_is_stable_and_in_range(
            plato in any::<bool>(), division in any::<f64>(), reading in any::<f64>(),
            by in any::<f64>(),
        ) {
            let scale = PaperScale::new(plato, division);
            let (low, high) = scale.range();
            let snapped = scale.snap(reading);
            prop_assert!((low..=high).contains(&snapped));
            prop_assert!((scale.snap(snapped) - snapped).abs() < 1e-9);
            prop_assert!((low..=high).contains(&scale.lifted(snapped, by)));
            prop_assert!(scale.below_water(reading).is_finite());
        }
    }
}
