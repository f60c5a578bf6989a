//! What the log says of the beer since it went quiet: how warm, how cold, how long.

use super::line::ReadingLine;
use super::record::Vessel;
use crate::advice::practice::POINT;
use crate::quantity::{Celsius, HAIR, Hours, Measured, Moment, TemperatureChange};

/// This near its warmest it was as warm.
const AS_WARM: TemperatureChange = TemperatureChange::literal(-2.0);

/// The beer since it went quiet, as far as it was noted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quiet {
    /// The first reading from which on all lie within a point of the last.
    pub since: Moment,
    /// Its warmest; like the rest `None` while only one reading shows that it went quiet.
    pub warmest: Option<Celsius>,
    /// Its coldest.
    pub coldest: Option<Celsius>,
    /// The longest it was noted within two degrees of its warmest; `None` when that was noted once only.
    pub warm_for: Option<Hours>,
}

/// Beer that was this much colder was chilled.
const CHILLED: TemperatureChange = TemperatureChange::literal(5.0);

impl Quiet {
    /// Whether it was chilled since it went quiet, by its warmest and its coldest.
    #[must_use]
    pub fn was_chilled(&self) -> bool {
        let apart = self.warmest.zip(self.coldest).map(|(warm, cold)| warm.above(cold));
        apart.is_some_and(|apart| apart >= CHILLED)
    }
}

/// What the readings, the earliest first, say; `None` without a gravity of the main beer.
#[must_use]
pub fn quiet(lines: &[ReadingLine]) -> Option<Quiet> {
    let main = || lines.iter().filter(|line| line.reading.vessel == Vessel::Main);
    let gravity = |line: &ReadingLine| line.gravity().map(|sg| sg.value().value());
    let last = main().rev().find_map(gravity)?;
    // Within a point of the last reading it had all but ended.
    let near = |line: &&ReadingLine| {
        gravity(line).is_none_or(|sg| (sg - last).abs() <= POINT.value() + HAIR)
    };
    let run = main().rev().take_while(near).filter(|line| gravity(line).is_some());
    let (readings, since) = run.fold((0, None), |(n, _), line| (n + 1, Some(line.reading.at)));
    let since = since?;
    // One reading alone does not show since when; a cold one would pass for the warmest.
    let noted = || {
        let later = main().filter(move |line| readings > 1 && line.reading.at >= since);
        later.filter_map(|line| Some((line.reading.at, line.reading.beer?)))
    };
    let warmest = noted().map(|(_, t)| t).reduce(|a, b| if b > a { b } else { a });
    let coldest = noted().map(|(_, t)| t).reduce(|a, b| if b < a { b } else { a });
    let floor = warmest.and_then(|t| t.changed_by(AS_WARM).ok());
    let (mut begun, mut longest) = (None::<Moment>, 0.0);
    for (at, t) in noted() {
        if floor.is_none_or(|floor| t >= floor) {
            let from = *begun.get_or_insert(at);
            longest = f64::max(longest, at.since(from).value());
        } else {
            begun = None;
        }
    }
    let warm_for = (longest > 0.0).then(|| Hours::nearest(longest));
    Some(Quiet { since, warmest, coldest, warm_for })
}
