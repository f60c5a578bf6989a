//! Room: what is told before it is short, and old batches that go into a file to make some.

use crate::paper::{Paper, Shelf, brewing_day};
use crate::shelf::{ago, batch, bottling, id, reading};
use fermentside::app::{Event, Keeper, What};
use fermentside::batch::{Change, Edit, Entry, Fizz, Id, OpeningRecord};
use fermentside::quantity::Zone;
use fermentside::store::{Store, Token};
use std::time::Instant;

/// A batch with its pitching, its readings and its bottling, begun so many days ago; its records named by `n`.
fn whole(n: usize, days: f64, readings: usize) -> Change {
    let of = id(&format!("b{n}"));
    let mut all: Vec<(Id, Entry)> = batch(days);
    all.push(bottling(days - 20.0));
    for at in 0..readings {
        let share = at as f64 / readings.max(1) as f64;
        let sg = 1.012 + 0.036 * (-4.0 * share).exp();
        all.push((id(&format!("r{at}")), Entry::Reading(reading(days - 18.0 * share - 0.5, sg))));
    }
    let edits = all.into_iter().map(|(own, mut entry)| {
        match &mut entry {
            Entry::Batch(heading) => heading.name = format!("Bitter {n}"),
            Entry::Pitch(record) => record.batch = of.clone(),
            Entry::Reading(record) => record.batch = of.clone(),
            Entry::Bottling(record) => record.batch = of.clone(),
            _ => {}
        }
        let own = if matches!(entry, Entry::Batch(_)) {
            of.clone()
        } else {
            id(&format!("{}-{n}", own.as_str()))
        };
        Edit::Put(own, entry)
    });
    Change::all(edits)
}

fn keeps(keeper: &mut Keeper<Shelf>, changes: impl IntoIterator<Item = Change>) {
    for (n, change) in (1_u64..).zip(changes) {
        let mut count = 0;
        let mut token = || {
            count += 1;
            Token::from_random((n << 20 | count).to_be_bytes())
        };
        let kept = keeper.save(1, (&change, &Change::default()), brewing_day(), &mut token);
        assert_eq!(kept, Event::Saved(1));
    }
}

/// So many batches, the first begun 900 days ago, one each sixty days.
fn cellar(count: usize) -> Paper {
    let shelf = Shelf::of_others();
    let mut keeper = Keeper::new(shelf.clone());
    keeper.load().expect("it is read");
    keeps(&mut keeper, (0..count).map(|n| whole(n, 900.0 - 60.0 * n as f64, 4)));
    let mut phone = Paper::with(shelf, brewing_day(), Zone::fixed(60), 9);
    phone.go("#/gear");
    phone
}

fn names(phone: &Paper) -> Vec<String> {
    let all = phone.model.journal.batches_latest_first().into_iter();
    all.map(|(_, heading)| heading.name.clone()).collect()
}

#[test]
fn old_batches_go_into_a_file_then_away_and_come_back_from_it() {
    let mut phone = cellar(6);
    phone.sees_no("## Old batches");
    *phone.shelf.writes_left.borrow_mut() = Some(0);
    phone.tap("Night");
    phone.sees("There is hardly any room left");
    phone.tap("Make room in Gear");
    phone.sees("## Old batches");
    // The youngest is in hand; of the others those are proposed that were bottled a year ago and more.
    phone.sees("before 1 Jul 2024: 5 batches");
    phone.choose("Bottled", "before 1 Apr 2024: 3 batches");
    phone.tap("Copy 3 batches out");
    phone.sees("fermentside-old-batches-2026-03-07.json");
    phone.sees_no("Take 3 batches away");
    let file = phone.value_in("Or copy this text");
    phone.tap("Hand the copy over");
    phone.sees("3 batches take ");
    // Into a store that has no room even for that.
    let before = phone.model.journal.clone();
    phone.tap("Take 3 batches away");
    phone.sees("3 batches taken away: ");
    phone.sees(" kB freed");
    phone.sees_no("hardly any room");
    assert_eq!(names(&phone), ["Bitter 5", "Bitter 4", "Bitter 3"]);
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("Undo");
    assert_eq!(phone.model.journal, before);

    phone.happens(Event::Room(5_000_000));
    phone.choose("Bottled", "before 1 Apr 2024: 3 batches");
    phone.tap("Copy 3 batches out");
    phone.tap("Hand the copy over");
    phone.tap("Take 3 batches away");
    phone.sees("Deleted: Bitter 0");
    phone.sees("Deleted: Bitter 2");
    phone.reload();
    assert_eq!(names(&phone).len(), 3);
    // Long after, it comes back from the file as it was.
    phone.days(40.0);
    phone.reload();
    phone.sees_no("Deleted: Bitter");
    phone.choose_file("The file of a copy", &file);
    phone.sees("Would be added: 3 batches, 3 pitchings, 12 readings, 3 bottling days");
    phone.tap("Bring it in");
    phone.reload();
    for n in 0..6 {
        let of = id(&format!("b{n}"));
        assert_eq!(phone.model.journal.log(&of), before.log(&of), "{n}");
    }
}

