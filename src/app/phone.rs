//! The phone and its browser, as far as the page knows them.

use super::opened::DeletedBatch;
use crate::batch::Id;
use crate::store::Conflict;

/// What the phone can do and how it keeps things.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Phone {
    /// It refuses storage: what is noted lives only as long as the page.
    pub memory_only: bool,
    /// Everything the page needs is kept for use without a network.
    pub offline_ready: bool,
    /// A newer version of the page is ready.
    pub update_ready: bool,
    /// Another tab has saved something.
    pub changed_elsewhere: bool,
    /// Stored texts that could not be read, kept as they are: a name and the text.
    pub set_aside: Vec<(String, String)>,
    /// Two versions of one thing.
    pub conflicts: Vec<Conflict>,
    /// Versions of one thing that want the same: to be settled without a word.
    pub(super) to_settle: Vec<Conflict>,
    /// Stored texts of a newer version of the page, kept as they are: a name and the text.
    pub newer: Vec<(String, String)>,
    /// What is kept takes so many bytes of the browser's storage, once that was asked for.
    pub used: Option<u64>,
    /// A save was refused for want of room.
    pub full: bool,
    /// What is half typed was refused.
    pub drafts_lost: bool,
    /// What was deleted long ago has been looked for since the page was opened.
    pub(super) swept: bool,
    /// The store was cleared under the page, and so many texts were written back.
    pub wrote_back: Option<usize>,
    /// Batches that were deleted and can be had back.
    pub deleted: Vec<DeletedBatch>,
    /// A copy, once it was asked for.
    pub copy: Option<CopyMade>,
}

/// A copy that was made.
#[derive(Clone, Debug, PartialEq)]
pub struct CopyMade {
    /// The batches it is of; everything, when of none.
    pub of: Vec<Id>,
    /// Its text.
    pub text: String,
    /// What it is of takes so many bytes of the browser's storage.
    pub room: u64,
    /// It was handed out.
    pub handed: bool,
}
