//! The words of Gear.

use super::texts::texts;
use super::write::{self, Writer};
use crate::advice::bottle::stock::Bottles;
use crate::batch::Kind;
use crate::quantity::{Grams, GravityChange, Measured, Moment, ShareUnit, Unit, write_number};
use crate::science::hydrometer::Hydrometer;
use crate::science::hydrometer_check::Solution;
use crate::science::priming::{OwnSugar, Sugar};

texts! {
    /// What stands at Gear.
    GearWords, GEAR {
        change: "Change",
        delete: "Delete",
        save: "Save",
        leave: "Leave it as it was",
        name_needed: "Give it a name.",

        hydrometers: "Hydrometers",
        add_hydrometer: "Add a hydrometer",
        hydrometer_saved: "Hydrometer saved",
        hydrometer_deleted: "Hydrometer deleted",
        name: "Name",
        made_for: "Made for",
        made_for_hint: "It is printed on its paper.",
        at_20: "20 °C / 68 °F",
        at_60_f: "60 °F / 15.6 °C",
        at_15: "15 °C",
        at_17_5: "17.5 °C",
        line_to_line: "From line to line",
        in_water: "In plain water it shows",
        in_water_hint: "Boiled and cooled, or distilled. Leave empty if you have not checked it.",
        water_at: "Temperature of that water",
        second_check: "A second check, in sugar water",
        second_check_why: "A slip of paper moves every mark alike; a wrong scale does not. With two checks the correction is straight between their marks and held beyond them.",
        to_make: "Sugar water to make",
        jar: "The jar takes",
        in_sugar: "In the sugar water it shows",
        sugar_at: "Temperature of the sugar water",
        give_target: "Give a gravity above water and the jar.",

        bottles: "Bottles on hand",
        add_bottles: "Add bottles",
        bottles_saved: "Bottles saved",
        bottles_deleted: "Bottles deleted",
        name_of_bottles: "What you call them",
        what_kind: "What kind",
        choose_kind: "Choose; if in doubt, unknown glass",
        kind_needed: "Choose what kind they are.",
        size_of_one: "Size of one",
        how_many: "How many",

        sugars: "Sugars of your own",
        add_sugar: "Add a sugar",
        sugar_saved: "Sugar saved",
        sugar_deleted: "Sugar deleted",
        name_of_sugar: "What you call it",
        ferments: "Of its dry weight ferments",
        ferments_hint: "Sugars 100, malt extract 55 to 75, lactose 0.",
        water: "Water in it",
        water_hint: "Syrups about 20, dry sugars 0.",

        units: "Units, height, scale",
        each: "One by one",
        metric: "Metric",
        us: "US",
        gravity: "Gravity",
        temperature: "Temperature",
        volume: "Volume",
        volume_hint: "A US and an imperial gallon differ by a fifth.",
        height: "Height above the sea",
        height_hint: "Thin air leaves less gas in the beer.",
        scale: "Your scale shows steps of",
        scale_hint: "A scale of 1\u{A0}g will do for a batch, and not for one bottle.",
        day_and_night: "Day and night",
        colours: "Colours",

        two_places: "Changed in two places",
        deleted: "deleted",
        keep_this: "Keep this one",
        use_this: "Use this one instead",
        unreadable: "Could not be read",
        records: "Your records",
        kept_here: "They are kept in this browser on this phone and sent nowhere. Some browsers clear pages that are not used for a week: put this page on the home screen, by the browser's menu, before the first batch, and take a copy now and then.",
        kept_nowhere: "They are kept only for as long as this page is open: this browser lets it keep nothing. Take a copy before you close it.",
        offline: "This page is kept whole on this phone: it works with no network.",
        not_offline: "Not yet kept for use without a network.",
        cautions: "Cautions",
    } says {
        change_of: fn(&str) -> String = change_of,
        delete_of: fn(&str) -> String = delete_of,
        instrument: fn(Writer, &Hydrometer) -> String = instrument,
        division: fn(GravityChange) -> String = division,
        added_to_readings: fn(Writer, GravityChange) -> String = added_to_readings,
        recipe: fn(&Solution) -> String = recipe,
        stock: fn(Writer, &Bottles) -> String = stock,
        own_sugar: fn(Writer, &OwnSugar) -> String = own_sugar,
        step_of_scale: fn(Grams) -> String = step_of_scale,
        thing: fn(Option<Kind>, &str) -> String = thing,
        saved_at: fn(&str, Moment, &str) -> String = saved_at,
    }
}

