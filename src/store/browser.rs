//! The browser's local storage as a store.

use super::key::is_ours;
use super::{Store, StoreError};
use crate::json::read_texts;
use crate::order::in_order;
use gloo_storage::{LocalStorage, Storage as _};
use wasm_bindgen::JsValue;

/// Local storage of this origin. The texts of others are neither kept nor touched.
#[derive(Debug)]
pub struct BrowserStore {
    area: web_sys::Storage,
}

impl BrowserStore {
    /// Opens it, after a look whether it can be read. Nothing is written: browsers bring one writing to the
    /// disk soon and the next ones later, and the soon one is for the first record.
    ///
    /// # Errors
    /// [`StoreError::Refused`] when the browser has or allows none (a private window, blocked site data);
    /// [`StoreError::Failed`] when it does not work.
    pub fn open() -> Result<Self, StoreError> {
        let window = web_sys::window().ok_or(StoreError::Refused)?;
        // Asked here first: the raw handle below panics where storage is refused.
        match window.local_storage() {
            Ok(Some(_)) => {}
            Ok(None) | Err(_) => return Err(StoreError::Refused),
        }
        let store = Self { area: LocalStorage::raw() };
        store.count()?;
        Ok(store)
    }

    fn count(&self) -> Result<u32, StoreError> {
        self.area.length().map_err(|e| told(&e))
    }
}

impl Store for BrowserStore {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        loop {
            let count = self.count()?;
            let mut keys = Vec::new();
            for n in 0..count {
                keys.extend(self.area.key(n).map_err(|e| told(&e))?);
            }
            // Should another tab take a key away meanwhile, the rest move up and one is missed.
            if self.count()? == count {
                return Ok(keys);
            }
        }
    }

    /// In one crossing from JavaScript: a full cellar has thousands of texts. Where others on the same origin
    /// left what is no Unicode there is none, and each is read alone.
    fn texts(&self) -> Option<Vec<(String, String)>> {
        let whole = js_sys::JSON::stringify(&self.area).ok()?.as_string()?;
        let mut texts = read_texts(&whole).ok()?;
        texts.retain(|(key, _)| is_ours(key));
        Some(in_order(texts, |one, other| one.0.cmp(&other.0)))
    }

    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.area.get_item(key).map_err(|e| told(&e))
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        self.area.set_item(key, text).map_err(|e| told(&e))
    }

    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        self.area.remove_item(key).map_err(|e| told(&e))
    }
}

/// What a thrown value tells. Browsers name a full store differently.
fn told(thrown: &JsValue) -> StoreError {
    let part = |name: &str| js_sys::Reflect::get(thrown, &JsValue::from_str(name)).ok();
    let name = part("name").and_then(|n| n.as_string()).unwrap_or_default();
    let code = part("code").and_then(|c| c.as_f64()).unwrap_or_default();
    match name.as_str() {
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => StoreError::Full,
        "SecurityError" => StoreError::Refused,
        _ if code == 22.0 || code == 1014.0 => StoreError::Full,
        "" => StoreError::Failed("no reason given".to_owned()),
        _ => StoreError::Failed(name),
    }
}
