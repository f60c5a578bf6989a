//! Where the brewer's own earlier batches with the same yeast ended, and what that says of another one. What is
//! carried over is the attenuation and not the gravity. It is offered and never taken by itself, and then one
//! ground among others (`standing/ends`).
//!
//! All limits and weights are common practice or our choice, no source.

use super::family::Family;
use super::practice::STRONG;
use crate::quantity::{Estimate, GravityChange, Hours, Measured, Moment, SpecificGravity};
use serde::{Deserialize, Serialize};

/// Of fewer batches one that stalled unseen is not outvoted, and of more the latest count.
const BATCHES: (usize, usize) = (3, 5);
/// And so many must be left without what may have stalled.
const LEFT: usize = 2;
/// What one yeast attenuates differs by so much from one wort to the next, one standard deviation.
const DIFFERS: f64 = 0.02;
/// And that is taken to be as well known as by so many batches.
const KNOWN_BY: f64 = 3.0;
/// One that attenuated less than the deepest of them by more than this may have stalled unseen, and does not count.
/// So a single one lets no more stalled beer into the bottles than none at all (`tests/calibration/own_ends.rs`).
const STALLED: f64 = 0.045;
/// Strong wort attenuates less by this part for each point over [`STRONG`].
const STRONG_LESS: f64 = 0.0012;
/// A beer has ended for these: read within a point of this, so many hours apart.
const LEVEL: (GravityChange, Hours) = (GravityChange::literal(0.001_05), Hours::literal(42.0));

/// Where one batch started and ended.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ended {
    /// At the start.
    pub start: SpecificGravity,
    /// At the end.
    pub end: SpecificGravity,
}

/// A yeast: its kind, and what the packet is called, if that was noted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Yeast<'a> {
    /// The kind.
    pub family: Family,
    /// The packet's name.
    pub packet: &'a str,
}

/// What wort of so many points attenuates less for its strength, as a part of one.
#[must_use]
pub(super) fn less_when_strong(points: f64) -> f64 {
    STRONG_LESS * (points - STRONG.points()).max(0.0)
}

