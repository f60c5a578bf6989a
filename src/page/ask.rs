//! Fields that know what they measure: typed text in, a checked quantity or a sentence out.

use super::drafts::use_drafts;
use super::parts::field::Face;
use super::words;
use crate::quantity::{
    Bounds, Gravity, GravityUnit, Measured, Plato, ReadError, SpecificGravity, Unit, read,
    read_gravity, read_numeral, write_bare, write_gravity, write_number,
};
use leptos::prelude::*;

/// What a field yields.
pub type Read<Q> = Signal<Result<Q, ReadError>>;

/// A field and what it yields.
#[derive(Clone)]
pub struct Asked<Q: Send + Sync + 'static> {
    /// The quantity, or why there is none.
    pub value: Read<Q>,
    /// What the view needs.
    pub face: Face,
}

impl<Q: Copy + Send + Sync + 'static> Asked<Q> {
    /// The quantity if there is one now.
    pub fn get(&self) -> Option<Q> {
        self.value.get().ok()
    }

    /// The quantity; otherwise the field shows its error, emptiness included.
    pub fn demand(&self) -> Option<Q> {
        let value = self.value.get_untracked().ok();
        if value.is_none() {
            self.face.demand();
        }
        value
    }

    /// The quantity, nothing when the field is empty, or `Err` when what is there cannot be read.
    pub fn optional(&self) -> Result<Option<Q>, ()> {
        match self.value.get_untracked() {
            Ok(value) => Ok(Some(value)),
            Err(ReadError::Empty) => Ok(None),
            Err(_) => {
                self.face.demand();
                Err(())
            }
        }
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

/// Makes the field. `scope` sets one form's drafts apart from another's.
pub fn ask<U: Unit + Send + Sync>(scope: &str, ask: Ask<U>) -> Asked<U::Quantity>
where
    U::Quantity: Send + Sync,
{
    let Ask { key, label, hint, unit, bounds, step, first, start } = ask;
    let drafts = use_drafts();
    let key = format!("{scope}{key}");
    let first = first.map(|quantity| write_bare(quantity, unit)).unwrap_or_default();
    let text = drafts.text(&key, &first);
    let unit_text = drafts.text(&format!("{key}/unit"), unit.symbol());
    let chosen = move || named::<U>(&unit_text.get()).unwrap_or(unit);
    let value = Memo::new(move |_| read(&text.get(), chosen(), bounds));
    let understood = move || {
        let typed = text.get();
        let quantity = value.get().ok()?;
        let written = write_bare(quantity, chosen());
        (!same_number(&typed, &written))
            .then(|| words::understood(&format!("{written}\u{A0}{}", chosen().symbol())))
    };
    let on_unit = Callback::new(move |symbol: String| {
        let before = value.get_untracked();
        unit_text.set(symbol);
        if let (Ok(quantity), Some(unit)) = (before, named::<U>(&unit_text.get_untracked())) {
            text.set(write_bare(quantity, unit));
        }
    });
    let on_step = Callback::new(move |direction: i32| {
        let unit = named::<U>(&unit_text.get_untracked()).unwrap_or(unit);
        let now = value.get_untracked();
        let stepped = match now {
            Ok(quantity) => {
                let by = f64::from(direction) * step(unit);
                unit.to_own(((unit.express(quantity.value()) + by) * 1e6).round() / 1e6)
            }
            Err(_) => start.value(),
        };
        let held = stepped.clamp(bounds.min.value(), bounds.max.value());
        text.set(write_bare(U::Quantity::nearest(held), unit));
    });
    let error = move || value.get().err().map(error_words);
    let face = Face {
        id: plain_id(&key),
        label: label.to_owned(),
        hint: hint.to_owned(),
        text,
        left: RwSignal::new(false),
        demanded: RwSignal::new(false),
        error: Signal::derive(error),
        understood: Signal::derive(understood),
        units: U::ALL.iter().map(|unit| unit.symbol()).collect(),
        unit: Signal::derive(move || chosen().symbol()),
        on_unit,
        on_step,
    };
    Asked { value: value.into(), face }
}

fn named<U: Unit>(symbol: &str) -> Option<U> {
    U::ALL.iter().copied().find(|unit| unit.symbol() == symbol)
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

/// A gravity to be asked.
pub struct AskGravity {
    /// Draft and document name.
    pub key: &'static str,
    /// What is asked.
    pub label: &'static str,
    /// Help; may be empty.
    pub hint: &'static str,
    /// The brewer's usual scale.
    pub unit: GravityUnit,
    /// What is written there at first.
    pub first: Option<Gravity>,
    /// Where the buttons start when nothing is written.
    pub start: SpecificGravity,
}

/// Makes a gravity field; the value keeps the scale it was typed on.
pub fn ask_gravity(scope: &str, ask: AskGravity) -> Asked<Gravity> {
    let AskGravity { key, label, hint, unit, first, start } = ask;
    let drafts = use_drafts();
    let key = format!("{scope}{key}");
    let text = drafts.text(&key, &first.map(bare_gravity).unwrap_or_default());
    let unit_text = drafts.text(&format!("{key}/unit"), unit.symbol());
    let scale = move |symbol: &str| {
        GravityUnit::ALL.into_iter().find(|unit| unit.symbol() == symbol).unwrap_or(unit)
    };
    let value = Memo::new(move |_| read_gravity(&text.get(), scale(&unit_text.get())));
    let understood = move || {
        let gravity = value.get().ok()?;
        (text.get().trim() != bare_gravity(gravity))
            .then(|| words::understood(&write_gravity(gravity)))
    };
    let on_unit = Callback::new(move |symbol: String| {
        let before = value.get_untracked();
        unit_text.set(symbol);
        if let Ok(gravity) = before {
            text.set(bare_gravity(on_scale(gravity, scale(&unit_text.get_untracked()))));
        }
    });
    let on_step = Callback::new(move |direction: i32| {
        let unit = scale(&unit_text.get_untracked());
        let by = f64::from(direction);
        let stepped = match value.get_untracked() {
            Ok(gravity) => stepped(on_scale(gravity, unit), by),
            Err(_) => on_scale(Gravity::Specific(start), unit),
        };
        text.set(bare_gravity(stepped));
    });
    let face = Face {
        id: plain_id(&key),
        label: label.to_owned(),
        hint: hint.to_owned(),
        text,
        left: RwSignal::new(false),
        demanded: RwSignal::new(false),
        error: Signal::derive(move || value.get().err().map(error_words)),
        understood: Signal::derive(understood),
        units: GravityUnit::ALL.iter().map(|unit| unit.symbol()).collect(),
        unit: Signal::derive(move || scale(&unit_text.get()).symbol()),
        on_unit,
        on_step,
    };
    Asked { value: value.into(), face }
}

/// A gravity on the other scale, when the brewer chooses it.
fn on_scale(gravity: Gravity, unit: GravityUnit) -> Gravity {
    match (unit, gravity) {
        (GravityUnit::SpecificGravity, Gravity::Plato(plato)) => {
            Gravity::Specific(crate::science::sucrose::specific_gravity(plato))
        }
        (GravityUnit::Plato, Gravity::Specific(sg)) => {
            Gravity::Plato(crate::science::sucrose::plato(sg))
        }
        _ => gravity,
    }
}

fn stepped(gravity: Gravity, by: f64) -> Gravity {
    match gravity {
        Gravity::Specific(sg) => {
            let thousandths = ((sg.value() * 1000.0 + by).clamp(980.0, 1180.0) * 10.0).round();
            Gravity::Specific(SpecificGravity::nearest(thousandths / 10_000.0))
        }
        Gravity::Plato(plato) => {
            let tenths = ((plato.value() + 0.1 * by).clamp(-5.0, 40.0) * 10.0).round();
            Gravity::Plato(Plato::nearest(tenths / 10.0))
        }
    }
}

/// A gravity as its field shows it: without the scale's symbol.
pub fn bare_gravity(gravity: Gravity) -> String {
    match gravity {
        Gravity::Specific(_) => write_gravity(gravity),
        Gravity::Plato(plato) => write_number(plato.value(), 1),
    }
}
