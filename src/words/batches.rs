//! The words of the list of batches and the form of one.

use super::texts::texts;

texts! {
    /// What stands at the list of batches and the form of one.
    BatchesWords, BATCHES {} says {}
}
