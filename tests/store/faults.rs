//! Nothing once called saved is lost, whatever the store does and whichever tabs write.
use crate::faulty::{Disk, Fault, Tab, minute, token};
use fermentside::store::{Archive, Conflict, Loaded, Outcome, Record, SaveError, Token};
use proptest::prelude::*;
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

const KIND: &str = "reading";
const THINGS: [&str; 3] = ["a", "b", "B-2"];

#[derive(Clone, Debug)]
enum Act {
    Save { tab: usize, thing: usize, size: usize },
    Delete { tab: usize, thing: usize },
    Resolve { tab: usize, thing: usize, pick: usize },
    Forget { tab: usize, thing: usize },
    Sweep { tab: usize },
    Load { tab: usize },
    CatchUp { tab: usize },
    Reopen { tab: usize },
    Fail { tab: usize, after: u8, fault: Fault },
    Damage { pick: prop::sample::Index, at: prop::sample::Index },
    Quota { room: Option<usize> },
}

fn acts() -> impl Strategy<Value = Act> {
    let (tab, thing) = (0..2_usize, 0..THINGS.len());
    let fault = prop_oneof![
        Just(Fault::Fails),
        Just(Fault::Lost),
        Just(Fault::Denied),
        Just(Fault::Torn),
        Just(Fault::Dies)
    ];
    prop_oneof![
        12 => (tab.clone(), thing.clone(), 0..300_usize).prop_map(|(tab, thing, size)| Act::Save { tab, thing, size }),
        3 => (tab.clone(), thing.clone()).prop_map(|(tab, thing)| Act::Delete { tab, thing }),
        3 => (tab.clone(), thing.clone(), 0..3_usize).prop_map(|(tab, thing, pick)| Act::Resolve { tab, thing, pick }),
        2 => (tab.clone(), thing).prop_map(|(tab, thing)| Act::Forget { tab, thing }),
        1 => tab.clone().prop_map(|tab| Act::Sweep { tab }),
        4 => tab.clone().prop_map(|tab| Act::Load { tab }),
        3 => tab.clone().prop_map(|tab| Act::CatchUp { tab }),
        1 => tab.clone().prop_map(|tab| Act::Reopen { tab }),
        4 => (tab, 0..12_u8, fault).prop_map(|(tab, after, fault)| Act::Fail { tab, after, fault }),
        1 => (any::<prop::sample::Index>(), any::<prop::sample::Index>()).prop_map(|(pick, at)| Act::Damage { pick, at }),
        1 => prop::option::of(0..900_usize).prop_map(|room| Act::Quota { room }),
    ]
}

/// What a record says of which thing; saves in these tests say different things each.
type Says = (String, Option<String>);

fn says(r: &Record) -> Says {
    (r.id.clone(), (!r.deleted).then(|| r.body.clone()))
}

/// What the person before one tab has seen of a thing, that on the screen first.
type Screen = BTreeMap<String, Vec<Record>>;

struct World {
    disk: Rc<RefCell<Disk>>,
    lagging: bool,
    tabs: Vec<(Tab, Archive<Tab>, Screen)>,
    count: u32,
    /// All that was called saved.
    saved: Vec<Record>,
    /// What someone who saw it saved something else over.
    replaced: BTreeSet<Token>,
    /// What someone tried to replace, but was told that it failed.
    tried: BTreeSet<Token>,
    damaged: BTreeSet<Token>,
}

fn tab(disk: &Rc<RefCell<Disk>>, lagging: bool) -> (Tab, Archive<Tab>, Screen) {
    let tab = if lagging { Tab::lagging(disk) } else { Tab::new(disk) };
    (tab.clone(), Archive::new(tab), Screen::new())
}

fn screen(loaded: &Loaded) -> Screen {
    let mut screen: Screen =
        loaded.records.iter().map(|r| (r.id.clone(), vec![r.clone()])).collect();
    for Conflict { id, others, .. } in &loaded.conflicts {
        screen.entry(id.clone()).or_default().extend(others.iter().cloned());
    }
    screen
}

