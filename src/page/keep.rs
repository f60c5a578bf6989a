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

/// What is half typed, as far as the browser keeps it.
pub struct Kept {
    /// What this page last read or wrote, so that another tab's fields stay as that tab left them.
    known: ByKey<String, String>,
    /// The last writing was refused.
    pub refused: bool,
}

impl Kept {
    /// The drafts that the page was closed with.
    pub fn restored() -> (Self, Drafts) {
        let texts = stored();
        let drafts = Drafts::of(texts.iter().map(|(name, text)| (name.clone(), text.clone())));
        (Self { known: texts, refused: false }, drafts)
    }

    /// What lay on the second shelf, where it was put there later than the first store knows of: that may
    /// have lost what it was given last, and a page that goes may not have reached the second shelf any
    /// more. Not once something was typed here.
    pub fn adopt(&mut self, late: &Lying, drafts: &Drafts) -> Option<Drafts> {
        let texts: ByKey<String, String> = read_texts(&late.text).ok()?.into_iter().collect();
        if of(drafts) != self.known || texts == self.known {
            return None;
        }
        let storage = storage()?;
        let when = storage.get_item(WHEN).ok().flatten().and_then(|when| when.parse::<u64>().ok());
        if when.is_some_and(|when| when as f64 > late.since) {
            return None;
        }
        // A full store refuses it again: then it lies on the second shelf alone.
        self.refused = storage.set_item(KEY, &late.text).is_err();
        let drafts = Drafts::of(texts.iter().map(|(name, text)| (name.clone(), text.clone())));
        if !self.refused {
            self.known = texts;
        }
        Some(drafts)
    }

    /// Writes down what was typed or forgotten here since, and gives what now stands there, for the second
    /// shelf. Where there is no storage drafts live as long as the page does.
    pub fn keep(&mut self, drafts: &Drafts) -> Vec<Note> {
        let now = of(drafts);
        if now == self.known && !self.refused {
            return vec![];
        }
        let mut all = stored();
        for (name, _) in self.known.iter().filter(|(name, _)| now.get(name).is_none()) {
            all.remove(name);
        }
        for (name, text) in now.iter().filter(|(name, text)| self.known.get(name) != Some(*text)) {
            all.insert(name.clone(), text.clone());
        }
        let (Some(storage), Ok(text)) = (storage(), write_texts(all.iter())) else { return vec![] };
        self.refused = storage.set_item(KEY, &text).is_err();
        if !self.refused {
            self.known = now;
            let _ = storage.set_item(WHEN, &format!("{:.0}", clock::milliseconds()));
        }
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
