//! Everything that is asked on pitching day.

use crate::advice::pitch::room_air::AirChange;
use crate::advice::pitch::yeast::{Dated, Kept, Method};
use crate::advice::thermometer::ReadWith;
use crate::app::ask::{
    Ask, AskGravity, Asked, AskedGravity, Chosen, answer, answer_or_none, ask, ask_gravity, choice,
    listed_or_none, moment, words_field,
};
use crate::app::fields::{SAMPLE, VOLUME, temperature, volume};
use crate::app::model::Model;
use crate::app::ways_down::Round;
use crate::batch::{GoesBy, Id, Summary};
use crate::choices::YesNo;
use crate::quantity::{
    Bounds, Celsius, CubicMetres, Grams, Hours, Litres, MassUnit, MinuteUnit, Moment, RoomUnit,
    Share, ShareUnit, SpecificGravity, VolumeUnit,
};
use crate::science::kit_gravity::Fermentable;
use crate::science::self_heating::Vessel;

const ANY: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));
const ROOM: Bounds<Celsius> = Bounds::new(Celsius::literal(-10.0), Celsius::literal(50.0));
/// So many different things go into a kit at most.
const ROWS: usize = 5;

/// One row of the ingredients.
#[derive(Clone, Debug)]
pub struct Row {
    /// What it is; nothing when the row is not used.
    pub kind: Chosen<Option<Fermentable>>,
    /// How much.
    pub mass: Asked<Grams>,
    /// Its share of extract, where the brewer knows better than the usual.
    pub share: Asked<Share>,
}

/// The fields of pitching day.
#[derive(Clone, Debug)]
pub struct Day {
    pub wort: Asked<Celsius>,
    pub read_with: Chosen<ReadWith>,
    pub volume: Asked<Litres>,
    pub vessel_holds: Asked<Litres>,
    pub water: Asked<Celsius>,
    pub ice: Asked<Grams>,
    pub round: Round,
    pub earlier: Asked<Celsius>,
    pub between: Asked<Hours>,
    pub added: Asked<Litres>,
    pub ice_added: Asked<Grams>,
    pub rows: Vec<Row>,
    pub sample: AskedGravity,
    pub sample_at: Asked<Celsius>,
    pub goes_by: Chosen<GoesBy>,
    pub yeast: Asked<Grams>,
    pub sachets: Chosen<Option<Sachets>>,
    pub sachet: Asked<Grams>,
    pub product: Chosen<String>,
    pub dated: Chosen<Dated>,
    pub kept: Chosen<Kept>,
    pub method: Chosen<Option<Method>>,
    pub satellite: Chosen<Option<YesNo>>,
    pub aerated: Asked<Hours>,
    pub room: Asked<Celsius>,
    pub vessel: Chosen<Vessel>,
    pub room_size: Asked<CubicMetres>,
    pub air: Chosen<AirChange>,
    pub vessels: Chosen<Vessels>,
    pub stands: Chosen<String>,
    pub light: Chosen<YesNo>,
    pub tube: Chosen<YesNo>,
    pub at: Asked<Moment>,
    pub note: Chosen<String>,
}

crate::choices! {
    /// How many sachets.
    pub enum Sachets {
        /// One.
        One = "1",
        /// Two.
        Two = "2",
        /// Three.
        Three = "3",
        /// Four.
        Four = "4",
        /// Six.
        Six = "6",
    }

    /// How many vessels ferment in one room.
    pub enum Vessels {
        /// This one.
        One = "1",
        /// Two.
        Two = "2",
        /// Three.
        Three = "3",
        /// Five.
        Five = "5",
    }
}

impl Sachets {
    /// As a number.
    pub const fn count(self) -> u32 {
        match self {
            Self::One => 1,
            Self::Two => 2,
            Self::Three => 3,
            Self::Four => 4,
            Self::Six => 6,
        }
    }
}

impl Vessels {
    /// As a number.
    pub const fn count(self) -> u32 {
        match self {
            Self::One => 1,
            Self::Two => 2,
            Self::Three => 3,
            Self::Five => 5,
        }
    }
}

