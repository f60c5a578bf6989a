//! The readings: their form, the log, the course and what lies ahead.

use crate::paper::{Paper, golden};
use crate::shelf::{ago, id, in_zone, reading, with};
use fermentside::app::drawing::{Drawing, Sketch};
use fermentside::app::{Act, Effect, Event, Part, WatchAct, What};
use fermentside::batch::{Reading, Refractometer, Vessel};
use fermentside::quantity::{Celsius, Gravity, Measured, Moment, Plato, WortFactor, Zone};
use std::time::Instant;

fn logged(phone: &Paper, name: &str) -> Reading {
    let readings = phone.model.journal.readings(&id("b"));
    let found = readings.iter().find(|(other, _)| *other == id(name));
    found.expect("it is in the log").1.clone()
}

/// The corrected gravity and its ± as the form's answer shows them.
fn answered(phone: &Paper) -> (String, String) {
    let answer = phone.parts().into_iter().find_map(|part| match part.what {
        What::Answer(answer) => Some((answer.main, answer.beside)),
        _ => None,
    });
    answer.expect("an answer")
}

/// The same in the topmost row of the log, which is opened.
fn latest(phone: &mut Paper) -> (String, String) {
    let row = phone.parts().into_iter().find_map(|part| match part.what {
        What::Fold(fold) if fold.kind == "log-row" => {
            Some((part.name, fold.beside[1].text.clone()))
        }
        _ => None,
    });
    let (name, gravity) = row.expect("a row");
    phone.happens(Event::Folded { name, open: true });
    let doubt = phone.parts().into_iter().find_map(|part| match part.what {
        What::Line("log-read", runs) => Some(runs[1].text.clone()),
        _ => None,
    });
    (gravity, doubt.expect("an open row"))
}

/// Opens the form of the reading in the row that begins so.
fn change(phone: &mut Paper, day: &str) {
    phone.tap(day);
    phone.tap("Change the reading");
}

fn count(phone: &Paper, is_it: impl Fn(&Part) -> bool) -> usize {
    phone.parts().iter().filter(|part| is_it(part)).count()
}

#[test]
fn a_watched_batch_reads_well() {
    let mut phone = with(
        4.0,
        [
            reading(4.05, 1.048),
            Reading { beer: Some(Celsius::literal(19.5)), ..reading(2.0, 1.025) },
            Reading { note: "foamy".to_owned(), ..reading(1.0, 1.016) },
        ],
        vec![],
    );
    phone.tap("As a table");
    phone.tap("Thu 5 Mar");
    golden("watch", &phone.text());
    phone.tap("Add a reading");
    phone.tap("Temperatures, time and note");
    golden("watch-reading", &phone.text());
}

#[test]
fn a_changed_note_leaves_everything_else_as_it_was_given() {
    let given = Reading {
        at: "2026-03-05T08:00-05:00".parse::<Moment>().expect("a moment"),
        as_read: Some(Gravity::Plato(Plato::literal(12.45))),
        typed: "12,45 P".to_owned(),
        sample: Some(Celsius::literal(23.45)),
        beer: Some(Celsius::literal(18.04)),
        room: Some(Celsius::literal(17.96)),
        hydrometer: id("gone"),
        refractometer: Some(Refractometer {
            brix: Plato::literal(8.04),
            factor: WortFactor::literal(1.037),
        }),
        ..reading(2.0, 1.050)
    };
    let mut phone = with(4.0, [given.clone()], vec![]);
    phone.happens(Event::Travelled(Zone::fixed(540)));
    change(&mut phone, "Thu 5 Mar");
    phone.tap("Temperatures, time and note");
    phone.in_unit("Hydrometer reads", "SG");
    phone.in_unit("Sample temperature", "°F");
    phone.type_into("Note", "clear by now");
    phone.tap("Save the change");
    phone.sees("Reading changed");
    let noted = Reading { note: "clear by now".to_owned(), ..given.clone() };
    assert_eq!(logged(&phone, "r0"), noted);
    phone.reload();
    assert_eq!(logged(&phone, "r0"), noted);

    // What was typed anew is read anew, and the rest stays.
    change(&mut phone, "Thu 5 Mar");
    phone.in_unit("Hydrometer reads", "SG");
    phone.type_into("Hydrometer reads", "1.049");
    phone.tap("Save the change");
    let read = logged(&phone, "r0");
    assert_eq!((read.typed.as_str(), read.sample), ("1.049", given.sample));
    assert_eq!((read.at.to_string(), read.hydrometer), (given.at.to_string(), given.hydrometer));
}

