//! Fields that know what they measure: typed text in, a checked quantity or a sentence out.

mod gravity;

pub use gravity::{AskGravity, AskedGravity, ReadGravity, ask_gravity};

use super::drafts::use_drafts;
use super::parts::field::Face;
use super::parts::live::Told;
use super::words;
use crate::quantity::{
    Bounds, Measured, ReadError, Unit, UnitRow, read_numeral, read_own, write_bare_own,
};
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
    limits: (f64, f64),
    /// One step, in each unit.
    steps: Vec<f64>,
    /// Where they start when nothing is written.
    start: f64,
}

/// What a field measures with its type taken away, so that the field below is compiled once and not for
/// every quantity. Units are counted in the order offered.
#[derive(Clone, Copy)]
enum Table {
    Units(&'static [UnitRow]),
    /// Unlike other quantities it stays on the scale it was typed on.
    Gravity,
}

/// The unit chosen; there is always one.
fn at(units: &'static [UnitRow], index: usize) -> &'static UnitRow {
    units.get(index).unwrap_or(&units[0])
}

impl Table {
    fn symbols(self) -> Vec<&'static str> {
        match self {
            Self::Units(units) => units.iter().map(|unit| unit.symbol).collect(),
            Self::Gravity => gravity::symbols(),
        }
    }

    fn read(self, text: &str, unit: usize, limits: (f64, f64)) -> Typed {
        match self {
            Self::Units(units) => read_own(text, at(units, unit), units, limits)
                .map(|number| Own { number, scale: 0 }),
            Self::Gravity => gravity::read(text, unit),
        }
    }

    /// What the field shows.
    fn write(self, own: Own, unit: usize) -> String {
        match self {
            Self::Units(units) => write_bare_own(own.number, at(units, unit)),
            Self::Gravity => gravity::write(own),
        }
    }

    /// What it says under the field, when that is not what was typed.
    fn explain(self, own: Own, typed: &str, unit: usize) -> Option<String> {
        match self {
            Self::Units(units) => {
                let written = self.write(own, unit);
                let whole = || format!("{written}\u{A0}{}", at(units, unit).symbol);
                (!same_number(typed, &written)).then(|| words::understood(&whole()))
            }
            Self::Gravity => gravity::explain(own, typed),
        }
    }

    /// The same in another unit.
    fn turn(self, own: Own, unit: usize) -> Own {
        match self {
            Self::Units(_) => own,
            Self::Gravity => gravity::turn(own, unit),
        }
    }

    /// One step down (−1) or up (1).
    fn step(self, own: Option<Own>, direction: f64, unit: usize, stepping: &Stepping) -> Own {
        match self {
            Self::Units(units) => {
                let unit_row = at(units, unit);
                let number = own.map_or(stepping.start, |own| {
                    let number = unit_row.express(own.number);
                    unit_row.to_own(stepped(number, direction, unit, stepping))
                });
                Own { number: number.clamp(stepping.limits.0, stepping.limits.1), scale: 0 }
            }
            Self::Gravity => gravity::step(own, direction, unit, stepping.start),
        }
    }
}

fn stepped(number: f64, direction: f64, unit: usize, stepping: &Stepping) -> f64 {
    let by = direction * stepping.steps.get(unit).copied().unwrap_or(1.0);
    ((number + by) * 1e6).round() / 1e6
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
        table: Table::Units(U::ROWS),
        first: first.map(|first| Own { number: first.value(), scale: 0 }),
        stepping: Stepping {
            limits: (bounds.min.value(), bounds.max.value()),
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
    let first = first.map(|own| table.write(own, usual)).unwrap_or_default();
    let text = drafts.text(&key, &first);
    let symbol_of = move |unit: usize| table.symbols().get(unit).copied().unwrap_or("");
    let unit_text = drafts.text(&format!("{key}/unit"), symbol_of(usual));
    let chosen = move || {
        let symbol = unit_text.get();
        table.symbols().iter().position(|one| *one == symbol).unwrap_or(usual)
    };
    let limits = stepping.limits;
    let value = Signal::derive(move || text.with(|text| table.read(text, chosen(), limits)));
    let understood = move || {
        let own = value.get().ok()?;
        text.with(|typed| table.explain(own, typed, chosen()))
    };
    let on_unit = Callback::new(move |symbol: String| {
        let before = value.get_untracked();
        unit_text.set(symbol);
        if let Ok(own) = before {
            let unit = untrack(chosen);
            text.set(table.write(table.turn(own, unit), unit));
        }
    });
    let on_step = Callback::new(move |direction: i32| {
        let (unit, own) = (untrack(chosen), value.get_untracked().ok());
        let stepped = table.step(own, f64::from(direction), unit, &stepping);
        text.set(table.write(stepped, unit));
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
        units: table.symbols(),
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
