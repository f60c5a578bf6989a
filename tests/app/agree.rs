//! Now, Watch, Bottle, Open, the list, the calendar and what is printed never disagree: random batches, looked
//! at on random days. `BATCHES=2000` tries so many.

use crate::chance::Chance;
use crate::paper::{Paper, brewing_day};
use crate::shelf::{bottling, id, reading};
use fermentside::advice::Verdict;
use fermentside::advice::family::Family;
use fermentside::advice::standing::{Stage, State};
use fermentside::app::{Act, Event, FrameAct, Judged, Paper as Printed, Part, What};
use fermentside::batch::{
    Added, BatchHeading, Due, Entry, Fizz, HydrometerItem, Id, Journal, NextStep, OpeningRecord,
    PitchRecord, Reading, Settings, Summary, Today, Vessel,
};
use fermentside::exchange::reminders::{Reminder, What as Remembered, reminders};
use fermentside::quantity::{Celsius, Hours, Litres, Measured, Moment, SpecificGravity};

struct Lot(Chance);

impl Lot {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.0.number() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn one_in(&mut self, of: u32) -> bool {
        self.between(0.0, f64::from(of)) < 1.0
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[(self.between(0.0, all.len() as f64) as usize).min(all.len() - 1)]
    }
}

fn day(days: f64) -> Moment {
    brewing_day().after(Hours::nearest(24.0 * days))
}

/// A batch that goes some way or other, read now and then.
fn batch(lot: &mut Lot, name: &str) -> Vec<(Id, Entry)> {
    let family = lot.one_of(&[
        Family::CleanAle,
        Family::EnglishAle,
        Family::Lager,
        Family::Kveik,
        Family::Saison,
        Family::Unknown,
    ]);
    let (start, end) = (lot.between(40.0, 70.0), lot.between(6.0, 24.0));
    let heading = BatchHeading {
        name: format!("Batch {name}"),
        started: day(-0.1),
        volume: Litres::literal(20.0),
        family,
        packet: None,
        expected_start: None,
        expected_end: lot.one_in(4).then(|| SpecificGravity::literal(1.012)),
        hydrometer: HydrometerItem::usual_id(),
        target: None,
        own_ends: vec![],
    };
    let mut all = vec![(id(name), Entry::Batch(heading))];
    let add = |all: &mut Vec<_>, what: &str, entry| all.push((id(&format!("{name}{what}")), entry));
    if !lot.one_in(8) {
        add(&mut all, "p", Entry::Pitch(PitchRecord { batch: id(name), ..pitching() }));
    }
    let of = |days: f64, points: f64| Reading {
        batch: id(name),
        at: day(days),
        ..reading(0.0, 1.0 + points.round() / 1000.0)
    };
    if !lot.one_in(5) {
        add(&mut all, "og", Entry::Reading(of(-0.05, start)));
    }
    let (half, falls) = (lot.between(1.5, 4.0), !lot.one_in(9));
    let mut days = lot.between(0.3, 5.0);
    for n in 0..lot.between(0.0, 8.0) as usize {
        let left = if falls { 1.0 / (1.0 + (days / half).powi(4)) } else { 1.0 };
        let mut read = of(days, end + (start - end) * left + lot.between(-0.8, 0.8));
        read.beer = lot.one_in(4).then(|| Celsius::nearest(lot.between(4.0, 24.0)));
        read.added = (lot.one_in(25)).then_some(Added::Fruit);
        read.doubtful = lot.one_in(25);
        add(&mut all, &format!("r{n}"), Entry::Reading(read));
        days += lot.between(0.4, 5.0);
        if lot.one_in(4) {
            let jar = Reading { vessel: Vessel::Satellite, ..of(days - 0.2, end) };
            add(&mut all, &format!("s{n}"), Entry::Reading(jar));
        }
    }
    if lot.one_in(4) {
        let (_, Entry::Bottling(record)) = bottling(0.0) else { panic!("a bottling") };
        let record = fermentside::batch::BottlingRecord {
            batch: id(name),
            at: day(days),
            place: Some(Celsius::nearest(lot.between(9.0, 24.0))),
            ..record
        };
        add(&mut all, "o", Entry::Bottling(record));
        for n in 0..lot.between(0.0, 3.0) as usize {
            let opening = OpeningRecord {
                batch: id(name),
                at: day(days + lot.between(2.0, 30.0)),
                fizz: Fizz::new(lot.one_of(&[1, 1, 2, 3, 3, 4, 5])).expect("one to five"),
                clarity: None,
                taste: String::new(),
                note: String::new(),
                burst: false,
            };
            add(&mut all, &format!("t{n}"), Entry::Opening(opening));
        }
    }
    all
}

