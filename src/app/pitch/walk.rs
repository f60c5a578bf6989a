//! The walk through pitching day: one step open at a time, each closed one a line with its result, and
//! the answer to the open one above them.

use super::look::look_at;
use super::work::{FORM, Work, first_field, open, open_step, skip_draft};
use super::{air, cool, last, place, start, yeast};
use crate::advice::pitch::judge;
use crate::advice::pitch::outlook::outlook;
use crate::advice::pitch::steps::{State, Step};
use crate::app::act::{Act, PitchAct};
use crate::app::ask::Wrong;
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Judged, Part, Tag, What, action, form, group, heading, submit};
use crate::batch::{Id, Summary};
use crate::choices::YesNo;

/// Everything on the stage before the yeast is in.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let work = Work::of(m, s);
    let open = open_step(m, &s.id);
    let one = |step: Step| {
        let name = format!("pitch/step/{}", step.name());
        if step == open {
            group(name, Tag::Li, "step step-open", opened_parts(m, &work, step))
        } else {
            let kind = match work.steps.state(step) {
                State::Ahead => "step step-ahead",
                State::Settled => "step step-done",
                State::Skipped => "step step-skipped",
            };
            group(name, Tag::Li, kind, vec![row(m, &work, step)])
        }
    };
    let mut steps = group("pitch/steps", Tag::Ol, "steps", Step::ALL.map(one).into());
    if let What::Group(group) = &mut steps.what {
        m.words.pitch.steps.steps.clone_into(&mut group.label);
    }
    let steps = group("pitch/course", Tag::Div, "watch-course", vec![steps]);
    vec![group("pitch/walk", Tag::Div, "watch pitching", vec![plate(m, &work, open), steps])]
}

/// The answer to the open step, or its timer; where it has none of its own, whether the yeast may go in.
fn plate(m: &Model, work: &Work, open: Step) -> Part {
    let timer = air::timer_face(m, &work.s.id).filter(|_| open == Step::Air);
    if let Some(face) = timer {
        return Part::new("pitch/air/timer", What::Timer(face));
    }
    let own = match open {
        Step::Gravity => start::judged(m, work),
        Step::Yeast => yeast::judged(m, work),
        Step::Place => place::judged(m, work),
        _ => None,
    };
    let mut judged = own.unwrap_or_else(|| may_it_go_in(m, work));
    if open == Step::Gravity {
        start::figure(m, work, &mut judged);
    }
    Part::new("pitch/verdict", What::Verdict(judged))
}

/// Whether the yeast may go in, and what is next before it does.
fn may_it_go_in(m: &Model, work: &Work) -> Judged {
    let (words, known) = (&m.words.pitch, &work.known);
    let next = work.steps.wanted().map_or(words.cool.pitch_now, words.steps.wanted);
    match known.wort {
        Some(wort) => {
            let found = outlook(wort, &known.looks, known.bath.as_ref());
            (words.cool.outlook)(m.writer(), &found, next)
        }
        None if work.steps.state(Step::Cool) == State::Skipped => (words.cool.unread)(next),
        None => (words.cool.no_wort)(),
    }
}

/// A step that is closed, as one line to be touched.
fn row(m: &Model, work: &Work, step: Step) -> Part {
    let words = &m.words.pitch.steps;
    let result = match work.steps.state(step) {
        State::Settled => result(m, work, step),
        State::Skipped => Some(words.skipped.to_owned()),
        State::Ahead if step == Step::Air && air::runs(m, &work.s.id) => {
            Some(words.timer_runs.to_owned())
        }
        State::Ahead => None,
    };
    let name = (words.name)(step);
    let label = result.map_or_else(|| name.to_owned(), |result| (words.line)(step, &result));
    let open = Act::Pitch(PitchAct::Open(work.s.id.clone(), step));
    action(format!("pitch/step/{}/row", step.name()), "step-row", &label, open)
}