#[test]
fn nothing_is_taken_away_that_is_not_in_the_file() {
    let mut phone = cellar(4);
    phone.happens(Event::Room(5_000_000));
    phone.tap("Copy 3 batches out");
    phone.tap("Hand the copy over");
    // Another wish, and it is another file.
    phone.choose("Bottled", "before 1 Jan 2024: 2 batches");
    phone.sees_no(" batches away");
    phone.sees("Copy 2 batches out");
    phone.choose("Bottled", "before 1 Apr 2024: 3 batches");
    phone.sees("Take 3 batches away");
    // A change after it, and it lacks something.
    phone.tap("Night");
    phone.happens(Event::Room(5_000_000));
    phone.sees("Copy 3 batches out");
    phone.sees_no("Take 3 batches away");
    // So it does when another tab has changed something.
    phone.tap("Copy 3 batches out");
    phone.tap("Hand the copy over");
    phone.happens(Event::Elsewhere);
    phone.sees("Take 3 batches away");
    phone.tap("Show it");
    phone.sees("Copy 3 batches out");
    phone.sees_no("Take 3 batches away");
}

#[test]
fn what_is_in_hand_or_a_hazard_or_not_bottled_stays() {
    let mut phone = cellar(3);
    phone.happens(Event::Room(5_000_000));
    phone.sees("before 1 Jan 2024: 2 batches");
    let gushed = OpeningRecord {
        batch: id("b0"),
        at: ago(700.0),
        fizz: Fizz::new(5).expect("one to five"),
        clarity: None,
        taste: String::new(),
        note: String::new(),
        burst: true,
    };
    let change = Change::put(id("o9"), Entry::Opening(gushed));
    phone.model.journal.apply(change).expect("it fits");
    phone.sees("1 batch");
    phone.tap("Copy 1 batch out");
    let file = phone.value_in("Or copy this text");
    assert!(file.contains("Bitter 1") && !file.contains("Bitter 0"), "{file}");
}

#[test]
fn a_batch_that_goes_takes_its_readings_from_those_of_the_last_copy() {
    let mut phone = cellar(2);
    phone.tap("Make a copy of everything");
    phone.tap("Hand the copy over");
    phone.sees("has every reading.");
    phone.go("#/batch/b0/edit");
    phone.tap("Delete this batch");
    // Ten new ones are asked for, not those that make up for the four that went.
    for n in 0..10 {
        phone.go("#/batch/b1/watch");
        phone.tap("Add a reading");
        phone.type_into("Hydrometer reads", "1.012");
        phone.type_into("Sample temperature", "20");
        phone.tap("Save");
        if phone.text().contains("Save it as it is") {
            phone.tap("Save it as it is");
        }
        phone.go("#/now");
        assert_eq!(phone.text().contains("are in no copy yet"), n == 9, "{n}:\n{}", phone.text());
    }
}

#[test]
fn what_is_half_typed_and_cannot_be_kept_is_said_before_the_save() {
    let mut phone = cellar(1);
    phone.happens(Event::DraftsKept(false));
    phone.sees("a save may be refused, and half-typed text lost with the page");
    phone.happens(Event::DraftsKept(true));
    phone.sees_no("half-typed text lost");
}

