//! Pitching day in words: the ways down, the true start, yeast and the satellite.

pub mod place;

use crate::advice::pitch::already_in;
use crate::advice::pitch::satellite::Trap;
use crate::advice::pitch::start_gravity::{Next as StartNext, Reason as StartReason, Start};
use crate::advice::pitch::ways_to_range::{Means, Reach, Takes, Way};
use crate::advice::pitch::yeast::{
    Method, Next as YeastNext, Plan as YeastPlan, Reason as YeastReason,
};
use crate::advice::{Advice, Verdict};
use crate::quantity::{Grams, Measured, write_number};
use crate::science::kit_gravity::Fermentable;
use crate::science::mixing::Cause;
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged};

texts! {
    /// What stands at Pitch.
    PitchWords, PITCH {} says {}
}

fn kilograms(mass: Grams) -> String {
    format!("{}\u{A0}kg", write_number(mass.value() / 1000.0, 1))
}

/// What a way is and what it takes.
pub fn way_title(w: Writer, way: &Way) -> String {
    match (&way.means, &way.takes) {
        (_, Some(Takes::Time(window))) => {
            let from = write::duration(window.earliest);
            window.latest.map_or_else(
                || format!("Wait: {from} at the soonest"),
                |to| format!("Wait: {from} to {}", write::duration(to)),
            )
        }
        (Means::ColdWater, Some(Takes::Water(litres, at))) => {
            format!("Cold water: {} at {}", w.volume(*litres), w.degrees(*at))
        }
        (_, Some(Takes::Water(litres, at))) => {
            format!("Warm water: {} at {}", w.volume(*litres), w.degrees(*at))
        }
        (_, Some(Takes::Ice(mass))) => format!("Ice: {}", kilograms(*mass)),
        (Means::Wait, None) => "Wait".to_owned(),
        (Means::ColdWater, None) => "Cold water".to_owned(),
        (Means::Ice, None) => "Ice".to_owned(),
        (Means::WarmWater, None) => "Warm water".to_owned(),
    }
}

/// What a way comes to and what it costs.
pub fn way_cost(w: Writer, way: &Way) -> String {
    let end = format!(
        "{} ±\u{A0}{}, {} at {}",
        w.temperature(way.temperature.value()),
        w.warmth(way.temperature.sigma()),
        w.volume(way.volume),
        w.gravity(way.gravity)
    );
    let cost = match way.weaker.points() {
        points if points < 0.5 => "no weaker".to_owned(),
        _ if way.within_plan => "water that was due anyway".to_owned(),
        points => format!("{}\u{A0}points weaker", write_number(points, 0)),
    };
    match way.reach {
        Reach::There => format!("Comes to {end}; {cost}."),
        Reach::VesselFull => format!("Only part of the way: the vessel is full at {end}; {cost}."),
        Reach::NoMoreAtHand => {
            format!("Only part of the way: {end}; {cost}. More would be needed.")
        }
        Reach::Nowhere => "Leads nowhere with what is at hand.".to_owned(),
    }
}

/// An ingredient.
pub const fn ingredient(kind: Fermentable) -> &'static str {
    match kind {
        Fermentable::MaltSyrup => "Malt syrup (80 %)",
        Fermentable::DryMalt => "Dry malt (97 %)",
        Fermentable::Sucrose => "Table sugar (100 %)",
        Fermentable::Dextrose => "Corn sugar (91 %)",
        Fermentable::Honey => "Honey (80 %)",
        Fermentable::Own => "Another",
    }
}

/// Which start to believe.
pub fn start_words(w: Writer, start: &Start) -> Judged {
    let sentence = match start.advice.verdict {
        Verdict::Go => "Sample and ingredients agree.",
        Verdict::Wait => "They differ; one more look will tell.",
        _ => "They differ, and nothing here explains it.",
    };
    let reasons = start.advice.reasons.iter().map(|reason| start_reason(w, *reason)).collect();
    let next = match start.advice.next {
        StartNext::GoBySample => "Go by the sample.",
        StartNext::GoByIngredients => "Go by the ingredients.",
        StartNext::StirAndReadAgain => {
            "Stir hard for some minutes and read a sample from the middle. Until then go by the ingredients."
        }
        StartNext::ReadWithTemperature => {
            "Read the sample's temperature, or let it cool, and read again."
        }
        StartNext::ReadVolumeAgain => {
            "Look at the volume mark again, and at which gallon it is in."
        }
        StartNext::CheckWeightsAndInstrument => {
            "Look at the weights again, and check the hydrometer in water."
        }
    };
    judged(start.advice.verdict, sentence, reasons, next.to_owned())
}

fn start_reason(w: Writer, reason: StartReason) -> String {
    let points = |change: crate::quantity::GravityChange| write_number(change.points(), 0);
    match reason {
        StartReason::Agree(gap) => {
            format!("The sample is {}\u{A0}points from the ingredients.", points(gap))
        }
        StartReason::Differ(gap) => {
            format!(
                "The sample is {}\u{A0}points from the ingredients; 4 can be passed over.",
                points(gap)
            )
        }
        StartReason::MayBeChance => "Both are rough enough for that to be chance.".to_owned(),
        StartReason::Unexplained => {
            "A wrong weight, another share of extract, or the hydrometer.".to_owned()
        }
        StartReason::Explains(Cause::WaterOnTop { layer, of_depth }) => format!(
            "{} of top-up water lying unmixed on top would explain it: {}\u{A0}% of the depth.",
            w.volume(layer),
            write_number(100.0 * of_depth.value(), 0)
        ),
        StartReason::Explains(Cause::StrongBelow { layer }) => match layer {
            Some(layer) => {
                format!("{} of strong wort lying below would explain it.", w.volume(layer))
            }
            None => "Strong wort lying below would explain it.".to_owned(),
        },
        StartReason::Explains(Cause::WarmSample { would_be }) => {
            format!("A sample at {} would explain it.", w.temperature(would_be))
        }
        StartReason::Explains(Cause::Volume { would_be, other_gallon }) => {
            let gallon = if other_gallon { " That is what the other gallon gives." } else { "" };
            format!("A volume of {} would explain it.{gallon}", w.volume(would_be))
        }
    }
}

