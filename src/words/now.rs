//! The words of Now.

use super::texts::texts;

texts! {
    /// What stands at Now.
    NowWords, NOW {} says {}
}
