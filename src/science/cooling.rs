//! The cooling clock: when wort standing in a cooler place will reach a temperature.
//!
//! Newton's law, T(t) = T_bath + (T0 − T_bath) e^(−kt), with k from two or more looks. Practice is
//! rougher than the law (layers, a warming bath), so the answer is a window.

use super::{Amount, ScienceError, Source, Term, Worked};
use crate::order::in_order;
use crate::quantity::{Celsius, Estimate, Hours, Measured};

/// Narrowest window, relative to the time itself: the law holds to about a quarter if the bath stays
/// cold and the wort is stirred (common practice, no source).
const AT_LEAST: f64 = 0.25;

/// One look at the thermometer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// When, on any clock that all looks share.
    pub at: Hours,
    /// What it showed.
    pub temperature: Estimate<Celsius>,
}

/// When it will be there, counted from the last look. The window is two standard deviations wide to
/// each side, and never narrower than a quarter of the time.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// Not before.
    pub earliest: Hours,
    /// The best value.
    pub likely: Hours,
    /// Not after; `None` when the looks cannot rule out that it never gets there.
    pub latest: Option<Hours>,
    /// How it was worked out.
    pub worked: Worked,
}

/// The window in which wort reaches `target` beside a bath or room of temperature `bath`.
///
/// ```
/// use fermentside::quantity::{Celsius, Estimate, Hours, Measured};
/// use fermentside::science::{ScienceError, cooling::{Look, window}};
///
/// let [bath, target, too_cold] = [10.0, 17.5, 5.0].map(Celsius::literal);
/// // 30 degrees above the bath, then 15: it halves in an hour, and 7.5 are wanted.
/// let looks = [(0.0, 40.0), (1.0, 25.0)].map(|(at, t)| Look {
///     at: Hours::literal(at),
///     temperature: Estimate::new(Celsius::literal(t), 0.5),
/// });
/// assert!((window(&looks, bath, target)?.likely.value() - 1.0).abs() < 1e-9);
/// assert_eq!(window(&looks, bath, too_cold), Err(ScienceError::OutOfReach));
/// # Ok::<(), ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] with fewer than two looks at different times;
/// [`ScienceError::OutOfReach`] when it is not moving towards the bath or the bath lies on the wrong
/// side of the target.
pub fn window(looks: &[Look], bath: Celsius, target: Celsius) -> Result<Window, ScienceError> {
    let looks = in_order(looks.to_vec(), |a, b| a.at.value().total_cmp(&b.at.value()));
    let (Some(first), Some(last)) = (looks.first().copied(), looks.last().copied()) else {
        return Err(ScienceError::NothingThere);
    };
    if last.at.value() <= first.at.value() {
        return Err(ScienceError::NothingThere);
    }
    let above = |t: Celsius| t.above(bath).value();
    let to_go = above(last.temperature.value()) / above(target);
    // Both on the same side of the bath, and the target between them.
    if !to_go.is_finite() || to_go <= 0.0 {
        return Err(ScienceError::OutOfReach);
    }
    // Straight line through ln|T − T_bath|, each look weighed by its own error there.
    let (mut w0, mut w1, mut w2, mut y0, mut y1) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for look in &looks {
        let gap = above(look.temperature.value());
        if gap * above(last.temperature.value()) <= 0.0 {
            return Err(ScienceError::OutOfReach);
        }
        let weight = (gap / look.temperature.sigma().max(0.05)).powi(2);
        let (x, y) = (look.at.value() - first.at.value(), gap.abs().ln());
        w0 += weight;
        w1 += weight * x;
        w2 += weight * x * x;
        y0 += weight * y;
        y1 += weight * x * y;
    }
    let spread = w0 * w2 - w1 * w1;
    let rate = -(w0 * y1 - w1 * y0) / spread;
    let sigma = (w0 / spread).sqrt();
    if rate <= 0.0 || !rate.is_finite() {
        return Err(ScienceError::OutOfReach);
    }
    // Two doubts at two standard deviations: how fast it cools, and where the last look left it. Near
    // the target the second is the larger. They are added, not squared: a last look that was too high
    // makes both later.
    let last_look = last.temperature.sigma() / above(last.temperature.value()).abs();
    let likely = to_go.ln().max(0.0) / rate;
    let slack = (2.0 * sigma / rate).max(AT_LEAST);
    let (least, most) = (to_go.ln() - 2.0 * last_look, to_go.ln() + 2.0 * last_look);
    let earliest = (least / (rate * (1.0 + slack))).max(0.0);
    let latest = most.max(0.0) / (rate * (1.0 - slack));
    let latest = if slack < 1.0 { Hours::new(latest).ok() } else { None };
    let worked = Worked::default()
        .input(Term::WortTemperature, last.temperature.value())
        .input(Term::BathTemperature, bath)
        .input(Term::TargetTemperature, target)
        .step(
            Term::CoolingRate,
            Amount::Number(rate, 3, "an hour"),
            "T(t) = T_bath + (T₀ − T_bath) e^(−kt)",
            Source::NewtonCooling,
        )
        .doubt(Term::CoolingRate, likely * sigma / rate)
        .doubt(Term::WortTemperature, last_look / rate)
        .doubt(Term::ModelError, likely * AT_LEAST / 2.0);
    Ok(Window { earliest: Hours::new(earliest)?, likely: Hours::new(likely)?, latest, worked })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn look(at: f64, t: f64) -> Look {
        Look { at: Hours::literal(at), temperature: Estimate::new(Celsius::literal(t), 0.3) }
    }

    #[test]
    fn halving_the_gap_twice_takes_twice_as_long() {
        let looks = [look(0.0, 60.0), look(1.0, 40.0)];
        let found = window(&looks, Celsius::literal(20.0), Celsius::literal(30.0)).expect("cools");
        assert!((found.likely.value() - 1.0).abs() < 1e-9, "{found:?}");
        assert!(found.earliest < found.likely);
        assert!(found.latest.is_some_and(|latest| latest > found.likely));
    }

    #[test]
    fn never_promises_what_cannot_be() {
        let looks = [look(0.0, 60.0), look(1.0, 40.0)];
        let cold = window(&looks, Celsius::literal(20.0), Celsius::literal(18.0));
        assert_eq!(cold.map(|w| w.likely), Err(ScienceError::OutOfReach));
        let level = [look(0.0, 30.0), look(0.2, 30.1)];
        assert!(window(&level, Celsius::literal(20.0), Celsius::literal(25.0)).is_err());
        assert!(window(&looks[..1], Celsius::literal(20.0), Celsius::literal(25.0)).is_err());
        // A fall smaller than the thermometer's error gives no latest time.
        let hardly = [look(0.0, 30.0), look(0.2, 29.9)];
        let found = window(&hardly, Celsius::literal(20.0), Celsius::literal(25.0)).expect("cools");
        assert_eq!(found.latest, None);
    }
}