/// Whether there is yeast enough.
pub fn yeast_words(w: Writer, plan: &YeastPlan) -> Judged {
    let sentence = match plan.advice.verdict {
        Verdict::Go => "Enough yeast.",
        _ => "Less yeast than this wort wants.",
    };
    let reasons = plan.advice.reasons.iter().map(|reason| match *reason {
        YeastReason::Has(grams, range) => format!(
            "{} in hand; the makers' dose is {} to {}.",
            w.mass(grams),
            w.mass(range.from),
            w.mass(range.to)
        ),
        YeastReason::CountedAgainst(grams) => format!("Counted against {}.", w.mass(grams)),
        YeastReason::PastDate(months) => format!("Past its date by {} months.", months.0),
        YeastReason::KeptWarm => "It was kept warm.".to_owned(),
        YeastReason::StrongWort(sg) => format!("{} is hard on dry yeast.", w.gravity(sg)),
        YeastReason::ColdPitch(t) => format!("At {} it starts slowly.", w.temperature(t)),
        YeastReason::NoHarm => "More than the upper dose does no harm.".to_owned(),
    });
    let next = match plan.advice.next {
        YeastNext::PutIn(Method::Sprinkled) => "Sprinkle all of it on the wort.".to_owned(),
        YeastNext::PutIn(Method::Rehydrated) => {
            "Wake it in water first, then put all of it in.".to_owned()
        }
        YeastNext::AddSachets(1) => "Get one more sachet.".to_owned(),
        YeastNext::AddSachets(n) => format!("Get {n} more sachets."),
    };
    judged(plan.advice.verdict, sentence, reasons.collect(), next)
}

/// How to wake dry yeast.
pub fn waking_words(w: Writer, plan: &YeastPlan) -> String {
    let waking = plan.waking;
    let steps = match waking.steps {
        0 => String::new(),
        n => format!(" Bring it nearer to the wort in {n} spoonfuls, some minutes apart."),
    };
    format!(
        "To wake it: {}\u{A0}mL of boiled and cooled water at {} to {}, never distilled; {} still, then stir.{steps} The packet's own way wins.",
        write_number(waking.water.value() * 1000.0, 0),
        w.degrees(waking.at.from),
        w.degrees(waking.at.to),
        write::duration(waking.rest)
    )
}

/// What makes a satellite lie.
pub const fn trap(trap: Trap) -> &'static str {
    match trap {
        Trap::Unmixed => "Wort from a batch that was not mixed.",
        Trap::TooLittleYeast => "Too little yeast: it ends too high, the dangerous way.",
        Trap::CoolPlace => "A cool place: it ends too high or late.",
        Trap::ReadEarly => "Read once and early: it ends too high. Read it twice.",
        Trap::WildGrowth => "Something else growing in it: it ends too low.",
        Trap::LaterAdditions => "Sugar or fruit added to the batch later.",
        Trap::NeedsSameYeast => {
            "Bread yeast says nothing of a yeast like this one: use the batch's own."
        }
    }
}

/// Beer whose yeast is in already.
pub fn already_in_words(
    w: Writer,
    advice: &Advice<already_in::Reason, already_in::Next>,
) -> Judged {
    use already_in::{Next, Reason};
    let sentence = match advice.verdict {
        Verdict::Go => "The beer is in its range.",
        Verdict::Stop => "Far too hot for the yeast.",
        _ => "The beer is out of its range.",
    };
    let reasons = advice.reasons.iter().map(|reason| match *reason {
        Reason::Within(r) => {
            format!("The yeast's range is {} to {}.", w.degrees(r.from), w.degrees(r.to))
        }
        Reason::TooWarm(r, by) => {
            format!("{} above {} to {}.", w.warmth(by.value()), w.degrees(r.from), w.degrees(r.to))
        }
        Reason::TooCold(r, by) => {
            format!("{} below {} to {}.", w.warmth(by.value()), w.degrees(r.from), w.degrees(r.to))
        }
        Reason::YeastMayBeLost(t) => format!("From about {} some yeast is lost.", w.degrees(t)),
        Reason::KillsYeast(t) => format!("At about {} yeast dies.", w.degrees(t)),
        Reason::Fruity => "Expect fruity or solvent-like notes, and no other harm.".to_owned(),
        Reason::EarlyDays(_) => "The first two or three days matter most.".to_owned(),
        Reason::LateDays(_) => "What the warm days have done is done.".to_owned(),
    });
    let next = match advice.next {
        Next::Leave => "Leave it.".to_owned(),
        Next::CoolNow(t) => {
            format!("Cool it to {} now: wet cloth, a tub of water, a cooler room.", w.degrees(t))
        }
        Next::CoolAndKeepSpare(t) => format!(
            "Cool it to {} now and keep a spare sachet, to pitch if nothing shows after a day or two.",
            w.degrees(t)
        ),
        Next::CoolAndPitchAgain(t) => {
            format!("Cool it to {} and pitch fresh yeast there.", w.degrees(t))
        }
        Next::HoldSteady => {
            "Keep it from warming further; a fast fall now would stop the yeast.".to_owned()
        }
        Next::WarmTo(t) => format!("Warm it gently to {}.", w.degrees(t)),
    };
    judged(advice.verdict, sentence, reasons.collect(), next)
}
