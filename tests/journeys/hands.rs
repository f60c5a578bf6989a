//! Keyboard alone, and wet fingers.

use thirtyfour::Key;

use crate::brewing::{everywhere, opened};
use crate::noticing::lines;
use crate::phone::Phone;

/// Goes on by Tab until what bears just these words has the focus.
async fn tab_to(phone: &Phone, words: &str) {
    let mut passed = Vec::new();
    while passed.len() < 60 {
        let here = phone.press_tab().await;
        if here == words {
            return;
        }
        passed.push(here);
    }
    panic!("Tab does not lead to {words:?}: {passed:?}");
}

async fn heading_has_focus(phone: &Phone) {
    let script = "return document.activeElement === document.querySelector('main h1')";
    phone.wait_until("the heading has the focus", script).await;
}

#[tokio::test]
async fn a_batch_and_a_reading_by_keyboard_alone() {
    let (_server, phone) = opened().await;
    tab_to(&phone, "Start a batch").await;
    phone.press(Key::Enter).await;
    phone.is_at("/batches/new").await;
    heading_has_focus(&phone).await;
    tab_to(&phone, "Name").await;
    phone.press("Cellar bitter").await;
    tab_to(&phone, "Volume in the fermenter").await;
    phone.press("20").await;
    tab_to(&phone, "Yeast").await;
    phone.press(Key::Up).await;
    tab_to(&phone, "Start").await;
    phone.press(Key::Enter).await;
    phone.is_at("/pitch").await;
    phone.sees("Cellar bitter").await;

    tab_to(&phone, "Watch once pitched").await;
    phone.press(Key::Enter).await;
    phone.is_at("/watch").await;
    heading_has_focus(&phone).await;
    tab_to(&phone, "Hydrometer reads").await;
    phone.press("1.048").await;
    // One radio button of each kind is a stop; arrows choose.
    tab_to(&phone, "Gas knocked out").await;
    phone.press(Key::Down).await;
    let foam = "return document.querySelector('[id^=reading-][id$=-condition-foam]').checked";
    phone.wait_until("foam is chosen", foam).await;
    tab_to(&phone, "Hydrometer in the jar").await;
    phone.press(Key::Up).await;
    tab_to(&phone, "Temperatures, time and note").await;
    phone.press(" ").await;
    tab_to(&phone, "The batch").await;
    tab_to(&phone, "Note").await;
    phone.press("foamy").await;
    // Back to the button, which stands above what is seldom filled in.
    phone.run("document.querySelector('[id$=-gravity]').focus()").await;
    tab_to(&phone, "Save the reading").await;
    phone.press(Key::Enter).await;
    let plate = "return document.activeElement.id === 'watch-finish'";
    phone.wait_until("the plate has the attention", plate).await;
    phone.open_rows().await;
    phone.says(".log-line", "read 1.049").await;
    phone.says(".log-line", "foam hid the line").await;
    phone.says(".log-line", "foamy").await;
    phone.is_well().await;
}

/// In the page: what is too small to be touched with a wet thumb.
pub const SMALL: &str = "
  const all = document.querySelectorAll('a[href], button, summary, select, textarea, input:not([type=radio], [type=checkbox]), label:is(.choice-one, .tick), [role=slider]');
  return [...all].filter((e) => e.checkVisibility()).flatMap((e) => {
    const { width, height } = e.getBoundingClientRect();
    const narrow = e.tagName === 'BUTTON' && width < 47.5;
    if (height >= 47.5 && !narrow) return [];
    const name = (e.getAttribute('aria-label') ?? e.innerText ?? '').trim() || e.id || e.className;
    return [`${e.tagName.toLowerCase()} ${name.slice(0, 40)}: ${Math.round(width)} x ${Math.round(height)}`];
  })";

#[tokio::test]
async fn everything_touched_is_large_enough() {
    let (_server, phone) = opened().await;
    let mut small = Vec::new();
    for place in everywhere(&phone).await {
        phone.go(&place).await;
        phone.unfold().await;
        small.extend(lines(&phone.run(SMALL).await).iter().map(|line| format!("{place} {line}")));
    }
    assert_eq!(small, Vec::<String>::new());
}

#[tokio::test]
async fn the_heading_has_the_attention_after_going_somewhere() {
    let (_server, phone) = opened().await;
    for place in everywhere(&phone).await.iter().filter(|place| *place != "#/now").rev() {
        phone.go(place).await;
        phone
            .wait_until(
                &format!("the heading of {place} has the focus"),
                "return document.activeElement === document.querySelector('main h1')",
            )
            .await;
    }
}

#[tokio::test]
async fn a_finger_that_scrolls_over_the_stem_changes_no_number() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    phone.type_into("Hydrometer reads", "1.014").await;
    let drag = |part: &str| {
        format!(
            "const e = document.querySelector('{part}');
             const box = e.getBoundingClientRect();
             const at = (type, y) => e.dispatchEvent(new PointerEvent(type, {{ bubbles: true, isPrimary: true,
               pointerId: 1, pointerType: 'touch', button: 0, clientX: box.x + 20, clientY: box.y + y }}));
             at('pointerdown', 90); at('pointermove', 80); at('pointermove', 40); at('pointerup', 40);"
        )
    };
    phone.run(&drag(".stem > div")).await;
    phone.draws().await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.014");
    let scrolls = "return getComputedStyle(document.querySelector('.stem')).touchAction";
    assert_eq!(phone.run(scrolls).await, serde_json::json!("auto"));
    // The grip is what moves it.
    phone.run(&drag(".stem-grip")).await;
    phone.draws().await;
    assert_ne!(phone.value_in("Hydrometer reads").await, "1.014");
}

/// Whether what has the focus can be seen: its middle is not below a bar.
const COVERED: &str = "
  const e = document.activeElement;
  if (e === document.body || e.closest('.places, .undo, .act')) return '';
  const box = (e.closest('.choice-one') ?? e).getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + Math.min(box.height / 2, 40)];
  const there = document.elementFromPoint(x, y);
  const bar = there?.closest('.places, .undo, .answer, .verdict');
  return bar && !bar.contains(e) ? `${e.id || e.innerText} below ${bar.className}` : there ? '' : `${e.id} out of sight`";

#[tokio::test]
async fn what_has_the_focus_is_in_sight() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    let mut covered = Vec::new();
    for place in ["#/batches/new", "#/bench/sugar", &format!("{batch}watch")] {
        phone.go(place).await;
        for back in [false, true] {
            for _ in 0..25 {
                phone.press(if back { Key::Shift + Key::Tab } else { Key::Tab.into() }).await;
                let found = phone.run(COVERED).await;
                covered.extend(
                    found.as_str().filter(|c| !c.is_empty()).map(|c| format!("{place}: {c}")),
                );
            }
        }
    }
    assert_eq!(covered, Vec::<String>::new());
}
