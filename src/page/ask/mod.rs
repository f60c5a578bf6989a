//! Fields that know what they measure: typed text in, a checked quantity or a sentence out.

mod gravity;

pub use gravity::{AskGravity, AskedGravity, ReadGravity, ask_gravity};

use super::drafts::use_drafts;
use super::parts::field::Face;
use super::parts::live::Told;
use super::words;
use crate::quantity::{Bounds, Measured, ReadError, Unit, read, read_numeral, write_bare};
use leptos::prelude::*;
use std::marker::PhantomData;

/// What a field yields: a quantity, or why there is none. Followed where it is read.
pub struct Read<Q> {
    own: Signal<Typed>,
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
        self.own.get().map(|own| Q::nearest(own.number))
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

/// A number as it is kept behind a field: in the quantity's own unit, or on the scale it is on.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Own {
    number: f64,
    /// Which scale, for a gravity; nothing to a quantity with one own unit.
    scale: usize,
}

/// What a typed text comes to.
type Typed = Result<Own, ReadError>;

/// How far and from where the big buttons go.
struct Stepping {
    bounds: (f64, f64),
    /// One step, in each unit.
    steps: Vec<f64>,
    /// Where they start when nothing is written.
    start: f64,
}

/// A kind of unit with its type taken away, so that the field below is compiled once and not for
/// every quantity. Units are counted in the order offered.
#[derive(Clone, Copy)]
struct Table {
    symbols: fn() -> Vec<&'static str>,
    read: fn(&str, usize, (f64, f64)) -> Typed,
    /// What the field shows.
    write: fn(Own, usize) -> String,
    /// What it says under the field, when that is not what was typed.
    explain: fn(Own, &str, usize) -> Option<String>,
    /// The same in another unit.
    turn: fn(Own, usize) -> Own,
    /// One step down (−1) or up (1).
    step: fn(Option<Own>, f64, usize, &Stepping) -> Own,
}

fn at<U: Unit>(index: usize) -> U {
    U::ALL.get(index).copied().unwrap_or(U::ALL[0])
}

fn symbols<U: Unit>() -> Vec<&'static str> {
    U::ALL.iter().map(|unit| unit.symbol()).collect()
}

fn write_own<U: Unit>(own: Own, unit: usize) -> String {
    write_bare(U::Quantity::nearest(own.number), at::<U>(unit))
}

fn table<U: Unit>() -> Table {
    Table {
        symbols: symbols::<U>,
        read: |text, unit, (min, max)| {
            let bounds = Bounds::new(U::Quantity::nearest(min), U::Quantity::nearest(max));
            let read = read(text, at::<U>(unit), bounds)?;
            Ok(Own { number: read.value(), scale: 0 })
        },
        write: write_own::<U>,
        explain: |own, typed, unit| {
            explain_number(typed, &write_own::<U>(own, unit), at::<U>(unit).symbol())
        },
        turn: |own, _| own,
        step: |own, direction, unit, stepping| {
            let number = own.map(|own| at::<U>(unit).express(own.number));
            let number = number.map(|number| stepped(number, direction, unit, stepping));
            let own = number.map_or(stepping.start, |number| at::<U>(unit).to_own(number));
            Own { number: own.clamp(stepping.bounds.0, stepping.bounds.1), scale: 0 }
        },
    }
}

fn stepped(number: f64, direction: f64, unit: usize, stepping: &Stepping) -> f64 {
    let by = direction * stepping.steps.get(unit).copied().unwrap_or(1.0);
    ((number + by) * 1e6).round() / 1e6
}

fn explain_number(typed: &str, written: &str, symbol: &str) -> Option<String> {
    let same = same_number(typed, written);
    (!same).then(|| words::understood(&format!("{written}\u{A0}{symbol}")))
}

/// Makes the field. `scope` sets one form's drafts apart from another's.
pub fn ask<U: Unit>(scope: &str, ask: Ask<U>) -> Asked<U::Quantity> {
    let Ask { key, label, hint, unit, bounds, step, first, start } = ask;
    let usual = U::ALL.iter().position(|one| *one == unit).unwrap_or(0);
    let (own, face) = field(Field {
        key: format!("{scope}{key}"),
        label,
        hint,
        usual,
        table: table::<U>(),
        first: first.map(|first| Own { number: first.value(), scale: 0 }),
        stepping: Stepping {
            bounds: (bounds.min.value(), bounds.max.value()),
            steps: U::ALL.iter().map(|unit| step(*unit)).collect(),
            start: start.value(),
        },
    });
    Asked { value: Read { own, quantity: PhantomData }, face }
}

struct Field {
    key: String,
    label: &'static str,
    hint: &'static str,
    usual: usize,
    table: Table,
    first: Option<Own>,
    stepping: Stepping,
}

fn field(field: Field) -> (Signal<Typed>, Face) {
    let Field { key, label, hint, usual, table, first, stepping } = field;
    let drafts = use_drafts();
    let first = first.map(|own| (table.write)(own, usual)).unwrap_or_default();
    let text = drafts.text(&key, &first);
    let symbol_of = move |unit: usize| (table.symbols)().get(unit).copied().unwrap_or("");
    let unit_text = drafts.text(&format!("{key}/unit"), symbol_of(usual));
    let chosen = move || {
        let symbol = unit_text.get();
        (table.symbols)().iter().position(|one| *one == symbol).unwrap_or(usual)
    };
    let bounds = stepping.bounds;
    let value = Signal::derive(move || text.with(|text| (table.read)(text, chosen(), bounds)));
    let understood = move || {
        let own = value.get().ok()?;
        text.with(|typed| (table.explain)(own, typed, chosen()))
    };
    let on_unit = Callback::new(move |symbol: String| {
        let before = value.get_untracked();
        unit_text.set(symbol);
        if let Ok(own) = before {
            let unit = untrack(chosen);
            text.set((table.write)((table.turn)(own, unit), unit));
        }
    });
    let on_step = Callback::new(move |direction: i32| {
        let (unit, own) = (untrack(chosen), value.get_untracked().ok());
        let stepped = (table.step)(own, f64::from(direction), unit, &stepping);
        text.set((table.write)(stepped, unit));
    });
    let face = Face {
        id: plain_id(&key),
        label: label.to_owned(),
        hint: hint.to_owned(),
        text,
        left: RwSignal::new(false),
        demanded: RwSignal::new(false),
        error: Told::from(move || value.get().err().map(error_words)),
        understood: Told::from(understood),
        units: (table.symbols)(),
        unit: Told::from(move || symbol_of(chosen())),
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
