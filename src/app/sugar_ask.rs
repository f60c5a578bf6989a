//! Which sugar: a known one, one of the brewer's own, a syrup by its label, or wort kept back.

use super::ask::{Ask, AskGravity, Asked, AskedGravity, Wrong, ask, ask_gravity, pick};
use super::model::Model;
use super::part::Part;
use crate::batch::{Entry, Id, Kind};
use crate::quantity::{Bounds, Gravity, Share, ShareUnit, SpecificGravity};
use crate::science::priming::{KeptWort, OwnSugar, Sugar};
use crate::science::sucrose;

/// The stored name of a syrup by its label.
const LABEL: &str = "label";
/// The stored name of wort kept back.
const WORT: &str = "wort";
/// Before the identity of an own one.
const OWN: &str = "own-";

/// What kind is chosen.
#[derive(Clone, Copy, PartialEq)]
enum Which {
    /// It needs no more said of it.
    Known(Sugar),
    Label,
    Wort,
    /// An own one that is gone, or a name that means nothing here.
    Nothing,
}

/// The choice with what it asks beside.
#[derive(Clone)]
pub struct SugarAsked {
    which: Which,
    /// What the brewer calls it, if it has a name of its own.
    pub own_name: String,
    label: Asked<Share>,
    gravity: AskedGravity,
    end: AskedGravity,
    pick: Part,
}

/// Own sugars, by the name that the choice has for each.
fn own(m: &Model) -> Vec<(String, String, OwnSugar)> {
    let named = |(id, entry): (&Id, &Entry)| match entry {
        Entry::Sugar(item) => {
            Some((format!("{OWN}{}", id.as_str()), item.name.clone(), item.sugar))
        }
        _ => None,
    };
    m.journal.gear(Kind::Sugar).filter_map(named).collect()
}

/// Asks in the form `scope`; kept-back wort is taken to have been and to end like the beer.
pub fn ask_sugar(
    m: &Model,
    scope: &str,
    original: Option<SpecificGravity>,
    end: Option<SpecificGravity>,
) -> SugarAsked {
    let words = &m.words.bottle.priming;
    let own = own(m);
    let known =
        Sugar::ALL.map(|one| (one.name().to_owned(), (m.words.names.sugar)(one).to_owned()));
    let mine = own.iter().map(|(stored, name, _)| (stored.clone(), name.clone()));
    let more = [(LABEL, words.by_label), (WORT, words.wort)];
    let more = more.map(|(stored, words)| (stored.to_owned(), words.to_owned()));
    let options = known.into_iter().chain(mine).chain(more).collect();
    let chosen =
        pick(m, &format!("{scope}sugar"), (words.sugar, ""), options, Sugar::Sucrose.name());
    let mine = own.into_iter().find(|(stored, ..)| *stored == chosen.value);
    let which = match (&mine, chosen.value.as_str()) {
        (Some((.., sugar)), _) => Which::Known(Sugar::Own(*sugar)),
        (None, LABEL) => Which::Label,
        (None, WORT) => Which::Wort,
        (None, name) => {
            let known = Sugar::ALL.into_iter().find(|one| one.name() == name);
            known.map_or(Which::Nothing, Which::Known)
        }
    };
    let unit = m.units().gravity;
    let gravity = |field: &str, label, hint, first: Option<SpecificGravity>, start| {
        let (name, first) = (format!("{scope}{field}"), first.map(Gravity::Specific));
        ask_gravity(m, AskGravity { name, label, hint, unit, first, start })
    };
    let (start, low) = (SpecificGravity::literal(1.048), SpecificGravity::literal(1.010));
    SugarAsked {
        which,
        own_name: mine.map(|(_, name, _)| name).unwrap_or_default(),
        label: ask(
            m,
            Ask {
                name: format!("{scope}label"),
                label: words.label,
                hint: words.label_hint,
                unit: ShareUnit::Percent,
                bounds: Bounds::new(Share::literal(0.05), Share::literal(1.0)),
                step: |_| 1.0,
                first: None,
                start: Share::literal(0.75),
            },
        ),
        gravity: gravity("wort", words.wort_gravity, "", original, start),
        end: gravity("wort-end", words.wort_end, words.wort_end_hint, end, low),
        pick: chosen.part,
    }
}

impl SugarAsked {
    /// The sugar; `None` while something of it is missing.
    pub fn get(&self) -> Option<Sugar> {
        match self.which {
            Which::Known(sugar) => Some(sugar),
            Which::Label => Some(Sugar::Own(OwnSugar::by_label(self.label.ok()?))),
            Which::Wort => {
                let gravity = sucrose::as_specific(self.gravity.ok()?);
                let end = sucrose::as_specific(self.end.ok()?);
                Some(Sugar::Wort(KeptWort { gravity, end }))
            }
            Which::Nothing => None,
        }
    }

    /// What it is called: an own one by its own name.
    pub fn name<'a>(&'a self, m: &Model, sugar: Sugar) -> &'a str {
        match self.own_name.as_str() {
            "" => (m.words.names.sugar)(sugar),
            own => own,
        }
    }

    /// Marks what is missing.
    pub fn demand(&self, wrong: &mut Wrong) {
        match self.which {
            Which::Label => {
                wrong.demand(&self.label);
            }
            Which::Wort => {
                wrong.demand(&self.gravity);
                wrong.demand(&self.end);
            }
            Which::Known(_) => {}
            Which::Nothing => wrong.mark(&self.pick.name),
        }
    }

    /// The fields.
    pub fn parts(self) -> Vec<Part> {
        match self.which {
            Which::Label => vec![self.pick, self.label.part],
            Which::Wort => vec![self.pick, self.gravity.part, self.end.part],
            Which::Known(_) | Which::Nothing => vec![self.pick],
        }
    }
}
