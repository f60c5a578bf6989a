//! A batch from the first warm reading to an opened bottle.

use crate::brewing::opened;
use crate::phone::Phone;

/// Logs the start of a batch as it is read: warm, 1.048 at 31 °C on a stick made for 20 °C.
async fn with_a_warm_reading(phone: &Phone) -> String {
    let batch = phone.start_batch("Cellar bitter", 2.0).await;
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.type_into("Sample temperature", "31").await;
    phone.says(".answer", "1.051").await;
    phone.tap("Temperatures, time and note").await;
    phone.dated("Read", 2.0).await;
    phone.type_into("Note", "after the boil").await;
    phone.tap("Save the reading").await;
    is_logged(phone).await;
    batch
}

/// As read and as corrected, side by side.
async fn is_logged(phone: &Phone) {
    phone.says(".log-line", "1.051").await;
    phone.open_rows().await;
    phone.says(".log-line", "read 1.048").await;
    phone.says(".log-line", "sample 31.0 °C").await;
    phone.says(".log-line", "after the boil").await;
}

#[tokio::test]
async fn a_warm_reading_is_kept_as_read_and_shown_as_corrected() {
    let (mut server, mut phone) = opened().await;
    phone.is_kept_for_offline().await;
    let batch = with_a_warm_reading(&phone).await;
    phone.reload().await;
    is_logged(&phone).await;

    server.stop();
    phone.restart().await;
    phone.open(&server.address()).await;
    phone.sees("Cellar bitter").await;
    phone.go(&format!("{batch}watch")).await;
    is_logged(&phone).await;
    phone.go("#/batches").await;
    phone.says(".batch-row", "Cellar bitter").await;
}

#[tokio::test]
async fn it_is_noted_with_no_network_too() {
    let (mut server, mut phone) = opened().await;
    phone.is_kept_for_offline().await;
    server.stop();
    phone.restart().await;
    phone.open(&server.address()).await;
    let batch = with_a_warm_reading(&phone).await;
    phone.restart().await;
    phone.open(&server.address()).await;
    phone.go(&format!("{batch}watch")).await;
    is_logged(&phone).await;
}

#[tokio::test]
async fn a_reading_is_changed_deleted_and_taken_back() {
    let (_server, phone) = opened().await;
    with_a_warm_reading(&phone).await;

    phone.tap("Change the reading of").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.048");
    assert_eq!(phone.value_in("Sample temperature").await, "31.0");
    phone.type_into("Hydrometer reads", "1.046").await;
    phone.tap("Save the change").await;
    phone.says(".log-line", "1.049").await;
    phone.says(".log-line", "read 1.046").await;
    phone.tap("Undo").await;
    is_logged(&phone).await;

    phone.tap("Delete the reading of").await;
    phone.waits_for_no(".log-line").await;
    phone.sees("Reading deleted").await;
    phone.tap("Undo").await;
    is_logged(&phone).await;
    phone.reload().await;
    is_logged(&phone).await;
    assert_eq!(phone.count(".log-line").await, 1);
}

#[tokio::test]
async fn a_deleted_batch_is_taken_back_with_its_log() {
    let (_server, phone) = opened().await;
    let batch = with_a_warm_reading(&phone).await;
    phone.go(&format!("{batch}edit")).await;
    phone.tap("Delete this batch").await;
    phone.sees("No batch yet.").await;
    phone.sees("Batch deleted, with its log").await;
    phone.tap("Undo").await;
    phone.says(".batch-row", "Cellar bitter").await;
    phone.go(&format!("{batch}watch")).await;
    is_logged(&phone).await;

    phone.go(&format!("{batch}edit")).await;
    phone.tap("Delete this batch").await;
    phone.sees("No batch yet.").await;
    phone.reload().await;
    phone.sees("No batch yet.").await;
}

/// What Now says, and where its one large button leads.
async fn now_leads(phone: &Phone, sentence: &str, to: &str) {
    phone.go("#/now").await;
    phone.says("#next", sentence).await;
    assert_eq!(phone.count("main .main-action").await, 1, "one large button");
    phone.tap_at("main .main-action").await;
    phone.is_at(to).await;
}

#[tokio::test]
async fn four_stages_lead_to_an_opened_bottle() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 40.2).await;
    now_leads(&phone, "bring the wort into the yeast's range", "/pitch").await;
    phone.log_reading(&batch, "1.048", 40.1).await;
    phone.pitch(&batch, 40.0).await;
    now_leads(&phone, "Take the first reading now", "/watch").await;
    phone.log_reading(&batch, "1.020", 36.0).await;
    now_leads(&phone, "read it now", "/watch").await;
    phone.log_reading(&batch, "1.010", 30.0).await;
    phone.log_reading(&batch, "1.010", 26.0).await;
    phone.says(".verdict .verdict-word", "Go").await;
    phone.says(".facts", "ABV so far").await;
    let facts = phone.text_of(".facts").await;
    assert!(facts.contains("5.0 % ± 0."), "strength with its ±: {facts}");

    now_leads(&phone, "Bottle it when it suits you", "/bottle").await;
    phone.says(".verdict .verdict-word", "Go").await;
    phone.bottles().await;

    now_leads(&phone, "Chill one for two days", "/open").await;
    phone.says(".verdict .verdict-word", "Go").await;
    phone.tap("3 right").await;
    phone.tap("Bright").await;
    phone.tap("Taste, note, time").await;
    phone.type_into("Taste", "bready, dry").await;
    phone.tap("Save").await;
    phone.says(".log-line", "Fizz 3 of 5").await;
    phone.says(".log-line", "Bright · bready, dry").await;
    phone.reload().await;
    phone.says(".log-line", "Fizz 3 of 5").await;
    now_leads(&phone, "Note how each bottle was", "/open").await;
    phone.is_well().await;
}