fn pitching() -> PitchRecord {
    PitchRecord::new(id("b"), day(0.0))
}

fn part(parts: &[Part], name: &str) -> What {
    let found = parts.iter().find(|part| part.name == name);
    found.unwrap_or_else(|| panic!("no part {name}")).what.clone()
}

/// The plate of Now; none while the wort is still to be pitched.
fn plate_of_now(parts: &[Part]) -> Option<Judged> {
    match part(parts, "next") {
        What::Verdict(judged) => Some(judged),
        What::Answer(_) => None,
        other => panic!("{other:?}"),
    }
}

fn verdict(parts: &[Part], name: &str) -> (Verdict, String) {
    match part(parts, name) {
        What::Verdict(judged) => (judged.verdict, judged.sentence),
        other => panic!("{name}: {other:?}"),
    }
}

/// The row of a batch in the list: where it leads, its verdict aloud, its next step, and the head it is under.
fn row(phone: &mut Paper, batch: &Id) -> (String, Option<String>, String, String) {
    phone.go("#/batches");
    let name = format!("batch/{}/link", batch.as_str());
    let parts = phone.parts();
    let What::Link(link) = part(&parts, &name) else { panic!("a row") };
    let run = |kind| link.runs.iter().find(|run| run.kind == kind).map(|run| run.text.clone());
    let at = parts.iter().position(|part| part.name == name).expect("a row");
    let head = parts[..at].iter().rev().find_map(|part| match &part.what {
        What::Heading(2, head) => Some(head.clone()),
        _ => None,
    });
    let head = head.expect("a head");
    (link.address.clone(), run("heard"), run("batch-next").expect("a next step"), head)
}

/// The days that the calendar is handed, as they stand in its file, and none when there is no file.
fn in_calendar(watch: &[Part]) -> Vec<String> {
    let Some(file) = watch.iter().find(|part| part.name == "ahead/file") else { return vec![] };
    let What::HandOut(file) = &file.what else { panic!("a file") };
    let line = |line: &str| line.strip_prefix("DTSTART:").map(|at| at.trim().to_owned());
    file.text.lines().filter_map(line).collect()
}

/// What the calendar reminds of, by the next step that is told: nothing else, and at no other time.
fn calendar_agrees(phone: &Paper, watch: &[Part], today: &Today, remembered: &[Reminder]) {
    let now = phone.model.now;
    assert!(remembered.iter().all(|one| one.at > now));
    let all: Vec<String> = remembered.iter().map(|one| one.at.utc_text()).collect();
    assert_eq!(in_calendar(watch), all);
    let ahead = |due: Due| matches!(due, Due::Ahead(_)).then_some(due.moment());
    let wanted = match today.next {
        NextStep::FirstLook(due) | NextStep::ReadAgain(due) | NextStep::Stuck(due) => {
            ahead(due).map(|at| (Remembered::Read, at))
        }
        NextStep::LookForSigns(due) => ahead(due).map(|at| (Remembered::LookForSigns, at)),
        NextStep::WaitForBottles(at) | NextStep::WakeBottles(at) | NextStep::ChillBottles(at) => {
            Some((Remembered::TryBottle, at)).filter(|_| at > now)
        }
        NextStep::Bottle => {
            let bottle = remembered.iter().find(|one| one.what == Remembered::Bottle);
            let at = bottle.expect("bottling wants some notice").at;
            assert!((23.9..48.1).contains(&at.since(now).value()), "{at}");
            Some((Remembered::Bottle, at))
        }
        _ => None,
    };
    let told = remembered
        .iter()
        .filter(|one| !matches!(one.what, Remembered::ReadSatellite | Remembered::Ready));
    let told: Vec<_> = told.map(|one| (one.what, one.at)).collect();
    assert_eq!(told, wanted.into_iter().collect::<Vec<_>>(), "{:?}", today.next);
    for one in remembered {
        let hour = phone.model.zone.shown(one.at).parts().3;
        assert!((8..21).contains(&hour), "{}: nobody gets up for it", one.at);
    }
}

