//! What versions of one record say, field by field and side by side, where they differ.

use super::write::{self, Writer};
use crate::json::{Member, Tree};
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Grams, Hours, Litres, Measured, Metres, Moment, ShareUnit,
    SpecificGravity, Unit, write_number,
};

/// What a brewer calls the thing of an identity, if anything.
pub type NameOf<'a> = &'a dyn Fn(&str) -> Option<String>;

/// How what stands in a field is written.
#[derive(Clone, Copy, PartialEq)]
enum How {
    Temperature,
    Volume,
    Mass,
    Gravity,
    Change,
    Gas,
    Time,
    Share,
    Height,
    Number,
    /// As the brewer typed it.
    Typed,
}
use How::{Change, Gas, Gravity, Height, Mass, Number, Share, Temperature, Time, Typed, Volume};

/// Fields by their stored names: what they are called, and how what stands there is written. One that is
/// missing here goes by its stored name.
const FIELDS: [(&str, &str, How); 60] = [
    ("name", "Name", Typed),
    ("started", "Brewing day", Number),
    ("at", "When", Number),
    ("volume", "Volume", Volume),
    ("family", "Yeast", Number),
    ("packet", "The packet's range", Temperature),
    ("from", "From", Temperature),
    ("to", "To", Temperature),
    ("expected_start", "Start that kit or recipe states", Gravity),
    ("expected_end", "End that kit or recipe states", Gravity),
    ("hydrometer", "Hydrometer", Number),
    ("wort", "Wort", Temperature),
    ("water", "Water", Share),
    ("temperature", "Temperature", Temperature),
    ("ice", "Ice", Mass),
    ("mass", "Mass", Mass),
    ("extract", "Extract", Share),
    ("goes_by", "Goes by", Number),
    ("yeast", "Yeast", Mass),
    ("product", "Packet", Typed),
    ("sachets", "Sachets", Number),
    ("aerated", "Shaken for", Time),
    ("room", "Room", Temperature),
    ("place", "Where it stands", Temperature),
    ("note", "Note", Typed),
    ("as_read", "Hydrometer read", Gravity),
    ("specific", "SG", Gravity),
    ("gravity", "Gravity", Gravity),
    ("start", "Start", Gravity),
    ("end", "End", Gravity),
    ("own_ends", "Ends of own batches", Gravity),
    ("typed", "As typed", Typed),
    ("sample", "Sample temperature", Temperature),
    ("condition", "Sample", Number),
    ("brix", "Refractometer, °Bx", Number),
    ("factor", "Wort factor", Number),
    ("beer", "Beer", Temperature),
    ("weighed", "Weighed", Mass),
    ("target", "Wished carbon dioxide", Gas),
    ("warmest", "Warmest it has been", Temperature),
    ("coldest", "Coldest it has been", Temperature),
    ("weakest", "Weakest bottle", Number),
    ("hottest", "Hottest place", Temperature),
    ("moved", "There since", Number),
    ("worst", "Carbon dioxide at worst", Gas),
    ("went_on_because", "Reason to go on", Typed),
    ("already_in", "Carbon dioxide already in", Gas),
    ("points_left", "Gravity still to fall", Change),
    ("warm_for", "That warm for", Time),
    ("scale", "Steps of the scale", Mass),
    ("sugar_name", "Sugar", Typed),
    ("size", "Size of one", Volume),
    ("class", "Kind", Number),
    ("count", "How many", Number),
    ("taste", "Taste", Typed),
    ("fermentable", "Ferments", Share),
    ("reference", "Made for", Temperature),
    ("division", "From line to line", Change),
    ("offset", "Added to its readings", Change),
    ("height", "Height above the sea", Height),
];

/// What is said of a deleted version, and of a field that says nothing.
const NOTHING: &str = "–";

fn field(name: &str) -> (String, How) {
    match FIELDS.iter().find(|(stored, ..)| *stored == name) {
        Some((_, label, how)) => ((*label).to_owned(), *how),
        None => (plain(name), Number),
    }
}

/// A stored name as words.
fn plain(name: &str) -> String {
    let words = name.replace('_', " ");
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase().to_string()).unwrap_or_default();
    first + letters.as_str()
}

