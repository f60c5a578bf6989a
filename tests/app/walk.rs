//! A walker who taps, types, goes back, closes the page, lets days pass and carries the phone to another
//! zone, without plan or mercy. After every step: the page stands, nothing on it is not a number, nothing
//! that was saved or half typed is lost, and no dose lies above what the bottles bear.
//!
//! `make walk` goes a million steps; `cargo test` a few thousand, over other seeds than before when
//! `WALK_SEED` says so.

use crate::chance::Chance;
use crate::paper::{Paper, Shelf, brewing_day};
use fermentside::app::drawing::{Drawing, Sketch};
use fermentside::app::{Event, Part, Route, What};
use fermentside::quantity::Zone;

impl Chance {
    fn below(&mut self, end: usize) -> usize {
        (self.number() % end.max(1) as u64) as usize
    }

    fn one_of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        &all[self.below(all.len())]
    }
}

/// What a person, a cat or another program may type.
const TYPED: [&str; 44] = [
    "",
    "1.050",
    "1,012",
    "1012",
    "50",
    "1.010",
    "0.998",
    "12.4 P",
    "12,4",
    "20",
    "19.5",
    "65 F",
    "23",
    "5 gal",
    "5 us gal",
    "31",
    "4",
    "2.4",
    "0",
    "-5",
    "100",
    "1e9",
    "999999999999",
    "nan",
    "INF",
    "-INF",
    "٠٫٥",
    "½",
    "1.2.3",
    "1,2,3.4",
    "hot",
    "  ",
    "\u{200B}",
    "\u{202E}abc",
    "<b>x</b>",
    "Cellar bitter",
    "foamy, bread crust",
    "=1+1",
    "0x10",
    "1/2",
    "١٢",
    "11 g",
    "0.0001",
    "2026-03-20T18:30",
];

/// Times that fields are given, the edges of the calendar among them.
const TIMES: [&str; 10] = [
    "2026-03-07T20:00",
    "2026-03-09T18:00",
    "2026-03-14T09:00",
    "2026-03-29T02:30",
    "2026-10-25T02:30",
    "9999-12-31T23:59",
    "0001-01-01T00:00",
    "2027-02-30T00:00",
    "2026-03-21T08:00",
    "soon",
];

const PLACES: [&str; 14] = [
    "#/now",
    "#/batches",
    "#/batches/new",
    "#/bench",
    "#/bench/gravity",
    "#/bench/sugar",
    "#/bench/strength",
    "#/bench/cooling",
    "#/bench/yeast",
    "#/bench/scales",
    "#/gear",
    "#/nowhere",
    "",
    "#/batch/../watch",
];

const STAGES: [&str; 5] = ["pitch", "watch", "bottle", "open", "edit"];

struct Walker {
    phone: Paper,
    chance: Chance,
    /// The last steps, to be told when one goes wrong.
    steps: Vec<String>,
}

fn zones() -> [Zone; 4] {
    [
        Zone::fixed(60),
        Zone::fixed(-480),
        // Central European time with its changes of 2026.
        Zone::new(60, vec![(29_579_460, 120), (29_882_340, 60)]),
        Zone::fixed(845),
    ]
}

impl Walker {
    fn new(seed: u64) -> Self {
        let phone = Paper::with(Shelf::of_others(), brewing_day(), Zone::fixed(60), seed);
        Self { phone, chance: Chance(seed), steps: vec![] }
    }

    fn note(&mut self, step: String) {
        if self.steps.len() > 30 {
            self.steps.remove(0);
        }
        self.steps.push(step);
    }

    fn happens(&mut self, event: Event) {
        self.note(format!("{event:?}").chars().take(160).collect());
        self.phone.happens(event);
    }

    /// Half of all texts mean something where they are typed.
    fn text_for(&mut self, part: &Part) -> String {
        if self.chance.below(2) == 0 {
            return (*self.chance.one_of(&TYPED)).to_owned();
        }
        let label = match &part.what {
            What::Number(field) => field.label.to_lowercase(),
            _ => String::new(),
        };
        let n = self.chance.below(1000) as f64 / 1000.0;
        if label.contains("hydrometer") || label.contains("gravity") || label.contains("shows") {
            format!("{:.4}", 1.005 + 0.05 * n)
        } else if label.contains("volume") || label.contains("beer in") || label.contains("vessel")
        {
            format!("{:.1}", 5.0 + 20.0 * n)
        } else {
            format!("{:.1}", 30.0 * n)
        }
    }

