//! Yeast enough, how it goes in, and the satellite beside it.

use super::day::Day;
use super::known::Known;
use crate::advice::pitch::satellite::{JAR, card};
use crate::advice::pitch::yeast::{Months, Plan, Supply, USUAL_SACHET, plan};
use crate::page::parts::answer::VerdictCard;
use crate::page::parts::choice::Choice;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{list, live, say};
use crate::page::session::use_session;
use crate::page::words::pitching;
use crate::page::write::{self, Writer};
use crate::quantity::{Grams, Measured, Moment, write_number};
use leptos::prelude::*;

const COUNTS: [(&str, &str); 5] = [("1", "1"), ("2", "2"), ("3", "3"), ("4", "4"), ("6", "6")];
const PAST: [(&str, &str); 3] = [("no", "In date"), ("3", "Past its date"), ("13", "A year past")];
const WARM: [(&str, &str); 2] = [("no", "Kept cool"), ("yes", "Stood warm")];
const METHODS: [(&str, &str); 2] = [("sprinkled", "Sprinkle"), ("rehydrated", "Wake in water")];
const SATELLITE: [(&str, &str); 2] = [("yes", "Set"), ("no", "Not this time")];

/// The sachets in hand, judged.
pub fn supply(known: Known, count: u32, size: Grams, past: &str, kept_warm: bool) -> Option<Plan> {
    let past = past.parse().ok().map(Months);
    plan(Supply {
        count,
        size,
        past,
        kept_warm,
        volume: known.volume()?,
        gravity: known.start()?.value(),
        family: known.family(),
        wort: known.wort().map(|wort| wort.temperature.value()),
    })
    .ok()
}

/// The card of the satellite.
fn satellite_view(w: Writer, known: Known, now: Moment) -> Option<AnyView> {
    let card = card(JAR, known.family(), known.start()?.value(), now).ok()?;
    let bread = card
        .bread_yeast
        .map_or(String::new(), |grams| format!(" Or {} of dry bread yeast.", w.mass(grams)));
    let lines = [
        format!("Take {}\u{A0}mL of the mixed wort.", write_number(card.wort.value() * 1000.0, 0)),
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
            "Cover it loosely: it may give {}\u{A0}L of gas, and shut in that bursts a jar.",
            write_number(card.gas.value(), 0)
        ),
        format!(
            "Read it from {} on, and again {} later; by {} it has ended.",
            write::day(card.read_from),
            write::duration(card.again_after),
            write::day(card.ended_by)
        ),
    ];
    let lines = list(lines.into_iter().map(|line| view! { <li>{line}</li> }.into_any()));
    let trap = |trap| view! { <li>{pitching::trap(trap).to_owned()}</li> }.into_any();
    let traps = list(card.traps.into_iter().map(trap));
    Some(
        view! {
            <ol>{lines}</ol>
            <p>"What makes it lie:"</p>
            <ul>{traps}</ul>
        }
        .into_any(),
    )
}

/// The section.
#[component]
pub fn Yeast(day: Day) -> impl IntoView {
    let session = use_session();
    let known = day.known();
    let (sachets, sachet) = (day.sachets, day.sachet.value);
    let (past, kept_warm) = (day.past, day.kept_warm);
    let found = move || {
        let size = sachet.get().unwrap_or(USUAL_SACHET);
        supply(known, sachets.get().parse().ok()?, size, &past.get(), kept_warm.get() == "yes")
    };
    let wants = say(move || {
        let size = sachet.get().unwrap_or(USUAL_SACHET);
        let Some(plan) = supply(known, 1, size, "no", false) else {
            return "Give the starting gravity above, and this says how much yeast it wants."
                .to_owned();
        };
        let w = session.writer();
        let range = plan.wants.by_maker;
        format!(
            "This wort wants {} to {} by the makers' dose.",
            w.mass(range.from),
            w.mass(range.to)
        )
    });
    let card = live(move || {
        let plan = found()?;
        let w = session.writer();
        let judged = pitching::yeast_words(w, &plan);
        let waking = pitching::waking_words(w, &plan);
        Some(
            view! {
                <VerdictCard judged />
                <p class="small">{waking}</p>
            }
            .into_any(),
        )
    });
    let satellite = live(move || satellite_view(session.writer(), known, session.now.get()));
    view! {
        <details class="more">
            <summary>"Sachets"</summary>
            <p class="plain-answer">{wants}</p>
            <Choice id="pitch-sachets" label="Sachets" options=COUNTS.to_vec() chosen=day.sachets />
            <NumberField face=day.sachet.face.clone() />
            <TextField id="pitch-product" label="Name on the packet" text=day.product />
            <Choice id="pitch-past" label="Their date" options=PAST.to_vec() chosen=day.past />
            <Choice id="pitch-warm" label="They" options=WARM.to_vec() chosen=day.kept_warm />
            {card}
            <Choice id="pitch-method" label="It goes in" options=METHODS.to_vec() chosen=day.method />
        </details>
        <details class="more">
            <summary>"Satellite"</summary>
            <p>
                "A jar of the same wort with far too much yeast, kept warm: in a few days it shows where this batch will end."
            </p>
            {satellite}
            <Choice
                id="pitch-satellite"
                label="The satellite is"
                options=SATELLITE.to_vec()
                chosen=day.satellite
            />
        </details>
    }
}
