//! The second shelf in the browser's database: what was saved of late, on the disk when it is said to be.
//! Where there is none (some private windows), the first store serves alone.

use super::clock;
use super::effects::method;
use crate::store::{Lying, Note};
use js_sys::{Array, Object, Reflect};
use leptos::prelude::set_timeout;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbDatabase, IdbRequest, IdbTransaction};

const DATABASE: &str = "fermentside-second-shelf";
const TEXTS: &str = "texts";
/// Later than this a save counts as kept by the first store alone: the brewer is not made to wait.
const LATEST: Duration = Duration::from_millis(300);

/// What is done once the texts are on the disk, by whoever is first.
type Then = Rc<RefCell<Option<Box<dyn FnOnce()>>>>;

enum Shelf {
    /// It is being opened; what is to be put there waits.
    Opening(Vec<(Vec<Note>, Then)>),
    Open(IdbDatabase),
    /// There is none.
    Refused,
}

thread_local! {
    static SHELF: RefCell<Shelf> = const { RefCell::new(Shelf::Refused) };
    /// How often it may still be opened anew: a browser closes it when it clears what a page has kept.
    static AGAIN: Cell<u8> = const { Cell::new(3) };
}

/// Opens it, and hands over what lies there.
pub fn open(found: fn(Vec<Lying>)) {
    SHELF.replace(Shelf::Opening(vec![]));
    if ask_for_it(found).is_none() {
        opened(None);
    }
}

fn ask_for_it(found: fn(Vec<Lying>)) -> Option<()> {
    let factory = web_sys::window()?.indexed_db().ok()??;
    let request = factory.open_with_u32(DATABASE, 1).ok()?;
    let database = |request: &IdbRequest| request.result().ok()?.dyn_into::<IdbDatabase>().ok();
    let asked: IdbRequest = request.clone().into();
    let made = asked.clone();
    request.set_onupgradeneeded(Some(&once(move || {
        if let Some(database) = database(&made) {
            let _ = database.create_object_store(TEXTS);
        }
    })));
    let done = asked.clone();
    let done = once(move || {
        let database = database(&done);
        if let Some(database) = &database {
            hand_over(database, found);
        }
        opened(database);
    });
    asked.set_onsuccess(Some(&done));
    asked.set_onerror(Some(&done));
    Some(())
}

/// Something done once. The browser calls one of the two that it is given to.
fn once(act: impl FnOnce() + 'static) -> js_sys::Function {
    let act: Box<dyn FnOnce()> = Box::new(act);
    Closure::once_into_js(act).unchecked_into()
}

fn opened(database: Option<IdbDatabase>) {
    let now = database.map_or(Shelf::Refused, Shelf::Open);
    if let Shelf::Opening(waiting) = SHELF.replace(now) {
        for (notes, then) in waiting {
            put_or_tell(&notes, then);
        }
    }
}

/// A piece of work on the shelf; "strict" waits until it is on the disk.
fn transaction(database: &IdbDatabase, mode: &str) -> Option<IdbTransaction> {
    let how = Object::new();
    Reflect::set(&how, &"durability".into(), &"strict".into()).ok()?;
    let begin = method(database, "transaction")?;
    let begun = begin.call3(database, &TEXTS.into(), &mode.into(), &how).ok()?;
    begun.dyn_into().ok()
}

fn hand_over(database: &IdbDatabase, found: fn(Vec<Lying>)) -> Option<()> {
    let work = transaction(database, "readonly")?;
    let texts = work.object_store(TEXTS).ok()?;
    let (keys, texts) = (texts.get_all_keys().ok()?, texts.get_all().ok()?);
    let list = |request: &IdbRequest| {
        let all = request.result().ok().and_then(|all| all.dyn_into::<Array>().ok());
        all.unwrap_or_default()
    };
    work.set_oncomplete(Some(&once(move || {
        let (keys, texts) = (list(&keys), list(&texts));
        let pairs = keys.iter().zip(texts.iter());
        let lying =
            pairs.filter_map(|(key, text)| Lying::read(&key.as_string()?, &text.as_string()?));
        found(lying.collect());
    })));
    Some(())
}

/// Puts there what was written and takes away what was, and does `then` once that is on the disk.
pub fn put(notes: Vec<Note>, then: Option<Box<dyn FnOnce()>>) {
    if notes.is_empty() && then.is_none() {
        return;
    }
    let then: Then = Rc::new(RefCell::new(then));
    if then.borrow().is_some() {
        let late = Rc::clone(&then);
        set_timeout(move || tell(&late), LATEST);
    }
    put_or_tell(&notes, then);
}

fn put_or_tell(notes: &[Note], then: Then) {
    let put = SHELF.with_borrow_mut(|shelf| match shelf {
        Shelf::Opening(waiting) => {
            waiting.push((notes.to_vec(), Rc::clone(&then)));
            Some(())
        }
        Shelf::Open(database) => begin(database, notes, &then),
        Shelf::Refused => None,
    });
    if put.is_some() {
        return;
    }
    let again = AGAIN.get();
    if again > 0 && SHELF.with_borrow(|shelf| matches!(shelf, Shelf::Open(_))) {
        AGAIN.set(again - 1);
        open(|_| ());
        put_or_tell(notes, then);
    } else {
        // Not at once: the session is in the midst of something.
        set_timeout(move || tell(&then), Duration::ZERO);
    }
}

fn begin(database: &IdbDatabase, notes: &[Note], then: &Then) -> Option<()> {
    let work = transaction(database, "readwrite")?;
    let texts = work.object_store(TEXTS).ok()?;
    for Note { key, text } in notes {
        let key = JsValue::from_str(key);
        match text {
            Some(text) => {
                let stored = Lying::stored(text, clock::milliseconds());
                texts.put_with_key(&JsValue::from_str(&stored), &key).ok()?;
            }
            None => {
                texts.delete(&key).ok()?;
            }
        }
    }
    let then = Rc::clone(then);
    let done = once(move || tell(&then));
    work.set_oncomplete(Some(&done));
    work.set_onabort(Some(&done));
    Some(())
}

fn tell(then: &Then) {
    let act = then.borrow_mut().take();
    if let Some(act) = act {
        act();
    }
}
