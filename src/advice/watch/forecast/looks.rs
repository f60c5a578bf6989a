//! The readings that a forecast stands on: in order, each once, and not too many.

use crate::advice::family::Span;
use crate::advice::practice::STILL_START;
use crate::advice::watch::course::Look;
use crate::order::in_order;
use crate::quantity::{Celsius, Estimate, Measured, Moment, Plato, SpecificGravity};
use crate::science::sucrose;

/// A reading rougher than this says nothing.
pub(super) const ROUGHEST: f64 = 0.01;
/// Readings so near in time are one look.
const ONE_LOOK: f64 = 2.0;
/// More looks than this are put together by time.
const MOST: usize = 40;
/// No curve of the family is the beer's own: it strays from it by this part of the fall at half way,
/// by less near the ends (about what the fits to industrial data leave; our choice).
const STRAY: f64 = 0.03;
/// And by this at least, °P: a quarter of a point.
const STRAY_LEAST: f64 = 0.06;

/// A reading in hours since pitching and degrees Plato.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Usable {
    pub(super) at: Moment,
    pub(super) hours: f64,
    pub(super) extract: f64,
    pub(super) sigma: f64,
    /// Of the beer, °C, if it was read.
    pub(super) beer: Option<f64>,
}

/// The start, in degrees Plato.
#[derive(Clone, Copy, Debug)]
pub(super) struct Start {
    pub(super) extract: f64,
    pub(super) sigma: f64,
}

impl Start {
    pub(super) fn of(original: Estimate<SpecificGravity>) -> Self {
        Self {
            extract: plato(original.value()),
            sigma: original.sigma() * plato_in(original.value()),
        }
    }
}

/// Degrees Plato of a gravity.
pub(super) fn plato(gravity: SpecificGravity) -> f64 {
    sucrose::plato(gravity).value()
}

/// The gravity of degrees Plato.
pub(super) fn gravity(extract: f64) -> SpecificGravity {
    sucrose::specific_gravity(Plato::nearest(extract))
}

/// Degrees Plato in a whole of specific gravity, about `gravity`: some 257 for thin beer.
pub(super) fn plato_in(gravity: SpecificGravity) -> f64 {
    let near = |by: f64| plato(SpecificGravity::nearest(gravity.value() + by));
    (near(0.0005) - near(-0.0005)) * 1000.0
}

/// The readings of the fermenting beer, the earliest first; what was entered twice is there once.
pub(super) fn usable(main: &[Look], pitched: Moment) -> Vec<Usable> {
    let fermenting = main
        .iter()
        .filter(|look| look.at.since(pitched) > STILL_START && look.gravity.sigma() < ROUGHEST);
    let seen = fermenting.map(|look| Usable {
        at: look.at,
        hours: look.at.since(pitched).value(),
        extract: plato(look.gravity.value()),
        sigma: look.gravity.sigma() * plato_in(look.gravity.value()),
        beer: look.beer.map(Celsius::value),
    });
    let mut seen = in_order(seen.collect(), |a: &Usable, b: &Usable| {
        (a.hours.total_cmp(&b.hours))
            .then(a.at.cmp(&b.at))
            .then(a.extract.total_cmp(&b.extract))
            .then(a.sigma.total_cmp(&b.sigma))
            .then(a.beer.unwrap_or(f64::MAX).total_cmp(&b.beer.unwrap_or(f64::MAX)))
    });
    seen.dedup_by(|a, b| (a.hours, a.extract, a.sigma) == (b.hours, b.extract, b.sigma));
    seen
}

/// How many looks these are: what was read within two hours is one.
pub(super) fn apart(seen: &[Usable]) -> usize {
    runs(seen, ONE_LOOK).count()
}

/// One after another, those within `hours` of the first of their run.
fn runs(seen: &[Usable], hours: f64) -> impl Iterator<Item = &[Usable]> {
    let mut rest = seen;
    std::iter::from_fn(move || {
        let first = rest.first()?;
        let (run, after) = rest.split_at(rest.partition_point(|s| s.hours - first.hours <= hours));
        rest = after;
        Some(run)
    })
}

/// The same readings, `MOST` at most, each with the whole error it is weighed by.
///
/// Many readings in a short time (an instrument that reads by itself) become one in their midst: the
/// median of each figure, so that a few wrong ones do not count, and no finer than one of them, because
/// what is wrong with an instrument is wrong in all.
pub(super) fn thinned(seen: &[Usable], start: Start, core: Span<Plato>) -> Vec<Usable> {
    let mut looks = seen.to_vec();
    let mut within = ONE_LOOK;
    while looks.len() > MOST {
        looks = runs(seen, within).filter_map(middle).collect();
        within *= 1.5;
    }
    let end = core.middle().value();
    let fall = (start.extract - end).max(0.1);
    for look in &mut looks {
        let left = ((look.extract - end) / fall).clamp(0.0, 1.0);
        look.sigma = look.sigma.hypot(stray(fall, left)).hypot(left * start.sigma);
    }
    looks
}

/// How far the beer strays from its curve, with `left` of the `fall` still to come.
pub(super) fn stray(fall: f64, left: f64) -> f64 {
    (STRAY * fall * 2.0 * (left * (1.0 - left)).sqrt()).hypot(STRAY_LEAST)
}

fn middle(run: &[Usable]) -> Option<Usable> {
    let median = |of: fn(&Usable) -> f64| {
        let values = in_order(run.iter().map(of).collect(), f64::total_cmp);
        let half = values.len() / 2;
        let below = values.get((values.len().max(1) - 1) / 2)?;
        Some(f64::midpoint(*below, *values.get(half)?))
    };
    let first = run.first()?;
    Some(Usable {
        at: first.at,
        hours: median(|s| s.hours)?,
        extract: median(|s| s.extract)?,
        sigma: median(|s| s.sigma)?,
        beer: first.beer,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seen(hours: f64, extract: f64) -> Usable {
        Usable { at: Moment::EPOCH, hours, extract, sigma: 0.1, beer: None }
    }

    #[test]
    fn many_readings_become_few_and_one_wrong_one_is_lost() {
        let mut many: Vec<Usable> =
            (0..300).map(|i| seen(20.0 + f64::from(i) / 4.0, 12.0 - f64::from(i) * 0.02)).collect();
        many[150].extract = 30.0;
        let start = Start { extract: 12.5, sigma: 0.2 };
        let core = Span::new(Plato::literal(2.0), Plato::literal(4.0));
        let few = thinned(&many, start, core);
        assert!(few.len() <= MOST && few.len() > 15, "{}", few.len());
        assert!(few.windows(2).all(|w| w[1].extract < w[0].extract));
    }

    #[test]
    fn readings_within_two_hours_are_one_look() {
        let looks = [seen(20.0, 9.0), seen(21.9, 9.0), seen(22.1, 8.9), seen(50.0, 5.0)];
        assert_eq!(apart(&looks), 3);
    }
}
