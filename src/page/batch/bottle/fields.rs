//! The fields of a bottling, and what the plan needs of them.

use super::super::Live;
use crate::advice::bottle::Bottling;
use crate::advice::bottle::asked::{
    self, Asked, Chilled, Cold, DoseFor, Ended, Glass, SugarGoes, WarmFor,
};
use crate::advice::bottle::history::{Held, Past, Seal, Working};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::{Bottles, Size};
use crate::batch::{Entry, Id, Kind, Summary, quiet};
use crate::page::ask::{Ask, Asked as Field, Read, ask};
use crate::page::bench::temperature;
use crate::page::drafts::use_drafts;
use crate::page::priming::{NOT_CHILLED, PLACE, ask_beer, ask_hottest, ask_target, ask_warmest};
use crate::page::session::{Session, use_session};
use crate::page::sugar_ask::{SugarAsk, SugarChosen};
use crate::quantity::{Bounds, CarbonDioxideVolumes, Celsius, Estimate, Grams, Litres, MassUnit};
use crate::science::ScienceError;
use leptos::prelude::*;

/// Choices and words, each a text that is kept while it is half done.
#[derive(Clone, Copy)]
pub struct Texts {
    /// Identities of the chosen bottles on hand, with a space between.
    pub stock: RwSignal<String>,
    /// The weakest bottle, where none on hand are chosen.
    pub weakest: RwSignal<String>,
    /// Their size, where none on hand are chosen.
    pub size: RwSignal<String>,
    /// `bottles` when the sugar is weighed into each.
    pub dosing: RwSignal<String>,
    /// `yes` when the beer was chilled.
    pub chilled: RwSignal<String>,
    /// How it was closed then.
    pub seal: RwSignal<String>,
    /// Whether it still worked then.
    pub working: RwSignal<String>,
    /// `short` when it was warm for less than two days.
    pub warm_for: RwSignal<String>,
    /// `more` when the dose is for beer that holds more.
    pub dose_for: RwSignal<String>,
    /// Why it is finished.
    pub because: RwSignal<String>,
    /// When.
    pub at: RwSignal<String>,
    /// Anything else.
    pub note: RwSignal<String>,
}

/// All fields.
#[derive(Clone)]
pub struct Fields {
    pub beer: Field<Litres>,
    pub target: Field<CarbonDioxideVolumes>,
    pub warmest: Field<Celsius>,
    pub coldest: Field<Celsius>,
    pub hottest: Field<Celsius>,
    pub place: Field<Celsius>,
    pub weighed: Field<Grams>,
    pub sugar: SugarAsk,
    pub texts: Texts,
}

impl Fields {
    /// The fields, filled in from the log where it can be.
    pub fn new(scope: &str, live: Live) -> Self {
        let drafts = use_drafts();
        let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
        let known = live.with_untracked(|s| {
            s.as_ref().map(|s| {
                let sg = |gravity: Option<Estimate<_>>| gravity.map(Estimate::value);
                (quiet(&s.lines), sg(s.original), sg(s.present))
            })
        });
        let (quiet, original, present) = known.unwrap_or((None, None, None));
        let warmest = quiet.and_then(|quiet| quiet.warmest);
        let coldest = quiet.and_then(|quiet| quiet.coldest);
        let was_chilled = quiet.is_some_and(|quiet| quiet.was_chilled());
        let hint = if warmest.is_some() {
            "From your readings. Not a chilled temperature: gas that left does not come back."
        } else {
            NOT_CHILLED
        };
        let cold = ("coldest", "Coldest it has been since", "");
        Self {
            beer: ask_beer(scope),
            target: ask_target(scope),
            warmest: ask_warmest(scope, hint, warmest),
            coldest: temperature(scope, cold, PLACE, coldest.filter(|_| was_chilled), 4.0),
            hottest: ask_hottest(scope),
            place: temperature(scope, ("place", "Where they will stand", ""), PLACE, None, 20.0),
            weighed: ask(
                scope,
                Ask {
                    key: "weighed",
                    label: "Sugar you weighed",
                    hint: "Leave empty if it is the dose above.",
                    unit: MassUnit::Grams,
                    bounds: Bounds::new(Grams::literal(0.0), Grams::literal(20_000.0)),
                    step: |_| 1.0,
                    first: None,
                    start: Grams::literal(100.0),
                },
            ),
            sugar: SugarAsk::new(scope, original, present),
            texts: Texts {
                stock: text("stock", ""),
                weakest: text("weakest", ""),
                size: text("size", "500"),
                dosing: text("dosing", "vessel"),
                chilled: text("chilled", if was_chilled { "yes" } else { "no" }),
                seal: text("seal", "unsure"),
                working: text("working", "quiet"),
                warm_for: text("warm-for", "long"),
                dose_for: text("dose-for", "rule"),
                because: text("because", ""),
                at: text("at", ""),
                note: text("note", ""),
            },
        }
    }

