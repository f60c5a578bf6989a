//! Pitching day: from hot wort and a kit to a sealed, recorded batch, by touch alone and with no network.

use crate::brewing::opened;
use crate::phone::Phone;
use std::cell::Cell;

/// Counts what a hand does: each tap, each entry and each choice from a list is one.
struct Hand<'a> {
    phone: &'a Phone,
    done: Cell<u32>,
}

impl Hand<'_> {
    fn count(&self) {
        self.done.set(self.done.get() + 1);
    }

    async fn tap(&self, words: &str) {
        self.count();
        self.phone.tap(words).await;
    }

    async fn tap_at(&self, selector: &str) {
        self.count();
        self.phone.tap_at(selector).await;
    }

    async fn type_into(&self, label: &str, text: &str) {
        self.count();
        self.phone.type_into(label, text).await;
    }

    async fn choose(&self, label: &str, option: &str) {
        self.count();
        self.phone.choose(label, option).await;
    }

    fn so_far(&self, what: &str) {
        println!("{what}: {} taps and entries so far", self.done.get());
    }
}

#[tokio::test]
async fn a_kit_brewer_gets_from_hot_wort_to_a_sealed_batch_in_under_forty_taps() {
    let (mut server, mut phone) = opened().await;
    phone.is_kept_for_offline().await;
    server.stop();
    phone.restart().await;
    phone.open(&server.address()).await;
    let hand = Hand { phone: &phone, done: Cell::new(0) };

    hand.tap("Start a batch").await;
    hand.type_into("Name", "Cellar bitter").await;
    hand.type_into("Volume in the fermenter", "20").await;
    hand.choose("Yeast", "Ale, English type").await;
    hand.tap("Start").await;
    hand.so_far("started");

    // Too hot, by the strip on the wall; ways down are shown.
    hand.type_into("Wort now", "31").await;
    hand.tap("Strip on the wall").await;
    phone.sees("Too warm for this yeast yet.").await;
    hand.type_into("Water at hand", "8").await;
    phone.sees("Cold water").await;
    hand.type_into("Clean ice at hand", "3").await;
    phone.sees("Ice: ").await;
    hand.so_far("compared");
    // Ice round the pot, an hour later, stirred.
    hand.type_into("Wort now", "19").await;
    phone.sees("Cool enough.").await;
    hand.tap("Next").await;
    hand.tap("Or by the ingredients").await;
    hand.choose("Ingredient 1", "Malt syrup (80 %)").await;
    hand.type_into("Mass of ingredient 1", "1.7").await;
    hand.choose("Ingredient 2", "Corn sugar (91 %)").await;
    hand.type_into("Mass of ingredient 2", "1").await;
    // The sample was taken before the water was mixed in.
    hand.type_into("Hydrometer reads", "1.032").await;
    hand.type_into("Sample temperature", "24").await;
    phone.sees("They differ; one more look will tell.").await;
    // Stirred, and read again.
    hand.type_into("Hydrometer reads", "1.042").await;
    phone.sees("Sample and ingredients agree.").await;
    // The longest gravity is to be seen whole in them.
    hand.phone.type_into("Hydrometer reads", "1.0425").await;
    let cut = "return [...document.querySelectorAll('input[inputmode=decimal]')]
        .filter((i) => i.offsetParent && i.scrollWidth > i.clientWidth).map((i) => i.value)";
    assert_eq!(phone.run(cut).await, serde_json::json!([]), "cut off on the screen");
    hand.so_far("the start is known");

    hand.tap("Next").await;
    hand.tap_at("[id^=pitch-][id$=-sachets] label").await;
    phone.sees("Enough yeast.").await;
    hand.tap("Sprinkled").await;
    hand.tap("Next").await;
    hand.tap("Set").await;
    hand.tap("Next").await;
    hand.type_into("Splashed or shaken for", "5").await;
    hand.tap("Next").await;
    hand.type_into("Room where it will stand", "18").await;
    phone.sees("It gets about").await;
    hand.tap("Next").await;
    hand.so_far("yeast, air and place");

    phone.sees("Pitch now, and seal.").await;
    hand.tap("The yeast is in").await;
    phone.sees("Pitched just now.").await;
    hand.so_far("sealed and recorded");
    let done = hand.done.get();
    assert!(done < 40, "{done} taps and entries");

    // It is all on record, and there after a reload.
    phone.reload().await;
    for kept in ["OG by the sample", "OG by the ingredients", "Sachets", "Splashed", "Satellite"] {
        phone.sees(kept).await;
    }
    let complaints = phone.complaints().await;
    assert!(complaints.is_empty(), "{complaints:?}");
}

#[tokio::test]
async fn half_finished_pitching_outlives_a_closed_page_and_the_timer_runs_on() {
    let (_server, phone) = opened().await;
    phone.tap("Start a batch").await;
    phone.type_into("Name", "Cellar bitter").await;
    phone.type_into("Volume in the fermenter", "20").await;
    phone.tap("Start").await;
    phone.type_into("Wort now", "19.5").await;
    phone.tap("Air").await;
    phone.tap("Start the timer").await;
    phone.sees("turn 1 of 5").await;
    // The page comes back to the step that was open.
    phone.reload().await;
    phone.sees("Cool: 19.5").await;
    phone.sees("turn 1 of 5").await;
    phone.tap("Stop the timer").await;
    phone.wait_until(
        "the minutes are noted",
        "return [...document.querySelectorAll('input')].some((i) => i.id.endsWith('aerated') && i.value !== '')",
    )
    .await;
}

#[tokio::test]
async fn what_is_noted_by_the_way_is_kept_and_half_a_sample_is_not_dropped() {
    let (_server, phone) = opened().await;
    phone.tap("Start a batch").await;
    phone.type_into("Name", "Cellar bitter").await;
    phone.type_into("Volume in the fermenter", "20").await;
    phone.tap("Start").await;
    phone.tap("Gravity").await;
    phone.tap("Or by the ingredients").await;
    phone.type_into("Ice added", "1.5").await;
    phone.type_into("Sample temperature", "24").await;
    phone.tap("Yeast").await;
    phone.tap("Age, name and weight of the yeast").await;
    phone.type_into("Name on the packet", "Old ale yeast").await;
    phone.tap("Place").await;
    phone.type_into("Where, in your words", "Under the stairs").await;

    phone.tap("The yeast goes in").await;
    phone.tap("The yeast is in").await;
    phone.says("form .form-outcome", "The sample's gravity is missing.").await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.tap("The yeast goes in").await;
    phone.tap("The yeast is in").await;
    phone.sees("Pitching saved").await;
    for kept in ["Ice added", "Old ale yeast", "Under the stairs", "OG by the sample"] {
        phone.sees(kept).await;
    }
    phone.is_well().await;
}