#[test]
fn what_is_shown_while_typing_is_what_is_logged() {
    let check = |mut phone: Paper, sample: &str, read: &str| {
        phone.tap("Add a reading");
        phone.type_into("Sample temperature", sample);
        phone.type_into("Hydrometer reads", read);
        let shown = answered(&phone);
        phone.tap("Save the reading");
        assert_eq!(shown, latest(&mut phone), "{read} at {sample:?}");
        shown
    };
    let brewed = || with(5.0, [reading(5.05, 1.048), reading(2.0, 1.020)], vec![]);
    assert_ne!(check(brewed(), "27", "1.012"), check(brewed(), "20", "1.012"));
    // Soon after the yeast the first reading still is the start itself: it is made true as wort.
    check(with(0.2, [Reading { as_read: None, ..reading(0.25, 1.0) }], vec![]), "31", "1.048");
}

#[test]
fn there_is_no_figure_while_the_temperature_of_the_sample_is_not_known() {
    let mut phone = with(5.0, [reading(5.05, 1.048), reading(0.5, 1.020)], vec![]);
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", "1.012");
    assert_eq!(answered(&phone).0, "1.012");
    for unknown in ["", "warm", "99"] {
        phone.type_into("Sample temperature", unknown);
        assert_eq!(answered(&phone), ("–".to_owned(), String::new()), "{unknown:?}");
    }
    // One that is not known may be left out: the reading is then less sure.
    phone.type_into("Sample temperature", "");
    phone.sees("Give the sample's temperature too");
    phone.tap("Save the reading");
    // By more than its ± shows, which has the places of the gravity.
    let doubt = |phone: &Paper| {
        let s = phone.model.summary(&id("b")).expect("the batch");
        let last = s.lines.iter().max_by_key(|line| line.reading.at).expect("a reading");
        last.gravity().expect("a gravity").sigma()
    };
    let blind = doubt(&phone);
    latest(&mut phone);
    phone.sees("sample temperature not noted");
    let known = with(5.0, [reading(5.05, 1.048), reading(0.5, 1.012)], vec![]);
    assert!(blind > doubt(&known));
}

#[test]
fn a_temperature_is_carried_over_only_where_the_next_sample_is_likely_to_have_it() {
    let offered = |last: Reading| {
        let mut phone = with(5.0, [reading(5.05, 1.048), last], vec![]);
        phone.tap("Add a reading");
        phone.value_in("Sample temperature")
    };
    let of =
        |days, sample| Reading { sample: Some(Celsius::literal(sample)), ..reading(days, 1.020) };
    assert_eq!(offered(of(0.9, 21.0)), "21.0");
    assert_eq!(offered(of(1.1, 21.0)), "", "more than a day old");
    assert_eq!(offered(of(0.2, 38.0)), "", "hot");
    // Wort that was read before the yeast went in.
    let mut phone = with(0.1, [of(0.2, 24.0)], vec![]);
    phone.tap("Add a reading");
    assert_eq!(phone.value_in("Sample temperature"), "");
}

#[test]
fn the_form_stands_open_where_nothing_was_read_yet() {
    let mut phone = with(1.0, [], vec![]);
    phone.sees("Set the stem, or type what it reads.");
    phone.type_into("Hydrometer reads", "1.047");
    // Half typed it outlives the screen, a closed tab, and "Not now".
    phone.tap("Not now");
    phone.sees_no("Save the reading");
    phone.reload();
    assert_eq!(phone.value_in("Hydrometer reads"), "1.047");
    phone.tap("Save the reading");
    phone.sees("Reading saved");
    phone.sees_no("Save the reading");
    // The attention is at how the batch stands now.
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("watch/finish".to_owned())));
    phone.tap("Sat 7 Mar");
    phone.sees("read 1.047");
    phone.tap("Add a reading");
    assert_eq!(phone.value_in("Hydrometer reads"), "");
    assert_eq!(phone.value_in("Sample temperature"), "");
}

