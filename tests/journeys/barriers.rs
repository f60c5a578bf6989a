//! Every screen in every state it can be in, by day and by night: nothing keeps anyone out.

use serde_json::json;

use crate::brewing::{PLACES, STAGES, opened};
use crate::cellar::{bitter, full};
use crate::noticing::lines;
use crate::phone::Phone;

/// What axe-core finds at a state by day and by night, each line with the state's name.
async fn found(phone: &Phone, state: &str) -> Vec<String> {
    let mut all = vec![];
    for night in [false, true] {
        if night {
            phone.by_night().await
        } else {
            phone.by_day().await
        }
        let time = if night { "by night" } else { "by day" };
        let barriers = phone.barriers().await;
        all.extend(barriers.iter().map(|line| format!("{state} {time}: {line}")));
    }
    all
}

#[tokio::test]
async fn empty_screens_keep_nobody_out_narrow_or_wide() {
    let (_server, phone) = opened().await;
    let mut all = vec![];
    for width in [360, 1280] {
        phone.screen(width, 9000).await;
        for place in PLACES.into_iter().chain(["#/gear"]) {
            phone.go(place).await;
            all.extend(found(&phone, &format!("{place} at {width}")).await);
        }
    }
    assert_eq!(all, Vec::<String>::new());
}

#[tokio::test]
async fn a_full_cellar_keeps_nobody_out_narrow_or_wide() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(full()).await;
    let mut all = vec![];
    for width in [360, 1280] {
        phone.screen(width, 9000).await;
        for place in ["#/now", "#/batches"] {
            phone.go(place).await;
            all.extend(found(&phone, &format!("{place} at {width}")).await);
        }
        // One that is watched, one that is finished, one in bottles, one whose wort cools.
        for batch in ["b", "s", "o", "w"] {
            for stage in STAGES {
                let place = format!("#/batch/{batch}/{stage}");
                phone.go(&place).await;
                phone.unfold().await;
                all.extend(found(&phone, &format!("{place} at {width}")).await);
            }
        }
    }
    assert_eq!(all, Vec::<String>::new());
}

#[tokio::test]
async fn a_form_what_was_saved_and_what_is_asked_keep_nobody_out() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(bitter("b", 9.0, 12)).await;
    phone.all_in_sight().await;
    phone.go("#/batch/b/watch").await;
    phone.tap("Add a reading").await;
    let mut all = found(&phone, "an empty form").await;
    phone.tap("Save the reading").await;
    phone.sees("A reading needs a gravity").await;
    all.extend(found(&phone, "a form that lacks something").await);
    // So far above the last one that it is asked about.
    phone.type_into("Hydrometer reads", "1.040").await;
    phone.type_into("Sample temperature", "20").await;
    phone.tap("Save the reading").await;
    phone
        .wait_until("it is asked about", "return document.querySelector('[role=alert]') !== null")
        .await;
    all.extend(found(&phone, "a form that asks").await);
    phone.type_into("Hydrometer reads", "1.011").await;
    phone.tap("Save the reading").await;
    phone.says(".undo", "Reading saved").await;
    phone.waits_for_no(".reading-form").await;
    all.extend(found(&phone, "a reading saved").await);
    phone.open_rows().await;
    phone.tap("Delete the reading").await;
    phone.says(".undo", "Reading deleted").await;
    all.extend(found(&phone, "a reading deleted").await);
    assert_eq!(all, Vec::<String>::new());
}

#[tokio::test]
async fn a_stop_a_conflict_and_a_stopped_page_keep_nobody_out() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(full()).await;
    phone.all_in_sight().await;
    let mut all = vec![];
    phone.go("#/batch/o/open").await;
    phone.tap("5 gushes").await;
    phone.tap("Save").await;
    phone.says(".verdict .verdict-word", "Stop").await;
    phone.unfold().await;
    all.extend(found(&phone, "bottles that gush").await);
    for place in ["#/now", "#/batches", "#/batch/o/bottle", "#/batch/o/watch"] {
        phone.go(place).await;
        all.extend(found(&phone, &format!("{place} with bottles that gush")).await);
    }
    // The same batch under another name, saved where nobody knew of the first.
    phone.differs(full(), "Cellar best").await;
    phone.go("#/gear").await;
    phone.sees("Cellar best").await;
    all.extend(found(&phone, "two versions").await);
    let stopped = "document.documentElement.dataset.stopped = '';
        document.getElementById('stopped').hidden = false;";
    phone.run(stopped).await;
    all.extend(found(&phone, "a stopped page").await);
    assert_eq!(all, Vec::<String>::new());
}

#[tokio::test]
async fn the_verdict_the_course_and_each_step_have_headings() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(full()).await;
    let heads = "return [...document.querySelectorAll('main :is(h1, h2, h3)')]
      .filter((h) => h.checkVisibility()).map((h) => h.innerText.trim().split('\\n')[0])";
    phone.go("#/batch/b/watch").await;
    let watch = lines(&phone.run(heads).await).join("|");
    for head in ["Cellar bitter", "Go", "The course", "Log"] {
        assert!(watch.contains(head), "{watch}");
    }
    phone.go("#/batch/w/pitch").await;
    let pitch = lines(&phone.run(heads).await).join("|");
    assert!(pitch.contains("Cool"), "{pitch}");
}

/// In the page: what tells the place and the stage where one is from the others.
const MARKS: &str = "
  const style = (e, of) => { const s = getComputedStyle(e, of); return [s.borderTopWidth, s.borderTopStyle, s.fontWeight].join(' '); };
  const two = (all) => {
    const here = document.querySelector(`${all}[aria-current]`);
    const other = document.querySelector(`${all}:not([aria-current])`);
    return style(here) !== style(other);
  };
  const to_come = [...document.querySelectorAll('.stages a:not(.done, [aria-current])')];
  return [two('.places a'), two('.stages a'), to_come.every((a) => getComputedStyle(a).borderTopStyle === 'dotted')];";

#[tokio::test]
async fn forced_colours_keep_the_marks_of_place_and_stage() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(full()).await;
    let features = json!([{ "name": "forced-colors", "value": "active" }]);
    phone.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await;
    phone.go("#/batch/b/watch").await;
    assert_eq!(phone.run(MARKS).await, json!([true, true, true]));
    phone.screenshot("forced-watch").await;
    phone.go("#/batches").await;
    phone.screenshot("forced-batches").await;
}
