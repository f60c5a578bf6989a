//! Fields that know what they measure: typed text in, a checked quantity or a sentence out.

mod gravity;

pub use gravity::{AskGravity, AskedGravity, ask_gravity};

use super::drafts::use_drafts;
use super::parts::field::Face;
use super::words;
use crate::quantity::{Bounds, Measured, ReadError, Unit, read, read_numeral, write_bare};
use leptos::prelude::*;
use std::marker::PhantomData;

/// What a field yields: a quantity, or why there is none. Followed where it is read.
pub struct Read<Q> {
    number: Signal<Typed>,
    quantity: PhantomData<fn() -> Q>,
}

impl<Q> Clone for Read<Q> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<Q> Copy for Read<Q> {}

impl<Q: Measured> Read<Q> {
    /// The quantity now.
    pub fn get(self) -> Result<Q, ReadError> {
        self.number.get().map(Q::nearest)
    }
}

/// A field and what it yields.
#[derive(Clone)]
pub struct Asked<Q> {
    /// The quantity, or why there is none.
    pub value: Read<Q>,
    /// What the view needs.
    pub face: Face,
}

/// The value; otherwise the field shows its error, emptiness included.
fn demanded<T>(value: Result<T, ReadError>, face: &Face) -> Option<T> {
    if value.is_err() {
        face.demand();
    }
    value.ok()
}

/// The value, nothing when the field is empty, or `Err` when what is there cannot be read.
fn if_any<T>(value: Result<T, ReadError>, face: &Face) -> Result<Option<T>, ()> {
    match value {
        Ok(value) => Ok(Some(value)),
        Err(ReadError::Empty) => Ok(None),
        Err(_) => {
            face.demand();
            Err(())
        }
    }
}

impl<Q: Measured> Asked<Q> {
    /// The quantity if there is one now.
    pub fn get(&self) -> Option<Q> {
        self.value.get().ok()
    }

    /// The quantity; otherwise the field shows its error, emptiness included.
    pub fn demand(&self) -> Option<Q> {
        demanded(untrack(|| self.value.get()), &self.face)
    }

    /// The quantity, nothing when the field is empty, or `Err` when what is there cannot be read.
    pub fn optional(&self) -> Result<Option<Q>, ()> {
        if_any(untrack(|| self.value.get()), &self.face)
    }
}

/// A field to be asked.
pub struct Ask<U: Unit> {
    /// Draft and document name, such as `bench/gravity/sample`.
    pub key: &'static str,
    /// What is asked.
    pub label: &'static str,
    /// Help; may be empty.
    pub hint: &'static str,
    /// The brewer's usual unit.
    pub unit: U,
    /// Values taken.
    pub bounds: Bounds<U::Quantity>,
    /// One step of the big buttons, in the given unit.
    pub step: fn(U) -> f64,
    /// What is written there at first.
    pub first: Option<U::Quantity>,
    /// Where the buttons start when nothing is written.
    pub start: U::Quantity,
}

fn plain_id(key: &str) -> String {
    key.replace('/', "-")
}

/// What a typed text comes to, in the quantity's own unit.
type Typed = Result<f64, ReadError>;

/// A kind of unit with its type taken away, so that the field below is compiled once and not for
/// every quantity. Units are counted in the order offered.
#[derive(Clone, Copy)]
struct Table {
    symbols: fn() -> Vec<&'static str>,
    read: fn(&str, usize, (f64, f64)) -> Typed,
    write: fn(f64, usize) -> String,
    to_own: fn(f64, usize) -> f64,
    express: fn(f64, usize) -> f64,
}

fn at<U: Unit>(index: usize) -> U {
    U::ALL.get(index).copied().unwrap_or(U::ALL[0])
}

fn table<U: Unit>() -> Table {
    Table {
        symbols: || U::ALL.iter().map(|unit| unit.symbol()).collect(),
        read: |text, unit, (min, max)| {
            let bounds = Bounds::new(U::Quantity::nearest(min), U::Quantity::nearest(max));
            read(text, at::<U>(unit), bounds).map(Measured::value)
        },
        write: |own, unit| write_bare(U::Quantity::nearest(own), at::<U>(unit)),
        to_own: |number, unit| at::<U>(unit).to_own(number),
        express: |own, unit| at::<U>(unit).express(own),
    }
}

