//! How a bottle was.

use crate::advice::odd::date;
use crate::app::act::{Act, OpenAct};
use crate::app::ask::{Asked, Chosen, answer_or_none, choice, moment, words_field};
use crate::app::ask_first::{ask_first, question};
use crate::app::event::Effect;
use crate::app::fold::fold;
use crate::app::model::{Model, Then};
use crate::app::opening::PLATE;
use crate::app::part::{Part, What, form, heading, submit};
use crate::app::save::commit;
use crate::batch::{Change, Clarity, Entry, Fizz, Id, OpeningRecord};
use crate::quantity::Moment;

/// The name that its outcome goes by.
const FORM: &str = "open/form";
/// The fields, which are forgotten once it is saved.
const FIELDS: [&str; 5] = ["fizz", "clarity", "taste", "note", "at"];
/// Stored names of how much fizz, and of a burst.
const FIZZ: [&str; 6] = ["1", "2", "3", "4", "5", "burst"];

/// How the names of a batch's fields here begin.
pub fn scope(batch: &Id) -> String {
    format!("opening/{}/", batch.as_str())
}

struct Fields {
    /// How much, and whether it burst.
    fizz: Chosen<Option<(Fizz, bool)>>,
    clarity: Chosen<Option<Clarity>>,
    taste: Chosen<String>,
    note: Chosen<String>,
    at: Asked<Moment>,
}

fn fields(m: &Model, batch: &Id) -> Fields {
    let words = &m.words.open;
    let name = |key: &str| format!("{}{key}", scope(batch));
    // One that burst had more gas than any that gushed.
    let fizz: Vec<_> = (1..)
        .zip(FIZZ.iter().zip(words.fizzes))
        .map(|(number, (stored, words))| {
            (Fizz::new(number.min(5)).map(|fizz| (fizz, number > 5)), *stored, words)
        })
        .collect();
    Fields {
        fizz: choice(m, &name("fizz"), (words.fizz, ""), &fizz, None),
        clarity: answer_or_none(m, &name("clarity"), (words.how_clear, ""), words.clarity),
        taste: words_field(m, &name("taste"), words.taste, "", false),
        note: words_field(m, &name("note"), words.note, "", true),
        at: moment(m, &name("at"), words.at, None),
    }
}

/// The form.
pub fn parts(m: &Model, batch: &Id) -> Part {
    let words = &m.words.open;
    let Fields { fizz, clarity, taste, note, at } = fields(m, batch);
    let mut parts = vec![
        heading("open/form/heading", 2, words.how_it_was),
        fizz.part,
        clarity.part,
        fold(m, "open/form/more", words.more, vec![taste.part, note.part, at.part]),
        Part::new("open/form/outcome", What::Outcome(m.outcome(FORM))),
    ];
    parts.extend(question(m, FORM));
    parts.push(submit("open/form/save", words.save));
    form(FORM, "", send(batch), parts)
}

fn send(batch: &Id) -> Act {
    Act::Open(OpenAct::Save(batch.clone()))
}

/// Saves it.
pub fn save(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let words = &m.words.open;
    let Fields { fizz, clarity, taste, note, at } = fields(m, batch);
    let (Some((fizz, burst)), Ok(at)) = (fizz.value, at.value) else {
        let (why, first) = match fizz.value {
            None => (words.say_fizz, fizz.part.name),
            Some(_) => (m.words.frame.look_again, at.part.name),
        };
        m.here.outcomes.insert(FORM.to_owned(), why.to_owned());
        return vec![Effect::Attend(first)];
    };
    let begun = m.journal.batch(batch).map_or(at, |heading| heading.started);
    let odd = date(at, begun, m.now).into_iter().collect();
    let field = scope(batch) + "at";
    if let Err(asked) = ask_first(m, FORM, odd, &field, send(batch)) {
        return asked;
    }
    let record = OpeningRecord {
        batch: batch.clone(),
        at,
        fizz,
        clarity: clarity.value,
        taste: taste.value,
        note: note.value,
        burst,
    };
    let change = Change::put(m.new_id(), Entry::Opening(record));
    let scope = scope(batch);
    let forget = FIELDS.map(|key| Then::Forget(format!("{scope}{key}")));
    // The answer to it stands there.
    let then = forget.into_iter().chain([Then::Attend(PLATE.to_owned())]);
    commit(m, FORM, change, words.saved, then.collect())
}
