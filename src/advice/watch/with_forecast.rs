//! The rule and the forecast together: the more cautious of the two wins.
//!
//! The rule of [`judge`] alone can call a beer finished. Where the forecast says that more
//! than a point is more likely left than not, one more reading is asked for; and what may be left is the larger of
//! the two bounds. The forecast that judges takes every reading as equally rough, half a usual division:
//! else a rougher reading, which lets it say less, could make a beer look more finished.

use super::course::{Course, Finish, Look, Measure, Next, NextMeasurement, Reason, State};
use super::finished::judge;
use super::forecast::{Forecast, HORIZON, OnePointLeft, Refusal, forecast};
use crate::advice::Verdict;
use crate::advice::practice::HALF_DIVISION;
use crate::quantity::{Estimate, GravityChange, Measured, Moment, SpecificGravity};

/// Both, and what they come to.
#[derive(Clone, Debug, PartialEq)]
pub struct WithForecast {
    /// The judgement.
    pub finish: Finish,
    /// The forecast as it is shown, by the readings with their own errors, or why there is none.
    pub forecast: Result<Forecast, Refusal>,
}

/// Judges a course by the rule and by the forecast.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::watch::{Course, State, with_forecast::judge_with_forecast};
/// use fermentside::advice::watch::forecast::Refusal;
///
/// let unread = judge_with_forecast(&Course::of(Family::CleanAle));
/// assert_eq!(unread.finish.state, State::CannotTell);
/// assert_eq!(unread.forecast, Err(Refusal::PitchNotNoted));
/// ```
#[must_use]
pub fn judge_with_forecast(course: &Course) -> WithForecast {
    let finish = judge(course);
    let shown = forecast(course);
    let finish = match &shown {
        // Only a finish could be lost to it.
        Ok(_) if finish.state == State::Finished => match forecast(&alike(course)) {
            Ok(judging) => the_more_cautious(finish, &judging),
            Err(_) => finish,
        },
        Ok(shown) => the_more_cautious(finish, shown),
        Err(_) => finish,
    };
    WithForecast { finish, forecast: shown }
}

fn alike(course: &Course) -> Course {
    let same = |e: Estimate<SpecificGravity>| Estimate::new(e.value(), HALF_DIVISION.value());
    let looks = |looks: &[Look]| {
        looks.iter().map(|look| Look { gravity: same(look.gravity), ..*look }).collect()
    };
    Course {
        main: looks(&course.main),
        satellite: looks(&course.satellite),
        original: course.original.map(same),
        ..course.clone()
    }
}

/// From when a point or less is as likely left as not, when that lies after the last reading; where
/// nobody can say by when, the end of what can be foretold.
fn ahead(forecast: &Forecast) -> Option<Moment> {
    let soonest = match forecast.one_point_left {
        OnePointLeft::Already => return None,
        OnePointLeft::Between(from, _) | OnePointLeft::From(from) => from,
        OnePointLeft::NotWithin(hours) => forecast.last.after(hours),
    };
    let likely = forecast.one_point_middle.unwrap_or(forecast.last.after(HORIZON)).max(soonest);
    (likely > forecast.last).then_some(likely)
}

fn the_more_cautious(mut finish: Finish, forecast: &Forecast) -> Finish {
    let more =
        |left: GravityChange| if left < forecast.left_now { forecast.left_now } else { left };
    finish.points_left = finish.points_left.map(more);
    let Some(from) = ahead(forecast).filter(|_| finish.state == State::Finished) else {
        return finish;
    };
    finish.state = State::OneMore;
    finish.advice.verdict = Verdict::Wait;
    finish.advice.reasons.push(Reason::ForecastAhead(from));
    finish.advice.next = Next::ReadAgain(from);
    finish.settles = Some(NextMeasurement { by: Measure::ReadBeer, at: from });
    finish
}
