//! The fields of a bottling, and what the plan is asked by them.

use super::history::{HistoryAsked, ask_history};
use crate::advice::bottle::asked::{Asked, Glass, Ready, SugarGoes};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::{Bottles, Filling, Size, fill, fill_all};
use crate::advice::odd::{self, Odd};
use crate::app::ask::{self, Ask, Chosen, answer, ask, moment, pick, words_field};
use crate::app::fields::temperature;
use crate::app::model::Model;
use crate::app::priming::{
    PLACE, ask_beer, ask_hottest, ask_target, ask_warmest, ask_weakest, lacking,
};
use crate::app::sugar_ask::{SugarAsked, ask_sugar};
use crate::batch::{Entry, Id, Kind, Summary, quiet};
use crate::quantity::{
    Bounds, CarbonDioxideVolumes, Celsius, Estimate, Grams, Litres, MassUnit, Measured, Moment,
};
use crate::science::ScienceError;

/// Values that are tried in place of those in the fields.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tried {
    pub target: Option<CarbonDioxideVolumes>,
    pub warmest: Option<Celsius>,
    pub beer: Option<Litres>,
    pub hottest: Option<Celsius>,
}

/// Every field of the form, as it stands.
pub struct Fields {
    /// What the names of its fields begin with.
    pub scope: String,
    pub beer: ask::Asked<Litres>,
    pub target: ask::Asked<CarbonDioxideVolumes>,
    pub warmest: ask::Asked<Celsius>,
    pub hottest: ask::Asked<Celsius>,
    pub history: HistoryAsked,
    pub sugar: SugarAsked,
    /// The batch was noted with so much.
    pub noted: Litres,
    /// The volume that was said to be right, as it is kept.
    so_much: String,
    /// Bottles on hand, and whether each is chosen.
    pub on_hand: Vec<(Id, String, Bottles, bool)>,
    /// None of them is.
    pub chosen_none: bool,
    pub weakest: Chosen<Option<Bottle>>,
    pub size: Chosen<String>,
    pub sugar_goes: Chosen<SugarGoes>,
    pub because: Chosen<String>,
    pub weighed: ask::Asked<Grams>,
    pub place: ask::Asked<Celsius>,
    pub at: ask::Asked<Moment>,
    pub note: Chosen<String>,
}

/// The name of the form.
pub const FORM: &str = "bottling";

/// What the names of a batch's fields begin with.
pub fn scope(batch: &Id) -> String {
    format!("bottling/{}/", batch.as_str())
}

/// The name of the draft that holds which bottles on hand are chosen.
pub fn stock_name(batch: &Id) -> String {
    format!("{}stock", scope(batch))
}

/// The name of the draft that holds a volume above the batch's that was said to be right.
pub fn so_much_name(batch: &Id) -> String {
    format!("{}so-much", scope(batch))
}

/// Identities of the bottles on hand that are chosen.
pub fn stock(m: &Model, batch: &Id) -> Vec<String> {
    let kept = m.drafts.text(&stock_name(batch)).unwrap_or_default();
    kept.split(' ').filter(|one| !one.is_empty()).map(str::to_owned).collect()
}

fn on_hand(m: &Model, batch: &Id) -> Vec<(Id, String, Bottles, bool)> {
    let chosen = stock(m, batch);
    let is_chosen = |id: &Id| chosen.iter().any(|one| one == id.as_str());
    let item = |(id, entry): (&Id, &Entry)| match entry {
        Entry::Bottles(item) => Some((id.clone(), item.name.clone(), item.bottles, is_chosen(id))),
        _ => None,
    };
    m.journal.gear(Kind::Bottles).filter_map(item).collect()
}

