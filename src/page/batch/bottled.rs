//! The bottling as it was recorded, and the word of caution that stays with it.

use super::print::{Printing, bottling_rows};
use super::{Live, remove};
use crate::batch::Kind;
use crate::page::parts::figures::Figures;
use crate::page::parts::live::{Outcome, When};
use crate::page::session::use_session;
use crate::page::words;
use leptos::prelude::*;

/// The record.
#[component]
pub fn Bottled(live: Live) -> impl IntoView {
    let session = use_session();
    let record = move || live.with(|s| s.as_ref().and_then(|s| s.bottling.clone()));
    let rows = move || {
        let Some((_, record)) = record() else { return vec![] };
        bottling_rows(session.writer(), &record)
    };
    let above = Memo::new(move |_| {
        live.with(|s| {
            let summary = s.as_ref()?;
            let (_, record) = summary.bottling.as_ref()?;
            let ceiling = record.weakest.ceiling(summary.may_go_on());
            Some(ceiling.is_none_or(|ceiling| record.worst > ceiling))
        })
        .unwrap_or(false)
    });
    let failed = RwSignal::new(None::<String>);
    let delete = move |_| {
        if let Some((id, _)) = record() {
            failed.set(remove(session, Kind::Bottling, &id, "Bottling deleted"));
        }
    };
    view! {
        <h2>"In the bottle"</h2>
        <When is=move || above.get()>
            <div class="notice notice-grave" role="alert">
                "These bottles may hold more than their usual ceiling. Keep them cold, in a closed box, away from people; cover eyes and hands before touching them. "
                {words::GLASS_CAUTION}
            </div>
        </When>
        <Figures rows />
        <p class="small">{words::GLASS_CAUTION}</p>
        <Printing live />
        <Outcome said=failed />
        <button type="button" class="danger" on:click=delete>
            "Delete the bottling"
        </button>
    }
}
