//! Copies of the records: what stands in the store as things of a copy, and back again.

use super::act::{Act, GearAct};
use super::event::{Effect, NoFile};
use super::model::Model;
use super::part::{HandOut, Part, What, WordsField};
use super::phone::CopyMade;
use super::save::commit;
use crate::batch::{Change, Copied, Edit, Entry, Id, Kind, Settings};
use crate::exchange::copy::{Copy, Refused, Thing, write};
use crate::json::read_texts;
use crate::order::in_order;
use crate::quantity::Moment;
use crate::store::{Archive, MemoryStore, Record, Revision, Standing, Store, Token, is_record};

/// How many readings may come together before a copy is asked for.
const READINGS: u32 = 10;

/// A revision as a thing of a copy; none for what was deleted.
fn thing(revision: &Revision) -> Option<Thing> {
    let Record { kind, id, body, revision: number, token, at, deleted } = &revision.record;
    (!deleted).then(|| Thing {
        kind: kind.clone(),
        id: id.clone(),
        revision: *number,
        token: token.to_string(),
        replaces: revision.replaces().map(|token| token.to_string()).collect(),
        saved: *at,
        body: body.clone(),
    })
}

/// All that stands, as things of a copy.
#[must_use]
pub fn things(standing: &Standing) -> Vec<Thing> {
    standing.shown.iter().filter_map(thing).collect()
}

/// A thing of a copy as it was saved, with what it replaces; none should its token be none.
#[must_use]
pub fn revision(thing: &Thing) -> Option<Revision> {
    let token: Token = thing.token.parse().ok()?;
    let record = Record {
        kind: thing.kind.clone(),
        id: thing.id.clone(),
        body: thing.body.clone(),
        revision: thing.revision,
        token,
        at: thing.saved,
        deleted: false,
    };
    let older = thing.replaces.iter().filter_map(|token| token.parse().ok()).collect();
    Some(Revision { record, parents: vec![], older })
}

/// What the page handed out when it had stopped (`src/boot.js`), as a copy: every stored text by its key.
#[must_use]
pub fn rescued(text: &str, now: Moment) -> Option<Copy> {
    let texts = read_texts(text).ok()?;
    let mut store = MemoryStore::new();
    for (key, text) in texts.iter().filter(|(key, _)| is_record(key)) {
        store.write(key, text).ok()?;
    }
    let standing = Archive::new(store).standing().ok()?;
    let beside = standing.beside.iter().filter_map(thing).collect();
    let copy =
        Copy { made: now, batch: None, things: things(&standing), beside, set_aside: vec![] };
    (!copy.things.is_empty()).then_some(copy)
}

/// The text of a copy: of some batches with the instruments they were read with, or of all there is when of
/// none. With it the things of those batches, by kind and identity.
#[must_use]
pub fn text(standing: &Standing, of: &[Id], made: Moment) -> (String, Vec<(String, String)>) {
    let sound = |things: Vec<Thing>| -> (Vec<Thing>, Vec<Thing>) {
        // In a copy a body is JSON; what is none stands with what could not be read.
        things.into_iter().partition(|thing| {
            serde_json::from_str::<serde::de::IgnoredAny>(&thing.body).is_ok()
                && thing.body.trim_start().starts_with('{')
        })
    };
    let (shown, odd) = sound(things(standing));
    let (beside, odd_beside) = sound(standing.beside.iter().filter_map(thing).collect());
    let mut copy = Copy { made, batch: None, things: shown, beside, set_aside: vec![] };
    let mut things = vec![];
    match of {
        [] => {
            let odd = odd.into_iter().chain(odd_beside);
            let odd = odd
                .filter_map(|thing| Some((revision(&thing)?.record.key().to_string(), thing.body)));
            let aside = standing.set_aside.iter().map(|one| (one.key.clone(), one.text.clone()));
            copy.set_aside = odd.chain(aside).collect();
        }
        some => {
            copy.batch = if let [one] = some { Some(one.as_str().to_owned()) } else { None };
            things = of_batches(&mut copy, some);
        }
    }
    (write(&copy).unwrap_or_default(), things)
}

/// Leaves what belongs to batches, and tells what that is beside the instruments.
fn of_batches(copy: &mut Copy, batches: &[Id]) -> Vec<(String, String)> {
    let entry = |thing: &Thing| Entry::from_text(Kind::named(&thing.kind)?, &thing.body).ok();
    let mut instruments: Vec<Id> = vec![];
    let belongs = |thing: &Thing| match entry(thing) {
        Some(Entry::Batch(_)) => batches.iter().any(|batch| batch.as_str() == thing.id),
        Some(entry) => entry.batch().is_some_and(|of| batches.contains(of)),
        None => false,
    };
    let mut things = vec![];
    for thing in copy.things.iter().filter(|thing| belongs(thing)) {
        things.push((thing.kind.clone(), thing.id.clone()));
        match entry(thing) {
            Some(Entry::Batch(heading)) => instruments.push(heading.hydrometer),
            Some(Entry::Reading(reading)) => instruments.push(reading.hydrometer),
            _ => {}
        }
    }
    let used = |thing: &Thing| {
        thing.kind == Kind::Hydrometer.name()
            && instruments.iter().any(|id| id.as_str() == thing.id)
    };
    copy.things.retain(|thing| belongs(thing) || used(thing));
    copy.beside.retain(|thing| belongs(thing));
    things
}

