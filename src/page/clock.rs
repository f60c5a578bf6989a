//! The phone's clock, read here and nowhere else.

use crate::quantity::{Moment, MomentError};
use wasm_bindgen::{JsCast, JsValue};

fn ahead_of_utc(date: &js_sys::Date) -> i32 {
    // JavaScript counts the minutes behind UTC.
    -date.get_timezone_offset() as i32
}

/// Now, on the phone's own clock.
pub fn now() -> Moment {
    let date = js_sys::Date::new_0();
    let text = format!(
        "{:04}-{:02}-{:02}T{:02}:{:02}",
        date.get_full_year(),
        date.get_month() + 1,
        date.get_date(),
        date.get_hours(),
        date.get_minutes()
    );
    Moment::from_local(&text, ahead_of_utc(&date)).unwrap_or_else(|_| epoch())
}

/// A time before the year 1, or after 9999, is no time for a brewer.
fn epoch() -> Moment {
    Moment::EPOCH
}

/// The moment of a local date and time as a date field gives it, with the phone's own time zone on
/// that day.
pub fn local(text: &str) -> Result<Moment, MomentError> {
    // Only a text of the right form is given to the browser, which would take others as UTC.
    Moment::from_local(text, 0)?;
    let date = js_sys::Date::new(&JsValue::from_str(text));
    Moment::from_local(text, ahead_of_utc(&date))
}

/// Eight bytes that no other record has.
pub fn random() -> [u8; 8] {
    let mut bytes = [0; 8];
    let filled = web_sys::window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !filled {
        for byte in &mut bytes {
            *byte = (js_sys::Math::random() * 256.0) as u8;
        }
    }
    bytes
}

/// Seconds since 1970, for a timer.
pub fn seconds() -> f64 {
    (js_sys::Date::now() / 1000.0).round()
}

thread_local! {
    /// The screen's lock, once the phone has given it.
    static LOCK: std::cell::RefCell<Option<JsValue>> = const { std::cell::RefCell::new(None) };
}

fn method(of: &JsValue, name: &str) -> Option<js_sys::Function> {
    js_sys::Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}

/// Asks the phone to keep its screen on. Where it cannot or will not, nothing is lost: timers count
/// from their start.
pub fn stay_awake() {
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

/// Lets the screen sleep again.
pub fn let_sleep() {
    if let Some(lock) = LOCK.with(|kept| kept.take())
        && let Some(release) = method(&lock, "release")
    {
        let _ = release.call0(&lock);
    }
}
