//! The forecast in words.

use super::doubts::how_many;
use crate::advice::standing::{Hump, Outlook};
use crate::quantity::{Measured, Moment};
use crate::words::write::Writer;

/// Further ahead than this no day is named.
const FAR: f64 = 50.0 * 24.0;

/// Before anything was read.
pub(super) const NONE: &str =
    "No forecast yet: the beer has to be read once since the yeast went in.";

fn between(w: Writer, hump: Hump) -> String {
    format!("{} and {}", w.gravity(hump.end.from), w.gravity(hump.end.to))
}

/// What is foretold as one looks at it at `now`: the end, both where there are two, and when a point or
/// less is left.
pub(super) fn forecast(w: Writer, outlook: &Outlook, now: Moment) -> String {
    let window = outlook.one_point;
    let day = |at| w.day_ahead(at);
    let when = if window.to <= now {
        "a point or less is left by now".to_owned()
    } else if window.to.since(now).value() > FAR {
        format!(
            "a point or less is left from {} at the soonest, and nobody can say by when",
            day(window.from.max(now))
        )
    } else if window.from <= now {
        format!("a point or less is left by {}, perhaps already", day(window.to))
    } else {
        format!("a point or less is left between {} and {}", day(window.from), day(window.to))
    };
    let end = between(w, outlook.end);
    let said = match outlook.wakes {
        Some(hump) if hump.share.value() > 0.5 => {
            let (many, _) = how_many(hump.share);
            let wakes = between(w, hump);
            format!(
                "Forecast: {many} such beers rest here and go on later, to end between {wakes}; the others have all but ended, between {end}."
            )
        }
        Some(hump) => {
            let (many, plural) = how_many(hump.share);
            let (rest, go) = if plural { ("rest", "go") } else { ("rests", "goes") };
            let wakes = between(w, hump);
            format!(
                "Forecast, in four of five such beers: it ends between {end}, and {when}. But {many} {rest} on the way and {go} on later, to end between {wakes}."
            )
        }
        None => {
            format!("Forecast, in four of five such beers: it ends between {end}, and {when}.")
        }
    };
    format!("{said} Only readings decide.")
}
