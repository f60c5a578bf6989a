//! Finding things on the phone by what a person reads, and touching them.

use serde_json::{Value, json};
use std::time::{Duration, Instant};
use thirtyfour::{Key, TypingData, WebElement};

use crate::phone::{PATIENCE, Phone};

/// Words in the page for the scripts below: what is seen, and what is written on it.
const WORDS: &str = "
  const seen = (e) => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0;
  const clean = (text) => (text ?? '').replace(/\\s+/g, ' ').trim();
  const named = (e) => clean(e.getAttribute('aria-label')) || clean(e.innerText);
  const best = (all, want, name) => all.find((e) => name(e) === want) ?? all.find((e) => name(e).startsWith(want));
";

/// A field's control: by its visible label, else by its spoken one. The whole label, or how it begins.
const FIELD: &str = "
  const labels = [...document.querySelectorAll('label')].filter((l) => seen(l) && l.control);
  const spoken = [...document.querySelectorAll('input, select, textarea, [role=slider]')]
    .filter((e) => seen(e) && e.hasAttribute('aria-label'));
  return best(labels, arguments[0], (l) => clean(l.innerText))?.control ?? best(spoken, arguments[0], named);
";

/// Whatever can be tapped and bears these words.
const TOUCHABLE: &str = "
  const all = [...document.querySelectorAll('button, a[href], summary, label, [role=button], [role=tab], [role=link]')];
  return best(all.filter(seen), arguments[0], named);
";

impl Phone {
    /// Taps what bears these words: a button, a link, a choice.
    pub async fn tap(&self, words: &str) {
        self.tap_found(&format!("something to tap that says {words:?}"), TOUCHABLE, words).await;
    }

    /// Taps what a CSS selector finds; only where there are no words.
    pub async fn tap_at(&self, selector: &str) {
        let find = "return [...document.querySelectorAll(arguments[0])].find(seen)";
        self.tap_found(&format!("something at {selector}"), find, selector).await;
    }

    async fn tap_found(&self, what: &str, script: &str, arg: &str) {
        let begun = Instant::now();
        // It may be covered, or be drawn anew, just now: then it is tried again, as a person would,
        // who moves the page on first.
        while let Err(error) = self.find(what, script, arg).await.click().await {
            assert!(begun.elapsed() < PATIENCE, "{what} cannot be tapped: {error}");
            let found = self.find(what, script, arg).await.to_json().unwrap();
            let centre = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })";
            let _ = self.try_run(centre, vec![found]).await;
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }

    /// Puts text into the field with this label, in place of what was there.
    pub async fn type_into(&self, label: &str, text: &str) {
        let field = self.field(label).await;
        let select = "arguments[0].focus(); arguments[0].select?.()";
        self.try_run(select, vec![field.to_json().unwrap()]).await.unwrap();
        let keys = if text.is_empty() { TypingData::from(Key::Delete) } else { text.into() };
        field
            .send_keys(keys)
            .await
            .unwrap_or_else(|error| panic!("typing into {label:?}: {error}"));
    }

    /// Sets a field the phone has its own picker for (a date, a time): `set("Day", "2026-05-01")`.
    pub async fn set(&self, label: &str, value: &str) {
        let field = self.field(label).await;
        let script = "
          arguments[0].value = arguments[1];
          for (const name of ['input', 'change']) arguments[0].dispatchEvent(new Event(name, { bubbles: true }));";
        self.try_run(script, vec![field.to_json().unwrap(), json!(value)]).await.unwrap();
    }

    /// Chooses an option of the list with this label: what is written on it, or how that begins.
    pub async fn choose(&self, label: &str, option: &str) {
        let list = self.field(label).await;
        let script = format!(
            "{WORDS}
             const option = best([...arguments[0].options], arguments[1], (o) => clean(o.text));
             if (!option) return false;
             arguments[0].value = option.value;
             for (const name of ['input', 'change']) arguments[0].dispatchEvent(new Event(name, {{ bubbles: true }}));
             return true;"
        );
        let done = self.try_run(&script, vec![list.to_json().unwrap(), json!(option)]).await;
        assert_eq!(done, Ok(Value::Bool(true)), "{label:?} has no option {option:?}");
    }

    /// What stands in the field with this label.
    pub async fn value_in(&self, label: &str) -> String {
        self.field(label).await.prop("value").await.unwrap().unwrap_or_default()
    }

    /// Presses a key where the focus is: `press(Key::Tab)`, `press("9")`.
    pub async fn press(&self, key: impl Into<TypingData>) {
        let keys = self.driver().action_chain().send_keys(key);
        keys.perform().await.expect("a key can be pressed");
    }

    /// Goes on to the next thing by keyboard, and says what is written on it.
    pub async fn press_tab(&self) -> String {
        self.press(Key::Tab).await;
        let script = format!(
            "{WORDS} const e = document.activeElement;
             return clean(e.labels?.[0]?.innerText) || named(e) || e.tagName"
        );
        self.run(&script).await.as_str().unwrap_or_default().to_owned()
    }

    /// Waits until this text is on the screen.
    pub async fn sees(&self, text: &str) {
        let shown = format!("return document.body.innerText.includes({})", json!(text));
        self.wait_until(&format!("{text:?} is on the screen"), &shown).await;
    }

    /// Waits until this text is not, or no longer, on the screen.
    pub async fn sees_no(&self, text: &str) {
        let gone = format!("return !document.body.innerText.includes({})", json!(text));
        self.wait_until(&format!("{text:?} is gone"), &gone).await;
    }

    /// The text of the first thing a CSS selector finds, once it is there.
    pub async fn text_of(&self, selector: &str) -> String {
        let find = "return document.querySelector(arguments[0])";
        let found = self.find(&format!("something at {selector}"), find, selector).await;
        found.text().await.unwrap_or_else(|error| panic!("{selector}: {error}"))
    }

    /// How many things a CSS selector finds right now.
    pub async fn count(&self, selector: &str) -> usize {
        let script = format!("return document.querySelectorAll({}).length", json!(selector));
        self.run(&script).await.as_u64().map_or(0, |count| count as usize)
    }

    /// The control of the field with this label, once it is there.
    pub async fn field(&self, label: &str) -> WebElement {
        self.find(&format!("a field labelled {label:?}"), FIELD, label).await
    }

    async fn find(&self, what: &str, script: &str, arg: &str) -> WebElement {
        let begun = Instant::now();
        let script = format!("{WORDS} {script}");
        loop {
            if let Ok(answer) = self.driver().execute(script.as_str(), vec![json!(arg)]).await
                && let Ok(found) = answer.element()
            {
                return found;
            }
            if begun.elapsed() > PATIENCE {
                panic!("there is no {what}; on the screen:\n{}", self.screen_text().await);
            }
            tokio::time::sleep(Duration::from_millis(30)).await;
        }
    }
}
