//! The plan of a bottling in words: what is judged and why, and the ways to a dose.

use crate::advice::Verdict;
use crate::advice::bottle::{Next as BottleNext, Plan, Reason as BottleReason};
use crate::advice::standing::ways_to_dose::Way;
use crate::quantity::{
    Grams, Kilopascals, Litres, Measured, Moment, PressureUnit, Unit, VolumeUnit, write as written,
};
use crate::science::priming::{Dose, Sugar};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged, lower};

/// What is weighed, for how much beer.
#[derive(Clone, Copy, Debug)]
pub struct Weighs<'a> {
    /// The kind.
    pub sugar: Sugar,
    /// What it is called.
    pub name: &'a str,
    /// The beer.
    pub beer: Litres,
}

texts! {
    /// What a plan comes to.
    PlanWords, PLAN {
        sugar_to_weigh: "Sugar to weigh",
        none_yet: "–",
        ways_out: "Ways to a dose",
        weakest: "The weakest bottle",
        at_worst: "at worst",
        ceiling: "it bears",
        in_it: "in it",
        of_sugar: "sugar",
        may_come: "may come",
        volumes_of: "volumes of CO₂: of gas in one volume of beer",
        at_20: "at 20 °C",
        at_hottest: "in the hottest place",
    } says {
        judged: fn(Writer, &Plan, Weighs, Judged) -> Judged = plan_words,
        sentence: fn(&Plan) -> &'static str = sentence,
        no_sum: fn(String) -> Judged = no_sum,
        not_yet: fn(Judged) -> Judged = not_yet,
        lacking: fn(Judged, String) -> Judged = lacking,
        give: fn(&[&str]) -> String = give,
        way: fn(Writer, Way) -> String = way,
        doubt: fn(Writer, &Plan, &Dose) -> String = doubt,
        guard: fn(Writer, &Plan) -> Vec<(String, String)> = guard_rows,
        described: fn(Writer, &Plan) -> String = described,
        pressure: fn(Writer, Kilopascals) -> String = pressure,
    }
}

/// The ± of a dose, to the places of the dose.
fn doubt(w: Writer, plan: &Plan, dose: &Dose) -> String {
    format!("±\u{A0}{}", w.weighed(Grams::nearest(dose.sugar.sigma()), plan.scale()))
}

/// What one litre or gallon gets.
fn rate(w: Writer, plan: &Plan) -> String {
    let (one, name) = match w.units.volume {
        VolumeUnit::Litres => (1.0, "litre"),
        unit => (unit.to_own(1.0), "gallon"),
    };
    let sugar = plan.sugar_for(Litres::nearest(one));
    sugar.map(|sugar| format!(", {} a {name}", w.mass(sugar))).unwrap_or_default()
}

/// What is needed for a dose, in a sentence.
fn give(what: &[&str]) -> String {
    match what {
        [] => String::new(),
        [one] => format!("For the dose give {one}."),
        [first @ .., last] => format!("For the dose give {} and {last}.", first.join(", ")),
    }
}

/// How it stands, with what a dose still lacks.
fn lacking(stands: Judged, lacks: String) -> Judged {
    Judged {
        label: PLAN.sugar_to_weigh.to_owned(),
        figure: (PLAN.none_yet.to_owned(), String::new()),
        next: lacks,
        ..stands
    }
}

/// How it stands, where no dose is to be had yet whatever is given.
fn not_yet(stands: Judged) -> Judged {
    Judged {
        label: PLAN.sugar_to_weigh.to_owned(),
        figure: (NO_DOSE.to_owned(), String::new()),
        ..stands
    }
}

/// A sum that has no answer.
fn no_sum(why: String) -> Judged {
    not_yet(judged(Verdict::CantTell, why, vec![], ""))
}

/// The figure in place of a dose.
const NO_DOSE: &str = "No dose";

