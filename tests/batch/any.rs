//! Entries of every kind with any values in them.

use fermentside::advice::bottle::history::{Past, Seal, Working};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::Bottles;
use fermentside::advice::family::{Family, Span};
use fermentside::advice::own_ends::Ended;
use fermentside::batch::{
    Added, BatchHeading, BottlesItem, BottlingRecord, Clarity, Copied, Entry, Fizz, Grounds,
    HydrometerItem, Id, MadeSafe, OpeningRecord, PitchRecord, Reading, Refractometer, SafeBy,
    Settings, SugarItem, Theme, Units, Vessel,
};
use fermentside::quantity::{
    Celsius, Estimate, Gravity, GravityUnit, LengthUnit, MassUnit, Measured, Moment,
    TemperatureUnit, Unit, VolumeUnit,
};
use fermentside::science::hydrometer::Hydrometer;
use fermentside::science::hydrometer_sample::Condition;
use fermentside::science::priming::{KeptWort, OwnSugar, Sugar};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

/// Any value of a quantity, its ends among them.
pub fn any<Q: Measured>() -> impl Strategy<Value = Q> {
    prop_oneof![8 => Q::MIN..=Q::MAX, 1 => Just(Q::MIN), 1 => Just(Q::MAX)].prop_map(Q::nearest)
}

fn estimate<Q: Measured>() -> impl Strategy<Value = Estimate<Q>> {
    let sigma = prop_oneof![9 => 0.0..10.0, 1 => Just(f64::INFINITY)];
    (any(), sigma).prop_map(|(value, sigma)| Estimate::new(value, sigma))
}

/// One of a few, so that entries meet.
pub fn identity(names: &'static [&'static str]) -> impl Strategy<Value = Id> {
    select(names).prop_map(|name| Id::new(name).expect("an identity"))
}

fn batch() -> impl Strategy<Value = Id> {
    identity(&["b1", "b2"])
}

fn instrument() -> impl Strategy<Value = Id> {
    prop_oneof![identity(&["h1", "h2"]), Just(HydrometerItem::usual_id())]
}

fn moment() -> impl Strategy<Value = Moment> {
    let clock = (1_i32..=28, 0..24_i32, 0..60_i32, 1..=12_i32, 2019..2035_i32);
    (clock, select(vec![-570, -210, 0, 60, 120, 345, 765])).prop_map(
        |((d, h, m, month, y), ahead)| {
            let text = format!("{y:04}-{month:02}-{d:02}T{h:02}:{m:02}");
            Moment::from_local(&text, ahead).expect("a moment")
        },
    )
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![3 => ".{0,20}", 1 => Just(String::new()), 1 => Just("\"\\\n\u{0}é🍺".to_owned())]
}

fn heading() -> impl Strategy<Value = BatchHeading> {
    let packet = of((any(), any()).prop_map(|(a, b): (Celsius, Celsius)| Span::new(a, b)));
    let gravities = (of(any()), of(any()), of(any()));
    let ended = (any(), any()).prop_map(|(start, end)| Ended { start, end });
    let own = proptest::collection::vec(ended, 0..3);
    (text(), moment(), any(), select(Family::ALL.to_vec()), packet, gravities, (instrument(), own))
        .prop_map(|(name, started, volume, family, packet, gravities, (hydrometer, own))| {
            BatchHeading {
                name,
                started,
                volume,
                family,
                packet,
                expected_start: gravities.0,
                expected_end: gravities.1,
                hydrometer,
                target: gravities.2,
                own_ends: own,
            }
        })
}

fn pitching() -> impl Strategy<Value = PitchRecord> {
    (batch(), moment(), of(any()), of(any()), text()).prop_map(|(batch, at, wort, yeast, note)| {
        PitchRecord { wort, yeast, note, ..PitchRecord::new(batch, at) }
    })
}

fn reading() -> impl Strategy<Value = Reading> {
    let gravity = prop_oneof![any().prop_map(Gravity::Specific), any().prop_map(Gravity::Plato)];
    let kept = (batch(), moment(), select(vec![Vessel::Main, Vessel::Satellite]), instrument());
    let conditions = vec![Condition::Still, Condition::Foam, Condition::Gassy];
    let read = (of(gravity), text(), select(conditions));
    let refractometer = (any(), any()).prop_map(|(brix, factor)| Refractometer { brix, factor });
    let more = (of(refractometer), of(select(vec![Added::Sugar, Added::Fruit, Added::Other])));
    (kept, read, of(any()), more, of(any()), of(any()), (text(), proptest::bool::ANY)).prop_map(
        |(
            (batch, at, vessel, hydrometer),
            (as_read, typed, condition),
            sample,
            (refractometer, added),
            beer,
            room,
            (note, doubtful),
        )| {
            Reading {
                batch,
                at,
                vessel,
                as_read,
                typed,
                sample,
                condition,
                hydrometer,
                refractometer,
                added,
                beer,
                room,
                note,
                doubtful,
            }
        },
    )
}

fn own_sugar() -> impl Strategy<Value = OwnSugar> {
    (any(), any()).prop_map(|(fermentable, water)| OwnSugar { fermentable, water })
}

fn sugar() -> impl Strategy<Value = Sugar> {
    let wort = (any(), any()).prop_map(|(gravity, end)| Sugar::Wort(KeptWort { gravity, end }));
    prop_oneof![select(Sugar::ALL.to_vec()), own_sugar().prop_map(Sugar::Own), wort]
}