#[test]
fn leaving_a_reading_as_it_was_forgets_what_was_typed() {
    let mut phone = with(4.0, [reading(2.0, 1.020)], vec![]);
    change(&mut phone, "Thu 5 Mar");
    let first = Effect::Attend("reading/r0/gravity".to_owned());
    assert_eq!(phone.asked.last(), Some(&first));
    phone.type_into("Hydrometer reads", "1.002");
    phone.tap("Leave it as it was");
    phone.sees_no("Save the change");
    phone.reload();
    change(&mut phone, "Thu 5 Mar");
    assert_eq!(phone.value_in("Hydrometer reads"), "1.020");
}

#[test]
fn a_refused_reading_says_where_and_keeps_what_was_typed() {
    let mut phone = with(4.0, [reading(2.0, 1.020)], vec![]);
    phone.tap("Add a reading");
    phone.tap("Temperatures, time and note");
    phone.type_into("Beer in the fermenter", "cold");
    phone.tap("Temperatures, time and note");
    phone.tap("Save the reading");
    phone.sees("Some fields need another look.");
    // The fold that it stands in is open again.
    assert_eq!(phone.value_in("Beer in the fermenter"), "cold");
    let attended = Effect::Attend("reading/new/b/beer".to_owned());
    assert_eq!(phone.asked.last(), Some(&attended));
    assert_eq!(phone.model.journal.readings(&id("b")).len(), 1);
    phone.type_into("Beer in the fermenter", "18");
    phone.tap("Save the reading");
    phone.sees("Sat 7 Mar | 18.0 °C");
    phone.sees_no("Some fields need another look.");
}

#[test]
fn a_time_beyond_the_calendar_is_refused_where_it_can_be_seen() {
    let mut phone = with(4.0, [reading(2.0, 1.020)], vec![]);
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", "1.012");
    phone.tap("Temperatures, time and note");
    phone.type_into("Read", "10000-01-01T00:00");
    phone.tap("Temperatures, time and note");
    phone.tap("Save the reading");
    phone.sees("Some fields need another look.");
    assert_eq!(phone.value_in("Read"), "10000-01-01T00:00");
    assert_eq!(phone.model.journal.readings(&id("b")).len(), 1);
    phone.dated("Read", ago(0.5));
    phone.tap("Save the reading");
    phone.sees("Reading saved");
}

#[test]
fn a_quiet_beer_that_reads_as_before_is_asked_nothing_more() {
    let mut phone =
        with(30.0, [reading(30.05, 1.048), reading(4.0, 1.012), reading(1.0, 1.012)], vec![]);
    phone.tap("Add a reading");
    phone.sees_no("The sample:");
    phone.type_into("Hydrometer reads", "1.012");
    assert_eq!(phone.value_in("Sample temperature"), "20.0");
    phone.sees_no("The sample:");
    // One that reads otherwise is asked how its sample stood, and what was said stays in sight.
    phone.type_into("Hydrometer reads", "1.009");
    phone.choose("The sample", "Gas left in");
    phone.type_into("Hydrometer reads", "1.012");
    phone.sees("(x) Gas left in");
    phone.tap("Save the reading");
    phone.tap("Sat 7 Mar");
    phone.sees("gas left in");
}

#[test]
fn a_stuck_beer_has_its_steps_and_a_satellite_that_ended_there_settles_it() {
    let mut phone =
        with(30.0, [reading(30.05, 1.048), reading(4.0, 1.022), reading(1.0, 1.022)], vec![]);
    phone.sees("(Stop) Looks stuck, far above its end.");
    phone.sees("- Done. Pour the sample to and fro");
    phone.sees("a jar of this beer with fresh yeast, kept warm and shaken");
    // Both ends stand in the jar: by one alone it would seem to be where it is expected.
    phone.go("#/now");
    phone.sees("if it rests here: 1.0");
    phone.sees("if it goes on: 1.0");
    phone.go("#/batch/b/watch");
    for days in [25.0, 24.0] {
        phone.tap("Add a reading");
        phone.type_into("Hydrometer reads", "1.022");
        phone.tap("Temperatures, time and note");
        phone.tap("The satellite");
        phone.dated("Read", ago(days));
        phone.tap("Save the reading");
        phone.tap("Read the satellite");
        phone.tap("Not now");
    }
    phone.sees("(Go) Finished, by these readings.");
    phone.sees("Within a point of the satellite, which ended at 1.022.");
    phone.sees_no("Step by step");
    let satellites = phone.model.journal.readings(&id("b")).iter();
    assert_eq!(satellites.filter(|(_, one)| one.vessel == Vessel::Satellite).count(), 2);
}

