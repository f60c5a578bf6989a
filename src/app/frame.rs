//! What stands round every screen: notices, the last thing done with its way back, the four places.

use super::act::{Act, FrameAct};
use super::ask_first;
use super::copies;
use super::event::Effect;
use super::fold::unfold_wrong;
use super::model::{Here, Model, Noting, want_the_same};
use super::part::{Part, Place, Screen, Tag, What, action, alert, group, link, status, text};
use super::room::is_nearly_full;
use super::route::Route;
use super::save;
use crate::quantity::{Hours, Moment};
use crate::store::Conflict;

/// How long the last thing done can be taken back from the bar: long enough for a wet hand, and out of
/// the way after that. The clock goes on by half minutes.
const UNDO_FOR: Hours = Hours::literal(1.0 / 60.0);

/// How long a deleted batch can be had back, while there is room.
const HAD_BACK_FOR: Hours = Hours::literal(30.0 * 24.0);
const BACK_BY_THAT: Hours = Hours::literal(-30.0 * 24.0);

/// The whole screen round its own parts.
pub fn round(m: &Model, mut main: Vec<Part>) -> Screen {
    unfold_wrong(m, &mut main);
    main.extend(offers(m));
    Screen {
        title: title(m),
        notices: notices(m, &main),
        main,
        undo: undo(m),
        places: places(m),
        places_label: m.words.frame.places,
    }
}

fn title(m: &Model) -> String {
    let words = &m.words.frame;
    let here = match &m.route {
        Route::Now | Route::Unknown => words.now.to_owned(),
        Route::Batches => words.batches.to_owned(),
        Route::NewBatch => words.start_a_batch.to_owned(),
        Route::Batch(id, _) | Route::EditBatch(id) => {
            m.journal.batch(id).map(|heading| heading.name.clone()).unwrap_or_default()
        }
        Route::Bench => words.bench.to_owned(),
        Route::Sum(sum) => super::sums::names(m, *sum).0.to_owned(),
        Route::Gear => words.gear.to_owned(),
    };
    format!("{here} · {}", words.page)
}

fn notice(name: &str, grave: bool, said: &str, ways: Vec<Part>) -> Part {
    let mut parts = vec![text(format!("{name}/said"), "notice-said", said)];
    parts.extend(ways);
    if grave { alert(name, "notice notice-grave", parts) } else { status(name, "notice", parts) }
}

/// What another tab saved is shown at once, unless something on the screen would be lost by it or become
/// another thing under the hand.
pub fn elsewhere(m: &Model) -> Vec<Effect> {
    let here = &m.here;
    let busy = here.doubted.is_some() || here.bringing.is_some() || here.table.is_some();
    let busy = busy || m.phone.copy.is_some() || m.phone.memory_only || !m.pending.is_empty();
    let waits = !m.phone.changed_elsewhere || busy || is_half_filled(m, &super::screen(m).main);
    (!waits).then_some(Effect::Load).into_iter().collect()
}

/// Whether something stands typed in a form of the screen that is not saved yet.
fn is_half_filled(m: &Model, parts: &[Part]) -> bool {
    let mut half = false;
    for part in parts {
        let is_form = matches!(&part.what, What::Group(group) if group.send.is_some());
        part.each(&mut |inner| half |= is_form && m.drafts.text(&inner.name).is_some());
        half |= !is_form && is_half_filled(m, &part.parts);
    }
    half
}

