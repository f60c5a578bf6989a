//! Open: when to try one, how each bottle was, what to do when something is wrong, and what was learned.

mod worried;

use super::{Live, remove};
use crate::advice::open::dates;
use crate::advice::open::learned::lessons;
use crate::advice::practice::COOL_PLACE;
use crate::batch::{Change, Clarity, Entry, Fizz, Id, Kind, OpeningRecord, Summary};
use crate::page::batches::form::when;
use crate::page::bench::temperature;
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::card;
use crate::page::parts::choice::Choice;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::figures::{Figures, items};
use crate::page::parts::live::{Outcome, Row, When, live as part, rows};
use crate::page::parts::when::WhenField;
use crate::page::priming::PLACE;
use crate::page::session::{Session, use_session};
use crate::page::words::opening;
use crate::page::{clock, words, write};
use crate::quantity::Estimate;
use leptos::prelude::*;
use worried::Worried;

const FIZZ: [(&str, &str); 5] =
    [("1", "1 flat"), ("2", "2 little"), ("3", "3 right"), ("4", "4 much"), ("5", "5 gushes")];
const CLARITY: [(&str, Clarity); 3] =
    [("bright", Clarity::Bright), ("hazy", Clarity::Hazy), ("cloudy", Clarity::Cloudy)];

/// The dates of the plan; none before it is bottled.
fn plan_rows(session: Session, summary: &Summary) -> Vec<(&'static str, String)> {
    let Some((_, record)) = &summary.bottling else { return vec![] };
    let original = summary.original.map(Estimate::value);
    let dates = dates(record.standing(original, session.now.get()));
    let mut rows = vec![
        ("Chill one from", write::day(dates.chill)),
        ("Try that one", write::day(dates.try_one)),
        ("The rest by about", write::day(dates.ready_by)),
        ("Expected", write::volumes_in_full(record.expected())),
    ];
    rows.extend(record.place.map(|t| ("They stand at", session.writer().temperature(t))));
    rows
}

fn tasted(record: &OpeningRecord) -> String {
    let clear = record.clarity.map(|clarity| opening::clarity(clarity).to_owned());
    let taste = Some(record.taste.clone()).filter(|taste| !taste.is_empty());
    [clear, taste].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// The stage.
#[component]
pub fn OpenStage(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let judged = move || {
        let judged = live.with(|s| {
            let advice = s.as_ref()?.today(session.now.get()).opening?;
            Some(words::open_words(session.writer(), &advice))
        });
        let none = || view! { <p>"Nothing is noted as bottled yet."</p> }.into_any();
        Some(card(judged).unwrap_or_else(none))
    };
    let openings =
        move || live.with(|s| s.as_ref().map(|s| s.openings.clone()).unwrap_or_default());
    let gushed = move || openings().iter().any(|(_, o)| o.fizz.value() == 5);
    let failed = RwSignal::new(None::<String>);
    let row = move |(id, opening): (Id, OpeningRecord)| {
        // Drawn anew when anything in it has changed.
        let text = Entry::Opening(opening.clone()).to_text().unwrap_or_default();
        Row::new(format!("{} {text}", id.as_str()), move || {
            let name = format!("Delete the bottle of {}", write::moment(opening.at));
            view! {
                <li class="log-line">
                    <p class="log-when">{write::moment(opening.at)}</p>
                    <p class="log-gravity">
                        <strong>{format!("Fizz {} of 5", opening.fizz.value())}</strong>
                    </p>
                    <p class="log-details">{tasted(&opening)}</p>
                    <p class="log-note">{opening.note.clone()}</p>
                    <p class="log-actions">
                        <button
                            type="button"
                            class="quiet"
                            aria-label=name
                            on:click=move |_| {
                                failed.set(remove(session, Kind::Opening, &id, "Bottle deleted"));
                            }
                        >
                            "Delete"
                        </button>
                    </p>
                </li>
            }
            .into_any()
        })
    };
    let bottled = move || live.with(|s| s.as_ref().is_some_and(|s| s.bottling.is_some()));
    let plan = move || live.with(|s| s.as_ref().map(|s| plan_rows(session, s)).unwrap_or_default());
    let learned = move || {
        let outcome = live.with(|s| s.as_ref()?.outcome())?;
        let w = session.writer();
        let each = |lesson: &_| opening::lesson(w, *lesson);
        let told = items(lessons(&outcome).iter().map(each).collect());
        let view = view! {
            <h2>"What this batch has taught"</h2>
            <ul class="reasons">{told}</ul>
            <p class="small">"Offered, and nothing is changed by itself."</p>
        };
        Some(view.into_any())
    };
    let scope = format!("opening/{}/", id.as_str());
    let (for_worry, for_place) = (scope.clone(), scope.clone());
    view! {
        {part(judged)}
        <When is=bottled>
            <Figures rows=plan />
            <p class="small">
                "Try one before you count on the rest. Keep them dark, and the bottles closed in a case."
            </p>
            <MoveForm scope=for_place.clone() live />
            <Worried scope=for_worry.clone() live />
        </When>
        <When is=gushed>
            <div class="notice notice-grave" role="alert">
                "A bottle that gushes may mean that all are under too much pressure. Keep away from them; cover eyes and hands; chill them all before anything else, then vent each cap slowly. "
                {words::GLASS_CAUTION}
            </div>
        </When>
        <OpeningForm id scope />
        <ul class="log">
            {rows(move || openings().into_iter().map(row).collect())}
        </ul>
        <Outcome said=failed />
        {part(learned)}
    }
}

/// Where the bottles stand now, when they were moved.
#[component]
fn MoveForm(scope: String, live: Live) -> impl IntoView {
    let session = use_session();
    let words =
        ("place", "Where they stand now", "Out of a cool place, their days count from now.");
    let place = temperature(&scope, words, PLACE, None, 20.0);
    let outcome = RwSignal::new(None::<String>);
    let face = place.face.clone();
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let Some(t) = place.demand() else { return };
        let Some((id, mut record)) =
            live.with_untracked(|s| s.as_ref().and_then(|s| s.bottling.clone()))
        else {
            return;
        };
        // Days in the cool do not count; among warm places they go on.
        if record.place.is_some_and(|before| before < COOL_PLACE && t >= COOL_PLACE) {
            record.moved = Some(clock::now());
        }
        record.place = Some(t);
        let change = Change::put(id, Entry::Bottling(record));
        match session.change(change, Some("Place saved")) {
            Ok(()) => use_drafts().clear(&format!("{scope}place")),
            Err(why) => outcome.set(Some(why)),
        }
    };
    view! {
        <details class="more">
            <summary>"They were moved"</summary>
            <form on:submit=save novalidate>
                <NumberField face />
                <Outcome said=outcome />
                <button type="submit">"They stand there now"</button>
            </form>
        </details>
    }
}

