//! The frame of a drawing that is looked at: named and described for those who cannot see it.

use leptos::prelude::*;
use std::sync::atomic::{AtomicU32, Ordering};

/// A value and what it is, as the page words them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Figure {
    /// "2.9 bar".
    pub value: String,
    /// "at 20 °C".
    pub name: String,
}

/// A name that no other element of the page has: patterns and titles are found by it.
pub(super) fn unique(what: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{what}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}

/// An image made of its children, in a picture `size` wide and high.
#[component]
pub fn Picture(
    /// Its class is this behind `picture-`.
    kind: &'static str,
    /// Width and height of the picture's own units; one is a CSS pixel at a phone's width.
    size: (f64, f64),
    /// What it shows, in a few words.
    #[prop(into)]
    title: String,
    /// All that can be read from it, in a sentence or two.
    #[prop(into)]
    description: String,
    children: Children,
) -> impl IntoView {
    let (title_id, description_id) = (unique("title"), unique("description"));
    let (named_by, described_by) = (title_id.clone(), description_id.clone());
    view! {
        <svg
            class=format!("picture picture-{kind}")
            viewBox=format!("0 0 {} {}", size.0, size.1)
            role="img"
            aria-labelledby=named_by
            aria-describedby=described_by
        >
            <title id=title_id>{title}</title>
            <desc id=description_id>{description}</desc>
            {children()}
        </svg>
    }
}

/// Slanted lines to fill an area with, found by `id`.
#[component]
pub(super) fn Hatch(
    id: String,
    /// The class that gives the lines their tone.
    tone: &'static str,
    /// Lines both ways.
    #[prop(optional)]
    crossed: bool,
) -> impl IntoView {
    let lines = if crossed { "M0 4H8M4 0V8" } else { "M4 0V8" };
    view! {
        <pattern id=id width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path class=format!("hatch {tone}") d=lines />
        </pattern>
    }
}