/// What came of a step, in a few words.
fn result(m: &Model, work: &Work, step: Step) -> Option<String> {
    let (w, words) = (m.writer(), &m.words.pitch.steps);
    let (day, known) = (&work.day, &work.known);
    match step {
        Step::Cool => {
            let wort = known.wort?;
            Some((words.cooled)(w, wort.temperature.value(), &judge(wort)))
        }
        Step::Gravity => Some((words.start)(w, known.start?.value(), known.from)),
        Step::Yeast => {
            let amount = yeast::planned(day, known).map(|plan| plan.amount);
            let count = day.sachets.value.map(super::day::Sachets::count);
            Some((words.yeast)(w, day.yeast.ok(), count, amount))
        }
        Step::Satellite => Some((words.satellite)(day.satellite.value?).to_owned()),
        Step::Air => Some((words.splashed)(day.aerated.ok()?)),
        Step::Place => {
            let advice = place::advice(day, known);
            Some((words.place)(w, day.room.ok(), &day.stands.value, advice.as_ref()))
        }
        Step::In => None,
    }
}

/// The open step: its fields, and the way on.
fn opened_parts(m: &Model, work: &Work, step: Step) -> Vec<Part> {
    let (words, id) = (&m.words.pitch.steps, &work.s.id);
    let mut fields = match step {
        Step::Cool => cool::parts(m, work),
        Step::Gravity => start::parts(m, work),
        Step::Yeast => yeast::sachets(m, work),
        Step::Satellite => yeast::satellite(m, work),
        Step::Air => air::parts(m, work),
        Step::Place => place::parts(m, work),
        Step::In => last::parts(m, work),
    };
    let send = if step == Step::In {
        PitchAct::Save(id.clone())
    } else {
        let mut buttons = vec![submit("pitch/next", words.next)];
        if work.steps.state(step) != State::Settled {
            let skip = Act::Pitch(PitchAct::Skip(id.clone(), step));
            buttons.push(action("pitch/skip", "quiet", words.skip, skip));
        }
        fields.push(Part::new("pitch/outcome", What::Outcome(m.outcome(FORM))));
        fields.push(group("pitch/buttons", Tag::Div, "form-actions act", buttons));
        PitchAct::GoOn(id.clone(), step)
    };
    let title = heading("pitch/step/name", 2, (words.name)(step));
    vec![title, form(FORM, "", Act::Pitch(send), fields)]
}

/// Says at which field of a step to look again.
pub fn look_again(m: &Model, work: &Work, step: Step, field: &str) -> String {
    let mut label = None;
    for part in opened_parts(m, work, step) {
        part.each(&mut |part| match &part.what {
            What::Number(number) if part.name == field => label = Some(number.label.clone()),
            What::Moment(moment) if part.name == field => label = Some(moment.label.clone()),
            _ => {}
        });
    }
    let say = |label: String| (m.words.pitch.steps.look_at)(&label);
    label.map_or_else(|| m.words.frame.look_again.to_owned(), say)
}

/// Goes on from a step that has a result; what cannot be read in it is shown first.
pub fn go_on(m: &mut Model, batch: &Id, step: Step) -> Vec<Effect> {
    let Some(s) = m.summary(batch) else { return vec![] };
    let work = Work::of(m, &s);
    let mut wrong = Wrong::default();
    look_at(step, &work.day, &mut wrong);
    if let Some(first) = wrong.shown(m) {
        let why = look_again(m, &work, step, &first);
        return refuse(m, &why, first);
    }
    if work.steps.state(step) == State::Ahead {
        return refuse(m, m.words.pitch.steps.nothing_yet, first_field(batch, step));
    }
    open(m, batch, work.steps.after(step))
}

fn refuse(m: &mut Model, why: &str, look_at: String) -> Vec<Effect> {
    crate::app::save::refuse(m, FORM, why, Some(look_at))
}

/// Leaves a step out and goes on.
pub fn skip(m: &mut Model, batch: &Id, step: Step) -> Vec<Effect> {
    m.drafts.put(&skip_draft(batch, step), YesNo::Yes.name(), "");
    let Some(s) = m.summary(batch) else { return vec![] };
    let next = Work::of(m, &s).steps.after(step);
    open(m, batch, next)
}
