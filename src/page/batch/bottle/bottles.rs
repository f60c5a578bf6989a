//! The bottles: which on hand, or of what kind; and what goes into each.

use super::fields::{Changed, Input, Texts};
use crate::advice::bottle::dosing::Dosing;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::plan;
use crate::advice::bottle::stock::{Bottles, Size, fill, fill_all};
use crate::page::parts::choice::{Choice, Pick};
use crate::page::parts::figures::figures;
use crate::page::parts::live::{When, list, live};
use crate::page::priming::pick_weakest;
use crate::page::words;
use crate::page::write::{self, Writer};
use crate::quantity::{Litres, Measured, write_number};
use leptos::prelude::*;

const DOSING: [(&str, &str); 2] = [("vessel", "Into the vessel"), ("bottles", "Into each bottle")];

fn sizes() -> Vec<(String, String)> {
    Size::ALL.map(|size| (size.name().to_owned(), write::bottle_size(size.litres()))).to_vec()
}

/// Adds an identity to those chosen, or takes it away.
fn toggle(stock: RwSignal<String>, id: &str) {
    stock.update(|chosen| {
        let mut all: Vec<_> = chosen.split(' ').filter(|one| !one.is_empty()).collect();
        match all.iter().position(|one| *one == id) {
            Some(at) => drop(all.remove(at)),
            None => all.push(id),
        }
        *chosen = all.join(" ");
    });
}

/// Bottles on hand to choose from, or else the weakest kind and the size.
#[component]
pub fn BottleFields(input: Input) -> impl IntoView {
    let Texts { stock, weakest, size, dosing, .. } = input.texts;
    let ticks = move || {
        list(input.on_hand().into_iter().map(|(id, name, own)| {
            let (mine, id) = (id.as_str().to_owned(), id.as_str().to_owned());
            let is_chosen = move || stock.get().split(' ').any(|one| one == mine);
            let line = format!(
                "{name}: {} × {}, {}",
                own.count,
                write::bottle_size(own.size),
                words::bottle(own.class).to_lowercase()
            );
            view! {
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=is_chosen
                        on:change=move |_| toggle(stock, &id)
                    />
                    <span>{line}</span>
                </label>
            }
            .into_any()
        }))
    };
    let any_on_hand = move || !input.on_hand().is_empty();
    let none_chosen = move || input.chosen().is_empty();
    view! {
        <When is=any_on_hand>
            <fieldset class="choice">
                <legend>"Bottles on hand"</legend>
                {move || ticks()}
            </fieldset>
        </When>
        <When is=none_chosen>
            {pick_weakest("bottling", weakest)}
            <Pick id="bottling-size" label="Size of most of them" options=sizes chosen=size />
        </When>
        <Choice id="bottling-dosing" label="The sugar goes" options=DOSING.to_vec() chosen=dosing />
    }
}

/// What is filled: the chosen ones, or as many of the usual size as the beer fills.
pub fn filling(chosen: &[Bottles], input: Input, beer: Litres) -> (Vec<Bottles>, Litres, bool) {
    if chosen.is_empty() {
        let size = Size::named(&input.texts.size.get()).map(Size::litres);
        let class = Bottle::named(&input.texts.weakest.get());
        let (Some(size), Some(class)) = (size, class) else { return (vec![], beer, false) };
        let found = fill_all(beer, size, class);
        return (found.filled, found.left, found.short);
    }
    let found = fill(beer, chosen);
    (found.filled, found.left, found.short)
}

fn table(w: Writer, input: Input) -> Option<AnyView> {
    let ready = input.ready(Changed::default())?.ok()?;
    let plan = plan(ready.bottling).ok()?;
    plan.dose()?;
    let by_bottle = matches!(ready.bottling.weighing.dosing, Dosing::Bottles { .. });
    let (filled, left, short) = filling(&ready.chosen, input, ready.bottling.beer.value());
    let places = write::places(ready.bottling.weighing.scale);
    let row = |own: &Bottles| {
        let each = match plan.per_bottle(own.size) {
            Some(each) => format!(
                "{}\u{A0}g each, within {}",
                write_number(each.weigh.value(), places),
                write::volumes(each.off_by)
            ),
            None => words::bottle(own.class).to_owned(),
        };
        (format!("{} × {}", own.count, write::bottle_size(own.size)), each)
    };
    let rows = figures(filled.iter().map(row).collect());
    let left = if left.value() < 0.02 {
        String::new()
    } else if short {
        format!("{} more is there than these bottles hold.", w.volume(left))
    } else {
        format!("{} is left over.", w.wort(left))
    };
    let how = if by_bottle {
        "Dry sugar in a bottle makes beer foam: weigh it into the empty bottle, then fill. Within so much is what the scale and its rounding can do.".to_owned()
    } else {
        words::bottling::mixing()
    };
    let table = view! {
        <h3>"What to fill"</h3>
        {rows}
        <p>{left}</p>
        <p class="small">{how}</p>
    };
    Some(table.into_any())
}

/// What to fill, what goes into each, and how to mix it in; only beside a dose.
#[component]
pub fn ToFill(input: Input) -> impl IntoView {
    live(move || table(input.session.writer(), input))
}
