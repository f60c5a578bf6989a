//! What stands in the first screen of a small phone: the answer and the course, however long the log is.

use serde_json::{Value, json};

use crate::brewing::opened;
use crate::cellar::{bitter, full};
use crate::noticing::lines;

/// In the page: where the plate begins and the course ends, where the bars at the foot begin, and how long the
/// whole page is.
const PLACES: &str = "
  scrollTo(0, 0);
  const box = (what) => document.querySelector(what)?.getBoundingClientRect();
  return {
    plate: box('.plate').top,
    plate_ends: box('.plate').bottom,
    course: box('.picture-course').bottom,
    bar: Math.min(box('.act').top, box('.places').top),
    page: document.documentElement.scrollHeight,
  };";

#[tokio::test]
async fn plate_and_course_stand_in_the_first_screen_with_three_twelve_and_sixty_readings() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    let mut wrong = vec![];
    for (readings, days) in [(3, 4.0), (12, 9.0), (60, 20.0)] {
        phone.holds(bitter("b", days, readings)).await;
        phone.go("#/batch/b/watch").await;
        phone.says(".plate", "Why, and how sure").await;
        phone.draws().await;
        let found = phone.run(PLACES).await;
        println!("{readings} readings: {found}");
        let at = |name: &str| found[name].as_f64().unwrap_or(f64::INFINITY);
        let bounds = [
            ("the plate begins below 140", at("plate") <= 140.0),
            ("the course is not in the first screen", at("course") <= at("bar")),
            ("Watch is longer than two screens and a half", at("page") <= 2.5 * 640.0),
        ];
        wrong.extend(
            bounds
                .iter()
                .filter(|(_, so)| !so)
                .map(|(what, _)| format!("{readings} readings: {what}: {found}")),
        );
        assert_eq!(phone.count(".log-line").await, readings.min(5) as usize);
        phone.go("#/now").await;
        phone.draws().await;
        let whole = "const jar = document.querySelector('.picture-jar').getBoundingClientRect();
          return jar.bottom <= document.querySelector('.act').getBoundingClientRect().top;";
        if phone.run(whole).await != json!(true) {
            wrong.push(format!("{readings} readings: the jar on Now is cut"));
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
    phone.is_well().await;
}

/// In the page: pairs of letterings in the course that lie over each other.
const OVERLAPS: &str = "
  const all = [...document.querySelectorAll('.course-touch text')].filter((t) => t.textContent.trim());
  const boxes = all.map((t) => [t.textContent, t.getBoundingClientRect()]);
  const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 5;
  return boxes.flatMap(([said, a], at) => boxes.slice(at + 1)
    .filter(([, b]) => over(a, b)).map(([other]) => `${said} / ${other}`));";

/// In the page: letterings of the course that lie over a reading or a temperature.
const HIDDEN: &str = "
  const picture = document.querySelector('.picture-course');
  const whole = picture.getBoundingClientRect();
  const points = [...picture.querySelectorAll('.course-dot')].flatMap((path) =>
    [...path.getAttribute('d').matchAll(/M([\\d.]+) ([\\d.]+)h/g)].map((at) =>
      [whole.left + at[1] * whole.width / 320, whole.top + at[2] * whole.height / 300]));
  const all = [...picture.querySelectorAll('text')].filter((t) => t.textContent.trim());
  return all.filter((t) => {
    const box = t.getBoundingClientRect();
    return points.some(([x, y]) => box.left + 2 < x && x < box.right - 2 && box.top + 4 < y && y < box.bottom - 4);
  }).map((t) => `${t.textContent} over a point`);";

#[tokio::test]
async fn no_lettering_of_the_course_lies_over_another_or_over_a_point() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    let mut found = vec![];
    for (readings, days) in [(1, 0.5), (3, 4.0), (12, 9.0), (60, 20.0)] {
        phone.holds(bitter("b", days, readings)).await;
        for (width, height) in [(320, 640), (360, 640), (390, 844), (768, 1024), (1280, 800)] {
            phone.screen(width, height).await;
            phone.go("#/now").await;
            phone.go("#/batch/b/watch").await;
            phone.draws().await;
            let mut pairs = lines(&phone.run(OVERLAPS).await);
            pairs.extend(lines(&phone.run(HIDDEN).await));
            found.extend(pairs.iter().map(|pair| format!("{readings} at {width}: {pair}")));
        }
        phone.screen(360, 640).await;
    }
    assert_eq!(found, Vec::<String>::new());
}

