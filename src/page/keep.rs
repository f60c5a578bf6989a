//! The drafts in the browser's storage, beside the records: they may be written over.

use super::clock;
use crate::app::Drafts;
use crate::json::read_texts;
use crate::json_texts::write_texts;
use crate::order::ByKey;
use crate::store::{Lying, Note};

/// Not a record: it has a key of its own outside the archive's.
pub const KEY: &str = "fermentside-drafts";
/// When they were last written there, milliseconds since 1970.
const WHEN: &str = "fermentside-drafts-at";

/// What this page last read or wrote, so that another tab's fields stay as that tab left them.
pub struct Kept(ByKey<String, String>);

impl Kept {
    /// The drafts that the page was closed with.
    pub fn restored() -> (Self, Drafts) {
        let texts = stored();
        let drafts = Drafts::of(texts.iter().map(|(name, text)| (name.clone(), text.clone())));
        (Self(texts), drafts)
    }

    /// What lay on the second shelf, where it was put there later than the first store knows of: that may
    /// have lost what it was given last, and a page that goes may not have reached the second shelf any
    /// more. Not once something was typed here.
    pub fn adopt(&mut self, late: &Lying, drafts: &Drafts) -> Option<Drafts> {
        let texts: ByKey<String, String> = read_texts(&late.text).ok()?.into_iter().collect();
        if of(drafts) != self.0 || texts == self.0 {
            return None;
        }
        let storage = storage()?;
        let when = storage.get_item(WHEN).ok().flatten().and_then(|when| when.parse::<u64>().ok());
        if when.is_some_and(|when| when as f64 > late.since) {
            return None;
        }
        storage.set_item(KEY, &late.text).ok()?;
        self.0 = texts;
        Some(Drafts::of(self.0.iter().map(|(name, text)| (name.clone(), text.clone()))))
    }

    /// Writes down what was typed or forgotten here since, and gives what now stands there, for the second
    /// shelf. Where there is no storage drafts live as long as the page does.
    pub fn keep(&mut self, drafts: &Drafts) -> Vec<Note> {
        let now = of(drafts);
        if now == self.0 {
            return vec![];
        }
        let mut all = stored();
        for (name, _) in self.0.iter().filter(|(name, _)| now.get(name).is_none()) {
            all.remove(name);
        }
        for (name, text) in now.iter().filter(|(name, text)| self.0.get(name) != Some(*text)) {
            all.insert(name.clone(), text.clone());
        }
        self.0 = now;
        let (Some(storage), Ok(text)) = (storage(), write_texts(all.iter())) else { return vec![] };
        let _ = storage.set_item(KEY, &text);
        let _ = storage.set_item(WHEN, &format!("{:.0}", clock::milliseconds()));
        vec![Note { key: KEY.to_owned(), text: Some(text) }]
    }
}

fn of(drafts: &Drafts) -> ByKey<String, String> {
    drafts.texts().into_iter().collect()
}

fn stored() -> ByKey<String, String> {
    let text = storage().and_then(|storage| storage.get_item(KEY).ok().flatten());
    let texts = text.and_then(|text| read_texts(&text).ok()).unwrap_or_default();
    texts.into_iter().collect()
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok().flatten())
}
