//! "No bubbles?": what was seen, a few touches, and the answer.

use crate::advice::watch::bubbles::{Signs, judge};
use crate::app::act::{Act, WatchAct};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, Tick, What, group};
use crate::batch::Summary;

/// The fold.
pub fn parts(m: &Model, s: &Summary) -> Part {
    let words = &m.words.watch;
    let ticks = words.signs.iter().zip(m.here.signs).enumerate().map(|(at, (label, on))| {
        let tick = Tick { label: (*label).to_owned(), on, act: Act::Watch(WatchAct::Sign(at)) };
        Part::new(format!("quiet/sign-{at}"), What::Tick(tick))
    });
    let ticks = group("quiet/ticks", Tag::Div, "ticks", ticks.collect());
    let mut seen = group("quiet/seen", Tag::Fieldset, "choice", vec![ticks]);
    if let What::Group(seen) = &mut seen.what {
        words.what_is_seen.clone_into(&mut seen.label);
    }
    let mut parts = vec![seen];
    let [foam, drops, bulging, leaks, old_yeast] = m.here.signs;
    let signs = Signs { foam, drops, bulging, leaks };
    let answer = s.quiet(m.now, signs, old_yeast).map(|quiet| judge(&quiet));
    let verdict = answer.map(|advice| What::Verdict((words.bubbles)(m.writer(), &advice)));
    parts.extend(verdict.map(|verdict| Part::new("quiet/answer", verdict)));
    fold(m, "quiet", words.no_bubbles, parts)
}
