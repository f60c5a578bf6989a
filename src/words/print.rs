//! The words of paper: the batch sheet and the labels.

use super::texts::texts;

texts! {
    /// What stands at paper: the batch sheet and the labels.
    PrintWords, PRINT {} says {}
}
