//! Parts of a view that follow what they read, each of one type, so that the machinery behind them is
//! compiled once and not for every place it is used in.

use leptos::prelude::*;

/// A text that follows what it reads.
pub fn say(text: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(text)
}

/// A view that is drawn anew when what it reads has changed.
pub fn live(
    view: impl Fn() -> Option<AnyView> + Send + 'static,
) -> Box<dyn Fn() -> Option<AnyView> + Send> {
    Box::new(view)
}

/// Shows its children while `is` holds.
#[component]
pub fn When(#[prop(into)] is: Signal<bool>, children: ChildrenFn) -> impl IntoView {
    let is = Memo::new(move |_| is.get());
    live(move || is.get().then(|| children()))
}

/// Why a save was not done, beside its button and said at once.
#[component]
pub fn Outcome(#[prop(into)] said: Signal<Option<String>>) -> impl IntoView {
    view! {
        <p class="form-outcome" role="alert">
            {say(move || said.get().unwrap_or_default())}
        </p>
    }
}
