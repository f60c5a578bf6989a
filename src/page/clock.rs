//! The phone's clock, read here and nowhere else.

use crate::quantity::{Moment, MomentError};

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
    let date = js_sys::Date::new(&wasm_bindgen::JsValue::from_str(text));
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
