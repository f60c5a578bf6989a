//! What has been typed and not yet saved. It outlives the screen it was typed on, and a closed tab.

use leptos::prelude::*;
use std::collections::BTreeMap;

/// Not a record: it may be written over, so it has a key of its own outside the archive's.
const KEY: &str = "fermentside-drafts";

struct Draft {
    text: ArcRwSignal<String>,
    first: String,
}

/// Every half-filled field of the page, by a key such as `bench/gravity/reading`.
#[derive(Clone, Copy)]
pub struct Drafts {
    kept: StoredValue<BTreeMap<String, Draft>>,
    before: StoredValue<BTreeMap<String, String>>,
}

impl Drafts {
    /// The drafts that the page was closed with.
    pub fn restored() -> Self {
        let stored = storage().and_then(|storage| storage.get_item(KEY).ok().flatten());
        let before = stored.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
        Self { kept: StoredValue::new(BTreeMap::new()), before: StoredValue::new(before) }
    }

    /// The text under `key`, starting with `first` when nothing was typed there before.
    pub fn text(self, key: &str, first: &str) -> RwSignal<String> {
        self.kept
            .try_update_value(|kept| {
                let draft = kept.entry(key.to_owned()).or_insert_with(|| {
                    let before = self.before.with_value(|before| before.get(key).cloned());
                    let text = ArcRwSignal::new(before.unwrap_or_else(|| first.to_owned()));
                    Draft { text, first: first.to_owned() }
                });
                RwSignal::from(draft.text.clone())
            })
            .unwrap_or_else(|| RwSignal::new(first.to_owned()))
    }

    /// Forgets what was typed under keys that start with `prefix`: it has been saved, or thrown away.
    pub fn clear(self, prefix: &str) {
        self.before.update_value(|before| before.retain(|key, _| !key.starts_with(prefix)));
        self.kept.update_value(|kept| {
            for (_, draft) in kept.iter().filter(|(key, _)| key.starts_with(prefix)) {
                draft.text.set(draft.first.clone());
            }
        });
        self.keep();
    }

    /// Drops the fields under `prefix`, so that a form opened next starts from its record.
    pub fn forget(self, prefix: &str) {
        self.before.update_value(|before| before.retain(|key, _| !key.starts_with(prefix)));
        self.kept.update_value(|kept| kept.retain(|key, _| !key.starts_with(prefix)));
    }

    /// Writes the drafts down, as the page goes out of sight. Where there is no storage they live as
    /// long as the page does.
    pub fn keep(self) {
        let mut all = self.before.get_value();
        self.kept.with_value(|kept| {
            for (key, draft) in kept {
                let text = draft.text.get_untracked();
                if text == draft.first {
                    all.remove(key);
                } else {
                    all.insert(key.clone(), text);
                }
            }
        });
        if let (Some(storage), Ok(text)) = (storage(), serde_json::to_string(&all)) {
            let _ = storage.set_item(KEY, &text);
        }
    }
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok().flatten())
}

/// The drafts of this page.
pub fn use_drafts() -> Drafts {
    use_context().unwrap_or_else(Drafts::restored)
}
