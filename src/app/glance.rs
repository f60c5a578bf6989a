//! Every batch as it stands now, worked out once, and its row in a list.

use super::model::{ByDue, Model};
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

/// Every batch, put in order once for each change and for each half minute.
pub fn by_due(m: &Model) -> Rc<ByDue> {
    let stamp = (m.journal.revision(), m.now);
    if let Some((known, by_due)) = m.by_due.borrow().as_ref()
        && *known == stamp
    {
        return Rc::clone(by_due);
    }
    let all = m.journal.batches().filter_map(|(id, _)| m.summary(id));
    let by_due = Rc::new(in_order_of_due(all, m.now));
    m.by_due.replace(Some((stamp, Rc::clone(&by_due))));
    by_due
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::batch::{BatchHeading, Change, Entry, HydrometerItem};
    use crate::quantity::{Hours, Zone};

    #[test]
    fn it_is_put_in_order_once_for_each_change_and_each_half_minute() {
        let at = "2026-03-01T09:00+00:00".parse().expect("a moment");
        let mut m = Model::new(at, Zone::new(0, vec![]), 7);
        let starts = |m: &mut Model, name: &str| {
            let begun = BatchHeading::begun(at, HydrometerItem::usual_id());
            let heading = BatchHeading { name: name.to_owned(), ..begun };
            let change = Change::put(m.new_id(), Entry::Batch(heading));
            m.journal.apply(change).expect("applies");
        };
        starts(&mut m, "Cellar bitter");
        let first = by_due(&m);
        assert!(Rc::ptr_eq(&first, &by_due(&m)));
        starts(&mut m, "Winter mild");
        let second = by_due(&m);
        assert_eq!((first.len(), second.len()), (1, 2));
        m.now = m.now.after(Hours::literal(1.0));
        assert!(!Rc::ptr_eq(&second, &by_due(&m)));
    }
}
