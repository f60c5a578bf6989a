//! What has been typed and not yet saved. It outlives the screen it was typed on, and a closed tab.

use crate::json::read_texts;
use crate::json_texts::write_texts;
use crate::order::ByKey;
use leptos::prelude::*;

/// Not a record: it may be written over, so it has a key of its own outside the archive's.
const KEY: &str = "fermentside-drafts";

struct Draft {
    text: ArcRwSignal<String>,
    first: String,
    /// As this page last read or wrote it: only what was typed here since is written down.
    kept: String,
}

/// Every half-filled field of the page, by a key such as `bench/gravity/reading`.
#[derive(Clone, Copy)]
pub struct Drafts {
    kept: StoredValue<ByKey<String, Draft>>,
    before: StoredValue<ByKey<String, String>>,
}

impl Drafts {
    /// The drafts that the page was closed with.
    pub fn restored() -> Self {
        Self { kept: StoredValue::new(ByKey::new()), before: StoredValue::new(stored()) }
    }

    /// The text under `key`, starting with `first` when nothing was typed there before.
    pub fn text(self, key: &str, first: &str) -> RwSignal<String> {
        self.kept
            .try_update_value(|kept| {
                let draft = kept.or_insert_with(key.to_owned(), || {
                    let before =
                        self.before.with_value(|before| before.get(&key.to_owned()).cloned());
                    let kept = before.unwrap_or_else(|| first.to_owned());
                    Draft { text: ArcRwSignal::new(kept.clone()), first: first.to_owned(), kept }
                });
                RwSignal::from(draft.text.clone())
            })
            .unwrap_or_else(|| RwSignal::new(first.to_owned()))
    }

    /// Forgets what was typed under keys that start with `prefix`: it has been saved, or thrown away.
    pub fn clear(self, prefix: &str) {
        self.drop_stored(prefix);
        self.kept.update_value(|kept| {
            for (_, draft) in kept.iter_mut().filter(|(key, _)| key.starts_with(prefix)) {
                draft.kept.clone_from(&draft.first);
                draft.text.set(draft.first.clone());
            }
        });
    }

    /// Drops the fields under `prefix`, so that a form opened next starts from its record.
    pub fn forget(self, prefix: &str) {
        self.drop_stored(prefix);
        self.kept.update_value(|kept| kept.retain(|key| !key.starts_with(prefix)));
    }

    fn drop_stored(self, prefix: &str) {
        let theirs = |key: &String| !key.starts_with(prefix);
        self.before.update_value(|before| before.retain(theirs));
        let mut all = stored();
        all.retain(theirs);
        write(&all);
    }

    /// Writes down what was typed here, as the page goes out of sight. Another tab's fields stay as that
    /// tab left them. Where there is no storage drafts live as long as the page does.
    pub fn keep(self) {
        let mut all = stored();
        self.kept.update_value(|kept| {
            for (key, draft) in kept.iter_mut() {
                let text = draft.text.get_untracked();
                if text == draft.kept {
                    continue;
                }
                if text == draft.first {
                    all.remove(key);
                } else {
                    all.insert(key.clone(), text.clone());
                }
                draft.kept = text;
            }
        });
        write(&all);
    }
}

fn stored() -> ByKey<String, String> {
    let text = storage().and_then(|storage| storage.get_item(KEY).ok().flatten());
    let texts = text.and_then(|text| read_texts(&text).ok()).unwrap_or_default();
    texts.into_iter().collect()
}

fn write(all: &ByKey<String, String>) {
    if let (Some(storage), Ok(text)) = (storage(), write_texts(all.iter())) {
        let _ = storage.set_item(KEY, &text);
    }
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window().and_then(|window| window.local_storage().ok().flatten())
}

/// The drafts of this page.
pub fn use_drafts() -> Drafts {
    use_context().unwrap_or_else(Drafts::restored)
}
