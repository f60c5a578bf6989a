//! How often the forecast is right: over a thousand simulated batches, in families that the model knows
//! and in families that it does not; and how near, beside a plain line through the last two readings.
//!
//! `cargo test --test calibration -- --nocapture` prints every figure. The batches look drawn by lot and
//! are always the same ones; `TIMES=4` tries so many times as many, `SEED=1000` others.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod courses;
mod proving;
mod reader;
mod simulated;
mod timing;

use fermentside::advice::family::Family;
use fermentside::advice::watch::expected_end;
use fermentside::advice::watch::forecast::{Forecast, HORIZON, OnePointLeft, forecast};
use fermentside::quantity::{Hours, Measured, Moment};
use simulated::{Batch, Kind, Lot};
use std::sync::OnceLock;

/// One family of batches.
struct Tried {
    name: &'static str,
    family: Family,
    kind: Kind,
    satellite: bool,
    /// How many.
    count: usize,
    /// The widest median of the window for the end, points: right by being useless is not right.
    widest: f64,
}

const fn tried(name: &'static str, family: Family, kind: Kind, widest: f64) -> Tried {
    Tried { name, family, kind, satellite: false, count: 120, widest }
}

/// The last two are stalls that have not lasted a day by the last reading: no one can know of those, so
/// only what is left is held to account there.
const FAMILIES: [Tried; 15] = [
    tried("own, clean ale", Family::CleanAle, Kind::Own, 6.0),
    tried("own, English ale", Family::EnglishAle, Kind::Own, 7.0),
    tried("own, lager", Family::Lager, Kind::Own, 7.0),
    tried("own, kveik", Family::Kveik, Kind::Own, 6.0),
    tried("own, cider", Family::Cider, Kind::Own, 12.0),
    tried("own, not known", Family::Unknown, Kind::Own, 9.0),
    Tried { satellite: true, ..tried("own, satellite", Family::CleanAle, Kind::Own, 5.0) },
    tried("asymmetric", Family::CleanAle, Kind::Skewed, 6.0),
    tried("Gompertz", Family::CleanAle, Kind::Gompertz, 6.0),
    tried("two stages", Family::CleanAle, Kind::TwoStages, 7.0),
    Tried {
        satellite: true,
        ..tried("two stages, satellite", Family::Lager, Kind::TwoStages, 6.0)
    },
    tried("stalled, resumes", Family::CleanAle, Kind::Resumed, 14.0),
    tried("stalled for good", Family::CleanAle, Kind::Stuck, 15.0),
    Tried { count: 60, ..tried("resumes, unseen", Family::CleanAle, Kind::Resumed, 14.0) },
    Tried { count: 60, ..tried("for good, unseen", Family::CleanAle, Kind::Stuck, 15.0) },
];

impl Tried {
    fn unseen(&self) -> bool {
        self.name.ends_with("unseen")
    }

    fn stalls(&self) -> bool {
        matches!(self.kind, Kind::Resumed | Kind::Stuck)
    }
}

/// How one forecast did.
struct Outcome {
    /// The truth lay in the window of the end, of the date, and in the band at a later time.
    end: bool,
    date: bool,
    later: bool,
    /// No more was left than the bound says.
    left: bool,
    /// The date lay ahead of the last reading.
    ahead: bool,
    end_width: f64,
    date_width: f64,
    /// Errors of the forecast's middle and of the plain line: points and days.
    ours: (f64, f64),
    plain: (f64, f64),
}

fn days(later: Moment, earlier: Moment) -> f64 {
    later.since(earlier).days()
}

fn outcome(batch: &Batch, found: &Forecast, ahead: f64) -> Outcome {
    let (end, one_point, last) = (batch.end(), batch.one_point(), batch.last);
    let (date, date_width) = match found.one_point_left {
        OnePointLeft::Already => (one_point <= last, 0.0),
        // From the last reading on is also "perhaps already".
        OnePointLeft::Between(from, to) => {
            ((from <= one_point || from == last) && one_point <= to, days(to, from))
        }
        OnePointLeft::From(from) => {
            (from <= one_point || from == last, HORIZON.days() - days(from, last))
        }
        OnePointLeft::NotWithin(hours) => (one_point > last.after(hours), f64::INFINITY),
    };
    let after = last.after(Hours::nearest(24.0 * ahead));
    let point = found.band.iter().find(|p| p.at >= after).expect("the band goes on for days");
    // What has passed has passed: a date before the last reading is "already".
    let known = one_point.max(last);
    let middle = found.one_point_middle.unwrap_or(last.after(HORIZON)).max(last);
    let (plain_end, plain_date) = plain(batch);
    Outcome {
        end: (found.end.from.value()..=found.end.to.value()).contains(&end),
        date,
        later: (point.low.value()..=point.high.value()).contains(&batch.at(point.at)),
        left: batch.at(last) - end <= found.left_now.value(),
        ahead: one_point > last,
        end_width: (found.end.to.value() - found.end.from.value()) * 1000.0,
        date_width,
        ours: ((found.end_middle.value() - end).abs() * 1000.0, days(middle, known).abs()),
        plain: ((plain_end - end).abs() * 1000.0, days(plain_date, known).abs()),
    }
}

/// The plain line through the last two readings. Falling, it goes on to the middle of the expected end,
/// and the date is when it is a point above that, within the same horizon; level or rising, the last
/// reading is the end and the date is now.
fn plain(batch: &Batch) -> (f64, Moment) {
    let [.., before, last] = batch.course.main.as_slice() else { panic!("two readings") };
    let now = last.gravity.value().value();
    let per_hour = (before.gravity.value().value() - now) / last.at.since(before.at).value();
    let end = expected_end(&batch.course).expect("the start is known").middle().value();
    if per_hour <= 0.0 {
        return (now, last.at);
    }
    let hours = ((now - end - 0.001) / per_hour).clamp(0.0, HORIZON.value());
    (end.min(now), last.at.after(Hours::nearest(hours)))
}

