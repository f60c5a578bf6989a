//! The main screens as they looked when last looked at, in a quarter of their size.
//!
//! `PICTURES=write` keeps them anew: look at `target/shots/pictures` first. What is compared is blocks of the
//! picture, each with its neighbours, and where the main parts stand, so that another font passes and a broken
//! layout does not.

use serde_json::{Map, Value, json};
use std::fs;
use std::path::{Path, PathBuf};

use crate::brewing::opened;
use crate::build;
use crate::cellar::full;
use crate::phone::Phone;
use crate::server::Server;

const SIZES: [(u32, u32); 5] = [(320, 640), (360, 640), (390, 844), (768, 1024), (1280, 800)];

/// A screen, its address, and what is tapped there.
const SCREENS: [(&str, &str, &str); 9] = [
    ("now", "#/now", ""),
    ("watch", "#/batch/b/watch", ""),
    ("reading", "#/batch/b/watch", "Add a reading"),
    ("pitch", "#/batch/w/pitch", ""),
    ("bottle", "#/batch/s/bottle", ""),
    ("open", "#/batch/o/open", ""),
    ("batches", "#/batches", ""),
    ("gravity", "#/bench/gravity", ""),
    ("gear", "#/gear", ""),
];

/// More blocks than this that are nowhere near alike, and it is another picture.
const MOST: f64 = 0.12;
/// Where the main parts stand on each picture.
const BOXES: &str = "tests/journeys/pictures/boxes.json";

fn folder(place: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(place)
}

/// The look of the phone: by day or by night, and nothing that moves.
async fn by(phone: &Phone, night: bool) {
    let scheme = if night { "dark" } else { "light" };
    let features = json!([
        { "name": "prefers-color-scheme", "value": scheme },
        { "name": "prefers-reduced-motion", "value": "reduce" },
    ]);
    phone.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await;
}

/// In the page: left edge, top, width and height of each main part that is there, to 8 pixels.
const PARTS: &str = "
  const parts = ['h1', '.stages', '.plate', '.act', '.places', '.picture-course', '.picture-jar', '.stem',
    '.reading-form', '.watch-log', '.batch-list'];
  const box = (e) => { const b = e.getBoundingClientRect(); return [b.x, b.y, b.width, b.height].map((n) => 8 * Math.round(n / 8)); };
  const there = parts.map((what) => [what, document.querySelector(what)]).filter(([, e]) => e?.checkVisibility());
  return Object.fromEntries(there.map(([what, e]) => [what, box(e)]));";

/// Takes a picture, and gives where the main parts stand on it.
async fn take(phone: &Phone, name: &str) -> Value {
    phone.run("scrollTo(0, 0); document.activeElement?.blur()").await;
    phone.draws().await;
    phone.screenshot(&format!("pictures/{name}")).await;
    phone.run(PARTS).await
}

/// What stands elsewhere than it did, further than another font could bring it.
fn moved(before: &Value, now: &Value) -> Vec<String> {
    let empty = Map::new();
    let [before, now] = [before, now].map(|boxes| boxes.as_object().unwrap_or(&empty));
    let mut found: Vec<String> = now
        .keys()
        .filter(|part| !before.contains_key(*part))
        .map(|p| format!("{p} is new"))
        .collect();
    for (part, was) in before {
        let Some(is) = now.get(part) else {
            found.push(format!("{part} is gone"));
            continue;
        };
        let by =
            |at: usize| (is[at].as_f64().unwrap_or(0.0) - was[at].as_f64().unwrap_or(0.0)).abs();
        let height = was[3].as_f64().unwrap_or(0.0);
        // The places stand at the edge whatever the letters are.
        let down = if part == ".places" { 24.0 } else { 96.0 };
        let most = [32.0, down, 32.0, (0.35 * height).max(64.0)];
        if (0..4).any(|at| by(at) > most[at]) {
            found.push(format!("{part} was at {was} and is at {is}"));
        }
    }
    found
}

/// Takes every screen at this size, and gives their names with their width.
async fn all_at(phone: &Phone, (width, height): (u32, u32)) -> Vec<(String, u32, Value)> {
    let mut taken = vec![];
    phone.screen(width, height).await;
    for (screen, address, tap) in SCREENS {
        for night in [false, true] {
            by(phone, night).await;
            phone.go("#/bench").await;
            phone.go(address).await;
            if !tap.is_empty() {
                phone.tap(tap).await;
                phone.draws().await;
            }
            let name = format!("{screen}-{width}-{}", if night { "night" } else { "day" });
            let boxes = take(phone, &name).await;
            taken.push((name, width, boxes));
        }
    }
    taken
}

