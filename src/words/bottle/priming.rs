//! The words of the fields that a bottling and the sum of the Bench share.

use crate::words::texts::texts;

texts! {
    /// What is asked for priming sugar, on bottling day and on the Bench.
    PrimingWords, PRIMING {
        beer: "Beer to bottle",
        beer_hint: "What is in the bottling vessel now.",
        target: "Carbonation",
        target_hint: "2.4 volumes suit most beer, 1.8 British ales.",
        warmest: "Warmest since it ended",
        warmest_hint: "Leave out any chilling: gas that left does not come back.",
        warmest_from_log: "By your readings, without any chilling.",
        hottest: "Hottest they may stand",
        weakest: "Weakest bottle",
        weakest_decides: "Choose: the weakest decides",
        sugar: "Sugar",
        by_label: "A syrup, by its label",
        wort: "Wort kept back",
        label: "Sugars in it, by its label",
        label_hint: "Per cent by weight, not by volume.",
        wort_gravity: "Gravity of the wort kept back (OG)",
        wort_end: "Where that wort ends (FG)",
        wort_end_hint: "As the beer did.",
        height: "Height above the sea",
        the_volume: "the volume",
        the_bottles: "the bottles",
        the_warmest: "the warmest temperature",
        the_coldest: "how cold it got",
        the_carbonation: "the carbonation",
        the_sugar: "what the sugar is",
        the_hottest: "the hottest place",
        how_level: "the two readings that agree",
        give_first: "Give the volume, the bottles and the warmest temperature first.",
    } says {}
}