    fn somewhere(&mut self) -> String {
        let batches: Vec<_> =
            self.phone.model.journal.batches().map(|(id, _)| id.as_str().to_owned()).collect();
        if batches.is_empty() || self.chance.below(4) == 0 {
            return (*self.chance.one_of(&PLACES)).to_owned();
        }
        let batch = self.chance.one_of(&batches).clone();
        format!("#/batch/{batch}/{}", self.chance.one_of(&STAGES))
    }

    fn touch(&mut self, part: &Part) {
        match &part.what {
            What::Number(field) => {
                let name = part.name.clone();
                match self.chance.below(8) {
                    0 => {
                        let symbol = (*self.chance.one_of(&field.units)).to_owned();
                        self.happens(Event::Unit { name, symbol });
                    }
                    1 => self.happens(Event::Left(name)),
                    2 | 3 => {
                        let (less, more) = field.steps.clone();
                        let text = if self.chance.below(2) == 0 { less } else { more };
                        self.happens(Event::Typed { name, text, unit: field.unit.to_owned() });
                    }
                    _ => {
                        let text = self.text_for(part);
                        let unit = field.unit.to_owned();
                        self.happens(Event::Typed { name: name.clone(), text, unit });
                        self.happens(Event::Left(name));
                    }
                }
            }
            What::Words(_) => {
                let text = (*self.chance.one_of(&TYPED)).to_owned();
                let (name, unit) = (part.name.clone(), String::new());
                self.happens(Event::Typed { name, text, unit });
            }
            What::Moment(_) => {
                let text = (*self.chance.one_of(&TIMES)).to_owned();
                let (name, unit) = (part.name.clone(), String::new());
                self.happens(Event::Typed { name, text, unit });
            }
            What::Choice(choice) | What::Pick(choice) if !choice.options.is_empty() => {
                let (text, _) = self.chance.one_of(&choice.options).clone();
                let (name, unit) = (part.name.clone(), String::new());
                self.happens(Event::Typed { name, text, unit });
            }
            What::Slider(slider) => {
                let (low, high, _) = slider.range;
                let value = low + (high - low) * self.chance.below(101) as f64 / 100.0;
                self.happens(Event::Slid { name: part.name.clone(), value });
            }
            What::Link(_) | What::Action(_) | What::Fold(_) | What::Tick(_) => {
                // Deleting a whole batch is rarely wished for.
                if matches!(&part.what, What::Action(button) if button.kind == "danger")
                    && self.chance.below(6) > 0
                {
                    return;
                }
                self.note(
                    format!("touch {} {:?}", part.name, part.what).chars().take(200).collect(),
                );
                self.phone.touch(part, "");
            }
            _ => {}
        }
    }

    fn step(&mut self) {
        match self.chance.below(60) {
            0 => {
                let place = self.somewhere();
                self.note(format!("go {place}"));
                self.phone.go(&place);
            }
            1 => self.phone.back(),
            2 => self.reload(),
            3 | 4 => {
                let hours = [0.01, 1.0, 6.0, 24.0, 60.0, 200.0][self.chance.below(6)];
                self.note(format!("{hours} h go by"));
                self.phone.hours(hours);
            }
            5 => {
                let zone = self.chance.one_of(&zones()).clone();
                self.happens(Event::Travelled(zone));
            }
            6 if self.chance.below(20) == 0 => {
                // A store that has no room for a while.
                let left = Some(self.chance.below(3) as u32);
                *self.phone.shelf.writes_left.borrow_mut() = left;
                self.note(format!("{left:?} more writes"));
            }
            7 => *self.phone.shelf.writes_left.borrow_mut() = None,
            8 => {
                let places = self.phone.screen().places;
                let address = self.chance.one_of(&places).address.clone();
                self.phone.go(&address);
            }
            _ => {
                let parts = self.phone.parts();
                let part = self.chance.one_of(&parts).clone();
                self.touch(&part);
            }
        }
    }

