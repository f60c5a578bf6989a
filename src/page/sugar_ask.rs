//! Which sugar: a known one, one of the brewer's own, a syrup by its label, or wort kept back.

use super::ask::{Ask, AskGravity, Asked, AskedGravity, Read, ReadGravity, ask, ask_gravity};
use super::drafts::use_drafts;
use super::parts::choice::Pick;
use super::parts::field::NumberField;
use super::parts::live::When;
use super::priming::stored;
use super::session::{Session, use_session};
use super::words;
use crate::batch::{Entry, Kind};
use crate::quantity::{Bounds, Gravity, Share, ShareUnit, SpecificGravity};
use crate::science::priming::{KeptWort, OwnSugar, Sugar};
use crate::science::sucrose;
use leptos::prelude::*;

/// A syrup by its label.
const LABEL: &str = "label";
/// Wort kept back.
const WORT: &str = "wort";
/// Before the identity of an own one.
const OWN: &str = "own-";

/// The fields.
#[derive(Clone)]
pub struct SugarAsk {
    kind: RwSignal<String>,
    label: Asked<Share>,
    gravity: AskedGravity,
    end: AskedGravity,
}

/// What is chosen, followed; copied into closures.
#[derive(Clone, Copy)]
pub struct SugarChosen {
    session: Session,
    kind: RwSignal<String>,
    label: Read<Share>,
    gravity: ReadGravity,
    end: ReadGravity,
}

impl SugarAsk {
    /// The fields of the form `scope`; kept-back wort is taken to have been and to end like the beer.
    pub fn new(
        scope: &str,
        original: Option<SpecificGravity>,
        end: Option<SpecificGravity>,
    ) -> Self {
        let unit = use_session().units_now().gravity;
        let gravity = |key, label, hint, first: Option<SpecificGravity>, start| {
            let first = first.map(Gravity::Specific);
            ask_gravity(scope, AskGravity { key, label, hint, unit, first, start })
        };
        let (start, low) = (SpecificGravity::literal(1.048), SpecificGravity::literal(1.010));
        Self {
            kind: use_drafts().text(&format!("{scope}sugar"), &stored(Sugar::Sucrose)),
            label: ask(
                scope,
                Ask {
                    key: "label",
                    label: "Sugars in it, by its label",
                    hint: "Grams in 100 g of it, not in 100 mL.",
                    unit: ShareUnit::Percent,
                    bounds: Bounds::new(Share::literal(0.05), Share::literal(1.0)),
                    step: |_| 1.0,
                    first: None,
                    start: Share::literal(0.75),
                },
            ),
            gravity: gravity("wort", "Gravity of the wort kept back", "", original, start),
            end: gravity("wort-end", "Where it ends", "As the beer did.", end, low),
        }
    }

    /// What is chosen.
    pub fn chosen(&self) -> SugarChosen {
        SugarChosen {
            session: use_session(),
            kind: self.kind,
            label: self.label.value,
            gravity: self.gravity.value,
            end: self.end.value,
        }
    }

    /// Shows what is missing.
    pub fn demand(&self) {
        match &*self.kind.get_untracked() {
            LABEL => self.label.face.demand(),
            WORT => {
                self.gravity.face.demand();
                self.end.face.demand();
            }
            _ => {}
        }
    }
}

/// Own sugars, by the name that the choice has for each.
fn own(session: Session) -> Vec<(String, String, OwnSugar)> {
    session.journal.with(|journal| {
        let named = journal.gear(Kind::Sugar).filter_map(|(id, entry)| match entry {
            Entry::Sugar(item) => {
                Some((format!("{OWN}{}", id.as_str()), item.name.clone(), item.sugar))
            }
            _ => None,
        });
        named.collect()
    })
}

impl SugarChosen {
    /// The sugar; `None` while something of it is missing or an own one is gone.
    pub fn get(self) -> Option<Sugar> {
        let name = self.kind.get();
        match &*name {
            LABEL => Some(Sugar::Own(OwnSugar::by_label(self.label.get().ok()?))),
            WORT => {
                let specific = |read: ReadGravity| read.get().ok().map(sucrose::as_specific);
                let (gravity, end) = (specific(self.gravity)?, specific(self.end)?);
                Some(Sugar::Wort(KeptWort { gravity, end }))
            }
            name if name.starts_with(OWN) => {
                let own = own(self.session).into_iter().find(|(id, ..)| id == name);
                own.map(|(.., sugar)| Sugar::Own(sugar))
            }
            name => Sugar::ALL.into_iter().find(|sugar| stored(*sugar) == name),
        }
    }

    /// What the brewer calls it, if it has a name of its own.
    pub fn name(self) -> String {
        let name = self.kind.get_untracked();
        let own = untrack(|| own(self.session)).into_iter().find(|(id, ..)| *id == name);
        own.map(|(_, name, _)| name).unwrap_or_default()
    }
}

fn choices(session: Session) -> Vec<(String, String)> {
    let known = Sugar::ALL.map(|sugar| (stored(sugar), words::sugar(sugar).to_owned()));
    let own = own(session).into_iter().map(|(id, name, _)| (id, name));
    let more = [
        (LABEL.to_owned(), "A syrup, by its label".to_owned()),
        (WORT.to_owned(), "Wort kept back".to_owned()),
    ];
    known.into_iter().chain(own).chain(more).collect()
}

/// The choice, and what it asks beside.
#[component]
pub fn SugarFields(
    /// Sets this form's fields apart from another's.
    id: &'static str,
    ask: SugarAsk,
) -> impl IntoView {
    let session = use_session();
    let kind = ask.kind;
    let (label, gravity, end) = (ask.label.face, ask.gravity.face, ask.end.face);
    view! {
        <Pick
            id=format!("{id}-sugar")
            label="Sugar"
            options=move || choices(session)
            chosen=kind
        />
        <When is=move || kind.with(|kind| kind == LABEL)>
            <NumberField face=label.clone() />
        </When>
        <When is=move || kind.with(|kind| kind == WORT)>
            <NumberField face=gravity.clone() />
            <NumberField face=end.clone() />
        </When>
    }
}
