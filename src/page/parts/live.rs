//! Parts of a view that follow what they read, each of one type, so that the machinery behind them is
//! compiled once and not for every place it is used in.

use leptos::prelude::*;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use std::sync::{Arc, Mutex};

/// What is shown or asked, told anew each time. It follows what it reads like a signal, without the
/// machinery that a signal brings for every type it holds.
pub struct Told<T>(Arc<dyn Fn() -> T + Send + Sync>);

impl<T> Told<T> {
    /// What it is now.
    pub fn get(&self) -> T {
        (self.0)()
    }
}

impl<T> Clone for Told<T> {
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

impl<T, F: Fn() -> T + Send + Sync + 'static> From<F> for Told<T> {
    fn from(tell: F) -> Self {
        Self(Arc::new(tell))
    }
}

impl<T: Clone + Send + Sync + 'static> From<Signal<T>> for Told<T> {
    fn from(signal: Signal<T>) -> Self {
        Self::from(move || signal.get())
    }
}

impl<T: Clone + Send + Sync + 'static> From<RwSignal<T>> for Told<T> {
    fn from(signal: RwSignal<T>) -> Self {
        Self::from(move || signal.get())
    }
}

/// A text that follows what it reads.
pub fn say(text: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(text)
}

/// A view that is drawn anew when what it reads has changed. A closure in braces within a view is made
/// the same; it should give a text or an `AnyView` too.
pub fn live(
    view: impl Fn() -> Option<AnyView> + Send + 'static,
) -> SharedReactiveFunction<AnyView> {
    Arc::new(Mutex::new(move || or_nothing(view())))
}

/// Does what follows from what it reads, now and after each change.
pub fn follow(act: impl Fn() + 'static) {
    fn of_one_type(act: Box<dyn Fn()>) {
        Effect::new(move |_| act());
    }
    of_one_type(Box::new(act));
}

/// The view, or none.
pub fn or_nothing(view: Option<AnyView>) -> AnyView {
    view.unwrap_or_else(|| ().into_any())
}

/// Views one after another.
pub fn list(views: impl Iterator<Item = AnyView>) -> AnyView {
    views.collect::<Vec<_>>().into_any()
}

/// A row of a list that keeps its rows.
pub struct Row {
    name: String,
    draw: Box<dyn FnOnce() -> AnyView + Send>,
}

impl Row {
    /// A row that is drawn once for each name; so the name tells all that is drawn.
    pub fn new(name: String, draw: impl FnOnce() -> AnyView + Send + 'static) -> Self {
        Self { name, draw: Box::new(draw) }
    }
}

/// Rows that stay as they are, what is opened or held in them too, when others come and go.
pub fn rows(each: impl Fn() -> Vec<Row> + Send + Sync + 'static) -> AnyView {
    fn of_one_type(each: Box<dyn Fn() -> Vec<Row> + Send + Sync>) -> AnyView {
        view! { <For each key=|row| row.name.clone() children=|row| (row.draw)() /> }.into_any()
    }
    of_one_type(Box::new(each))
}

/// Shows its children while `is` holds.
#[component]
pub fn When(#[prop(into)] is: Told<bool>, children: ChildrenFn) -> impl IntoView {
    let is = Memo::new(move |_| is.get());
    live(move || is.get().then(|| children()))
}

/// Why a save was not done, beside its button and said at once.
#[component]
pub fn Outcome(said: RwSignal<Option<String>>) -> impl IntoView {
    view! {
        <p class="form-outcome" role="alert">
            {say(move || said.get().unwrap_or_default())}
        </p>
    }
}