#[test]
fn no_bubbles_is_answered_in_three_touches() {
    let mut phone = with(2.5, [], vec![]);
    phone.tap("No bubbles?");
    phone.sees("Only a gravity can tell.");
    phone.tap("Foam, or a dried ring");
    phone.sees("[x] Foam, or a dried ring");
    phone.sees("It ferments. The beer is fine.");
    phone.tap("The lid bulges");
    phone.sees("The lid is under pressure: see to it first.");
    phone.tap("The lid bulges");
    phone.sees("It ferments. The beer is fine.");
    // Past the first week nobody asks, unless it has not begun.
    let fallen = with(8.0, [reading(8.05, 1.048), reading(2.0, 1.020)], vec![]);
    fallen.sees_no("No bubbles?");
}

#[test]
fn the_course_is_walked_by_buttons_keys_and_pointing() {
    let readings = [reading(5.05, 1.048), reading(3.0, 1.020), reading(1.0, 1.010)];
    let mut phone = with(5.0, readings, vec![]);
    phone.sees("Touch the picture, or step through the readings.");
    let arrows = phone.parts().into_iter().find_map(|part| match part.what {
        What::Group(group) => group.arrows,
        _ => None,
    });
    let (left, right) = arrows.expect("arrow keys");
    let said = |phone: &Paper| match phone.parts().into_iter().find(|part| part.name == "walk/said")
    {
        Some(Part { what: What::Text(_, text), .. }) => text,
        _ => panic!("nothing is said"),
    };
    for gravity in ["1.010", "1.020", "1.048", "1.048"] {
        phone.happens(Event::Did(left.clone()));
        assert!(said(&phone).contains(gravity), "{}", said(&phone));
    }
    phone.happens(Event::Did(right));
    assert!(said(&phone).contains("1.020"), "{}", said(&phone));
    phone.tap("Later reading");
    assert!(said(&phone).contains("1.010"), "{}", said(&phone));
    phone.happens(Event::Did(Act::Watch(WatchAct::WalkTo(0))));
    assert!(said(&phone).contains("1.048"), "{}", said(&phone));
    // There is no such reading.
    phone.happens(Event::Did(Act::Watch(WatchAct::WalkTo(7))));
    assert!(said(&phone).contains("1.048"), "{}", said(&phone));
}

#[test]
fn what_lies_ahead_is_handed_out_and_told_by_the_clock_of_then() {
    // From the next morning on the phone's clock is two hours ahead of UTC, not one.
    let change: Moment = "2026-03-08T07:00+00:00".parse().expect("a moment");
    let zone = Zone::new(60, [(change.minutes_since_epoch(), 120)]);
    let readings = [reading(4.05, 1.048), reading(2.0, 1.025), reading(1.0, 1.016)];
    let phone = in_zone(4.0, readings, vec![], zone);
    let file = phone.parts().into_iter().find_map(|part| match part.what {
        What::HandOut(file) => Some(file),
        _ => None,
    });
    let file = file.expect("a calendar");
    assert_eq!((file.file.as_str(), file.media), ("cellar-bitter.ics", "text/calendar"));
    assert!(file.text.contains("SUMMARY:Cellar bitter: read the gravity"), "{}", file.text);
    assert!(file.text.contains("UID:b-read@fermentside"), "{}", file.text);
    assert!(file.text.contains("DTSTART:20260308T070000Z"), "{}", file.text);
    phone.sees("Read again on the morning of Sun 8 Mar or later.");
}

