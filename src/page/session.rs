//! The one session of the page: what happens goes in, what is drawn and done comes out. It is the only
//! one that writes to the store.

mod start;

pub use start::{add, arrive, begin, load, open, show_places, surround};

use super::board::{Shown, put};
use super::keep::Kept;
use super::{clock, effects, second_shelf};
use crate::app::{Effect, Event, Keeper, Model, Place, Screen, screen, update};
use crate::batch::Theme;
use crate::store::Store;
use leptos::prelude::*;
use std::cell::RefCell;
use std::collections::VecDeque;
use std::time::Duration;

/// How long after a touch the drafts are written down, so that one writing serves a whole number.
const SOON: Duration = Duration::from_millis(400);
/// How often a timer looks at the clock, so that it shows each second.
const HALF_A_SECOND: Duration = Duration::from_millis(500);

/// What is drawn.
#[derive(Clone, Default)]
pub struct Drawn {
    /// What must be said until it is settled.
    pub notices: Shown,
    /// The screen proper.
    pub main: Shown,
    /// The last thing done, with its way back.
    pub undo: Shown,
    /// The four places.
    pub places: ArcRwSignal<Vec<Place>>,
    /// What they are called together, aloud.
    pub places_label: ArcRwSignal<&'static str>,
}

struct Session {
    model: Model,
    keeper: Keeper<Box<dyn Store>>,
    kept: Kept,
    /// The browser has a store for it.
    lasts: bool,
    drawn: Drawn,
    title: String,
    theme: Theme,
    /// The browser was asked not to clear what is kept.
    persists: bool,
    /// What tells each second, while a timer runs.
    ticking: Option<IntervalHandle>,
}

thread_local! {
    static SESSION: RefCell<Option<Session>> = const { RefCell::new(None) };
    static WAITING: RefCell<VecDeque<Event>> = const { RefCell::new(VecDeque::new()) };
    static KEEPING: RefCell<bool> = const { RefCell::new(false) };
}

/// Something done with the session; nothing while it is not there, or is at work.
fn with_session<T>(act: impl FnOnce(&mut Session) -> T) -> Option<T> {
    SESSION.with(|it| it.try_borrow_mut().ok()?.as_mut().map(act))
}

/// Another tab wrote a text, or took one away.
pub fn elsewhere(key: &str, text: Option<&str>) {
    with_session(|session| session.keeper.elsewhere(key, text));
}

/// Something happened. What happens while that is dealt with (a field that is left because another part
/// is drawn) waits for its turn, and what happens before the session is there for its start.
pub fn send(event: Event) {
    happens(event);
    go_on();
}

/// Deals with what waits, and with what drawing brings about.
fn go_on() {
    let deal = |session: &mut Session| {
        while let Some(event) = WAITING.with_borrow_mut(VecDeque::pop_front) {
            if matches!(event, Event::Did(_)) {
                session.take(Event::Tick(clock::seconds()));
            }
            session.take(event);
        }
        session.draw();
    };
    while with_session(deal).is_some() && is_waiting() {}
}

fn is_waiting() -> bool {
    WAITING.with_borrow(|waiting| !waiting.is_empty())
}

/// Tells the second, if it is another.
fn tick() {
    let seconds = clock::seconds();
    let told = SESSION.with(|it| {
        it.try_borrow().is_ok_and(|it| it.as_ref().is_some_and(|it| it.model.seconds == seconds))
    });
    if !told {
        send(Event::Tick(seconds));
    }
}

/// Writes the drafts down now: the page goes out of sight.
pub fn keep_drafts() {
    KEEPING.with_borrow_mut(|keeping| *keeping = false);
    let news = with_session(|session| {
        second_shelf::put(session.kept.keep(&session.model.drafts), None);
        session.news_of_drafts()
    });
    if let Some(news) = news.flatten() {
        send(news);
    }
}

fn happens(event: Event) {
    WAITING.with_borrow_mut(|waiting| waiting.push_back(event));
}

impl Session {
    fn draw(&mut self) {
        let shown = screen(&self.model);
        self.show(shown);
    }

