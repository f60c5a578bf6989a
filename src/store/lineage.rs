//! Which revisions of one thing stand, which are replaced, and which of those may go.

use super::envelope::{Record, Revision};
use super::token::Token;
use crate::order::in_order;

/// Two or more revisions that stand side by side and say different things.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Conflict {
    /// What sort of thing it is.
    pub kind: String,
    /// Which of them.
    pub id: String,
    /// The one to show: one that lives before one that is deleted, then the newer by time.
    pub shown: Record,
    /// The others, each different from all before it; never empty.
    pub others: Vec<Record>,
}

/// How much a store in need of room may give up. Nothing that stands ever goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Room {
    /// What is older than the parents of what stands.
    Older,
    /// Everything replaced, where what stands in its place lives.
    Spare,
    /// Everything replaced; what was deleted can then not be had back.
    Deleted,
}

impl Conflict {
    /// The conflict among `heads`, the first of which is shown; `None` when all say the same.
    pub(super) fn among(heads: &[&Revision]) -> Option<Self> {
        let (first, rest) = heads.split_first()?;
        let shown = &first.record;
        let mut others: Vec<Record> = Vec::new();
        for Revision { record, .. } in rest {
            if !record.says_the_same(shown) && !others.iter().any(|o| o.says_the_same(record)) {
                others.push(record.clone());
            }
        }
        let (kind, id) = (shown.kind.clone(), shown.id.clone());
        (!others.is_empty()).then(|| Self { kind, id, shown: shown.clone(), others })
    }
}

fn is_replaced(revision: &Revision, all: &[Revision]) -> bool {
    all.iter().any(|r| r.replaces().any(|t| t == revision.record.token))
}

/// The revisions that no other replaces, the one to show first.
///
/// Time is kept to the minute, so two saves within one are told apart by their number.
pub(super) fn heads(all: &[Revision]) -> Vec<&Revision> {
    let mut heads: Vec<&Revision> = all.iter().filter(|r| !is_replaced(r, all)).collect();
    // Revisions that replace each other are not of our making, but hiding all of them would be worse.
    if heads.is_empty() {
        heads = all.iter().collect();
    }
    let rank = |r: &Revision| {
        let Record { deleted, at, revision, token, .. } = r.record;
        (!deleted, at, revision, token)
    };
    in_order(heads, |a, b| rank(b).cmp(&rank(a)))
}

/// Everything that `parents` have replaced, by way of any revision at hand; without `parents`.
pub(super) fn ancestors(parents: &[Token], all: &[Revision]) -> Vec<Token> {
    let mut found: Vec<Token> = parents.to_vec();
    let mut next = 0;
    while let Some(&token) = found.get(next) {
        next += 1;
        let known = all.iter().filter(|r| r.record.token == token);
        for ancestor in known.flat_map(Revision::replaces) {
            if !found.contains(&ancestor) {
                found.push(ancestor);
            }
        }
    }
    found.split_off(parents.len())
}

/// The replaced revisions that may go, oldest first.
pub(super) fn to_spare(all: &[Revision], room: Room) -> Vec<&Revision> {
    let heads = heads(all);
    let stands = |r: &Revision| heads.iter().any(|h| h.record.token == r.record.token);
    let replaced = all.iter().filter(|r| !stands(r)).collect();
    let age = |r: &Revision| (r.record.revision, r.record.token);
    let mut replaced = in_order(replaced, |a, b| age(a).cmp(&age(b)));
    match room {
        Room::Deleted => {}
        Room::Spare if heads.iter().all(|h| !h.record.deleted) => {}
        Room::Spare => replaced.clear(),
        Room::Older => {
            let mut kept: Vec<Token> = Vec::new();
            for head in heads {
                let at_hand = |t: &&Token| replaced.iter().any(|r| r.record.token == **t);
                let before = kept.len();
                kept.extend(head.parents.iter().filter(at_hand));
                // Its parents cannot be read: then the newest that can be takes their place.
                if kept.len() == before {
                    kept.extend(replaced.last().map(|r| r.record.token));
                }
            }
            replaced.retain(|r| !kept.contains(&r.record.token));
        }
    }
    replaced
}

