//! Plain records that several targets begin from: what matters to a test it sets itself.

use fermentside::advice::bottle::kinds::Bottle;
use fermentside::batch::{BottlingRecord, HydrometerItem, Id, Reading, Vessel};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, Gravity, Litres, Moment, SpecificGravity,
};
use fermentside::science::hydrometer_sample::Condition;
use fermentside::science::priming::Sugar;

pub fn id(text: &str) -> Id {
    Id::new(text).expect("an identity")
}

/// A still sample at 20 °C, from the fermenter, by the usual hydrometer.
pub fn reading(batch: &str, at: Moment, sg: f64) -> Reading {
    Reading {
        batch: id(batch),
        at,
        vessel: Vessel::Main,
        as_read: Some(Gravity::Specific(SpecificGravity::literal(sg))),
        typed: format!("{sg:.3}"),
        sample: Some(Celsius::literal(20.0)),
        condition: Condition::Still,
        hydrometer: HydrometerItem::usual_id(),
        refractometer: None,
        added: None,
        beer: None,
        room: None,
        note: String::new(),
        doubtful: false,
    }
}

/// 114 g of table sugar in 19 litres, in sound glass.
pub fn bottling(batch: &str, at: Moment) -> BottlingRecord {
    BottlingRecord {
        batch: id(batch),
        at,
        beer: Estimate::new(Litres::literal(19.0), 0.3),
        sugar: Sugar::Sucrose,
        weighed: Grams::literal(114.0),
        target: CarbonDioxideVolumes::literal(2.4),
        warmest: Celsius::literal(20.0),
        weakest: Bottle::ReusableGlass,
        hottest: Celsius::literal(28.0),
        place: Some(Celsius::literal(20.0)),
        moved: None,
        worst: CarbonDioxideVolumes::literal(3.1),
        went_on_because: String::new(),
        note: String::new(),
        grounds: None,
        made_safe: None,
    }
}
