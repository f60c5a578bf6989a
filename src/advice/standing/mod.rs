//! How a batch stands: judged once, from what is recorded, and read by every screen.
//!
//! What is left to ferment is one posterior over a fixed grid of courses (`shapes`), weighed by all
//! readings (`weigh`) and by where such beer ends (`ends`): ended, in its tail, stalled and able to wake,
//! eaten slowly by something else (`left`). Beside it stands what sound readings prove by a sum on paper
//! (`proof`); the bottles are guarded by the larger of the two (`judge`). It is finished when the usual
//! dose then passes for the bottles on hand (`sugar`), and not before.

mod ahead;
mod ends;
mod histogram;
mod judge;
mod left;
mod looks;
mod outlook;
mod proof;
mod record;
mod refracted;
mod said;
mod say;
mod shapes;
mod sugar;
pub mod ways_to_dose;
mod weigh;

pub use looks::dated_ahead;
pub use record::{Opened, Record, Seen};
pub use said::{
    BandPoint, Doubt, Hazard, Hump, Next, Outlook, Part, Reason, Stage, State, SugarDate,
    SugarFrom, WhatIsLeft,
};
pub use sugar::{USUAL_TARGET, allowed, usual_bottling};

use super::Verdict;
use super::practice::waking;
use crate::quantity::{Hours, Measured, Moment, Share};
use crate::science::{Amount, Source, Term, Worked};
use judge::{Case, Judged};

/// The part of the posterior that lies under the bound for the bottles.
///
/// Chosen by the curve that `tests/calibration` prints, together with how often a beer is counted as
/// stalled: so some one beer in fifteen that rests 2 to 8 points high without a satellite gets a dose over
/// the ceiling, one in eighty by more than 0.7 volumes, and one ordinary ale in eight waits for longer than
/// two weeks or for a satellite.
pub const QUANTILE: f64 = 0.93;
/// No reading further ahead than this is looked for.
pub const WITHIN: Hours = Hours::literal(35.0 * 24.0);
/// A late satellite is read the second time after so long: two days warm, and a day.
const LATE_SATELLITE: Hours = Hours::literal(72.0);

/// How a batch stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The stage it is in.
    pub stage: Stage,
    /// How the beer stands.
    pub state: State,
    /// The word.
    pub verdict: Verdict,
    /// Why, the weightiest first.
    pub reasons: Vec<Reason>,
    /// What is not ruled out or not believed.
    pub doubts: Vec<Doubt>,
    /// What to do.
    pub next: Next,
    /// What outranks everything.
    pub hazards: Vec<Hazard>,
    /// What is left at the last reading.
    pub left: WhatIsLeft,
    /// When sugar may go in.
    pub sugar: SugarDate,
    /// What is foretold; `None` before anything was read.
    pub outlook: Option<Outlook>,
    /// How it was worked out.
    pub worked: Worked,
}

impl Standing {
    /// Judges a record as it is at `now`.
    ///
    /// ```
    /// use fermentside::advice::family::Family;
    /// use fermentside::advice::standing::{Next, Record, Standing};
    /// use fermentside::quantity::Moment;
    ///
    /// let begun: Moment = "2026-04-01T18:00+01:00".parse()?;
    /// let found = Standing::of(&Record::of(Family::CleanAle, begun), begun);
    /// assert_eq!(found.next, Next::Pitch);
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn of(record: &Record, now: Moment) -> Self {
        Self::at(record, now, QUANTILE)
    }

    /// The same with another part of the posterior under the bound: for the curve by which
    /// [`QUANTILE`] was chosen.
    ///
    /// ```
    /// use fermentside::advice::family::Family;
    /// use fermentside::advice::standing::{QUANTILE, Record, Standing};
    /// use fermentside::quantity::Moment;
    ///
    /// let record = Record::of(Family::CleanAle, Moment::EPOCH);
    /// let now = Moment::EPOCH;
    /// assert_eq!(Standing::at(&record, now, QUANTILE), Standing::of(&record, now));
    /// ```
    #[must_use]
    pub fn at(record: &Record, now: Moment, quantile: f64) -> Self {
        if record.bottled.is_some() {
            return Self::bottled(record);
        }
        let (case, judged) = Case::new(record, now, quantile);
        let room = allowed(record).map(|left| left.points());
        let mut state = say::state(&case, &judged, room);
        let hazards = hazards(record);
        let outlook = (!case.looks.main.is_empty()).then(|| outlook::outlook(&case, &judged));
        let sugar = sugar_date(&case, &judged, state, room, outlook.as_ref());
        let promised = match sugar.from {
            SugarFrom::About(at) => Some(at),
            _ => None,
        };
        let foretold = outlook.as_ref().map(|outlook| outlook.one_point_middle);
        let mut next = say::next(&case, &judged, state, promised, foretold);
        let reasons = say::reasons(&case, &judged, state, room);
        let doubts = say::doubts(&case, &judged, now);
        let mut verdict = match state {
            State::Finished => Verdict::Go,
            State::LooksStuck => Verdict::Stop,
            State::CannotTell => Verdict::CantTell,
            State::NotStarted | State::Falling | State::Slow | State::Level => Verdict::Wait,
        };
        let stage = match (record.pitched, state) {
            (None, _) if !say::begun(&case) => Stage::Pitch,
            (_, State::Finished) => Stage::Bottle,
            _ => Stage::Watch,
        };
        if stage == Stage::Pitch {
            next = Next::Pitch;
            state = State::CannotTell;
        }
        if !hazards.is_empty() {
            verdict = Verdict::Stop;
            next = Next::MakeSafe;
        }
        let left = what_is_left(&judged);
        let worked = worked(&case, &judged, &left, outlook.as_ref());
        Self { stage, state, verdict, reasons, doubts, next, hazards, left, sugar, outlook, worked }
    }
}