impl World {
    fn new(lagging: bool) -> Self {
        let disk = Rc::new(RefCell::new(Disk::default()));
        disk.borrow_mut().plant("someone-else", "theirs");
        disk.borrow_mut().plant("fermentside/odd", "of unknown form");
        let tabs = vec![tab(&disk, lagging), tab(&disk, lagging)];
        let (saved, replaced, tried) = (Vec::new(), BTreeSet::new(), BTreeSet::new());
        Self { disk, lagging, tabs, count: 0, saved, replaced, tried, damaged: BTreeSet::new() }
    }

    fn next(&mut self) -> u32 {
        self.count += 1;
        self.count
    }

    fn note(&mut self, tab: usize, over: Vec<Record>, result: Result<Outcome, SaveError>) {
        match result {
            Ok(Outcome::TakenAway(record)) => {
                assert!(over.contains(&record), "only what was on the screen is taken away");
                self.replaced.extend(self.alike(&over));
                self.tabs[tab].2.remove(&record.id);
            }
            Ok(outcome) => {
                let record = outcome.record().clone();
                self.replaced.extend(self.alike(&over));
                self.saved.push(record.clone());
                let mut seen = vec![record.clone()];
                if let Outcome::SavedBeside(conflict) = outcome {
                    seen.extend(conflict.others);
                }
                self.tabs[tab].2.insert(record.id, seen);
            }
            Err(SaveError::Store(_) | SaveError::NotThere) => {
                self.tried.extend(self.alike(&over));
            }
            Err(other) => panic!("{other}"),
        }
    }

    fn act(&mut self, act: &Act) {
        match *act {
            Act::Save { tab, thing, size } => {
                let n = self.next();
                let body = format!("{n}:{}", "x".repeat(size));
                let over: Vec<Record> = self.on_screen(tab, thing).into_iter().take(1).collect();
                let result = self.tabs[tab].1.save(KIND, THINGS[thing], &body, minute(n), token(n));
                self.note(tab, over, result);
            }
            Act::Delete { tab, thing } => {
                let n = self.next();
                let over: Vec<Record> = self.on_screen(tab, thing).into_iter().take(1).collect();
                let result = self.tabs[tab].1.delete(KIND, THINGS[thing], minute(n), token(n));
                self.note(tab, over, result);
            }
            Act::Resolve { tab, thing, pick } => {
                let n = self.next();
                let over = self.on_screen(tab, thing);
                let Some(keep) = over.get(pick).map(|r| r.token) else { return };
                let archive = &mut self.tabs[tab].1;
                let result = archive.resolve(KIND, THINGS[thing], keep, minute(n), token(n));
                self.note(tab, over, result);
            }
            Act::Forget { tab, thing } => {
                let dead = self.dead();
                let done = self.tabs[tab].1.forget(KIND, THINGS[thing]);
                self.forgotten(&dead, done == Ok(true), |id| id == THINGS[thing]);
            }
            Act::Sweep { tab } => {
                let dead = self.dead();
                let _ = self.tabs[tab].1.sweep(minute(self.count));
                self.forgotten(&dead, false, |_| true);
            }
            Act::Load { tab } => {
                if let Ok(loaded) = self.tabs[tab].1.load() {
                    self.tabs[tab].2 = screen(&loaded);
                }
            }
            Act::CatchUp { tab } => self.tabs[tab].0.catch_up(),
            Act::Reopen { tab: n } => self.tabs[n] = tab(&self.disk, self.lagging),
            Act::Fail { tab, after, fault } => self.tabs[tab].0.fault.set(Some((after, fault))),
            Act::Damage { pick, at } => self.damage(pick, at),
            Act::Quota { room } => {
                let mut disk = self.disk.borrow_mut();
                disk.quota = room.map(|r| disk.used() + r);
            }
        }
    }

    /// Things of which a page that is opened now shows only that they are deleted.
    fn dead(&self) -> BTreeSet<String> {
        let loaded = Archive::new(Tab::new(&self.disk)).load().unwrap();
        let screen = screen(&loaded);
        let dead = screen.into_iter().filter(|(_, all)| all.iter().all(|record| record.deleted));
        dead.map(|(id, _)| id).collect()
    }

