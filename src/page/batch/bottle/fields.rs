//! The fields of a bottling, and what the plan needs of them.

use super::super::Live;
use crate::advice::bottle::dosing::{Dosing, Weighing};
use crate::advice::bottle::history::{Held, Past, Seal, Working, held};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::{Bottles, smallest, weakest};
use crate::advice::bottle::{Bottling, Over};
use crate::advice::practice::{by_mark, remembered};
use crate::advice::watch::State;
use crate::batch::{Entry, Id, Kind, Summary, quiet};
use crate::page::ask::{Ask, Asked, Read, ask};
use crate::page::bench::temperature;
use crate::page::drafts::use_drafts;
use crate::page::priming::{
    NOT_CHILLED, PLACE, ask_beer, ask_hottest, ask_target, ask_warmest, bottle_named, finest_step,
};
use crate::page::session::{Session, use_session};
use crate::page::sugar_ask::{SugarAsk, SugarChosen};
use crate::quantity::{
    Bounds, CarbonDioxideVolumes, Celsius, Estimate, Grams, Hours, Litres, MassUnit, Measured,
};
use crate::science::ScienceError;
use crate::science::bottle_pressure::Closing;
use leptos::prelude::*;

/// Sizes that bottles come in, mL.
pub const SIZES: [(&str, f64); 10] = [
    ("250", 0.25),
    ("330", 0.33),
    ("341", 0.341),
    ("355", 0.355),
    ("375", 0.375),
    ("500", 0.5),
    ("568", 0.568),
    ("650", 0.65),
    ("750", 0.75),
    ("1000", 1.0),
];
/// Beer that was this much colder was chilled.
const CHILLED: f64 = 5.0;

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
    pub beer: Asked<Litres>,
    pub target: Asked<CarbonDioxideVolumes>,
    pub warmest: Asked<Celsius>,
    pub coldest: Asked<Celsius>,
    pub hottest: Asked<Celsius>,
    pub place: Asked<Celsius>,
    pub weighed: Asked<Grams>,
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
        let was_chilled =
            warmest.zip(coldest).is_some_and(|(warm, cold)| warm.above(cold).value() >= CHILLED);
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
    pub fn past(self) -> Option<Past> {
        if self.texts.chilled.get() != "yes" {
            return Some(Past::PLAIN);
        }
        let hours = if self.texts.warm_for.get() == "short" { 24.0 } else { 48.0 };
        Some(Past {
            warm_for: Some(Hours::nearest(hours)),
            coldest: Some(self.coldest.get().ok()?),
            seal: match &*self.texts.seal.get() {
                "airlock" => Seal::Airlock,
                "sealed" => Seal::Sealed,
                _ => Seal::Unsure,
            },
            when_chilled: match &*self.texts.working.get() {
                "quiet" => Working::Quiet,
                "still" => Working::Still,
                _ => Working::Unsure,
            },
        })
    }

    fn weighing(self, chosen: &[Bottles]) -> Weighing {
        let settings = self.session.settings();
        let size = self.texts.size.get();
        let named = || SIZES.into_iter().find(|(name, _)| *name == size);
        let smallest = smallest(chosen).or_else(|| named().map(|(_, size)| Litres::nearest(size)));
        let dosing = match smallest {
            Some(smallest) if self.texts.dosing.get() == "bottles" => Dosing::Bottles { smallest },
            _ => Dosing::Vessel,
        };
        // Grams a bottle are always written as the scale shows them.
        let scale = match dosing {
            Dosing::Vessel => finest_step(&settings),
            Dosing::Bottles { .. } => settings.scale(),
        };
        Weighing { dosing, scale }
    }

    /// The plan's input, as far as the fields go, with `changed` in place of what stands there; followed.
    pub fn ready(self, changed: Changed) -> Option<Result<Ready, ScienceError>> {
        let ended = |s: &Summary| (s.finish.state, s.finish.points_left, s.may_go_on());
        let (state, points_left, yeast_may_go_on) = self.live.with(|s| s.as_ref().map(ended))?;
        let beer = by_mark(changed.beer.or_else(|| self.beer.get().ok())?);
        let target = changed.target.or_else(|| self.target.get().ok())?;
        let warmest = changed.warmest.or_else(|| self.warmest.get().ok())?;
        let hottest = changed.hottest.or_else(|| self.hottest.get().ok())?;
        let chosen = self.chosen();
        let weakest: Bottle =
            weakest(&chosen).or_else(|| bottle_named(&self.texts.weakest.get()))?;
        let because = !self.texts.because.get().trim().is_empty();
        let over = match state {
            State::Finished => Over::Judged,
            _ if because => Over::Stated,
            _ => Over::No,
        };
        let sugar = self.sugar.get()?;
        let height = self.session.settings().height;
        let for_more = self.texts.dose_for.get() == "more";
        Some(held(remembered(warmest), self.past()?, height).map(|held| {
            let may_hold = held.may_hold.map(|(other, _)| other);
            let bottling = Bottling {
                over,
                points_left,
                yeast_may_go_on,
                target,
                already_in: may_hold.filter(|_| for_more).unwrap_or(held.by_rule),
                may_hold,
                beer,
                sugar,
                weighing: self.weighing(&chosen),
                weakest,
                hottest,
                closing: Closing { height, ..Closing::USUAL },
            };
            Ready { bottling, held, chosen }
        }))
    }
}