/// The sheet says how it stands as the list and the way above it do, and a label the day that Open names.
fn print_agrees(phone: &mut Paper, s: &Summary, today: &Today) {
    let words = phone.model.words;
    phone.happens(Event::Did(Act::Frame(FrameAct::Print(Printed::Sheet))));
    let What::Figures(rows) = part(&phone.parts(), "paper/brew/rows") else { panic!("rows") };
    let stands = rows.iter().find(|(name, _)| name == words.print.stands).map(|(_, is)| is.clone());
    let watched = (today.stage == Stage::Watch).then_some(s.standing.state);
    let should = (words.batches.standing)(today.stage, watched);
    assert_eq!(stands, (today.stage != Stage::Open).then_some(should));
    phone.happens(Event::Did(Act::Frame(FrameAct::Print(Printed::Labels))));
    let parts = phone.parts();
    let label = parts.iter().find(|part| part.name == "paper/label/0/from");
    assert_eq!(label.is_some(), s.bottling.is_some());
    if let (Some(label), NextStep::WaitForBottles(at), true) =
        (label, today.next, s.openings.is_empty())
    {
        let What::Text(_, text) = &label.what else { panic!("a day") };
        assert_eq!(*text, (words.print.try_from)(at));
    }
}

/// Whether the usual bottling gets its sugar on the screen that is shown.
fn dosed(phone: &mut Paper) -> bool {
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Sound");
    let label = phone.model.words.bottle.plan.sugar_to_weigh;
    phone.parts().iter().any(|part| {
        matches!(&part.what, What::Verdict(judged)
            if judged.label == label && judged.figure.0.ends_with('g'))
    })
}

struct Looked {
    dosed: usize,
    finished: usize,
    level: usize,
    due: usize,
}

