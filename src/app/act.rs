//! Everything a touch can mean beyond filling in a field. Flat data, so that a screen names what it
//! offers, and a walk can do it, without either knowing the other's file.

use crate::advice::odd::Odd;
use crate::advice::own_ends::Ended;
use crate::advice::pitch::steps::Step;
use crate::advice::standing::ways_to_dose::Way;
use crate::batch::{EntryKey, Id, Kind, Vessel};
use crate::store::{Conflict, Token};

/// What a button does, or sending a form.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Of the frame round every screen.
    Frame(FrameAct),
    /// Of a batch as a whole.
    Batch(BatchAct),
    /// Of pitching day.
    Pitch(PitchAct),
    /// Of the readings.
    Watch(WatchAct),
    /// Of bottling day.
    Bottle(BottleAct),
    /// Of opened bottles.
    Open(OpenAct),
    /// Of the gear.
    Gear(GearAct),
}

/// What the frame offers.
#[derive(Clone, Debug, PartialEq)]
pub enum FrameAct {
    /// Take the last thing back.
    Undo,
    /// Put the bar away that offers it.
    CloseUndo,
    /// Show what another tab has saved.
    ShowElsewhere,
    /// Take the newer version of the page.
    TakeUpdate,
    /// Print a paper of the batch.
    Print(Paper),
    /// What was asked about is right: save it as it is.
    KeepAsItIs,
    /// What was asked about is wrong: leave the question and look at this field.
    LookAt(String),
}

/// What can be printed of a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// All that is noted of it.
    Sheet,
    /// A label for each bottle.
    Labels,
}

/// What a batch as a whole offers.
#[derive(Clone, Debug, PartialEq)]
pub enum BatchAct {
    /// Make it the batch in hand.
    TakeInHand(Id),
    /// Save the form: of a new batch, or of the one that is changed.
    Save(Option<Id>),
    /// Take it out with its log.
    Delete(Id),
    /// Take where own earlier batches ended for the expected end too, or with none leave them out again.
    OwnEnds(Id, Vec<Ended>),
}

/// What pitching day offers.
#[derive(Clone, Debug, PartialEq)]
pub enum PitchAct {
    /// Open a step.
    Open(Id, Step),
    /// Go on from a step that has a result.
    GoOn(Id, Step),
    /// Leave a step out.
    Skip(Id, Step),
    /// The yeast is in: save it all.
    Save(Id),
    /// The same, though no gravity is known.
    SaveWithoutStart(Id),
    /// Start the timer of the shaking, or stop it.
    Timer(Id),
    /// Take the pitching out.
    Delete(EntryKey),
}

/// What the readings offer.
#[derive(Clone, Debug, PartialEq)]
pub enum WatchAct {
    /// Open the form for a new reading.
    Add(Vessel),
    /// Go to a batch and open the form for a new reading.
    AddTo(Id),
    /// Open the form of a reading.
    Change(Id),
    /// Leave the form.
    Leave,
    /// Save the form, of a batch.
    Save(Id),
    /// Take a reading out.
    Delete(Id),
    /// Go to a reading in the drawing.
    WalkTo(usize),
    /// Go one reading on or back.
    Walk(bool),
    /// Add the readings of a table to a batch, with or without the odd ones.
    AddTable(Id, bool),
    /// Leave the table that was read.
    LeaveTable,
    /// Mark a sign of fermentation as seen, or not.
    Sign(usize),
}

/// What bottling day offers.
#[derive(Clone, Debug, PartialEq)]
pub enum BottleAct {
    /// It is bottled: save the form.
    Save(Id),
    /// Choose bottles on hand, or not.
    Stock(Id, Id),
    /// Keep the target that is typed with the batch.
    KeepTarget(Id),
    /// More beer than the batch was noted with is right.
    SoMuch(Id),
    /// Put into a form what a way to a dose asks for.
    TakeWay(String, Way),
    /// Save how many bottles were really filled.
    Recount(Id),
    /// Put what was tried into the fields.
    Take(Id),
    /// Put what was tried back to what the fields say.
    PutBack,
    /// Take the bottling out.
    Delete(EntryKey),
}

/// What opened bottles offer.
#[derive(Clone, Debug, PartialEq)]
pub enum OpenAct {
    /// Save how a bottle was.
    Save(Id),
    /// Take an opening out.
    Delete(Id),
    /// The bottles were moved: save since when.
    Moved(Id),
    /// After a gush or a burst the rest were made safe: save how.
    MadeSafe(Id),
}

/// A thing of the gear, in its form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Thing {
    /// Its kind.
    pub kind: Kind,
    /// Its identity; a new one has none yet.
    pub id: Option<Id>,
}

/// The units that are usual together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // each is named for where they are usual
pub enum UnitsOf {
    Metric,
    UnitedStates,
}

/// What the gear offers.
#[derive(Clone, Debug, PartialEq)]
pub enum GearAct {
    /// Open the form of a thing.
    Edit(Thing),
    /// Save the form of a thing.
    Save(Thing),
    /// Leave the form.
    Leave,
    /// Take a thing out.
    Delete(EntryKey),
    /// Take all units that are usual together.
    Usual(UnitsOf),
    /// Have a deleted batch back.
    HaveBack(Id),
    /// Settle a conflict by keeping one version.
    Settle(Box<Conflict>, Token),
    /// Make a copy, of these batches or of everything.
    Copy(Vec<Id>),
    /// The copy that was made was handed out.
    HandedOut,
    /// Take the batches away that are in the copy which was handed out.
    TakeAway,
    /// Bring in what a copy has.
    BringIn,
    /// Leave the copy that was looked at.
    LeaveCopy,
}

/// Something odd that is asked about before it is saved.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubted {
    /// The form.
    pub form: String,
    /// What is odd.
    pub odd: Vec<Odd>,
    /// The field to look at.
    pub field: String,
    /// What saves it.
    pub then: Act,
    /// The brewer says that it is right.
    pub sure: bool,
}
