//! Beside the fermenter there is no network.

use crate::build;
use crate::phone::Phone;
use crate::server::Server;

#[tokio::test]
async fn it_works_without_a_network_even_after_the_phone_was_off() {
    let mut server = Server::new();
    let mut phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;

    server.stop();
    phone.reload().await;
    phone.sees("Fermentside").await;

    phone.restart().await;
    phone.open(&server.address()).await;
    phone.sees("Fermentside").await;
    phone.open(&format!("{}?from=icon#/now", server.address())).await;
    phone.sees("Fermentside").await;
}

#[tokio::test]
async fn it_works_below_any_path() {
    let mut server = Server::serving(&build::dist(), "/some/sub/");
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    assert_eq!(phone.complaints().await, Vec::<String>::new());

    server.stop();
    phone.reload().await;
    phone.sees("Fermentside").await;
}

#[tokio::test]
async fn what_is_not_what_was_built_is_never_kept() {
    let broken = build::copy_of_dist("sign-in-page");
    build::change(&broken, "manifest.webmanifest", "Fermentside", "Please sign in");
    let server = Server::serving(&broken, "/");
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    // The browser forgets a worker whose installation has failed.
    let installed = phone
        .settle(
            "{ const registration = await navigator.serviceWorker.register('./sw.js').catch(() => null);
               const worker = registration?.installing ?? registration?.waiting ?? registration?.active;
               while (worker && !['redundant', 'activated'].includes(worker.state))
                 await new Promise((go) => worker.addEventListener('statechange', go, { once: true }));
               return [worker?.state ?? 'none', (await caches.keys()).length]; }",
        )
        .await;
    assert_eq!(installed, serde_json::json!(["redundant", 0]));
    phone.sees("Fermentside").await;
}