#[test]
fn a_reading_is_deleted_at_once_and_taken_back() {
    let mut phone = with(4.0, [reading(2.0, 1.020), reading(1.0, 1.012)], vec![]);
    phone.tap("Fri 6 Mar");
    phone.tap("Delete the reading of Fri");
    phone.sees("Reading deleted");
    phone.sees_no("read 1.012");
    phone.tap("Undo");
    phone.sees("read 1.012");
    phone.reload();
    phone.tap("Fri 6 Mar");
    phone.sees("read 1.012");
}

#[test]
fn now_opens_the_form_itself() {
    let mut phone = with(4.0, [reading(4.05, 1.048), reading(1.0, 1.020)], vec![]);
    phone.go("#/now");
    phone.tap("Add a reading");
    assert_eq!(phone.place(), "#/batch/b/watch");
    phone.sees("Save the reading");
    // One plate a screen: while a reading is noted it is the reading's.
    phone.sees_no("(Wait)");
    let attended = Effect::Attend("reading/new/b/gravity".to_owned());
    assert_eq!(phone.asked.last(), Some(&attended));
    phone.type_into("Hydrometer reads", "1.012");
    phone.tap("Save the reading");
    phone.sees("Reading saved");
}

#[test]
fn a_slip_is_corrected_in_four_touches() {
    let mut phone = with(4.0, [reading(2.0, 1.020), reading(1.0, 1.021)], vec![]);
    let before = phone.taps;
    phone.tap("Fri 6 Mar");
    phone.tap("Change the reading of Fri");
    phone.type_into("Hydrometer reads", "1.012");
    phone.tap("Save the change");
    assert_eq!(phone.taps - before, 4);
    assert_eq!(logged(&phone, "r1").typed, "1.012");
}

#[test]
fn a_day_of_another_year_says_its_year() {
    let phone = with(80.0, [reading(80.05, 1.048), reading(1.0, 1.012)], vec![]);
    phone.sees("Wed 17 Dec 2025 | 20.0 °C 1.048");
    phone.sees("Fri 6 Mar | 20.0 °C 1.012");
}

#[test]
fn sixty_readings_stay_cheap_and_a_working_is_made_only_when_it_is_open() {
    let fall = (0..60).map(|day| reading(60.0 - f64::from(day), 1.048 - 0.0005 * f64::from(day)));
    let mut phone = with(60.0, fall, vec![]);
    let folds = |part: &Part| part.name.starts_with("log/") && matches!(part.what, What::Fold(_));
    let workings = |part: &Part| matches!(part.what, What::Worked(_));
    // The last five, and the others in a fold.
    assert_eq!((count(&phone, folds), count(&phone, workings)), (6, 0));
    phone.tap("55 earlier");
    assert_eq!((count(&phone, folds), count(&phone, workings)), (61, 0));
    let closed = phone.text().len();
    for name in ["log/r7", "log/r7/worked"] {
        phone.happens(Event::Folded { name: name.to_owned(), open: true });
    }
    assert_eq!(count(&phone, workings), 1);
    assert!(phone.text().len() > closed);
    let begun = Instant::now();
    for _ in 0..20 {
        phone.screen();
    }
    // Unoptimised, and with room for a busy machine.
    assert!(begun.elapsed().as_millis() < 20 * 200, "{:?}", begun.elapsed());
}

