//! Yeast and the satellite in words.

use crate::advice::Verdict;
use crate::advice::pitch::satellite::{Card, Trap};
use crate::advice::pitch::yeast::{
    Amount, Dated, Kept, Method, Next as YeastNext, Plan as YeastPlan, Reason as YeastReason,
};
use crate::choices::YesNo;
use crate::quantity::{Litres, Measured};
use crate::science::yeast::Range;
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged};

texts! {
    /// What is asked of the yeast, and what is made of it.
    YeastWords, YEAST {
        sachets: "Sachets",
        wants_unknown: "Once the gravity is read, this says how much yeast the wort wants.",
        sachet: "One sachet holds",
        sachet_hint: "11\u{A0}g if left empty.",
        product: "Name on the packet",
        their_date: "Best-before date",
        they: "The sachets were kept",
        goes_in: "How it goes in",
        more: "Age, name and weight of the yeast",
        dry_yeast: "Dry yeast",
        dry_yeast_hint: "Leave empty if it is not weighed.",
        satellite_is: "A satellite is a small jar of the same wort, fermented fast and warm with far too much yeast. In a few days it shows where this batch will end.",
        what_makes_it_lie: "What can mislead",
        the_satellite_is: "A satellite",
    } says {
        wants: fn(Writer, Range) -> String = wants,
        dated: fn(Dated) -> &'static str = dated,
        kept: fn(Kept) -> &'static str = kept,
        set: fn(YesNo) -> &'static str = satellite,
        method: fn(Method) -> &'static str = method,
        verdict: fn(Writer, &YeastPlan) -> Judged = yeast_words,
        waking: fn(Writer, &YeastPlan) -> String = waking_words,
        card: fn(Writer, &Card) -> [String; 5] = card,
        trap: fn(Trap) -> &'static str = trap,
    }
}

fn wants(w: Writer, dose: Range) -> String {
    format!("This wort wants {} to {} by the makers' dose.", w.mass(dose.from), w.mass(dose.to))
}

const fn dated(date: Dated) -> &'static str {
    match date {
        Dated::InDate => "To come, or not known",
        Dated::Past => "Past",
        Dated::LongPast => "A year past",
    }
}

const fn kept(kept: Kept) -> &'static str {
    match kept {
        Kept::Cool => "Cool",
        Kept::Warm => "Warm for weeks",
    }
}

const fn satellite(set: YesNo) -> &'static str {
    match set {
        YesNo::Yes => "Set",
        YesNo::No => "Not this time",
    }
}

const fn method(method: Method) -> &'static str {
    match method {
        Method::Sprinkled => "Sprinkled",
        Method::Rehydrated => "Rehydrated in water",
    }
}

/// How to set the satellite and when to read it, in order.
fn card(w: Writer, card: &Card) -> [String; 5] {
    let bread = card
        .bread_yeast
        .map_or(String::new(), |grams| format!(" Or {} of dry bread yeast.", w.mass(grams)));
    [
        format!("Take {} of the mixed wort.", w.small(card.wort)),
        format!(
            "Far too much yeast: {} to {} of the batch's own.{bread}",
            w.mass(card.yeast.from),
            w.mass(card.yeast.to)
        ),
        format!(
            "Stand it at {} to {} and shake it often.",
            w.degrees(card.place.from),
            w.degrees(card.place.to)
        ),
        format!(
            "Cover it loosely: it may give {} of gas, and shut in that bursts a jar.",
            w.gas(Litres::nearest(card.gas.value()))
        ),
        format!(
            "Read it from {} on, and again {} later; by {} it has ended.",
            w.day_ahead(card.read_from),
            write::duration(card.again_after),
            w.day_ahead(card.ended_by)
        ),
    ]
}

/// Whether there is yeast enough.
fn yeast_words(w: Writer, plan: &YeastPlan) -> Judged {
    let sentence = match plan.advice.verdict {
        Verdict::Go if plan.amount == Amount::Nearly => {
            "A little less yeast than usual; it will do."
        }
        Verdict::Go => "Enough yeast.",
        _ => "Far less yeast than this wort wants.",
    };
    let reasons = plan.advice.reasons.iter().map(|reason| match *reason {
        YeastReason::Has(grams, range) => format!(
            "{} in hand; the makers' dose is {} to {}.",
            w.mass(grams),
            w.mass(range.from),
            w.mass(range.to)
        ),
        YeastReason::CountedAgainst(grams) => {
            format!("For its age, or its warmth, it is counted against {}.", w.mass(grams))
        }
        YeastReason::BeginsLater(short) => {
            format!("{} short: it may begin some hours later, and no harm.", w.mass(short))
        }
        YeastReason::PastDate(months) => format!("Past its date by {} months.", months.0),
        YeastReason::KeptWarm => "It was kept warm.".to_owned(),
        YeastReason::StrongWort(sg) => format!("{} is hard on dry yeast.", w.gravity(sg)),
        YeastReason::ColdPitch(t) => format!("At {} it starts slowly.", w.temperature(t)),
        YeastReason::NoHarm => "More than the upper dose does no harm.".to_owned(),
    });
    let next = match plan.advice.next {
        YeastNext::PutIn(Method::Sprinkled) => "Sprinkle all of it on the wort.".to_owned(),
        YeastNext::PutIn(Method::Rehydrated) => {
            "Rehydrate it first, then put all of it in.".to_owned()
        }
        YeastNext::AddSachets(1) => "Get one more sachet.".to_owned(),
        YeastNext::AddSachets(n) => format!("Get {n} more sachets."),
    };
    judged(plan.advice.verdict, sentence, reasons.collect(), next)
}

/// How to wake dry yeast.
fn waking_words(w: Writer, plan: &YeastPlan) -> String {
    let waking = plan.waking;
    let steps = match waking.steps {
        0 => String::new(),
        n => format!(" Bring it nearer to the wort in {n} spoonfuls, some minutes apart."),
    };
    format!(
        "To rehydrate it: {} of boiled and cooled water at {} to {}, never distilled; {} still, then stir.{steps} The packet's own way wins.",
        w.small(waking.water),
        w.degrees(waking.at.from),
        w.degrees(waking.at.to),
        write::duration(waking.rest)
    )
}

/// What makes a satellite lie.
const fn trap(trap: Trap) -> &'static str {
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
