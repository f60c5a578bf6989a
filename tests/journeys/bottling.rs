//! Bottling day and after: from a finished batch to a label, what stops it, and bottles that worry.

use crate::brewing::opened;
use crate::cellar::in_bottles;
use crate::noticing::lines;
use crate::phone::Phone;
use serde_json::json;

/// Bottles on hand, noted in Gear.
async fn has_bottles(phone: &Phone, name: &str, kind: &str, size: &str, count: &str) {
    phone.go("#/gear").await;
    phone.tap("Add bottles").await;
    phone.type_into("What you call them", name).await;
    phone.choose("What kind", kind).await;
    phone.type_into("Size of one", size).await;
    phone.type_into("How many", count).await;
    phone.tap("Save").await;
    phone.sees("Bottles saved").await;
}

async fn is_finished(phone: &Phone) -> String {
    phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await
}

/// Fills in what a finished beer needs, and bottles it 25 days ago.
async fn is_bottled(phone: &Phone) -> String {
    let batch = is_finished(phone).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.bottles().await;
    batch
}

#[tokio::test]
async fn from_a_finished_batch_to_a_printed_label_with_no_network() {
    let (mut server, phone) = opened().await;
    phone.is_kept_for_offline().await;
    server.stop();
    has_bottles(&phone, "Brown halves", "Sound", "500", "60").await;
    has_bottles(&phone, "Swing-tops", "Heavy", "750", "4").await;
    let batch = is_finished(&phone).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.tap("Brown halves: 60").await;
    phone.tap("Swing-tops: 4").await;
    phone.says(".answer .answer-main", " g ±").await;
    // 4 of 750 mL and 32 of 500 mL are 19 L.
    phone.sees("4\u{A0}×\u{A0}750").await;
    phone.sees("32\u{A0}×\u{A0}500").await;
    phone.tap("It is bottled").await;
    phone.sees("In the bottle").await;
    phone.sees("4\u{A0}×\u{A0}750\u{A0}mL, 32\u{A0}×\u{A0}500\u{A0}mL").await;

    phone
        .run("window.print = () => { window.printed = document.querySelectorAll('.label').length }")
        .await;
    phone.tap("Print labels").await;
    phone.wait_until("the labels are printed", "return window.printed === 36").await;
    phone.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    let shown = "return [...document.querySelectorAll('main > *')].filter((e) => e.checkVisibility()).map((e) => e.className)";
    assert_eq!(lines(&phone.run(shown).await), ["paper"]);
    let label = phone.text_of(".label").await;
    for words in ["Cellar bitter", "Bottled", "% ±", "vol", "Pour gently, keep cool."] {
        assert!(label.contains(words), "{words:?} is missing: {label}");
    }
    let colours = "const style = getComputedStyle(document.querySelector('.label p'));
      return style.color + getComputedStyle(document.documentElement).backgroundColor";
    assert_eq!(phone.run(colours).await, "rgb(0, 0, 0)rgb(255, 255, 255)");
    phone.devtools("Page.printToPDF", json!({})).await;
    phone.devtools("Emulation.setEmulatedMedia", json!({ "media": "" })).await;

    phone.tap("Print the batch sheet").await;
    phone.wait_until("the sheet is printed", "return window.printed === 0").await;
    let sheet = phone.run("return document.querySelector('.paper').textContent").await;
    for words in ["Readings", "1.048", "Filled", "Warmest since it ended"] {
        assert!(sheet.as_str().unwrap().contains(words), "{words:?} is missing: {sheet}");
    }
    // What fails without a network may be complained of; the page itself goes on.
    assert_eq!(phone.count("html[data-stopped]").await, 0);
}

#[tokio::test]
async fn nothing_of_a_printed_sheet_is_cut() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(in_bottles("b", 20.0)).await;
    phone.go("#/batch/b/bottle").await;
    phone.run("window.print = () => { window.printed = true }").await;
    phone.tap("Print the batch sheet").await;
    phone.wait_until("the sheet is printed", "return window.printed === true").await;
    phone.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
    // A4 between its margins.
    phone.screen(688, 1000).await;
    let cut = "const all = [...document.querySelectorAll('.paper *')].filter((e) => e.checkVisibility());
      return all.filter((e) => !e.closest('title, desc') && e.getBoundingClientRect().right > innerWidth + 1)
        .map((e) => `${e.tagName} ${e.textContent.slice(0, 30)}`)";
    assert_eq!(lines(&phone.run(cut).await), Vec::<String>::new());
    assert!(phone.count(".paper svg text").await > 5);
    phone.is_well().await;
}

