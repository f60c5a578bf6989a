//! Opening the page for the first time.

use serde_json::json;

use crate::brewing::opened;
use crate::build;
use crate::cellar::full;
use crate::phone::Phone;
use crate::server::Server;

#[tokio::test]
async fn it_opens_without_complaint_and_asks_nobody_else() {
    let server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.sees("Fermentside").await;
    phone.sees_no("Opening…").await;
    phone.is_kept_for_offline().await;

    let elsewhere: Vec<String> = phone
        .requests()
        .await
        .into_iter()
        .filter(|url| !url.starts_with(&server.address()))
        .collect();
    assert_eq!(elsewhere, Vec::<String>::new());
    assert_eq!(phone.complaints().await, Vec::<String>::new());
    phone.all_in_sight().await;
    assert_eq!(phone.barriers().await, Vec::<String>::new());
}

#[tokio::test]
async fn its_policy_is_in_force() {
    let server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    let refused = "{ return await fetch('https://example.org/').then(() => 'let through', () => 'refused'); }";
    assert_eq!(phone.settle(refused).await, "refused");
    let complaints = phone.complaints().await.join("\n");
    assert!(complaints.contains("Content Security Policy"), "{complaints}");
}

#[tokio::test]
async fn it_fits_the_screen_by_day_and_by_night() {
    let server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    for (width, height) in [(280, 640), (360, 640), (640, 360), (1280, 800)] {
        phone.screen(width, height).await;
        phone.by_day().await;
        assert_eq!(phone.sideways_scroll().await, 0, "{width} x {height} by day");
        phone.by_night().await;
        assert_eq!(phone.sideways_scroll().await, 0, "{width} x {height} by night");
    }
    phone.screen(360, 640).await;
    phone.screenshot("opening-by-night").await;
    phone.by_day().await;
    phone.screenshot("opening-by-day").await;
}

#[tokio::test]
async fn a_page_that_stops_says_so() {
    let server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    let trap =
        "addEventListener('click', () => { throw new WebAssembly.RuntimeError('unreachable') })";
    phone.devtools("Runtime.evaluate", serde_json::json!({ "expression": trap })).await;
    phone.run("document.body.click()").await;
    phone.sees("Something went wrong. What you saved is safe. Reload the page.").await;
}

#[tokio::test]
async fn a_page_that_cannot_start_says_so() {
    let broken = build::copy_of_dist("cut-off");
    let wasm = std::fs::read_dir(&broken).unwrap().map(|entry| entry.unwrap().path());
    let wasm = wasm.into_iter().find(|path| path.extension().is_some_and(|e| e == "wasm")).unwrap();
    std::fs::write(&wasm, b"\0asm").unwrap();
    let server = Server::serving(&broken, "/");
    let phone = Phone::new().await;
    phone.driver().goto(server.address()).await.unwrap();
    phone.sees("Something went wrong. What you saved is safe. Reload the page.").await;
    assert_eq!(phone.count("html[data-ready]").await, 0);
}

/// In the page, before its first line: something happens at every moment of the start.
const RESTLESS: &str = "
  const each = setInterval(() => {
    dispatchEvent(new Event('fermentside:offline-ready'));
    document.dispatchEvent(new Event('visibilitychange'));
    dispatchEvent(new Event('hashchange'));
    if ('ready' in (document.documentElement?.dataset ?? {})) clearInterval(each);
  });";

#[tokio::test]
async fn whatever_happens_while_it_starts_it_starts() {
    let (_server, phone) = opened().await;
    phone.holds(full()).await;
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": RESTLESS })).await;
    let places = [
        ("#/now", "Cellar bitter"),
        ("#/batch/b/watch", "Cellar bitter"),
        ("#/batch/b/edit", "Change the batch"),
        ("#/batches", "Hedgerow stout"),
        ("#/gear", "My hydrometer"),
    ];
    for (place, words) in places {
        phone.go(place).await;
        phone.reload().await;
        phone.sees(words).await;
        let twice = "const names = [...document.querySelectorAll('main [id]')].map((e) => e.id);
            return names.filter((name, at) => names.indexOf(name) !== at);";
        assert_eq!(phone.run(twice).await, json!([]), "{place}");
        phone.is_well().await;
    }
}
