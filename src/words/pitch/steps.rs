//! The walk through pitching day in words: what each step is called, and its result in one line.

use crate::advice::pitch::place::{Next as PlaceNext, Reason as PlaceReason};
use crate::advice::pitch::start_gravity::OriginalFrom;
use crate::advice::pitch::steps::Step;
use crate::advice::pitch::yeast::Amount;
use crate::advice::pitch::{Next as PitchNext, Reason as PitchReason};
use crate::advice::{Advice, Verdict};
use crate::choices::YesNo;
use crate::quantity::{Celsius, Grams, Hours, SpecificGravity};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What the walk says of its steps.
    StepWords, STEPS {
        steps: "Steps of pitching day",
        next: "Next",
        skip: "Skip",
        skipped: "skipped",
        nothing_yet: "There is nothing here yet. Fill it in, or skip it.",
        timer_runs: "the timer runs",
        no_start: "Without a starting gravity only time, or a satellite, can tell when it has finished.",
        read_it: "Read the gravity",
        without: "Pitch without it",
    } says {
        name: fn(Step) -> &'static str = name,
        line: fn(Step, &str) -> String = line,
        wanted: fn(Step) -> &'static str = wanted,
        look_at: fn(&str) -> String = look_at,
        cooled: fn(Writer, Celsius, &Advice<PitchReason, PitchNext>) -> String = cooled,
        start: fn(Writer, SpecificGravity, Option<OriginalFrom>) -> String = start,
        yeast: fn(Writer, Option<Grams>, Option<u32>, Option<Amount>) -> String = yeast,
        satellite: fn(YesNo) -> &'static str = satellite,
        splashed: fn(Hours) -> String = splashed,
        place: fn(Writer, Option<Celsius>, &str, Option<&Advice<PlaceReason, Vec<PlaceNext>>>) -> String = place,
    }
}

const fn name(step: Step) -> &'static str {
    match step {
        Step::Cool => "Cool",
        Step::Gravity => "Gravity",
        Step::Yeast => "Yeast",
        Step::Satellite => "Satellite",
        Step::Air => "Air",
        Step::Place => "Place",
        Step::In => "The yeast goes in",
    }
}

/// A closed step with its result.
fn line(step: Step, result: &str) -> String {
    format!("{}: {result}", name(step))
}

/// Which field cannot be read.
fn look_at(label: &str) -> String {
    format!("Look again at “{label}”.")
}

/// What comes before the yeast.
const fn wanted(step: Step) -> &'static str {
    match step {
        Step::Cool => "Next: cool the wort.",
        Step::Gravity => "Next: read the gravity.",
        Step::Yeast => "Next: is there yeast enough?",
        Step::Satellite => "Next: set a satellite.",
        Step::Air => "Next: splash it, for air.",
        Step::Place => "Next: where will it stand?",
        Step::In => "Next: pitch.",
    }
}

fn cooled(w: Writer, t: Celsius, advice: &Advice<PitchReason, PitchNext>) -> String {
    let cool = advice.reasons.iter().any(|reason| matches!(reason, PitchReason::ALittleCool(..)));
    let what = match (advice.verdict, advice.next) {
        (Verdict::Go, _) if cool => "a little cool, and fine",
        (Verdict::Go, _) => "in the yeast's range",
        (Verdict::CantTell, _) => "not sure yet",
        (_, PitchNext::WarmTo(_)) => "still too cold",
        _ => "still too warm",
    };
    format!("{}, {what}", w.temperature(t))
}

fn start(w: Writer, gravity: SpecificGravity, from: Option<OriginalFrom>) -> String {
    let from = match from {
        Some(OriginalFrom::Sample) => ", by the sample",
        Some(OriginalFrom::Ingredients) => ", by what went in",
        Some(OriginalFrom::Stated) | None => "",
    };
    format!("OG {}{from}", w.gravity(gravity))
}

/// How much of it there is, and whether that is enough.
fn yeast(w: Writer, grams: Option<Grams>, sachets: Option<u32>, amount: Option<Amount>) -> String {
    let count = sachets.map(|count| match count {
        1 => "1 sachet".to_owned(),
        count => format!("{count} sachets"),
    });
    let enough = amount.map(|amount| match amount {
        Amount::Short => "too little".to_owned(),
        Amount::Nearly => "a little under the dose".to_owned(),
        Amount::Enough | Amount::Plenty => "enough".to_owned(),
    });
    let told = [count, grams.map(|grams| w.mass(grams)), enough];
    told.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

const fn satellite(set: YesNo) -> &'static str {
    match set {
        YesNo::Yes => "set",
        YesNo::No => "not this time",
    }
}

fn splashed(time: Hours) -> String {
    format!("splashed for {}", write::duration(time))
}

fn place(
    w: Writer,
    room: Option<Celsius>,
    stands: &str,
    advice: Option<&Advice<PlaceReason, Vec<PlaceNext>>>,
) -> String {
    let judged = advice.and_then(|advice| match advice.verdict {
        Verdict::Go => Some("a good place".to_owned()),
        Verdict::Wait => Some("with some care".to_owned()),
        Verdict::Stop => Some("not as it is".to_owned()),
        Verdict::CantTell => None,
    });
    let stands = Some(stands.to_owned()).filter(|stands| !stands.is_empty());
    let told = [stands, room.map(|room| w.temperature(room)), judged];
    told.into_iter().flatten().collect::<Vec<_>>().join(", ")
}
