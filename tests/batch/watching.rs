//! What the record says beside its gravities: refractometer, additions, lost instruments, warmth, steps.

use crate::support::{
    bottling, day, heading, id, opening, pitching, put, reading, summary, with_readings,
};
use fermentside::advice::standing::{Reason, State};
use fermentside::advice::watch::bubbles::{self, Signs};
use fermentside::advice::watch::ladder::Remedy;
use fermentside::batch::{
    Added, BatchHeading, BottlingRecord, Entry, Journal, OpeningRecord, PitchRecord, Reading,
    Refractometer, Settings, Stage, Vessel, by_due,
};
use fermentside::quantity::{Celsius, Measured, Plato, WortFactor};

fn through_glass(days: f64, brix: f64) -> Reading {
    let shown = Refractometer { brix: Plato::literal(brix), factor: WortFactor::literal(1.04) };
    Reading {
        as_read: None,
        typed: String::new(),
        refractometer: Some(shown),
        ..reading(days, 1.0)
    }
}

#[test]
fn a_refractometer_tells_the_start_and_later_only_a_change() {
    // 12.48 °Bx ÷ 1.04 is 12 °P, which is 1.0484 (ICUMSA SPS-4).
    let start = through_glass(-0.1, 12.48);
    let late = [through_glass(9.0, 6.4), through_glass(11.5, 5.8)];
    let beer = [reading(8.0, 1.010), reading(11.0, 1.010)];
    let all = || [start.clone()].into_iter().chain(beer.clone());
    let found = summary(&with_readings(all().chain(late)));
    let original = found.original.expect("a start").value().value();
    assert!((original - 1.0484).abs() < 1e-4, "{original}");
    assert!(found.original_was_read);
    // No gravity comes of them, whatever they show, and none of the strength.
    let gravities = found.lines.iter().filter(|line| line.gravity().is_some()).count();
    assert_eq!(gravities, 3);
    assert!((found.present.expect("a gravity").value().value() - 1.010).abs() < 1e-3);
    assert_eq!(found.standing.state, State::Falling);
    assert_eq!(found.today(day(12.0)).stage, Stage::Watch);
    let steady = [through_glass(9.0, 5.8), through_glass(11.5, 5.8)];
    let quiet = summary(&with_readings(all().chain(steady)));
    assert!(quiet.standing.reasons.contains(&Reason::RefractometerSteady), "{quiet:?}");
    assert_eq!(quiet.standing.state, State::Finished);
    // Through the glass alone nothing is judged.
    let alone = summary(&with_readings([start, through_glass(9.0, 5.8), through_glass(12.0, 5.8)]));
    assert_eq!(alone.standing.state, State::CannotTell);
}

#[test]
fn what_was_added_later_is_kept_and_waits_longer() {
    let plain = [reading(-0.1, 1.048), reading(9.0, 1.010), reading(12.0, 1.010)];
    assert_eq!(summary(&with_readings(plain.clone())).standing.state, State::Finished);
    let fruit = Reading { as_read: None, added: Some(Added::Fruit), ..reading(6.0, 1.0) };
    let fed = summary(&with_readings(plain.into_iter().chain([fruit.clone()])));
    assert_ne!(fed.standing.state, State::Finished);
    assert!(fed.standing.reasons.contains(&Reason::AddedLater(day(6.0))));
    assert!(fed.may_go_on() && fed.added == Some(day(6.0)));
    // In the kettle, before the yeast, it is part of the wort.
    let early = Reading { at: day(-0.1), ..fruit };
    assert_eq!(summary(&with_readings([early])).added, None);
}

#[test]
fn an_instrument_that_is_gone_is_said_to_be() {
    let lost = Reading { hydrometer: id("lost"), ..reading(3.0, 1.020) };
    let found = summary(&with_readings([reading(2.0, 1.030), lost]));
    let gone: Vec<_> = found.lines.iter().map(|line| line.instrument_gone).collect();
    assert_eq!(gone, [false, true]);
    // What has no gravity of a hydrometer stands on none.
    let look = Reading {
        as_read: None,
        note: "foam".to_owned(),
        hydrometer: id("lost"),
        ..reading(1.0, 1.0)
    };
    assert!(!summary(&with_readings([look])).lines[0].instrument_gone);
}

#[test]
fn beer_that_is_too_warm_is_said_to_be_until_it_is_finished() {
    let warm = Reading { as_read: None, beer: Some(Celsius::literal(27.0)), ..reading(1.0, 1.0) };
    let found = summary(&with_readings([reading(-0.1, 1.048), warm.clone()]));
    let notice = found.warmth.expect("a notice");
    assert!(notice.sure && !notice.by_room);
    // A later look in the range takes it back.
    let cooler = Reading { beer: Some(Celsius::literal(20.0)), at: day(2.0), ..warm.clone() };
    assert_eq!(summary(&with_readings([reading(-0.1, 1.048), warm.clone(), cooler])).warmth, None);
    let chilled = Reading { beer: Some(Celsius::literal(4.0)), at: day(14.0), ..warm };
    let done = [reading(-0.1, 1.048), reading(9.0, 1.010), reading(12.0, 1.010), chilled];
    assert_eq!(summary(&with_readings(done)).warmth, None);
    // By the room noted at pitching, with the beer's own warmth on top.
    let room = |t| {
        let mut journal = with_readings([reading(-0.1, 1.048)]);
        let noted = Reading { as_read: None, room: Some(Celsius::literal(t)), ..reading(2.0, 1.0) };
        put(&mut journal, "room", Entry::Reading(noted));
        put(&mut journal, "p", Entry::Pitch(PitchRecord { ..pitching(0.0) }));
        summary(&journal).warmth
    };
    assert_eq!(room(17.0), None);
    assert!(room(24.0).is_some_and(|notice| notice.by_room));
}

