//! A newer version comes only when it is asked in, and only whole.

use crate::build;
use crate::phone::Phone;
use crate::server::Server;

const LOOK_FOR_UPDATE: &str =
    "{ await (await navigator.serviceWorker.getRegistration()).update(); return 'looked'; }";
const ACCEPT: &str = "dispatchEvent(new Event('fermentside:update-accept'))";
const OFFERED: &str = "return document.documentElement.dataset.update === 'ready'";
const CACHES: &str = "{ return (await caches.keys()).length; }";

/// Which release is running; none is marked on the one that was built.
async fn release(phone: &Phone) -> String {
    let script = "return document.documentElement.dataset.release ?? 'as built'";
    phone.run(script).await.as_str().unwrap_or_default().to_owned()
}

#[tokio::test]
async fn an_update_waits_until_it_is_accepted() {
    let mut server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    phone.reload().await;

    server.deploy(&build::release("newer"));
    assert_eq!(phone.settle(LOOK_FOR_UPDATE).await, "looked");
    phone.wait_until("the update is offered", OFFERED).await;
    assert_eq!(release(&phone).await, "as built");
    phone.reload().await;
    assert_eq!(release(&phone).await, "as built");
    phone.wait_until("the update is offered again", OFFERED).await;

    phone.run(ACCEPT).await;
    phone
        .wait_until(
            "the newer version is there",
            "return document.documentElement.dataset.release === 'newer'",
        )
        .await;
    phone.is_ready().await;
    phone.is_kept_for_offline().await;
    assert_eq!(phone.settle(CACHES).await, 1, "the older version is cleared away");

    server.stop();
    phone.reload().await;
    assert_eq!(release(&phone).await, "newer");
    assert_eq!(phone.count("html[data-update]").await, 0);
}

#[tokio::test]
async fn a_broken_delivery_leaves_the_working_version() {
    let mut server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    phone.reload().await;

    let half = build::release("half");
    std::fs::remove_file(half.join("icon.svg")).unwrap();
    server.deploy(&half);
    let fate = phone
        .settle(
            "{ const registration = await navigator.serviceWorker.getRegistration();
               const found = new Promise((go) =>
                 registration.addEventListener('updatefound', () => go(registration.installing)));
               registration.update().catch(() => {});
               const worker = await found;
               while (worker.state === 'installing')
                 await new Promise((go) => worker.addEventListener('statechange', go, { once: true }));
               return worker.state; }",
        )
        .await;
    assert_eq!(fate, "redundant");
    assert_eq!(phone.count("html[data-update]").await, 0);
    phone.reload().await;
    assert_eq!(release(&phone).await, "as built");

    server.deploy(&build::release("mended"));
    phone.settle(LOOK_FOR_UPDATE).await;
    phone.wait_until("the mended update is offered", OFFERED).await;
}
