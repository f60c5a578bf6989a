//! The phone's clock, its time zone and chance, read here and nowhere else.

use crate::quantity::{Moment, Zone};
use crate::store::Token;
use wasm_bindgen::JsValue;

/// Minutes ahead of UTC at an instant of so many milliseconds since 1970. JavaScript counts those behind.
fn ahead_at(milliseconds: f64) -> i32 {
    -js_sys::Date::new(&JsValue::from_f64(milliseconds)).get_timezone_offset() as i32
}

/// Now, on the phone's own clock. A time before the year 1, or after 9999, is no time for a brewer.
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
    Moment::from_local(&text, -date.get_timezone_offset() as i32).unwrap_or(Moment::EPOCH)
}

/// Whole seconds since 1970, for timers.
pub fn seconds() -> u32 {
    (milliseconds() / 1000.0) as u32
}

/// Minutes of ten days: no zone has changed its clock twice within so few.
const TEN_DAYS: i64 = 10 * 24 * 60;
/// 2000-01-01 and 2050-01-01, minutes since 1970 in UTC. Beyond them the clock is taken as at the edge.
const YEARS: (i64, i64) = (15_778_080, 42_075_360);

/// The phone's time zone, as a list of when its clock changes.
pub fn zone() -> Zone {
    let ahead = |minute: i64| ahead_at(minute as f64 * 60_000.0);
    let (mut from, last) = YEARS;
    let first = ahead(from);
    let mut before = first;
    let mut changes = vec![];
    while from < last {
        let to = from + TEN_DAYS;
        let after = ahead(to);
        if after != before {
            // The minute from which on it is so.
            let (mut low, mut high) = (from, to);
            while high - low > 1 {
                let middle = i64::midpoint(low, high);
                if ahead(middle) == before { low = middle } else { high = middle }
            }
            changes.push((high, after));
            before = after;
        }
        from = to;
    }
    Zone::new(first, changes)
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

/// What no other saving is named by.
pub fn token() -> Token {
    Token::from_random(random())
}

/// Milliseconds since 1970.
pub fn milliseconds() -> f64 {
    js_sys::Date::now()
}
