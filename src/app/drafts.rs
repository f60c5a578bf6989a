//! What has been typed and not yet saved. It outlives the screen it was typed on, and a closed tab.
//!
//! A draft stands over what a field was given: without one the field shows, and saves, the very value
//! of its record. What was typed keeps the unit it was typed in; another unit only shows it otherwise.

use crate::json_texts::write_texts;
use crate::order::ByKey;

/// One field, as far as the brewer has touched it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Draft {
    /// What was typed or chosen; `None` when only the unit was.
    pub text: Option<String>,
    /// The symbol of the unit it was typed in; empty where there is none.
    pub typed_in: String,
    /// The unit that is shown, when another than the usual was chosen.
    pub unit: Option<String>,
}

/// Every half-filled field, by its name such as `bench/gravity/reading`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drafts {
    kept: ByKey<String, Draft>,
    left: Vec<String>,
    demanded: Vec<String>,
}

/// Ends of stored names: the unit shown, and the unit typed in.
const UNIT: &str = "/unit";
const TYPED_IN: &str = "/typed-in";

impl Drafts {
    /// From stored texts.
    pub fn of(texts: impl IntoIterator<Item = (String, String)>) -> Self {
        let mut drafts = Self::default();
        for (name, text) in texts {
            if let Some(field) = name.strip_suffix(UNIT) {
                drafts.draft(field).unit = Some(text);
            } else if let Some(field) = name.strip_suffix(TYPED_IN) {
                drafts.draft(field).typed_in = text;
            } else {
                drafts.draft(&name).text = Some(text);
            }
        }
        drafts
    }

    /// As texts to be stored, by name.
    #[must_use]
    pub fn texts(&self) -> Vec<(String, String)> {
        let mut texts = vec![];
        for (name, draft) in self.kept.iter() {
            if let Some(text) = &draft.text {
                texts.push((name.clone(), text.clone()));
                if !draft.typed_in.is_empty() {
                    texts.push((format!("{name}{TYPED_IN}"), draft.typed_in.clone()));
                }
            }
            if let Some(unit) = &draft.unit {
                texts.push((format!("{name}{UNIT}"), unit.clone()));
            }
        }
        texts
    }

    /// As one JSON object.
    #[must_use]
    pub fn stored(&self) -> String {
        let texts = self.texts();
        write_texts(texts.iter().map(|(name, text)| (name, text))).unwrap_or_default()
    }

    fn draft(&mut self, name: &str) -> &mut Draft {
        self.kept.or_insert_with(name.to_owned(), Draft::default)
    }

    /// What the brewer did to a field.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Draft> {
        self.kept.get(&name.to_owned())
    }

    /// What was typed or chosen there.
    #[must_use]
    pub fn text(&self, name: &str) -> Option<&str> {
        self.get(name).and_then(|draft| draft.text.as_deref())
    }

    /// Types or chooses; `unit` is the symbol of the unit shown beside it, or nothing.
    pub fn put(&mut self, name: &str, text: impl Into<String>, unit: &str) {
        let draft = self.draft(name);
        draft.text = Some(text.into());
        unit.clone_into(&mut draft.typed_in);
    }

    /// Shows a field in another unit.
    pub fn put_unit(&mut self, name: &str, symbol: &str) {
        self.draft(name).unit = Some(symbol.to_owned());
    }

    /// Shows a field in the usual unit again.
    pub fn usual_unit(&mut self, name: &str) {
        self.draft(name).unit = None;
    }

    /// A field has been left, so its error may be shown.
    pub fn leave(&mut self, name: &str) {
        add(&mut self.left, name);
    }

    /// A save was refused for this field: it shows its error, emptiness included.
    pub fn demand(&mut self, name: &str) {
        add(&mut self.left, name);
        add(&mut self.demanded, name);
    }

    /// Whether a field has been left.
    #[must_use]
    pub fn was_left(&self, name: &str) -> bool {
        self.left.iter().any(|one| one == name)
    }

    /// Whether a save was refused for a field.
    #[must_use]
    pub fn was_demanded(&self, name: &str) -> bool {
        self.demanded.iter().any(|one| one == name)
    }

    /// Forgets what was typed under names that start so: it has been saved, or thrown away.
    pub fn forget(&mut self, start: &str) {
        self.kept.retain(|name| !name.starts_with(start));
        self.left.retain(|name| !name.starts_with(start));
        self.demanded.retain(|name| !name.starts_with(start));
    }

    /// Whether anything was typed under names that start so.
    #[must_use]
    pub fn any(&self, start: &str) -> bool {
        self.kept.iter().any(|(name, draft)| name.starts_with(start) && draft.text.is_some())
    }
}

fn add(names: &mut Vec<String>, name: &str) {
    if !names.iter().any(|one| one == name) {
        names.push(name.to_owned());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_stored_comes_back() {
        let mut drafts = Drafts::default();
        drafts.put("bench/gravity/reading", "11,9", "°P");
        drafts.put_unit("bench/gravity/reading", "SG");
        drafts.put("reading/a/note", "foamy", "");
        drafts.put_unit("reading/a/beer", "°F");
        assert_eq!(Drafts::of(drafts.texts()), drafts);
        assert!(drafts.stored().contains("\"reading/a/note\":\"foamy\""), "{}", drafts.stored());
    }

    #[test]
    fn forgetting_a_form_leaves_the_others() {
        let mut drafts = Drafts::default();
        drafts.put("reading/a/note", "one", "");
        drafts.put("reading/b/note", "two", "");
        drafts.demand("reading/a/note");
        drafts.forget("reading/a/");
        assert_eq!(drafts.text("reading/a/note"), None);
        assert!(!drafts.was_demanded("reading/a/note"));
        assert_eq!(drafts.text("reading/b/note"), Some("two"));
        assert!(drafts.any("reading/") && !drafts.any("reading/a/"));
    }
}