fn quantile(values: impl Iterator<Item = f64>, share: f64) -> f64 {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    values[(share * (values.len() - 1) as f64).round() as usize]
}

fn percent(outcomes: &[&Outcome], of: fn(&Outcome) -> bool) -> f64 {
    100.0 * outcomes.iter().filter(|o| of(o)).count() as f64 / outcomes.len() as f64
}

fn at(outcomes: &[&Outcome], share: f64, of: fn(&Outcome) -> f64) -> f64 {
    quantile(outcomes.iter().map(|o| of(o)), share)
}

/// Every batch of every family, forecast once for all tests.
fn all() -> &'static [Vec<Outcome>] {
    static ALL: OnceLock<Vec<Vec<Outcome>>> = OnceLock::new();
    let number = |name: &str| std::env::var(name).ok().and_then(|n| n.parse::<u64>().ok());
    let (times, seed) = (number("TIMES").unwrap_or(1) as usize, number("SEED").unwrap_or(1));
    ALL.get_or_init(|| {
        let of_one = |(index, tried): (usize, &Tried)| {
            let mut lot = Lot::new(seed + index as u64);
            let mut outcomes = Vec::new();
            while outcomes.len() < tried.count * times {
                let batch = Batch::draw(&mut lot, tried.family, tried.kind, tried.satellite);
                let ahead = lot.between(0.3, 2.5);
                if tried.stalls() && batch.stall_is_seen() == tried.unseen() {
                    continue;
                }
                // Too few looks two hours apart is the only reason left to refuse.
                let Ok(found) = forecast(&batch.course) else { continue };
                outcomes.push(outcome(&batch, &found, ahead));
            }
            outcomes
        };
        FAMILIES.iter().enumerate().map(of_one).collect()
    })
}

#[test]
fn it_is_right_as_often_as_it_says() {
    let mut wrong = Vec::new();
    let mut told = String::from(
        "true in %:               n  end date (ahead) later left | median width: points days\n",
    );
    for (tried, outcomes) in FAMILIES.iter().zip(all()) {
        let name = tried.name;
        let outcomes: Vec<&Outcome> = outcomes.iter().collect();
        let ahead: Vec<&Outcome> = outcomes.iter().copied().filter(|o| o.ahead).collect();
        let end = percent(&outcomes, |o| o.end);
        let date = percent(&outcomes, |o| o.date);
        let later = percent(&outcomes, |o| o.later);
        let left = percent(&outcomes, |o| o.left);
        let of_ahead = percent(&ahead, |o| o.date);
        let width = at(&outcomes, 0.5, |o| o.end_width);
        let row = format!(
            "{name:22}{:5} {end:4.0} {date:4.0} ({of_ahead:3.0} of {:3}) {later:4.0} {left:4.0} | {width:5.1} {:5.1}\n",
            outcomes.len(),
            ahead.len(),
            at(&outcomes, 0.5, |o| o.date_width),
        );
        told.push_str(&row);
        let mut hold = |what: &str, share: f64, least: f64, most: f64| {
            if !(least..=most).contains(&share) {
                wrong.push(format!("{name}: {what} {share:.1}, not {least} to {most}"));
            }
        };
        // Of sixty, two more or less are chance.
        hold("left now", left, if tried.unseen() { 90.0 } else { 93.0 }, 100.0);
        hold("width", width, 0.0, tried.widest);
        if !tried.unseen() {
            hold("end", end, 70.0, 95.0);
            hold("band later", later, 70.0, 95.0);
            // A date that has passed is hard to miss, so the upper limit is for those ahead.
            hold("date", date, 70.0, 100.0);
            // Of fewer than forty, the upper limit would be a matter of chance.
            if ahead.len() >= 40 {
                hold("date ahead", of_ahead, 70.0, 95.0);
            }
        }
    }
    println!("{told}");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn it_is_nearer_than_a_plain_line() {
    let mut told = String::from(
        "errors:                end, points              | date ahead, days (median, 90 %)\n",
    );
    let mut line = |name: &str, outcomes: &[&Outcome]| {
        let ahead: Vec<&Outcome> = outcomes.iter().copied().filter(|o| o.ahead).collect();
        let both = |of: &[&Outcome], measure: fn(&Outcome) -> f64| match of.len() {
            0 => (f64::NAN, f64::NAN),
            _ => (at(of, 0.5, measure), at(of, 0.9, measure)),
        };
        let ends = (both(outcomes, |o| o.ours.0), both(outcomes, |o| o.plain.0));
        let dates = (both(&ahead, |o| o.ours.1), both(&ahead, |o| o.plain.1));
        let row = format!(
            "{name:22} {:4.1} {:5.1} by line {:4.1} {:5.1} | {:4.1} {:5.1} by line {:4.1} {:5.1}\n",
            ends.0.0, ends.0.1, ends.1.0, ends.1.1, dates.0.0, dates.0.1, dates.1.0, dates.1.1,
        );
        told.push_str(&row);
        (ends, dates)
    };
    for (tried, outcomes) in FAMILIES.iter().zip(all()) {
        line(tried.name, &outcomes.iter().collect::<Vec<_>>());
    }
    let every: Vec<&Outcome> = all().iter().flatten().collect();
    assert!(every.len() >= 1000);
    let (ends, dates) = line("all", &every);
    println!("{told}");
    assert!(ends.0.0 < ends.1.0 && ends.0.1 < ends.1.1, "end: {ends:?}");
    assert!(dates.0.0 < dates.1.0 && dates.0.1 < dates.1.1, "date: {dates:?}");
}
