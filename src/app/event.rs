//! What happens to the page, and what it asks of the world in return.

use super::act::Act;
use super::opened::Opened;
use crate::batch::{Change, Id};
use crate::exchange::copy::Thing;
use crate::quantity::{Moment, Zone};
use crate::store::{Conflict, Revision, Token};

/// Something that happened.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)] // each variant says what its fields are
pub enum Event {
    /// A field holds another text: typed, chosen, stepped or slid. `unit` is the symbol shown beside it.
    Typed { name: String, text: String, unit: String },
    /// A field has been left.
    Left(String),
    /// Another unit is chosen beside a field.
    Unit { name: String, symbol: String },
    /// A slider or a stem was moved.
    Slid { name: String, value: f64 },
    /// A fold was opened or closed.
    Folded { name: String, open: bool },
    /// A button was touched, or a form sent.
    Did(Act),
    /// The address changed; the part behind `#`.
    Went(String),
    /// The clock went on.
    Clock(Moment),
    /// So many seconds have gone by since 1970: told before each touch, and at each second while a timer
    /// runs on the screen.
    Tick(u32),
    /// The phone is in another time zone.
    Travelled(Zone),
    /// A save was done.
    Saved(u32),
    /// A save went beside another version of the same thing.
    SavedBeside(u32, Box<Conflict>),
    /// A save was not done.
    NotSaved(u32, NotSaved),
    /// A conflict was settled, or not.
    Settled(Result<Box<Opened>, NotSaved>),
    /// Another tab has saved something.
    Elsewhere,
    /// The store was read anew.
    Loaded(Box<Opened>),
    /// A newer version of the page is ready.
    UpdateReady,
    /// Everything the page needs is kept for use without a network.
    OfflineReady,
    /// A copy was made, of these batches or of everything; what it is of takes so many bytes of room.
    Copied { of: Vec<Id>, text: String, room: u64 },
    /// A file was chosen at a field, and what it holds.
    FileChosen { name: String, text: Result<String, NoFile> },
    /// What stands in the store, as things of a copy.
    Stands(Vec<Thing>),
    /// So many bytes are used.
    Room(u64),
    /// The page is looked at again.
    Seen,
    /// The store keeps nothing: all is kept for as long as the page is open. Or no longer so.
    Alone(bool),
    /// What is half typed is kept, or can no longer be.
    DraftsKept(bool),
    /// The store was cleared under the page, and so many texts were written back.
    WroteBack(usize),
}

/// Why a file was not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFile {
    /// It is larger than any that is of use.
    TooLarge,
    /// The phone did not give it out.
    Unread,
}

/// Why something was not kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotSaved {
    /// The store says why.
    Store(crate::store::StoreError),
    /// The same, and what was done of it before could not be taken back: part of it is kept.
    Half(crate::store::StoreError),
    /// What is there was written by a newer version.
    Newer,
    /// What is there cannot be read by this version.
    Unreadable,
}

/// Something asked of the world.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// Save a change; the answer bears the same number. The second change takes the first back.
    Save(u32, Change, Change),
    /// Settle a conflict by keeping that version.
    Settle(Box<Conflict>, Token),
    /// Read the store anew.
    Load,
    /// Free the room of what was deleted by the first time; where room is scarce, by the second.
    Sweep(Moment, Moment),
    /// See whether the store still has what it had.
    LookAfter,
    /// Keep the drafts.
    KeepDrafts,
    /// Go to an address.
    Go(String),
    /// Put the attention on a part.
    Attend(String),
    /// Print what is shown.
    Print,
    /// A timer runs: keep the screen on and tell each second. Or it does no longer: let it sleep.
    Awake(bool),
    /// Take the newer version of the page.
    TakeUpdate,
    /// Save a change that brings these records in as they were saved elsewhere; as with a save.
    BringIn(u32, Vec<Revision>, Change, Change),
    /// Make a copy, of these batches or of everything.
    Copy(Vec<Id>),
    /// Say what stands in the store.
    Things,
    /// Say how many bytes are used.
    Room,
}
