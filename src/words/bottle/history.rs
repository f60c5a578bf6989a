//! What has happened to the beer since it went quiet, in words.

use crate::advice::bottle::Plan;
use crate::advice::bottle::asked::{Chilled, DoseFor, WarmFor};
use crate::advice::bottle::history::{Doubt, Ends, Held, Seal, Working};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What is asked and said of the beer since it went quiet.
    HistoryWords, HISTORY {
        since_quiet: "Chilled since it ended",
        coldest: "Coldest it got",
        while_cold: "While it was cold",
        when_chilled: "When it was chilled",
        that_warm_for: "It stayed that warm for",
        dose_it_for: "Dose it for",
        either_dose: "What each dose may come to",
    } says {
        chilled: fn(Chilled) -> &'static str = chilled,
        warm_for: fn(WarmFor) -> &'static str = warm_for,
        assumed: fn(Working, WarmFor) -> String = assumed,
        dose_for: fn(DoseFor) -> &'static str = dose_for,
        seal: fn(Seal) -> &'static str = seal,
        working: fn(Working) -> &'static str = working,
        dose: fn(Writer, DoseFor, &Plan) -> String = named_dose,
        may_hold: fn(Writer, &Held, &Ends) -> String = may_hold,
        dosed_by_rule: fn(Writer, &Ends) -> String = dosed_by_rule,
        dosed_for_more: fn(Writer, &Ends) -> String = dosed_for_more,
    }
}

const fn chilled(chilled: Chilled) -> &'static str {
    match chilled {
        Chilled::No => "No",
        Chilled::Yes => "Yes",
    }
}

const fn warm_for(warm_for: WarmFor) -> &'static str {
    match warm_for {
        WarmFor::Long => "Two days or more",
        WarmFor::Short => "Less",
    }
}

/// What is assumed of beer that was chilled, in the line that says what else is.
fn assumed(working: Working, warm_for: WarmFor) -> String {
    let ended = match working {
        Working::Quiet => "ended before the cold",
        Working::Still => "still fermenting when chilled",
        Working::Unsure => "perhaps still fermenting when chilled",
    };
    let warm = match warm_for {
        WarmFor::Long => "that warm for two days",
        WarmFor::Short => "that warm for less than two days",
    };
    format!("{ended} · {warm}")
}

const fn dose_for(dose_for: DoseFor) -> &'static str {
    match dose_for {
        DoseFor::Rule => "The warmest temperature",
        DoseFor::More => "Beer that holds more",
    }
}

const fn seal(seal: Seal) -> &'static str {
    match seal {
        Seal::Airlock => "Under an airlock",
        Seal::Sealed => "Closed tight",
        Seal::Unsure => "Not sure",
    }
}

const fn working(working: Working) -> &'static str {
    match working {
        Working::Quiet => "It had ended",
        Working::Still => "It was still fermenting",
        Working::Unsure => "Not sure",
    }
}

/// Why it may hold more.
const fn doubt(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::ColdSealed => "It was closed while it was cold.",
        Doubt::ColdWorking => "It was still fermenting when it was chilled.",
        Doubt::ShortWarmth(_) => "It was warm for too short a time to let its gas go.",
        Doubt::NotKnown => "How it was closed, or whether it still worked, is not known.",
    }
}

/// One of two doses.
fn dose(w: Writer, plan: &Plan) -> String {
    plan.weigh().map_or_else(|| "no dose".to_owned(), |sugar| w.weighed(sugar, plan.scale()))
}

/// The same over its bar, with what it is for.
fn named_dose(w: Writer, for_what: DoseFor, plan: &Plan) -> String {
    format!("{}: {}", dose_for(for_what), dose(w, plan))
}

/// That there are two ends, why, and what lies between them; nothing where there is one.
fn may_hold(w: Writer, held: &Held, ends: &Ends) -> String {
    let Some((more, why)) = held.may_hold else { return String::new() };
    let apart =
        ends.apart().map(|sugar| format!(" {} of sugar lie between the two.", w.mass(sugar)));
    format!(
        "It may hold {} already, and not {}. {} The bottles are judged by the higher.{}",
        write::volumes(more.value()),
        write::volumes(held.by_rule.value()),
        doubt(why),
        apart.unwrap_or_default()
    )
}

fn dosed_by_rule(w: Writer, ends: &Ends) -> String {
    format!(
        "Dosed by the warmest temperature ({}): {}, or {} if it holds more.",
        dose(w, &ends.by_rule),
        write::volumes(ends.target),
        write::volumes(ends.too_lively)
    )
}

fn dosed_for_more(w: Writer, ends: &Ends) -> String {
    format!(
        "Dosed for beer that holds more ({}): {}, or {} if it does not.",
        dose(w, &ends.holds_more),
        write::volumes(ends.target),
        write::volumes(ends.too_flat)
    )
}
