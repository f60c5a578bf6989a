//! Something is wrong: the hazard first, then the pressures, then what may be behind it.

use super::super::Live;
use crate::advice::open::worried::{Facts, Symptom, help, pressures};
use crate::advice::practice::GREEN;
use crate::page::drafts::use_drafts;
use crate::page::parts::choice::Choice;
use crate::page::parts::figures::{figures, items};
use crate::page::parts::live::live as part;
use crate::page::session::{Session, use_session};
use crate::page::words::{self, opening};
use crate::page::write;
use leptos::prelude::*;

/// Questions and answers, folded away until they are wanted.
#[component]
pub fn Worried(scope: String, live: Live) -> impl IntoView {
    let session = use_session();
    let chosen = use_drafts().text(&format!("{scope}symptom"), "");
    let facts =
        move || live.with(|s| s.as_ref()?.facts(session.settings().height, session.now.get()));
    let said = move || {
        let symptom = Symptom::ALL.into_iter().find(|s| opening::symptom(*s).0 == chosen.get())?;
        Some(answer(session, symptom, facts()?))
    };
    view! {
        <details class="more">
            <summary>"Something is wrong"</summary>
            <Choice
                id="opening-symptom"
                label="What do you see?"
                options=Symptom::ALL.map(opening::symptom).to_vec()
                chosen
            />
            <div role="status" aria-live="polite">
                {part(said)}
            </div>
        </details>
    }
}

fn answer(session: Session, symptom: Symptom, facts: Facts) -> AnyView {
    let found = help(symptom, &facts);
    let steps = items(found.steps.into_iter().map(|one| opening::step(one).to_owned()).collect());
    let causes =
        items(found.causes.into_iter().map(|one| opening::cause(one).to_owned()).collect());
    let w = session.writer();
    let both =
        |best, worst| format!("{}, at worst {}", write::pressure(best), write::pressure(worst));
    let rows = pressures(&facts).map_or_else(
        |_| vec![],
        |found| {
            let at = w.temperature(found.at);
            let place = if facts.place.is_some() { at } else { format!("{at}, a guess") };
            let row = |name: &str, figure| (name.to_owned(), figure);
            vec![
                row("They stand at", place),
                row("Pressure there", both(found.here, found.here_at_worst)),
                row("Chilled to 4\u{A0}°C", both(found.chilled, found.chilled_at_worst)),
            ]
        },
    );
    let above = facts.ceiling.is_none_or(|ceiling| facts.worst > ceiling);
    let beyond = above.then_some("At worst they hold more than their usual ceiling.");
    let hazard = symptom.is_hazard();
    // Over-pressured bottles may be green as well: nobody is told to wait for those.
    let young = !hazard && facts.age < GREEN;
    let young = young.then_some("They are less than two weeks old: most often that is all.");
    let class = if hazard { "notice notice-grave" } else { "notice" };
    view! {
        <div class=class>
            <h2>{if hazard { "First make them safe" } else { "What to do" }}</h2>
            <p>{beyond.or(young).unwrap_or_default()}</p>
            <ol>{steps}</ol>
            <p class="small">{if hazard { words::GLASS_CAUTION } else { "" }}</p>
        </div>
        <h2>"Pressure by the record, once the sugar is eaten"</h2>
        {figures(rows)}
        <p class="small">
            "The record knows nothing of wild yeast: gushing bottles may hold more than this."
        </p>
        <h2>"What may be behind it, the likeliest first"</h2>
        <ol>{causes}</ol>
    }
    .into_any()
}
