//! Where own earlier batches with the same yeast ended: offered for the expected end, taken in one touch and left
//! out in one.

use crate::advice::own_ends::{Ended, carried};
use crate::app::act::{Act, WatchAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, What, action, group, text};
use crate::app::save::commit;
use crate::batch::{BatchHeading, Change, Entry, Id, Summary};

const FORM: &str = "own-ends/outcome";

/// What is offered to a batch.
fn offered(m: &Model, s: &Summary) -> Vec<Ended> {
    let earlier = m.journal.bottled_with(s.heading.family);
    let earlier: Vec<_> = earlier.iter().filter_map(|id| m.summary(id)).collect();
    s.own_ends(&earlier)
}

/// The offer, or what was taken; nothing where there is neither.
pub fn parts(m: &Model, s: &Summary) -> Option<Part> {
    let words = &m.words.watch;
    let taken = !s.heading.own_ends.is_empty();
    let ends = match taken {
        true if s.bottling.is_none() && !s.may_go_on() => s.heading.own_ends.clone(),
        true => return None,
        false => offered(m, s),
    };
    let carried = carried(&ends, s.original?.value())?;
    let said = (words.own_ends)(m.writer(), &ends, carried, taken);
    let act = Act::Watch(WatchAct::OwnEnds(s.id.clone(), !taken));
    let label = if taken { words.leave_own_ends } else { words.take_own_ends };
    let parts = vec![
        text("own-ends/said", "", said),
        action("own-ends/set", "quiet", label, act),
        Part::new(FORM, What::Outcome(m.outcome(FORM))),
    ];
    Some(group("own-ends", Tag::Div, "remind", parts))
}

/// Takes what is offered, or leaves it out again.
pub fn set(m: &mut Model, batch: &Id, take: bool) -> Vec<Effect> {
    let Some(s) = m.summary(batch) else { return vec![] };
    let own_ends = if take { offered(m, &s) } else { vec![] };
    let words = &m.words.watch;
    let done = if take { words.own_ends_taken } else { words.own_ends_left_out };
    let heading = BatchHeading { own_ends, ..s.heading.clone() };
    commit(m, FORM, Change::put(batch.clone(), Entry::Batch(heading)), done, vec![])
}