    /// After forgetting, whole or half-way: what was dead has not come back to life, and that it was
    /// deleted need not be told any more.
    fn forgotten(&mut self, dead: &BTreeSet<String>, done: bool, of: impl Fn(&str) -> bool) {
        let loaded = Archive::new(Tab::new(&self.disk)).load().unwrap();
        for record in loaded.records.iter().filter(|record| !record.deleted) {
            assert!(!dead.contains(&record.id), "{record:?} came back");
        }
        let deletions = self.saved.iter().filter(|record| record.deleted && of(&record.id));
        let tokens: Vec<Token> = deletions.map(|record| record.token).collect();
        if done { self.replaced.extend(tokens) } else { self.tried.extend(tokens) }
    }

    /// All saved that says the same as one of these: it stands and falls with it.
    fn alike(&self, over: &[Record]) -> Vec<Token> {
        let over: Vec<Says> = over.iter().map(says).collect();
        self.saved.iter().filter(|r| over.contains(&says(r))).map(|r| r.token).collect()
    }

    fn on_screen(&self, tab: usize, thing: usize) -> Vec<Record> {
        self.tabs[tab].2.get(THINGS[thing]).cloned().unwrap_or_default()
    }

    fn damage(&mut self, pick: prop::sample::Index, at: prop::sample::Index) {
        let mut disk = self.disk.borrow_mut();
        let keys: Vec<String> =
            disk.texts.keys().filter(|k| k.contains("/reading/")).cloned().collect();
        if keys.is_empty() {
            return;
        }
        let key = &keys[pick.index(keys.len())];
        let mut bytes = disk.texts[key].clone().into_bytes();
        let at = at.index(bytes.len());
        bytes[at] = if bytes[at] == b'~' { b'!' } else { b'~' };
        disk.plant(key, &String::from_utf8(bytes).unwrap());
        self.damaged.insert(fermentside::store::Key::read(key).unwrap().token);
        drop(disk);
        // Damage to what every tab sees; a view of the sound text would be another matter.
        self.tabs.iter().for_each(|(tab, ..)| tab.catch_up());
    }

    /// What must hold at every moment, told by a page that is opened now.
    fn check(&mut self) {
        let mut fresh = Archive::new(Tab::new(&self.disk));
        let loaded = fresh.load().unwrap();
        let stands: BTreeSet<Says> = screen(&loaded).values().flatten().map(says).collect();
        for record in &self.saved {
            let said = says(record);
            let there = stands.contains(&said)
                || self.replaced.contains(&record.token)
                || self.damaged.contains(&record.token);
            // Where room is needed, a deletion is forgotten once nothing of the thing lives.
            let lives = stands.iter().any(|(id, body)| *id == record.id && body.is_some());
            if there {
                continue;
            }
            let scarce = self.disk.borrow().quota.is_some();
            if record.deleted && (scarce || !lives) {
                self.replaced.insert(record.token);
                continue;
            }
            // A save that was called failed may still turn up, in the place of what it was made from.
            assert!(self.tried.contains(&record.token), "{record:?} is lost");
            self.replaced.insert(record.token);
        }
        let disk = self.disk.borrow();
        let everything: BTreeMap<String, String> =
            serde_json::from_str(&fresh.everything_as_text().unwrap()).unwrap();
        for (key, text) in &disk.sacred {
            assert_eq!(disk.texts.get(key), Some(text), "{key} was changed");
            if key.starts_with("fermentside/") {
                assert_eq!(everything.get(key), Some(text), "{key} is not in the rescue copy");
                assert!(loaded.set_aside.iter().any(|s| s.key == *key && s.text == *text));
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(1_000) })]

    #[test]
    fn nothing_saved_is_lost(lagging: bool, acts in prop::collection::vec(acts(), 1..40)) {
        let mut world = World::new(lagging);
        let mut dead = world.dead();
        for act in &acts {
            world.act(act);
            world.check();
            // Whatever makes room, what was dead comes to life by a save of itself alone.
            let now = world.dead();
            let of = match act {
                Act::Save { thing, .. } | Act::Resolve { thing, .. } => THINGS[*thing],
                _ => "",
            };
            let mut back = dead.iter().filter(|id| *id != of && !now.contains(*id));
            if !matches!(act, Act::Damage { .. }) && let Some(id) = back.next() {
                let there = Archive::new(Tab::new(&world.disk)).load().unwrap();
                prop_assert!(!screen(&there).contains_key(id), "{} came back", id);
            }
            dead = now;
        }
    }
}
