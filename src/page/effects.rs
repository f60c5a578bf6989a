//! What the browser does on being asked.

use super::board::document_id;
use crate::batch::Theme;
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};

/// Where the chosen theme is read from before the first paint (src/boot.js).
const THEME_KEY: &str = "fermentside.theme";

/// Sets or takes away `data-<name>` on the root. Only a malformed name could be refused; the page works
/// without the mark.
pub fn mark(name: &str, value: Option<&str>) {
    if let Some(root) = document().document_element() {
        let name = format!("data-{name}");
        let _ = match value {
            Some(value) => root.set_attribute(&name, value),
            None => root.remove_attribute(&name),
        };
    }
}

/// Whether `data-<name>` is on the root.
pub fn is_marked(name: &str) -> bool {
    document().document_element().is_some_and(|root| root.has_attribute(&format!("data-{name}")))
}

/// The part of the address behind `#`.
pub fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// Goes to another place of the page.
pub fn go(address: &str) {
    let _ = window().location().set_hash(address);
}

/// Puts the attention on a part once it is drawn; on arrival at a screen, from its top.
pub fn attend(name: &str) {
    let id = document_id(name);
    request_animation_frame(move || {
        if id == "title" {
            window().scroll_to_with_x_and_y(0.0, 0.0);
        }
        let element = document().get_element_by_id(&id);
        if let Some(element) = element.and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = element.focus();
        }
    });
}

/// Puts a theme on, for the next first paint too; where storage is refused the phone's own choice serves.
pub fn put_on(theme: Theme) {
    let chosen = match theme {
        Theme::Follow => None,
        Theme::Day => Some("day"),
        Theme::Night => Some("night"),
    };
    mark("theme", chosen);
    if let Ok(Some(storage)) = window().local_storage() {
        let kept = storage.get_item(THEME_KEY).ok().flatten();
        if kept.as_deref() != chosen {
            let _ = match chosen {
                Some(chosen) => storage.set_item(THEME_KEY, chosen),
                None => storage.remove_item(THEME_KEY),
            };
        }
    }
}

/// Prints the paper that is wanted, and nothing else, once it is drawn.
pub fn print() {
    mark("print", Some(""));
    request_animation_frame(|| {
        let _ = window().print();
    });
}

/// Printing is over, or its screen was left.
pub fn print_no_more() {
    mark("print", None);
}

/// Lets the newer version of the page in (src/boot.js).
pub fn take_update() {
    if let Ok(event) = web_sys::Event::new("fermentside:update-accept") {
        let _ = window().dispatch_event(&event);
    }
}

/// Asks the browser not to clear what is kept; it may refuse in silence.
pub fn ask_to_persist() {
    let _ = window().navigator().storage().persist();
}

thread_local! {
    /// The screen's lock, once the phone has given it.
    static LOCK: std::cell::RefCell<Option<JsValue>> = const { std::cell::RefCell::new(None) };
}

/// Something that an object can do, where not every browser can.
pub fn method(of: &JsValue, name: &str) -> Option<js_sys::Function> {
    js_sys::Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}

/// Asks the phone to keep its screen on, or lets it sleep again. Where it cannot or will not, nothing is
/// lost: timers count from their start.
pub fn stay_awake(awake: bool) {
    if !awake {
        if let Some(lock) = LOCK.with(|kept| kept.take())
            && let Some(release) = method(&lock, "release")
        {
            let _ = release.call0(&lock);
        }
        return;
    }
    leptos::task::spawn_local(async {
        let asked = || {
            let navigator: JsValue = web_sys::window()?.navigator().into();
            let locks = js_sys::Reflect::get(&navigator, &"wakeLock".into()).ok()?;
            let promise = method(&locks, "request")?.call1(&locks, &"screen".into()).ok()?;
            promise.dyn_into::<js_sys::Promise>().ok()
        };
        if let Some(promise) = asked()
            && let Ok(lock) = wasm_bindgen_futures::JsFuture::from(promise).await
        {
            LOCK.with(|kept| kept.replace(Some(lock)));
        }
    });
}
