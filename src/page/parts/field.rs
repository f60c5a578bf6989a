//! A field for one number: visible label, big steppers, unit beside it, the error in words below.

use crate::page::parts::live::{Told, follow, list};
use leptos::prelude::*;

/// All that the view needs of a field, whatever it measures.
#[derive(Clone)]
pub struct Face {
    /// Names the field in the document.
    pub id: String,
    /// What is asked.
    pub label: String,
    /// A line of help under the label; may be empty.
    pub hint: String,
    /// What is typed.
    pub text: RwSignal<String>,
    /// The field has been left, so its error may be shown.
    pub left: RwSignal<bool>,
    /// A save was tried, so that emptiness is an error too.
    pub demanded: RwSignal<bool>,
    /// What is wrong, and whether that is only that nothing is there.
    pub error: Told<Option<(String, bool)>>,
    /// What was understood, when it does not look like what was typed.
    pub understood: Told<Option<String>>,
    /// Units to choose from; one alone is only shown.
    pub units: Vec<&'static str>,
    /// The unit in force.
    pub unit: Told<&'static str>,
    /// Another unit is chosen.
    pub on_unit: Callback<String>,
    /// One step down (−1) or up (1).
    pub on_step: Callback<i32>,
}

impl Face {
    /// Shows the field's error now, emptiness included.
    pub fn demand(&self) {
        self.demanded.set(true);
        self.left.set(true);
    }

    fn shown_error(&self) -> Option<String> {
        let (error, empty) = self.error.get()?;
        (self.left.get() && (!empty || self.demanded.get())).then_some(error)
    }
}

/// The field.
#[component]
pub fn NumberField(face: Face) -> impl IntoView {
    let id = face.id.clone();
    let error_id = format!("{id}-error");
    let hint_id = format!("{id}-hint");
    let (text, left, on_step) = (face.text, face.left, face.on_step);
    let error = {
        let face = face.clone();
        Memo::new(move |_| face.shown_error())
    };
    let understood = face.understood;
    let (down, up) = (format!("{}: less", face.label), format!("{}: more", face.label));
    let described = format!("{hint_id} {error_id}");
    let field = NodeRef::<leptos::html::Div>::new();
    let asked_again = face.demanded;
    // What a save was refused for is not left folded away.
    follow(move || {
        if asked_again.get()
            && error.get().is_some()
            && let Some(field) = field.get()
        {
            unfold_round(&field);
        }
    });
    let unit_view = if face.units.len() > 1 {
        let (unit, on_unit) = (face.unit, face.on_unit);
        let label = format!("{}: unit", face.label);
        let options = face.units.iter().map(|&symbol| {
            let unit = unit.clone();
            view! { <option value=symbol selected=move || unit.get() == symbol>{symbol}</option> }
                .into_any()
        });
        view! {
            <select
                class="field-unit"
                aria-label=label
                on:change=move |event| on_unit.run(event_target_value(&event))
            >
                {list(options)}
            </select>
        }
        .into_any()
    } else {
        let unit = face.unit;
        view! { <span class="field-unit field-unit-only">{move || unit.get().to_owned()}</span> }
            .into_any()
    };
    view! {
        <div class="field" node_ref=field class:field-wrong=move || error.get().is_some()>
            <label for=id.clone()>{face.label.clone()}</label>
            <p class="field-hint" id=hint_id>{face.hint.clone()}</p>
            <div class="field-row">
                <button type="button" class="step" aria-label=down on:click=move |_| on_step.run(-1)>
                    "−"
                </button>
                <input
                    id=id
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    enterkeyhint="done"
                    aria-describedby=described
                    aria-invalid=move || if error.get().is_some() { "true" } else { "false" }.to_owned()
                    prop:value=move || text.get()
                    on:input=move |event| text.set(event_target_value(&event))
                    on:blur=move |_| left.set(true)
                />
                <button type="button" class="step" aria-label=up on:click=move |_| on_step.run(1)>
                    "+"
                </button>
                {unit_view}
            </div>
            <p class="field-read">{move || understood.get().unwrap_or_default()}</p>
            <p class="field-error" id=error_id>{move || error.get().unwrap_or_default()}</p>
        </div>
    }
}

/// Opens the fold that an element lies in, if any.
fn unfold_round(element: &web_sys::Element) {
    if let Ok(Some(fold)) = element.closest("details") {
        // Only a malformed name could be refused.
        let _ = fold.set_attribute("open", "");
    }
}

/// A field for words.
#[component]
pub fn TextField(
    #[prop(into)] id: String,
    #[prop(into)] label: String,
    text: RwSignal<String>,
    /// What is wrong, shown when it is some.
    #[prop(optional)]
    error: RwSignal<Option<String>>,
    #[prop(optional)] long: bool,
) -> impl IntoView {
    let error_id = format!("{id}-error");
    let invalid = move || if error.get().is_some() { "true" } else { "false" }.to_owned();
    let control = if long {
        view! {
            <textarea
                id=id.clone()
                rows="2"
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))
            ></textarea>
        }
        .into_any()
    } else {
        view! {
            <input
                id=id.clone()
                type="text"
                autocomplete="off"
                aria-describedby=error_id.clone()
                aria-invalid=invalid
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))
            />
        }
        .into_any()
    };
    view! {
        <div class="field" class:field-wrong=move || error.get().is_some()>
            <label for=id>{label}</label>
            {control}
            <p class="field-error" id=error_id>{move || error.get().unwrap_or_default()}</p>
        </div>
    }
}
