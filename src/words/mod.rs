//! What is said: every text for people, one table a language; numbers, units and dates written.
//!
//! A text is a field of a table, a sentence a function in one; each stage of the job has a folder of
//! its own. What is below keeps `Display` for developers alone. To add a language, write one more
//! [`Words`]: what it lacks does not compile.

mod batches;
mod bench;
mod bottle;
mod cautions;
mod cooling;
mod copies;
mod fields;
mod frame;
mod gear;
mod keeping;
mod kitchen;
mod names;
mod now;
mod odd;
mod open;
mod part_of_day;
mod pitch;
mod print;
mod strength;
mod table;
mod texts;
mod told;
mod watch;
mod working;
pub mod write;

pub use batches::BatchesWords;
pub use bench::BenchWords;
pub use bottle::{BottleWords, Weighs};
pub use cautions::Cautions;
pub use cooling::CoolingWords;
pub use copies::CopyWords;
pub use fields::FieldWords;
pub use frame::FrameWords;
pub use gear::GearWords;
pub use keeping::KeepingWords;
pub use names::Names;
pub use now::NowWords;
pub use odd::OddWords;
pub use open::OpenWords;
pub use pitch::PitchWords;
pub use print::PrintWords;
pub use strength::StrengthWords;
pub use table::TableWords;
pub use watch::WatchWords;
pub use working::WorkingWords;
pub use write::Writer;

use crate::advice::Verdict;
use cautions::CAUTIONS;
use frame::FRAME;
use names::NAMES;

/// Every text of one language.
#[derive(Debug)]
pub struct Words {
    /// Round every screen.
    pub frame: FrameWords,
    /// At fields.
    pub fields: FieldWords,
    /// Names of things.
    pub names: Names,
    /// Cautions.
    pub cautions: Cautions,
    /// Workings.
    pub working: WorkingWords,
    /// Strength.
    pub strength: StrengthWords,
    /// Now.
    pub now: NowWords,
    /// The list of batches, and the form of one.
    pub batches: BatchesWords,
    /// Cooling wort, as a sum.
    pub cooling: CoolingWords,
    /// Pitch.
    pub pitch: PitchWords,
    /// Watch.
    pub watch: WatchWords,
    /// Bottle.
    pub bottle: BottleWords,
    /// Open.
    pub open: OpenWords,
    /// Paper.
    pub print: PrintWords,
    /// The Bench.
    pub bench: BenchWords,
    /// Gear.
    pub gear: GearWords,
    /// How records are kept.
    pub keeping: KeepingWords,
    /// Copies.
    pub copies: CopyWords,
    /// Readings as a table.
    pub table: TableWords,
    /// What is asked before something odd is saved.
    pub odd: OddWords,
}

/// English.
pub static ENGLISH: Words = Words {
    frame: frame::FRAME,
    fields: fields::FIELDS,
    names: names::NAMES,
    cautions: cautions::CAUTIONS,
    working: working::WORKING,
    strength: strength::STRENGTH,
    now: now::NOW,
    batches: batches::BATCHES,
    cooling: cooling::COOLING,
    pitch: pitch::PITCH,
    watch: watch::WATCH,
    bottle: bottle::BOTTLE,
    open: open::OPEN,
    print: print::PRINT,
    bench: bench::BENCH,
    gear: gear::GEAR,
    keeping: keeping::KEEPING,
    copies: copies::COPIES,
    table: table::TABLE,
    odd: odd::ODD,
};

/// A judgement in words.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// Which of the four.
    pub verdict: Verdict,
    /// The word.
    pub word: &'static str,
    /// One sentence.
    pub sentence: String,
    /// Why, the weightiest first.
    pub reasons: Vec<String>,
    /// What to do next.
    pub next: String,
    /// What its figure is of; empty without a figure.
    pub label: String,
    /// The figure or the date that it gives, and its ± or unit; both may be empty.
    pub figure: (String, String),
    /// What opens the reasons.
    pub why: &'static str,
}

/// A judgement, word and all.
fn judged(
    verdict: Verdict,
    sentence: impl Into<String>,
    reasons: Vec<String>,
    next: impl Into<String>,
) -> Judged {
    let word = (NAMES.verdict)(verdict);
    Judged {
        verdict,
        word,
        sentence: sentence.into(),
        reasons,
        next: next.into(),
        label: String::new(),
        figure: (String::new(), String::new()),
        why: FRAME.why,
    }
}

/// A text for developers as a sentence.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", letters.as_str())
}

/// The same with a small letter at its head.
fn lower(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_ascii_lowercase().to_string()).unwrap_or_default();
    first + letters.as_str()
}