/// Whether an earlier batch was fermented by the same yeast: of the same packet where this one's is noted, else
/// of its kind. Yeast of no known kind and no name is never the same.
///
/// ```
/// use fermentside::advice::{family::Family, own_ends::{Yeast, same}};
///
/// let yeast = |family, packet| Yeast { family, packet };
/// let noted = yeast(Family::CleanAle, "Dry  ale 5");
/// assert!(same(noted, yeast(Family::CleanAle, "dry ale 5 ")));
/// assert!(!same(noted, yeast(Family::CleanAle, "")) && !same(noted, yeast(Family::Lager, "Dry ale 5")));
/// assert!(same(yeast(Family::CleanAle, ""), noted));
/// assert!(!same(yeast(Family::Unknown, ""), yeast(Family::Unknown, "")));
/// ```
#[must_use]
pub fn same(this: Yeast, earlier: Yeast) -> bool {
    let words = |yeast: Yeast| {
        // The small forms of all other letters would bring tables of 12 kB.
        let lower = yeast.packet.to_ascii_lowercase();
        lower.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let (mine, other) = (words(this), words(earlier));
    let nameless = mine.is_empty() && this.family != Family::Unknown;
    this.family == earlier.family && (nameless || (!mine.is_empty() && mine == other))
}

/// Where a beer ended by its readings, the earliest first: the last of them, borne out by one two nights before
/// it within a point; `None` when there is no such pair.
///
/// ```
/// use fermentside::advice::own_ends::ended_at;
/// use fermentside::quantity::{Hours, Measured, Moment, SpecificGravity};
///
/// let read = |hours: f64, sg: f64| {
///     (Moment::EPOCH.after(Hours::nearest(hours)), SpecificGravity::nearest(sg))
/// };
/// let level = [read(72.0, 1.022), read(200.0, 1.012), read(248.0, 1.011)];
/// assert_eq!(ended_at(&level), Some(level[2].1));
/// assert_eq!(ended_at(&level[..2]), None);
/// assert_eq!(ended_at(&[read(230.0, 1.011), read(248.0, 1.011)]), None);
/// ```
#[must_use]
pub fn ended_at(readings: &[(Moment, SpecificGravity)]) -> Option<SpecificGravity> {
    let (at, end) = *readings.last()?;
    let earlier = readings.iter().rev().find(|(before, _)| at.since(*before) >= LEVEL.1)?;
    let off = (earlier.1.value() - end.value()).abs();
    (off <= LEVEL.0.value()).then_some(end)
}

/// Which of the ends with the same yeast, the latest first, are worth offering; none of too few, or where none
/// of them fermented.
///
/// ```
/// use fermentside::advice::own_ends::{Ended, offered};
/// use fermentside::quantity::SpecificGravity;
///
/// let sg = SpecificGravity::literal;
/// let usual = Ended { start: sg(1.048), end: sg(1.011) };
/// assert_eq!(offered(vec![usual; 2]), []);
/// assert_eq!(offered(vec![usual; 7]).len(), 5);
/// let never = Ended { start: sg(1.048), end: sg(1.047) };
/// assert_eq!(offered(vec![usual, usual, never]), []);
/// ```
#[must_use]
pub fn offered(mut ends: Vec<Ended>) -> Vec<Ended> {
    ends.retain(|one| one.attenuation().is_some());
    ends.truncate(BATCHES.1);
    if ends.len() < BATCHES.0 { vec![] } else { ends }
}

/// Where wort of this start would end by these: the mean of what they attenuated, and one standard deviation of
/// the next batch about it. What may have stalled unseen does not count; `None` of fewer than three, and when no two
/// are left.
///
/// Of n batches the spread is s² = (3 × 0.02² + Σ(a − ā)²) ÷ (3 + n − 1), and the next one's s √(1 + 1/n).
///
/// ```
/// use fermentside::advice::own_ends::{Ended, carried};
/// use fermentside::quantity::{Measured, SpecificGravity};
///
/// let sg = SpecificGravity::nearest;
/// // 77.1 % of 48 points, 76.4 % of 55 and 76.0 % of 50: 11.8 points are left of 50.
/// let ended = |start, end| Ended { start: sg(start), end: sg(end) };
/// let (a, b, c) = (ended(1.048, 1.011), ended(1.055, 1.013), ended(1.050, 1.012));
/// let found = carried(&[a, b, c], sg(1.050)).unwrap();
/// assert_eq!(format!("{:.4}", found.value().value()), "1.0118");
/// assert!((0.0009..0.001).contains(&found.sigma()));
/// // One that ended five points higher changes nothing; where two of three did, none is believed.
/// let stuck = ended(1.050, 1.017);
/// assert_eq!(carried(&[a, stuck, b, c], sg(1.050)), Some(found));
/// assert!(carried(&[a, stuck, stuck], sg(1.050)).is_none() && carried(&[a, b], sg(1.050)).is_none());
/// ```
#[must_use]
pub fn carried(ends: &[Ended], start: SpecificGravity) -> Option<Estimate<SpecificGravity>> {
    let mut each: Vec<f64> = ends.iter().filter_map(|one| one.attenuation()).collect();
    let enough = each.len() >= BATCHES.0;
    let deepest = each.iter().copied().fold(0.0, f64::max);
    each.retain(|one| deepest - one <= STALLED);
    if !enough || each.len() < LEFT {
        return None;
    }
    let count = each.len() as f64;
    let mean = each.iter().sum::<f64>() / count;
    let scatter: f64 = each.iter().map(|one| (one - mean) * (one - mean)).sum();
    let spread = (KNOWN_BY * DIFFERS * DIFFERS + scatter) / (KNOWN_BY + count - 1.0);
    let sigma = (spread * (1.0 + 1.0 / count)).sqrt();
    let points = start.points();
    let left = points * (1.0 - mean + less_when_strong(points));
    let end = SpecificGravity::nearest(1.0 + left / 1000.0);
    Some(Estimate::new(end, points * sigma / 1000.0))
}

impl Ended {
    /// The part of its points that fermented, as wort that is not strong would have; `None` of one that hardly
    /// began.
    fn attenuation(self) -> Option<f64> {
        let (start, end) = (self.start.points(), self.end.points());
        let gone = 1.0 - end / start;
        (start > 5.0 && gone > 0.4).then(|| gone + less_when_strong(start))
    }
}
