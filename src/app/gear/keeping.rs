//! Where the records are, and all of them as one text to take away.

use crate::app::act::{Act, GearAct};
use crate::app::model::Model;
use crate::app::part::{
    HandOut, Item, Part, Tag, What, WordsField, action, group, heading, status, text,
};

/// The sections.
pub fn sections(m: &Model) -> [Part; 2] {
    [records(m), cautions(m)]
}

fn records(m: &Model) -> Part {
    let words = &m.words.gear;
    let kept = if m.phone.memory_only { words.kept_nowhere } else { words.kept_here };
    let offline = if m.phone.offline_ready { words.offline } else { words.not_offline };
    let offline = status("keeping/offline", vec![text("keeping/offline/said", "", offline)]);
    let mut parts = vec![
        heading("keeping/head", 2, words.records),
        text("keeping/kept", "", kept),
        offline,
        action("keeping/show", "", words.show_all, Act::Gear(GearAct::ShowAll)),
    ];
    if let Some(everything) = m.phone.everything.as_ref().filter(|text| !text.is_empty()) {
        let file = HandOut {
            label: words.hand_out.to_owned(),
            file: "fermentside.json".to_owned(),
            media: "application/json",
            text: everything.clone(),
        };
        let copy = WordsField {
            label: words.copy_this.to_owned(),
            text: everything.clone(),
            error: String::new(),
            long: true,
            to_copy: true,
        };
        parts.push(Part::new("keeping/file", What::HandOut(file)));
        parts.push(Part::new("everything", What::Words(copy)));
    }
    group("keeping", Tag::Section, "", parts)
}

fn cautions(m: &Model) -> Part {
    let words = &m.words.cautions;
    let all = [words.glass, words.hot, words.gas, words.cleaner, words.strength];
    let items = all.map(|said| Item { kind: "", mark: "", text: said.to_owned() });
    let parts = vec![
        heading("cautions/head", 2, m.words.gear.cautions),
        Part::new("cautions/all", What::Items("", items.into())),
    ];
    group("cautions", Tag::Section, "", parts)
}
