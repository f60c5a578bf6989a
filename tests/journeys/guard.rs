//! A dose for bottles that would not hold it is never shown.

use crate::brewing::opened;
use crate::noticing::lines;
use crate::phone::Phone;

/// Fills in the bottling form for 19 litres.
async fn asks_for_a_dose(phone: &Phone, batch: &str, bottle: &str) {
    phone.go(&format!("{batch}bottle")).await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.choose("Weakest bottle", bottle).await;
    phone.draws().await;
}

/// Every mass written anywhere on the screen or folded away: "117 g", but not "4.0 g/L a volume" nor a
/// sugar's yield in "g CO₂ a gram".
async fn masses(phone: &Phone) -> Vec<String> {
    let script = "
      const texts = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
      const found = [];
      while (texts.nextNode()) {
        const text = texts.currentNode.data;
        // A way says what another target or glass would take; that is no dose for what was asked.
        if (texts.currentNode.parentElement.closest('.ways-out')) continue;
        if (/\\d\\s*(?:g|kg|oz|lb)(?![\\w\\/]| CO₂)/.test(text)) found.push(text);
      }
      return found;";
    lines(&phone.run(script).await)
}

/// The judgements on the screen, each with its reasons; all in live regions.
async fn judgements(phone: &Phone) -> Vec<String> {
    let script = "return [...document.querySelectorAll('.verdict')].map((card) => {
        const live = card.getAttribute('aria-live') === 'polite' || card.getAttribute('role') === 'status';
        const reasons = card.querySelectorAll('.reasons li, .plate-why:not(:empty)').length;
        return `${card.querySelector('.verdict-word').innerText}${live ? '' : ' SILENT'}${reasons ? '' : ' WITHOUT REASON'}`;
      })";
    lines(&phone.run(script).await)
}

#[tokio::test]
async fn beer_that_still_ferments_gets_no_dose_in_thin_glass() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.021", 30.0), ("1.020", 26.0)]).await;
    asks_for_a_dose(&phone, &batch, "Thin").await;
    phone.says(".answer", "No dose").await;
    let words = judgements(&phone).await;
    assert_eq!(words.len(), 1, "{words:?}");
    assert!(words.iter().all(|word| ["Wait", "Stop"].contains(&word.as_str())), "{words:?}");
    assert_eq!(masses(&phone).await, Vec::<String>::new());

    // A reason of one's own does not make the glass stronger.
    phone.tap("It has finished, and I know why").await;
    phone.type_into("Why it has finished", "it tastes done").await;
    phone.draws().await;
    phone.says(".answer", "No dose").await;
    let words = judgements(&phone).await;
    assert!(words.iter().any(|word| word == "Stop"), "{words:?}");
    assert_eq!(masses(&phone).await, Vec::<String>::new());

    let stored = phone.run("return localStorage.length").await;
    phone.tap("It is bottled").await;
    phone.sees("There is no dose for this").await;
    assert_eq!(phone.run("return localStorage.length").await, stored);
    assert_eq!(phone.value_in("Beer to bottle").await, "19");
    phone.is_well().await;
}

#[tokio::test]
async fn glass_not_made_for_pressure_gets_no_dose_at_all() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    asks_for_a_dose(&phone, &batch, "Square").await;
    phone.says(".answer", "No dose").await;
    assert_eq!(judgements(&phone).await, ["Stop"]);
    assert_eq!(masses(&phone).await, Vec::<String>::new());
}

#[tokio::test]
async fn finished_beer_in_sound_glass_gets_its_dose() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    asks_for_a_dose(&phone, &batch, "Sound").await;
    phone.says(".answer .answer-main", " g ±").await;
    assert_eq!(judgements(&phone).await, ["Go"]);
    let dose = phone.text_of(".answer .answer-main").await;
    let grams: f64 = dose.split_whitespace().find_map(|word| word.parse().ok()).unwrap();
    assert!((100.0..130.0).contains(&grams), "{dose}");

    // Asking for more than the glass holds takes the dose away again.
    phone.tap("Assumed").await;
    phone.type_into("Carbonation", "4.5").await;
    phone.says(".answer", "No dose").await;
    assert_eq!(judgements(&phone).await, ["Stop"]);
    assert_eq!(masses(&phone).await, Vec::<String>::new());
    phone.is_well().await;
}
