//! Where own earlier batches with the same yeast ended: offered for the expected end, taken in one touch and left
//! out in one; on pitching day beside the yeast, later beside the course.

use super::act::{Act, BatchAct};
use super::event::Effect;
use super::model::Model;
use super::part::{Part, Tag, What, action, group, text};
use super::save::commit;
use crate::advice::own_ends::{Ended, carried};
use crate::batch::{BatchHeading, Change, Entry, Id, Summary};
use crate::quantity::SpecificGravity;
use std::rc::Rc;

const FORM: &str = "own-ends/outcome";

/// Batches that may tell of another one with that yeast.
fn earlier(m: &Model, s: &Summary) -> Vec<Rc<Summary>> {
    let earlier = m.journal.bottled_with(s.heading.family);
    earlier.iter().filter_map(|id| m.summary(id)).collect()
}

/// The offer to a batch with yeast of that packet and with that start, or what was taken; nothing where there is
/// neither.
pub fn part(m: &Model, s: &Summary, packet: &str, start: Option<SpecificGravity>) -> Option<Part> {
    let words = &m.words.watch;
    let carried = |ends: &[Ended]| carried(ends, start?);
    let taken = carried(&s.heading.own_ends).is_some();
    let ends = match taken {
        true if s.bottling.is_none() && !s.may_go_on() => s.heading.own_ends.clone(),
        true => return None,
        false => s.own_ends(packet, &earlier(m, s)),
    };
    let carried = carried(&ends)?;
    let said = (words.own_ends)(m.writer(), &ends, carried, taken);
    let label = if taken { words.leave_own_ends } else { words.take_own_ends };
    let set = if taken { vec![] } else { ends };
    let act = Act::Batch(BatchAct::OwnEnds(s.id.clone(), set));
    let parts = vec![
        text("own-ends/said", "", said),
        action("own-ends/set", "quiet", label, act),
        Part::new(FORM, What::Outcome(m.outcome(FORM))),
    ];
    Some(group("own-ends", Tag::Div, "remind", parts))
}

/// Takes what was offered, or leaves it out again where that is nothing.
pub fn set(m: &mut Model, batch: &Id, own_ends: Vec<Ended>) -> Vec<Effect> {
    let Some(heading) = m.journal.batch(batch).cloned() else { return vec![] };
    let words = &m.words.watch;
    let done = if own_ends.is_empty() { words.own_ends_left_out } else { words.own_ends_taken };
    let heading = BatchHeading { own_ends, ..heading };
    commit(m, FORM, Change::put(batch.clone(), Entry::Batch(heading)), done, vec![])
}

/// Whether what was taken is of batches with another packet than this one turns out to be.
pub fn of_another_packet(m: &Model, s: &Summary, packet: &str) -> bool {
    let own = &s.heading.own_ends;
    let earlier = earlier(m, s);
    let among = |packet| {
        let ends = s.ends_with(packet, &earlier);
        own.iter().all(|one| ends.contains(one))
    };
    !own.is_empty() && !among(packet) && among("")
}
