//! The frame of a drawing that is looked at: named and described for those who cannot see it.

use crate::app::drawing::Drawing;
use leptos::prelude::*;
use std::sync::atomic::{AtomicU32, Ordering};

/// A name that no other element of the page has: patterns and titles are found by it.
pub fn unique(what: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{what}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}

/// An image made of what is drawn in it, in a picture `size` wide and high. Its class is `kind` behind
/// `picture-`; one of its units is a CSS pixel at a phone's width.
pub fn picture(kind: &'static str, size: (f64, f64), drawing: &Drawing, drawn: AnyView) -> AnyView {
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
            <title id=title_id>{drawing.title.clone()}</title>
            <desc id=description_id>{drawing.description.clone()}</desc>
            {drawn}
        </svg>
    }
    .into_any()
}

/// Slanted lines to fill an area with, found by `id`, or lines both ways; the class gives their tone.
pub fn hatch(id: String, tone: &'static str, crossed: bool) -> AnyView {
    let lines = if crossed { "M0 4H8M4 0V8" } else { "M4 0V8" };
    view! {
        <pattern id=id width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path class=format!("hatch {tone}") d=lines />
        </pattern>
    }
    .into_any()
}