impl Fields {
    /// The fields, filled in from the log where it can be.
    pub fn of(m: &Model, s: &Summary) -> Self {
        let scope = &scope(&s.id);
        let (words, shared) = (&m.words.bottle, &m.words.bottle.priming);
        let name = |field: &str| format!("{scope}{field}");
        let sg = |gravity: Option<Estimate<_>>| gravity.map(Estimate::value);
        let quiet = quiet(&s.lines);
        let warmest = quiet.and_then(|quiet| quiet.warmest);
        let hint = if warmest.is_some() { shared.warmest_from_log } else { shared.warmest_hint };
        let sizes = Size::ALL.map(|size| (size.name().to_owned(), m.writer().small(size.litres())));
        let on_hand = on_hand(m, &s.id);
        Self {
            scope: scope.clone(),
            chosen_none: !on_hand.iter().any(|(.., chosen)| *chosen),
            on_hand,
            beer: ask_beer(m, scope),
            target: ask_target(m, scope, s.heading.target),
            warmest: ask_warmest(m, scope, hint, warmest),
            hottest: ask_hottest(m, scope),
            history: ask_history(m, scope, quiet),
            sugar: ask_sugar(m, scope, sg(s.original), sg(s.present)),
            noted: s.noted_volume(),
            so_much: m.drafts.text(&so_much_name(&s.id)).unwrap_or_default().to_owned(),
            weakest: ask_weakest(m, scope),
            size: pick(m, &name("size"), (words.size, ""), sizes.to_vec(), Size::Ml500.name()),
            sugar_goes: answer(
                m,
                &name("dosing"),
                (words.sugar_goes, ""),
                words.goes,
                SugarGoes::Vessel,
            ),
            because: words_field(m, &name("because"), words.because, "", true),
            weighed: ask(
                m,
                Ask {
                    name: name("weighed"),
                    label: words.weighed,
                    hint: words.weighed_hint,
                    unit: MassUnit::Grams,
                    bounds: Bounds::new(Grams::literal(0.0), Grams::literal(20_000.0)),
                    step: |_| 1.0,
                    first: None,
                    start: Grams::literal(100.0),
                },
            ),
            place: temperature(m, name("place"), (words.place, ""), PLACE, None, 20.0),
            at: moment(m, &name("at"), words.at, None),
            note: words_field(m, &name("note"), words.note, "", true),
        }
    }

    /// What is odd about that much beer, unless it was said to be right.
    pub fn too_much(&self, beer: Option<Litres>) -> Option<Odd> {
        let beer = beer.filter(|beer| beer.value().to_string() != self.so_much)?;
        odd::volume(beer, self.noted)
    }

    /// Bottles on hand that are chosen.
    pub fn chosen(&self) -> Vec<Bottles> {
        self.on_hand.iter().filter(|(.., chosen)| *chosen).map(|(_, _, own, _)| *own).collect()
    }

    /// The bottles as the plan counts them: those chosen, else the weakest kind and its size.
    fn glass(&self) -> Option<Glass> {
        Glass::of(&self.chosen()).or_else(|| {
            let smallest = Size::named(&self.size.value)?.litres();
            Some(Glass { weakest: self.weakest.value?, smallest })
        })
    }

    /// What a dose still lacks, as a sentence.
    pub fn lacking(&self, m: &Model) -> String {
        let words = &m.words.bottle.priming;
        let lacks = [
            (self.beer.ok().is_none(), words.the_volume),
            (self.glass().is_none(), words.the_bottles),
            (self.warmest.ok().is_none(), words.the_warmest),
            (self.history.cold().is_none(), words.the_coldest),
            (self.target.ok().is_none(), words.the_carbonation),
            (self.sugar.get().is_none(), words.the_sugar),
            (self.hottest.ok().is_none(), words.the_hottest),
        ];
        lacking(m, &lacks)
    }

    /// What was asked, as far as the fields go, with what is tried in place of what stands there.
    pub fn asked(&self, m: &Model, s: &Summary, tried: Tried) -> Option<Asked> {
        let settings = m.settings();
        let beer = tried.beer.or(self.beer.ok())?;
        if self.too_much(Some(beer)).is_some() {
            return None;
        }
        Some(Asked {
            ended: s.standing.ended(&s.record(), !self.because.value.is_empty()),
            beer,
            target: tried.target.or(self.target.ok())?,
            warmest: tried.warmest.or(self.warmest.ok())?,
            cold: self.history.cold()?,
            dose_for: self.history.dose_for.value,
            sugar: self.sugar.get()?,
            sugar_goes: self.sugar_goes.value,
            scale: settings.scale(),
            unit: settings.units.mass,
            glass: self.glass()?,
            hottest: tried.hottest.or(self.hottest.ok())?,
            height: settings.height,
        })
    }

    /// The same, worked out.
    pub fn ready(
        &self,
        m: &Model,
        s: &Summary,
        tried: Tried,
    ) -> Option<Result<Ready, ScienceError>> {
        self.asked(m, s, tried).map(|asked| asked.ready())
    }

    /// What is filled from so much beer: the chosen ones, or as many of the usual size as it fills.
    pub fn filling(&self, beer: Litres) -> Filling {
        let chosen = self.chosen();
        match self.glass() {
            Some(glass) if chosen.is_empty() => fill_all(beer, glass.smallest, glass.weakest),
            _ => fill(beer, &chosen),
        }
    }
}
