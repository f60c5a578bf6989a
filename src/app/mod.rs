//! What is shown and done, without a browser.
//!
//! [`Model`] is all that the page knows. [`screen`] says what stands on the screen, as plain data;
//! [`update`] takes what happened and says what is asked of the world in return. No closure, no signal
//! and no storage lives here, so that whole brewing days run natively in milliseconds.

mod act;
mod ask;
mod ask_first;
mod copies;
mod drafts;
pub mod drawing;
mod event;
mod fields;
mod fold;
mod frame;
mod keeper;
mod model;
mod opened;
mod opening;
mod own_ends;
mod part;
mod phone;
mod priming;
mod room;
mod route;
mod save;
mod stem;
mod still;
mod strength;
mod sugar_ask;
mod sums;
mod table;
mod way;
mod ways_down;
mod ways_out;
mod worked;

mod batch;
mod batches;
mod bench;
mod bottle;
mod gear;
mod glance;
mod now;
mod open;
mod pitch;
mod print;
mod watch;

pub use crate::advice::Verdict;
pub use act::{
    Act, BatchAct, BottleAct, Doubted, FrameAct, GearAct, OpenAct, Paper, PitchAct, Thing, UnitsOf,
    WatchAct,
};
pub use drafts::{Draft, Drafts};
pub use event::{Effect, Event, NoFile, NotSaved};
pub use keeper::Keeper;
pub use model::{Bringing, Here, Model, Noting, Then, Undo};
pub use opened::{DeletedBatch, Opened};
pub use part::{
    Action, Answer, Choice, FileField, Fold, Group, HandOut, Item, Judged, Link, MomentField,
    Number, Part, Place, Run, Screen, Slider, Stem, Table, Tag, Tick, What, WordsField, WorkedLine,
    Working,
};
pub use phone::{CopyMade, Phone};
pub use route::{Route, Sum};
pub use stem::stem_text;

/// The largest file that is read, bytes.
pub use crate::exchange::copy::LONGEST as LONGEST_FILE;

use crate::batch::{Id, Stage};
use part::{heading, link};

/// What stands on the screen.
#[must_use]
pub fn screen(m: &Model) -> Screen {
    let main = match &m.route {
        Route::Now => now::parts(m),
        Route::Batches => batches::parts(m),
        Route::NewBatch => batch::form(m, None),
        Route::EditBatch(id) => batch::form(m, Some(id)),
        Route::Batch(id, stage) => stage_of(m, id, *stage),
        Route::Gear => gear::parts(m),
        Route::Bench => bench::list(m),
        Route::Sum(sum) => bench::sum(m, *sum),
        Route::Unknown => nothing_here(m),
    };
    frame::round(m, main)
}

/// One stage of a batch, below its head.
#[inline(never)] // read by the browser only when it is called
fn stage_of(m: &Model, id: &Id, stage: Stage) -> Vec<Part> {
    let Some(summary) = m.summary(id) else {
        let words = &m.words.frame;
        return vec![
            heading("title", 1, words.no_such_batch),
            link("back", "back", Route::Batches.address(), words.see_all_batches),
        ];
    };
    let mut parts = batch::head(m, &summary, stage);
    parts.extend(match stage {
        Stage::Pitch => pitch::parts(m, &summary),
        Stage::Watch => watch::parts(m, &summary),
        Stage::Bottle => bottle::parts(m, &summary),
        Stage::Open => open::parts(m, &summary),
    });
    parts.extend(batch::foot(m, &summary));
    parts.extend(print::parts(m, &summary));
    parts
}

fn nothing_here(m: &Model) -> Vec<Part> {
    let words = &m.words.frame;
    vec![
        heading("title", 1, words.nothing_here),
        link("back", "back", Route::Now.address(), words.go_to_now),
    ]
}