#[component]
fn OpeningForm(id: Id, scope: String) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let fizz = drafts.text(&format!("{scope}fizz"), "");
    let clarity = drafts.text(&format!("{scope}clarity"), "");
    let taste = drafts.text(&format!("{scope}taste"), "");
    let note = drafts.text(&format!("{scope}note"), "");
    let at = drafts.text(&format!("{scope}at"), "");
    let outcome = RwSignal::new(None::<String>);
    let now = move || session.now.get().local_text();
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let done = (|| {
            let fizz = fizz.get_untracked().parse().ok().and_then(Fizz::new);
            let fizz = fizz.ok_or_else(|| "Say how much fizz it had, 1 to 5.".to_owned())?;
            let at = when(&at.get_untracked())?;
            let note = note.get_untracked().trim().to_owned();
            let record = OpeningRecord {
                batch: id.clone(),
                at,
                fizz,
                clarity: CLARITY
                    .into_iter()
                    .find(|(name, _)| *name == clarity.get_untracked())
                    .map(|(_, clarity)| clarity),
                taste: taste.get_untracked().trim().to_owned(),
                note,
            };
            session.put_new(Entry::Opening(record), Some("Bottle noted"))
        })();
        match done {
            Ok(_) => {
                outcome.set(None);
                drafts.clear(&scope);
            }
            Err(why) => outcome.set(Some(why)),
        }
    };
    view! {
        <form on:submit=save novalidate>
            <h2>"How a bottle was"</h2>
            <Choice id="opening-fizz" label="Fizz" options=FIZZ.to_vec() chosen=fizz />
            <Choice
                id="opening-clarity"
                label="How clear"
                options=CLARITY.map(|(name, clarity)| (name, opening::clarity(clarity))).to_vec()
                chosen=clarity
            />
            <TextField id="opening-taste" label="Taste" text=taste />
            <TextField
                id="opening-note"
                label="Anything else"
                text=note
                long=true
            />
            <WhenField id="opening-at" label="Opened" text=at now />
            <Outcome said=outcome />
            <button type="submit" class="main-action">
                "Save"
            </button>
        </form>
    }
}