fn number(w: Writer, how: How, value: f64) -> String {
    match how {
        Temperature => w.temperature(Celsius::nearest(value)),
        Volume => w.wort(Litres::nearest(value)),
        Mass => w.weighed(Grams::nearest(value), Grams::literal(0.01)),
        Gravity => w.gravity(SpecificGravity::nearest(value)),
        Change => write_number(value, 4),
        Gas => write::volumes(CarbonDioxideVolumes::nearest(value)),
        Time => write::duration(Hours::nearest(value)),
        Share => format!("{}\u{A0}%", write_number(ShareUnit::Percent.express(value), 0)),
        Height => w.height(Metres::nearest(value)),
        // As many decimals as it has, up to four.
        Number | Typed => {
            let whole = write_number(value, 4);
            whole.trim_end_matches('0').trim_end_matches('.').to_owned()
        }
    }
}

fn said(w: Writer, name_of: NameOf<'_>, how: How, value: &Tree) -> String {
    match value {
        Tree::Null => NOTHING.to_owned(),
        Tree::Bool(yes) => if *yes { "yes" } else { "no" }.to_owned(),
        Tree::Whole(value) => number(w, how, *value as f64),
        Tree::Negative(value) => number(w, how, *value as f64),
        Tree::Number(value) => number(w, how, *value),
        Tree::Text(text) if how == Typed => text.clone(),
        Tree::Text(text) => match (text.parse::<Moment>(), name_of(text)) {
            (Ok(at), _) => format!("{} {}", write::moment(at), at.parts().0),
            (_, Some(name)) => name,
            _ => plain(text),
        },
        Tree::List(items) => {
            let items: Vec<_> = items.iter().map(|item| said(w, name_of, how, item)).collect();
            items.join("; ")
        }
        Tree::Object(members) => {
            if let Some((value, doubt)) = estimate(members) {
                // Beer in a vessel, not its temperature.
                let how = if how == Temperature { Volume } else { how };
                let doubt = said(w, name_of, Number, doubt);
                return format!("{} ±\u{A0}{doubt}", said(w, name_of, how, value));
            }
            let members = members.iter().map(|Member { name, value, .. }| {
                let (label, how) = field(name);
                format!("{label} {}", said(w, name_of, how, value))
            });
            members.collect::<Vec<_>>().join(", ")
        }
    }
}

/// A value and its ±.
fn estimate(members: &[Member]) -> Option<(&Tree, &Tree)> {
    let [value, sigma] = members else { return None };
    (value.name == "value" && sigma.name == "sigma").then_some((&value.value, &sigma.value))
}

/// What a record says, by its fields in their order; nothing for one that is deleted or no JSON.
fn rows(w: Writer, name_of: NameOf<'_>, body: &str) -> Vec<(String, String)> {
    let mut rows = vec![];
    if let Ok(Tree::Object(members)) = serde_json::from_str(body) {
        add(&mut rows, w, name_of, "", &members);
    }
    rows
}

fn add(
    rows: &mut Vec<(String, String)>,
    w: Writer,
    name_of: NameOf<'_>,
    within: &str,
    members: &[Member],
) {
    for Member { name, value, .. } in members {
        let (label, how) = field(name);
        let label = format!("{within}{label}");
        match value {
            // A record within the record; of some it is plain which.
            Tree::Object(inner) if inner.len() > 1 && estimate(inner).is_none() => {
                let plain = ["grounds", "units", "bottles", "sugar"].contains(&name.as_str());
                let within = if plain { String::new() } else { format!("{label}: ") };
                add(rows, w, name_of, &within, inner);
            }
            _ => rows.push((label, said(w, name_of, how, value))),
        }
    }
}

/// The fields in which versions of one record differ, in words: what each is called, and what each version
/// says there.
pub fn differences(w: Writer, name_of: NameOf<'_>, bodies: &[&str]) -> Vec<(String, Vec<String>)> {
    let versions: Vec<_> = bodies.iter().map(|body| rows(w, name_of, body)).collect();
    let mut labels: Vec<&String> = vec![];
    for (label, _) in versions.iter().flatten() {
        if !labels.contains(&label) {
            labels.push(label);
        }
    }
    let mut differ = vec![];
    for label in labels {
        let of = |rows: &Vec<(String, String)>| {
            let said = rows.iter().filter(|(name, _)| name == label).map(|(_, said)| said.clone());
            Some(said.collect::<Vec<_>>().join("; ")).filter(|said| !said.is_empty())
        };
        let all: Vec<_> =
            versions.iter().map(|rows| of(rows).unwrap_or_else(|| NOTHING.to_owned())).collect();
        if all.windows(2).any(|pair| pair[0] != pair[1]) {
            differ.push((label.clone(), all));
        }
    }
    differ
}