/// Takes what happened, and says what is asked of the world.
pub fn update(m: &mut Model, event: Event) -> Vec<Effect> {
    let counted = pitch::counts(m);
    // Not on arriving: what is asked of the world before the page stands is not heard.
    let may_settle = !matches!(event, Event::Went(_));
    m.still.happens(&event);
    let mut effects = happened(m, event);
    if may_settle && let Some(conflict) = m.phone.to_settle.pop() {
        let keep = conflict.shown.token;
        effects.push(Effect::Settle(Box::new(conflict), keep));
    }
    // A timer may start or end by a touch, by coming or going, by a save, or by itself.
    let counts = pitch::counts(m);
    if counts != counted {
        effects.push(Effect::Awake(counts));
    }
    effects
}

fn happened(m: &mut Model, event: Event) -> Vec<Effect> {
    match event {
        Event::Typed { name, text, unit } => {
            // What was asked about is another thing now.
            m.here.doubted = None;
            m.drafts.put(&name, text, &unit);
            let mut effects = vec![Effect::KeepDrafts];
            effects.extend(gear::typed(m, &name));
            effects
        }
        Event::Left(name) => {
            m.drafts.leave(&name);
            gear::left(m, &name)
        }
        Event::Unit { name, symbol } => {
            m.drafts.put_unit(&name, &symbol);
            let mut effects = vec![Effect::KeepDrafts];
            effects.extend(gear::unit_chosen(m, &name));
            effects
        }
        Event::Slid { name, value } => {
            m.here.slid.insert(name, value);
            vec![]
        }
        Event::Folded { name, open } => {
            m.here.folds.insert(name, open);
            vec![]
        }
        Event::Did(act) => act_on(m, act),
        Event::Went(hash) => {
            let mut effects = gear::gone_from(m);
            effects.extend(frame::went(m, &hash));
            effects
        }
        Event::Clock(now) => frame::clock(m, now),
        Event::Tick(seconds) => {
            m.seconds = seconds;
            vec![]
        }
        Event::Travelled(zone) => {
            m.zone = zone;
            vec![]
        }
        Event::Saved(ticket) => {
            let mut effects = save::saved(m, ticket);
            effects.extend(frame::elsewhere(m));
            effects
        }
        Event::SavedBeside(ticket, conflict) => {
            frame::beside(m, *conflict);
            save::saved(m, ticket)
        }
        Event::NotSaved(ticket, why) => save::not_saved(m, ticket, &why),
        Event::Settled(Ok(loaded)) | Event::Loaded(loaded) => {
            save::take_in(m, *loaded);
            m.phone.changed_elsewhere = false;
            vec![]
        }
        Event::Settled(Err(why)) => {
            m.not_saved("gear/conflicts", &why);
            vec![]
        }
        Event::Elsewhere => {
            m.phone.changed_elsewhere = true;
            frame::elsewhere(m)
        }
        Event::UpdateReady => {
            m.phone.update_ready = true;
            vec![]
        }
        Event::OfflineReady => {
            m.phone.offline_ready = true;
            vec![]
        }
        Event::Copied { of, text, room } => {
            m.phone.copy = Some(CopyMade { of, text, room, handed: false });
            vec![]
        }
        Event::FileChosen { name, text } => gear::file_chosen(m, &name, text),
        Event::Stands(things) => gear::stands(m, &things),
        Event::Room(used) => {
            m.phone.used = Some(used);
            vec![]
        }
        Event::Seen => vec![Effect::LookAfter],
        Event::Alone(alone) => {
            m.phone.memory_only = alone;
            vec![]
        }
        Event::DraftsKept(kept) => {
            m.phone.drafts_lost = !kept;
            vec![]
        }
        Event::WroteBack(count) => {
            m.phone.wrote_back = Some(count);
            vec![]
        }
    }
}

fn act_on(m: &mut Model, act: Act) -> Vec<Effect> {
    match act {
        Act::Frame(act) => frame::act(m, act),
        Act::Batch(act) => batch::act(m, act),
        Act::Pitch(act) => pitch::act(m, act),
        Act::Watch(act) => watch::act(m, act),
        Act::Bottle(act) => bottle::act(m, act),
        Act::Open(act) => open::act(m, act),
        Act::Gear(act) => gear::act(m, act),
    }
}