fn look(phone: &mut Paper, batch: &Id, so_far: &mut Looked) {
    let now = phone.model.now;
    let s: std::rc::Rc<Summary> = phone.model.summary(batch).expect("the batch");
    let today = s.today(now);
    let words = phone.model.words;

    // Now says what the stage says where the next step is done, and its day once.
    phone.go("#/now");
    let plate = plate_of_now(&phone.parts());
    assert_eq!(plate.is_none(), today.next == NextStep::Pitch);
    if let Some(plate) = plate {
        let stage = match today.stage {
            Stage::Open => "open",
            _ => "watch",
        };
        let name = if stage == "open" { "open/first" } else { "watch/finish" };
        phone.go(&format!("#/batch/{}/{stage}", batch.as_str()));
        if stage == "open" || !s.lines.is_empty() {
            assert_eq!((plate.verdict, plate.sentence), verdict(&phone.parts(), name));
        }
        let day = match today.next {
            NextStep::FirstLook(Due::Ahead(at))
            | NextStep::ReadAgain(Due::Ahead(at))
            | NextStep::WaitForBottles(at) => phone.model.writer().day_ahead(at),
            _ => String::new(),
        };
        assert_eq!(plate.figure.0, day);
        assert!(day.is_empty() || !plate.next.contains(&day), "{}", plate.next);
    }
    // The list says the next step, and leads where it stands.
    let (address, heard, next, head) = row(phone, batch);
    assert_eq!(next, (words.now.in_short)(phone.model.writer(), today.next));
    let due = today.due.is_some_and(|due| due <= now);
    assert_eq!(head == words.batches.due, due, "{head}: {today:?}");
    assert!(address.ends_with(&(words.frame.stage)(today.stage).to_lowercase()), "{address}");
    assert_eq!(today.stage, s.standing.stage);
    let verdict_of_row = match today.stage {
        Stage::Pitch => None,
        Stage::Watch | Stage::Bottle => Some(s.standing.verdict),
        Stage::Open => today.opening.as_ref().map(|opening| opening.verdict),
    };
    assert_eq!(heard.as_deref(), verdict_of_row.map(words.names.verdict));

    // Watch and Bottle show one verdict, and only what is finished is to be bottled.
    phone.go(&format!("#/batch/{}/watch", batch.as_str()));
    let watch = phone.parts();
    if s.lines.is_empty() {
        // Of what was never read Watch shows the form of its first reading, and no verdict to disagree with.
        assert_eq!(s.standing.state, State::CannotTell);
        return;
    }
    let (judged, standing) = verdict(&watch, "watch/finish");
    assert_eq!(judged, s.standing.verdict);
    // The steps for what is stuck stand open where Now leads to them.
    let steps = watch.iter().any(|part| part.name == "ladder/heading");
    let leads = matches!(today.next, NextStep::Stuck(_) | NextStep::PitchAgain);
    assert_eq!(steps, leads && !s.ladder.is_empty(), "{:?}", today.next);
    let What::Link(way) = part(&watch, "head/Bottle") else { panic!("the way") };
    let when = way.runs.last().map(|run| run.text.clone());
    assert_eq!(when.as_deref() == Some(words.frame.now), today.next == NextStep::Bottle);
    let finished = s.standing.state == State::Finished;
    assert_eq!(judged == Verdict::Go, finished);
    assert_eq!(today.next == NextStep::Bottle, finished);
    assert_eq!(today.stage == Stage::Bottle, finished);
    phone.go(&format!("#/batch/{}/bottle", batch.as_str()));
    if s.bottling.is_none() {
        phone.model.drafts.forget("bottling/");
        assert_eq!(verdict(&phone.parts(), "dose/plate"), (judged, standing.clone()));
        let dosed = dosed(phone);
        assert!(finished || !dosed, "a dose for {:?}", s.standing);
        if !finished {
            assert_eq!(verdict(&phone.parts(), "dose/plate"), (judged, standing));
        }
        // What was noted of its warmth may ask for less; else the usual sugar goes in.
        let warmth = s.lines.iter().any(|line| line.reading.beer.is_some());
        assert!(!finished || dosed || warmth, "no dose: {}", phone.text());
        so_far.dosed += usize::from(dosed);
    }

    // What is due is due now, and what lies ahead is in the calendar at that very time.
    let remembered = reminders(&s, now);
    calendar_agrees(phone, &watch, &today, &remembered);
    if let NextStep::FirstLook(due) | NextStep::ReadAgain(due) | NextStep::LookForSigns(due) =
        today.next
    {
        assert_eq!(today.due, Some(due.moment()));
        if let Due::Ahead(at) = due {
            let hour = at.parts().3;
            assert!((8..21).contains(&hour), "{at}: nobody reads at night");
        }
        so_far.due += usize::from(matches!(due, Due::Since(_)));
    }
    print_agrees(phone, &s, &today);

    // Open agrees with Now about the bottles.
    if s.bottling.is_some() {
        phone.go(&format!("#/batch/{}/open", batch.as_str()));
        let open = phone.parts();
        match today.next {
            NextStep::WaitForBottles(_) | NextStep::WakeBottles(_) => {
                assert_eq!(verdict(&open, "open/first").0, Verdict::Wait);
            }
            NextStep::TryOne => assert_eq!(verdict(&open, "open/first").0, Verdict::Go),
            NextStep::ChillBottles(_) => {
                assert_eq!(verdict(&open, "open/first").0, Verdict::Stop);
            }
            NextStep::MakeSafe => {
                assert!(!s.standing.hazards.is_empty());
                assert_eq!(verdict(&open, "open/first").0, Verdict::Stop);
            }
            NextStep::AfterSafe(_) => assert_eq!(verdict(&open, "open/first").0, Verdict::Wait),
            other => {
                assert_eq!(other, NextStep::Enjoy);
                assert_eq!(verdict(&open, "open/first").0, Verdict::Go);
            }
        }
    }
    so_far.finished += usize::from(finished);
    so_far.level += usize::from(s.standing.state == State::Level);
}

#[test]
fn no_two_screens_disagree() {
    let wanted = std::env::var("BATCHES").ok().and_then(|n| n.parse().ok());
    let count: u64 = wanted.unwrap_or(60);
    let mut so_far = Looked { dosed: 0, finished: 0, level: 0, due: 0 };
    let mut phone = Paper::new();
    for seed in 0..count {
        let mut lot = Lot(Chance(seed));
        // Another name each time: a summary is kept by the name of its batch.
        let name = format!("b{seed}-");
        let mut entries = batch(&mut lot, &name);
        let settings = Settings { in_hand: Some(id(&name)), ..Settings::default() };
        entries.push((Settings::id(), Entry::Settings(settings)));
        phone.model.journal = Journal::of(entries);
        for _ in 0..5 {
            let hours = 24.0 * lot.between(0.0, 60.0);
            phone.happens(Event::Clock(brewing_day().after(Hours::nearest(hours))));
            look(&mut phone, &id(&name), &mut so_far);
        }
    }
    let Looked { dosed, finished, level, due } = so_far;
    println!(
        "{count} batches on five days: {finished} looks at finished ones, {dosed} with their sugar, {level} level, {due} due"
    );
    assert!(dosed > 0 && finished > 0 && level > 0 && due > 0);
}
