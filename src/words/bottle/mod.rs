//! Bottling in words: what is asked, what the beer may hold, what the bottles get, and the record.

mod history;
mod plan;
mod priming;
mod record;

pub use history::HistoryWords;
pub use plan::{PlanWords, Weighs};
pub use priming::PrimingWords;

use crate::advice::bottle::Plan;
use crate::advice::bottle::asked::SugarGoes;
use crate::advice::bottle::dosing::SYRUP_WATER;
use crate::advice::bottle::stock::{Bottles, Filling};
use crate::batch::BottlingRecord;
use crate::quantity::{Celsius, Measured, write_number};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What stands at Bottle.
    BottleWords, BOTTLE {
        know_better: "It has finished, and I know why",
        because: "Why it has finished",
        on_hand: "Bottles on hand",
        size: "Bottle size",
        sugar_goes: "The sugar goes",
        what_to_fill: "What to fill",
        into_empty: "Dry sugar in a bottle makes beer foam: weigh it into the empty bottle, then fill. Within so much is what the scale and its rounding can do.",
        what_if: "What if",
        slide_target: "Volumes of CO₂",
        slide_warmest: "Warmest",
        slide_beer: "Beer",
        slide_hottest: "Hottest",
        use_these: "Use these",
        put_back: "Put them back",
        granted: "Assumed",
        more: "Weighed, filled, place, time, note",
        weighed: "Sugar you weighed",
        weighed_hint: "Leave empty if it is the dose above.",
        place: "Where they will stand",
        keep_target: "Keep this carbonation with the batch",
        target_kept: "Carbonation kept: the batch is judged by it",
        recount: "Filled another number?",
        recounted: "Number of bottles saved",
        save_count: "Save the number",
        at: "Bottled",
        note: "Note",
        save: "It is bottled",
        saved: "Bottling saved",
        choose_weakest: "Choose the weakest bottle.",
        weigh_it: "There is no dose for this. If it is bottled already, say how much sugar you weighed.",
        in_the_bottle: "In the bottle",
        may_hold_more: "These bottles may hold more than their usual ceiling. Keep them cold, in a closed box, away from people; cover eyes and hands before touching them.",
        one_gushed: "The steps to make the others safe stand at Open.",
        delete: "Delete the bottling",
        deleted: "Bottling deleted",
    } says {
        priming: PrimingWords = priming::PRIMING,
        plan: PlanWords = plan::PLAN,
        history: HistoryWords = history::HISTORY,
        up_to: fn(Writer, Celsius) -> String = up_to,
        pieces: fn(&[String]) -> String = pieces,
        really_filled: fn(Writer, Bottles) -> String = really_filled,
        goes: fn(SugarGoes) -> &'static str = goes,
        rows: fn(Writer, &BottlingRecord) -> Vec<(String, String)> = record::rows,
        own_bottles: fn(Writer, &str, Bottles) -> String = own_bottles,
        to_fill: fn(Writer, &Plan, Bottles) -> (String, String) = to_fill,
        left: fn(Writer, &Filling) -> String = left,
        mixing: fn(Writer) -> String = mixing,
        tried: fn(Writer, &Plan) -> String = tried,
    }
}

const fn goes(goes: SugarGoes) -> &'static str {
    match goes {
        SugarGoes::Vessel => "Into the vessel",
        SugarGoes::Bottles => "Into each bottle",
    }
}

fn up_to(w: Writer, t: Celsius) -> String {
    format!("up to {}", w.degrees(t))
}

/// What is taken for granted, in one line.
fn pieces(pieces: &[String]) -> String {
    pieces.join(" · ")
}

/// How many of these were filled, as a question.
fn really_filled(w: Writer, own: Bottles) -> String {
    format!("Bottles of {} filled", w.small(own.size))
}

/// Bottles on hand, by name.
fn own_bottles(w: Writer, name: &str, own: Bottles) -> String {
    let kind = (w.words.names.bottle)(own.class).to_ascii_lowercase();
    format!("{name}: {}, {kind}", record::bottles(w, own))
}

/// Which to fill, how many, and what each of them gets.
fn to_fill(w: Writer, plan: &Plan, own: Bottles) -> (String, String) {
    let each = plan.per_bottle(own.size).map(|each| {
        format!(
            ", {}\u{A0}g each, within {}",
            write_number(each.weigh.value(), write::places(plan.scale())),
            write::volumes(each.off_by)
        )
    });
    let figure = record::bottles(w, own) + &each.unwrap_or_default();
    ((w.words.names.bottle)(own.class).to_owned(), figure)
}

/// The beer that no bottle takes; nothing for a drop.
fn left(w: Writer, filling: &Filling) -> String {
    if filling.left.value() < 0.02 {
        String::new()
    } else if filling.short {
        format!("{} more is there than these bottles hold.", w.volume(filling.left))
    } else {
        format!("{} is left over.", w.wort(filling.left))
    }
}

/// How the syrup is made and mixed in (common practice, no source).
fn mixing(w: Writer) -> String {
    format!(
        "Boil the sugar for five minutes in {} of water and let it cool: boiling syrup scalds. Put it into the bottling vessel first, let the beer run in below the surface, and then stir gently with a clean spoon: the swirl alone can leave layers, and bottles with too much.",
        w.cups(SYRUP_WATER.from, SYRUP_WATER.to)
    )
}

/// What other values would come to, in a line.
fn tried(w: Writer, plan: &Plan) -> String {
    let words = &w.words.bottle.plan;
    let word = (w.words.names.verdict)(plan.advice.verdict);
    let at_worst = format!("at worst {}", write::volumes(plan.guard.worst));
    match (plan.dose(), plan.weigh()) {
        (Some(dose), Some(weigh)) => {
            let doubt = (words.doubt)(w, plan, dose);
            format!("{word}: {} {doubt}, {at_worst}.", w.weighed(weigh, plan.scale()))
        }
        _ => format!("{word}. {} ({at_worst})", (words.sentence)(plan)),
    }
}
