//! Watching: a reading with one wet hand, the steps when it is stuck, the walk through the course, the
//! calendar, and which batch is due.

use icalendar::{Calendar, CalendarComponent, Component};
use serde_json::json;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use thirtyfour::Key;

use crate::brewing::opened;
use crate::build;
use crate::phone::{PATIENCE, Phone};

#[tokio::test]
async fn a_repeat_reading_takes_two_touches_and_its_temperature() {
    let (_server, phone) = opened().await;
    phone.brew("Cellar bitter", &[("1.012", 30.0), ("1.012", 26.0)]).await;
    phone.tap("Add a reading").await;
    // A quiet beer that reads as before is asked nothing more.
    assert_eq!(phone.count("[id^=reading-][id$=-condition]").await, 0);
    phone.tap("Hydrometer reads: more").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.012");
    // The jar of weeks ago says nothing about how warm this one is.
    assert_eq!(phone.value_in("Sample temperature").await, "");
    phone.type_into("Sample temperature", "20").await;
    phone.tap("Save the reading").await;
    phone.sees("Reading saved").await;
    phone.open_rows().await;
    phone.says(".log-line", "read 1.012").await;
    assert_eq!(phone.count(".log-line").await, 4);

    // One that reads otherwise is asked how its sample stood.
    phone.tap("Add a reading").await;
    phone.type_into("Hydrometer reads", "1.009").await;
    phone.sees("Gas knocked out").await;
    assert_eq!(phone.count("[id^=reading-][id$=-condition]").await, 1);
    phone.is_well().await;
}

#[tokio::test]
async fn a_stuck_beer_has_its_steps_in_order() {
    let (_server, phone) = opened().await;
    phone.brew("Stout", &[("1.022", 30.0), ("1.022", 26.0)]).await;
    phone.says(".verdict .verdict-word", "Stop").await;
    let steps =
        phone.run("return [...document.querySelectorAll('.ladder li')].map((l) => l.innerText)");
    let steps: Vec<String> = serde_json::from_value(steps.await).unwrap();
    assert_eq!(steps.len(), 8, "{steps:?}");
    assert!(steps[0].starts_with("Done. Pour the sample"), "{steps:?}");
    assert!(steps[2].starts_with("Try the hydrometer in water"), "{steps:?}");
    assert!(steps[7].contains("fresh yeast"), "{steps:?}");
    phone.sees("Or show that it has ended").await;
    // A satellite beside it that stands there too, a day apart, shows that the wort is like that.
    let batch = phone.place().await.trim_end_matches("watch").to_owned();
    for days in [25.0, 24.0] {
        phone.go(&format!("{batch}watch")).await;
        phone.tap("Add a reading").await;
        phone.type_into("Hydrometer reads", "1.022").await;
        phone.tap("Temperatures, time and note").await;
        phone.tap("The satellite").await;
        phone.dated("Read", days).await;
        phone.tap("Save the reading").await;
        phone.waits_for_no(".reading-form").await;
    }
    phone.says(".verdict .verdict-word", "Go").await;
    phone.unfold().await;
    phone.sees("Within a point of the satellite").await;
    assert_eq!(phone.count(".ladder").await, 0);
    phone.sees("Read the satellite").await;
    phone.is_well().await;
}

#[tokio::test]
async fn no_bubbles_is_answered_in_three_touches() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 2.6).await;
    phone.pitch(&batch, 2.5).await;
    phone.go(&format!("{batch}watch")).await;
    phone.tap("No bubbles?").await;
    phone.says("#quiet .verdict-sentence", "Only a gravity can tell").await;
    phone.tap("Foam, or a dried ring").await;
    phone.says("#quiet .verdict-sentence", "It ferments").await;
    phone.tap("The lid bulges").await;
    phone.says("#quiet .verdict-word", "Stop").await;
    phone.says("#quiet .verdict-next", "At arm's length").await;
    phone.is_well().await;
}

