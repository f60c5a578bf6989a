//! Reminders as a calendar, read back by a reader that is not ours (the crate `icalendar`).

use fermentside::advice::family::Family;
use fermentside::advice::practice::waking;
use fermentside::batch::{
    BatchHeading, Change, Entry, HydrometerItem, Id, Journal, PitchRecord, Reading, Summary, Vessel,
};
use fermentside::exchange::calendar::{Event, calendar};
use fermentside::exchange::reminders::{Reminder, What, reminders, uid};
use fermentside::quantity::{Celsius, Gravity, Hours, Litres, Measured, Moment, SpecificGravity};
use fermentside::science::hydrometer_sample::Condition;
use icalendar::{Calendar, CalendarComponent, Component};

fn at(text: &str) -> Moment {
    text.parse().expect("a moment")
}

fn event(moment: &str, summary: &str) -> Event {
    Event {
        uid: uid("7Q-a1", What::Read),
        at: at(moment),
        minutes: 15,
        summary: summary.to_owned(),
        description: "Knock the gas out; note the sample's temperature.".to_owned(),
    }
}

fn read(text: &str) -> Vec<icalendar::Event> {
    let calendar: Calendar = text.parse().expect("a calendar");
    let events = calendar.components.iter().filter_map(CalendarComponent::as_event);
    events.cloned().collect()
}

#[test]
fn a_reader_that_is_not_ours_reads_it_back() {
    let now = at("2026-03-20T09:00+01:00");
    let odd = "Brown ale; 20 L, \\dark\\ “dry” 🍺\nread it again – and a line that is far longer than any line may be";
    let text = calendar(&[event("2026-03-21T18:30+01:00", odd)], now);
    let events = read(&text);
    let [event] = &events[..] else { panic!("{text}") };
    assert_eq!(event.get_uid(), Some("7Q-a1-read@fermentside"));
    assert_eq!(event.property_value("DTSTART"), Some("20260321T173000Z"));
    assert_eq!(event.property_value("DTEND"), Some("20260321T174500Z"));
    assert_eq!(event.property_value("DTSTAMP"), Some("20260320T080000Z"));
    let summary = event.get_summary().expect("a summary");
    let plain =
        summary.replace("\\n", "\n").replace("\\,", ",").replace("\\;", ";").replace("\\\\", "\\");
    assert_eq!(plain, odd);
    assert_eq!(text.matches("BEGIN:VALARM").count(), 1);
}

#[test]
fn lines_end_as_they_must_and_none_is_too_long() {
    let long = "ß🍺é ".repeat(60);
    let text = calendar(&[event("2026-03-21T18:30+01:00", &long)], at("2026-03-20T09:00+01:00"));
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    let mut lines: Vec<_> = text.split("\r\n").collect();
    assert_eq!(lines.pop(), Some(""));
    for line in lines {
        assert!(line.len() <= 75 && !line.contains(['\r', '\n']), "{line:?}");
    }
    assert!(text.replace("\r\n ", "").contains(&long), "folding takes nothing away");
}

#[test]
fn an_hour_is_the_same_hour_across_a_clock_change() {
    // Both on one European wall clock, the night of 29 March 2026 between them.
    let day = |text| calendar(&[event(text, "x")], at("2026-03-20T09:00+01:00"));
    assert!(day("2026-03-28T18:00+01:00").contains("DTSTART:20260328T170000Z"));
    assert!(day("2026-03-29T18:00+02:00").contains("DTSTART:20260329T160000Z"));
}

#[test]
fn a_second_text_takes_the_place_of_the_first() {
    let one = calendar(&[event("2026-03-21T18:30+01:00", "x")], at("2026-03-20T09:00+01:00"));
    let two = calendar(&[event("2026-03-23T18:30+01:00", "x")], at("2026-03-21T19:00+01:00"));
    let figure = |text: &str, name: &str| {
        let events = read(text);
        events[0].property_value(name).expect("there").to_owned()
    };
    assert_eq!(figure(&one, "UID"), figure(&two, "UID"));
    let revision = |text| figure(text, "SEQUENCE").parse::<i64>().expect("a number");
    assert!(revision(&two) > revision(&one) && revision(&two) < i64::from(i32::MAX));
    assert_eq!(calendar(&[], at("2026-03-20T09:00+01:00")).matches("VEVENT").count(), 0);
}