/// The guard in figures.
fn guard_rows(w: Writer, plan: &Plan) -> Vec<(String, String)> {
    let guard = plan.guard;
    let ceiling = guard.ceiling.map_or_else(|| "never to be filled".to_owned(), write::volumes);
    let row = |name: &str, figure| (name.to_owned(), figure);
    vec![
        row("In it already, at most", write::volumes(guard.already_in)),
        row("From the sugar", write::volumes(guard.from_sugar)),
        row("May still come", write::volumes(guard.still_to_come)),
        row("At worst", write::volumes(guard.worst)),
        row("Ceiling of the weakest bottle", ceiling),
        row("Pressure at 20\u{A0}°C, at worst", w.pressure(guard.at_20)),
        row("At the hottest place, at worst", w.pressure(guard.at_hottest)),
    ]
}

/// The same in sentences, for those who cannot see the drawing.
fn described(w: Writer, plan: &Plan) -> String {
    guard_rows(w, plan).into_iter().map(|(name, figure)| format!("{name}: {figure}. ")).collect()
}

/// A pressure where a drawing has little room.
fn pressure(w: Writer, p: Kilopascals) -> String {
    written(p, if w.is_metric() { PressureUnit::Bar } else { PressureUnit::Psi })
}

/// A way to a dose, with its weight or its day.
fn way(w: Writer, way: Way) -> String {
    let name = |bottle| lower((w.words.names.bottle)(bottle));
    match way {
        Way::DoseVessel(sugar) => format!("Stir it into the vessel instead: {}", w.mass(sugar)),
        Way::FinerScale(sugar) => {
            format!("On a scale that shows 0.1\u{A0}g: {} in all", w.mass(sugar))
        }
        Way::Cooler(t, sugar) => {
            format!("Keep them no warmer than {}: {}", w.temperature(t), w.mass(sugar))
        }
        Way::LowerTarget(target, sugar) => {
            format!("Less fizz, {}: {}", write::volumes(target), w.mass(sugar))
        }
        Way::Stronger(bottle, sugar) => format!("In {}: {}", name(bottle), w.mass(sugar)),
        Way::StrongerAndLower(bottle, target, sugar) => {
            format!("In {}, at {}: {}", name(bottle), write::volumes(target), w.mass(sugar))
        }
        Way::LetGasGo(at, sugar) => format!(
            "Let its gas go, in a warm room under an airlock until {}: {}",
            w.day_ahead(at),
            w.mass(sugar)
        ),
        Way::Satellite(at) => format!(
            "Start a satellite today; read it and the beer twice, a day apart, by {}: a dose if both read as the beer does now",
            w.day_ahead(at)
        ),
        Way::ReadAgain(at) => {
            format!("Read it again on {} or later: a dose if it reads the same", w.day_ahead(at))
        }
        Way::WarmAndRead(at) => format!(
            "Warm it to its yeast\u{2019}s range, read it tomorrow and again on {} or later, with the beer\u{2019}s temperature: a dose if both read as it does now",
            w.day_ahead(at)
        ),
        Way::NoteStart(at) => {
            let note = "Note the gravity it started at (OG), by the recipe or the kit: nothing else shows that it fermented";
            at.map_or_else(
                || note.to_owned(),
                |at| {
                    let day = w.day_ahead(at);
                    format!(
                        "{note}. Then a reading like the last on {day} or later does for most beer"
                    )
                },
            )
        }
        Way::ReadOn(next, foretold) => read_on(w, next, foretold),
    }
}

fn read_on(w: Writer, next: Option<Moment>, foretold: Option<Moment>) -> String {
    let next = next.map_or_else(
        || "Read its gravity, and again after two nights".to_owned(),
        |at| format!("Go on reading, next on {}", w.day_ahead(at)),
    );
    let foretold = foretold.map(|at| {
        format!("; sugar perhaps about {}, which is foretold and no promise", w.day_ahead(at))
    });
    next + &foretold.unwrap_or_default()
}

/// What a plan comes to, in a few words.
fn sentence(plan: &Plan) -> &'static str {
    let advice = &plan.advice;
    match (advice.verdict, advice.next) {
        (Verdict::Go, _) => "Within the usual ceiling.",
        (Verdict::Wait, _) | (_, BottleNext::ReadAgain) => "The beer is not known to be finished.",
        (_, BottleNext::CoolerPlace(_)) => "That place is too hot for these bottles.",
        (_, BottleNext::StrongerBottles) => "These bottles would not do.",
        _ => "Too much for the weakest bottle.",
    }
}

