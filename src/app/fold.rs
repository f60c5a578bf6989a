//! Folds: what is folded away until it is wanted, and opened where a save was refused for it.

use super::model::Model;
use super::part::{Fold, Part, Run, What};

/// A fold with parts that are at hand.
pub fn fold(m: &Model, name: &str, summary: impl Into<String>, parts: Vec<Part>) -> Part {
    fold_from(m, name, summary, false, parts)
}

/// A fold that is open by itself, or not.
pub fn fold_from(
    m: &Model,
    name: &str,
    summary: impl Into<String>,
    by_itself: bool,
    parts: Vec<Part>,
) -> Part {
    let open = m.is_open(name, by_itself);
    Part::of(
        name,
        What::Fold(Fold { kind: "more", summary: summary.into(), beside: vec![], open }),
        parts,
    )
}

/// A fold with a text in sight beside its name.
pub fn with_beside(mut folded: Part, kind: &'static str, said: String) -> Part {
    if let What::Fold(fold) = &mut folded.what {
        fold.beside.push(Run::new(kind, said));
    }
    folded
}

/// What a save was refused for is not left folded away.
pub fn unfold_wrong(m: &Model, parts: &mut [Part]) {
    for part in parts {
        unfold_wrong(m, &mut part.parts);
        if let What::Fold(fold) = &mut part.what
            && !fold.open
        {
            fold.open = part.parts.iter().any(|inner| is_wrong(m, inner));
        }
    }
}

fn is_wrong(m: &Model, part: &Part) -> bool {
    let mut wrong = false;
    part.each(&mut |inner| {
        wrong |= match &inner.what {
            What::Number(field) => !field.error.is_empty() && m.drafts.was_demanded(&inner.name),
            What::Moment(_) => m.drafts.was_demanded(&inner.name),
            _ => false,
        };
    });
    wrong
}
