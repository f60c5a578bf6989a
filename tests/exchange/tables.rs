//! Tables: as the `csv` crate reads and writes them, and readings out and in.

use fermentside::batch::{Added, Id, Reading, Refractometer, Vessel};
use fermentside::exchange::csv::{defused, mark_of, plain, read_lines, write_line};
use fermentside::exchange::table::{BadLine, NoTable, Table, read, write};
use fermentside::quantity::{Celsius, Gravity, Measured, Plato, SpecificGravity, WortFactor, Zone};
use fermentside::science::hydrometer_sample::Condition;
use proptest::prelude::*;

fn id(name: &str) -> Id {
    Id::new(name).expect("an identity")
}

fn cells() -> impl Strategy<Value = Vec<Vec<String>>> {
    let cell = prop::collection::vec(
        prop::sample::select(vec!["a", "\"", ",", ";", "\t", "\n", "\r\n", " ", "é", "=1", "'"]),
        0..6,
    );
    let cell = cell.prop_map(|parts| parts.concat());
    prop::collection::vec(prop::collection::vec(cell, 1..5), 1..6)
}

proptest! {
    #[test]
    fn another_reader_reads_what_is_written_and_the_other_way_round(
        table in cells(), mark in prop::sample::select(vec![',', ';', '\t'])
    ) {
        let mut ours = String::new();
        for line in &table {
            write_line(&mut ours, line, mark);
        }
        let mut reader = csv::ReaderBuilder::new();
        let mut reader = reader.delimiter(mark as u8).has_headers(false).flexible(true)
            .from_reader(ours.as_bytes());
        let theirs: Vec<Vec<String>> = reader.records()
            .map(|line| line.expect("a line").iter().map(str::to_owned).collect()).collect();
        // A line of one empty cell is an empty line.
        let whole = |lines: Vec<Vec<String>>| -> Vec<Vec<String>> {
            lines.into_iter().filter(|l| l.iter().any(|c| !c.trim().is_empty())).collect()
        };
        prop_assert_eq!(whole(theirs), whole(table.clone()));
        let mut writer = csv::WriterBuilder::new();
        let mut writer = writer.delimiter(mark as u8).flexible(true).from_writer(vec![]);
        for line in &table {
            writer.write_record(line).expect("written");
        }
        let text = String::from_utf8(writer.into_inner().expect("a text")).expect("text");
        let read: Vec<_> = read_lines(&text, mark).into_iter().map(|(_, cells)| cells).collect();
        prop_assert_eq!(read, whole(table));
    }

    #[test]
    fn no_text_stops_it(text in any::<String>(), rest in "[\"=,;\n\r0-9a-z.-]{0,60}") {
        let zone = Zone::fixed(60);
        let _ = read(&text, &id("b"), &id("h"), &zone);
        let headed = format!("Date,Gravity (SG),Beer (°C),Note\n{rest}");
        let table = read(&headed, &id("b"), &id("h"), &zone);
        if let Ok(Table { readings, .. }) = table {
            let all: Vec<_> = readings.into_iter().map(|reading| (id("r"), reading)).collect();
            let again = read(&write(&all, false), &id("b"), &id("h"), &zone);
            prop_assert!(all.is_empty() || again.is_ok_and(|again| again.bad.is_empty()));
        }
    }

    #[test]
    fn no_formula_leaves_and_every_note_comes_back(note in "['=+@\t\r-]{0,4}[a-z]{0,3}") {
        let out = defused(&note);
        prop_assert!(!out.starts_with(['=', '+', '-', '@', '\t', '\r']), "{out:?}");
        prop_assert_eq!(plain(&out), note);
    }
}

fn reading(at: &str) -> Reading {
    Reading {
        batch: id("b"),
        at: at.parse().expect("a moment"),
        vessel: Vessel::Main,
        as_read: Some(Gravity::Specific(SpecificGravity::literal(1.048))),
        typed: "1.048".to_owned(),
        sample: Some(Celsius::literal(23.5)),
        condition: Condition::Still,
        hydrometer: id("h"),
        refractometer: None,
        added: None,
        beer: None,
        room: None,
        note: String::new(),
        doubtful: false,
    }
}

