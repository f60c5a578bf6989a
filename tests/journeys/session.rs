//! A whole session asks nobody outside for anything, and breaks none of its own rules.

use serde_json::json;

use crate::brewing::PLACES;
use crate::phone::Phone;
use crate::server::Server;

/// Counts what the page's own policy refuses, from before its first line.
const WATCH: &str = "
  window.refusals = [];
  document.addEventListener('securitypolicyviolation', (event) =>
    window.refusals.push(`${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}`));";

async fn used(phone: &Phone) {
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    for stage in ["pitch", "watch", "bottle", "open", "edit"] {
        phone.go(&format!("{batch}{stage}")).await;
        phone.unfold().await;
    }
    for place in PLACES {
        phone.go(place).await;
        phone.unfold().await;
    }
    phone.go("#/gear").await;
    phone.tap("Night").await;
    phone.tap("Make a copy of everything").await;
    phone.sees("Or copy this text and keep it elsewhere").await;
}

#[tokio::test]
async fn a_whole_session_stays_at_home() {
    let mut server = Server::new();
    let phone = Phone::new().await;
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    used(&phone).await;
    assert_eq!(phone.run("return window.refusals").await, json!([]));
    server.stop();
    phone.reload().await;
    phone.go("#/batches").await;
    phone.says(".batch-row", "Cellar bitter").await;
    assert_eq!(phone.run("return window.refusals").await, json!([]));

    let home = server.address();
    let asked = phone.requests().await;
    assert!(asked.iter().any(|url| url.ends_with(".wasm")), "requests are seen: {asked:?}");
    let elsewhere: Vec<_> = asked.into_iter().filter(|url| !url.starts_with(&home)).collect();
    assert_eq!(elsewhere, Vec::<String>::new());
    phone.is_well().await;
}