/// Where the drafts of a batch's pitching day are kept.
pub fn scope(batch: &Id) -> String {
    format!("pitch/{}/", batch.as_str())
}

/// What is asked, and a line of help.
type Label = (&'static str, &'static str);

/// A few grams.
fn grams(m: &Model, name: String, (label, hint): Label) -> Asked<Grams> {
    let step = |unit| match unit {
        MassUnit::Grams => 1.0,
        MassUnit::Ounces => 0.5,
        _ => 0.1,
    };
    let bounds = Bounds::new(Grams::literal(0.5), Grams::literal(100_000.0));
    let (unit, first, start) = (MassUnit::Grams, None, Grams::literal(11.0));
    ask(m, Ask { name, label, hint, unit, bounds, step, first, start })
}

fn kilograms(m: &Model, name: String, (label, hint): Label) -> Asked<Grams> {
    let step = |unit| match unit {
        MassUnit::Grams => 50.0,
        MassUnit::Ounces => 1.0,
        _ => 0.1,
    };
    let bounds = Bounds::new(Grams::literal(1.0), Grams::literal(200_000.0));
    let (unit, first, start) = (m.units().heavy(), None, Grams::literal(1500.0));
    ask(m, Ask { name, label, hint, unit, bounds, step, first, start })
}

fn minutes(
    m: &Model,
    name: String,
    label: &'static str,
    shortest: Hours,
    start: f64,
) -> Asked<Hours> {
    let bounds = Bounds::new(shortest, Hours::literal(72.0));
    let step = |unit| if unit == MinuteUnit::Minutes { 1.0 } else { 0.5 };
    let (unit, first, start) = (MinuteUnit::Minutes, None, Hours::literal(start));
    ask(m, Ask { name, label, hint: "", unit, bounds, step, first, start })
}

/// Water that was added, from five litres on.
fn added(m: &Model, name: String) -> Asked<Litres> {
    let words = &m.words.pitch;
    let (label, hint) = (words.start.added, words.day.empty_for_none);
    let step = |unit| if unit == VolumeUnit::Litres { 0.5 } else { 0.1 };
    let (unit, first, start) = (m.units().volume, None, Litres::literal(5.0));
    ask(m, Ask { name, label, hint, unit, bounds: VOLUME, step, first, start })
}

fn row(m: &Model, scope: &str, index: usize) -> Row {
    let words = &m.words.pitch.start;
    let name = |field: &str| format!("{scope}{field}-{}", index + 1);
    let [kind, mass, share] = (words.row)(index);
    Row {
        kind: listed_or_none(m, &name("kind"), (kind, ""), words.ingredient, words.choose),
        mass: kilograms(m, name("mass"), (mass, "")),
        share: ask(
            m,
            Ask {
                name: name("share"),
                label: share,
                hint: words.share_hint,
                unit: ShareUnit::Percent,
                bounds: Bounds::new(Share::literal(0.01), Share::literal(1.0)),
                step: |_| 1.0,
                first: None,
                start: Share::literal(0.8),
            },
        ),
    }
}

fn sample(m: &Model, name: String) -> AskedGravity {
    let words = &m.words.pitch.start;
    let (label, hint, unit) = (words.reads, words.reads_hint, m.units().gravity);
    let start = SpecificGravity::literal(1.045);
    ask_gravity(m, AskGravity { name, label, hint, unit, first: None, start })
}

fn room_size(m: &Model, name: String) -> Asked<CubicMetres> {
    let words = &m.words.pitch.place;
    let (label, hint, unit) = (words.room_size, words.room_size_hint, m.units().room());
    let bounds = Bounds::new(CubicMetres::literal(0.05), CubicMetres::literal(1000.0));
    let step = |unit| if unit == RoomUnit::CubicMetres { 1.0 } else { 50.0 };
    let (first, start) = (None, CubicMetres::literal(10.0));
    ask(m, Ask { name, label, hint, unit, bounds, step, first, start })
}