    fn show(&mut self, shown: Screen) {
        put(&self.drawn.notices, shown.notices);
        put(&self.drawn.main, shown.main);
        put(&self.drawn.undo, shown.undo);
        self.show_places(&shown.places, shown.places_label);
        if shown.title != self.title {
            document().set_title(&shown.title);
            self.title = shown.title;
        }
        let theme = self.model.settings().theme;
        if theme != self.theme {
            effects::put_on(theme);
            self.theme = theme;
        }
    }

    fn show_places(&mut self, places: &[Place], label: &'static str) {
        if self.drawn.places.with_untracked(|shown| shown != places) {
            self.drawn.places.set(places.to_vec());
            self.drawn.places_label.set(label);
        }
    }

    /// That what is half typed cannot be kept, or can again.
    fn news_of_drafts(&self) -> Option<Event> {
        let kept = !self.kept.refused;
        (kept == self.model.phone.drafts_lost).then_some(Event::DraftsKept(kept))
    }

    fn take(&mut self, event: Event) {
        for effect in update(&mut self.model, event) {
            self.carry_out(effect);
        }
    }

    /// What the store was told goes to the second shelf too; what came of it is told once it lies there.
    fn kept(&mut self, then: Option<Event>) {
        for event in self.keeper.news() {
            happens(event);
        }
        // Why it was not saved is said at once.
        let (at_once, then) = match then {
            Some(event @ Event::NotSaved(..)) => (Some(event), None),
            then => (None, then),
        };
        let mut notes = self.keeper.notes();
        if at_once.is_some() {
            // What stays in the form is to outlive the page too.
            notes.extend(self.kept.keep(&self.model.drafts));
        }
        if let Some(Event::Saved(ticket) | Event::SavedBeside(ticket, _)) = &then {
            notes.extend(self.kept.keep(&self.model.drafts_once_saved(*ticket)));
            self.news_of_drafts().into_iter().for_each(happens);
            // The brewer has just given it something to lose, and so knows why a browser asks.
            if !std::mem::replace(&mut self.persists, true) {
                effects::ask_to_persist();
            }
        }
        let then = then.map(|event| Box::new(move || send(event)) as Box<dyn FnOnce()>);
        second_shelf::put(notes, then);
        if let Some(event) = at_once {
            happens(event);
        }
    }

    fn carry_out(&mut self, effect: Effect) {
        let now = self.model.now;
        match effect {
            Effect::Save(ticket, change, back) => {
                let saved = self.keeper.save(ticket, (&change, &back), now, &mut clock::token);
                self.kept(Some(saved));
            }
            Effect::Sweep(until, undone) => {
                self.keeper.sweep(until, undone);
                self.kept(None);
            }
            Effect::LookAfter => {
                self.keeper.look_after();
                self.kept(None);
            }
            Effect::Settle(conflict, keep) => {
                let settled = self.keeper.settle(&conflict, keep, now, clock::token());
                self.kept(Some(Event::Settled(settled)));
            }
            Effect::Load => {
                let opened = self.keeper.load();
                self.kept(None);
                if let Ok(opened) = opened {
                    happens(Event::Loaded(Box::new(opened)));
                }
            }
            Effect::KeepDrafts => {
                let already = KEEPING.with_borrow_mut(|keeping| std::mem::replace(keeping, true));
                if !already {
                    set_timeout(keep_drafts, SOON);
                }
            }
            Effect::Go(address) => effects::go(&address),
            Effect::Attend(part) => effects::attend(&part),
            Effect::Print => effects::print(),
            Effect::Awake(awake) => {
                effects::stay_awake(awake);
                let ticking = awake.then(|| set_interval_with_handle(tick, HALF_A_SECOND).ok());
                let before = std::mem::replace(&mut self.ticking, ticking.flatten());
                if let Some(before) = before {
                    before.clear();
                }
            }
            Effect::TakeUpdate => {
                second_shelf::put(self.kept.keep(&self.model.drafts), None);
                effects::take_update();
            }
            Effect::BringIn(ticket, records, change, back) => {
                let both = (&change, &back);
                let saved = self.keeper.bring_in(ticket, &records, both, now, &mut clock::token);
                self.kept(Some(saved));
            }
            Effect::Room => happens(Event::Room(self.keeper.used())),
            Effect::Things => happens(Event::Stands(self.keeper.things())),
            Effect::Copy(of) => {
                happens(self.keeper.copy(of, now));
            }
        }
    }
}
