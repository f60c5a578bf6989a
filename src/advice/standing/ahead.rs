//! What is tried before it is promised: one more reading, or a late satellite, for whatever is about to be
//! bottled.

use super::judge::{Case, Judged};
use super::looks::looks;
use super::record::Record;
use super::said::State;
use super::sugar::allowed;
use super::{LATE_SATELLITE, say};
use crate::quantity::{GravityChange, Hours, Measured, Moment};
use std::cell::{Cell, RefCell};
use std::rc::Rc;

/// Days after the last reading at which one more is tried.
const TRIED: [f64; 13] = [0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 11.0, 15.0, 21.0, 28.0, 35.0];

/// How long after the last reading a step lies.
pub(super) fn after(step: usize) -> Hours {
    Hours::nearest(24.0 * TRIED[step.min(TRIED.len() - 1)])
}

/// The first step that holds. It is looked for among the likely courses, and none is given but by all of
/// them: what is promised is tried by the very judgement that will keep it.
pub(super) fn soonest(
    by_likely: &dyn Fn(usize) -> bool,
    by_all: &dyn Fn(usize) -> bool,
) -> Option<usize> {
    let (mut least, mut yes) = (0, TRIED.len() - 1);
    if !by_likely(yes) {
        return None;
    }
    while least < yes {
        let middle = usize::midpoint(least, yes);
        if by_likely(middle) { yes = middle } else { least = middle + 1 }
    }
    (yes..TRIED.len()).find(|&step| by_all(step))
}

/// So many records are kept: a batch's own, and the same with a start or a warm reading on it.
const KEPT: usize = 3;

/// Records that were tried, and what came of it. No trial hangs on what is to be bottled, so that a key in
/// the form of a bottling asks for none anew.
#[derive(Default)]
pub struct Trials {
    tried: RefCell<Vec<Rc<Ahead>>>,
    weighed: Cell<usize>,
}

impl std::fmt::Debug for Trials {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        write!(f, "Trials of {} records", self.weighed.get())
    }
}

impl Trials {
    /// How many records were weighed for it so far.
    ///
    /// ```
    /// use fermentside::advice::standing::ways_to_dose::Trials;
    ///
    /// assert_eq!(Trials::default().weighed(), 0);
    /// ```
    #[must_use]
    pub const fn weighed(&self) -> usize {
        self.weighed.get()
    }

    /// A record as it is at `now`, weighed once; `None` before the fermenting beer was read.
    pub(super) fn of(&self, record: &Record, now: Moment) -> Option<Rc<Ahead>> {
        let record = Record { weakest: None, target: None, volume: None, ..record.clone() };
        let looks = looks(&record, now);
        let last = looks.main.last()?.hours;
        let same = |ahead: &&Rc<Ahead>| ahead.case.looks == looks && *ahead.case.record == record;
        let mut tried = self.tried.borrow_mut();
        if let Some(ahead) = tried.iter().find(same) {
            return Some(Rc::clone(ahead));
        }
        self.weighed.set(self.weighed.get() + 1);
        let ahead = Rc::new(Ahead::new(&record, now, last));
        if tried.len() == KEPT {
            tried.remove(0);
        }
        tried.push(Rc::clone(&ahead));
        Some(ahead)
    }
}

/// A record that is tried further.
pub(super) struct Ahead {
    case: Case,
    /// The same with its likely courses only.
    likely: Case,
    last: f64,
    /// What is known after one more reading, by the step; `None` where it was not tried.
    after_reading: Tried,
    likely_after: Tried,
    after_satellite: Cell<Option<Bounded>>,
}

/// The most that may be left, points, with how it stands where that is too much for the usual dose;
/// `None` where nothing bounds it.
type Bounded = Option<(f64, State)>;
type Tried = [Cell<Option<Bounded>>; TRIED.len()];

/// Whether beer could go into the bottles.
pub(super) struct Passes<'a> {
    /// What the usual dose leaves room for, points.
    room: Option<f64>,
    /// Whether it could with so much left at the most.
    judged: &'a dyn Fn(GravityChange) -> bool,
}

impl<'a> Passes<'a> {
    pub(super) fn new(record: &Record, judged: &'a dyn Fn(GravityChange) -> bool) -> Self {
        Self { room: allowed(record).map(|left| left.points()), judged }
    }

    fn with(&self, found: Bounded) -> bool {
        found.is_some_and(|(bound, state)| {
            let finished = self.room.is_some_and(|room| bound <= room);
            let level = state == State::Level || finished && state != State::NotStarted;
            level && (self.judged)(say::change(bound))
        })
    }
}

impl Ahead {
    fn new(record: &Record, now: Moment, last: f64) -> Self {
        let (case, judged) = Case::new(record, now, super::QUANTILE);
        let case = case.stricter();
        Self {
            likely: case.likely(&judged),
            case,
            last,
            after_reading: Default::default(),
            likely_after: Default::default(),
            after_satellite: Cell::default(),
        }
    }

    /// The first of some days at which one more sound reading, the same as the last, does. It may lie
    /// before now, for a later one does as well.
    pub(super) fn reading(&self, passes: &Passes) -> Option<Moment> {
        let at = |step| self.last + after(step).value();
        let holds = |case: &Case, kept: &Tried, step: usize| {
            passes.with(once(&kept[step], &|| case.after_reading(at(step))))
        };
        let step = soonest(&|step| holds(&self.likely, &self.likely_after, step), &|step| {
            holds(&self.case, &self.after_reading, step)
        })?;
        Some(self.case.looks.moment(at(step)))
    }

    /// How long after it is begun a late satellite does, read twice to the same gravity as the beer, with
    /// the beer read once more beside it: `None` where none would, or where one was read level.
    pub(super) fn satellite(&self, passes: &Passes) -> Option<Hours> {
        if self.case.record.may_go_on() || self.case.ends.satellite.is_some() {
            return None;
        }
        let tried = || self.case.after_satellite(self.last + LATE_SATELLITE.value());
        passes.with(once(&self.after_satellite, &tried)).then_some(LATE_SATELLITE)
    }
}

/// Tries it, unless that was done.
fn once(kept: &Cell<Option<Bounded>>, tried: &dyn Fn() -> Option<(Case, Judged)>) -> Bounded {
    let found = kept.get().unwrap_or_else(|| {
        let (case, judged) = tried()?;
        Some((judged.bound?, say::state(&case, &judged, None)))
    });
    kept.set(Some(found));
    found
}
