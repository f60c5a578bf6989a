//! In whatever order the form is filled in: nothing says that the yeast may go in while it is not known what
//! wort and yeast there are, or that they were left out on purpose.

use super::{batch, pitching, stage};
use crate::paper::Paper;

/// The steps that are gone through here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    Cool,
    Gravity,
    Yeast,
    Air,
}

/// How a step is left: with a result, or skipped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Left {
    Filled,
    Skipped,
}

const STEPS: [Step; 4] = [Step::Cool, Step::Gravity, Step::Yeast, Step::Air];
const LINES: [&str; 7] =
    ["Cool", "Gravity", "Yeast", "Satellite", "Air", "Place", "The yeast goes in"];

fn leave(phone: &mut Paper, step: Step, how: Left) {
    let line = match step {
        Step::Cool => "Cool",
        Step::Gravity => "Gravity",
        Step::Yeast => "Yeast",
        Step::Air => "Air",
    };
    open(phone, line);
    if how == Left::Skipped {
        return phone.tap("Skip");
    }
    match step {
        Step::Cool => phone.type_into("Wort now", "19"),
        Step::Gravity => phone.type_into("Hydrometer reads", "1.046"),
        Step::Yeast => phone.tap("2"),
        Step::Air => phone.type_into("Splashed or shaken for", "5"),
    }
}

/// Opens a step that is not open yet.
fn open(phone: &mut Paper, line: &str) {
    if !stage(phone).contains(&format!("## {line}\n")) {
        phone.tap(line);
    }
}

/// Whether anything on the screen says that the yeast may go in.
fn says_so(phone: &Paper) -> bool {
    let text = stage(phone).to_lowercase();
    ["pitch now", "pitch and seal", "and seal", "next: pitch", "may go in"]
        .iter()
        .any(|words| text.contains(words))
}

/// All orders of the steps.
fn orders() -> Vec<Vec<Step>> {
    let mut all = vec![vec![]];
    for _ in STEPS {
        let longer = |order: &Vec<Step>| {
            let left = STEPS.into_iter().filter(|step| !order.contains(step)).collect::<Vec<_>>();
            let with = |step| order.iter().copied().chain([step]).collect();
            left.into_iter().map(with).collect::<Vec<_>>()
        };
        all = all.iter().flat_map(longer).collect();
    }
    all
}

/// One way through it: what was left so far by each step, and nothing says "pitch now" before its time.
fn walk(order: &[Step], filled: u32) -> bool {
    let mut phone = pitching();
    let mut left = vec![];
    let mut said = false;
    for step in order {
        let how = if filled & (1 << *step as u32) == 0 { Left::Skipped } else { Left::Filled };
        leave(&mut phone, *step, how);
        left.push((*step, how));
        let gone_through = STEPS[1..].iter().all(|step| left.iter().any(|(one, _)| one == step));
        said = says_so(&phone);
        assert!(gone_through || !said, "after {left:?}:\n{}", stage(&phone));
    }
    // Once all were gone through it is said, or why it can't be told.
    open(&mut phone, "The yeast goes in");
    said || says_so(&phone)
}

/// "Cool enough: pitch now, seal" stood there before gravity, air and yeast were known.
#[test]
fn in_no_order_is_it_told_to_pitch_before_gravity_yeast_and_air_are_settled_or_skipped() {
    let orders = orders();
    assert_eq!(orders.len(), 24);
    // Every order with each step filled, skipped, and the two mixed by turns.
    for (at, order) in orders.iter().enumerate() {
        for filled in [0b1111, 0b0001, [0b0011, 0b0101, 0b1001, 0b0111, 0b1011, 0b1101][at % 6]] {
            assert!(walk(order, filled), "{order:?} {filled:04b}: it is told in the end");
        }
    }
}

/// Every step's own screen, with every other step ahead, filled or skipped.
#[test]
fn no_step_tells_to_pitch_while_another_is_open() {
    let of = |code: usize, step: usize| match code / 3_usize.pow(step as u32) % 3 {
        0 => None,
        1 => Some(Left::Filled),
        _ => Some(Left::Skipped),
    };
    let mut told = 0;
    for code in 0..27 {
        let mut phone = pitching();
        leave(&mut phone, Step::Cool, Left::Filled);
        let ways: Vec<_> = (0..3).map(|step| of(code, step)).collect();
        for (step, how) in STEPS[1..].iter().zip(&ways) {
            if let Some(how) = how {
                leave(&mut phone, *step, *how);
            }
        }
        let gone_through = ways.iter().all(Option::is_some);
        for line in LINES {
            open(&mut phone, line);
            let said = says_so(&phone);
            assert!(gone_through || !said, "{ways:?} at {line}:\n{}", stage(&phone));
            told += usize::from(said);
        }
    }
    assert!(told >= 8, "each of the eight ways to have gone through them is told: {told}");
}

/// What is too warm, or not read, is never told to be pitched, whatever else is settled.
#[test]
fn warm_wort_and_wort_that_was_not_read_are_not_told_to_be_pitched() {
    for wort in ["27", "60", "4", ""] {
        let mut phone = pitching();
        phone.type_into("Wort now", wort);
        for step in [Step::Gravity, Step::Yeast, Step::Air] {
            leave(&mut phone, step, Left::Filled);
        }
        for line in LINES {
            open(&mut phone, line);
            assert!(!says_so(&phone), "{wort:?} at {line}:\n{}", stage(&phone));
        }
    }
}

/// A batch without any gravity is asked about once more, however the steps were left, and saved by nothing
/// but an answer to that.
#[test]
fn a_batch_without_any_gravity_is_asked_about_in_every_order() {
    for order in orders().iter().step_by(3) {
        let mut phone = pitching();
        for step in order {
            let how = if *step == Step::Gravity { Left::Skipped } else { Left::Filled };
            leave(&mut phone, *step, how);
        }
        open(&mut phone, "The yeast goes in");
        for _ in 0..2 {
            phone.send_form_of("pitch/outcome");
            phone.sees("Without a starting gravity only time, or a satellite, can tell");
            assert!(phone.model.journal.pitch(&batch()).is_none(), "{order:?}");
        }
        phone.tap("Pitch without it");
        assert!(phone.model.journal.pitch(&batch()).is_some(), "{order:?}");
    }
}
