//! Open: when to try one, and how each bottle was.

use super::{Live, remove};
use crate::batch::{Entry, Fizz, Id, Kind, OpeningRecord};
use crate::page::batches::form::when;
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::card;
use crate::page::parts::choice::Choice;
use crate::page::parts::field::TextField;
use crate::page::parts::live::{Outcome, Row, When, live as part, rows};
use crate::page::parts::when::WhenField;
use crate::page::session::use_session;
use crate::page::{words, write};
use leptos::prelude::*;

const FIZZ: [(&str, &str); 5] =
    [("1", "1 flat"), ("2", "2 little"), ("3", "3 right"), ("4", "4 much"), ("5", "5 gushes")];

/// The stage.
#[component]
pub fn OpenStage(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let judged = move || {
        let judged = live.with(|s| {
            let advice = s.as_ref().and_then(|s| s.opening.as_ref())?;
            Some(words::open_words(session.writer(), advice))
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
    view! {
        {part(judged)}
        <When is=gushed>
            <div class="notice notice-grave" role="alert">
                "A bottle that gushes may mean that all are under too much pressure. Keep away from them; cover eyes and hands; chill them all before anything else, then vent each cap slowly. "
                {words::GLASS_CAUTION}
            </div>
        </When>
        <OpeningForm id=id />
        <ul class="log">
            {rows(move || openings().into_iter().map(row).collect())}
        </ul>
        <Outcome said=failed />
    }
}

#[component]
fn OpeningForm(id: Id) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("opening/{}/", id.as_str());
    let fizz = drafts.text(&format!("{scope}fizz"), "");
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
                clarity: None,
                taste: String::new(),
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
            <TextField
                id="opening-note"
                label="Clarity, taste, anything"
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
