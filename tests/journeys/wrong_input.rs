//! Nonsense in any number field: said beside it, in words, and never thrown away.

use serde_json::json;

use crate::brewing::{PLACES, STAGES, opened};
use crate::noticing::lines;
use crate::phone::Phone;

/// The later steps of pitching day that ask for a number.
const PITCHING: [&str; 4] = ["Gravity", "Yeast", "Air", "Place"];

/// What no number field takes, and whether it is a number beyond every limit.
fn nonsense() -> Vec<(String, bool)> {
    let long = "9x".repeat(2500);
    let plain =
        ["abc", "1.2.3", "5 gal", "🍺", "1e5", "--", "."].map(|text| (text.to_owned(), false));
    let beyond = ["9999999", "-999"].map(|text| (text.to_owned(), true));
    let mut all: Vec<_> = plain.into_iter().chain(beyond).collect();
    all.push((long, false));
    all.push(("9".repeat(5000), true));
    all
}

/// Every number field on the screen: all are typed into at once, then left. What is wrong with any is
/// given as lines. No field is left as it was on purpose: the last text stays.
const TRY: &str = "{
  const [text, beyond] = ARGS;
  const all = [...document.querySelectorAll('input[inputmode=decimal]')];
  for (const field of all) {
    field.focus();
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(field, text);
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    field.dispatchEvent(new FocusEvent('blur'));
  }
  document.activeElement?.blur();
  for (let n = 0; n < 3; n += 1) await new Promise(requestAnimationFrame);
  const faults = all.flatMap((field) => {
    const said = (field.getAttribute('aria-describedby') ?? '').split(' ')
      .map((id) => document.getElementById(id)).filter((e) => e?.classList.contains('field-error'))
      .map((e) => e.textContent).join('');
    const unit = field.closest('.field').querySelector('.field-unit');
    const symbol = unit.value ?? unit.innerText;
    const name = field.labels[0]?.innerText;
    const faults = [];
    if (!said) faults.push('says nothing');
    if (said.length > 200) faults.push(`says ${said.length} characters`);
    if (!/^[^a-z].*\\.$/.test(said)) faults.push(`no sentence: ${said}`);
    if (beyond && !/from .*\\d.* to .*\\d/.test(said)) faults.push(`names no limits: ${said}`);
    if (beyond && symbol !== 'SG' && !said.includes(symbol)) faults.push(`not in ${symbol}: ${said}`);
    if (field.getAttribute('aria-invalid') !== 'true') faults.push('is not marked invalid');
    if (field.value !== text) faults.push(`holds ${field.value.slice(0, 40)}`);
    return faults.map((fault) => `${name}: ${fault}`);
  });
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth) faults.push(`scrolls sideways by ${root.scrollWidth - root.clientWidth}`);
  if ('stopped' in root.dataset) faults.push('has stopped');
  return [all.length, faults];
}";

/// Tries all nonsense in all number fields of the screen; gives how many fields there are.
async fn try_all(phone: &Phone, place: &str, faults: &mut Vec<String>) -> u64 {
    let mut fields = 0;
    for (text, beyond) in nonsense() {
        let found = phone.settle(&TRY.replace("ARGS", &json!([text, beyond]).to_string())).await;
        fields = found[0].as_u64().unwrap_or_else(|| panic!("{place}: {found}"));
        let typed: String = text.chars().take(12).collect();
        let said = lines(&found[1]).into_iter();
        faults.extend(said.map(|line| format!("{place}, {typed:?}: {line}")));
    }
    fields
}

#[tokio::test]
async fn every_number_field_says_what_is_wrong() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    let stages = STAGES.map(|stage| format!("{batch}{stage}"));
    let mut places: Vec<String> = PLACES.map(str::to_owned).to_vec();
    places.extend(stages);
    places.push(format!("{batch}edit"));
    let mut faults = Vec::new();
    let mut fields = 0;
    for place in &places {
        phone.go(place).await;
        phone.unfold().await;
        fields += try_all(&phone, place, &mut faults).await;
        // Of pitching day one step is open at a time.
        let steps: &[&str] = if place.ends_with("/pitch") { &PITCHING } else { &[] };
        for step in steps {
            phone.tap(step).await;
            phone.sees_no("Wort now").await;
            phone.unfold().await;
            fields += try_all(&phone, &format!("{place}, {step}"), &mut faults).await;
        }
    }
    phone.go("#/gear").await;
    phone.tap("Add a hydrometer").await;
    fields += try_all(&phone, "#/gear", &mut faults).await;
    assert!(fields > 40, "only {fields} fields were found");
    assert_eq!(faults, Vec::<String>::new());
    phone.is_well().await;
}

