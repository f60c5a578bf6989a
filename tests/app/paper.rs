//! A phone of paper: it shows a screen as text and can be tapped, typed into, closed and opened again,
//! left lying for days, or carried to another time zone. What it keeps is kept as the browser's would be.

use crate::held::torn;
use crate::told::told;
use fermentside::app::{
    Act, Drafts, Effect, Event, Keeper, Model, NotSaved, Part, Screen, What, screen, update,
};
use fermentside::quantity::{Hours, Measured, Moment, Zone};
use fermentside::store::{MemoryStore, Store, StoreError, Token};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

/// How writing may go wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// It is refused.
    Fails,
    /// It is called done, and nothing is there.
    Lost,
    /// It is called done, and half is there.
    Torn,
    /// There is no room.
    Full,
}

/// Writing goes wrong after so many that go well: once, or from then on.
pub type Faulty = Option<(u32, Fault, bool)>;

/// The browser's storage: two phones of one brewer's browser (two tabs) may share it.
#[derive(Clone, Debug, Default)]
pub struct Shelf {
    texts: Rc<RefCell<MemoryStore>>,
    /// So many more writes succeed; `None` is no limit.
    pub writes_left: Rc<RefCell<Option<u32>>>,
    /// What goes wrong next.
    pub faulty: Rc<RefCell<Faulty>>,
    /// How often something went wrong.
    pub faults: Rc<RefCell<u32>>,
    /// So many more letters find room; `None` is no limit.
    pub letters_left: Rc<RefCell<Option<usize>>>,
}

impl Shelf {
    /// One on which another page of the origin keeps something: a full one, not one that keeps nothing.
    pub fn of_others() -> Self {
        let mut shelf = Self::default();
        shelf.write("theirs", "something").expect("it is written");
        shelf
    }

    /// Takes everything away that is ours, as a browser does that clears a page's data.
    pub fn clear(&self) {
        *self.texts.borrow_mut() = Self::of_others().texts.take();
    }
}

impl Store for Shelf {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.texts.borrow().keys()
    }
    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.texts.borrow().read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        if let Some(left) = self.writes_left.borrow_mut().as_mut() {
            *left = left.checked_sub(1).ok_or(StoreError::Full)?;
        }
        if let Some(left) = self.letters_left.borrow_mut().as_mut() {
            *left = left.checked_sub(key.len() + text.len()).ok_or(StoreError::Full)?;
        }
        let mut faulty = self.faulty.borrow_mut();
        match faulty.as_mut() {
            Some((0, fault, lasts)) => {
                let fault = *fault;
                *self.faults.borrow_mut() += 1;
                if !*lasts {
                    *faulty = None;
                }
                match fault {
                    Fault::Fails => Err(StoreError::Failed("test".to_owned())),
                    Fault::Full => Err(StoreError::Full),
                    Fault::Lost => Ok(()),
                    Fault::Torn => {
                        let half: String = text.chars().take(text.chars().count() / 2).collect();
                        self.texts.borrow_mut().write(key, &half)
                    }
                }
            }
            Some((after, ..)) => {
                *after -= 1;
                self.texts.borrow_mut().write(key, text)
            }
            None => self.texts.borrow_mut().write(key, text),
        }
    }
    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        if let Some(left) = self.letters_left.borrow_mut().as_mut()
            && let Some(text) = self.texts.borrow().read(key)?
        {
            *left += key.len() + text.len();
        }
        self.texts.borrow_mut().remove(key)
    }
}

/// The phone.
pub struct Paper {
    /// What the page knows.
    pub model: Model,
    /// The browser's storage.
    pub shelf: Shelf,
    /// Everything asked of the world that is not about keeping, in order.
    pub asked: Vec<Effect>,
    /// Touches so far: one for a tap, one to reach a field, two to choose from a list.
    pub taps: usize,
    /// Characters typed so far.
    pub keys: usize,
    keeper: Keeper<Shelf>,
    drafts: Drafts,
    tokens: u64,
    hash: String,
    been: Vec<String>,
}

/// Saturday morning, brewing day.
pub fn brewing_day() -> Moment {
    "2026-03-07T09:00+01:00".parse().expect("a moment")
}

impl Paper {
    /// A new phone, on brewing day.
    pub fn new() -> Self {
        Self::with(Shelf::of_others(), brewing_day(), Zone::fixed(60), 1)
    }

