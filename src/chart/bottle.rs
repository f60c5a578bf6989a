//! A bottle on its side over a scale of volumes of carbon dioxide: what is in it, against what it bears.

/// Left and right edge of the scale, in a picture 358 wide.
pub const SIDES: (f64, f64) = (8.0, 350.0);
/// The least that the scale reaches to, volumes.
const LEAST: f64 = 4.0;
/// No further than this goes what is marked, as a share of the scale: its words stand beyond.
const SHARE: f64 = 0.75;

/// Where everything stands along the bottle.
#[derive(Clone, Debug, PartialEq)]
pub struct BottleScale {
    /// The ends of the three parts, one after another from the left edge on.
    pub ends: [f64; 3],
    /// What it bears.
    pub ceiling: Option<f64>,
    /// Short lines.
    pub short: Vec<f64>,
    /// Lines with a number.
    pub long: Vec<(f64, u32)>,
}

/// Places three parts, one after another, and the ceiling. What is no number counts as far above: a drawing
/// must not look safer than what is known.
#[must_use]
pub fn bottle_scale(parts: [f64; 3], ceiling: Option<f64>) -> BottleScale {
    let known = |v: f64| if v.is_nan() { 100.0 } else { v.clamp(0.0, 100.0) };
    let mut sum = 0.0;
    let ends = parts.map(|part| {
        sum = known(sum + known(part));
        sum
    });
    let ceiling = ceiling.map(known);
    let to = LEAST.max(sum.max(ceiling.unwrap_or(0.0)) / SHARE);
    let place = |v: f64| SIDES.0 + v * (SIDES.1 - SIDES.0) / to;
    // A number at each volume, and fewer where the scale is long.
    let step = [1_u32, 2, 5, 10, 20].into_iter().find(|step| to / f64::from(*step) < 9.0);
    let step = step.unwrap_or(50);
    let fifth = f64::from(step) / if step == 1 { 10.0 } else { 5.0 };
    let count = |each: f64| (to / each + 1e-9).floor() as u32;
    BottleScale {
        ends: ends.map(place),
        ceiling: ceiling.map(place),
        short: (0..=count(fifth)).map(|i| place(f64::from(i) * fifth)).collect(),
        long: (0..=count(f64::from(step)))
            .map(|i| (place(f64::from(i * step)), i * step))
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn more_gas_reaches_further_and_never_looks_alike() {
        let some = bottle_scale([0.9, 1.4, 0.6], Some(3.3));
        assert!(some.ends[0] < some.ends[1] && some.ends[1] < some.ends[2]);
        assert!(some.ceiling.is_some_and(|ceiling| some.ends[2] < ceiling));
        let numbers: Vec<u32> = some.long.iter().map(|(_, number)| *number).collect();
        assert_eq!(numbers, [0, 1, 2, 3, 4]);
        // Twice what it bears stands twice as far along as what it bears.
        let much = bottle_scale([0.9, 1.4, 4.4], Some(3.3));
        let along = |x: f64| x - SIDES.0;
        let ratio = along(much.ends[2]) / along(much.ceiling.expect("a ceiling"));
        assert!((ratio - 6.7 / 3.3).abs() < 1e-9, "{ratio}");
        assert_ne!(bottle_scale([0.9, 1.4, 2.1], Some(3.3)), much);
        let unknown = bottle_scale([0.9, f64::NAN, 0.0], Some(3.3));
        assert!(unknown.ceiling.is_some_and(|ceiling| unknown.ends[2] > ceiling));
    }

    proptest! {
        #[test]
        fn everything_stands_in_the_picture(
            parts in any::<[f64; 3]>(), ceiling in proptest::option::of(any::<f64>()),
        ) {
            let scale = bottle_scale(parts, ceiling);
            let marked = scale.ends.iter().chain(&scale.ceiling);
            prop_assert!(marked.into_iter().all(|x| (SIDES.0..=290.0).contains(x)));
            prop_assert!(scale.short.len() <= 140 && scale.long.len() <= 9);
            prop_assert!(scale.short.iter().all(|x| (SIDES.0..=SIDES.1 + 0.01).contains(x)));
        }
    }
}
