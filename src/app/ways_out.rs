//! Ways from a plan without a dose to one: each says what it gives, and a touch takes it or leads there.

use super::act::{Act, BottleAct, WatchAct};
use super::event::Effect;
use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, action, group, heading, text};
use super::route::Route;
use crate::advice::bottle::asked::SugarGoes;
use crate::advice::standing::ways_to_dose::Way;
use crate::batch::{Id, Stage};
use crate::quantity::{GasUnit, Measured, TemperatureUnit, Unit, write_bare_own};

/// The plate that the dose stands on, or why there is none.
pub const PLATE: &str = "dose/plate";
/// More ways than this nobody weighs against each other.
const MOST: usize = 4;

/// The ways for the form `scope`, of a batch where there is one. They stand in one part that is always there,
/// with nothing in it where there are none: what is put in before a field while it is typed in takes the
/// keyboard from it.
pub fn part(m: &Model, scope: &str, batch: Option<&Id>, ways: &[Way]) -> Part {
    let rows = ways.iter().take(MOST).enumerate();
    let rows: Vec<_> = rows
        .map(|(at, way)| {
            let name = format!("ways/{at}");
            group(name.clone(), Tag::Li, "", vec![row(m, scope, batch, &name, *way)])
        })
        .collect();
    let shown = if rows.is_empty() {
        vec![]
    } else {
        vec![
            heading("ways/heading", 2, m.words.bottle.plan.ways_out),
            group("ways", Tag::Ul, "ways-out", rows),
        ]
    };
    group("ways/all", Tag::Div, "may-be-empty", shown)
}

/// One way, as what it takes to go it.
fn row(m: &Model, scope: &str, batch: Option<&Id>, name: &str, way: Way) -> Part {
    let label = (m.words.bottle.plan.way)(m.writer(), way);
    let name = format!("{name}/go");
    let link = |route: Route| {
        let runs = vec![Run::new("", label.clone())];
        What::Link(Link { kind: "way-out", address: route.address(), runs, here: false })
    };
    let act = |act| action(name.clone(), "way-out", &label, act);
    let what = match (way, batch) {
        (Way::FinerScale(_), _) => link(Route::Gear),
        (
            Way::DoseVessel(_)
            | Way::Cooler(..)
            | Way::LowerTarget(..)
            | Way::Stronger(..)
            | Way::StrongerAndLower(..),
            _,
        ) => return act(Act::Bottle(BottleAct::TakeWay(scope.to_owned(), way))),
        (Way::NoteStart(_), Some(id)) => link(Route::EditBatch(id.clone())),
        // Due today: the form of a reading stands open there.
        (Way::ReadAgain(at) | Way::ReadOn(Some(at), _), Some(id)) if at <= m.now => {
            return act(Act::Watch(WatchAct::AddTo(id.clone())));
        }
        (_, Some(id)) => link(Route::Batch(id.clone(), Stage::Watch)),
        (_, None) => return text(name, "way-out", label),
    };
    Part::new(name, what)
}

/// Puts into the form what a way asks for.
pub fn take(m: &mut Model, scope: &str, way: Way) -> Vec<Effect> {
    let mut put = |field: &str, text: &str, unit: &str| {
        m.drafts.put(&format!("{scope}{field}"), text, unit);
    };
    let mut number = |field, own: f64, row: &'static crate::quantity::UnitRow| {
        put(field, &write_bare_own(own, row), row.symbol);
    };
    match way {
        Way::LowerTarget(target, _) | Way::StrongerAndLower(_, target, _) => {
            number("target", target.value(), GasUnit::Volumes.row());
        }
        Way::Cooler(t, _) => number("hottest", t.value(), TemperatureUnit::Celsius.row()),
        _ => {}
    }
    match way {
        Way::DoseVessel(_) => put("dosing", SugarGoes::Vessel.name(), ""),
        Way::Stronger(bottle, _) | Way::StrongerAndLower(bottle, ..) => {
            put("weakest", bottle.name(), "");
            // Those that were ticked are the weak ones.
            put("stock", "", "");
        }
        _ => {}
    }
    vec![Effect::KeepDrafts, Effect::Attend(PLATE.to_owned())]
}
