//! Fields that know what they measure: typed text in, a checked quantity or what is wrong with it out,
//! and the part that shows it.
//!
//! A field that was not touched yields the very value it was given, however it is shown.

mod answers;
mod gravity;
mod plain;

pub use answers::{answer, answer_or_none, answer_or_nothing, listed, listed_or_none};
pub use gravity::{AskGravity, AskedGravity, ask_gravity};
pub use plain::{Chosen, choice, moment, pick, words_field};

use super::model::Model;
use super::part::{Number, Part, What};
use crate::quantity::{
    Bounds, Measured, ReadError, Unit, UnitRow, read_numeral, read_own, write_bare_own,
};

/// A field as it stands, and what it yields.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked<Q> {
    /// The quantity, or why there is none.
    pub value: Result<Q, ReadError>,
    /// The field.
    pub part: Part,
}

impl<Q: Clone> Asked<Q> {
    /// The quantity, if there is one.
    #[must_use]
    pub fn ok(&self) -> Option<Q> {
        self.value.clone().ok()
    }
}

/// Fields that a save cannot go on without, gathered while a form is read.
#[derive(Debug, Default)]
pub struct Wrong(Vec<String>);

impl Wrong {
    /// The value; otherwise the field is marked, emptiness included.
    pub fn demand<Q: Clone>(&mut self, asked: &Asked<Q>) -> Option<Q> {
        if asked.value.is_err() {
            self.mark(&asked.part.name);
        }
        asked.ok()
    }

    /// The value, or nothing when the field is empty; what cannot be read is marked.
    pub fn optional<Q: Clone>(&mut self, asked: &Asked<Q>) -> Option<Q> {
        if !matches!(asked.value, Ok(_) | Err(ReadError::Empty)) {
            self.mark(&asked.part.name);
        }
        asked.ok()
    }

    /// Marks a field.
    pub fn mark(&mut self, name: &str) {
        self.0.push(name.to_owned());
    }

    /// Shows what is wrong at every field that was marked, and gives the first; `None` when all is well.
    #[must_use]
    pub fn shown(self, model: &mut Model) -> Option<String> {
        for name in &self.0 {
            model.drafts.demand(name);
        }
        self.0.into_iter().next()
    }
}

/// A field to be asked.
pub struct Ask<U: Unit> {
    /// Draft and document name, such as `bench/gravity/sample`.
    pub name: String,
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
    /// What it was given.
    pub first: Option<U::Quantity>,
    /// Where the buttons start when nothing is written.
    pub start: U::Quantity,
}

/// A number as it is kept behind a field: in the quantity's own unit, or on the scale it is on.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Own {
    number: f64,
    /// Which scale, for a gravity; nothing to a quantity with one own unit.
    scale: usize,
}

/// What a text comes to.
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
            Self::Gravity => gravity::write(gravity::turn(own, unit)),
        }
    }

    /// What it says under the field, when that is not what was typed.
    fn explain(self, own: Own, typed: &str, unit: usize) -> Option<String> {
        match self {
            Self::Units(units) => {
                let written = self.write(own, unit);
                let whole = || format!("{written}\u{A0}{}", at(units, unit).symbol);
                (!same_number(typed, &written)).then(whole)
            }
            Self::Gravity => gravity::explain(own, typed),
        }
    }

    /// One step down (−1) or up (1).
    fn step(self, own: Option<Own>, direction: f64, unit: usize, stepping: &Stepping) -> Own {
        match self {
            Self::Units(units) => {
                let row = at(units, unit);
                let number = own.map_or(stepping.start, |own| {
                    row.to_own(stepped(row.express(own.number), direction, unit, stepping))
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

/// Makes the field.
pub fn ask<U: Unit>(m: &Model, ask: Ask<U>) -> Asked<U::Quantity> {
    let Ask { name, label, hint, unit, bounds, step, first, start } = ask;
    let usual = U::ALL.iter().position(|one| *one == unit).unwrap_or(0);
    let field = Field {
        name,
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
    };
    let (own, part) = self::field(m, field);
    Asked { value: own.map(|own| U::Quantity::nearest(own.number)), part }
}

struct Field {
    name: String,
    label: &'static str,
    hint: &'static str,
    usual: usize,
    table: Table,
    first: Option<Own>,
    stepping: Stepping,
}

fn field(m: &Model, field: Field) -> (Typed, Part) {
    let Field { name, label, hint, usual, table, first, stepping } = field;
    let symbols = table.symbols();
    let index = |symbol: &str| symbols.iter().position(|one| *one == symbol);
    let draft = m.drafts.get(&name);
    let shown_in = draft.and_then(|d| index(d.unit.as_deref()?)).unwrap_or(usual);
    let typed = draft.and_then(|d| Some((d.text.as_deref()?, index(&d.typed_in).unwrap_or(usual))));
    // What is nothing in the unit it was typed in was meant in the one chosen after.
    let typed = typed.map(|(text, typed_in)| {
        let means_nothing = table.read(text, typed_in, stepping.limits).is_err();
        (text, if means_nothing { shown_in } else { typed_in })
    });
    let value = match typed {
        Some((text, typed_in)) => table.read(text, typed_in, stepping.limits),
        None => first.ok_or(ReadError::Empty),
    };
    let text = match (&value, typed) {
        // As it was typed, for as long as it is shown in the unit it was typed in, or means nothing.
        (_, Some((text, typed_in))) if typed_in == shown_in => text.to_owned(),
        (Ok(own), _) => table.write(*own, shown_in),
        (Err(_), typed) => typed.map(|(text, _)| text.to_owned()).unwrap_or_default(),
    };
    let understood = match (&value, typed) {
        (Ok(own), Some(_)) => table.explain(*own, &text, shown_in),
        _ => None,
    };
    let step = |direction| {
        table.write(table.step(value.clone().ok(), direction, shown_in, &stepping), shown_in)
    };
    let words = &m.words.fields;
    let error = match &value {
        Err(ReadError::Empty) if !m.drafts.was_demanded(&name) => String::new(),
        Err(why) if m.drafts.was_left(&name) => (words.read_error)(why),
        _ => String::new(),
    };
    let number = Number {
        label: label.to_owned(),
        hint: hint.to_owned(),
        spoken: [(words.less)(label), (words.more)(label), (words.unit)(label)],
        steps: (step(-1.0), step(1.0)),
        error,
        understood: understood.map(|text| (words.understood)(&text)).unwrap_or_default(),
        unit: symbols.get(shown_in).copied().unwrap_or(""),
        units: symbols,
        text,
    };
    (value, Part::new(name, What::Number(number)))
}

fn same_number(typed: &str, written: &str) -> bool {
    let number =
        |text: &str| read_numeral(text).ok().and_then(|(n, behind)| behind.is_empty().then_some(n));
    let (typed, written) = (number(typed), number(written));
    typed.is_some() && typed == written
}
