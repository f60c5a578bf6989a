//! The words that stand for choices in stored text: once released, they never change.

use fermentside::advice::bottle::history::{Seal, Working};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::family::Family;
use fermentside::batch::{Added, Clarity, Kind, Theme, Vessel};
use fermentside::quantity::{
    GasUnit, GravityUnit, LengthUnit, MassUnit, TemperatureUnit, Unit, VolumeUnit,
};
use fermentside::science::hydrometer::Condition;
use fermentside::science::priming::Sugar;
use serde::Serialize;

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
    assert_eq!(words(&[Condition::Still, Condition::Foam, Condition::Gassy]), "still foam gassy");
    assert_eq!(words(&[Seal::Airlock, Seal::Sealed, Seal::Unsure]), "airlock sealed unsure");
    assert_eq!(words(&[Working::Quiet, Working::Still, Working::Unsure]), "quiet still unsure");
    assert_eq!(words(&[Clarity::Bright, Clarity::Hazy, Clarity::Cloudy]), "bright hazy cloudy");
    assert_eq!(words(&[Vessel::Main, Vessel::Satellite]), "main satellite");
    assert_eq!(words(&[Added::Sugar, Added::Fruit, Added::Other]), "sugar fruit other");
    assert_eq!(words(&[Theme::Follow, Theme::Day, Theme::Night]), "follow day night");
    assert_eq!(words(&GravityUnit::ALL), "specific_gravity plato");
    assert_eq!(words(TemperatureUnit::ALL), "celsius fahrenheit");
    assert_eq!(words(VolumeUnit::ALL), "litres us_gallons imperial_gallons");
    assert_eq!(words(MassUnit::ALL), "grams kilograms ounces pounds");
    assert_eq!(words(LengthUnit::ALL), "metres feet");
    assert_eq!(words(GasUnit::ALL), "volumes grams_per_litre");
    let kinds = Kind::ALL.map(Kind::name).join(" ");
    assert_eq!(kinds, "batch pitch reading bottling opening hydrometer settings bottles sugar");
}
