//! Air before the yeast: how much it can give here, and a timer with rests that needs no sound.

use super::day::Day;
use crate::advice::Verdict;
use crate::page::clock;
use crate::page::parts::answer::VerdictShape;
use crate::page::parts::field::NumberField;
use crate::page::parts::live::{When, live, say};
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::quantity::{Estimate, Measured, write_number};
use crate::science::oxygen::in_wort;
use crate::science::sucrose;
use leptos::prelude::*;
use std::time::Duration;

/// Splashing and resting in turns, seconds; about five minutes of splashing in all (common practice,
/// no source).
const SPLASH: f64 = 60.0;
const REST: f64 = 30.0;
const TURNS: f64 = 5.0;

/// Where the timer stands so many seconds after its start.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Turn {
    Splash { left: f64, turn: f64 },
    Rest { left: f64 },
    Done,
}

fn turn(seconds: f64) -> Turn {
    let whole = (seconds / (SPLASH + REST)).floor();
    let within = seconds - whole * (SPLASH + REST);
    // There is no rest after the last turn.
    if whole >= TURNS || (whole == TURNS - 1.0 && within >= SPLASH) {
        Turn::Done
    } else if within < SPLASH {
        Turn::Splash { left: SPLASH - within, turn: whole + 1.0 }
    } else {
        Turn::Rest { left: SPLASH + REST - within }
    }
}

/// Minutes splashed so many seconds after the start.
fn splashed(seconds: f64) -> f64 {
    let whole = (seconds / (SPLASH + REST)).floor();
    let within = (seconds - whole * (SPLASH + REST)).min(SPLASH);
    (whole * SPLASH + within).clamp(0.0, TURNS * SPLASH) / 60.0
}

/// The timer. Its start is kept as a draft, so that it goes on while the screen sleeps and even when
/// the page was closed; the lock on the screen is asked for and may be refused.
#[component]
fn Timer(started: RwSignal<String>, minutes: RwSignal<String>) -> impl IntoView {
    let now = RwSignal::new(clock::seconds());
    let ticking = set_interval_with_handle(
        move || {
            if !started.with_untracked(String::is_empty) {
                now.set(clock::seconds());
            }
        },
        Duration::from_millis(500),
    );
    on_cleanup(move || {
        if let Ok(ticking) = ticking {
            ticking.clear();
        }
        clock::let_sleep();
    });
    // Whole seconds; the standard reader of fractions brings 14 kB with it, tables above all.
    let since = move || {
        let started = started.get().parse::<u32>().ok()?;
        Some((now.get() - f64::from(started)).max(0.0))
    };
    let running = move || since().is_some();
    let stop = move |_| {
        if let Some(seconds) = since() {
            minutes.set(write_number(splashed(seconds).max(0.1), 1));
        }
        started.set(String::new());
        clock::let_sleep();
    };
    let start = move |_| {
        now.set(clock::seconds());
        started.set(write_number(clock::seconds(), 0));
        clock::stay_awake();
    };
    let face = live(move || {
        let (verdict, word, below) = match turn(since()?) {
            Turn::Splash { left, turn } => (
                Verdict::Go,
                "Splash",
                format!(
                    "{} s, turn {} of {}",
                    write_number(left, 0),
                    write_number(turn, 0),
                    write_number(TURNS, 0)
                ),
            ),
            Turn::Rest { left } => (Verdict::Wait, "Rest", format!("{} s", write_number(left, 0))),
            Turn::Done => (Verdict::Go, "Done", "Stop the timer to note it.".to_owned()),
        };
        Some(
            view! {
                <div class=crate::page::parts::answer::tone(verdict)>
                    <div class="verdict-head">
                        <VerdictShape verdict />
                        <div>
                            <p class="verdict-word">{word}</p>
                            <p class="verdict-sentence">{below}</p>
                        </div>
                    </div>
                </div>
            }
            .into_any(),
        )
    });
    view! {
        <div class="timer" role="timer">
            {face}
        </div>
        <When is=running>
            <button type="button" on:click=stop>
                "Stop the timer"
            </button>
        </When>
        <When is=move || !running()>
            <button type="button" on:click=start>
                "Start the timer"
            </button>
        </When>
    }
}

/// The section.
#[component]
pub fn Air(day: Day, started: RwSignal<String>) -> impl IntoView {
    let session = use_session();
    let known = day.known();
    let found = move || {
        let extract = sucrose::plato(known.start().map(Estimate::value)?);
        let t = known.wort()?.temperature.value();
        in_wort(t, extract, session.settings().height).ok()
    };
    let told = say(move || match found() {
        None => {
            "Give the wort's temperature and gravity, and this says how much oxygen air can give."
                .to_owned()
        }
        Some(air) => format!(
            "Air can give this wort at most {} ±\u{A0}{}\u{A0}mg/L of oxygen; splashing reaches {} to {}. Dry yeast brings reserves and needs less. Only before it ferments.",
            write_number(air.full.value().value(), 1),
            write_number(air.full.sigma(), 1),
            write_number(air.shaken_from.value(), 1),
            write_number(air.shaken_to.value(), 1)
        ),
    });
    let worked = move || found().map(|air| air.worked);
    view! {
        <details class="more">
            <summary>"Air"</summary>
            <p>{told}</p>
            <Timer started minutes=day.aerated.face.text />
            <NumberField face=day.aerated.face.clone() />
            <HowWorked
                worked
                writer=move || session.writer()
                doubt_in=(1, 1.0, "mg/L")
            />
        </details>
    }
}
