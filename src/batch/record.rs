//! What each saved thing holds.

use super::id::Id;
use crate::advice::bottle::history::Past;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::Bottles;
use crate::advice::family::{Family, Span};
use crate::advice::open::SafeBy;
use crate::advice::own_ends::Ended;
use crate::json_fields::record;
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, Gravity, GravityChange, Litres, Moment, Plato,
    SpecificGravity, WortFactor,
};
use crate::science::hydrometer_sample::Condition;
use crate::science::priming::Sugar;
use crate::science::refractometer::USUAL_FACTOR;
use serde::{Deserialize, Serialize};

record! {
    /// What is known of a batch as a whole.
    pub struct BatchHeading {
        /// Its name, as the brewer wrote it.
        must name: String,
        /// Brewing day.
        must started: Moment,
        /// In the fermenter.
        must volume: Litres,
        /// The yeast.
        must family: Family,
        /// The packet's own range for pitching, if it has one.
        may packet: Option<Span<Celsius>>,
        /// Starting gravity that kit or recipe states.
        may expected_start: Option<SpecificGravity>,
        /// Final gravity that kit or recipe states.
        may expected_end: Option<SpecificGravity>,
        /// The instrument in use.
        must hydrometer: Id,
        /// Carbon dioxide the brewer wishes for, once it was said.
        may target: Option<CarbonDioxideVolumes>,
        /// Where own earlier batches with this yeast ended, once the brewer took that for the expected end.
        may own_ends: Vec<Ended>,
    }
}

impl BatchHeading {
    /// Of a batch of which nothing is known but when it was begun and what it is read with.
    #[must_use]
    pub const fn begun(started: Moment, hydrometer: Id) -> Self {
        Self {
            name: String::new(),
            started,
            volume: Litres::literal(20.0),
            family: Family::Unknown,
            packet: None,
            expected_start: None,
            expected_end: None,
            hydrometer,
            target: None,
            own_ends: vec![],
        }
    }
}

crate::choices! {
    /// Which vessel a reading is from.
    pub enum Vessel {
        /// The batch itself.
        Main = "main",
        /// The fast-ferment sample beside it.
        Satellite = "satellite",
    }
}

/// What a refractometer showed, and what its mark is divided by in unfermented wort.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Refractometer {
    /// Degrees Brix, which are degrees Plato of plain sugar.
    pub brix: Plato,
    /// The wort factor.
    #[serde(default = "usual_factor")]
    pub factor: WortFactor,
}

const fn usual_factor() -> WortFactor {
    USUAL_FACTOR
}

crate::choices! {
    /// What was added to beer that already ferments. Any of it makes the expected end uncertain.
    pub enum Added {
        /// Sugar = "sugar", honey, syrup, more malt.
        Sugar = "sugar",
        /// Fruit or juice.
        Fruit = "fruit",
        /// Something else that ferments.
        Other = "other",
    }
}

record! {
    /// One look at the beer, exactly as it was read. Corrections are worked out from it and never over it.
    pub struct Reading {
        /// The batch.
        must batch: Id,
        /// When.
        must at: Moment,
        /// From where.
        must vessel: Vessel,
        /// Gravity as read, on the scale it was read on.
        may as_read: Option<Gravity>,
        /// What was typed for it, letter by letter.
        may typed: String,
        /// Of the liquid in the jar.
        may sample: Option<Celsius>,
        /// How the sample stood.
        must condition: Condition,
        /// Read with this instrument.
        must hydrometer: Id,
        /// What a refractometer showed, with or without a hydrometer beside it.
        may refractometer: Option<Refractometer>,
        /// Something that ferments was added then, after the reading.
        may added: Option<Added>,
        /// Of the beer in the fermenter.
        may beer: Option<Celsius>,
        /// Of the room.
        may room: Option<Celsius>,
        /// Anything else.
        may note: String,
        /// Something about it was odd; the brewer was asked and kept it.
        may doubtful: bool,
    }
}

record! {
    /// The bottles were made safe after one gushed or burst.
    pub struct MadeSafe {
        /// When.
        must at: Moment,
        /// How.
        must by: SafeBy,
    }
}

record! {
    /// It was bottled, with what and on what grounds.
    pub struct BottlingRecord {
        /// The batch.
        must batch: Id,
        /// When.
        must at: Moment,
        /// Beer in the bottling vessel.
        must beer: Estimate<Litres>,
        /// The sugar.
        must sugar: Sugar,
        /// How much was weighed.
        must weighed: Grams,
        /// What it was for.
        must target: CarbonDioxideVolumes,
        /// Warmest since the fermentation all but ended.
        must warmest: Celsius,
        /// The weakest bottle.
        must weakest: Bottle,
        /// The hottest place they may stand.
        must hottest: Celsius,
        /// Where they stand.
        may place: Option<Celsius>,
        /// When they came to where they stand, if that was later.
        may moved: Option<Moment>,
        /// Worst-case carbon dioxide as judged on the day.
        must worst: CarbonDioxideVolumes,
        /// The brewer's reason, when the log did not say finished.
        may went_on_because: String,
        /// Anything else.
        may note: String,
        /// What it was judged on; older records have none.
        may_record grounds: Option<Grounds>,
        /// What was done, the last time a bottle had gushed or burst.
        may_record made_safe: Option<MadeSafe>,
    }
}

record! {
    /// What a bottling was judged on.
    #[derive(Default)]
    pub struct Grounds {
        /// What happened to the beer after it went quiet.
        may past: Option<Past>,
        /// Carbon dioxide already in, as the dose counted it.
        may already_in: Option<Estimate<CarbonDioxideVolumes>>,
        /// The most that could be left to ferment.
        may points_left: Option<GravityChange>,
        /// The bottles that were filled.
        may filled: Vec<Bottles>,
        /// The sugar was weighed into each bottle.
        may by_bottle: bool,
        /// What the scale showed at the finest.
        may scale: Option<Grams>,
        /// What the brewer calls the sugar, if it was an own one.
        may sugar_name: String,
    }
}

/// How much fizz, one to five.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct Fizz(u8);

impl Fizz {
    /// One (flat) to five (gushing).
    #[must_use]
    pub fn new(value: u8) -> Option<Self> {
        (1..=5).contains(&value).then_some(Self(value))
    }

    /// The number.
    #[must_use]
    pub fn value(self) -> u8 {
        self.0
    }

    /// It gushed: the most there is.
    #[must_use]
    pub fn gushed(self) -> bool {
        self.0 == 5
    }
}

impl TryFrom<u8> for Fizz {
    type Error = &'static str;
    fn try_from(value: u8) -> Result<Self, &'static str> {
        Self::new(value).ok_or("fizz is 1 to 5")
    }
}

impl From<Fizz> for u8 {
    fn from(fizz: Fizz) -> u8 {
        fizz.0
    }
}

crate::choices! {
    /// How clear it was.
    pub enum Clarity {
        /// Bright.
        Bright = "bright",
        /// Hazy.
        Hazy = "hazy",
        /// Cloudy.
        Cloudy = "cloudy",
    }
}

record! {
    /// A bottle was opened.
    pub struct OpeningRecord {
        /// The batch.
        must batch: Id,
        /// When.
        must at: Moment,
        /// How much fizz.
        must fizz: Fizz,
        /// How clear.
        may clarity: Option<Clarity>,
        /// How it tasted.
        may taste: String,
        /// Anything else.
        may note: String,
        /// It burst by itself.
        may burst: bool,
    }
}