fn bottles() -> impl Strategy<Value = Bottles> {
    (any(), select(Bottle::ALL.to_vec()), 0..=u32::MAX).prop_map(|(size, class, count)| Bottles {
        size,
        class,
        count,
    })
}

fn grounds() -> impl Strategy<Value = Grounds> {
    let seals = select(vec![Seal::Airlock, Seal::Sealed, Seal::Unsure]);
    let worked = select(vec![Working::Quiet, Working::Still, Working::Unsure]);
    let past = (of(any()), of(any()), seals, worked).prop_map(
        |(warm_for, coldest, seal, when_chilled)| Past { warm_for, coldest, seal, when_chilled },
    );
    let judged = (of(past), of(estimate()), of(any()));
    let weighed = (proptest::bool::ANY, of(any()), text());
    (judged, proptest::collection::vec(bottles(), 0..3), weighed).prop_map(
        |((past, already_in, points_left), filled, (by_bottle, scale, sugar_name))| Grounds {
            past,
            already_in,
            points_left,
            filled,
            by_bottle,
            scale,
            sugar_name,
        },
    )
}

fn bottling() -> impl Strategy<Value = BottlingRecord> {
    let kinds = (sugar(), select(Bottle::ALL.to_vec()));
    let amounts = (estimate(), any(), any(), any());
    let places = (any(), any(), of(any()), of(moment()));
    let made_safe =
        (moment(), select(SafeBy::ALL.to_vec())).prop_map(|(at, by)| MadeSafe { at, by });
    let words = (text(), text(), of(grounds()), of(made_safe));
    (batch(), moment(), kinds, amounts, places, words).prop_map(
        |(
            batch,
            at,
            (sugar, weakest),
            amounts,
            places,
            (went_on_because, note, grounds, made_safe),
        )| {
            BottlingRecord {
                batch,
                at,
                beer: amounts.0,
                sugar,
                weighed: amounts.1,
                target: amounts.2,
                warmest: places.0,
                weakest,
                hottest: places.1,
                place: places.2,
                moved: places.3,
                worst: amounts.3,
                went_on_because,
                note,
                grounds,
                made_safe,
            }
        },
    )
}

fn opening() -> impl Strategy<Value = OpeningRecord> {
    let clarity = of(select(vec![Clarity::Bright, Clarity::Hazy, Clarity::Cloudy]));
    (batch(), moment(), 1..=5_u8, clarity, text(), text(), proptest::bool::ANY).prop_map(
        |(batch, at, fizz, clarity, taste, note, burst)| OpeningRecord {
            batch,
            at,
            fizz: Fizz::new(fizz).expect("one to five"),
            clarity,
            taste,
            note,
            burst,
        },
    )
}

fn hydrometer() -> impl Strategy<Value = HydrometerItem> {
    (text(), any(), any(), any()).prop_map(|(name, reference, division, offset)| HydrometerItem {
        name,
        instrument: Hydrometer { reference, division, offset, sugar: None },
    })
}

fn settings() -> impl Strategy<Value = Settings> {
    let units = (
        select(GravityUnit::ALL.to_vec()),
        select(TemperatureUnit::ALL),
        select(VolumeUnit::ALL),
        select(MassUnit::ALL),
        select(LengthUnit::ALL),
    );
    let units = units.prop_map(|(gravity, temperature, volume, mass, height)| Units {
        gravity,
        temperature,
        volume,
        mass,
        height,
    });
    let themes = vec![Theme::Follow, Theme::Day, Theme::Night];
    let copied = (moment(), 0..9_u32, 0..9_u32);
    let copied = copied.prop_map(|(at, readings, bottled)| Copied { at, readings, bottled });
    (units, any(), select(themes), of(batch()), of(any()), of(copied)).prop_map(
        |(units, height, theme, in_hand, scale, copied)| Settings {
            units,
            height,
            theme,
            in_hand,
            scale,
            copied,
        },
    )
}

/// An entry of any kind.
pub fn entry() -> impl Strategy<Value = Entry> {
    prop_oneof![
        heading().prop_map(Entry::Batch).boxed(),
        pitching().prop_map(Entry::Pitch).boxed(),
        reading().prop_map(Entry::Reading).boxed(),
        bottling().prop_map(Entry::Bottling).boxed(),
        opening().prop_map(Entry::Opening).boxed(),
        hydrometer().prop_map(Entry::Hydrometer).boxed(),
        settings().prop_map(Entry::Settings).boxed(),
        (text(), bottles())
            .prop_map(|(name, bottles)| Entry::Bottles(BottlesItem { name, bottles }))
            .boxed(),
        (text(), own_sugar())
            .prop_map(|(name, sugar)| Entry::Sugar(SugarItem { name, sugar }))
            .boxed(),
    ]
}

/// An identity that suits a kind of entry, one of a few.
pub fn identity_for(entry: &Entry, which: usize) -> Id {
    let named = |names: [&str; 3]| Id::new(names[which % 3]).expect("an identity");
    match entry {
        Entry::Batch(_) => named(["b1", "b2", "b1"]),
        Entry::Hydrometer(_) if which % 3 == 2 => HydrometerItem::usual_id(),
        Entry::Hydrometer(_) => named(["h1", "h2", "h2"]),
        Entry::Settings(_) => Settings::id(),
        _ => named(["x1", "x2", "x3"]),
    }
}
