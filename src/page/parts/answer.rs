//! The answer: the largest thing on the screen, in sight while one types.

use crate::advice::Verdict;
use crate::page::parts::figures::items;
use crate::page::parts::live::Told;
use leptos::prelude::*;

/// What the answer says now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Said {
    /// The large figure or word.
    pub main: String,
    /// Behind it, smaller: the ± or a second unit.
    pub beside: String,
    /// One sentence below.
    pub below: String,
}

impl Said {
    /// Only a sentence: what is missing, or why there is no answer.
    pub fn only(below: impl Into<String>) -> Self {
        Self { main: "–".to_owned(), beside: String::new(), below: below.into() }
    }
}

/// The answer of a sum.
#[component]
pub fn Answer(#[prop(into)] label: String, #[prop(into)] said: Told<Said>) -> impl IntoView {
    let (beside, below) = (said.clone(), said.clone());
    view! {
        <section class="answer" role="status" aria-live="polite">
            <p class="answer-label">{label}</p>
            <p class="answer-main">
                <strong>{move || said.get().main}</strong>
                " "
                <span class="answer-beside">{move || beside.get().beside}</span>
            </p>
            <p class="answer-below">{move || below.get().below}</p>
        </section>
    }
}

/// A judgement in the page's words.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// Which of the four.
    pub verdict: Verdict,
    /// The word.
    pub word: &'static str,
    /// One sentence.
    pub sentence: String,
    /// Why.
    pub reasons: Vec<String>,
    /// What to do next.
    pub next: String,
}

/// The verdict's own shape: it differs in form and lightness, not in hue alone.
#[component]
pub fn VerdictShape(verdict: Verdict) -> impl IntoView {
    let shape = match verdict {
        Verdict::Go => view! { <circle cx="24" cy="24" r="19" class="shape-fill" /> }.into_any(),
        Verdict::Wait => view! {
            <circle cx="24" cy="24" r="18" class="shape-quiet" />
            <path d="M24 6a18 18 0 0 1 0 36" class="shape-ring" />
        }
        .into_any(),
        Verdict::Stop => {
            view! { <path d="M16 4h16l12 12v16l-12 12h-16l-12-12v-16z" class="shape-fill" /> }
                .into_any()
        }
        Verdict::CantTell => {
            view! { <circle cx="24" cy="24" r="18" class="shape-ring shape-dashed" /> }.into_any()
        }
    };
    view! {
        <svg class="shape" viewBox="0 0 48 48" aria-hidden="true">
            {shape}
        </svg>
    }
}

/// The class that gives a verdict its tone.
pub const fn tone(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "verdict tone-go",
        Verdict::Wait => "verdict tone-wait",
        Verdict::Stop => "verdict tone-stop",
        Verdict::CantTell => "verdict tone-cant",
    }
}

/// A judgement: word, shape and tone, with its reasons and next step.
#[component]
pub fn VerdictCard(judged: Judged) -> impl IntoView {
    let Judged { verdict, word, sentence, reasons, next } = judged;
    let reasons = items(reasons);
    view! {
        <section class=tone(verdict) role="status" aria-live="polite">
            <div class="verdict-head">
                <VerdictShape verdict />
                <div>
                    <p class="verdict-word">{word}</p>
                    <p class="verdict-sentence">{sentence}</p>
                </div>
            </div>
            <ul class="reasons">{reasons}</ul>
            <p class="verdict-next">{next}</p>
        </section>
    }
}

/// The card of a judgement, once there is one.
pub fn card(judged: Option<Judged>) -> Option<AnyView> {
    judged.map(|judged| view! { <VerdictCard judged /> }.into_any())
}
