//! What an archive remembers of each thing: what the next save stands upon.

use super::envelope::Revision;
use super::token::Token;
use crate::order::ByKey;
use crate::quantity::Moment;

/// What this archive has given out or saved, by kind and id.
pub(super) type KnownThings = ByKey<(String, String), Known>;

/// What this archive has last given out or saved of one thing: what a save now stands upon.
#[derive(Clone, Debug, Default)]
pub(super) struct Known {
    /// 0 when nothing is known.
    pub(super) revision: u32,
    pub(super) token: Option<Token>,
    /// What it replaces.
    pub(super) over: Vec<Token>,
    /// All that stood, for settling conflicts.
    pub(super) seen: Vec<Token>,
    /// When it was deleted, if all that stood said so.
    pub(super) deleted: Option<Moment>,
}

impl Known {
    /// From what stands, that on the screen first.
    pub(super) fn of(standing: &[&Revision]) -> Self {
        let Some(shown) = standing.first() else { return Self::default() };
        Self {
            revision: shown.record.revision,
            token: Some(shown.record.token),
            over: shown.replaces().collect(),
            seen: standing.iter().map(|h| h.record.token).collect(),
            deleted: standing
                .iter()
                .all(|h| h.record.deleted)
                .then(|| standing.iter().map(|h| h.record.at).max())
                .flatten(),
        }
    }
}