#[tokio::test]
async fn no_date_of_the_way_is_broken_and_all_four_stand_in_one_row() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(full()).await;
    for width in [320, 360, 390, 1280] {
        phone.screen(width, 640).await;
        for batch in ["b", "s", "o", "w"] {
            phone.go(&format!("#/batch/{batch}/watch")).await;
            let rows = "const all = [...document.querySelectorAll('.stages a')].map((a) => a.getBoundingClientRect());
              const high = Math.max(...[...document.querySelectorAll('.way-when')].map((w) => w.getClientRects()[0]?.height ?? 0));
              return [new Set(all.map((a) => Math.round(a.top))).size, high < 26];";
            assert_eq!(phone.run(rows).await, json!([1, true]), "{batch} at {width}");
        }
    }
}

#[tokio::test]
async fn what_was_done_is_told_in_the_flow_and_covers_nothing() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(bitter("b", 4.0, 3)).await;
    phone.go("#/batch/b/watch").await;
    phone.tap("Add a reading").await;
    phone.type_into("Hydrometer reads", "1.015").await;
    phone.type_into("Sample temperature", "20").await;
    phone.tap("Save the reading").await;
    phone.says(".undo", "Reading saved").await;
    phone.waits_for_no(".reading-form").await;
    let under = "scrollTo(0, 0);
      const bar = document.querySelector('.undo').getBoundingClientRect();
      const main = document.querySelector('main').getBoundingClientRect();
      const plate = document.querySelector('.plate').getBoundingClientRect();
      return [bar.bottom <= main.top + 1, plate.top < innerHeight / 2, document.activeElement.id];";
    let told: Value = phone.run(under).await;
    assert_eq!(told, json!([true, true, "watch-finish"]));
}

/// In the page, while a field has the attention: how much of the screen is left between what sticks, and whether
/// the field is seen whole there.
const LEFT: &str = "
  const field = document.activeElement;
  const sticks = [...document.querySelectorAll('body *')].filter((e) =>
    ['fixed', 'sticky'].includes(getComputedStyle(e).position) && e.checkVisibility());
  const boxes = sticks.map((e) => e.getBoundingClientRect()).filter((b) => b.bottom > 0 && b.top < innerHeight);
  const tops = boxes.filter((b) => b.top < innerHeight / 2).map((b) => b.bottom);
  const feet = boxes.filter((b) => b.top >= innerHeight / 2).map((b) => b.top);
  const [top, foot] = [Math.max(0, ...tops), Math.min(innerHeight, ...feet)];
  const box = field.getBoundingClientRect();
  return [foot - top, box.top >= top - 1 && box.bottom <= foot + 1];";

#[tokio::test]
async fn a_wide_screen_at_four_hundred_per_cent_leaves_room_to_work() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(bitter("b", 9.0, 12)).await;
    phone.screen(320, 200).await;
    for (place, field, text) in [
        ("#/batch/b/watch", "Hydrometer reads", "1.011"),
        ("#/bench/gravity", "Hydrometer reads", "1.050"),
        ("#/bench/sugar", "Beer to bottle", "19"),
        ("#/batches/new", "Name", "Cellar bitter"),
    ] {
        phone.go(place).await;
        if place.ends_with("watch") {
            phone.tap("Add a reading").await;
        }
        phone.type_into(field, text).await;
        phone.draws().await;
        let found = phone.run(LEFT).await;
        let room = found[0].as_f64().unwrap_or(0.0);
        assert!(room >= 100.0, "{place}: {room} of 200 pixels are left");
        assert_eq!(found[1], json!(true), "{place}: {field} is not seen whole");
        assert_eq!(phone.sideways_scroll().await, 0, "{place}");
    }
}

#[tokio::test]
async fn with_the_keyboard_up_gravity_temperature_and_save_are_in_sight() {
    let (_server, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(bitter("b", 9.0, 12)).await;
    phone.go("#/batch/b/watch").await;
    phone.tap("Add a reading").await;
    // What a keyboard leaves of 640 pixels.
    phone.screen(360, 340).await;
    phone.type_into("Hydrometer reads", "1.011").await;
    phone.draws().await;
    let feet = "return [...document.querySelectorAll('.reading-form .field-row, .reading-form .main-action')]
        .slice(0, 3).map((e) => e.getBoundingClientRect()).every((b) => b.top >= 0 && b.bottom <= innerHeight)";
    assert_eq!(phone.run(feet).await, json!(true));
}