    /// A phone over a shelf that may hold something.
    pub fn with(shelf: Shelf, now: Moment, zone: Zone, chance: u64) -> Self {
        let mut keeper = Keeper::new(shelf.clone());
        let mut model = Model::new(now, zone, chance);
        model.take_in(keeper.load().expect("the shelf is read"));
        let (asked, been) = (vec![], vec![]);
        let (drafts, tokens, hash) = (Drafts::default(), chance << 32, "#/now".to_owned());
        Self { model, shelf, asked, taps: 0, keys: 0, keeper, drafts, tokens, hash, been }
    }

    /// Another tab of the same browser.
    pub fn second_tab(&self) -> Self {
        let (now, zone) = (self.model.now, self.model.zone.clone());
        Self::with(self.shelf.clone(), now, zone, self.model.now.minutes_since_epoch() as u64 + 77)
    }

    /// Something happens, and all that follows from it.
    pub fn happens(&mut self, event: Event) {
        let mut waiting = VecDeque::from([event]);
        while let Some(event) = waiting.pop_front() {
            for effect in update(&mut self.model, event) {
                let now = self.model.now;
                let tokens = &mut self.tokens;
                let mut token = || {
                    *tokens += 1;
                    Token::from_random(tokens.to_be_bytes())
                };
                match effect {
                    Effect::Save(ticket, change, back) => {
                        let kept = self.keeper.save(ticket, (&change, &back), now, &mut token);
                        waiting.extend(self.keeper.news());
                        waiting.push_back(kept);
                    }
                    Effect::Sweep(until, undone) => self.keeper.sweep(until, undone),
                    Effect::LookAfter => {
                        self.keeper.look_after();
                        waiting.extend(self.keeper.news());
                    }
                    Effect::Settle(conflict, keep) => {
                        let settled = self.keeper.settle(&conflict, keep, now, token());
                        waiting.push_back(Event::Settled(settled));
                    }
                    Effect::Load => {
                        let loaded = self.keeper.load().map_err(NotSaved::Store);
                        waiting.push_back(Event::Loaded(Box::new(loaded.expect("it is read"))));
                    }
                    Effect::KeepDrafts => self.drafts = self.model.drafts.clone(),
                    Effect::Go(address) => {
                        self.been.push(std::mem::replace(&mut self.hash, address.clone()));
                        waiting.push_back(Event::Went(address));
                    }
                    Effect::BringIn(ticket, records, change, back) => {
                        let both = (&change, &back);
                        let kept = self.keeper.bring_in(ticket, &records, both, now, &mut token);
                        waiting.push_back(kept);
                    }
                    Effect::Room => waiting.push_back(Event::Room(self.keeper.used())),
                    Effect::Things => waiting.push_back(Event::Stands(self.keeper.things())),
                    Effect::Copy(of) => waiting.push_back(self.keeper.copy(of, now)),
                    other => self.asked.push(other),
                }
            }
        }
    }

    /// Another tab wrote a text, or took one away, and the browser tells it.
    pub fn elsewhere(&mut self, key: &str, text: Option<&str>) {
        self.keeper.elsewhere(key, text);
    }

    /// What stands on it.
    pub fn screen(&self) -> Screen {
        screen(&self.model)
    }

    /// What stands on it, as text.
    pub fn text(&self) -> String {
        told(&self.screen())
    }

    /// Every part on it that is not folded away, from the top down.
    pub fn parts(&self) -> Vec<Part> {
        fn seen(part: &Part, all: &mut Vec<Part>) {
            all.push(Part { parts: vec![], ..part.clone() });
            if !matches!(&part.what, What::Fold(fold) if !fold.open) {
                part.parts.iter().for_each(|inner| seen(inner, all));
            }
        }
        let screen = self.screen();
        let mut all = vec![];
        for part in screen.notices.iter().chain(&screen.main).chain(&screen.undo) {
            seen(part, &mut all);
        }
        all
    }

    #[track_caller]
    fn find(&self, what: &str, is_it: impl Fn(&Part) -> Option<String>) -> Part {
        let parts = self.parts();
        let named = |exact: bool| {
            parts.iter().find(|part| {
                is_it(part).is_some_and(|name| {
                    let name = name.replace('\u{A0}', " ");
                    if exact { name == what } else { name.starts_with(what) }
                })
            })
        };
        match named(true).or_else(|| named(false)) {
            Some(part) => part.clone(),
            None => panic!("there is no {what:?} on the screen:\n{}", self.text()),
        }
    }

