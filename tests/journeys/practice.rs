//! The phone itself, tried on a page of a few fields: what it finds, types and taps.

use thirtyfour::Key;

use crate::build;
use crate::phone::Phone;
use crate::server::Server;

async fn practice(name: &str) -> (Server, Phone) {
    let folder = build::scratch(name);
    std::fs::write(folder.join("index.html"), include_str!("practice.html")).unwrap();
    let server = Server::serving(&folder, "/");
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    (server, phone)
}

#[tokio::test]
async fn a_form_is_filled_by_its_labels() {
    let (_server, phone) = practice("practice-form").await;
    assert_eq!(phone.value_in("Gravity (SG)").await, "1.050");
    phone.type_into("Gravity", "1,012").await;
    phone.set("Day", "2026-05-01").await;
    phone.choose("Sugar", "Honey").await;
    phone.type_into("Note", "clear").await;
    phone.tap("Save").await;
    phone.sees("1,012 | 2026-05-01 | Honey | clear").await;
    phone.type_into("Note", "").await;
    phone.tap_at("button").await;
    phone.sees_no("clear").await;
    assert_eq!(phone.text_of("output").await, "1,012 | 2026-05-01 | Honey |");
}

#[tokio::test]
async fn a_form_is_walked_through_by_keyboard() {
    let (_server, phone) = practice("practice-keyboard").await;
    assert_eq!(phone.press_tab().await, "Gravity (SG)");
    phone.press(Key::End).await;
    phone.press("9").await;
    assert_eq!(phone.value_in("Gravity").await, "1.0509");
    assert_eq!(phone.press_tab().await, "Day");
    phone.driver().find(thirtyfour::By::Css("button")).await.unwrap().focus().await.unwrap();
    phone.press(Key::Enter).await;
    phone.sees("1.0509 | ").await;
}

#[tokio::test]
async fn barriers_and_requests_are_noticed() {
    let (server, phone) = practice("practice-notice").await;
    assert_eq!(phone.requests().await, [server.address()]);
    let barriers = phone.barriers().await;
    assert!(barriers.iter().any(|line| line.starts_with("landmark-one-main")), "{barriers:?}");
}
