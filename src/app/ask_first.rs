//! Asking before saving: what is odd about a form is said at it, and saved as given once it is confirmed.

use super::act::{Act, Doubted, FrameAct};
use super::event::Effect;
use super::model::Model;
use super::part::{Item, Part, Tag, What, action, alert, group, heading, text};
use crate::advice::odd::Odd;

/// The name of the button that goes back to the field.
const CHANGE: &str = "odd/change";

/// Asks about what is odd at `form`, whose `field` is to be looked at and which is saved by `then`. Gives
/// whether anything was odd and is confirmed; while it is not, what is to follow in place of a save.
pub fn ask_first(
    m: &mut Model,
    form: &str,
    odd: Vec<Odd>,
    field: &str,
    then: Act,
) -> Result<bool, Vec<Effect>> {
    let asked = m.here.doubted.take();
    if odd.is_empty() {
        return Ok(false);
    }
    if asked.is_some_and(|asked| asked.sure && asked.form == form && asked.odd == odd) {
        return Ok(true);
    }
    m.here.outcomes.remove(&form.to_owned());
    let (form, field) = (form.to_owned(), field.to_owned());
    m.here.doubted = Some(Doubted { form, odd, field, then, sure: false });
    Err(vec![Effect::Attend(CHANGE.to_owned())])
}

/// The question at a form, while it is asked.
pub fn question(m: &Model, form: &str) -> Option<Part> {
    let asked = m.here.doubted.as_ref().filter(|asked| asked.form == form)?;
    let reading = matches!(asked.then, Act::Watch(_));
    let less = if reading { m.words.odd.counts_less } else { "" };
    let keep = Act::Frame(FrameAct::KeepAsItIs);
    Some(notice(m, &asked.odd, less, keep, &asked.field))
}

/// What is odd and two answers: also for a question that stands in a form by itself.
pub fn notice(m: &Model, odd: &[Odd], less: &str, keep: Act, field: &str) -> Part {
    let (w, words) = (m.writer(), &m.words.odd);
    let item = |odd: &Odd| Item { kind: "", mark: "", text: (words.odd)(w, *odd) };
    let change = Act::Frame(FrameAct::LookAt(field.to_owned()));
    let buttons = vec![
        action("odd/keep", "", words.keep, keep),
        action(CHANGE, "quiet", words.change, change),
    ];
    let mut parts = vec![
        heading("odd/heading", 3, words.is_that_right),
        Part::new("odd/said", What::Items("reasons", odd.iter().map(item).collect())),
    ];
    parts.extend((!less.is_empty()).then(|| text("odd/less", "small", less)));
    parts.push(group("odd/buttons", Tag::Div, "form-actions", buttons));
    alert("odd", "notice", parts)
}

/// It is right: it is saved as it is.
pub fn keep(m: &mut Model) -> Vec<Effect> {
    let Some(asked) = m.here.doubted.as_mut() else { return vec![] };
    asked.sure = true;
    let then = asked.then.clone();
    super::act_on(m, then)
}

/// It is to be changed.
pub fn look_at(m: &mut Model, field: String) -> Vec<Effect> {
    m.here.doubted = None;
    vec![Effect::Attend(field)]
}
