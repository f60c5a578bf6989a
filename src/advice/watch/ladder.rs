//! What to do when it is slow, stuck or has not begun: the steps in order, the cheap and harmless first,
//! and which of them the record already shows done.
//!
//! Air is for wort that never began. In beer that has fermented in part it does harm.

use crate::advice::family::Span;
use crate::advice::practice::{AFTER_ROUSING, Lag, waking};
use crate::advice::standing::{Next, Reason, Record, Standing, State};
use crate::quantity::{Celsius, Hours, Measured, Moment};

/// A yeast is warm enough within this of the top of its range, °C.
const NEARLY: f64 = 0.5;

/// One step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remedy {
    /// Leave it closed until then.
    LeaveClosed(Moment),
    /// Look for foam, a dried ring, drops under the lid; press the lid.
    LookForSigns(Moment),
    /// Take a gravity then.
    TakeGravity(Moment),
    /// Knock the gas out of the sample and read it again.
    Degas,
    /// Note the sample's temperature.
    SampleTemperature,
    /// Check the hydrometer in water.
    WaterCheck,
    /// Compare with a satellite that has ended.
    CompareSatellite,
    /// Warm it gently to this, the top of the yeast's range.
    WarmTo(Celsius),
    /// Bring it into the yeast's range.
    BringInto(Span<Celsius>),
    /// Swirl the yeast up gently, without splashing.
    Rouse,
    /// Wait until then, and read again.
    WaitUntil(Moment),
    /// Shake or splash: only what never began.
    Aerate,
    /// Fresh yeast, awake and working when it goes in.
    FreshYeast,
}

/// A step, and whether the record shows it done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rung {
    /// What.
    pub step: Remedy,
    /// Shown done by what was noted.
    pub done: bool,
}

/// What the record shows of the last reading and the place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// The last sample stood still, its gas knocked out.
    pub degassed: bool,
    /// Its temperature was noted.
    pub sample_temperature: bool,
    /// The hydrometer was checked: in water, or in a sugar solution as well.
    pub checked: bool,
    /// Of the beer, as last noted.
    pub beer: Option<Celsius>,
    /// The range the yeast ferments in.
    pub range: Span<Celsius>,
}

/// The steps for how it stands; none when nothing is wrong.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::standing::{Record, Seen, Standing};
/// use fermentside::advice::watch::ladder::{Remedy, Shown, ladder};
/// use fermentside::quantity::{Estimate, Hours, Moment, SpecificGravity};
///
/// let read = |sg| Estimate::new(SpecificGravity::literal(sg), 0.001);
/// let at = |hours| Moment::EPOCH.after(Hours::literal(hours));
/// let seen = |hours| {
///     Seen { at: at(hours), gravity: read(1.030), beer: None, instrument: 0, doubtful: false }
/// };
/// let stuck = Record {
///     main: [240.0, 312.0].map(seen).to_vec(),
///     original: Some(read(1.050)),
///     pitched: Some(Moment::EPOCH),
///     ..Record::of(Family::CleanAle, Moment::EPOCH)
/// };
/// let (degassed, sample_temperature, checked) = (true, false, false);
/// let range = Family::CleanAle.ferments_at();
/// let shown = Shown { degassed, sample_temperature, checked, beer: None, range };
/// let rungs = ladder(&stuck, &Standing::of(&stuck, at(312.0)), shown);
/// assert_eq!((rungs[0].step, rungs[0].done), (Remedy::Degas, true));
/// let unread = Record { main: vec![], ..stuck };
/// assert_eq!(ladder(&unread, &Standing::of(&unread, at(312.0)), shown), []);
/// ```
#[must_use]
pub fn ladder(record: &Record, standing: &Standing, shown: Shown) -> Vec<Rung> {
    let last = record.main.iter().map(|seen| seen.at).max();
    match (standing.state, last) {
        (State::NotStarted, Some(last)) => not_started(record, standing, shown, last),
        (State::Slow | State::LooksStuck, Some(last)) => slow(standing, shown, last),
        _ => vec![],
    }
}

fn rung(step: Remedy, done: bool) -> Rung {
    Rung { step, done }
}

fn slow(standing: &Standing, shown: Shown, last: Moment) -> Vec<Rung> {
    let satellite = standing.reasons.iter().any(|why| matches!(why, Reason::Satellite(..)));
    let top = shown.range.to;
    let warm = shown.beer.is_some_and(|beer| beer.value() >= top.value() - NEARLY);
    vec![
        rung(Remedy::Degas, shown.degassed),
        rung(Remedy::SampleTemperature, shown.sample_temperature),
        rung(Remedy::WaterCheck, shown.checked),
        rung(Remedy::CompareSatellite, satellite),
        rung(Remedy::WarmTo(top), warm),
        rung(Remedy::Rouse, false),
        rung(Remedy::WaitUntil(waking(last.after(AFTER_ROUSING))), false),
        rung(Remedy::FreshYeast, false),
    ]
}