    /// What the plan needs of them.
    pub fn input(&self, live: Live) -> Input {
        Input {
            session: use_session(),
            live,
            beer: self.beer.value,
            target: self.target.value,
            warmest: self.warmest.value,
            coldest: self.coldest.value,
            hottest: self.hottest.value,
            sugar: self.sugar.chosen(),
            texts: self.texts,
        }
    }
}

/// Other values than those in the fields, to see what they would do.
#[derive(Clone, Copy, Default)]
pub struct Changed {
    pub target: Option<CarbonDioxideVolumes>,
    pub warmest: Option<Celsius>,
    pub beer: Option<Litres>,
    pub hottest: Option<Celsius>,
}

/// What the fields come to.
pub struct Ready {
    pub bottling: Bottling,
    pub held: Held,
    pub past: Past,
    /// Bottles on hand that were chosen; none when only their kind was.
    pub chosen: Vec<Bottles>,
}

/// What the plan needs of the fields; copied into closures.
#[derive(Clone, Copy)]
pub struct Input {
    pub session: Session,
    pub live: Live,
    pub beer: Read<Litres>,
    pub target: Read<CarbonDioxideVolumes>,
    pub warmest: Read<Celsius>,
    pub coldest: Read<Celsius>,
    pub hottest: Read<Celsius>,
    pub sugar: SugarChosen,
    pub texts: Texts,
}

impl Input {
    /// Bottles on hand.
    pub fn on_hand(self) -> Vec<(Id, String, Bottles)> {
        self.session.journal.with(|journal| {
            let items = journal.gear(Kind::Bottles).filter_map(|(id, entry)| match entry {
                Entry::Bottles(item) => Some((id.clone(), item.name.clone(), item.bottles)),
                _ => None,
            });
            items.collect()
        })
    }

    /// Those that are chosen.
    pub fn chosen(self) -> Vec<Bottles> {
        let stock = self.texts.stock.get();
        let is_chosen = |id: &Id| stock.split(' ').any(|one| one == id.as_str());
        self.on_hand().into_iter().filter(|(id, ..)| is_chosen(id)).map(|(.., own)| own).collect()
    }

    /// What happened to the beer after it went quiet; `None` while its coldest is to be said.
    fn cold(self) -> Option<Option<Cold>> {
        if Chilled::named(&self.texts.chilled.get()) != Some(Chilled::Yes) {
            return Some(None);
        }
        Some(Some(Cold {
            coldest: self.coldest.get().ok()?,
            seal: Seal::named(&self.texts.seal.get()).unwrap_or(Seal::Unsure),
            working: Working::named(&self.texts.working.get()).unwrap_or(Working::Unsure),
            warm_for: WarmFor::named(&self.texts.warm_for.get()).unwrap_or(WarmFor::Long),
        }))
    }

    /// The bottles as the plan counts them: those chosen, else the weakest kind and its size.
    fn glass(self, chosen: &[Bottles]) -> Option<Glass> {
        Glass::of(chosen).or_else(|| {
            let weakest = Bottle::named(&self.texts.weakest.get())?;
            let smallest = Size::named(&self.texts.size.get())?.litres();
            Some(Glass { weakest, smallest })
        })
    }

    /// What was asked, as far as the fields go, with `changed` in place of what stands there; followed.
    fn asked(self, changed: Changed, chosen: &[Bottles]) -> Option<Asked> {
        let because_stated = !self.texts.because.get().trim().is_empty();
        let ended = |s: &Summary| Ended {
            state: s.finish.state,
            points_left: s.finish.points_left,
            yeast_may_go_on: s.may_go_on(),
            because_stated,
        };
        let settings = self.session.settings();
        Some(Asked {
            ended: self.live.with(|s| s.as_ref().map(ended))?,
            beer: changed.beer.or_else(|| self.beer.get().ok())?,
            target: changed.target.or_else(|| self.target.get().ok())?,
            warmest: changed.warmest.or_else(|| self.warmest.get().ok())?,
            cold: self.cold()?,
            dose_for: DoseFor::named(&self.texts.dose_for.get()).unwrap_or(DoseFor::Rule),
            sugar: self.sugar.get()?,
            sugar_goes: SugarGoes::named(&self.texts.dosing.get()).unwrap_or(SugarGoes::Vessel),
            scale: settings.scale(),
            unit: settings.units.mass,
            glass: self.glass(chosen)?,
            hottest: changed.hottest.or_else(|| self.hottest.get().ok())?,
            height: settings.height,
        })
    }

    /// The plan's input, as far as the fields go, with `changed` in place of what stands there; followed.
    pub fn ready(self, changed: Changed) -> Option<Result<Ready, ScienceError>> {
        let chosen = self.chosen();
        let asked = self.asked(changed, &chosen)?;
        let past = asked.past();
        let made = |found: asked::Ready| Ready {
            bottling: found.bottling,
            held: found.held,
            past,
            chosen,
        };
        Some(asked.ready().map(made))
    }
}