    /// What was saved is there again, and so is what was half typed.
    fn reload(&mut self) {
        self.note("reload".to_owned());
        let journal = self.phone.model.journal.clone();
        let drafts = self.phone.model.drafts.texts();
        self.phone.reload();
        assert_eq!(self.phone.model.journal, journal, "a record is lost or another");
        assert_eq!(self.phone.model.drafts.texts(), drafts, "a draft is lost or another");
    }

    fn looks_well(&self) {
        let screen = self.phone.screen();
        assert!(!screen.main.is_empty() && !screen.title.is_empty(), "an empty screen");
        let mut names = vec![];
        for part in screen.notices.iter().chain(&screen.main).chain(&screen.undo) {
            part.each(&mut |part| names.push(part.name.as_str()));
        }
        names.sort_unstable();
        let twice: Vec<_> = names.windows(2).filter(|pair| pair[0] == pair[1]).collect();
        assert!(twice.is_empty(), "two parts of one name: {twice:?}");
        // A file bears the name of its batch, in small letters.
        let typed = |part: &Part| {
            let field = matches!(part.what, What::Number(_) | What::Words(_) | What::Moment(_));
            field || matches!(part.what, What::Stem(_) | What::HandOut(_))
        };
        for part in self.phone.parts().iter().filter(|part| !typed(part)) {
            // No text that is typed here holds these letters, so none on the screen may.
            let said = format!("{:?}", part.what);
            assert!(!said.contains("NaN"), "{said}");
            let endless = |word: &str| word == "inf";
            assert!(!said.split(|c: char| !c.is_alphanumeric()).any(endless), "{said}");
        }
        self.dose_is_borne();
    }

    /// Wherever a dose is shown, what it comes to at worst is not above the ceiling beside it.
    fn dose_is_borne(&self) {
        let parts = self.phone.parts();
        let words = &self.phone.model.words.bottle.plan;
        let weighed = parts.iter().any(|part| {
            matches!(&part.what, What::Verdict(judged)
                if judged.label == words.sugar_to_weigh && judged.figure.0.ends_with('g'))
        });
        if !weighed {
            return;
        }
        let number = |text: &str| {
            let digits: String =
                text.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
            digits.parse::<f64>().ok()
        };
        let bottle = parts.iter().find_map(|part| match &part.what {
            What::Drawing(Drawing { sketch: Sketch::Bottle(bottle), .. }) => Some(bottle),
            _ => None,
        });
        let bottle = bottle.expect("a dose without its guard");
        let (worst, ceiling) = (number(&bottle.worst.value), number(&bottle.ceiling.value));
        let (worst, ceiling) = (worst.expect("the worst case"), ceiling.expect("a ceiling"));
        // Both are written to a tenth.
        assert!(worst <= ceiling + 0.051, "{worst} above {ceiling}");
    }
}

fn walk(seed: u64, steps: usize) -> u64 {
    let mut walker = Walker::new(seed);
    let mut batches = 0;
    for _ in 0..steps {
        let done = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| {
            walker.step();
            walker.looks_well();
        }));
        if done.is_err() {
            panic!("seed {seed} after:\n{}\n{}", walker.steps.join("\n"), walker.phone.place());
        }
        batches = batches.max(walker.phone.model.journal.batches().count() as u64);
        // A cellar of a few batches is seen more often than one of many.
        if matches!(walker.phone.model.route, Route::NewBatch) && batches > 6 {
            walker.phone.go("#/now");
        }
    }
    walker.reload();
    batches
}

fn wish(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

#[test]
fn a_walk_at_random_loses_nothing() {
    let (steps, first) = (wish("WALK_STEPS", 4_000), wish("WALK_SEED", 1));
    let each = 1_000.min(steps);
    let begun: u64 = (0..steps / each)
        .map(|walk_number| {
            walk(first.wrapping_mul(0x5851_F42D_4C95_7F2D).wrapping_add(walk_number), each as usize)
        })
        .sum();
    println!("{steps} steps, {begun} batches");
    assert!(begun > 0, "no batch was ever begun");
}