#[tokio::test]
async fn the_unit_chosen_is_the_unit_of_the_limit() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    phone.type_into("Sample temperature", "99").await;
    phone.press(thirtyfour::Key::Tab).await;
    phone.sees("It must be from 0.0\u{A0}°C to 60.0\u{A0}°C.").await;
    phone.choose("Sample temperature: unit", "°F").await;
    phone.sees_no("It must be from").await;
    phone.type_into("Sample temperature", "200").await;
    phone.sees("It must be from 32.0\u{A0}°F to 140.0\u{A0}°F.").await;
    phone.choose("Hydrometer reads: unit", "°P").await;
    phone.type_into("Hydrometer reads", "55").await;
    phone.press(thirtyfour::Key::Tab).await;
    phone.sees("It must be from −5\u{A0}°P to 40\u{A0}°P.").await;
    phone.type_into("Hydrometer reads", "").await;
    phone.sees_no("−5\u{A0}°P").await;
}

/// Presses the form's own button with every number field wrong.
async fn is_refused(phone: &Phone, place: &str, button: &str) {
    // What is half typed is kept beside the records, under a key of its own.
    let records = "return JSON.stringify(Object.entries(localStorage).filter(([key]) => !key.startsWith('fermentside-drafts')).sort())";
    let stored = phone.run(records).await;
    let mut faults = Vec::new();
    let fields = try_all(phone, place, &mut faults).await;
    assert!(fields > 0, "{place} has no number field");
    phone.tap(button).await;
    phone.wait_until(
        &format!("{place} says beside {button:?} that it is not done"),
        "return [...document.querySelectorAll('form .form-outcome')].some((e) => e.getAttribute('role') === 'alert' && e.innerText !== '')",
    )
    .await;
    let kept = "return [...document.querySelectorAll('input[inputmode=decimal]')].every((e) => e.value === '9'.repeat(5000))";
    assert_eq!(phone.run(kept).await, json!(true), "{place} keeps what was typed");
    assert_eq!(phone.run(records).await, stored, "{place} saves nothing");
    let hidden = "return [...document.querySelectorAll('.field-wrong')].filter((e) => !e.checkVisibility()).length";
    assert_eq!(phone.run(hidden).await, json!(0), "{place} hides what is wrong");
}

#[tokio::test]
async fn a_save_with_wrong_fields_keeps_all_and_says_so() {
    let (_server, phone) = opened().await;
    phone.go("#/batches/new").await;
    phone.type_into("Name", "Cellar bitter").await;
    is_refused(&phone, "#/batches/new", "Start").await;
    assert_eq!(phone.value_in("Name").await, "Cellar bitter");
    for field in ["Starting gravity", "Final gravity"] {
        phone.type_into(field, "").await;
    }
    phone.unfold().await;
    phone.type_into("Packet: temperature from", "").await;
    phone.type_into("Packet: temperature up to", "").await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;

    for (stage, button) in
        [("pitch", "Next"), ("watch", "Save the reading"), ("bottle", "It is bottled")]
    {
        let place = format!("{batch}{stage}");
        phone.go(&place).await;
        is_refused(&phone, &place, button).await;
    }
    let place = format!("{batch}edit");
    phone.go(&place).await;
    is_refused(&phone, &place, "Save").await;
    phone.go("#/gear").await;
    phone.tap("Add a hydrometer").await;
    is_refused(&phone, "#/gear", "Save").await;
    phone.is_well().await;
}

#[tokio::test]
async fn what_is_needed_is_asked_for_only_when_it_is_saved() {
    let (_server, phone) = opened().await;
    phone.go("#/batches/new").await;
    phone.type_into("Volume in the fermenter", "").await;
    phone.press(thirtyfour::Key::Tab).await;
    phone.draws().await;
    assert_eq!(phone.count("[aria-invalid=true]").await, 0, "nothing is wrong before Start");
    phone.tap("Start").await;
    phone.sees("Something is needed here.").await;
    phone.sees("Give it a name.").await;
    phone.sees("Some fields need another look.").await;
}

#[tokio::test]
async fn half_a_range_is_not_thrown_away() {
    let (_server, phone) = opened().await;
    phone.go("#/batches/new").await;
    phone.type_into("Name", "Cellar bitter").await;
    phone.type_into("Volume in the fermenter", "20").await;
    phone.tap("Packet and instrument").await;
    phone.type_into("Packet: temperature from", "18").await;
    phone.tap("Start").await;
    phone.sees("Give both temperatures of the packet, or neither.").await;
    phone.type_into("Packet: temperature up to", "22").await;
    phone.tap("Start").await;
    phone.is_at("/pitch").await;
}

#[tokio::test]
async fn a_very_long_word_stays_on_the_screen() {
    let (_server, phone) = opened().await;
    let long = "Kellerbier".repeat(30);
    // As long as a name may be.
    let batch = phone.start_batch(&"Kellerbier".repeat(6), 3.0).await;
    let mut wide = Vec::new();
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.tap("Temperatures, time and note").await;
    phone.type_into("Note", &long).await;
    phone.tap("Save the reading").await;
    phone.open_rows().await;
    phone.says(".log-note", &long).await;
    for place in ["#/now", "#/batches", &format!("{batch}watch"), &format!("{batch}edit")] {
        phone.go(place).await;
        if phone.sideways_scroll().await > 0 {
            wide.push(place.to_owned());
        }
    }
    assert_eq!(wide, Vec::<String>::new());
}
