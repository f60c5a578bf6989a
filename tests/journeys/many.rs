//! Many savings: by two tabs at once, and with every kind of failure at each. `AT_LENGTH=1` makes hundreds
//! of them.

use serde_json::json;

use crate::brewing::opened;
use crate::phone::Phone;
use crate::script::{HANDS, LYING};
use crate::start_up::{at_length, say};

/// How many readings each tab notes.
fn each() -> usize {
    if at_length() { 200 } else { 40 }
}

/// So many writings go wrong at the least.
fn faults() -> usize {
    if at_length() { 500 } else { 100 }
}

/// Begins to note readings in the tab at hand and does not wait for the end.
async fn begins_to_note(phone: &Phone, tab: &str) {
    let each = each();
    let script = format!(
        "{HANDS}
         window.begun = performance.now();
         const all = async () => {{
           for (let n = 0; n < {each}; n += 1) {{
             await fill(`{tab} ${{n}}`);
             const answer = await send();
             if (answer !== 'saved') throw new Error(answer);
           }}
           return 'done';
         }};
         window.noted = all().catch(String).then((end) => {{ window.took = performance.now() - window.begun; return end; }});"
    );
    phone.run(&script).await;
}

async fn has_noted(phone: &Phone) -> f64 {
    // Longer than a script may take, should the machine be busy.
    for _ in 0..4 {
        let end = phone.settle("Promise.race([window.noted, new Promise((go) => setTimeout(() => go('on'), 50000))])").await;
        if end != json!("on") {
            assert_eq!(end, json!("done"));
            return phone.run("return window.took").await.as_f64().unwrap_or_default();
        }
    }
    panic!("it does not end");
}

#[tokio::test]
async fn two_tabs_that_note_readings_at_once_keep_them_all() {
    let each = each();
    let (server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    // From the second on the form closes when it is saved and not before.
    phone.log_reading(&batch, "1.048", 2.0).await;
    let first = phone.driver().window().await.unwrap();
    let second = phone.driver().new_tab().await.unwrap();
    phone.driver().switch_to_window(second.clone()).await.unwrap();
    phone.open(&format!("{}{batch}watch", server.address())).await;
    phone.driver().switch_to_window(first.clone()).await.unwrap();
    begins_to_note(&phone, "first").await;
    phone.driver().switch_to_window(second.clone()).await.unwrap();
    begins_to_note(&phone, "second").await;
    let of_second = has_noted(&phone).await;
    phone.driver().switch_to_window(first).await.unwrap();
    let of_first = has_noted(&phone).await;
    say(&format!(
        "two tabs noted {each} readings each at once in {:.1} and {:.1} s",
        of_first / 1000.0,
        of_second / 1000.0
    ));

    phone.reload().await;
    phone.tap(&format!("{} earlier", 2 * each - 4)).await;
    let count =
        format!("return document.querySelectorAll('.log-line').length === {}", 2 * each + 1);
    phone.wait_until("all readings are there", &count).await;
    phone.sees_no("changed in two places").await;
    phone.sees_no("could not be read").await;
    let script =
        format!("{LYING} const {{ notes, broken }} = lying(); return [notes.sort(), broken];");
    let found = phone.run(&script).await;
    let mut wanted: Vec<String> = ["first", "second"]
        .iter()
        .flat_map(|tab| (0..each).map(move |n| format!("{tab} {n}")))
        .collect();
    wanted.push(String::new());
    wanted.sort();
    assert_eq!(found, json!([wanted, 0]));
    phone.is_well().await;
}

/// One writing of a record goes wrong, as `window.fault` says; then they go well again.
const FAULTY: &str = "
  window.faults = 0;
  const set = Storage.prototype.setItem;
  Storage.prototype.setItem = function (key, text) {
    const fault = key.startsWith('fermentside/') ? window.fault : null;
    if (!fault) return set.call(this, key, text);
    window.fault = null;
    window.faults += 1;
    if (fault === 'refused') throw new DOMException('no', 'UnknownError');
    if (fault === 'full') throw new DOMException('no', 'QuotaExceededError');
    if (fault === 'torn') return set.call(this, key, text.slice(0, text.length / 2));
  };";

#[tokio::test]
async fn whichever_writing_goes_wrong_in_the_browser_nothing_shown_as_saved_is_missing() {
    let wanted = faults();
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    // From the second on the form closes when it is saved and not before.
    phone.log_reading(&batch, "1.048", 2.0).await;
    phone.run(FAULTY).await;
    let script = format!(
        "{HANDS} {LYING}
         const told = [''];
         const agrees = (when) => {{
           const {{ notes, broken }} = lying();
           if (broken || notes.sort().join() !== [...told].sort().join())
             throw new Error(`${{when}}: ${{broken}} broken; there lie ${{notes}}; told were ${{told}}: ${{document.body.innerText}}`);
         }};
         const all = async () => {{
           for (let n = 0; window.faults < {wanted}; n += 1) {{
             let answer = '';
             for (const fault of ['refused', 'lost', 'torn', 'full', null]) {{
               await fill(`reading ${{n}}`);
               window.fault = fault;
               answer = await send();
               if (answer === 'saved') told.push(`reading ${{n}}`);
               else if (!answer.startsWith('Not saved')) throw new Error(answer);
               agrees(`${{n}}, ${{fault}}`);
               if (answer === 'saved') break;
             }}
             if (answer !== 'saved') throw new Error(`${{n}}: ${{answer}}`);
           }}
           return 'done';
         }};
         window.begun = performance.now();
         window.told = told;
         window.noted = all().catch(String).then((end) => {{ window.took = performance.now() - window.begun; return end; }});"
    );
    phone.run(&script).await;
    let took = has_noted(&phone).await;
    let found = phone.run("return [window.faults, window.told]").await;
    let (faults, told) =
        (found[0].as_u64().unwrap() as usize, found[1].as_array().unwrap().clone());
    say(&format!(
        "{faults} writings went wrong in the browser, {} readings were saved in {:.1} s",
        told.len(),
        took / 1000.0
    ));
    assert!(faults >= wanted && told.len() > wanted / 5, "{faults}, {}", told.len());
    phone.is_well().await;
    phone.reload().await;
    phone.tap(&format!("{} earlier", told.len() - 5)).await;
    let count = format!("return document.querySelectorAll('.log-line').length === {}", told.len());
    phone.wait_until("all that was told is there", &count).await;
    phone.sees_no("could not be read").await;
    phone.sees_no("changed in two places").await;
}
