//! What was saved is never lost, and what was not saved is said.

use serde_json::json;

use crate::brewing::opened;
use crate::losing::lies_on_the_second_shelf;
use crate::phone::Phone;
use crate::server::Server;

/// Room taken by another page of the same origin, under keys that are not ours.
pub const FILL: &str = "
  for (let size = 2 ** 20, n = 0; size >= 1;) {
    try { localStorage.setItem(`elsewhere-${n += 1}`, 'x'.repeat(size)); }
    catch { size = Math.floor(size / 2); }
  }";
pub const FREE: &str = "
  Object.keys(localStorage).filter((key) => key.startsWith('elsewhere-'))
    .forEach((key) => localStorage.removeItem(key));";

/// The one stored key that begins so, and its text.
async fn stored(phone: &Phone, prefix: &str) -> (String, String) {
    let script = format!(
        "const keys = Object.keys(localStorage).filter((key) => key.startsWith({}));
         return [keys.join(' '), keys.map((key) => localStorage[key]).join('')]",
        json!(prefix)
    );
    let found = phone.run(&script).await;
    let part = |n: usize| found[n].as_str().unwrap_or_default().to_owned();
    assert!(!part(0).is_empty() && !part(0).contains(' '), "one key {prefix}: {found}");
    (part(0), part(1))
}

#[tokio::test]
async fn a_damaged_record_is_set_aside_and_the_rest_loads() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.log_reading(&batch, "1.048", 3.0).await;
    let (key, text) = stored(&phone, "fermentside/reading/").await;
    let damaged = text.replace("1.048", "1.049");
    assert_ne!(damaged, text);
    let damage = format!("localStorage.setItem({}, {})", json!(key), json!(damaged));
    phone.run(&damage).await;

    phone.reload().await;
    phone.sees("One saved thing could not be read. Kept as it was").await;
    phone.go(&format!("{batch}watch")).await;
    phone.sees("Cellar bitter").await;
    assert_eq!(phone.count(".log-line").await, 0, "what is damaged is not believed");
    phone.log_reading(&batch, "1.030", 1.0).await;
    phone.open_rows().await;
    phone.says(".log-line", "read 1.030").await;

    phone.go("#/gear").await;
    phone.sees("Could not be read").await;
    phone.unfold().await;
    phone.sees(&key).await;
    let now = phone.run(&format!("return localStorage.getItem({})", json!(key))).await;
    assert_eq!(now, json!(damaged), "it lies untouched");
    phone.tap("Make a copy of everything").await;
    let copy = phone.value_in("Or copy this text").await;
    assert!(copy.contains(&key), "it goes into the copy");
    phone.reload().await;
    phone.sees("One saved thing could not be read.").await;
    phone.is_well().await;
}

#[tokio::test]
async fn a_full_store_is_told_and_the_same_save_works_later() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.sees_no("There is hardly any room left").await;
    phone.run(FILL).await;
    phone.type_into("Sample temperature", "24").await;
    // Before the save: what is half typed can be kept no more either.
    phone.sees("There is hardly any room left: a save may be refused").await;
    phone.tap("Save the reading").await;
    phone.says("form .form-outcome", "Not saved").await;
    phone.says("form .form-outcome", "no room left").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.048");
    assert_eq!(phone.value_in("Sample temperature").await, "24");
    assert_eq!(phone.count(".log-line").await, 0, "what is not saved is not shown as saved");
    // It lies on the second shelf, which has room of its own.
    lies_on_the_second_shelf(&phone, "24").await;
    phone.reload().await;
    let typed = "const labels = [...document.querySelectorAll('label')];
      const field = (name) => labels.find((l) => l.innerText.trim().startsWith(name))?.control?.value;
      return field('Hydrometer reads') === '1.048' && field('Sample temperature') === '24';";
    phone.wait_until("what was typed is there", typed).await;

    phone.run(FREE).await;
    phone.tap("Save the reading").await;
    phone.open_rows().await;
    phone.says(".log-line", "read 1.048").await;
    phone.reload().await;
    phone.open_rows().await;
    phone.says(".log-line", "read 1.048").await;
    phone.is_well().await;
}

/// Asked for on the phone before the page starts.
async fn refuse_storage(phone: &Phone, how: &str) {
    let params = json!({ "source": how });
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", params).await;
}

const KEPT_NOWHERE: &str = "This browser lets the page keep nothing.";