    /// Goes to an address, as a link does.
    pub fn go(&mut self, hash: &str) {
        self.been.push(std::mem::replace(&mut self.hash, hash.to_owned()));
        self.happens(Event::Went(hash.to_owned()));
    }

    /// Goes back to where one was before.
    pub fn back(&mut self) {
        if let Some(before) = self.been.pop() {
            self.hash.clone_from(&before);
            self.happens(Event::Went(before));
        }
    }

    /// Where one is.
    pub fn place(&self) -> String {
        self.model.route.address()
    }

    /// Taps what bears these words, or how they begin: a link, a button, a fold, a mark, an option, a place.
    #[track_caller]
    pub fn tap(&mut self, words: &str) {
        self.taps += 1;
        let place = self.screen().places.into_iter().find(|place| place.label == words);
        if let Some(place) = place {
            return self.go(&place.address);
        }
        let part = self.find(words, |part| match &part.what {
            What::Link(link) => {
                Some(link.runs.iter().map(|run| run.text.as_str()).collect::<Vec<_>>().join(" "))
            }
            What::Action(button) if !button.spoken.is_empty() => Some(button.spoken.clone()),
            What::Action(button) => Some(button.label.clone()),
            What::HandOut(file) => Some(file.label.clone()),
            What::Fold(fold) => Some(fold.summary.clone()),
            What::Tick(tick) => Some(tick.label.clone()),
            What::Choice(choice) => choice
                .options
                .iter()
                .map(|(_, option)| option.clone())
                .find(|option| option.replace('\u{A0}', " ").starts_with(words)),
            _ => None,
        });
        self.touch(&part, words);
    }

    /// Touches a part; of a choice, the option that begins with these words.
    #[track_caller]
    pub fn touch(&mut self, part: &Part, words: &str) {
        match part.what.clone() {
            What::Link(link) => self.go(&link.address),
            What::Action(button) => match button.act {
                Some(act) => self.happens(Event::Did(act)),
                None => self.send_form_of(&part.name),
            },
            What::Fold(fold) => {
                self.happens(Event::Folded { name: part.name.clone(), open: !fold.open });
            }
            What::Tick(tick) => self.happens(Event::Did(tick.act)),
            What::HandOut(file) => {
                if let Some(act) = file.act {
                    self.happens(Event::Did(act));
                }
            }
            What::Choice(_) | What::Pick(_) => self.option(part, words),
            other => panic!("{other:?} cannot be tapped"),
        }
    }

    /// Sends the form that a part stands in.
    #[track_caller]
    pub fn send_form_of(&mut self, name: &str) {
        fn form_round(part: &Part, name: &str, send: Option<Act>) -> Option<Act> {
            let send = match &part.what {
                What::Group(group) if group.send.is_some() => group.send.clone(),
                _ => send,
            };
            if part.name == name {
                return send;
            }
            part.parts.iter().find_map(|inner| form_round(inner, name, send.clone()))
        }
        let screen = self.screen();
        let act = screen.main.iter().find_map(|part| form_round(part, name, None));
        self.happens(Event::Did(act.expect("the button stands in a form")));
    }

    fn label(part: &Part) -> Option<String> {
        match &part.what {
            What::Number(field) => Some(field.label.clone()),
            What::Words(field) => Some(field.label.clone()),
            What::Choice(field) | What::Pick(field) => Some(field.label.clone()),
            What::Moment(field) => Some(field.label.clone()),
            What::Slider(field) => Some(field.label.clone()),
            What::File(field) => Some(field.label.clone()),
            _ => None,
        }
    }

    /// The field with this label.
    #[track_caller]
    pub fn field(&self, label: &str) -> Part {
        self.find(label, Self::label)
    }

    /// Types into the field with this label, in place of what was there, and leaves it.
    #[track_caller]
    pub fn type_into(&mut self, label: &str, text: &str) {
        self.taps += 1;
        self.keys += text.chars().count();
        let part = self.field(label);
        let unit = match &part.what {
            What::Number(field) => field.unit,
            _ => "",
        };
        let (name, unit) = (part.name, unit.to_owned());
        let mut before = self.screen();
        let ends = text.char_indices().map(|(at, letter)| at + letter.len_utf8());
        for end in ends.chain(text.is_empty().then_some(0)) {
            let (text, unit) = (text[..end].to_owned(), unit.clone());
            self.happens(Event::Typed { name: name.clone(), text: text.clone(), unit });
            let after = self.screen();
            let torn = torn(&before, &after, &name);
            assert_eq!(torn, None, "{label:?} loses the keyboard at {text:?}");
            before = after;
        }
        self.happens(Event::Left(name));
    }

