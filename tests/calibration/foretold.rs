//! What was foretold of all beer that ended by itself, held against what came.

use crate::courses::Kind;
use crate::proving::{Ground, Run, quantile};

/// What rests, or is eaten by something else, nobody can foresee.
const fn foreseen(kind: Kind) -> bool {
    !matches!(kind, Kind::Rests | Kind::Resumes | Kind::Stuck | Kind::Eaten)
}

/// What was foretold of all that ended by itself.
#[derive(Default)]
pub struct Foretold {
    ends: Vec<(bool, f64)>,
    days: Vec<(bool, f64, f64, f64)>,
    batches: usize,
    stuck: usize,
    /// Looks after the first true dose, and those without one.
    later: usize,
    taken_back: usize,
    /// The days up to here were of the families before.
    before: usize,
}

impl Foretold {
    pub fn take(&mut self, ground: &Ground, runs: &[Run]) {
        if !foreseen(ground.kind) {
            return;
        }
        self.ends.extend(runs.iter().flat_map(|run| run.ends.iter().copied()));
        self.days.extend(runs.iter().flat_map(|run| run.days.iter().copied()));
        // One chilled early may well be stuck.
        if ground.kind == Kind::Chilled {
            return;
        }
        self.batches += runs.len();
        self.stuck += runs.iter().filter(|run| run.stuck.is_some()).count();
        self.later += runs.iter().map(|run| run.later).sum::<usize>();
        self.taken_back += runs.iter().map(|run| run.taken_back).sum::<usize>();
    }

    /// What is wrong with the days of the family that was taken last: four in five are said to lie in their window,
    /// and looks at one batch are alike.
    pub fn of_family(&mut self, ground: &Ground) -> Option<String> {
        let days = self.days.get(self.before..).unwrap_or_default();
        self.before = self.days.len();
        if days.len() < 100 {
            return None;
        }
        let held = 100.0 * days.iter().filter(|day| day.0).count() as f64 / days.len() as f64;
        let said = format!("{}: the day in its window {held:.0} %", ground.name);
        println!("{said} of {} looks", days.len());
        (!(68.0..=96.0).contains(&held)).then_some(said)
    }

    /// Right about as often as it says, four times in five, and nearer than a plain line.
    pub fn wrong(&self) -> Vec<String> {
        let (ends, days) = (self.ends.len(), self.days.len());
        if ends.min(days) < 40 {
            return vec![];
        }
        let share = |right: usize, of: usize| 100.0 * right as f64 / of as f64;
        let in_ends = share(self.ends.iter().filter(|end| end.0).count(), ends);
        let in_days = share(self.days.iter().filter(|day| day.0).count(), days);
        let ours = quantile(self.days.iter().map(|day| day.2).collect(), 0.5);
        let line = quantile(self.days.iter().map(|day| day.3).collect(), 0.5);
        println!(
            "all that ended by itself: end in its window {in_ends:.0} % of {ends}, the day {in_days:.0} % of {days}; median error {ours:.2} days, by a line {line:.2}"
        );
        let stuck = share(self.stuck, self.batches);
        let back = share(self.taken_back, self.later.max(1));
        println!(
            "called stuck {stuck:.1} % of {}, a true end taken back at {back:.1} % of {} later looks",
            self.batches, self.later
        );
        // Looks at one batch are alike, so few batches stray far.
        let mut wrong = vec![];
        if stuck > 3.0 + 200.0 / self.batches as f64 {
            wrong.push(format!("healthy beer called stuck in {stuck:.1} %"));
        }
        if back > 5.0 {
            wrong.push(format!("a true end taken back at {back:.1} % of later looks"));
        }
        for (what, share, most) in [("end", in_ends, 93.0), ("day", in_days, 93.0)] {
            if !(68.0..=most).contains(&share) {
                wrong.push(format!("{what} in its window {share:.0} %"));
            }
        }
        // Level beer is foretold by a line as well as by anything.
        if ours > line {
            wrong.push(format!("the day is off by {ours:.2}, by a line {line:.2}"));
        }
        wrong
    }
}
