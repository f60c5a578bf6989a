//! The bottling as it was recorded, and the word of caution that stays with it.

use super::fields::FORM;
use super::filled;
use crate::app::act::{Act, BottleAct, FrameAct, Paper};
use crate::app::model::Model;
use crate::app::opening::plate;
use crate::app::part::{Part, Tag, What, action, alert, group, heading, text};
use crate::batch::{BottlingRecord, EntryKey, Id, Kind, Summary};

/// The record.
pub fn parts(m: &Model, s: &Summary, id: &Id, record: &BottlingRecord) -> Vec<Part> {
    let (words, print) = (&m.words.bottle, &m.words.print);
    let caution = m.words.cautions.glass;
    // The same answer as at Open: the next thing asked of these bottles.
    let mut parts: Vec<_> = plate(m, s).into_iter().collect();
    parts.push(heading("bottled/heading", 2, words.in_the_bottle));
    if s.may_be_above_ceiling() || s.is_hazard() {
        let why = if s.is_hazard() { words.one_gushed } else { words.may_hold_more };
        let said = format!("{why} {caution}");
        let said = vec![text("bottled/above/said", "notice-said", said)];
        parts.push(alert("bottled/above", "notice notice-grave", said));
    }
    let paper = |name, label, paper| action(name, "", label, Act::Frame(FrameAct::Print(paper)));
    let papers = vec![
        paper("bottled/sheet", print.print_sheet, Paper::Sheet),
        paper("bottled/labels", print.print_labels, Paper::Labels),
    ];
    let key = EntryKey { kind: Kind::Bottling, id: id.clone() };
    let delete = Act::Bottle(BottleAct::Delete(key));
    parts.extend([
        Part::new("bottled/rows", What::Figures((words.rows)(m.writer(), record))),
        text("bottled/caution", "small", caution),
        group("bottled/paper", Tag::Div, "log-actions", papers),
    ]);
    parts.extend(filled::parts(m, &s.id, record));
    parts.extend([
        Part::new("bottled/outcome", What::Outcome(m.outcome(FORM))),
        action("bottled/delete", "danger", words.delete, delete),
    ]);
    parts
}
