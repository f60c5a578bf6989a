//! The words of the fields that a bottling and the sum of the Bench share.

use crate::words::texts::texts;

texts! {
    /// What is asked for priming sugar, on bottling day and on the Bench.
    PrimingWords, PRIMING {
        beer: "Beer in the bottling vessel",
        beer_hint: "What is there now, not the batch size.",
        target: "Wished carbon dioxide",
        target_hint: "2.4 suits most beer; British types about 1.8.",
        warmest: "Warmest it has been since it went quiet",
        warmest_hint: "Not a chilled temperature: gas that left does not come back.",
        warmest_from_log: "From your readings. Not a chilled temperature: gas that left does not come back.",
        hottest: "Hottest place the bottles may come to",
        weakest: "Weakest bottle to be filled",
        weakest_decides: "Choose: the weakest decides",
        sugar: "Sugar",
        by_label: "A syrup, by its label",
        wort: "Wort kept back",
        label: "Sugars in it, by its label",
        label_hint: "Grams in 100 g of it, not in 100 mL.",
        wort_gravity: "Gravity of the wort kept back",
        wort_end: "Where it ends",
        wort_end_hint: "As the beer did.",
        height: "Height above the sea",
        give_for_sum: "Give the volume, the weakest bottle, the warmest temperature, and how level the beer is.",
        give_for_batch: "Give the volume, the bottles and the warmest temperature.",
        give_first: "Give the volume, the weakest bottle and the warmest temperature first.",
    } says {}
}
