//! What has happened to the beer since it went quiet, and the two doses when that leaves two ends.

use super::fields::{Changed, Fields, Input};
use crate::advice::bottle::Plan;
use crate::advice::bottle::history::{Ends, Held, both_ends};
use crate::page::parts::choice::Choice;
use crate::page::parts::field::NumberField;
use crate::page::parts::live::{When, list, live};
use crate::page::parts::picture::Picture;
use crate::page::words::bottling;
use crate::page::write::{self, Writer};
use crate::quantity::{CarbonDioxideVolumes, Measured};
use leptos::prelude::*;

const CHILLED: [(&str, &str); 2] = [("no", "Not chilled"), ("yes", "Chilled")];
const WARM_FOR: [(&str, &str); 2] = [("long", "Two days or more"), ("short", "Less")];
const SEAL: [(&str, &str); 3] =
    [("airlock", "Under an airlock"), ("sealed", "Closed tight"), ("unsure", "Not sure")];
const WORKING: [(&str, &str); 3] =
    [("quiet", "It was quiet"), ("still", "It still worked"), ("unsure", "Not sure")];
const DOSE_FOR: [(&str, &str); 2] =
    [("rule", "The warmest temperature"), ("more", "Beer that holds more")];

/// The questions.
#[component]
pub fn HistoryFields(fields: Fields) -> impl IntoView {
    let texts = fields.texts;
    let coldest = fields.coldest.face;
    view! {
        <NumberField face=fields.warmest.face />
        <Choice
            id="bottling-chilled"
            label="Since it went quiet"
            options=CHILLED.to_vec()
            chosen=texts.chilled
        />
        <When is=move || texts.chilled.with(|chilled| chilled == "yes")>
            <NumberField face=coldest.clone() />
            <Choice
                id="bottling-seal"
                label="While it was cold"
                options=SEAL.to_vec()
                chosen=texts.seal
            />
            <Choice
                id="bottling-working"
                label="When it was chilled"
                options=WORKING.to_vec()
                chosen=texts.working
            />
            <Choice
                id="bottling-warm-for"
                label="It was that warm for"
                options=WARM_FOR.to_vec()
                chosen=texts.warm_for
            />
        </When>
    }
}

/// Both ends and what an error costs, where there are two.
#[component]
pub fn BothEnds(input: Input) -> impl IntoView {
    let ends = move || {
        let ready = input.ready(Changed::default())?.ok()?;
        let ends = both_ends(ready.bottling, &ready.held).ok()??;
        Some((ready.bottling.target, ready.held, ends))
    };
    let drawn = move || {
        let (target, held, ends) = ends()?;
        Some(drawn(input.session.writer(), target, &held, &ends))
    };
    view! {
        {live(drawn)}
        <When is=move || ends().is_some()>
            <Choice
                id="bottling-dose-for"
                label="Dose it for"
                options=DOSE_FOR.to_vec()
                chosen=input.texts.dose_for
            />
        </When>
    }
}

fn dose(w: Writer, plan: &Plan) -> String {
    plan.weigh().map_or_else(|| "no dose".to_owned(), |sugar| w.weighed(sugar, plan.scale()))
}

fn drawn(w: Writer, target: CarbonDioxideVolumes, held: &Held, ends: &Ends) -> AnyView {
    let Some((more, why)) = held.may_hold else { return ().into_any() };
    let shifted = |by: f64| CarbonDioxideVolumes::nearest(target.value() + by);
    let (high, low) = (shifted(ends.off_by.value()), shifted(-ends.off_by.value()));
    let rule = format!(
        "Dosed by the warmest temperature ({}): {}, or {} if it holds more.",
        dose(w, &ends.by_rule),
        write::volumes(target),
        write::volumes(high)
    );
    let cold = format!(
        "Dosed for beer that holds more ({}): {}, or {} if it does not.",
        dose(w, &ends.holds_more),
        write::volumes(target),
        write::volumes(low)
    );
    let apart =
        ends.apart().map(|sugar| format!(" {} of sugar lie between the two.", w.mass(sugar)));
    let may = format!(
        "It may hold {} already, and not {}. {} The bottles are judged by the end that presses harder.{}",
        write::volumes(more.value()),
        write::volumes(held.by_rule.value()),
        bottling::doubt(why),
        apart.unwrap_or_default()
    );
    // The lively end on the right, the flat one on the left, and room for a figure beside each.
    let scale = 150.0 / (high.value() - low.value()).max(0.1);
    let at = move |gas: CarbonDioxideVolumes| 85.0 + scale * (gas.value() - low.value());
    let bars = [
        (target, high, 24.0, dose(w, &ends.by_rule)),
        (low, target, 68.0, dose(w, &ends.holds_more)),
    ];
    let description = format!("{rule} {cold}");
    let bars = list(bars.into_iter().map(|(from, to, top, dose)| {
        let (left, right) = (at(from), at(to));
        let (below, middle) = (top + 14.0, 0.5 * (left + right));
        view! {
            <rect class="ends-bar" x=left y=top width=right - left height="20" rx="4" />
            <text class="picture-small" x=left - 6.0 y=below text-anchor="end">
                {write::volumes(from)}
            </text>
            <text class="picture-small" x=right + 6.0 y=below>
                {write::volumes(to)}
            </text>
            <text class="picture-small picture-strong" x=middle y=top - 6.0 text-anchor="middle">
                {dose}
            </text>
        }
        .into_any()
    }));
    let mark = at(target);
    view! {
        <div class="notice">
            <p>{may}</p>
            <Picture kind="ends" size=(320.0, 98.0) title="What either dose may come to" description>
                {bars}
                <path class="ends-target" d=format!("M{mark:.1} 20V94") />
            </Picture>
            <p class="small">{rule}</p>
            <p class="small">{cold}</p>
        </div>
    }
    .into_any()
}
