//! A copy of the records as one text: JSON that a person can read, described by `copy.schema.json`.
//!
//! A record stands in it as it is stored, with the fields of later versions, and with what tells an older
//! saving of it from a newer one. What comes from outside is read with limits, and only as a whole.

use crate::json::{Tree, Wrong};
use crate::json_texts::write_lines;
use crate::quantity::Moment;
use std::fmt;

/// What every copy says it is.
pub const FORMAT: &str = "fermentside-copy";
/// The version that is written here; older ones are read too, once there are any.
pub const VERSION: u32 = 1;
/// The longest text that is read, bytes: more than any browser keeps for a page.
pub const LONGEST: usize = 12_000_000;
/// The most records in one.
pub const MOST: usize = 50_000;
/// How deep lists and objects may stand in each other.
pub const DEEPEST: usize = 32;
/// The longest single record, bytes.
pub const LONGEST_RECORD: usize = 50_000;

/// One saved thing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Thing {
    /// What sort of thing it is: one or more of a-z and `_`.
    pub kind: String,
    /// Which of them: letters, digits and hyphens.
    pub id: String,
    /// 1 for the first saving of it, more for later ones.
    pub revision: u32,
    /// Which saving this is: 16 digits of 0-9 and a-f.
    pub token: String,
    /// Earlier savings that it is known to replace.
    pub replaces: Vec<String>,
    /// When it was saved, by the clock of the phone.
    pub saved: Moment,
    /// What was saved: the text of a JSON object.
    pub body: String,
}

/// A whole copy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Copy {
    /// When it was made.
    pub made: Moment,
    /// The batch that it is of; all there is when none is named.
    pub batch: Option<String>,
    /// Every thing once.
    pub things: Vec<Thing>,
    /// Versions of them that stand beside, where one was changed in two places. They are not brought back.
    pub beside: Vec<Thing>,
    /// Stored texts that could not be read, by the name they lie under. They are not brought back.
    pub set_aside: Vec<(String, String)>,
}

/// Why a text is not taken for a copy. Nothing of it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// There is nothing in it.
    Empty,
    /// It is longer than [`LONGEST`].
    TooLong,
    /// Lists and objects stand deeper in each other than [`DEEPEST`].
    TooDeep,
    /// It is no JSON: another file, or one that lacks its end.
    NoJson,
    /// It is no copy.
    NotACopy,
    /// A newer version of the page made it.
    Newer(u64),
    /// It holds more records than [`MOST`].
    TooMany,
    /// The record of this number, counted from 1, has not the form of one.
    BadRecord(usize),
    /// The record of this number is of a thing that one before it is of.
    Twice(usize),
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "there is nothing in it"),
            Self::TooLong => write!(f, "it is longer than {LONGEST} bytes"),
            Self::TooDeep => write!(f, "it is nested deeper than {DEEPEST}"),
            Self::NoJson => write!(f, "it is no JSON, or lacks its end"),
            Self::NotACopy => write!(f, "it is no copy of these records"),
            Self::Newer(version) => write!(f, "it is of version {version}, here {VERSION}"),
            Self::TooMany => write!(f, "it holds more than {MOST} records"),
            Self::BadRecord(at) => write!(f, "record {at} has not the form of one"),
            Self::Twice(at) => write!(f, "record {at} is of a thing that was there before"),
        }
    }
}

impl std::error::Error for Refused {}

/// Writes a copy, a line for each record.
///
/// # Errors
/// When a text cannot be written as JSON; no such text is known.
pub fn write(copy: &Copy) -> Result<String, serde_json::Error> {
    let mut text = format!(
        "{{\n\"format\": \"{FORMAT}\",\n\"version\": {VERSION},\n\"made\": \"{}\",\n",
        copy.made
    );
    if let Some(batch) = &copy.batch {
        text.push_str(&format!("\"batch\": {},\n", serde_json::to_string(batch)?));
    }
    text.push_str(&format!("\"records\": {},\n", written(&copy.things)?));
    text.push_str(&format!("\"beside\": {},\n", written(&copy.beside)?));
    let aside = copy.set_aside.iter().map(|(name, text)| (name.as_str(), Some(text.as_str())));
    text.push_str(&format!("\"set_aside\": {}\n}}\n", write_lines(aside)?));
    Ok(text)
}

fn written(things: &[Thing]) -> Result<String, serde_json::Error> {
    let mut lines = vec![];
    for thing in things {
        let Thing { kind, id, revision, token, replaces, saved, body } = thing;
        let (kind, id) = (serde_json::to_string(kind)?, serde_json::to_string(id)?);
        let (token, replaces) = (serde_json::to_string(token)?, serde_json::to_string(replaces)?);
        lines.push(format!(
            "\n  {{\"kind\": {kind}, \"id\": {id}, \"revision\": {revision}, \"token\": {token}, \
             \"replaces\": {replaces}, \"saved\": \"{saved}\",\n   \"is\": {body}}}"
        ));
    }
    let end = if lines.is_empty() { "" } else { "\n" };
    Ok(format!("[{}{end}]", lines.join(",")))
}

