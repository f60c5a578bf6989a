//! The words that stand for choices in stored text: once released, they never change.

use fermentside::advice::bottle::asked::{Chilled, DoseFor, SugarGoes, WarmFor};
use fermentside::advice::bottle::history::{Seal, Working};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::Size;
use fermentside::advice::family::Family;
use fermentside::advice::pitch::room_air::AirChange;
use fermentside::advice::pitch::yeast::{Dated, Kept, Method};
use fermentside::advice::thermometer::{ReadWith, Stirred, Thermometer};
use fermentside::batch::{Added, Clarity, Kind, SafeBy, Theme, Vessel};
use fermentside::choices::{Choices, YesNo};
use fermentside::quantity::{
    GasUnit, GravityUnit, LengthUnit, MassUnit, TemperatureUnit, Unit, VolumeUnit,
};
use fermentside::science::hydrometer_sample::Condition;
use fermentside::science::kit_gravity::Fermentable;
use fermentside::science::priming::Sugar;
use fermentside::science::self_heating;
use serde::Serialize;
use std::fmt::Debug;

/// The stored words of these choices, in their order.
fn words<T: Serialize>(choices: &[T]) -> String {
    let word = |choice| match serde_json::to_value(choice).expect("written") {
        serde_json::Value::String(word) => word,
        other => panic!("{other} is no word"),
    };
    choices.iter().map(word).collect::<Vec<_>>().join(" ")
}

#[test]
fn the_words_stay() {
    assert_eq!(
        words(&Family::ALL),
        "clean_ale english_ale belgian_ale german_wheat saison lager kveik cider wine unknown"
    );
    assert_eq!(
        words(&Bottle::ALL),
        "reusable_glass heavy_glass pet unknown_glass not_for_pressure"
    );
    assert_eq!(
        words(&Sugar::ALL),
        "sucrose dextrose_monohydrate glucose_anhydrous dry_malt_extract honey"
    );
    assert_eq!(Sugar::ALL.map(Sugar::name).join(" "), words(&Sugar::ALL));
    assert_eq!(words(&Condition::ALL), "still foam gassy");
    assert_eq!(words(&Seal::ALL), "airlock sealed unsure");
    assert_eq!(words(&Working::ALL), "quiet still unsure");
    assert_eq!(words(&Method::ALL), "sprinkled rehydrated");
    assert_eq!(words(&self_heating::Vessel::ALL), "bucket glass insulated water_tub");
    assert_eq!(words(&Fermentable::ALL), "malt_syrup dry_malt sucrose dextrose honey own");
    assert_eq!(words(&Clarity::ALL), "bright hazy cloudy");
    assert_eq!(words(&SafeBy::ALL), "vented kept_cold emptied");
    assert_eq!(words(&Vessel::ALL), "main satellite");
    assert_eq!(words(&Added::ALL), "sugar fruit other");
    assert_eq!(words(&Theme::ALL), "follow day night");
    assert_eq!(words(&GravityUnit::ALL), "specific_gravity plato");
    assert_eq!(words(TemperatureUnit::ALL), "celsius fahrenheit");
    assert_eq!(words(VolumeUnit::ALL), "litres us_gallons imperial_gallons");
    assert_eq!(words(MassUnit::ALL), "grams kilograms ounces pounds");
    assert_eq!(words(LengthUnit::ALL), "metres feet");
    assert_eq!(words(GasUnit::ALL), "volumes grams_per_litre");
    let kinds = Kind::ALL.map(Kind::name).join(" ");
    assert_eq!(kinds, "batch pitch reading bottling opening hydrometer settings bottles sugar");
}

/// What is half typed is kept by the same names, and found again by them.
fn kept<T: Choices + Debug + Serialize>(named: fn(&str) -> Option<T>) -> String {
    let all = T::all();
    for one in all {
        assert_eq!(named(one.name()), Some(*one));
    }
    let names = all.iter().map(|one| one.name()).collect::<Vec<_>>().join(" ");
    assert_eq!(words(all), names);
    assert_eq!(named(""), None);
    names
}

#[test]
fn the_names_of_half_typed_answers_stay() {
    assert_eq!(kept(Family::named), words(&Family::ALL));
    assert_eq!(kept(Bottle::named), words(&Bottle::ALL));
    assert_eq!(kept(Chilled::named), "no yes");
    assert_eq!(kept(WarmFor::named), "long short");
    assert_eq!(kept(DoseFor::named), "rule more");
    assert_eq!(kept(SugarGoes::named), "vessel bottles");
    assert_eq!(kept(Size::named), "250 330 341 355 375 500 568 650 750 1000");
    assert_eq!(kept(Thermometer::named), "probe strip");
    assert_eq!(kept(Stirred::named), "yes no");
    assert_eq!(kept(ReadWith::named), "probe strip still");
    assert_eq!(kept(Dated::named), "no 3 13");
    assert_eq!(kept(Kept::named), "no yes");
    assert_eq!(kept(AirChange::named), "room shut sealed");
    assert_eq!(kept(YesNo::named), "no yes");
}
