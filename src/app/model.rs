//! All that the page knows, in one place. It changes in [`super::update`] and nowhere else.

use super::act::Doubted;
use super::drafts::Drafts;
use super::event::NotSaved;
use super::opened::{self, Opened};
use super::phone::Phone;
use super::route::Route;
use super::still::Still;
use crate::advice::standing::ways_to_dose::Trials;
use crate::advice::standing::{self, Standing};
use crate::batch::{Change, Entry, Id, Journal, Kind, Settings, Summary, Today, Units, Vessel};
use crate::exchange::bring::Brought;
use crate::exchange::copy::Copy;
use crate::exchange::table::Table;
use crate::order::ByKey;
use crate::quantity::{Moment, Zone};
use crate::store::{Conflict, Record, SetAside, Unreadable};
use crate::words::{ENGLISH, Words, Writer};
use std::cell::RefCell;
use std::rc::Rc;

/// A copy that is looked at before it is brought in.
#[derive(Clone, Debug, PartialEq)]
pub struct Bringing {
    /// What is in it.
    pub copy: Copy,
    /// What it would bring, once that is known.
    pub found: Option<Brought>,
}

/// Something that can be taken back.
#[derive(Clone, Debug, PartialEq)]
pub struct Undo {
    /// What was done, in words.
    pub done: String,
    /// The change that takes it back.
    pub change: Change,
    /// Since when it is offered.
    pub since: Moment,
}

/// A change that is made here and not yet known to be kept.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Pending {
    pub(super) ticket: u32,
    /// The change itself.
    pub(super) change: Change,
    /// What takes it back when it could not be kept.
    pub(super) back: Change,
    /// What is said once it is kept; empty says nothing and offers no undo.
    pub(super) done: String,
    /// What follows once it is kept.
    pub(super) then: Vec<Then>,
    /// The form that it was sent from.
    pub(super) form: String,
    /// What it takes back, when it is an undo.
    pub(super) undo: Option<Undo>,
}

/// What follows once a change is kept.
#[derive(Clone, Debug, PartialEq)]
pub enum Then {
    /// Forget the drafts under names that start so.
    Forget(String),
    /// Go to a place.
    Go(Route),
    /// Close the form that is open.
    CloseForm,
    /// Put the attention on a part.
    Attend(String),
}

/// What is being noted at a batch.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Noting {
    /// As it is on arrival: a new reading when there is none yet, else nothing.
    #[default]
    Arrived,
    /// Nothing.
    Nothing,
    /// A new reading of a vessel.
    New(Vessel),
    /// A reading is changed.
    Changed(Id),
}

/// What holds only as long as one stays at a place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Here {
    /// What is being noted.
    pub noting: Noting,
    /// The reading that is walked to in the drawing.
    pub walked: Option<usize>,
    /// Signs of fermentation that are marked as seen.
    pub signs: [bool; 5],
    /// The thing of the gear whose form is open.
    pub editing: Option<super::act::Thing>,
    /// What is printed, or was last.
    pub paper: Option<super::act::Paper>,
    /// The copy that is looked at.
    pub bringing: Option<Bringing>,
    /// The table of readings that is looked at.
    pub table: Option<Table>,
    /// Where sliders stand that change nothing else, by name.
    pub slid: ByKey<String, f64>,
    /// Why a form was not saved, by the form's name.
    pub outcomes: ByKey<String, String>,
    /// What was odd about what a form would save, asked about at that form.
    pub doubted: Option<Doubted>,
    /// Folds by name: opened, or closed though they open by themselves.
    pub folds: ByKey<String, bool>,
}

/// A batch worked out, and the revisions of its log and of Gear that it was worked out from.
type WorkedOut = ((u64, u64), Rc<Summary>);
/// Every batch as it stands, what is due first standing first.
pub(super) type ByDue = Vec<(Rc<Summary>, Today)>;
/// The same, and the revision of the journal and the moment that it was put in order for.
type Ordered = ((u64, Moment), Rc<ByDue>);
/// A record without a batch, and how it stands at a moment.
type Judged = (standing::Record, Moment, Rc<Standing>);

/// All that the page knows.
#[derive(Debug)]
pub struct Model {
    /// Everything recorded.
    pub journal: Journal,
    /// What is half typed.
    pub drafts: Drafts,
    /// Where one is.
    pub route: Route,
    /// What holds only here.
    pub here: Here,
    /// What the phone can do.
    pub phone: Phone,
    /// Now, to the half minute.
    pub now: Moment,
    /// Seconds since 1970, as they were last told: for timers alone.
    pub seconds: u32,
    /// The phone's clock.
    pub zone: Zone,
    /// Every text for people.
    pub words: &'static Words,
    /// The last thing that can be taken back.
    pub undo: Option<Undo>,
    pub(super) pending: Vec<Pending>,
    pub(super) chance: u64,
    pub(super) worked: RefCell<ByKey<Id, WorkedOut>>,
    pub(super) by_due: RefCell<Option<Ordered>>,
    pub(super) judged: RefCell<Option<Judged>>,
    pub(super) trials: Trials,
    pub(super) still: Still,
}

