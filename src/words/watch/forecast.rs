//! The forecast in words.

use super::points;
use crate::advice::watch::forecast::{Forecast, OnePointLeft, Refusal};
use crate::words::write::{self, Writer};

/// What it foretells: the end, and when a point or less is left.
pub(super) fn forecast(w: Writer, forecast: &Forecast) -> String {
    let end = format!(
        "Forecast, in four of five such beers: it ends between {} and {}",
        w.gravity(forecast.end.from),
        w.gravity(forecast.end.to)
    );
    let when = match forecast.one_point_left {
        OnePointLeft::Already => "a point or less was left at the last reading".to_owned(),
        OnePointLeft::Between(from, to) => {
            format!("a point or less is left between {} and {}", w.day_ahead(from), w.day_ahead(to))
        }
        OnePointLeft::From(from) => format!(
            "a point or less is left from {} at the soonest, and nobody can say by when",
            w.day_ahead(from)
        ),
        OnePointLeft::NotWithin(hours) => {
            format!("more than a point is left for {} and longer", write::duration(hours))
        }
    };
    let left = points(forecast.left_now);
    format!("{end}, and {when}. Left at the last reading: {left} at most. Only readings decide.")
}

/// Why it is not shown.
pub(super) fn refusal(refusal: Refusal) -> String {
    match refusal {
        Refusal::PitchNotNoted => "No forecast: nobody noted when the yeast went in.".to_owned(),
        Refusal::StartUnknown => "No forecast: the starting gravity is not known.".to_owned(),
        Refusal::MayGoOn => {
            "No forecast: what may go on for weeks has no end that can be foretold.".to_owned()
        }
        Refusal::TooFew { have } => format!(
            "No forecast yet: it takes three readings since the yeast went in, and there are {have}."
        ),
    }
}
