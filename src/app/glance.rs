//! Every batch as it stands now, worked out once, and its row in a list.

use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group};
use super::route::Route;
use crate::advice::Verdict;
use crate::advice::standing::{Record, Standing};
use crate::batch::{Id, Stage, Summary, Today, by_due as in_order_of_due};
use std::rc::Rc;

impl Model {
    /// One batch worked out, once for each change of its log.
    #[must_use]
    pub fn summary(&self, id: &Id) -> Option<Rc<Summary>> {
        let log = self.journal.log(id)?;
        let stamp = (log.revision(), self.journal.gear_revision());
        if let Some((known, summary)) = self.worked.borrow().get(id)
            && *known == stamp
            && summary.holds_at(self.now)
        {
            return Some(Rc::clone(summary));
        }
        let summary = Rc::new(Summary::of(&self.journal, id, self.now)?);
        self.worked.borrow_mut().insert(id.clone(), (stamp, Rc::clone(&summary)));
        Some(summary)
    }

    /// How a record stands that is of no batch, judged once as long as it stays the same.
    pub(super) fn standing_of(&self, record: &Record) -> Rc<Standing> {
        let mut judged = self.judged.borrow_mut();
        if let Some((known, at, standing)) = judged.as_ref()
            && known == record
            && *at == self.now
        {
            return Rc::clone(standing);
        }
        let standing = Rc::new(Standing::of(record, self.now));
        *judged = Some((record.clone(), self.now, Rc::clone(&standing)));
        standing
    }

    /// The parts that `make` makes for a batch without a look at drafts, at timers or at what is asked
    /// about: those made before, where nothing else has happened since.
    pub(super) fn still(
        &self,
        name: &'static str,
        s: &Summary,
        make: fn(&Self, &Summary) -> Vec<Part>,
    ) -> Vec<Part> {
        let revision = self.journal.log(&s.id).map_or(0, |log| log.revision());
        let gear = self.journal.gear_revision();
        let made_of = (s.id.clone(), revision, gear, self.now, self.still.happened());
        self.still.parts(name, made_of, &|| make(self, s))
    }

    /// How often such parts were made.
    #[must_use]
    pub const fn made_still(&self) -> usize {
        self.still.made()
    }
}

/// Every batch, what is due first standing first.
pub fn by_due(m: &Model) -> Vec<(Rc<Summary>, Today)> {
    in_order_of_due(m.journal.batches().filter_map(|(id, _)| m.summary(id)), m.now)
}

/// The dress of a row that begins with the shape of a verdict.
const fn dress(verdict: Option<Verdict>) -> &'static str {
    match verdict {
        Some(Verdict::Go) => "batch-row row-go",
        Some(Verdict::Wait) => "batch-row row-wait",
        Some(Verdict::Stop) => "batch-row row-stop",
        Some(Verdict::CantTell) => "batch-row row-cant",
        None => "batch-row",
    }
}

/// A batch in two lines: the shape of its verdict, its name, and its next step with its day.
pub fn row(m: &Model, s: &Summary, today: &Today, place: &str, to: Stage) -> Part {
    let verdict = match today.stage {
        // Pitching is decided there, step by step.
        Stage::Pitch => None,
        Stage::Watch | Stage::Bottle => Some(s.standing.verdict),
        Stage::Open => today.opening.as_ref().map(|opening| opening.verdict),
    };
    let mut runs = vec![Run::new("batch-name", s.heading.name.clone())];
    runs.extend(verdict.map(|verdict| Run::new("heard", (m.words.names.verdict)(verdict))));
    runs.push(Run::new("batch-next", (m.words.now.in_short)(m.writer(), today.next)));
    let address = Route::Batch(s.id.clone(), to).address();
    let link = What::Link(Link { kind: dress(verdict), address, runs, here: false });
    let name = format!("{place}/{}", s.id.as_str());
    group(name.clone(), Tag::Li, "", vec![Part::new(format!("{name}/link"), link)])
}