/// At twenty-four batches a year of twenty readings each.
#[test]
fn with_480_batches_it_was_told_years_before_and_room_can_be_made() {
    let (mut told, mut nearly) = (None, None);
    let a_year = 24;
    let shelf = Shelf::of_others();
    let mut keeper = Keeper::new(shelf.clone());
    keeper.load().expect("it is read");
    // Each is as large as the next: what so many take is known from one.
    keeps(&mut keeper, [whole(100, 400.0, 20)]);
    let one = keeper.used();
    for count in (a_year..=480).step_by(a_year) {
        let days = 365.25 * (count / a_year) as f64;
        let mut phone = Paper::new();
        phone.model.journal.apply(whole(0, days, 0)).expect("it fits");
        phone.go("#/gear");
        phone.happens(Event::Room(one * count as u64));
        if told.is_none() && phone.text().contains("At your pace") {
            told = Some(count);
        }
        if nearly.is_none() && phone.text().contains("hardly any room") {
            nearly = Some(count);
        }
    }
    let (told, nearly) = (told.expect("it is told"), nearly.expect("it is told"));
    println!("a batch takes {one} bytes; told at {told} batches, and once more at {nearly}");
    assert!(nearly >= told + 2 * a_year, "{told}, {nearly}");

    // And a store that holds all of them, and not one letter more.
    let mut everything = Shelf::of_others();
    for n in 0..480 {
        let shelf = Shelf::default();
        let mut keeper = Keeper::new(shelf.clone());
        keeper.load().expect("it is read");
        keeps(&mut keeper, [whole(n, 7300.0 - 15.0 * n as f64, 20)]);
        for key in shelf.keys().expect("keys") {
            let text = shelf.read(&key).expect("read").expect("a text");
            everything.write(&key, &text).expect("written");
        }
    }
    let mut keeper = Keeper::new(everything.clone());
    keeper.load().expect("it is read");
    let more = Change::put(id("new"), Entry::Reading(reading(0.1, 1.010)));
    *everything.letters_left.borrow_mut() = Some(0);
    let mut times = vec![];
    for n in 0..5_u64 {
        let begun = Instant::now();
        let mut token = || Token::from_random((n + 7).to_be_bytes());
        let kept = keeper.save(1, (&more, &Change::default()), brewing_day(), &mut token);
        times.push(begun.elapsed().as_secs_f64() * 1000.0);
        assert!(matches!(kept, Event::NotSaved(..)), "{kept:?}");
    }
    let quickest = times.iter().copied().fold(f64::INFINITY, f64::min);
    println!("a refused save among 480 batches takes {quickest:.1} ms");
    // Not optimised, and the machine may be busy; in the browser it is held to 100 ms.
    assert!(quickest < 500.0, "{times:?} ms");

    // Fifty of them are taken away from it, and are had back.
    let mut phone = Paper::with(everything.clone(), brewing_day(), Zone::fixed(60), 3);
    phone.go("#/gear");
    phone.happens(Event::Room(9_990_000));
    let copy = phone.parts().into_iter().find_map(|part| match part.what {
        What::Action(button)
            if button.label.starts_with("Copy ") && button.label.ends_with(" out") =>
        {
            Some(button.label)
        }
        _ => None,
    });
    phone.tap(&copy.expect("a way to copy out"));
    phone.tap("Hand the copy over");
    let begun = Instant::now();
    phone.tap("Take ");
    println!(
        "{} in {:.0} ms",
        phone.model.undo.as_ref().expect("it was done").done,
        begun.elapsed().as_secs_f64() * 1000.0
    );
    let left = phone.model.journal.clone();
    assert!((430..480).contains(&left.batches().count()));
    // There is room for many a reading now.
    phone.go("#/batch/b479/watch");
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", "1.012");
    phone.type_into("Sample temperature", "20");
    phone.tap("Save");
    phone.sees_no("Not saved");
    phone.reload();
    assert_eq!(phone.model.journal.batches().count(), left.batches().count());
}