#[test]
fn beer_whose_yeast_is_in_goes_by_its_own_last_temperature() {
    let at = |days, t, vessel| Reading {
        as_read: None,
        beer: Some(Celsius::literal(t)),
        vessel,
        ..reading(days, 1.0)
    };
    let found = |readings: Vec<Reading>| {
        let mut journal = with_readings(readings);
        let wort = Some(Celsius::literal(19.0));
        put(&mut journal, "p", Entry::Pitch(PitchRecord { wort, ..pitching(0.0) }));
        summary(&journal).beer_with_yeast(day(2.0)).expect("it is in").beer.value().value()
    };
    // Hot wort before the yeast and the warm jar beside it are not the beer.
    let others = vec![at(-0.2, 60.0, Vessel::Main), at(1.5, 27.0, Vessel::Satellite)];
    assert_eq!(found(others.clone()), 19.0);
    assert_eq!(found([others, vec![at(1.0, 21.0, Vessel::Main)]].concat()), 21.0);
    assert_eq!(summary(&with_readings([])).beer_with_yeast(day(2.0)), None);
}

#[test]
fn what_is_due_first_stands_first() {
    let mut journal = with_readings([reading(-0.1, 1.048), reading(4.0, 1.020)]);
    let named = |name: &str| Entry::Batch(BatchHeading { name: name.to_owned(), ..heading() });
    // Not pitched since brewing day; bottled, tried and done with; a second one in its first days.
    put(&mut journal, "idle", named("idle"));
    put(&mut journal, "old", named("old"));
    put(&mut journal, "oldp", Entry::Pitch(PitchRecord { batch: id("old"), ..pitching(0.0) }));
    put(
        &mut journal,
        "oldo",
        Entry::Bottling(BottlingRecord { batch: id("old"), ..bottling(1.0) }),
    );
    put(&mut journal, "oldt", Entry::Opening(OpeningRecord { batch: id("old"), ..opening(2.0) }));
    put(&mut journal, "new", named("new"));
    put(&mut journal, "newp", Entry::Pitch(PitchRecord { batch: id("new"), ..pitching(2.0) }));
    let all = fermentside::batch::Summary::all(&journal, day(4.0));
    let order: Vec<_> =
        by_due(&all, day(4.0)).into_iter().map(|(s, _)| s.id.as_str().to_owned()).collect();
    // Due on brewing day, on day 5 (the first look), on day 6 (two days after the last), and never.
    assert_eq!(order, ["idle", "new", "b", "old"]);
}

#[test]
fn the_batch_in_hand_is_the_one_chosen_else_the_latest_not_tried_yet() {
    let mut journal = Journal::default();
    assert_eq!(journal.in_hand(), None);
    for (name, days) in [("new", 20.0), ("mid", 10.0), ("old", 0.0)] {
        let begun = BatchHeading { started: day(days), ..heading() };
        put(&mut journal, name, Entry::Batch(begun));
    }
    assert_eq!(journal.in_hand(), Some(id("new")));
    let mut tried = |name: &str| {
        let record = OpeningRecord { batch: id(name), ..opening(60.0) };
        put(&mut journal, &format!("{name}-t"), Entry::Opening(record));
        journal.in_hand()
    };
    assert_eq!(tried("new"), Some(id("mid")));
    assert_eq!(tried("mid"), Some(id("old")));
    assert_eq!(tried("old"), Some(id("new")));
    let mut choose = |name: &str| {
        let settings = Settings { in_hand: Some(id(name)), ..Settings::default() };
        put(&mut journal, Settings::id().as_str(), Entry::Settings(settings));
        journal.in_hand()
    };
    assert_eq!(choose("mid"), Some(id("mid")));
    // The one chosen may be gone.
    assert_eq!(choose("gone"), Some(id("new")));
}

#[test]
fn the_steps_show_what_was_done() {
    let warm = |days| Reading { beer: Some(Celsius::literal(22.0)), ..reading(days, 1.022) };
    let stuck = [reading(-0.1, 1.048), warm(9.0), warm(12.0)];
    let done = |readings: Vec<Reading>| -> Vec<Remedy> {
        let ladder = summary(&with_readings(readings)).ladder;
        ladder.iter().filter(|rung| rung.done).map(|rung| rung.step).collect()
    };
    let seen = done(stuck.to_vec());
    assert_eq!(
        seen,
        [Remedy::Degas, Remedy::SampleTemperature, Remedy::WarmTo(Celsius::literal(22.0))]
    );
    let satellite = |days| Reading { vessel: Vessel::Satellite, ..reading(days, 1.010) };
    let more = done(stuck.into_iter().chain([satellite(4.0), satellite(5.0)]).collect());
    assert!(more.contains(&Remedy::CompareSatellite));
}

#[test]
fn the_silent_airlock_is_judged_from_the_record() {
    let journal = with_readings([reading(-0.1, 1.048), reading(2.5, 1.020)]);
    let quiet = summary(&journal).quiet(day(2.5), Signs::default(), false).expect("pitched");
    let found = bubbles::judge(&quiet);
    assert_eq!(found.next, bubbles::Next::Leave);
    assert!(found.reasons.contains(&bubbles::Reason::LidLeaks), "{found:?}");
    // The start's own reading is none of the fermenting beer.
    let fresh = summary(&with_readings([reading(-0.1, 1.048)]));
    let quiet = fresh.quiet(day(1.0), Signs::default(), false).expect("pitched");
    assert_eq!((quiet.read, quiet.pitched), (None, day(0.0)));
}
