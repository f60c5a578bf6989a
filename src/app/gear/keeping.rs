//! Where the records are, and all of them as one text to take away.

use super::bring;
use crate::app::act::{Act, GearAct};
use crate::app::copies::{hand_out, since};
use crate::app::model::Model;
use crate::app::part::{Item, Part, Tag, What, action, group, heading, status, text};
use crate::app::room;

/// The sections.
pub fn sections(m: &Model) -> [Part; 3] {
    [records(m), bring::section(m), cautions(m)]
}

fn records(m: &Model) -> Part {
    let words = &m.words.gear;
    let kept = if m.phone.memory_only { words.kept_nowhere } else { words.kept_here };
    let offline = if m.phone.offline_ready { words.offline } else { words.not_offline };
    let offline =
        status("keeping/offline", "", vec![text("keeping/offline/said", "small", offline)]);
    let (readings, bottled) = since(m);
    let last = m.settings().copied.map(|copied| copied.at);
    let mut parts = vec![
        heading("keeping/head", 2, words.records),
        text("keeping/kept", "small", kept),
        offline,
        text("keeping/room", "small", (m.words.keeping.room)(room::share(m), room::years_left(m))),
        text("keeping/copies", "small", m.words.copies.what_it_is),
        text("keeping/since", "small", (m.words.copies.since)(last, readings, bottled)),
        action("keeping/copy", "", m.words.copies.make, Act::Gear(GearAct::Copy(vec![]))),
    ];
    parts.extend(hand_out(m, &[]));
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
