//! The second shelf: what was saved of late lies there too, since a browser may take its time to bring its
//! first store to the disk.
//!
//! Chromium writes local storage to the disk seconds to a minute after it was told to, and the later the
//! more there is of it: a phone that dies before has lost it. What lies on the second shelf is there for
//! good once that says so. At the start both are laid together: the same text under the same key.

use super::Store;
use super::key::Key;

/// What has lain on the second shelf so long is on the disk of the first too, if it is found there;
/// milliseconds. Chromium delays no ordinary writing by more than an hour.
const FOR_GOOD: f64 = 2.0 * 3_600_000.0;

/// A text of the second shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Lying {
    /// Its key, as in the first.
    pub key: String,
    /// The text.
    pub text: String,
    /// When it was put there, milliseconds since 1970.
    pub since: f64,
}

impl Lying {
    /// As one text: the time, a space, the text.
    #[must_use]
    pub fn stored(text: &str, since: f64) -> String {
        format!("{since:.0} {text}")
    }

    /// Whether the first store may not have it on the disk yet. `now` is in milliseconds since 1970.
    fn is_of_late(&self, now: f64) -> bool {
        now - self.since < FOR_GOOD
    }

    /// Back from that; none for any other text.
    #[must_use]
    pub fn read(key: &str, stored: &str) -> Option<Self> {
        let (since, text) = stored.split_once(' ')?;
        // No table of the wide range of a float is needed for whole milliseconds.
        let since = since.parse::<u64>().ok()? as f64;
        Some(Self { key: key.to_owned(), text: text.to_owned(), since })
    }
}

/// What came of laying both together.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// So many texts the first had lost.
    pub adopted: usize,
    /// Keys that the second shelf may let go of.
    pub settled: Vec<String>,
}

/// Gives the first store what it has lost, and tells what need not lie on the second shelf any more. A
/// text that the first refuses stays there.
pub(super) fn merge(store: &mut dyn Store, lying: &[Lying], now: f64) -> Merged {
    let mut merged = Merged::default();
    for late in lying {
        let Lying { key, text, .. } = late;
        if Key::read(key).is_none() {
            merged.settled.push(key.clone());
            continue;
        }
        match store.read(key) {
            Ok(Some(_)) if !late.is_of_late(now) => merged.settled.push(key.clone()),
            Ok(None) => {
                let back = store.write(key, text).and_then(|()| store.read(key));
                merged.adopted += usize::from(back.is_ok_and(|back| back.as_ref() == Some(text)));
            }
            Ok(Some(_)) | Err(_) => {}
        }
    }
    merged
}