fn change_of(name: &str) -> String {
    format!("Change {name}")
}

fn delete_of(name: &str) -> String {
    format!("Delete {name}")
}

/// What an instrument is, in a line.
fn instrument(w: Writer, instrument: &Hydrometer) -> String {
    let offset = instrument.offset.points();
    let offset = if instrument.sugar.is_some() {
        "corrected by two checks".to_owned()
    } else if offset.abs() < 0.05 {
        "not corrected".to_owned()
    } else {
        format!("{} added", w.points(offset))
    };
    format!(
        "Made for {}, lines every {}, {offset}",
        w.temperature(instrument.reference),
        write_number(instrument.division.value(), 4)
    )
}

/// From line to line: as many decimals as it has.
fn division(step: GravityChange) -> String {
    let half = (step.value() * 10_000.0).round() as i64 % 10 != 0;
    write_number(step.value(), if half { 4 } else { 3 })
}

fn added_to_readings(w: Writer, offset: GravityChange) -> String {
    let points = offset.points();
    if points.abs() < 0.05 {
        "Nothing is added to its readings.".to_owned()
    } else {
        format!("{} will be added to its readings.", w.points(points))
    }
}

fn recipe(found: &Solution) -> String {
    format!(
        "Dissolve {}\u{A0}g of dry table sugar in {}\u{A0}g of water. A true one shows {} in it.",
        write_number(found.sugar.value(), 0),
        write_number(found.water.value(), 0),
        write_number(found.shows.value(), 4)
    )
}

fn stock(w: Writer, bottles: &Bottles) -> String {
    let Bottles { size, class, count } = *bottles;
    let kind = (super::NAMES.bottle)(class);
    format!("{count} × {} · {kind}", w.small(size))
}

fn own_sugar(w: Writer, own: &OwnSugar) -> String {
    let Some(each) = Sugar::Own(*own).grams_a_volume() else {
        return "Does not ferment".to_owned();
    };
    format!(
        "{}\u{A0}% dry, of which {}\u{A0}% ferments: at best {} a volume",
        write_number(ShareUnit::Percent.express(1.0 - own.water.value()), 0),
        write_number(ShareUnit::Percent.express(own.fermentable.value()), 0),
        w.a_litre(each)
    )
}

fn step_of_scale(step: Grams) -> String {
    format!("{}\u{A0}g", write_number(step.value(), write::places(step)))
}

/// What was changed in two places: its kind, and its name or that of its batch, as far as they are known.
fn thing(kind: Option<Kind>, name: &str) -> String {
    let (what, of) = match kind {
        None => ("Something saved", ""),
        Some(Kind::Batch) => ("The batch", ""),
        Some(Kind::Pitch) => ("The yeast", "of "),
        Some(Kind::Reading) => ("A reading", "of "),
        Some(Kind::Bottling) => ("Bottling day", "of "),
        Some(Kind::Opening) => ("An opened bottle", "of "),
        Some(Kind::Hydrometer) => ("The hydrometer", ""),
        Some(Kind::Settings) => ("Units and preferences", ""),
        Some(Kind::Bottles) => ("Bottles on hand:", ""),
        Some(Kind::Sugar) => ("The sugar", ""),
    };
    if name.is_empty() {
        what.trim_end_matches(':').to_owned()
    } else {
        format!("{what} {of}{name}")
    }
}

/// Which of several versions, when it was saved, and whether it says that the thing is deleted.
fn saved_at(which: &str, at: Moment, deleted: &str) -> String {
    let comma = if deleted.is_empty() { "" } else { ", " };
    format!("{which}: saved {}{comma}{deleted}", write::moment(at))
}