#[test]
fn readings_go_out_and_come_in_the_same() {
    let mut one = reading("2026-03-09T18:00-03:30");
    one.note = "=HYPERLINK(\"x\"), two\nlines; 'and' \"quotes\"".to_owned();
    let mut two = reading("2026-03-10T18:00+01:00");
    (two.vessel, two.condition) = (Vessel::Satellite, Condition::Foam);
    two.as_read = Some(Gravity::Plato(Plato::literal(-1.25)));
    two.typed = "-1.25".to_owned();
    (two.beer, two.room) = (Some(Celsius::literal(-0.5)), Some(Celsius::literal(19.125)));
    two.added = Some(Added::Fruit);
    let factor = WortFactor::new(1.04).expect("a factor");
    two.refractometer = Some(Refractometer { brix: Plato::literal(6.4), factor });
    let all = vec![(id("1"), one.clone()), (id("2"), two.clone())];
    for comma in [false, true] {
        let text = write(&all, comma);
        assert!(!text.contains("\n=") && !text.contains(",=") && !text.contains("\"="), "{text}");
        let back = read(&text, &id("b"), &id("h"), &Zone::fixed(60)).expect("a table");
        assert!(back.bad.is_empty() && back.unknown.is_empty(), "{back:?}");
        let typed = |text: &str| if comma { text.replace('.', ",") } else { text.to_owned() };
        let [mut one, mut two] = [one.clone(), two.clone()];
        (one.typed, two.typed) = (typed("1.048"), typed("-1.25"));
        two.refractometer.as_mut().expect("a glass").factor =
            back.readings[1].refractometer.expect("a glass").factor;
        assert_eq!(back.readings, [one, two], "{text}");
    }
}

#[test]
fn a_paper_log_is_read_and_each_bad_line_told_by_its_number() {
    let text = "\u{FEFF}Date;Gravity;Sample (°F);Tasted by;Notes\r\n\
        2026-03-07;1,048;73,4;me;\r\n\
        2026-03-09 18:30;1012;;;\"two\r\nlines\"\r\n\
        07.03.2026;1,010;;;\r\n\
        \r\n\
        2026-03-11;1,5;;;\r\n\
        2026-03-12;;;;\r\n\
        2026-02-30;1,010;;;\r\n\
        ;1,010;;;\r\n\
        2026-03-13;٠٫٥;;;\r\n\
        2026-03-14;;;;only a note";
    let table = read(text, &id("b"), &id("h"), &Zone::fixed(60)).expect("a table");
    assert_eq!(table.unknown, ["Tasted by"]);
    let at: Vec<_> = table.readings.iter().map(|one| one.at.to_string()).collect();
    let expected = ["2026-03-07T12:00+01:00", "2026-03-09T18:30+01:00", "2026-03-14T12:00+01:00"];
    assert_eq!(at, expected);
    assert!((table.readings[0].sample.expect("warmth").value() - 23.0).abs() < 1e-9);
    assert_eq!(table.readings[1].note, "two\r\nlines");
    let numbers: Vec<_> = table.bad.iter().map(|(at, _)| *at).collect();
    assert_eq!(numbers, [5, 7, 8, 9, 10, 11], "{:?}", table.bad);
    assert_eq!(table.bad[0].1, BadLine::Date);
    assert!(matches!(&table.bad[1].1, BadLine::Cell(head, _) if head == "Gravity"));
    assert_eq!(table.bad[2].1, BadLine::Nothing);
    assert_eq!(table.bad[4].1, BadLine::Date);
}

#[test]
fn what_is_no_table_says_why() {
    let zone = Zone::fixed(0);
    let told = |text: &str| read(text, &id("b"), &id("h"), &zone).expect_err("none");
    assert_eq!(told(""), NoTable::Empty);
    assert_eq!(told("Date,Gravity (SG)\n"), NoTable::Empty);
    assert_eq!(told("Gravity (SG)\n1.050"), NoTable::NoDate);
    assert_eq!(told("Date,Note\n2026-03-07,x"), NoTable::NothingRead);
    assert_eq!(told("Date,Beer\n2026-03-07,20"), NoTable::NoUnit("Beer".to_owned()));
    assert_eq!(told("Date,When,Beer (C)\n"), NoTable::Twice("When".to_owned()));
    let many = format!("Date,Beer (C)\n{}", "2026-03-07,20\n".repeat(2001));
    assert_eq!(told(&many), NoTable::TooLong);
    assert_eq!([mark_of("a\tb,c\td"), mark_of("\"a,b\";c"), mark_of("a")], ['\t', ';', ',']);
}
