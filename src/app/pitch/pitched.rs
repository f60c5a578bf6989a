//! The pitching as it was recorded, what to expect now, and what to do when the beer is too warm already.

use crate::advice::pitch::already_in;
use crate::advice::practice::Lag;
use crate::app::act::{Act, PitchAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Part, What, action, heading, text};
use crate::app::save::commit;
use crate::batch::{Change, EntryKey, Id, Kind, PitchRecord, Summary};
use crate::words::write;

/// How the beer stands with its yeast in.
pub const PLATE: &str = "pitched/verdict";
/// The name under which it is said why it was not deleted.
const DELETING: &str = "pitched/outcome";

fn rows(m: &Model, s: &Summary, record: &PitchRecord) -> Vec<(String, String)> {
    let (w, all) = (m.writer(), &m.words.pitch);
    let words = &all.pitched;
    let mut rows = vec![(words.pitched, write::moment(record.at))];
    let mut row = |name, figure: Option<String>| rows.extend(figure.map(|f| (name, f)));
    let text = |text: &String| Some(text.clone()).filter(|text| !text.is_empty());
    let set = |set| if set { words.satellite_set } else { words.satellite_none };
    row(words.wort, record.wort.map(|t| w.temperature(t)));
    row(words.volume, record.volume.map(|v| w.volume(v)));
    row(words.water, record.water.map(|water| w.volume(water.volume)));
    row(words.ice, record.ice.map(|ice| w.mass(ice)));
    row(words.by_sample, s.by_sample.map(|sg| w.gravity(sg.value())));
    let kit = s.by_ingredients.as_ref();
    row(words.by_ingredients, kit.map(|kit| w.gravity(kit.gravity.value())));
    row(words.yeast, record.yeast.map(|grams| w.mass(grams)));
    row(words.sachets, record.sachets.map(|n| n.to_string()));
    row(words.packet, text(&record.product));
    row(words.splashed, record.aerated.map(write::duration));
    row(words.satellite, record.satellite.map(|yes| set(yes).to_owned()));
    row(words.stands_in, record.vessel.map(|v| (all.place.vessel)(v).to_owned()));
    row(words.place, text(&record.place));
    row(words.room, record.room.map(|t| w.temperature(t)));
    row(words.note, text(&record.note));
    rows.into_iter().map(|(name, figure)| (name.to_owned(), figure)).collect()
}

/// The record.
pub fn parts(m: &Model, s: &Summary, (id, record): &(Id, PitchRecord)) -> Vec<Part> {
    let words = &m.words.pitch.pitched;
    let mut parts = vec![];
    if let Some(beer) = s.beer_with_yeast(m.now) {
        let judged = (words.already_in)(m.writer(), &already_in::judge(beer));
        parts.push(Part::new(PLATE, What::Verdict(judged)));
    }
    let beer = s.beer_with_yeast(m.now).map(|pitched| pitched.beer.value());
    let lag = Lag::of(Lag::is_slow(s.heading.family, beer));
    let key = EntryKey { kind: Kind::Pitch, id: id.clone() };
    parts.extend([
        heading("pitched/title", 2, words.yeast_is_in),
        text("pitched/silence", "", (words.silence)(m.now.since(record.at), lag)),
        Part::new("pitched/figures", What::Figures(rows(m, s, record))),
        text("pitched/gas", "small", m.words.cautions.gas),
        Part::new(DELETING, What::Outcome(m.outcome(DELETING))),
        action("pitched/delete", "danger", words.delete, Act::Pitch(PitchAct::Delete(key))),
    ]);
    parts
}

/// Takes the pitching out.
pub fn delete(m: &mut Model, key: EntryKey) -> Vec<Effect> {
    commit(m, DELETING, Change::remove(key), m.words.pitch.pitched.deleted, vec![])
}
