//! Laws of the cooling clock.

use crate::support::{cases, close};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured};
use fermentside::science::cooling::{Look, Window, window};
use proptest::prelude::*;

/// A kettle in a bath that obeys Newton's law to the letter.
#[derive(Clone, Copy, Debug)]
struct Kettle {
    start: f64,
    bath: f64,
    rate: f64,
}

impl Kettle {
    fn at(self, hours: f64) -> f64 {
        self.bath + (self.start - self.bath) * (-self.rate * hours).exp()
    }

    fn hours_to(self, t: f64) -> f64 {
        ((self.start - self.bath) / (t - self.bath)).ln() / self.rate
    }

    /// A look that is off by a share of its own standard deviation.
    fn look(self, hours: f64, sigma: f64, off: f64) -> Look {
        let shown = Celsius::literal(self.at(hours) + off * sigma);
        Look { at: Hours::literal(hours), temperature: Estimate::new(shown, sigma) }
    }
}

fn kettles() -> impl Strategy<Value = Kettle> {
    (30.0..100.0, 0.0..15.0, 0.2..5.0).prop_map(|(start, bath, rate)| Kettle { start, bath, rate })
}

/// Halfway by heat to some way further, counted in units of 1/rate from the start.
fn target(kettle: Kettle, looked: f64, further: f64) -> f64 {
    kettle.at(looked + further / kettle.rate)
}

fn ask(kettle: Kettle, looks: &[Look], target: f64) -> Window {
    window(looks, Celsius::literal(kettle.bath), Celsius::literal(target)).expect("cools")
}

fn holds(found: &Window, truth: f64) -> bool {
    found.earliest.value() <= truth + 1e-9
        && found.latest.is_none_or(|latest| truth <= latest.value() + 1e-9)
}

fn in_order(found: &Window) -> bool {
    found.earliest <= found.likely && found.latest.is_none_or(|latest| found.likely <= latest)
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn exact_looks_give_the_truth(
        kettle in kettles(), second in 0.1..1.0, third in 0.1..1.0, further in 0.05..2.0,
    ) {
        let times = [0.0, second / kettle.rate, (second + third) / kettle.rate];
        let looks = times.map(|t| kettle.look(t, 0.3, 0.0));
        let goal = target(kettle, times[2], further);
        let truth = kettle.hours_to(goal) - times[2];
        for looks in [&looks[..], &[looks[2], looks[0], looks[1]]] {
            let found = ask(kettle, looks, goal);
            prop_assert!(close(found.likely.value(), truth, 1e-6 * truth), "{found:?} {truth}");
            prop_assert!(holds(&found, truth) && in_order(&found));
        }
    }

    #[test]
    fn a_nearer_target_comes_sooner(
        kettle in kettles(), second in 0.1..1.0, further in 0.05..2.0, share in 0.05..0.95,
    ) {
        let last = second / kettle.rate;
        let looks = [0.0, last].map(|t| kettle.look(t, 0.3, 0.0));
        let far = ask(kettle, &looks, target(kettle, last, further));
        let near = ask(kettle, &looks, target(kettle, last, share * further));
        prop_assert!(near.likely < far.likely && near.earliest <= far.earliest);
        if let (Some(near), Some(far)) = (near.latest, far.latest) {
            prop_assert!(near < far);
        }
    }

    #[test]
    fn looks_off_by_their_own_doubt_still_hold_the_truth(
        kettle in kettles(), second in 0.2..1.0, further in 0.01..2.0,
        one in -1.0..1.0, other in -1.0..1.0, sigma in 0.1..1.5,
    ) {
        let last = second / kettle.rate;
        let looks = [kettle.look(0.0, sigma, one), kettle.look(last, sigma, other)];
        let goal = target(kettle, last, further);
        let truth = kettle.hours_to(goal) - last;
        let asked = window(&looks, Celsius::literal(kettle.bath), Celsius::literal(goal));
        if let Ok(found) = asked {
            prop_assert!(in_order(&found), "{found:?}");
            prop_assert!(holds(&found, truth), "{found:?} {truth}");
        }
    }

    #[test]
    fn a_look_that_says_nothing_promises_nothing(kettle in kettles(), second in 0.2..1.0) {
        let last = second / kettle.rate;
        let unknown = kettle.look(2.0 * last, 0.3, 0.0);
        let looks = [
            kettle.look(0.0, 0.3, 0.0),
            kettle.look(last, 0.3, 0.0),
            Look { temperature: Estimate::new(unknown.temperature.value(), f64::NAN), ..unknown },
        ];
        let goal = target(kettle, 2.0 * last, 0.5);
        prop_assert_eq!(ask(kettle, &looks, goal).latest, None);
    }
}