#[cfg(test)]
mod tests {
    use super::*;

    fn token(n: u8) -> Token {
        Token::from_random([n; 8])
    }

    fn revision(n: u8, body: &str, parents: &[u8], older: &[u8]) -> Revision {
        let record = Record {
            kind: "note".to_owned(),
            id: "a".to_owned(),
            body: body.to_owned(),
            revision: u32::from(n),
            token: token(n),
            at: format!("2026-03-01T09:{n:02}+00:00").parse().expect("a moment"),
            deleted: body.is_empty(),
        };
        let tokens = |list: &[u8]| list.iter().map(|&n| token(n)).collect();
        Revision { record, parents: tokens(parents), older: tokens(older) }
    }

    fn numbers(list: &[&Revision]) -> Vec<u32> {
        list.iter().map(|r| r.record.revision).collect()
    }

    #[test]
    fn an_old_revision_that_outlived_a_younger_one_does_not_stand() {
        let all = [revision(1, "a", &[], &[]), revision(3, "c", &[2], &[1])];
        assert_eq!(numbers(&heads(&all)), [3]);
    }

    #[test]
    fn two_that_say_the_same_are_no_conflict() {
        let same =
            [revision(1, "a", &[], &[]), revision(2, "b", &[1], &[]), revision(3, "b", &[1], &[])];
        assert_eq!(Conflict::among(&heads(&same)), None);
        let differ = [revision(2, "b", &[1], &[]), revision(3, "c", &[1], &[])];
        let conflict = Conflict::among(&heads(&differ)).expect("a conflict");
        assert_eq!(conflict.shown.body, "c");
        assert_eq!(conflict.others.len(), 1);
    }

    #[test]
    fn what_lives_is_shown_before_what_is_deleted() {
        let all = [revision(2, "b", &[1], &[]), revision(3, "", &[1], &[])];
        assert_eq!(numbers(&heads(&all)), [2, 3]);
    }

    #[test]
    fn a_ring_hides_nothing() {
        let all = [revision(1, "a", &[2], &[]), revision(2, "b", &[1], &[])];
        assert_eq!(numbers(&heads(&all)), [2, 1]);
        assert!(to_spare(&all, Room::Deleted).is_empty());
    }

    #[test]
    fn room_is_made_from_the_oldest_and_never_from_what_stands() {
        let chain = |last: &str| {
            [
                revision(1, "a", &[], &[]),
                revision(2, "b", &[1], &[]),
                revision(3, "c", &[2], &[1]),
                revision(4, last, &[3], &[1, 2]),
            ]
        };
        assert_eq!(numbers(&to_spare(&chain("d"), Room::Older)), [1, 2]);
        assert_eq!(numbers(&to_spare(&chain("d"), Room::Spare)), [1, 2, 3]);
        assert!(to_spare(&chain(""), Room::Spare).is_empty());
        assert_eq!(numbers(&to_spare(&chain(""), Room::Deleted)), [1, 2, 3]);
    }

    #[test]
    fn where_a_parent_cannot_be_read_the_next_older_stays() {
        let all = [
            revision(1, "a", &[], &[]),
            revision(2, "b", &[1], &[]),
            revision(4, "d", &[3], &[1, 2]),
        ];
        assert_eq!(numbers(&to_spare(&all, Room::Older)), [1]);
    }

    #[test]
    fn ancestors_are_found_through_what_is_at_hand() {
        let all =
            [revision(2, "b", &[1], &[]), revision(3, "c", &[2], &[]), revision(4, "d", &[3], &[])];
        assert_eq!(ancestors(&[token(4)], &all), [token(3), token(2), token(1)]);
    }
}
