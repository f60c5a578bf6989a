//! What is not ruled out, and what is not believed.

use crate::advice::standing::Doubt;
use crate::quantity::{Measured, Share};
use crate::words::write::{self, Writer};

/// How many of such beers, and whether that is more than one.
pub(super) fn how_many(share: Share) -> (&'static str, bool) {
    const TENTHS: [&str; 8] = [
        "two in ten",
        "three in ten",
        "four in ten",
        "five in ten",
        "six in ten",
        "seven in ten",
        "eight in ten",
        "nine in ten",
    ];
    const ONE_IN: [(f64, &str); 12] = [
        (7.0, "one in seven"),
        (8.0, "one in eight"),
        (10.0, "one in ten"),
        (12.0, "one in twelve"),
        (15.0, "one in fifteen"),
        (20.0, "one in twenty"),
        (25.0, "one in twenty-five"),
        (30.0, "one in thirty"),
        (40.0, "one in forty"),
        (50.0, "one in fifty"),
        (70.0, "one in seventy"),
        (100.0, "one in a hundred"),
    ];
    let share = share.value();
    if share >= 0.95 {
        return ("nearly all", true);
    }
    if share >= 0.15 {
        let tenths = (10.0 * share).round().clamp(2.0, 9.0) as usize;
        return (TENTHS[tenths - 2], true);
    }
    let of = 1.0 / share.max(1e-3);
    let near = |n: f64| (n / of).ln().abs();
    let best = ONE_IN.iter().reduce(|a, b| if near(b.0) < near(a.0) { b } else { a });
    (best.map_or("few", |(_, said)| said), false)
}

/// With a large first letter.
fn begun(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}

/// One doubt.
pub(super) fn doubt(w: Writer, doubt: Doubt) -> String {
    let of = |share: Share| {
        let (many, plural) = how_many(share);
        (begun(many), if plural { ("are", "their") } else { ("is", "its") })
    };
    match doubt {
        Doubt::Tail(share, left) => {
            let (many, (are, their)) = of(share);
            format!(
                "{many} such beers {are} still in {their} last slow fall: about {} would come.",
                w.points(left.points())
            )
        }
        Doubt::Stall(share, left) => {
            let (many, (are, _)) = of(share);
            format!(
                "{many} such beers {are} only resting and may wake: about {} would come.",
                w.points(left.points())
            )
        }
        Doubt::Eaten(share, left) => format!(
            "In {} something else eats on slowly, a wild or a diastatic yeast: about {} would come.",
            how_many(share).0,
            w.points(left.points())
        ),
        Doubt::FarFromCourse(at) => {
            format!("The reading of {} lies far from the others. Was it a slip?", write::moment(at))
        }
        Doubt::Ahead(at) => format!(
            "The reading of {} is dated ahead: until then it proves nothing. Is the date right?",
            w.ahead(at)
        ),
        Doubt::BeforeYeast(at) => format!(
            "The reading of {} is dated before the yeast went in. Is the date right?",
            write::moment(at)
        ),
        Doubt::PitchingLongBefore(at) => format!(
            "The yeast is said to have gone in on {}, long before the batch was begun; it is counted from the batch's own day.",
            write::day(at)
        ),
        Doubt::TwoInstruments => {
            "It was read with more than one hydrometer, and they may differ by a point or two."
                .to_owned()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_said_as_one_says_it_aloud() {
        let said = |share: f64| how_many(Share::literal(share)).0;
        assert_eq!(
            [0.05, 0.024, 0.1, 0.3, 0.62, 0.99].map(said),
            [
                "one in twenty",
                "one in forty",
                "one in ten",
                "three in ten",
                "six in ten",
                "nearly all",
            ]
        );
    }
}