    /// Chooses a file of this text at the field with this label.
    #[track_caller]
    pub fn choose_file(&mut self, label: &str, text: &str) {
        let name = self.field(label).name;
        self.happens(Event::FileChosen { name, text: Ok(text.to_owned()) });
    }

    /// What stands in the field with this label.
    #[track_caller]
    pub fn value_in(&self, label: &str) -> String {
        match self.field(label).what {
            What::Number(field) => field.text,
            What::Words(field) => field.text,
            What::Moment(field) => field.text,
            What::Choice(field) | What::Pick(field) => field.chosen,
            other => panic!("{other:?} holds no text"),
        }
    }

    /// Shows the field with this label in another unit.
    #[track_caller]
    pub fn in_unit(&mut self, label: &str, symbol: &str) {
        let name = self.field(label).name;
        self.happens(Event::Unit { name, symbol: symbol.to_owned() });
    }

    /// Chooses an option of the field with this label: what is written on it, or how that begins.
    #[track_caller]
    pub fn choose(&mut self, label: &str, option: &str) {
        self.taps += 2;
        let part = self.field(label);
        self.option(&part, option);
    }

    #[track_caller]
    fn option(&mut self, part: &Part, words: &str) {
        let (What::Choice(choice) | What::Pick(choice)) = &part.what else {
            panic!("{:?} has no options", part.what)
        };
        let options = || choice.options.iter();
        let plain = |option: &str| option.replace('\u{A0}', " ");
        let found = options()
            .find(|(_, option)| plain(option) == words)
            .or_else(|| options().find(|(_, option)| plain(option).starts_with(words)));
        let (stored, _) = found.unwrap_or_else(|| panic!("no option {words:?}: {choice:?}"));
        let (name, text) = (part.name.clone(), stored.clone());
        self.happens(Event::Typed { name, text, unit: String::new() });
    }

    /// Dates the field with this label.
    #[track_caller]
    pub fn dated(&mut self, label: &str, at: Moment) {
        self.type_into(label, &at.local_text());
    }

    /// So many days go by, and the page looks at the clock.
    pub fn days(&mut self, days: f64) {
        self.hours(24.0 * days);
    }

    /// So many hours go by.
    pub fn hours(&mut self, hours: f64) {
        let hours = Hours::new(hours).expect("some hours");
        let now = self.model.zone.shown(self.model.now.after(hours));
        self.happens(Event::Clock(now));
    }

    /// The page is closed and opened again.
    pub fn reload(&mut self) {
        let (now, zone) = (self.model.now, self.model.zone.clone());
        let (hash, asked) = (self.hash.clone(), std::mem::take(&mut self.asked));
        let been = std::mem::take(&mut self.been);
        let drafts = Drafts::of(self.drafts.texts());
        let tokens = self.tokens;
        *self = Self::with(self.shelf.clone(), now, zone, tokens ^ 0x5EED);
        self.tokens = tokens;
        self.model.drafts = drafts.clone();
        (self.drafts, self.hash, self.asked, self.been) = (drafts, hash.clone(), asked, been);
        self.happens(Event::Went(hash));
    }

    /// The text holds this.
    #[track_caller]
    pub fn sees(&self, words: &str) {
        let text = self.text();
        assert!(text.contains(words), "{words:?} is not on the screen:\n{text}");
    }

    /// The text does not hold this.
    #[track_caller]
    pub fn sees_no(&self, words: &str) {
        let text = self.text();
        assert!(!text.contains(words), "{words:?} is on the screen:\n{text}");
    }
}

/// Holds a text against the one that is kept in `golden`; `GOLDEN=write` keeps it anew.
#[track_caller]
pub fn golden(name: &str, text: &str) {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/app/golden");
    let file = folder.join(format!("{name}.txt"));
    if std::env::var("GOLDEN").is_ok_and(|wish| wish == "write") {
        std::fs::write(&file, text).expect("it is written");
    }
    let kept = std::fs::read_to_string(&file).unwrap_or_default();
    assert_eq!(text, kept, "{} reads otherwise; GOLDEN=write keeps the new text", file.display());
}
