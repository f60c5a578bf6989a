//! The frame round every screen.

use leptos::prelude::*;

/// Puts the page into the document's body.
pub fn mount() {
    mount_to_body(|| view! { <main><h1>"Fermentside"</h1></main> });
}
