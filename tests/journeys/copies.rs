//! A record leaves the phone as a file and comes back.

use serde_json::{Value, json};

use crate::brewing::opened;
use crate::phone::Phone;

/// What lies in the store as records, each text by its key.
async fn records(phone: &Phone) -> Value {
    let script = "return Object.fromEntries(Object.keys(localStorage).sort()
        .filter((key) => key.startsWith('fermentside/')).map((key) => [key, localStorage[key]]))";
    phone.run(script).await
}

/// Of a copy everything but when it was made.
fn body(copy: &str) -> String {
    copy.split_once("\"records\"").expect("records").1.to_owned()
}

async fn copy_of(phone: &Phone) -> String {
    phone.go("#/gear").await;
    phone.tap("Make a copy of everything").await;
    phone.value_in("Or copy this text").await
}

/// Chooses a file of this text, as the phone's own picker would.
async fn choose_file(phone: &Phone, text: &str) {
    let script = format!(
        "const files = new DataTransfer();
         files.items.add(new File([{}], 'copy.json', {{ type: 'application/json' }}));
         const field = document.querySelector('input[type=file]');
         field.files = files.files;
         field.dispatchEvent(new Event('change', {{ bubbles: true }}));",
        json!(text)
    );
    phone.run(&script).await;
}

#[tokio::test]
async fn out_everything_cleared_and_in_again_is_identical() {
    let (server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.bottles().await;
    phone.go("#/gear").await;
    phone.tap("Night").await;
    let before = records(&phone).await;
    let copy = copy_of(&phone).await;

    let forget = json!({ "origin": server.address(), "storageTypes": "all" });
    phone.driver().goto("about:blank").await.unwrap();
    phone.devtools("Storage.clearDataForOrigin", forget).await;
    phone.open(&server.address()).await;
    assert_eq!(records(&phone).await, json!({}));
    phone.go("#/gear").await;
    choose_file(&phone, &copy).await;
    phone.sees("Would be added").await;
    assert_eq!(records(&phone).await, json!({}), "it is only looked at");
    phone.tap("Bring it in").await;
    phone.sees("Brought in: 1 batch, 1 pitching, 3 readings, 1 bottling day").await;

    assert_eq!(body(&copy_of(&phone).await), body(&copy));
    phone.reload().await;
    assert_eq!(body(&copy_of(&phone).await), body(&copy));
    // What was saved once lies there to the last letter; of what was saved again, its last saving.
    let after = records(&phone).await;
    let (before, after) = (before.as_object().unwrap(), after.as_object().unwrap());
    for (key, text) in after {
        let there = before.get(key).unwrap_or_else(|| panic!("{key} was not there"));
        if key.contains("/1/") {
            assert_eq!(there, text, "{key}");
        }
    }
    for kind in ["batch", "pitch", "reading", "bottling", "settings"] {
        let is_of = |key: &&String| key.starts_with(&format!("fermentside/{kind}/"));
        let things = |all: &serde_json::Map<String, Value>| {
            let mut ids: Vec<_> = all
                .keys()
                .filter(is_of)
                .map(|key| key.split('/').nth(2).map(str::to_owned))
                .collect();
            ids.dedup();
            ids
        };
        assert_eq!(things(after), things(before), "{kind}");
        assert!(!things(after).is_empty(), "{kind}");
    }
    phone.is_well().await;
}

#[tokio::test]
async fn the_browser_is_asked_to_keep_it_once_there_is_something_to_keep() {
    let (_server, phone) = opened().await;
    let count = "
      window.asked = 0;
      const persist = StorageManager.prototype.persist;
      StorageManager.prototype.persist = function () { window.asked += 1; return persist.call(this); };";
    phone.run(count).await;
    for place in ["#/gear", "#/bench/gravity", "#/batches/new"] {
        phone.go(place).await;
    }
    assert_eq!(phone.run("return window.asked").await, json!(0));
    let batch = phone.start_batch("Cellar bitter", 1.0).await;
    assert_eq!(phone.run("return window.asked").await, json!(1));
    phone.log_reading(&batch, "1.048", 0.5).await;
    assert_eq!(phone.run("return window.asked").await, json!(1), "not again and again");
}