#[tokio::test]
async fn too_soon_and_in_thin_glass_it_is_stopped_and_one_hears_why() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.021", 30.0), ("1.020", 26.0)]).await;
    phone.go(&format!("{batch}bottle")).await;
    // The place where it will be said is there before there is anything to say.
    phone.run("window.plate = document.querySelector('.plate')").await;
    let heard = "const region = window.plate.isConnected ? window.plate : null;
      return region.getAttribute('role') + ': ' + region.textContent.replace(/\\s+/g, ' ')";
    phone.says(".answer", "No dose").await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.choose("Weakest bottle", "Thin").await;
    phone.says(".answer", "No dose").await;
    phone.draws().await;
    let said = phone.run(heard).await;
    let said = said.as_str().unwrap();
    for words in ["status: ", "Stop", "do not show a finished fermentation", "above the ceiling"] {
        assert!(said.contains(words), "{words:?} is not heard: {said}");
    }
    // Never less sugar; only time.
    phone.sees("Less sugar is no answer to beer that may still ferment").await;
    phone.sees_no("Less fizz").await;
    // Stronger glass stops being a matter of glass, and waiting remains.
    phone.choose("Weakest bottle", "Square").await;
    phone.draws().await;
    assert!(phone.run(heard).await.as_str().unwrap().contains("not made for pressure"));
    phone.is_well().await;
}

#[tokio::test]
async fn level_for_a_day_it_is_told_when_to_read_again() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 2.1), ("1.010", 1.0)]).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.choose("Weakest bottle", "Sound").await;
    phone.says(".answer", "No dose").await;
    phone.sees("Ways to a dose").await;
    phone.sees("Read it again on").await;
    phone.is_well().await;
}

#[tokio::test]
async fn what_if_changes_nothing_until_it_is_taken_over() {
    let (_server, phone) = opened().await;
    let batch = is_finished(&phone).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.choose("Weakest bottle", "Sound").await;
    phone.says(".answer .answer-main", "122 g ±").await;
    phone.tap("Assumed").await;
    phone.tap("What if").await;
    for _ in 0..4 {
        phone.tap("Volumes of CO₂: less").await;
    }
    phone.says(".what-if .plain-answer", "Go: 91 g").await;
    phone.says(".answer .answer-main", "122 g ±").await;
    assert_eq!(phone.value_in("Carbonation").await, "2.40");
    phone.tap("Put them back").await;
    phone.says(".what-if .plain-answer", "Go: 122 g").await;
    phone.tap("Volumes of CO₂: less").await;
    phone.tap("Use these").await;
    assert_eq!(phone.value_in("Carbonation").await, "2.30");
    phone.says(".answer .answer-main", "114 g ±").await;
    phone.is_well().await;
}

#[tokio::test]
async fn beer_closed_in_the_cold_has_two_ends() {
    let (_server, phone) = opened().await;
    let batch = is_finished(&phone).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.choose("Weakest bottle", "Sound").await;
    phone.says(".answer .answer-main", "122 g ±").await;
    phone.tap("Yes").await;
    // How cold is asked before any dose.
    phone.says(".answer", "give how cold it got").await;
    phone.type_into("Coldest it got", "2").await;
    phone.tap("Closed tight").await;
    phone.sees("It may hold").await;
    phone.says(".answer", "No dose").await;
    phone.sees("Let its gas go, in a warm room under an airlock until").await;
    phone.tap("What if").await;
    phone.all_in_sight().await;
    assert_eq!(phone.barriers().await, Vec::<String>::new());
    phone.tap("Beer that holds more").await;
    phone.says(".answer .answer-main", " g ±").await;
    phone.tap("Under an airlock").await;
    phone.says(".answer .answer-main", "122 g ±").await;
    phone.is_well().await;
}

#[tokio::test]
async fn gushing_bottles_are_made_safe_first() {
    let (_server, phone) = opened().await;
    let batch = is_bottled(&phone).await;
    phone.go(&format!("{batch}open")).await;
    phone.sees("Carbonation expected").await;
    phone.tap("Something is wrong").await;
    phone.tap("All of them gush").await;
    phone.sees("First make them safe").await;
    let steps = lines(&phone.run("return [...document.querySelectorAll('.notice-grave li')].map((li) => li.innerText)").await);
    let first =
        ["Go away", "Before you go near", "Leave them in their closed case", "Chill them all"];
    for (step, begins) in steps.iter().zip(first) {
        assert!(step.starts_with(begins), "{step:?} is not {begins:?}");
    }
    assert!(steps.last().unwrap().contains("leave them cold and covered"), "{steps:?}");
    phone.sees("at worst").await;
    phone.tap("What may be behind it").await;
    phone.sees("It had not finished. To tell:").await;
    phone.all_in_sight().await;
    assert_eq!(phone.barriers().await, Vec::<String>::new());
    for width in [280, 360] {
        phone.screen(width, 640).await;
        assert_eq!(phone.sideways_scroll().await, 0, "{width}");
    }
    phone.tap("All are flat").await;
    phone.sees("No sugar into every bottle").await;
    phone.sees_no("First make them safe").await;
    phone.is_well().await;
}

#[tokio::test]
async fn opened_bottles_teach_and_change_nothing() {
    let (_server, phone) = opened().await;
    let batch = is_bottled(&phone).await;
    phone.go(&format!("{batch}open")).await;
    for _ in 0..2 {
        phone.tap("4 much").await;
        phone.tap("Hazy").await;
        phone.tap("Save").await;
        phone.sees("Bottle noted").await;
        phone.tap("Close").await;
    }
    phone.says(".log-line", "Hazy").await;
    phone.sees("You might try a target of 2.20").await;
    phone.go(&format!("{batch}bottle")).await;
    phone.sees("2.4 volumes").await;
    phone.go("#/batches").await;
    phone.sees("in 1 batch").await;
    phone.is_well().await;
}