/// A page that has the pictures that are kept below `/kept/` and those that were taken below `/taken/`.
async fn at_the_table(phone: &Phone) -> Server {
    let table = build::scratch("pictures");
    for (name, from) in [("kept", "tests/journeys/pictures"), ("taken", "target/shots/pictures")] {
        fs::create_dir_all(table.join(name)).expect("there is room");
        for file in fs::read_dir(folder(from)).expect("pictures are there") {
            let file = file.expect("a file");
            fs::copy(file.path(), table.join(name).join(file.file_name())).expect("there is room");
        }
    }
    fs::write(table.join("index.html"), "<!doctype html><title>Pictures</title>").expect("room");
    let server = Server::serving(&table, "/");
    phone.driver().goto(server.address()).await.expect("the table is served");
    phone.run(include_str!("pictures.js")).await;
    server
}

/// The share of blocks of one picture that are unlike those of another, below these addresses.
async fn unlike(phone: &Phone, one: &str, other: &str, width: u32) -> f64 {
    let script =
        format!("{{ return await window.held({}, {}, {width}); }}", json!(one), json!(other));
    phone.settle(&script).await.as_f64().unwrap_or(1.0)
}

async fn keep(phone: &Phone, name: &str, width: u32) {
    let script = format!("{{ return await window.small('/taken/{name}.png', {width}); }}");
    let Value::Array(bytes) = phone.settle(&script).await else { panic!("{name} is no picture") };
    let bytes: Vec<u8> = bytes.iter().filter_map(|b| u8::try_from(b.as_u64()?).ok()).collect();
    let file = folder("tests/journeys/pictures").join(format!("{name}.png"));
    fs::write(file, bytes).expect("it can be kept");
}

#[tokio::test]
async fn the_main_screens_look_as_they_are_kept() {
    let (_page, phone) = opened().await;
    phone.stands_still().await;
    phone.reload().await;
    let mut taken = vec![];
    phone.screen(360, 640).await;
    for night in [false, true] {
        by(&phone, night).await;
        let name = format!("first-360-{}", if night { "night" } else { "day" });
        let boxes = take(&phone, &name).await;
        taken.push((name, 360, boxes));
    }
    phone.holds(full()).await;
    for size in SIZES {
        taken.extend(all_at(&phone, size).await);
    }
    let _table = at_the_table(&phone).await;
    let write = std::env::var("PICTURES").is_ok_and(|how| how == "write");
    if write {
        let boxes: Vec<String> =
            taken.iter().map(|(name, _, boxes)| format!("{}: {boxes}", json!(name))).collect();
        fs::write(folder(BOXES), format!("{{\n{}\n}}\n", boxes.join(",\n"))).expect("room");
        for (name, width, _) in &taken {
            keep(&phone, name, width / 4).await;
        }
        return;
    }
    let kept = fs::read_to_string(folder(BOXES)).expect("the boxes are kept");
    let kept: Value = serde_json::from_str(&kept).expect("the boxes are kept as JSON");
    let mut other = vec![];
    for (name, width, boxes) in taken {
        other.extend(moved(&kept[&name], &boxes).iter().map(|what| format!("{name}: {what}")));
        let (kept, now) = (format!("/kept/{name}.png"), format!("/taken/{name}.png"));
        let share = unlike(&phone, &kept, &now, width / 4).await;
        if share > MOST {
            other.push(format!("{name}: {:.0} % is unlike", 100.0 * share));
        }
    }
    assert_eq!(other, Vec::<String>::new(), "see target/shots/pictures");
}

/// In the page: one more sheet of style.
fn styled(rule: &str) -> String {
    format!(
        "const sheet = new CSSStyleSheet();
         sheet.replaceSync({});
         document.adoptedStyleSheets = [sheet];",
        json!(rule)
    )
}

#[tokio::test]
async fn another_font_is_the_same_picture_and_a_broken_layout_is_not() {
    let (_page, phone) = opened().await;
    phone.stands_still().await;
    phone.holds(full()).await;
    phone.screen(360, 640).await;
    by(&phone, false).await;
    phone.go("#/batch/b/watch").await;
    let looks = [
        ("as-it-is", ""),
        ("another-font", "html { font-family: serif; letter-spacing: 0.03em }"),
        ("no-plate", ".plate { background: none; color: inherit }"),
        ("no-course", ".course-touch { display: none }"),
        ("pushed-aside", "main { margin-left: 90px }"),
        ("bars-in-the-way", ".places { bottom: 240px }"),
        ("no-sheet", "* { all: revert }"),
    ];
    let mut boxes = vec![];
    for (name, rule) in looks {
        phone.run(&styled(rule)).await;
        boxes.push(take(&phone, &format!("try-{name}")).await);
    }
    let _table = at_the_table(&phone).await;
    let mut found = vec![];
    for ((name, _), now) in looks.iter().zip(&boxes) {
        let other = format!("/taken/try-{name}.png");
        let share = unlike(&phone, "/taken/try-as-it-is.png", &other, 90).await;
        found.push((name, share, moved(&boxes[0], now)));
    }
    println!("{found:?}");
    let is_other = |(_, share, moved): &(_, f64, Vec<String>)| *share > MOST || !moved.is_empty();
    let (same, broken) = found.split_at(2);
    assert!(!same.iter().any(is_other), "{same:?}");
    assert!(broken.iter().all(is_other), "{broken:?}");
}