#[tokio::test]
async fn the_course_is_walked_by_keys_and_read_as_a_table() {
    let (_server, phone) = opened().await;
    phone.brew("Cellar bitter", &[("1.020", 36.0), ("1.010", 30.0)]).await;
    phone.says(".walk", "step through the readings").await;
    phone.run("document.querySelector('.walk button').focus()").await;
    phone.press(Key::Left).await;
    phone.says(".walk p", "1.010").await;
    phone.press(Key::Left).await;
    phone.says(".walk p", "1.020").await;
    phone.press(Key::Left).await;
    phone.press(Key::Left).await;
    phone.says(".walk p", "1.048").await;
    phone.press(Key::Right).await;
    phone.says(".walk p", "1.020").await;
    let marked =
        "return (document.querySelector('.course-here').getAttribute('d') ?? '').length > 5";
    phone.wait_until("the reading is marked in the picture", marked).await;
    phone.tap("Later reading").await;
    phone.says(".walk p", "1.010").await;

    phone.tap("As a table").await;
    phone.says(".table-frame", "1.020").await;
    assert_eq!(phone.count(".table-frame tbody tr").await, 3);
    assert_eq!(phone.sideways_scroll().await, 0);
    phone.all_in_sight().await;
    assert_eq!(phone.barriers().await, Vec::<String>::new());
    phone.is_well().await;
}

/// The one file that a touch has saved there.
async fn saved(folder: &Path) -> PathBuf {
    let begun = Instant::now();
    loop {
        let files = std::fs::read_dir(folder).into_iter().flatten().flatten();
        let done =
            files.map(|file| file.path()).find(|p| p.extension().is_some_and(|e| e == "ics"));
        if let Some(file) = done.filter(|file| file.metadata().is_ok_and(|m| m.len() > 0)) {
            return file;
        }
        assert!(begun.elapsed() < PATIENCE, "nothing was saved in {}", folder.display());
        tokio::time::sleep(Duration::from_millis(30)).await;
    }
}

#[tokio::test]
async fn what_lies_ahead_is_saved_for_the_calendar() {
    let (_server, phone) = opened().await;
    let folder = build::scratch("calendar");
    std::fs::create_dir_all(&folder).unwrap();
    let behavior = json!({ "behavior": "allow", "downloadPath": folder.display().to_string() });
    phone.devtools("Browser.setDownloadBehavior", behavior).await;
    let batch = phone.brew("Cellar bitter", &[("1.030", 2.0), ("1.020", 0.1)]).await;
    phone.tap("Put the dates in the calendar").await;
    let file = saved(&folder).await;
    assert_eq!(file.file_name().and_then(|name| name.to_str()), Some("cellar-bitter.ics"));
    let text = std::fs::read_to_string(&file).unwrap();
    let calendar: Calendar = text.parse().expect("a calendar");
    let events: Vec<_> =
        calendar.components.iter().filter_map(CalendarComponent::as_event).collect();
    let [event] = &events[..] else { panic!("{text}") };
    assert_eq!(event.get_summary(), Some("Cellar bitter: read the gravity"));
    let id = batch.trim_start_matches("#/batch/").trim_end_matches('/');
    assert_eq!(event.get_uid(), Some(format!("{id}-read@fermentside").as_str()));
    let _ = std::fs::remove_dir_all(&folder);
    phone.is_well().await;
}

async fn names(phone: &Phone) -> Vec<String> {
    let script = "return [...document.querySelectorAll('.batch-name')].map((n) => n.innerText)";
    serde_json::from_value(phone.run(script).await).unwrap()
}

#[tokio::test]
async fn batches_stand_in_the_order_they_are_due() {
    let (_server, phone) = opened().await;
    phone.brew("Stout", &[("1.022", 30.0), ("1.022", 26.0)]).await;
    // Pitched today: nothing to do for days. Brewed long ago and never pitched: due since then.
    let fresh = phone.start_batch("Fresh", 0.2).await;
    phone.pitch(&fresh, 0.1).await;
    phone.start_batch("Forgotten", 60.0).await;
    phone.go("#/batches").await;
    phone.says("main", "Fresh").await;
    assert_eq!(names(&phone).await, ["Forgotten", "Stout", "Fresh"]);
    phone.says("main", "Looks stuck: go through the steps").await;
    phone.go("#/now").await;
    phone.says("main", "Due too").await;
    phone.is_well().await;
}
