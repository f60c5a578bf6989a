//! A date and time: now, unless another is chosen.

use crate::page::parts::live::{Told, When};
use leptos::prelude::*;

/// Empty text means "now, when it is saved".
#[component]
pub fn WhenField(
    #[prop(into)] id: String,
    #[prop(into)] label: String,
    /// Empty, or a local date and time as the phone's own field gives it.
    text: RwSignal<String>,
    /// What the field starts from when another time is wanted.
    #[prop(into)]
    now: Told<String>,
) -> impl IntoView {
    let open = Memo::new(move |_| !text.get().is_empty());
    let field_id = id.clone();
    let set_now = Callback::new(move |()| text.set(untrack(|| now.get())));
    view! {
        <div class="field when">
            <div class="when-row">
                <label for=id.clone()>{label}</label>
                <When is=move || !open.get()>
                    <span class="when-now">"Now"</span>
                    <button
                        type="button"
                        class="quiet"
                        on:click=move |_| set_now.run(())
                    >
                        "Another time"
                    </button>
                </When>
                <When is=move || open.get()>
                    <button type="button" class="quiet" on:click=move |_| text.set(String::new())>
                        "Now"
                    </button>
                </When>
            </div>
            <When is=move || open.get()>
                <input
                    id=field_id.clone()
                    type="datetime-local"
                    prop:value=move || text.get()
                    on:change=move |event| {
                        let typed = event_target_value(&event);
                        if !typed.is_empty() {
                            text.set(typed);
                        }
                    }
                />
            </When>
        </div>
    }
}