/// The bottling plan and how the beer stands, as the one answer.
fn plan_words(w: Writer, plan: &Plan, weighs: Weighs, stands: Judged) -> Judged {
    let advice = &plan.advice;
    let mut reasons: Vec<_> =
        advice.reasons.iter().map(|reason| bottle_reason(w, *reason)).collect();
    // Beer that is not finished is told as at Now and Watch; no reason makes that glass fit.
    let never = advice.reasons.contains(&BottleReason::NotForPressure);
    let leads = plan.dose().is_none() && stands.verdict != Verdict::Go && !never;
    let said = if leads {
        reasons.extend(stands.reasons.iter().cloned());
        Judged { reasons, ..stands }
    } else {
        // That it has finished is no reason for a stop.
        if advice.verdict == Verdict::Go {
            reasons.push(stands.sentence);
            reasons.extend(stands.reasons);
        }
        judged(advice.verdict, sentence(plan), reasons, "")
    };
    let (Some(dose), Some(weigh)) = (plan.dose(), plan.weigh()) else {
        // The ways to a dose stand below under a heading of their own.
        let next = match advice.next {
            BottleNext::ReadAgain => "Less sugar is no answer to beer that may still ferment.",
            _ => "",
        };
        return Judged { next: next.to_owned(), ..not_yet(said) };
    };
    let (weight, doubt) = (w.weighed(weigh, plan.scale()), doubt(w, plan, dose));
    match weighs.sugar.volume(weigh) {
        None => Judged {
            label: PLAN.sugar_to_weigh.to_owned(),
            figure: (weight, doubt),
            next: format!(
                "{} for {}{}. No spoon or cup will do.",
                weighs.name,
                w.volume(weighs.beer),
                rate(w, plan)
            ),
            ..said
        },
        Some(volume) => Judged {
            label: "Wort to stir in".to_owned(),
            figure: (w.wort(volume), format!("or {weight} {doubt}")),
            next: "Boil it, let it cool, and stir it in like a syrup.".to_owned(),
            ..said
        },
    }
}

fn bottle_reason(w: Writer, reason: BottleReason) -> String {
    match reason {
        BottleReason::NotFinished => "The readings do not show a finished fermentation.".to_owned(),
        BottleReason::ColdStopped => {
            "It was still fermenting when it was chilled: the cold stopped it, and it goes on in warm bottles."
                .to_owned()
        }
        BottleReason::OnStatedReason => {
            "You go on for a reason of your own; it is kept with the batch.".to_owned()
        }
        BottleReason::LeftUnknown => {
            format!("Nothing shows how much may still ferment, so {} are counted.", w.points(10.0))
        }
        BottleReason::NotForPressure => "This glass is not made for pressure at all.".to_owned(),
        BottleReason::AboveCeiling { worst, ceiling } => format!(
            "At worst {}, above the ceiling of {} for the weakest bottle.",
            write::volumes(worst),
            write::volumes(ceiling)
        ),
        BottleReason::WithinCeiling { worst, ceiling } => format!(
            "At worst {}; the usual ceiling of the weakest bottle is {}.",
            write::volumes(worst),
            write::volumes(ceiling)
        ),
        BottleReason::CautionForGlass => {
            "For glass of unknown make this is already much: stand them cool, in a closed box."
                .to_owned()
        }
        BottleReason::YeastMayGoOn => {
            "This yeast may go on for weeks, so the ceiling is half a volume lower.".to_owned()
        }
        BottleReason::HoldsEnough => "The beer already holds as much as you wish.".to_owned(),
        BottleReason::TooHotAPlace { hottest, pressure, limit } => format!(
            "At {} up to {}; the ceiling of the weakest bottle is {} in a warm room.",
            w.temperature(hottest),
            w.pressure(pressure),
            w.pressure(limit)
        ),
        BottleReason::MostlyStillToCome(gas) => {
            format!("Most of it, up to {}, is what may still ferment.", write::volumes(gas))
        }
        BottleReason::MayHoldMore(gas) => format!(
            "Chilled beer may hold up to {} already; the bottles are judged by that.",
            write::volumes(gas)
        ),
        BottleReason::ScaleTooRough(size) => format!(
            "This scale is too rough for a bottle of {}. Dose the whole vessel, or weigh to 0.1\u{A0}g.",
            w.small(size)
        ),
    }
}