impl Model {
    /// A page with nothing recorded. `chance` makes its identities its own.
    #[must_use]
    pub fn new(now: Moment, zone: Zone, chance: u64) -> Self {
        Self {
            journal: Journal::default(),
            drafts: Drafts::default(),
            route: Route::Now,
            here: Here::default(),
            phone: Phone::default(),
            now,
            seconds: 0,
            zone,
            words: &ENGLISH,
            undo: None,
            pending: vec![],
            chance,
            worked: RefCell::default(),
            by_due: RefCell::default(),
            judged: RefCell::default(),
            trials: Trials::default(),
            still: Still::default(),
        }
    }

    /// Takes in what the store holds, in place of what was known.
    pub fn take_in(&mut self, opened: Opened) {
        self.phone.set_aside.clear();
        self.phone.newer.clear();
        for record in opened.closed {
            // A kind without a name here came with a later version.
            let newer = Kind::named(&record.kind).is_none();
            let list = if newer { &mut self.phone.newer } else { &mut self.phone.set_aside };
            list.push((format!("{} {}", record.kind, record.id), record.body));
        }
        for SetAside { key, text, why } in opened.set_aside {
            let newer = matches!(why, Unreadable::Newer { .. });
            let list = if newer { &mut self.phone.newer } else { &mut self.phone.set_aside };
            list.push((key, text));
        }
        let (same, conflicts) = opened.conflicts.into_iter().partition(want_the_same);
        (self.phone.to_settle, self.phone.conflicts) = (same, conflicts);
        self.phone.deleted = opened.deleted;
        // It may lack something now.
        self.phone.copy = None;
        self.journal = Journal::of(opened.entries);
        self.worked.borrow_mut().retain(|_| false);
        self.by_due.take();
    }

    /// What is half typed once that change is saved: a browser that dies then must not find the form of
    /// what is saved still filled.
    #[must_use]
    pub fn drafts_once_saved(&self, ticket: u32) -> Drafts {
        let mut drafts = self.drafts.clone();
        let pending = self.pending.iter().filter(|pending| pending.ticket == ticket);
        for then in pending.flat_map(|pending| &pending.then) {
            if let Then::Forget(start) = then {
                drafts.forget(start);
            }
        }
        drafts
    }

    /// An identity that nothing else has.
    pub(super) fn new_id(&mut self) -> Id {
        // SplitMix64 (Steele, Lea and Flood 2014): a walk through all numbers from a random start.
        self.chance = self.chance.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.chance;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        Id::random((z ^ (z >> 31)).to_be_bytes())
    }

    /// The settings.
    #[must_use]
    pub fn settings(&self) -> Settings {
        self.journal.settings()
    }

    /// The brewer's units.
    #[must_use]
    pub fn units(&self) -> Units {
        self.settings().units
    }

    /// Writes in the brewer's units and language.
    #[must_use]
    pub fn writer(&self) -> Writer<'_> {
        Writer { units: self.units(), words: self.words, zone: &self.zone }
    }

    /// Whether a fold is open: as it was left, else as it is by itself.
    #[must_use]
    pub fn is_open(&self, name: &str, by_itself: bool) -> bool {
        self.here.folds.get(&name.to_owned()).copied().unwrap_or(by_itself)
    }

    /// Why a form was not saved; empty when all is well.
    #[must_use]
    pub fn outcome(&self, form: &str) -> String {
        self.here.outcomes.get(&form.to_owned()).cloned().unwrap_or_default()
    }

    /// Says why something was not saved.
    pub(super) fn not_saved(&mut self, form: &str, why: &NotSaved) {
        let words = &self.words.frame;
        let why = match why {
            NotSaved::Store(why) | NotSaved::Half(why) => (words.not_kept)(why),
            NotSaved::Newer => words.written_by_newer.to_owned(),
            NotSaved::Unreadable => words.form_unknown.to_owned(),
        };
        self.here.outcomes.insert(form.to_owned(), why);
    }
}

/// Whether all versions of the settings want the same: they differ in what is of one tab alone.
pub(super) fn want_the_same(conflict: &Conflict) -> bool {
    let settings = |record: &Record| match entry_of(record) {
        Some((_, Entry::Settings(settings))) => Some(settings),
        _ => None,
    };
    let Some(shown) = settings(&conflict.shown) else { return false };
    let same = |other| settings(other).is_some_and(|other| shown.same_wishes(&other));
    conflict.others.iter().all(same)
}

/// The entry in a stored record, when this version can read it.
#[must_use]
pub fn entry_of(record: &Record) -> Option<(Id, Entry)> {
    opened::read(record).map(|(id, entry, _)| (id, entry))
}