/// Makes the field. `scope` sets one form's drafts apart from another's.
pub fn ask<U: Unit>(scope: &str, ask: Ask<U>) -> Asked<U::Quantity> {
    let Ask { key, label, hint, unit, bounds, step, first, start } = ask;
    let usual = U::ALL.iter().position(|one| *one == unit).unwrap_or(0);
    let (number, face) = field(Field {
        key: format!("{scope}{key}"),
        label,
        hint,
        usual,
        table: table::<U>(),
        bounds: (bounds.min.value(), bounds.max.value()),
        steps: U::ALL.iter().map(|unit| step(*unit)).collect(),
        first: first.map(Measured::value),
        start: start.value(),
    });
    Asked { value: Read { number, quantity: PhantomData }, face }
}

struct Field {
    key: String,
    label: &'static str,
    hint: &'static str,
    usual: usize,
    table: Table,
    bounds: (f64, f64),
    steps: Vec<f64>,
    first: Option<f64>,
    start: f64,
}

fn field(field: Field) -> (Signal<Typed>, Face) {
    let Field { key, label, hint, usual, table, bounds, steps, first, start } = field;
    let drafts = use_drafts();
    let symbols = (table.symbols)();
    let first = first.map(|own| (table.write)(own, usual)).unwrap_or_default();
    let text = drafts.text(&key, &first);
    let unit_text = drafts.text(&format!("{key}/unit"), symbols.get(usual).copied().unwrap_or(""));
    let units = symbols.clone();
    let index_of = move |symbol: &str| units.iter().position(|one| *one == symbol).unwrap_or(usual);
    let chosen = {
        let index_of = index_of.clone();
        Signal::derive(move || index_of(&unit_text.get()))
    };
    let value = Signal::derive(move || text.with(|text| (table.read)(text, chosen.get(), bounds)));
    let units = symbols.clone();
    let symbol = Signal::derive(move || units.get(chosen.get()).copied().unwrap_or(""));
    let understood = Signal::derive(move || {
        let own = value.get().ok()?;
        let written = (table.write)(own, chosen.get());
        let same = text.with(|typed| same_number(typed, &written));
        (!same).then(|| words::understood(&format!("{written}\u{A0}{}", symbol.get())))
    });
    let on_unit = Callback::new(move |symbol: String| {
        let before = value.get_untracked();
        let unit = index_of(&symbol);
        unit_text.set(symbol);
        if let Ok(own) = before {
            text.set((table.write)(own, unit));
        }
    });
    let on_step = Callback::new(move |direction: i32| {
        let unit = chosen.get_untracked();
        let stepped = match value.get_untracked() {
            Ok(own) => {
                let by = f64::from(direction) * steps.get(unit).copied().unwrap_or(1.0);
                let number = (table.express)(own, unit) + by;
                (table.to_own)((number * 1e6).round() / 1e6, unit)
            }
            Err(_) => start,
        };
        text.set((table.write)(stepped.clamp(bounds.0, bounds.1), unit));
    });
    let error = Signal::derive(move || value.get().err().map(error_words));
    let face = Face {
        id: plain_id(&key),
        label: label.to_owned(),
        hint: hint.to_owned(),
        text,
        left: RwSignal::new(false),
        demanded: RwSignal::new(false),
        error,
        understood,
        units: symbols,
        unit: symbol,
        on_unit,
        on_step,
    };
    (value, face)
}

fn error_words(error: ReadError) -> (String, bool) {
    let empty = error == ReadError::Empty;
    (words::read_error(&error), empty)
}

fn same_number(typed: &str, written: &str) -> bool {
    let number =
        |text: &str| read_numeral(text).ok().and_then(|(n, behind)| behind.is_empty().then_some(n));
    let (typed, written) = (number(typed), number(written));
    typed.is_some() && typed == written
}