/// Set or not: set stands first, for that is the advice.
fn satellite(m: &Model, name: &str) -> Chosen<Option<YesNo>> {
    let words = &m.words.pitch.yeast;
    let option = |one: YesNo| (Some(one), one.name(), (words.set)(one));
    choice(m, name, (words.the_satellite_is, ""), &[YesNo::Yes, YesNo::No].map(option), None)
}

impl Day {
    /// The fields of one batch's pitching day.
    pub fn of(m: &Model, s: &Summary) -> Self {
        let words = &m.words.pitch;
        let (day, cool, ways, start) = (&words.day, &words.cool, &words.ways, &words.start);
        let (yeast, place) = (&words.yeast, &words.place);
        let scope = scope(&s.id);
        let name = |field: &str| format!("{scope}{field}");
        let degrees =
            |field, label, bounds, start| temperature(m, name(field), label, bounds, None, start);
        let free = |field, label, long| words_field(m, &name(field), label, "", long);
        let yes_no = |field, label| answer(m, &name(field), (label, ""), day.yes_no, YesNo::No);
        let none = day.empty_for_none;
        Self {
            wort: degrees("wort", (cool.wort, cool.wort_hint), ANY, 20.0),
            read_with: answer(
                m,
                &name("thermometer"),
                (cool.read_with, ""),
                cool.read_in,
                ReadWith::Probe,
            ),
            volume: volume(m, name("volume"), (ways.in_vessel, ""), Some(s.heading.volume)),
            vessel_holds: volume(m, name("holds"), (ways.holds, ""), None),
            water: degrees("water", (ways.water, ways.water_hint), ANY, 8.0),
            ice: kilograms(m, name("ice"), (ways.ice, none)),
            round: Round::of(m, &scope),
            earlier: degrees("earlier", (ways.earlier, ""), ANY, 40.0),
            between: minutes(m, name("between"), ways.between, Hours::literal(0.01), 0.5),
            added: added(m, name("added")),
            ice_added: kilograms(m, name("ice-added"), (start.ice_added, none)),
            rows: (0..ROWS).map(|index| row(m, &scope, index)).collect(),
            sample: sample(m, name("sample")),
            sample_at: degrees("sample-at", (start.sample_at, start.sample_at_hint), SAMPLE, 20.0),
            goes_by: answer(m, &name("goes-by"), (start.goes_by, ""), start.which, GoesBy::Sample),
            yeast: grams(m, name("yeast"), (yeast.dry_yeast, yeast.dry_yeast_hint)),
            sachets: answer_or_none(m, &name("sachets"), (yeast.sachets, ""), Sachets::name),
            sachet: grams(m, name("sachet"), (yeast.sachet, yeast.sachet_hint)),
            product: free("product", yeast.product, false),
            dated: answer(m, &name("past"), (yeast.their_date, ""), yeast.dated, Dated::InDate),
            kept: answer(m, &name("kept-warm"), (yeast.they, ""), yeast.kept, Kept::Cool),
            method: answer_or_none(m, &name("method"), (yeast.goes_in, ""), yeast.method),
            satellite: satellite(m, &name("satellite")),
            // A timer that is stopped at once has run for some seconds.
            aerated: minutes(
                m,
                name("aerated"),
                words.air.aerated,
                Hours::literal(0.001),
                1.0 / 12.0,
            ),
            room: degrees("room", (place.room, ""), ROOM, 19.0),
            vessel: answer(m, &name("vessel"), (place.stands_in, ""), place.vessel, Vessel::Bucket),
            room_size: room_size(m, name("room-size")),
            air: answer(m, &name("air"), (place.that_is, ""), place.air, AirChange::Room),
            vessels: answer(m, &name("vessels"), (place.vessels, ""), Vessels::name, Vessels::One),
            stands: free("stands", place.where_words, false),
            light: yes_no("light", place.in_light),
            tube: yes_no("tube", place.tube),
            at: moment(m, &name("at"), day.pitched, None),
            note: free("note", day.note, true),
        }
    }
}