fn not_started(record: &Record, standing: &Standing, shown: Shown, last: Moment) -> Vec<Rung> {
    let first = record.main.iter().map(|seen| seen.at).min();
    let from = record.pitched.or(first).unwrap_or(last);
    let lag = Lag::of(Lag::is_slow(record.family, record.beer_at_last()));
    let after = |hours: Hours| waking(from.after(hours));
    let passed = |hours: Hours| last.since(from) >= hours;
    let mut steps = vec![
        rung(Remedy::LeaveClosed(after(lag.signs)), passed(lag.signs)),
        rung(Remedy::LookForSigns(after(lag.signs)), false),
        rung(Remedy::TakeGravity(after(lag.gravity)), passed(lag.gravity)),
        rung(
            Remedy::BringInto(shown.range),
            shown.beer.is_some_and(|beer| shown.range.contains(beer)),
        ),
    ];
    // Air and fresh yeast are named only once it is time for them.
    if standing.next == Next::PitchAgain {
        steps.extend([rung(Remedy::Aerate, false), rung(Remedy::FreshYeast, false)]);
    } else {
        steps.push(rung(Remedy::WaitUntil(after(lag.pitch_again)), false));
    }
    steps
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::family::Family;
    use crate::advice::standing::Seen;
    use crate::quantity::{Estimate, SpecificGravity};

    fn at(day: f64) -> Moment {
        let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        start.after(Hours::nearest(24.0 * day))
    }

    fn seen(readings: &[(f64, f64)]) -> Vec<Seen> {
        let seen = |&(day, sg): &(f64, f64)| Seen {
            at: at(day),
            gravity: Estimate::new(SpecificGravity::literal(sg), 0.0005),
            beer: None,
            instrument: 0,
            doubtful: false,
        };
        readings.iter().map(seen).collect()
    }

    fn steps(main: &[(f64, f64)], satellite: &[(f64, f64)], beer: Option<f64>) -> Vec<Rung> {
        let record = Record {
            main: seen(main),
            satellite: seen(satellite),
            original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.0005)),
            pitched: Some(at(0.0)),
            ..Record::of(Family::CleanAle, at(0.0))
        };
        let shown = Shown {
            degassed: true,
            sample_temperature: true,
            checked: false,
            beer: beer.map(Celsius::nearest),
            range: Family::CleanAle.ferments_at(),
        };
        ladder(&record, &Standing::of(&record, at(60.0)), shown)
    }

    fn done(steps: &[Rung]) -> Vec<Remedy> {
        steps.iter().filter(|rung| rung.done).map(|rung| rung.step).collect()
    }

    #[test]
    fn a_stuck_beer_is_read_well_before_anything_is_done_to_it() {
        let found = steps(&[(9.0, 1.022), (12.0, 1.022)], &[], None);
        let order: Vec<_> = found.iter().map(|rung| rung.step).collect();
        assert_eq!(
            order,
            [
                Remedy::Degas,
                Remedy::SampleTemperature,
                Remedy::WaterCheck,
                Remedy::CompareSatellite,
                Remedy::WarmTo(Celsius::literal(22.0)),
                Remedy::Rouse,
                Remedy::WaitUntil(at(15.0)),
                Remedy::FreshYeast,
            ]
        );
        assert_eq!(done(&found), [Remedy::Degas, Remedy::SampleTemperature]);
        let more = steps(&[(9.0, 1.022), (12.0, 1.022)], &[(4.0, 1.01), (5.0, 1.01)], Some(21.8));
        assert!(done(&more).contains(&Remedy::CompareSatellite));
        assert!(done(&more).contains(&Remedy::WarmTo(Celsius::literal(22.0))));
    }

    #[test]
    fn air_is_only_for_what_never_began() {
        let aerates = |found: &[Rung]| found.iter().any(|rung| rung.step == Remedy::Aerate);
        assert!(!aerates(&steps(&[(9.0, 1.022), (12.0, 1.022)], &[], None)));
        assert!(!aerates(&steps(&[(2.0, 1.048)], &[], None)));
        let late = steps(&[(2.0, 1.048), (3.0, 1.048)], &[], Some(19.0));
        assert!(aerates(&late) && late.last().map(|rung| rung.step) == Some(Remedy::FreshYeast));
        assert!(done(&late).contains(&Remedy::TakeGravity(at(2.0))));
    }

    #[test]
    fn what_is_well_wants_no_steps() {
        assert!(steps(&[(9.0, 1.010), (12.0, 1.010)], &[], None).is_empty());
        assert!(steps(&[(3.0, 1.024), (6.0, 1.014)], &[], None).is_empty());
    }
}