/// Both ends are drawn where both are said, in the places that are said.
#[test]
fn a_rest_has_two_ends_in_the_drawing_as_in_the_words() {
    let rests = [(13.05, 1.050), (10.0, 1.030), (7.0, 1.020), (4.0, 1.020), (1.0, 1.020)];
    let phone = with(13.0, rests.map(|(days, sg)| reading(days, sg)), vec![]);
    let parts = phone.parts();
    let drawn = parts.iter().find_map(|part| match &part.what {
        What::Drawing(Drawing { sketch: Sketch::Course(sketch), .. }) => Some(sketch),
        _ => None,
    });
    let sketch = drawn.expect("the course");
    assert_eq!(sketch.ends, ["if it rests here", "if it goes on"]);
    let standing = &phone.model.summary(&id("b")).expect("the batch").standing;
    let outlook = standing.outlook.as_ref().expect("an outlook");
    let said = [outlook.end.end, outlook.wakes.expect("it may go on").end];
    let w = phone.model.writer();
    for span in said {
        phone.sees(&format!("between {} and {}", w.gravity(span.from), w.gravity(span.to)));
    }
    // The paper's long lines say where a gravity is drawn.
    let marks = &sketch.course.gravity;
    let (a, b) = (&marks[0], &marks[marks.len() - 1]);
    let value = |text: &str| text.parse::<f64>().expect("a gravity");
    let a_unit = (b.at - a.at) / (value(&b.text) - value(&a.text));
    let place = |sg: f64| a.at + (sg - value(&a.text)) * a_unit;
    for (zone, span) in sketch.course.zones.iter().zip(said) {
        let off = |edge: f64, sg: f64| (edge - place(sg)).abs();
        assert!(off(zone.edges.0, span.to.value()) < 0.5, "{zone:?} {span:?}");
        assert!(off(zone.edges.1, span.from.value()) < 0.5, "{zone:?} {span:?}");
    }
    assert_eq!(sketch.course.zones.len(), 2);
    assert!(sketch.course.zones.iter().filter(|zone| zone.less).count() == 1);
}

/// Drawings and files do not hang on what is half typed.
#[test]
fn a_key_makes_no_drawing_and_no_file_anew() {
    let fall = (0..5).map(|day| reading(60.0 - f64::from(day), 1.048 - 0.0005 * f64::from(day)));
    let mut phone = with(60.0, fall, vec![]);
    phone.tap("Add a reading");
    phone.screen();
    let made = phone.model.made_still();
    for text in ["1", "1.0", "1.01"] {
        phone.type_into("Hydrometer reads", text);
        phone.screen();
    }
    assert_eq!(phone.model.made_still(), made);
    // But whatever else happens may be shown in them.
    phone.hours(1.0);
    phone.screen();
    assert!(phone.model.made_still() > made);
}

#[test]
fn the_course_of_one_reading_is_said_to_be_of_one() {
    let mut phone = with(1.0, [reading(1.05, 1.048)], vec![]);
    phone.go("#/batch/b/watch");
    phone.sees("The course: 1 reading. From 1.048 to 1.048.");
}

/// The form of a reading once stood above a forecast, a ladder and files: three screens.
#[test]
fn while_a_reading_is_noted_the_course_and_the_last_two_stand_below_it() {
    let fallen = [13.0, 10.0, 7.0, 3.0, 0.1].map(|days| reading(days, 1.020 + 0.002 * days));
    let mut phone = with(13.5, fallen, vec![]);
    let rows = |phone: &Paper| count(phone, |part| part.name.ends_with("/row"));
    phone.sees("To or from a spreadsheet");
    assert_eq!(rows(&phone), 5);
    phone.tap("Add a reading");
    assert_eq!(rows(&phone), 2);
    phone.sees("3 earlier");
    phone.sees_no("To or from a spreadsheet");
    phone.sees_no("As a table");
    phone.tap("Not now");
    phone.sees("To or from a spreadsheet");
    assert_eq!(rows(&phone), 5);
}

/// A doubtful reading took a second line in the ledger: what is said of it stands in place of its temperature.
#[test]
fn a_row_of_the_ledger_says_one_thing_beside_its_gravity() {
    let odd = Reading { doubtful: true, ..reading(3.0, 1.030) };
    let jar = Reading { vessel: Vessel::Satellite, ..reading(2.0, 1.012) };
    let phone = with(5.0, [reading(4.0, 1.040), odd, jar], vec![]);
    let beside = |fold: &fermentside::app::Fold| {
        fold.beside.iter().map(|run| run.text.replace('\u{A0}', " ")).collect::<Vec<_>>()
    };
    let rows: Vec<_> = phone
        .parts()
        .iter()
        .filter_map(|part| match &part.what {
            What::Fold(fold) if fold.kind == "log-row" => Some(beside(fold)),
            _ => None,
        })
        .collect();
    let row = |said: &str, gravity: &str| vec![said.to_owned(), gravity.to_owned()];
    assert_eq!(
        rows,
        [row("satellite", "1.012"), row("doubtful", "1.030"), row("20.0 °C", "1.040")]
    );
}