/// What must be said until it is settled.
fn notices(m: &Model, main: &[Part]) -> Vec<Part> {
    let words = &m.words.frame;
    let to_gear = |name: &str, label| link(name, "", Route::Gear.address(), label);
    let mut notices = vec![];
    if m.phone.memory_only {
        let way = to_gear("notice/memory/gear", m.words.copies.take_one);
        notices.push(notice("notice/memory", true, words.memory_only, vec![way]));
    }
    if !m.phone.set_aside.is_empty() {
        let said = (words.set_aside)(m.phone.set_aside.len());
        let way = to_gear("notice/aside/gear", words.see_in_gear);
        notices.push(notice("notice/aside", false, &said, vec![way]));
    }
    if !m.phone.newer.is_empty() {
        let said = (m.words.keeping.newer)(m.phone.newer.len());
        let way = to_gear("notice/newer/gear", words.see_in_gear);
        notices.push(notice("notice/newer", false, &said, vec![way]));
    }
    if !m.journal.without_batch().is_empty() {
        let way = to_gear("notice/alone/gear", words.see_in_gear);
        notices.push(notice("notice/alone", false, m.words.keeping.alone, vec![way]));
    }
    let full = m.phone.full || m.phone.drafts_lost || m.phone.used.is_some_and(is_nearly_full);
    if full && !m.phone.memory_only {
        let way = to_gear("notice/full/gear", m.words.keeping.make_room);
        notices.push(notice("notice/full", true, m.words.keeping.nearly_full, vec![way]));
    }
    if let Some(count) = m.phone.wrote_back {
        let way = to_gear("notice/cleared/gear", m.words.copies.take_one);
        notices.push(notice("notice/cleared", true, &(m.words.keeping.cleared)(count), vec![way]));
    }
    if !m.phone.conflicts.is_empty() {
        let way = to_gear("notice/conflicts/gear", words.choose_in_gear);
        notices.push(notice("notice/conflicts", false, words.two_places, vec![way]));
    }
    if m.phone.changed_elsewhere {
        let show = Act::Frame(FrameAct::ShowElsewhere);
        let way = action("notice/elsewhere/show", "quiet", words.show_it, show);
        notices.push(notice("notice/elsewhere", false, words.saved_elsewhere, vec![way]));
    }
    if m.phone.update_ready {
        let take = Act::Frame(FrameAct::TakeUpdate);
        let way = action("notice/update/take", "quiet", words.take_it_now, take);
        // Loaded anew, the page forgets what no browser keeps.
        let (said, ways) = match (m.phone.memory_only, is_half_filled(m, main)) {
            (true, _) => (words.newer_loses, vec![]),
            (false, true) => (words.newer_waits, vec![]),
            (false, false) => (words.newer_ready, vec![way]),
        };
        notices.push(notice("notice/update", false, said, ways));
    }
    notices
}

/// What is offered below the screen, where one looks round and not in the midst of something: the home screen
/// and copies before the first batch and once after its first save, then a copy when one is due.
fn offers(m: &Model) -> Option<Part> {
    let words = &m.words.frame;
    let round = matches!(m.route, Route::Now | Route::Batches);
    let mut batches = m.journal.batches();
    let (only, none) = match (batches.next(), batches.next()) {
        (Some((id, _)), None) => (m.journal.log(id), false),
        (first, _) => (None, first.is_none()),
    };
    let begun = only.is_some_and(|log| log.readings().is_empty() && log.pitch().is_none());
    let said = if copies::is_due(m) && round {
        let (readings, bottled) = copies::since(m);
        (m.words.copies.due)(readings, bottled)
    } else if m.phone.memory_only || m.settings().copied.is_some() {
        return None;
    } else if none && round {
        words.first_home.to_owned()
    } else if begun && !m.drafts.any("") && (round || matches!(m.route, Route::Batch(..))) {
        words.then_home.to_owned()
    } else {
        return None;
    };
    let label = if none { words.see_in_gear } else { m.words.copies.take_one };
    let way = link("offer/gear", "", Route::Gear.address(), label);
    Some(group("offer", Tag::Div, "offer", vec![text("offer/said", "", said), way]))
}

fn undo(m: &Model) -> Vec<Part> {
    let words = &m.words.frame;
    let failed = m.outcome("undo");
    let said = match (&m.undo, failed.is_empty()) {
        (_, false) => failed,
        (Some(undo), true) => undo.done.clone(),
        (None, true) => return vec![],
    };
    let mut parts = vec![text("undo/said", "undo-said", said)];
    if m.undo.is_some() {
        parts.push(action("undo/back", "", words.undo, Act::Frame(FrameAct::Undo)));
    }
    let mut close = action("undo/close", "quiet", "×", Act::Frame(FrameAct::CloseUndo));
    if let What::Action(button) = &mut close.what {
        words.close.clone_into(&mut button.spoken);
    }
    parts.push(close);
    vec![status("undo", "undo", parts)]
}

