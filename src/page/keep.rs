//! The drafts in the browser's storage, beside the records: they may be written over.

use crate::app::Drafts;
use crate::json::read_texts;
use crate::json_texts::write_texts;
use crate::order::ByKey;

/// Not a record: it has a key of its own outside the archive's.
const KEY: &str = "fermentside-drafts";

/// What this page last read or wrote, so that another tab's fields stay as that tab left them.
pub struct Kept(ByKey<String, String>);

impl Kept {
    /// The drafts that the page was closed with.
    pub fn restored() -> (Self, Drafts) {
        let texts = stored();
        let drafts = Drafts::of(texts.iter().map(|(name, text)| (name.clone(), text.clone())));
        (Self(texts), drafts)
    }

    /// Writes down what was typed or forgotten here since. Where there is no storage drafts live as long
    /// as the page does.
    pub fn keep(&mut self, drafts: &Drafts) {
        let now: ByKey<String, String> = drafts.texts().into_iter().collect();
        if now == self.0 {
            return;
        }
        let mut all = stored();
        for (name, _) in self.0.iter().filter(|(name, _)| now.get(name).is_none()) {
            all.remove(name);
        }
        for (name, text) in now.iter().filter(|(name, text)| self.0.get(name) != Some(*text)) {
            all.insert(name.clone(), text.clone());
        }
        self.0 = now;
        if let (Some(storage), Ok(text)) = (storage(), write_texts(all.iter())) {
            let _ = storage.set_item(KEY, &text);
        }
    }
}

fn stored() -> ByKey<String, String> {
    let text = storage().and_then(|storage| storage.get_item(KEY).ok().flatten());
    let texts = text.and_then(|text| read_texts(&text).ok()).unwrap_or_default();
    texts.into_iter().collect()
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok().flatten())
}
