//! The start of the session, step by step.

use super::{Drawn, SESSION, Session, go_on, happens, is_waiting, with_session};
use crate::app::{Effect, Event, Keeper, Model, Part, Screen, screen, update};
use crate::page::board::Node;
use crate::page::keep::{KEY, Kept};
use crate::page::{clock, effects, second_shelf};
use crate::quantity::Zone;
use crate::store::{BrowserStore, Lying, MemoryStore, Note, Store};
use leptos::prelude::{Update, WithUntracked};

/// Opens the store, or the page's own memory where it is refused. What is then to be drawn goes to `drawn`.
pub fn open(drawn: Drawn, zone: Zone) {
    let (store, lasts): (Box<dyn Store>, bool) = match BrowserStore::open() {
        Ok(store) => (Box::new(store), true),
        Err(_) => (Box::new(MemoryStore::new()), false),
    };
    let (kept, drafts) = Kept::restored();
    let chance = u64::from_be_bytes(clock::random());
    let mut model = Model::new(clock::now(), zone, chance);
    model.drafts = drafts;
    model.phone.memory_only = !lasts;
    model.phone.update_ready = effects::is_marked("update");
    model.phone.offline_ready = effects::is_marked("offline");
    let theme = model.settings().theme;
    let session = Session {
        model,
        keeper: Keeper::new(store),
        kept,
        lasts,
        drawn,
        title: String::new(),
        theme,
        persists: false,
        ticking: None,
    };
    SESSION.with(|it| it.replace(Some(session)));
}

/// Loads all that can be read.
pub fn load() {
    with_session(|session| {
        let Session { model, keeper, theme, .. } = session;
        match keeper.load() {
            Ok(opened) => model.take_in(opened),
            Err(_) => model.phone.memory_only = true,
        }
        model.phone.used = Some(keeper.used());
        *theme = model.settings().theme;
        effects::put_on(*theme);
    });
}

/// Goes to where the address says, and gives what is to be drawn there.
pub fn arrive() -> Option<Screen> {
    with_session(|session| {
        let _ = update(&mut session.model, Event::Tick(clock::seconds()));
        // A timer that was left running runs on; the attention is where the browser has it.
        let asked = update(&mut session.model, Event::Went(effects::hash())).into_iter();
        for effect in asked.filter(|effect| matches!(effect, Effect::Awake(_))) {
            session.carry_out(effect);
        }
        screen(&session.model)
    })
}

/// Draws the four places.
pub fn show_places(of: &Screen) {
    with_session(|session| session.show_places(&of.places, of.places_label));
}

/// Draws what else stands around the screen's own parts.
pub fn surround(around: Screen) {
    with_session(|session| session.show(around));
}

/// Draws more of the screen's own parts, where so many are drawn: not when something that happened has
/// brought about another screen.
pub fn add(drawn: usize, parts: Vec<Part>) {
    with_session(|session| {
        let main = &session.drawn.main;
        if main.with_untracked(|nodes| nodes.len() == drawn) {
            main.update(|nodes| nodes.extend(parts.into_iter().map(Node::new)));
        }
    });
}

/// The whole is drawn: the second shelf is opened, and what has happened meanwhile is dealt with.
pub fn begin() {
    if with_session(|session| session.lasts) == Some(true) {
        second_shelf::open(lay_together);
    }
    go_on();
}

/// What lies on the second shelf comes to the first, where that has lost it.
fn lay_together(lying: Vec<Lying>) {
    let anew = with_session(|session| {
        let Session { keeper, kept, model, .. } = session;
        let now = clock::milliseconds();
        let (drafts, lying): (Vec<_>, Vec<_>) = lying.into_iter().partition(|late| late.key == KEY);
        if let Some(drafts) = drafts.first().and_then(|late| kept.adopt(late, &model.drafts)) {
            model.drafts = drafts;
            // To be drawn.
            happens(Event::Tick(model.seconds));
            happens(Event::DraftsKept(!kept.refused));
        }
        let (anew, settled) = keeper.merge(&lying, now);
        let mut notes = keeper.notes();
        notes.extend(settled.into_iter().map(|key| Note { key, text: None }));
        second_shelf::put(notes, None);
        anew
    });
    if let Some(anew) = anew.flatten() {
        happens(Event::Loaded(Box::new(anew)));
    }
    if is_waiting() {
        go_on();
    }
}