impl Standing {
    /// Nothing is known of it.
    pub(crate) fn unknown() -> Self {
        let nothing = Part { share: Share::nearest(0.0), left: say::change(0.0) };
        let left = WhatIsLeft {
            ended: nothing,
            tail: nothing,
            stalled: nothing,
            eaten: nothing,
            mean: nothing.left,
            upper: nothing.left,
            bounded: false,
            fermented: false,
        };
        Self {
            stage: Stage::Pitch,
            state: State::CannotTell,
            verdict: Verdict::CantTell,
            reasons: vec![],
            doubts: vec![],
            next: Next::Pitch,
            hazards: vec![],
            left,
            sugar: SugarDate { from: SugarFrom::NotKnown, with_satellite: None },
            outlook: None,
            worked: Worked::default(),
        }
    }

    /// In bottles nothing is judged but what was seen of them.
    fn bottled(record: &Record) -> Self {
        let hazards = hazards(record);
        let (verdict, next) = if hazards.is_empty() {
            (Verdict::CantTell, Next::Open)
        } else {
            (Verdict::Stop, Next::MakeSafe)
        };
        Self { stage: Stage::Open, verdict, next, hazards, ..Self::unknown() }
    }
}

/// A gush or a burst after which nothing was done.
fn hazards(record: &Record) -> Vec<Hazard> {
    let open = |at: &Moment| record.made_safe.is_none_or(|safe| safe < *at);
    let gushed = record.opened.iter().filter(|(at, how)| *how == Opened::Gushed && open(at));
    gushed.map(|(at, _)| Hazard::Gushed(*at)).collect()
}

/// From when sugar may go in; each date is tried by the judgement itself.
fn sugar_date(
    case: &Case,
    judged: &Judged,
    state: State,
    room: Option<f64>,
    outlook: Option<&Outlook>,
) -> SugarDate {
    let nothing = SugarDate { from: SugarFrom::NotKnown, with_satellite: None };
    let (Some(last), Some(room)) = (case.looks.main.last(), room) else { return nothing };
    if case.looks.read_until != Some(last.at) {
        return nothing;
    }
    match state {
        State::Finished => return SugarDate { from: SugarFrom::Now, ..nothing },
        State::NotStarted | State::CannotTell => return nothing,
        State::Falling | State::Slow => {
            let nights = Hours::nearest(proof::NIGHTS[case.tail as usize]);
            let from = outlook.map_or(SugarFrom::NotKnown, |outlook| {
                SugarFrom::Foretold(waking(outlook.one_point.to.max(last.at).after(nights)))
            });
            return SugarDate { from, ..nothing };
        }
        State::Level | State::LooksStuck => {}
    }
    let case = &case.stricter();
    let likely = case.likely(judged);
    let passes = |bound: Option<f64>| bound.is_some_and(|bound| bound <= room);
    let date = |step| waking(last.at.after(ahead::after(step)));
    let at = |step| date(step).since(case.looks.from).value();
    let holds = |case: &Case, step| passes(case.with_reading(at(step)));
    let soonest = ahead::soonest(&|step| holds(&likely, step), &|step| holds(case, step));
    let from = soonest.map_or(SugarFrom::NotWithin(WITHIN), |step| SugarFrom::About(date(step)));
    let late = last.hours + LATE_SATELLITE.value();
    let sooner = !case.record.may_go_on()
        && case.ends.satellite.is_none()
        && soonest.is_none_or(|step| at(step) > late)
        && passes(case.after_satellite(late).and_then(|(_, judged)| judged.bound));
    SugarDate { from, with_satellite: sooner.then_some(LATE_SATELLITE) }
}

fn what_is_left(judged: &Judged) -> WhatIsLeft {
    let (shares, kinds) = (&judged.shares, &judged.kinds);
    let part =
        |share: f64, points: f64| Part { share: Share::nearest(share), left: say::change(points) };
    WhatIsLeft {
        ended: part(shares.ended, kinds.healthy.mean_below(0.5)),
        tail: part(shares.tail, kinds.healthy.mean_above(0.5)),
        stalled: part(shares.stalled, kinds.stalled.mean()),
        eaten: part(shares.eaten, kinds.eaten.mean()),
        mean: say::change(shares.left.mean()),
        upper: say::change(judged.bound.unwrap_or(judged.upper)),
        bounded: judged.bound.is_some(),
        fermented: judged.fermented,
    }
}

fn worked(case: &Case, judged: &Judged, left: &WhatIsLeft, outlook: Option<&Outlook>) -> Worked {
    let mut worked = Worked::default()
        .input(Term::ReadingsUsed, Amount::Number(case.looks.main.len() as f64, 0, ""))
        .step(
            Term::ExpectedEnd,
            say::gravity(case.ends.expected().0),
            if case.ends.own.is_some() {
                "by yeast, start, stated end, own batches and satellite"
            } else {
                "by yeast, start, stated end and satellite"
            },
            Source::CommonPractice,
        );
    if let Some(outlook) = outlook {
        worked = worked.step(
            Term::ForecastEnd,
            outlook.end.middle,
            "the middle of all courses, weighed by the readings",
            Source::LogisticCurve,
        );
    }
    if let Some(proven) = judged.proof.left {
        worked = worked.step(
            Term::ReadingError,
            Amount::Points(proven),
            "1.17 √(σ₁² + σ₂²) ÷ (e^(kt) − 1)",
            Source::Propagation,
        );
    }
    worked.step(
        Term::PointsLeft,
        Amount::Points(left.upper.points()),
        "93 % of the courses, weighed by the readings, or what these leave open",
        Source::WeighedCurves,
    )
}
