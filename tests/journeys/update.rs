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

/// A waiting version comes in once no page of the older one is open.
#[tokio::test]
async fn a_declined_update_comes_at_the_next_start_and_what_is_half_typed_stays() {
    let mut server = Server::new();
    let mut phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    phone.reload().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.go(&format!("{batch}watch")).await;

    server.deploy(&build::release("declined"));
    phone.settle(LOOK_FOR_UPDATE).await;
    phone.wait_until("the update is offered", OFFERED).await;
    phone.sees("Take it now").await;
    // Never while a form is half filled.
    phone.type_into("Hydrometer reads", "1.0").await;
    phone.sees_no("Take it now").await;
    phone.sees("Save what is half typed first").await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.type_into("Sample temperature", "20").await;
    phone.tap("Save the reading").await;
    phone.sees("Take it now").await;
    phone.tap("Add a reading").await;
    phone.type_into("Hydrometer reads", "1.03").await;
    phone.sees_no("Take it now").await;
    phone.draws().await;
    phone.reload().await;
    assert_eq!(release(&phone).await, "as built");
    phone.tap("Add a reading").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.03");

    phone.restart().await;
    phone.open(&format!("{}{batch}watch", server.address())).await;
    assert_eq!(release(&phone).await, "declined");
    phone.sees("1.048").await;
    phone.tap("Add a reading").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.03");
    phone.is_kept_for_offline().await;
    assert_eq!(phone.settle(CACHES).await, 1);
    assert_eq!(phone.count("html[data-update]").await, 0);
}

#[tokio::test]
async fn an_older_page_that_is_still_open_does_no_harm() {
    let mut server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.048").await;
    let older = phone.driver().window().await.unwrap();
    let newer = phone.driver().new_tab().await.unwrap();
    phone.driver().switch_to_window(newer.clone()).await.unwrap();
    phone.open(&server.address()).await;
    server.deploy(&build::release("beside"));
    phone.settle(LOOK_FOR_UPDATE).await;
    phone.wait_until("the update is offered", OFFERED).await;
    phone.tap("Take it now").await;
    phone
        .wait_until(
            "the newer version is there",
            "return document.documentElement.dataset.release === 'beside'",
        )
        .await;
    phone.is_ready().await;
    phone.log_reading(&batch, "1.030", 1.0).await;

    // The older one was not loaded anew under the hands, and saves as before.
    phone.driver().switch_to_window(older).await.unwrap();
    assert_eq!(release(&phone).await, "as built");
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.048");
    phone.type_into("Sample temperature", "20").await;
    phone.tap("Save the reading").await;
    phone.sees("Reading saved").await;
    phone.reload().await;
    assert_eq!(release(&phone).await, "beside");
    let both = "return document.querySelectorAll('.log-line').length === 2";
    phone.wait_until("both readings are there", both).await;
    phone.sees_no("changed in two places").await;
    phone.is_well().await;
}

/// A network that answers "200 OK" to everything with a page of its own.
#[tokio::test]
async fn a_sign_in_page_in_place_of_every_file_changes_nothing() {
    let mut server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.log_reading(&batch, "1.048", 1.0).await;

    let portal = build::copy_of_dist("portal");
    build::replace_all(&portal, "<!doctype html><title>Welcome</title><p>Please sign in");
    server.deploy(&portal);
    phone.reload().await;
    phone.sees("1.048").await;
    let looked = phone
        .settle(
            "{ const registration = await navigator.serviceWorker.getRegistration();
               return await registration.update().then(() => 'taken', () => 'refused'); }",
        )
        .await;
    assert_eq!(looked, "refused");
    assert_eq!(phone.count("html[data-update]").await, 0);
    // What was cleared away is not filled with it either.
    let files = "{ let count = 0;
        for (const name of await caches.keys()) count += (await (await caches.open(name)).keys()).length;
        return count; }";
    let whole = phone.settle(files).await.as_u64().unwrap();
    let drop_icon = "{ for (const name of await caches.keys()) {
          const cache = await caches.open(name);
          for (const key of await cache.keys()) if (key.url.endsWith('icon.svg')) await cache.delete(key);
        } return 'done'; }";
    phone.settle(drop_icon).await;
    phone.reload().await;
    phone.sees("1.048").await;
    assert_eq!(phone.settle(files).await.as_u64().unwrap(), whole - 1);
    phone.log_reading(&batch, "1.030", 0.5).await;
    assert_eq!(
        phone.count("html[data-offline]").await,
        0,
        "nothing is promised that does not hold"
    );

    // Signed in, all is as it was.
    server.deploy(&build::dist());
    phone.reload().await;
    phone.is_kept_for_offline().await;
    assert_eq!(phone.settle(files).await.as_u64().unwrap(), whole);
    phone.sees("1.030").await;
}