/// The button that hands a copy out, and its text to be copied by hand.
pub fn hand_out(m: &Model, of: &[Id]) -> Vec<Part> {
    let words = &m.words.copies;
    let Some(CopyMade { text, .. }) = m.phone.copy.as_ref().filter(|made| made.of == of) else {
        return vec![];
    };
    let (year, month, day, ..) = m.now.parts();
    let name = match of {
        [] => "",
        [one] => m.journal.batch(one).map_or("", |heading| heading.name.as_str()),
        _ => words.batches_file,
    };
    let name: String = name.chars().map(plain).collect();
    let name =
        name.split('-').filter(|word| !word.is_empty()).fold(String::new(), |a, b| a + b + "-");
    let file = HandOut {
        label: words.hand_out.to_owned(),
        file: format!("fermentside-{name}{year:04}-{month:02}-{day:02}.json"),
        media: "application/json",
        text: text.clone(),
        act: Some(Act::Gear(GearAct::HandedOut)),
    };
    let by_hand = WordsField {
        label: words.by_hand.to_owned(),
        text: text.clone(),
        error: String::new(),
        long: true,
        to_copy: true,
    };
    vec![Part::new("copy/file", What::HandOut(file)), Part::new("copy/text", What::Words(by_hand))]
}

/// A letter that every phone takes in the name of a file.
fn plain(c: char) -> char {
    if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' }
}

/// How many readings there are and how many batches are bottled.
fn counts(m: &Model) -> (u32, u32) {
    counts_of(m, m.journal.batches().map(|(id, _)| id))
}

fn counts_of<'a>(m: &Model, batches: impl Iterator<Item = &'a Id>) -> (u32, u32) {
    let (mut readings, mut bottled) = (0, 0);
    for id in batches {
        readings += m.journal.readings(id).len() as u32;
        bottled += u32::from(m.journal.bottling(id).is_some());
    }
    (readings, bottled)
}

/// How many readings, and batches bottled, are in no copy.
pub fn since(m: &Model) -> (u32, u32) {
    let (readings, bottled) = counts(m);
    let in_copy = m.settings().copied.map_or((0, 0), |copied| (copied.readings, copied.bottled));
    (readings.saturating_sub(in_copy.0), bottled.saturating_sub(in_copy.1))
}

/// The change that takes batches out with their logs. What comes after the last copy is told by numbers: so
/// theirs go from those of the copy too, as if it had had all of them.
pub fn without(m: &Model, batches: &[Id]) -> Change {
    let removals: Vec<_> = batches.iter().map(|id| m.journal.removal(id)).collect();
    let edits = removals.iter().flat_map(|change| change.edits().iter().cloned());
    let (readings, bottled) = counts_of(m, batches.iter());
    let settings = m.settings();
    let less = settings.copied.clone().map(|copied| Copied {
        readings: copied.readings.saturating_sub(readings),
        bottled: copied.bottled.saturating_sub(bottled),
        ..copied
    });
    let changed = (less != settings.copied)
        .then(|| Edit::Put(Settings::id(), Entry::Settings(Settings { copied: less, ..settings })));
    Change::all(edits.chain(changed))
}

/// Whether it is time for a copy: ten readings or a bottled batch are in none.
pub fn is_due(m: &Model) -> bool {
    let (readings, bottled) = since(m);
    readings >= READINGS || bottled > 0
}

/// The copy was handed out. One of everything is remembered.
pub fn handed_out(m: &mut Model) -> Vec<Effect> {
    let Some(made) = &mut m.phone.copy else { return vec![] };
    made.handed = true;
    if !made.of.is_empty() {
        return vec![];
    }
    let (readings, bottled) = counts(m);
    let copied = Some(Copied { at: m.now, readings, bottled });
    let settings = Settings { copied, ..m.settings() };
    let change = Change::put(Settings::id(), Entry::Settings(settings));
    // It lacks nothing but the note that it was made.
    let made = m.phone.copy.take();
    let effects = commit(m, "keeping", change, "", vec![]);
    m.phone.copy = made;
    effects
}

/// Why a file cannot be read at all.
pub fn why_no_file(m: &Model, why: NoFile) -> String {
    match why {
        NoFile::TooLarge => (m.words.copies.refused)(&Refused::TooLong),
        NoFile::Unread => m.words.copies.unread.to_owned(),
    }
}

/// Things in the order in which they are told: batches first.
pub fn kinds_in_order(kinds: Vec<Kind>) -> Vec<Kind> {
    in_order(kinds, Ord::cmp)
}