/// `told` is what is said once something is half typed.
async fn works_without_storage(how: &str, told: &str) {
    let server = Server::new();
    let phone = Phone::new().await;
    refuse_storage(&phone, how).await;
    phone.open(&server.address()).await;
    // It comes above the form and moves it: not between a finger's aim and its touch.
    phone.go("#/batches/new").await;
    phone.type_into("Name", "Cellar").await;
    phone.sees(told).await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.sees(KEPT_NOWHERE).await;
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.type_into("Sample temperature", "20").await;
    phone.tap("Save the reading").await;
    // Never called saved.
    phone.sees("Kept only until this page is closed: take a copy").await;
    phone.says(".log-line", "1.048").await;
    for place in ["#/now", "#/batches", "#/bench/gravity", "#/gear"] {
        phone.go(place).await;
        phone.sees(KEPT_NOWHERE).await;
    }
    phone.go("#/gear").await;
    phone.tap("Night").await;
    phone
        .wait_until("it is night", "return document.documentElement.dataset.theme === 'night'")
        .await;
    phone.is_well().await;
}

#[tokio::test]
async fn a_browser_without_storage_is_told_and_used() {
    works_without_storage(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });",
        KEPT_NOWHERE,
    )
    .await;
}

#[tokio::test]
async fn a_store_that_takes_nothing_is_told_and_used() {
    works_without_storage(
        "Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); };",
        "There is hardly any room left",
    )
    .await;
}

#[tokio::test]
async fn what_others_left_there_that_is_no_text_hides_nothing_of_ours() {
    let (_server, phone) = opened().await;
    phone.start_batch("Cellar bitter", 3.0).await;
    phone.run("localStorage.theirs = '\\ud800'").await;
    phone.reload().await;
    phone.go("#/batches").await;
    phone.says(".batch-row", "Cellar bitter").await;
    assert_eq!(phone.run("return localStorage.theirs.length").await, json!(1));
    phone.is_well().await;
}

#[tokio::test]
async fn two_tabs_lose_nothing_of_each_other() {
    let (server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    let first = phone.driver().window().await.unwrap();
    let second = phone.driver().new_tab().await.unwrap();
    phone.driver().switch_to_window(second.clone()).await.unwrap();
    phone.open(&format!("{}{batch}watch", server.address())).await;
    phone.sees("Cellar bitter").await;

    phone.driver().switch_to_window(first.clone()).await.unwrap();
    // To be opened is not to save.
    phone.draws().await;
    phone.sees_no("Something was saved in another tab.").await;
    phone.log_reading(&batch, "1.048", 3.0).await;
    phone.driver().switch_to_window(second).await.unwrap();
    // Shown at once, where nothing is half typed.
    phone.says(".log-line", "1.048").await;
    phone.log_reading(&batch, "1.030", 2.0).await;
    phone.tap("Add a reading").await;
    phone.type_into("Hydrometer reads", "1.0").await;
    phone.driver().switch_to_window(first).await.unwrap();
    phone.sees("1.030").await;
    phone.log_reading(&batch, "1.020", 1.0).await;
    let tabs = phone.driver().windows().await.unwrap();
    phone.driver().switch_to_window(tabs[1].clone()).await.unwrap();
    phone.sees("Something was saved in another tab.").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.0");
    phone.tap("Show it").await;
    phone.sees_no("Something was saved in another tab.").await;
    phone.sees("1.020").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.0");
    phone.driver().switch_to_window(tabs[0].clone()).await.unwrap();
    phone.sees("1.048").await;
    phone.sees("1.030").await;
    phone.reload().await;
    phone.sees("1.048").await;
    phone.sees("1.030").await;
    phone.is_well().await;
}

#[tokio::test]
async fn what_is_half_typed_outlives_a_reload() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.go("#/bench/gravity").await;
    phone.type_into("Hydrometer reads", "1.0").await;
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1,04 no").await;
    phone.tap("Temperatures, time and note").await;
    phone.tap("The satellite").await;
    phone.reload().await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1,04 no");
    assert_eq!(phone.count("[id^=reading-][id$=-vessel-satellite]:checked").await, 1);
    phone.go("#/bench/gravity").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.0");

    // What has been saved is half typed no more.
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.tap("Save the reading").await;
    phone.sees("1.048").await;
    phone.reload().await;
    phone.tap("Add a reading").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "");
    phone.is_well().await;
}

#[tokio::test]
async fn a_tab_leaves_alone_what_another_had_half_typed() {
    let (server, phone) = opened().await;
    let first = phone.driver().window().await.unwrap();
    let second = phone.driver().new_tab().await.unwrap();
    phone.driver().switch_to_window(second).await.unwrap();
    phone.open(&format!("{}#/bench/strength", server.address())).await;
    phone.type_into("Starting gravity (OG)", "1.0").await;
    phone.reload().await;
    phone.driver().close_window().await.unwrap();

    phone.driver().switch_to_window(first).await.unwrap();
    phone.go("#/bench/gravity").await;
    phone.type_into("Hydrometer reads", "1.03").await;
    phone.reload().await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.03");
    phone.go("#/bench/strength").await;
    assert_eq!(phone.value_in("Starting gravity (OG)").await, "1.0");
    phone.is_well().await;
}