fn places(m: &Model) -> Vec<Place> {
    let words = &m.words.frame;
    let at = |place: &Route| match place {
        Route::Batches => matches!(
            m.route,
            Route::Batches | Route::NewBatch | Route::Batch(..) | Route::EditBatch(_)
        ),
        Route::Bench => matches!(m.route, Route::Bench | Route::Sum(_)),
        other => m.route == *other,
    };
    [
        (words.now, Route::Now, "M12 3v9l6 3 M12 3a9 9 0 1 0 0.1 0"),
        (
            words.batches,
            Route::Batches,
            "M6 7h12v12a2 2 0 0 1-2 2H8a2 2 0 0 1-2-2z M5 4h14v3H5z M6 12h12",
        ),
        (
            words.bench,
            Route::Bench,
            "M10 3h4v5l5 11a1.5 1.5 0 0 1-1.4 2H6.4A1.5 1.5 0 0 1 5 19l5-11z M7.5 15h9",
        ),
        (words.gear, Route::Gear, "M12 3v13 M9 16a3 3 0 1 0 6 0V5a3 3 0 0 0-6 0z M15 8h3 M15 11h3"),
    ]
    .into_iter()
    .map(|(label, route, sign)| Place { label, address: route.address(), here: at(&route), sign })
    .collect()
}

/// The address changed.
pub fn went(m: &mut Model, hash: &str) -> Vec<Effect> {
    let place = Route::read(hash);
    // The screen of the same place stays as it is.
    if m.route != place {
        m.route = place;
        m.here = Here::default();
        m.phone.copy = None;
    }
    let mut effects = vec![];
    // Where one comes to note a reading the attention is at its first field already.
    if !matches!(m.here.noting, Noting::New(_)) {
        effects.push(Effect::Attend("title".to_owned()));
    }
    // Where more is going to be kept, and where one looks how much there is.
    let counts = matches!(m.route, Route::Gear | Route::Batches | Route::NewBatch);
    effects.extend(counts.then_some(Effect::Room));
    effects
}

/// The clock went on. Once a deletion is no longer offered back, its room is freed: where room is scarce at
/// once, else after a month.
pub fn clock(m: &mut Model, now: Moment) -> Vec<Effect> {
    m.now = now;
    m.phone.deleted.retain(|batch| now.since(batch.at) < HAD_BACK_FOR);
    let undone = m.undo.take_if(|undo| now.since(undo.since) >= UNDO_FOR);
    let first = m.undo.is_none() && !std::mem::replace(&mut m.phone.swept, true);
    let undone = undone.map(|undo| undo.since).or(first.then_some(now));
    let sweep = |undone| Effect::Sweep(now.after(BACK_BY_THAT), undone);
    undone.map(sweep).into_iter().collect()
}

/// A save stands beside another version: the newer finding about a thing replaces the older.
pub fn beside(m: &mut Model, conflict: Conflict) {
    if want_the_same(&conflict) {
        m.phone.to_settle.push(conflict);
        return;
    }
    m.phone.conflicts.retain(|known| (&known.kind, &known.id) != (&conflict.kind, &conflict.id));
    m.phone.conflicts.push(conflict);
}

/// What the frame offers.
pub fn act(m: &mut Model, act: FrameAct) -> Vec<Effect> {
    match act {
        FrameAct::Undo => save::take_back(m),
        FrameAct::CloseUndo => {
            m.undo = None;
            m.here.outcomes.remove(&"undo".to_owned());
            vec![]
        }
        FrameAct::ShowElsewhere => vec![Effect::KeepDrafts, Effect::Load],
        FrameAct::TakeUpdate => vec![Effect::KeepDrafts, Effect::TakeUpdate],
        FrameAct::KeepAsItIs => ask_first::keep(m),
        FrameAct::LookAt(field) => ask_first::look_at(m, field),
        FrameAct::Print(paper) => {
            m.here.paper = Some(paper);
            vec![Effect::Print]
        }
    }
}
