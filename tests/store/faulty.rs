//! A store that fails in every way a browser's may, and watches what is done to it.
// Each test file uses its part of it.
#![allow(dead_code)]

use fermentside::quantity::Moment;
use fermentside::store::{Store, StoreError, Token};
use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// How one access may go wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// It is refused with an error; nothing changes.
    Fails,
    /// It reports success; nothing changes. Of reading: nothing is found.
    Lost,
    /// It happens, but reports an error.
    Denied,
    /// Half of the text is kept, and success reported.
    Torn,
    /// The tab ends here: this and everything after it fails until it is opened anew.
    Dies,
}

/// What all tabs share, and what lasts.
#[derive(Debug, Default)]
pub struct Disk {
    pub texts: BTreeMap<String, String>,
    /// Characters that fit, keys counted.
    pub quota: Option<usize>,
    ever: BTreeSet<String>,
    /// Texts that nobody may touch.
    pub sacred: BTreeMap<String, String>,
}

impl Disk {
    pub fn used(&self) -> usize {
        self.texts.iter().map(|(k, t)| k.chars().count() + t.chars().count()).sum()
    }

    /// Puts a text there from outside, to stay as it is.
    pub fn plant(&mut self, key: &str, text: &str) {
        self.texts.insert(key.to_owned(), text.to_owned());
        self.sacred.insert(key.to_owned(), text.to_owned());
    }

    fn put(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        assert!(self.ever.insert(key.to_owned()), "{key} was written twice");
        assert!(!self.texts.contains_key(key), "{key} was written over");
        let more = key.chars().count() + text.chars().count();
        if self.quota.is_some_and(|q| self.used() + more > q) {
            // Nothing was kept, so the same key may be tried again.
            self.ever.remove(key);
            return Err(StoreError::Full);
        }
        self.texts.insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn take(&mut self, key: &str) {
        assert!(!self.sacred.contains_key(key), "{key} was taken away");
        self.texts.remove(key);
    }
}

/// One tab's way to the disk.
#[derive(Clone, Debug)]
pub struct Tab {
    pub disk: Rc<RefCell<Disk>>,
    /// What this tab believes is there, when the news of others comes late.
    view: Option<Rc<RefCell<BTreeMap<String, String>>>>,
    /// The access that goes wrong, counted from now, and how.
    pub fault: Rc<Cell<Option<(u8, Fault)>>>,
}

impl Tab {
    pub fn new(disk: &Rc<RefCell<Disk>>) -> Self {
        Self { disk: Rc::clone(disk), view: None, fault: Rc::default() }
    }

    /// One that learns what others did only by [`Tab::catch_up`].
    pub fn lagging(disk: &Rc<RefCell<Disk>>) -> Self {
        let view = Some(Rc::new(RefCell::new(disk.borrow().texts.clone())));
        Self { view, ..Self::new(disk) }
    }

    pub fn catch_up(&self) {
        if let Some(view) = &self.view {
            view.borrow_mut().clone_from(&self.disk.borrow().texts);
        }
    }

    fn next(&self) -> Option<Fault> {
        match self.fault.get() {
            Some((0, Fault::Dies)) => Some(Fault::Dies),
            Some((0, fault)) => {
                self.fault.set(None);
                Some(fault)
            }
            Some((n, fault)) => {
                self.fault.set(Some((n - 1, fault)));
                None
            }
            None => None,
        }
    }

    fn seen<T>(&self, look: impl Fn(&BTreeMap<String, String>) -> T) -> T {
        match &self.view {
            Some(view) => look(&view.borrow()),
            None => look(&self.disk.borrow().texts),
        }
    }
}

fn failed() -> StoreError {
    StoreError::Failed("test".to_owned())
}

impl Store for Tab {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        match self.next() {
            Some(Fault::Fails | Fault::Dies | Fault::Denied) => Err(failed()),
            _ => Ok(self.seen(|texts| texts.keys().cloned().collect())),
        }
    }

    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        match self.next() {
            Some(Fault::Fails | Fault::Dies | Fault::Denied) => Err(failed()),
            Some(Fault::Lost) => Ok(None),
            _ => Ok(self.seen(|texts| texts.get(key).cloned())),
        }
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        let fault = self.next();
        let kept = match fault {
            Some(Fault::Fails | Fault::Dies) => return Err(failed()),
            Some(Fault::Lost) => return Ok(()),
            Some(Fault::Torn) => text.chars().take(text.chars().count() / 2).collect(),
            _ => text.to_owned(),
        };
        self.disk.borrow_mut().put(key, &kept)?;
        if let Some(view) = &self.view {
            view.borrow_mut().insert(key.to_owned(), kept);
        }
        if fault == Some(Fault::Denied) { Err(failed()) } else { Ok(()) }
    }

    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        let fault = self.next();
        match fault {
            Some(Fault::Fails | Fault::Dies) => return Err(failed()),
            Some(Fault::Lost) => return Ok(()),
            _ => {}
        }
        self.disk.borrow_mut().take(key);
        if let Some(view) = &self.view {
            view.borrow_mut().remove(key);
        }
        if fault == Some(Fault::Denied) { Err(failed()) } else { Ok(()) }
    }
}

/// The `n`-th token of a test.
pub fn token(n: u32) -> Token {
    let [a, b, c, d] = n.to_be_bytes();
    Token::from_random([1, 2, 3, 4, a, b, c, d])
}

/// A moment, `n` minutes into the test's hour.
pub fn minute(n: u32) -> Moment {
    format!("2026-03-01T{:02}:{:02}+01:00", n / 60 % 24, n % 60).parse().expect("a moment")
}
