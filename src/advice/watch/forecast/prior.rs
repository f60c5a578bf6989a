//! What is usual before any reading: where such beer ends, and how fast it gets there.
//!
//! All figures here are common practice, no source, and wide for that reason.

use super::looks::{Start, Usable, plato, plato_in};
use crate::advice::family::{Family, Span};
use crate::advice::watch::course::Course;
use crate::advice::watch::expected_end::satellite_of;
use crate::advice::watch::satellite_end::SatelliteEnd;
use crate::quantity::{Estimate, Measured, Plato, SpecificGravity};

/// One point of gravity in degrees Plato, for thin beer.
pub(super) const POINT: f64 = 0.257;
/// The share of beers that stop above what is expected, and that end below it.
const STUCK: f64 = 0.1;
const LOW: f64 = 0.02;
/// The least that ferments, °P.
const LEAST_FALL: f64 = 0.1;
/// A satellite ends this far below the main beer at most, °P: two points.
const BELOW_MAIN: f64 = 2.0 * POINT;

/// One end that is weighed.
#[derive(Clone, Copy, Debug)]
pub(super) struct End {
    pub(super) extract: f64,
    /// ln of its weight before the readings.
    pub(super) log: f64,
}

/// The ends that are weighed.
pub(super) struct Ends {
    /// Rising.
    pub(super) nodes: Vec<End>,
    /// Where it most likely ends, evenly.
    pub(super) core: Span<Plato>,
    /// It leans on a satellite that was read twice.
    pub(super) by_satellite: bool,
}

impl Ends {
    /// What one end stands for: half way to the ends beside it.
    pub(super) fn cell(&self, index: usize) -> (f64, f64) {
        let at = |i: usize| self.nodes.get(i).map(|end| end.extract);
        let here = at(index).unwrap_or(0.0);
        let beside = |i: Option<usize>| i.and_then(at).map_or(here, |b| f64::midpoint(here, b));
        (beside(index.checked_sub(1)), beside(Some(index + 1)))
    }

    /// The middle of where it most likely ends.
    pub(super) fn middle(&self) -> Plato {
        self.core.middle()
    }
}

/// Where it may end: evenly within the core, falling off beyond it over `beyond`.
struct Core {
    from: f64,
    to: f64,
    beyond: f64,
}

impl Core {
    fn density(&self, extract: f64) -> f64 {
        let off = (self.from - extract).max(extract - self.to).max(0.0) / self.beyond;
        (-0.5 * off * off).exp() / (self.to - self.from + 2.5066 * self.beyond)
    }
}

/// The ends to weigh, by the satellite, by what the brewer was told, by the family.
pub(super) fn ends(course: &Course, start: Start, seen: &[Usable]) -> Ends {
    let found = satellite_of(course);
    let satellite = found.ended();
    let core = core(course, start, satellite);
    let weak = match found {
        SatelliteEnd::Unproven { lowest, .. } => Some(plato(lowest.value())),
        SatelliteEnd::Unread | SatelliteEnd::Ended(_) => None,
    };
    // Falling off by e over such a distance beyond the core.
    let beyond = |off: f64, room: f64| if off > 0.0 { (-off / room).exp() / room } else { 0.0 };
    let above = (0.7 * (start.extract - core.to)).max(1.0);
    let below = (0.15 * (start.extract - core.from)).max(1.0);
    let density = |extract: f64| {
        // A satellite read once, or still falling, only says that it hardly ends far above that.
        let over = weak.map_or(0.0, |end| (extract - end - BELOW_MAIN).max(0.0) / BELOW_MAIN);
        (1.0 - STUCK - LOW) * core.density(extract) * (-0.5 * over * over).exp()
            + STUCK * beyond(extract - core.to, above)
            + LOW * beyond(core.from - extract, below)
    };
    let last = seen.last().map_or(start.extract, |s| s.extract + 3.0 * s.sigma);
    let least = seen.iter().map(|s| s.extract - 3.0 * s.sigma).fold(f64::INFINITY, f64::min);
    let (from, to) = (core.from - 2.5 * core.beyond, core.to + 2.5 * core.beyond);
    let places = spread(least.min(from), from, 4)
        .chain(spread(from, to, 15))
        .chain(spread(to, last.max(to), 9))
        .chain([last.max(to)]);
    // What did not fall did not ferment.
    let places: Vec<f64> = places.map(|place| place.min(start.extract - LEAST_FALL)).collect();
    let nodes = (0..places.len()).map(|i| {
        let place = places[i];
        let before = i.checked_sub(1).map_or(place, |i| places[i]);
        let after = places.get(i + 1).copied().unwrap_or(place);
        End { extract: place, log: (density(place) * 0.5 * (after - before) + 1e-300).ln() }
    });
    Ends {
        nodes: nodes.collect(),
        core: Span::new(Plato::nearest(core.from), Plato::nearest(core.to)),
        by_satellite: satellite.is_some(),
    }
}

/// So many places from one to another, the last not among them; none where there is no room.
fn spread(from: f64, to: f64, count: usize) -> impl Iterator<Item = f64> {
    let count = if to > from { count } else { 0 };
    (0..count).map(move |i| from + (to - from) * i as f64 / count as f64)
}

fn core(course: &Course, start: Start, satellite: Option<Estimate<SpecificGravity>>) -> Core {
    if let Some(satellite) = satellite {
        let end = plato(satellite.value());
        let sigma = satellite.sigma() * plato_in(satellite.value());
        return Core { from: end, to: end + BELOW_MAIN, beyond: (0.7 * POINT).hypot(sigma) };
    }
    if let Some(stated) = course.stated_end {
        let end = plato(stated);
        return Core { from: end - POINT, to: end + POINT, beyond: 2.0 * POINT };
    }
    let attenuates = course.family.attenuates();
    let end = |attenuation: f64| start.extract * (1.0 - attenuation / 100.0);
    let (from, to) = (end(attenuates.to.value()), end(attenuates.from.value()));
    Core { from, to, beyond: (0.3 * (to - from)).clamp(0.3, 0.6) }
}

/// How fast: a middle and a spread, both of logarithms.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pace {
    /// ln of the hours to half way.
    pub(super) half: (f64, f64),
    /// ln of the whole fall's time at half way's pace, in the hours to half way.
    pub(super) fall: (f64, f64),
}

/// How fast such beer goes.
pub(super) fn pace(family: Family, seen: &[Usable]) -> Pace {
    let (days, spread) = match family {
        Family::CleanAle | Family::EnglishAle | Family::BelgianAle | Family::GermanWheat => {
            (2.0, 0.45)
        }
        Family::Kveik => (1.0, 0.5),
        Family::Lager => (4.5, 0.45),
        Family::Cider => (6.0, 0.55),
        Family::Wine => (4.5, 0.55),
        Family::Saison | Family::Unknown => (2.5, 0.6),
    };
    let usual = family.ferments_at().middle().value();
    let (sum, count) = seen
        .iter()
        .filter_map(|look| look.beer)
        .fold((0.0, 0.0), |(sum, count), beer| (sum + beer, count + 1.0));
    let beer = if count > 0.0 { sum / count } else { usual };
    // Warmer is faster, by about a twentieth a degree.
    let warmer = (0.05 * (beer - usual)).clamp(-0.35, 0.35);
    Pace { half: ((days * 24.0f64).ln() - warmer, spread), fall: (0.0, 0.4) }
}
