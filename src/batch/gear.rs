//! Gear: the instruments, bottles and sugars, and how the brewer writes.

use super::id::Id;
use crate::advice::bottle::dosing::Weighing;
use crate::advice::bottle::stock::Bottles;
use crate::json::{Tree, Wrong};
use crate::json_fields::{FromFields, record};
use crate::quantity::{
    BottleUnit, Grams, GravityUnit, LengthUnit, MassUnit, Metres, Moment, RoomUnit,
    TemperatureUnit, VolumeUnit,
};
use crate::science::hydrometer::Hydrometer;
use crate::science::priming::OwnSugar;
use serde::{Deserialize, Deserializer, Serialize, de};

/// A hydrometer with a name.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HydrometerItem {
    /// What the brewer calls it.
    pub name: String,
    /// What it is.
    #[serde(flatten)]
    pub instrument: Hydrometer,
}

// One flat object; serde's own flattening would read it by way of a tree of its own.
impl FromFields for HydrometerItem {
    fn from_fields(tree: &Tree) -> Result<Self, Wrong> {
        let instrument = Hydrometer {
            reference: tree.must("reference")?,
            division: tree.must("division")?,
            offset: tree.must("offset")?,
            sugar: tree.may("sugar")?,
        };
        Ok(Self { name: tree.must("name")?, instrument })
    }
}

impl<'de> Deserialize<'de> for HydrometerItem {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        Self::from_fields(&Tree::deserialize(from)?).map_err(de::Error::custom)
    }
}

impl HydrometerItem {
    /// The instrument that is there before any is entered.
    #[must_use]
    pub fn usual() -> Self {
        Self { name: "My hydrometer".to_owned(), instrument: Hydrometer::USUAL }
    }

    /// Its identity: the same on every device.
    #[must_use]
    pub fn usual_id() -> Id {
        Id::random(*b"hydromtr")
    }
}

record! {
    /// Bottles on hand.
    pub struct BottlesItem {
        /// What the brewer calls them.
        must name: String,
        /// What they are.
        must bottles: Bottles,
    }
}

record! {
    /// A sugar of the brewer's own.
    pub struct SugarItem {
        /// What the brewer calls it.
        must name: String,
        /// What it is.
        must sugar: OwnSugar,
    }
}

record! {
    /// The units a brewer writes in.
    #[derive(Copy, Eq)]
    pub struct Units {
        /// Gravity.
        must gravity: GravityUnit,
        /// Temperature.
        must temperature: TemperatureUnit,
        /// Volume.
        must volume: VolumeUnit,
        /// Small masses: sugar and yeast.
        must mass: MassUnit,
        /// Height.
        must height: LengthUnit,
    }
}

impl Units {
    /// Metric.
    pub const METRIC: Self = Self {
        gravity: GravityUnit::SpecificGravity,
        temperature: TemperatureUnit::Celsius,
        volume: VolumeUnit::Litres,
        mass: MassUnit::Grams,
        height: LengthUnit::Metres,
    };
    /// As used in the United States; sugar is still best weighed in grams.
    pub const US: Self = Self {
        gravity: GravityUnit::SpecificGravity,
        temperature: TemperatureUnit::Fahrenheit,
        volume: VolumeUnit::UsGallons,
        mass: MassUnit::Grams,
        height: LengthUnit::Feet,
    };

    /// The unit of kilograms that goes with the volumes.
    #[must_use]
    pub const fn heavy(self) -> MassUnit {
        match self.volume {
            VolumeUnit::Litres => MassUnit::Kilograms,
            _ => MassUnit::Pounds,
        }
    }

    /// The unit of bottles and cups that goes with the volumes.
    ///
    /// ```
    /// use fermentside::{batch::Units, quantity::BottleUnit};
    ///
    /// assert_eq!(Units::US.bottle(), BottleUnit::UsFluidOunces);
    /// ```
    #[must_use]
    pub const fn bottle(self) -> BottleUnit {
        match self.volume {
            VolumeUnit::Litres => BottleUnit::Millilitres,
            VolumeUnit::UsGallons => BottleUnit::UsFluidOunces,
            VolumeUnit::ImperialGallons => BottleUnit::ImperialFluidOunces,
        }
    }

    /// The unit of rooms that goes with the volumes.
    #[must_use]
    pub const fn room(self) -> RoomUnit {
        match self.volume {
            VolumeUnit::Litres => RoomUnit::CubicMetres,
            _ => RoomUnit::CubicFeet,
        }
    }
}

crate::choices! {
    /// Day or night.
    pub enum Theme {
        /// As the phone.
        Follow = "follow",
        /// Always day.
        Day = "day",
        /// Always night.
        Night = "night",
    }
}

record! {
    /// The brewer's settings.
    pub struct Settings {
        /// Units.
        must_record units: Units,
        /// Height above the sea.
        must height: Metres,
        /// Day or night.
        must theme: Theme,
        /// The batch in hand.
        may in_hand: Option<Id>,
        /// What the kitchen scale shows at the finest; `None` for the usual.
        may scale: Option<Grams>,
        /// The last copy that was handed out of this browser.
        may_record copied: Option<Copied>,
    }
}

record! {
    /// What was in a copy when it was handed out.
    pub struct Copied {
        /// When.
        must at: Moment,
        /// How many readings there were.
        must readings: u32,
        /// How many batches were bottled.
        must bottled: u32,
    }
}

impl Settings {
    /// The one identity of the settings.
    #[must_use]
    pub fn id() -> Id {
        Id::random(*b"settings")
    }

    /// What the kitchen scale shows at the finest: a gram, unless said otherwise.
    #[must_use]
    pub fn scale(&self) -> Grams {
        self.scale.unwrap_or(Weighing::USUAL.scale)
    }

    /// Whether both ask for the same. The batch in hand and the last copy are no wishes but where one is:
    /// two tabs that each took a batch in hand do not contradict each other.
    #[must_use]
    pub fn same_wishes(&self, other: &Self) -> bool {
        let here = |settings: &Self| Self { in_hand: None, copied: None, ..settings.clone() };
        here(self) == here(other)
    }
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            units: Units::METRIC,
            height: Metres::literal(0.0),
            theme: Theme::Follow,
            in_hand: None,
            scale: None,
            copied: None,
        }
    }
}
