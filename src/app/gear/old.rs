//! Where room is scarce: batches bottled long ago go into a file, and only then are they taken away.

use crate::app::act::{Act, GearAct};
use crate::app::ask::pick;
use crate::app::copies::{hand_out, without};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, What, action, group, heading, text};
use crate::app::room::is_tight;
use crate::app::save::commit;
use crate::batch::Id;
use crate::order::in_order;
use crate::quantity::{Hours, Moment};

const FORM: &str = "old";
/// So many go at once, so that the page does not stand still for long.
const AT_ONCE: usize = 50;
/// Younger ones are not proposed.
const A_YEAR_AGO: Hours = Hours::literal(-365.0 * 24.0);

/// Batches that can do without this phone, the first bottled first. One in hand cannot, nor one whose
/// bottles are a hazard.
fn done_with(m: &Model) -> Vec<(Moment, Id)> {
    let in_hand = m.journal.in_hand();
    let is_safe = |id: &Id| {
        let opened = !m.journal.openings(id).is_empty();
        !opened || m.summary(id).is_some_and(|summary| !summary.is_hazard())
    };
    let done = m.journal.batches().filter_map(|(id, _)| {
        let (_, bottling) = m.journal.bottling(id)?;
        (in_hand.as_ref() != Some(id) && is_safe(id)).then(|| (bottling.at, id.clone()))
    });
    in_order(done.collect(), |a, b| a.0.cmp(&b.0))
}

/// The quarter of a year after the one it lies in: the year, and the first month.
fn next_quarter(at: Moment) -> Quarter {
    let (year, month, ..) = at.parts();
    if month > 9 { (year + 1, 1) } else { (year, (month - 1) / 3 * 3 + 4) }
}

/// A quarter of a year, by its year and its first month.
type Quarter = (i32, u8);

/// Until when they may go: the quarter, the stored name, its words, and how many those are.
fn choices(
    m: &Model,
    all: &[(Moment, Id)],
    year_ago: Quarter,
) -> Vec<(Quarter, String, String, usize)> {
    let words = &m.words.keeping;
    let mut choices = vec![];
    for (at, (bottled, _)) in all.iter().enumerate() {
        let (quarter, count) = (next_quarter(*bottled), at + 1);
        if all.get(count).is_some_and(|(next, _)| next_quarter(*next) == quarter) {
            continue;
        }
        // The first may be more, or nothing could go.
        if count > AT_ONCE && !choices.is_empty() {
            break;
        }
        let (name, said) = if quarter > year_ago && count == all.len() {
            ("now".to_owned(), (words.old_all)(count))
        } else {
            (format!("{:04}-{:02}", quarter.0, quarter.1), (words.old_choice)(quarter, count))
        };
        choices.push((quarter, name, said, count));
    }
    choices
}

/// Where room is scarce: which may go, their copy, and once that is handed over the way to be rid of them.
pub fn section(m: &Model) -> Option<Part> {
    if !m.phone.full && !m.phone.used.is_some_and(is_tight) {
        return None;
    }
    let words = &m.words.keeping;
    let all = done_with(m);
    let year_ago = next_quarter(m.now.after(A_YEAR_AGO));
    let choices = choices(m, &all, year_ago);
    let first = choices.iter().rev().find(|one| one.0 <= year_ago).or(choices.first())?;
    let options = choices.iter().map(|(_, name, said, _)| (name.clone(), said.clone())).collect();
    let field = pick(m, "old/before", (words.old_before, ""), options, &first.1);
    let (.., count) = choices.iter().find(|(_, name, ..)| *name == field.value)?;
    let going: Vec<Id> = all.iter().take(*count).map(|(_, id)| id.clone()).collect();
    let mut parts = vec![
        heading("old/head", 2, words.old_head),
        text("old/lead", "", words.old_lead),
        field.part,
    ];
    match m.phone.copy.as_ref().filter(|made| made.of == going) {
        None => {
            let copy = Act::Gear(GearAct::Copy(going));
            parts.push(action("old/copy", "", &(words.old_copy)(*count), copy));
        }
        Some(made) => {
            parts.extend(hand_out(m, &going));
            if made.handed {
                let take = Act::Gear(GearAct::TakeAway);
                parts.push(text("old/room", "", (words.old_room)(going.len(), made.room)));
                parts.push(action("old/take", "danger", &(words.old_take)(going.len()), take));
            }
        }
    }
    parts.push(Part::new("old/outcome", What::Outcome(m.outcome(FORM))));
    Some(group(FORM, Tag::Section, "trouble", parts))
}

/// They are taken away: no others than those of the copy that was handed out.
pub fn take_away(m: &mut Model) -> Vec<Effect> {
    let made = m.phone.copy.as_ref().filter(|made| made.handed && !made.of.is_empty());
    let Some(made) = made else { return vec![] };
    let done = (m.words.keeping.old_taken)(made.of.len(), made.room);
    let change = without(m, &made.of);
    commit(m, FORM, change, &done, vec![])
}