/// Reads a copy.
///
/// # Errors
/// [`Refused`], and then nothing of it is taken.
pub fn read(text: &str) -> Result<Copy, Refused> {
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    if text.len() > LONGEST {
        return Err(Refused::TooLong);
    }
    if text.trim().is_empty() {
        return Err(Refused::Empty);
    }
    if depth(text) > DEEPEST {
        return Err(Refused::TooDeep);
    }
    let tree: Tree = serde_json::from_str(text).map_err(|_| Refused::NoJson)?;
    let format: Result<String, _> = tree.must("format");
    let version: Result<u64, _> = tree.must("version");
    match (format.as_deref(), version) {
        (Ok(FORMAT), Ok(version)) if version > u64::from(VERSION) => {
            return Err(Refused::Newer(version));
        }
        (Ok(FORMAT), Ok(1)) => {}
        _ => return Err(Refused::NotACopy),
    }
    let not_a_copy = |_: Wrong| Refused::NotACopy;
    let made = tree.must("made").map_err(not_a_copy)?;
    let batch = tree.may("batch").map_err(not_a_copy)?;
    let records: Vec<Tree> = tree.must("records").map_err(not_a_copy)?;
    let beside: Vec<Tree> = tree.may("beside").map_err(not_a_copy)?;
    if records.len().saturating_add(beside.len()) > MOST {
        return Err(Refused::TooMany);
    }
    let mut things: Vec<Thing> = vec![];
    for (at, record) in records.iter().enumerate() {
        things.push(thing(record).ok_or(Refused::BadRecord(at + 1))?);
    }
    if let Some(at) = twice(&things) {
        return Err(Refused::Twice(at + 1));
    }
    // What stands beside is there to be looked at; what of it has no form is passed over.
    let beside = beside.iter().filter_map(thing).collect();
    Ok(Copy { made, batch, things, beside, set_aside: aside(&tree) })
}

fn thing(tree: &Tree) -> Option<Thing> {
    let is: Tree = tree.must("is").ok()?;
    let body = matches!(is, Tree::Object(_)).then(|| serde_json::to_string(&is).ok()).flatten()?;
    let thing = Thing {
        kind: tree.must("kind").ok()?,
        id: tree.must("id").ok()?,
        revision: tree.must("revision").ok()?,
        token: tree.must("token").ok()?,
        replaces: tree.may("replaces").ok()?,
        saved: tree.must("saved").ok()?,
        body,
    };
    let kind = |c: u8| c.is_ascii_lowercase() || c == b'_';
    let id = |c: u8| c.is_ascii_alphanumeric() || c == b'-';
    let fits = (1..=32).contains(&thing.kind.len())
        && thing.kind.bytes().all(kind)
        && (1..=64).contains(&thing.id.len())
        && thing.id.bytes().all(id)
        // Further saves of it must have numbers to go on with.
        && (1..=u32::MAX / 2).contains(&thing.revision)
        && is_token(&thing.token)
        && thing.replaces.iter().all(|token| is_token(token))
        && thing.body.len() <= LONGEST_RECORD;
    fits.then_some(thing)
}

fn is_token(text: &str) -> bool {
    text.len() == 16 && text.bytes().all(|c| c.is_ascii_digit() || (b'a'..=b'f').contains(&c))
}

/// The place of the first thing that one before it is of, too.
fn twice(things: &[Thing]) -> Option<usize> {
    let named = things.iter().enumerate().map(|(at, thing)| ((&thing.kind, &thing.id), at));
    let in_order = crate::order::in_order(named.collect(), |a, b| a.0.cmp(&b.0));
    let pairs = in_order.windows(2).filter(|pair| pair[0].0 == pair[1].0);
    pairs.map(|pair| pair[1].1).min()
}

fn aside(tree: &Tree) -> Vec<(String, String)> {
    let Ok(Tree::Object(all)) = tree.must("set_aside") else { return vec![] };
    let text = |member: crate::json::Member| match member.value {
        Tree::Text(text) => Some((member.name, text)),
        _ => None,
    };
    all.into_iter().filter_map(text).collect()
}

/// How deep lists and objects stand in each other, whether or not all of it is JSON.
fn depth(text: &str) -> usize {
    let (mut deepest, mut open, mut quoted, mut escaped) = (0, 0_usize, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            _ if quoted => {}
            b'[' | b'{' => open += 1,
            b']' | b'}' => open = open.saturating_sub(1),
            _ => {}
        }
        deepest = deepest.max(open);
    }
    deepest
}