fn batch(readings: &[(f64, f64, Vessel)]) -> Journal {
    let id = |text: &str| Id::new(text).expect("an identity");
    let day = |days: f64| at("2026-04-01T18:00+01:00").after(Hours::nearest(days * 24.0));
    let mut journal = Journal::default();
    let mut put = |name: &str, entry| journal.apply(Change::put(id(name), entry)).map(|_| ());
    let heading = BatchHeading {
        name: "Brown ale".to_owned(),
        started: day(-0.1),
        volume: Litres::literal(20.0),
        family: Family::CleanAle,
        packet: None,
        expected_start: Some(SpecificGravity::literal(1.048)),
        expected_end: None,
        hydrometer: HydrometerItem::usual_id(),
        target: None,
        own_ends: vec![],
    };
    put("b", Entry::Batch(heading)).expect("taken");
    put("p", Entry::Pitch(PitchRecord::new(id("b"), day(0.0)))).expect("taken");
    for (at, (days, sg, vessel)) in readings.iter().enumerate() {
        let reading = Reading {
            batch: id("b"),
            at: day(*days),
            vessel: *vessel,
            as_read: Some(Gravity::Specific(SpecificGravity::nearest(*sg))),
            typed: String::new(),
            sample: Some(Celsius::literal(20.0)),
            condition: Condition::Still,
            hydrometer: HydrometerItem::usual_id(),
            refractometer: None,
            added: None,
            beer: None,
            room: None,
            note: String::new(),
            doubtful: false,
        };
        put(&format!("r{at}"), Entry::Reading(reading)).expect("taken");
    }
    journal
}

#[test]
fn what_lies_ahead_of_a_batch_is_remembered_and_what_is_due_is_not() {
    let id = Id::new("b").expect("an identity");
    let day = |days: f64| at("2026-04-01T18:00+01:00").after(Hours::nearest(days * 24.0));
    let of = |readings: &[(f64, f64, Vessel)], now: f64| {
        let journal = batch(readings);
        reminders(&Summary::of(&journal, &id, day(now)).expect("the batch"), day(now))
    };
    let first = of(&[], 0.1);
    assert_eq!(first, [Reminder { what: What::Read, at: day(3.0) }]);
    // Nothing is remembered of what is due already.
    assert_eq!(of(&[], 4.0), []);
    let falling = [(4.0, 1.020, Vessel::Main), (7.0, 1.014, Vessel::Main)];
    let read = of(&falling, 7.0);
    assert_eq!(read[0], Reminder { what: What::Read, at: day(8.75) });
    // While it falls, the forecast tells by when it may be ready.
    assert!(matches!(read[1..], [Reminder { what: What::Ready, .. }]), "{read:?}");
    let stuck =
        [(9.0, 1.019, Vessel::Main), (12.0, 1.019, Vessel::Main), (11.5, 1.018, Vessel::Satellite)];
    let both = of(&stuck, 12.0);
    assert!(
        both.contains(&Reminder { what: What::ReadSatellite, at: waking(day(12.5)) }),
        "{both:?}"
    );
    let three =
        [(2.0, 1.030, Vessel::Main), (4.0, 1.018, Vessel::Main), (6.0, 1.013, Vessel::Main)];
    let ready = |of: &[Reminder]| of.iter().find(|one| one.what == What::Ready).map(|one| one.at);
    let by = ready(&of(&three, 6.0)).expect("a forecast");
    assert!(by > day(6.0) && by < day(20.0), "{by:?}");
    let done = [(9.0, 1.011, Vessel::Main), (12.0, 1.011, Vessel::Main)];
    assert_eq!(of(&done, 12.0), [Reminder { what: What::Bottle, at: day(13.0) }]);
}
