//! What has happened to the beer since it went quiet, and the two doses when that leaves two ends.

use crate::advice::bottle::asked::{Chilled, Cold, DoseFor, Ready, WarmFor};
use crate::advice::bottle::history::{Ends, Seal, Working, both_ends};
use crate::app::ask::{Asked, Chosen, Wrong, answer};
use crate::app::drawing::{Drawing, EndsBar, EndsData, Sketch};
use crate::app::fields::temperature;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, What, group, text};
use crate::app::priming::PLACE;
use crate::batch::Quiet;
use crate::quantity::{CarbonDioxideVolumes, Celsius, Measured};
use crate::words::write::volumes;

/// The questions as they stand.
pub struct HistoryAsked {
    chilled: Chosen<Chilled>,
    coldest: Asked<Celsius>,
    seal: Chosen<Seal>,
    working: Chosen<Working>,
    warm_for: Chosen<WarmFor>,
    /// Which end the dose is for.
    pub dose_for: Chosen<DoseFor>,
}

/// Asks in the form `scope`, from what the log says.
pub fn ask_history(m: &Model, scope: &str, quiet: Option<Quiet>) -> HistoryAsked {
    let words = &m.words.bottle.history;
    let was_chilled = quiet.is_some_and(|quiet| quiet.was_chilled());
    let coldest = quiet.and_then(|quiet| quiet.coldest).filter(|_| was_chilled);
    let first = if was_chilled { Chilled::Yes } else { Chilled::No };
    let name = |field: &str| format!("{scope}{field}");
    HistoryAsked {
        chilled: answer(m, &name("chilled"), (words.since_quiet, ""), words.chilled, first),
        coldest: temperature(m, name("coldest"), (words.coldest, ""), PLACE, coldest, 4.0),
        seal: answer(m, &name("seal"), (words.while_cold, ""), words.seal, Seal::Unsure),
        working: answer(
            m,
            &name("working"),
            (words.when_chilled, ""),
            words.working,
            Working::Quiet,
        ),
        warm_for: answer(
            m,
            &name("warm-for"),
            (words.that_warm_for, ""),
            words.warm_for,
            WarmFor::Long,
        ),
        dose_for: answer(
            m,
            &name("dose-for"),
            (words.dose_it_for, ""),
            words.dose_for,
            DoseFor::Rule,
        ),
    }
}

impl HistoryAsked {
    fn was_chilled(&self) -> bool {
        self.chilled.value == Chilled::Yes
    }

    /// How it was while it was cold, if it was; `None` while its coldest is to be said.
    pub fn cold(&self) -> Option<Option<Cold>> {
        if !self.was_chilled() {
            return Some(None);
        }
        Some(Some(Cold {
            coldest: self.coldest.ok()?,
            seal: self.seal.value,
            working: self.working.value,
            warm_for: self.warm_for.value,
        }))
    }

    /// Marks what is missing.
    pub fn demand(&self, wrong: &mut Wrong) {
        if self.was_chilled() {
            wrong.demand(&self.coldest);
        }
    }

    /// The questions.
    pub fn parts(self) -> Vec<Part> {
        let more = self.was_chilled().then_some([self.coldest.part, self.seal.part]);
        let mut parts = vec![self.chilled.part];
        parts.extend(more.into_iter().flatten());
        parts
    }

    /// What else is assumed of beer that was chilled: in words, and the questions for it.
    pub fn assumed(&self, m: &Model) -> Option<(String, [Part; 2])> {
        self.was_chilled().then(|| {
            let said = (m.words.bottle.history.assumed)(self.working.value, self.warm_for.value);
            (said, [self.working.part.clone(), self.warm_for.part.clone()])
        })
    }
}

/// Both ends and what an error costs, where there are two; `choice` is which of them the dose is for.
pub fn ends_parts(m: &Model, ready: &Ready, choice: Part) -> Vec<Part> {
    let Ok(Some(ends)) = both_ends(ready.bottling, &ready.held) else { return vec![] };
    let (w, words) = (m.writer(), &m.words.bottle.history);
    let rule = (words.dosed_by_rule)(w, &ends);
    let more = (words.dosed_for_more)(w, &ends);
    let drawing = Drawing {
        title: words.either_dose.to_owned(),
        description: format!("{rule} {more}"),
        sketch: Sketch::Ends(ends_data(m, &ends)),
    };
    let said = vec![
        text("ends/may", "", (words.may_hold)(w, &ready.held, &ends)),
        Part::new("ends/drawing", What::Drawing(drawing)),
    ];
    vec![group("ends", Tag::Div, "notice", said), choice]
}

fn ends_data(m: &Model, ends: &Ends) -> EndsData {
    let dose = |end, plan| (m.words.bottle.history.dose)(m.writer(), end, plan);
    let bar = |from: CarbonDioxideVolumes, to: CarbonDioxideVolumes, dose| EndsBar {
        from: from.value(),
        to: to.value(),
        from_text: volumes(from),
        to_text: volumes(to),
        dose,
    };
    EndsData {
        target: ends.target.value(),
        bars: vec![
            bar(ends.target, ends.too_lively, dose(DoseFor::Rule, &ends.by_rule)),
            bar(ends.too_flat, ends.target, dose(DoseFor::More, &ends.holds_more)),
        ],
    }
}
