//! Every state of every step: at most two screens and a half of a phone, nothing too small to touch, nothing
//! wider than the screen even at 400 %, and nothing that keeps anyone out by night.

use serde_json::json;

use crate::brewing::opened;
use crate::cellar::{bitter, but, full, in_bottles, read_as};
use crate::hands::SMALL;
use crate::noticing::lines;
use crate::phone::Phone;
use fermentside::batch::{Entry, Id, Vessel};
use fermentside::quantity::Celsius;

/// No step is longer than so many screens of 390 x 844.
const MOST: f64 = 2.5;

/// In the page: what is written in a picture and is larger than it is meant to be.
const GROWN: &str = "
  return [...document.querySelectorAll('svg text')].filter((t) => t.checkVisibility() && t.getScreenCTM().a > 1.02)
    .map((t) => `${t.textContent} is ${t.getScreenCTM().a.toFixed(2)} times as large as it was drawn`);";

/// A walk over states, and what was wrong at them.
struct Walk {
    phone: Phone,
    wrong: Vec<String>,
}

impl Walk {
    async fn of(phone: Phone) -> Self {
        phone.stands_still().await;
        phone.by_night().await;
        phone.screen(390, 844).await;
        Self { phone, wrong: vec![] }
    }

    /// Looks at the state that is on the screen.
    async fn look(&mut self, state: &str) {
        self.look_at_most(state, MOST).await;
    }

    async fn look_at_most(&mut self, state: &str, most: f64) {
        let phone = &self.phone;
        phone.screen(390, 844).await;
        phone.run("scrollTo(0, 0)").await;
        phone.draws().await;
        let long = "return document.documentElement.scrollHeight / 844";
        let screens = phone.run(long).await.as_f64().unwrap_or(f64::INFINITY);
        println!("{state}: {screens:.2}");
        if screens > most {
            phone.screen(390, 3600).await;
            phone.screenshot(&format!("states/{}", state.replace(['/', '#', ' '], "-"))).await;
            phone.screen(390, 844).await;
            self.wrong.push(format!("{state}: {screens:.2} screens"));
        }
        let small = lines(&phone.run(SMALL).await);
        let grown = lines(&phone.run(GROWN).await);
        phone.all_in_sight().await;
        let barriers = phone.barriers().await;
        phone.screen(320, 200).await;
        let by = phone.sideways_scroll().await;
        // What sticks leaves at least half of so low a screen.
        let stuck = "return [...document.querySelectorAll('body *')].filter((e) =>
              ['fixed', 'sticky'].includes(getComputedStyle(e).position) && e.checkVisibility())
            .reduce((sum, e) => sum + e.getBoundingClientRect().height, 0)";
        let stuck = phone.run(stuck).await.as_f64().unwrap_or(f64::INFINITY);
        phone.screen(390, 844).await;
        self.wrong.extend(
            small.iter().chain(&grown).chain(&barriers).map(|line| format!("{state}: {line}")),
        );
        if by > 0 {
            self.wrong.push(format!("{state}: {by} pixels too wide at 320"));
        }
        if stuck > 100.0 {
            self.wrong.push(format!("{state}: {stuck} of 200 pixels stick"));
        }
    }

    /// Goes to a place and looks.
    async fn at(&mut self, place: &str, state: &str) {
        self.phone.go(place).await;
        self.look(state).await;
    }

    /// Taps what bears these words and looks.
    async fn tap(&mut self, words: &str, state: &str) {
        self.phone.tap(words).await;
        self.look(state).await;
    }

    async fn ends(self) {
        assert_eq!(self.wrong, Vec::<String>::new());
        self.phone.is_well().await;
    }
}

const STUCK: [(f64, f64); 5] =
    [(13.0, 1.050), (10.0, 1.030), (7.0, 1.020), (3.0, 1.020), (0.05, 1.020)];

/// These things after three batches with the same yeast.
fn after_three(these: Vec<(Id, Entry)>) -> Vec<(Id, Entry)> {
    [in_bottles("porter", 60.0), in_bottles("mild", 40.0), in_bottles("stout", 20.0), these]
        .concat()
}

#[tokio::test]
async fn now_and_watch_in_every_state() {
    let (_server, phone) = opened().await;
    let mut walk = Walk::of(phone).await;
    walk.at("#/now", "Now, nothing brewed").await;
    let satellite = but(read_as("b", 5.0, &[(3.0, 1.012), (2.0, 1.012)]), |reading| {
        reading.vessel = Vessel::Satellite;
    });
    let jar = satellite
        .into_iter()
        .map(|(id, entry)| (crate::records::id(&format!("{}-jar", id.as_str())), entry));
    let jar: Vec<_> = jar.skip(2).collect();
    let cold = but(bitter("b", 4.0, 5), |reading| reading.beer = Some(Celsius::literal(9.0)));
    let doubted =
        but(read_as("b", 13.0, &STUCK), |reading| reading.doubtful = reading.typed == "1.030");
    let states = [
        ("3 readings", bitter("b", 4.0, 3)),
        ("12 readings", bitter("b", 9.0, 12)),
        ("60 readings", bitter("b", 20.0, 60)),
        ("finished", bitter("b", 30.0, 12)),
        ("stuck", doubted),
        ("too cold", cold),
        ("pitched just now", bitter("b", 0.05, 1)),
        ("no gravity", bitter("b", 2.5, 0)),
        ("a satellite", bitter("b", 5.0, 5).into_iter().chain(jar).collect()),
        ("own ends offered", after_three(bitter("b", 4.0, 5))),
        ("a full cellar", full()),
    ];
    for (state, entries) in states {
        walk.phone.holds(entries).await;
        walk.at("#/now", &format!("Now, {state}")).await;
        walk.at("#/batch/b/watch", &format!("Watch, {state}")).await;
        if walk.phone.count(".reading-form").await == 0 {
            walk.tap("Add a reading", &format!("a reading, {state}")).await;
        }
        // As odd as can be: it is asked about.
        walk.phone.type_into("Hydrometer reads", "1.062").await;
        walk.phone.type_into("Sample temperature", "20").await;
        walk.tap("Save the reading", &format!("a reading saved or asked about, {state}")).await;
    }
    walk.ends().await;
}

#[tokio::test]
async fn pitching_at_each_step() {
    let (_server, phone) = opened().await;
    let mut walk = Walk::of(phone).await;
    walk.phone.holds(full()).await;
    walk.at("#/batch/w/pitch", "Pitch").await;
    walk.phone.type_into("Wort now", "31").await;
    walk.phone.type_into("Water at hand", "8").await;
    walk.look("Cool, too warm").await;
    walk.phone.type_into("Wort now", "19").await;
    walk.look("Cool").await;
    walk.tap("Next", "Gravity").await;
    walk.phone.type_into("Hydrometer reads", "1.048").await;
    walk.phone.type_into("Sample temperature", "24").await;
    walk.look("Gravity, read").await;
    walk.tap("Next", "Yeast").await;
    walk.phone.tap_at(".choice-one").await;
    walk.look("Yeast, told").await;
    walk.tap("Next", "Satellite").await;
    walk.tap("Skip", "Air").await;
    walk.tap("Skip", "Place").await;
    walk.phone.type_into("Room where it will stand", "27").await;
    walk.look("Place, too warm").await;
    walk.tap("Next", "The yeast goes in").await;
    walk.phone.tap("The yeast is in").await;
    walk.phone.sees("Pitching saved").await;
    walk.look("Pitched").await;
    // A day of pitching after three with the same yeast.
    let cooling = full().into_iter().skip_while(|(id, _)| id.as_str() != "w");
    walk.phone.holds(after_three(cooling.collect())).await;
    walk.phone.go("#/batch/w/pitch").await;
    walk.phone.tap("Gravity").await;
    walk.phone.type_into("Hydrometer reads", "1.048").await;
    walk.phone.type_into("Sample temperature", "20").await;
    walk.phone.tap("Yeast").await;
    walk.phone.sees("Take that as the expected end").await;
    walk.look("Yeast, own ends offered").await;
    walk.tap("Take that as the expected end", "Yeast, own ends taken").await;
    walk.ends().await;
}

#[tokio::test]
async fn bottling_in_every_state() {
    let (_server, phone) = opened().await;
    let mut walk = Walk::of(phone).await;
    walk.phone.holds(bitter("b", 3.0, 4)).await;
    walk.at("#/batch/b/bottle", "Bottle, still falling").await;
    walk.phone.type_into("Beer to bottle", "19").await;
    walk.phone.choose("Weakest bottle", "Thin").await;
    walk.phone.type_into("Warmest since it ended", "20").await;
    walk.look("Bottle, no dose").await;
    walk.tap("It has finished", "Bottle, on the brewer's word").await;
    walk.phone.holds(read_as("b", 13.0, &STUCK)).await;
    walk.at("#/batch/b/bottle", "Bottle, stuck").await;
    walk.phone.holds(bitter("b", 30.0, 12)).await;
    walk.at("#/batch/b/bottle", "Bottle, finished").await;
    walk.phone.type_into("Beer to bottle", "19").await;
    walk.phone.type_into("Warmest since it ended", "20").await;
    walk.phone.choose("Weakest bottle", "Sound").await;
    walk.look("Bottle, a dose").await;
    walk.tap("What if", "Bottle, what if").await;
    walk.phone.tap("What if").await;
    walk.tap("Weighed, filled", "Bottle, what was done").await;
    walk.phone.tap("Weighed, filled").await;
    walk.tap("Assumed", "Bottle, what is assumed").await;
    walk.phone.type_into("Carbonation", "3.4").await;
    walk.phone.tap("Assumed").await;
    walk.look("Bottle, too much for the glass").await;
    walk.tap("Less fizz", "Bottle, less fizz").await;
    walk.tap("Yes", "Bottle, chilled").await;
    walk.phone.type_into("Coldest it got", "2").await;
    walk.look("Bottle, chilled, not sure").await;
    walk.tap("Closed tight", "Bottle, chilled and closed").await;
    walk.tap("Under an airlock", "Bottle, chilled under an airlock").await;
    walk.phone.tap("It is bottled").await;
    walk.phone.sees("In the bottle").await;
    walk.look("Bottled").await;
    walk.at("#/batch/b/watch", "Watch, bottled").await;
    walk.ends().await;
}

#[tokio::test]
async fn opening_at_each_word() {
    let (_server, phone) = opened().await;
    let mut walk = Walk::of(phone).await;
    walk.phone.holds(full()).await;
    walk.at("#/batch/b/open", "Open, not bottled").await;
    let words = ["1 flat", "2 little", "3 right", "4 much", "5 gushes", "It burst by itself"];
    for days in [5.0, 25.0] {
        let name = |at: usize| format!("o{at}");
        walk.phone.holds((0..6).flat_map(|at| in_bottles(&name(at), days)).collect()).await;
        for (at, word) in words.into_iter().enumerate() {
            walk.at(&format!("#/batch/{}/open", name(at)), &format!("Open after {days} days"))
                .await;
            walk.phone.tap(word).await;
            walk.phone.tap("Save").await;
            walk.phone.sees("Bottle noted").await;
            walk.look(&format!("Open, {word} after {days} days")).await;
        }
    }
    walk.at("#/now", "Now, one burst").await;
    walk.at("#/batch/o5/bottle", "Bottle, one burst").await;
    walk.phone.go("#/batch/o5/open").await;
    walk.phone.tap("Something is wrong").await;
    walk.tap("All of them gush", "Open, one burst and they gush").await;
    walk.phone.holds(in_bottles("o", 25.0)).await;
    walk.phone.go("#/batch/o/open").await;
    walk.phone.tap("Something is wrong").await;
    for seen in ["One has burst", "Some gush", "All are flat", "Some are flat"] {
        walk.tap(seen, &format!("Open, {seen}")).await;
    }
    walk.ends().await;
}

#[tokio::test]
async fn sums_lists_and_gear_in_every_state() {
    let (_server, phone) = opened().await;
    let mut walk = Walk::of(phone).await;
    for place in ["#/batches", "#/batches/new", "#/bench", "#/gear"] {
        walk.at(place, &format!("{place}, nothing brewed")).await;
    }
    let sums: [(&str, &[(&str, &str)]); 5] = [
        ("gravity", &[("Hydrometer reads", "1.048"), ("Sample temperature", "31")]),
        ("strength", &[("Starting gravity (OG)", "1.050"), ("Gravity now", "1.010")]),
        ("scales", &[("Gravity", "1.050")]),
        ("yeast", &[("Wort", "20"), ("Gravity", "1.048")]),
        (
            "cooling",
            &[
                ("Wort now", "30"),
                ("How much wort", "15"),
                ("Its gravity", "1.060"),
                ("Water to add", "8"),
            ],
        ),
    ];
    for (sum, fields) in sums {
        walk.at(&format!("#/bench/{sum}"), &format!("{sum}, empty")).await;
        for (field, text) in fields {
            walk.phone.type_into(field, text).await;
        }
        walk.look(sum).await;
    }
    walk.at("#/bench/sugar", "sugar, empty").await;
    walk.phone.type_into("Beer to bottle", "19").await;
    walk.phone.type_into("Warmest since it ended", "20").await;
    walk.phone.choose("Weakest bottle", "Sound").await;
    walk.phone.type_into("It read the same twice", "1.010").await;
    walk.phone.type_into("Days between them", "4").await;
    walk.phone.type_into("Days since pitching", "14").await;
    walk.phone.type_into("Starting gravity (OG)", "1.048").await;
    walk.look("sugar").await;
    walk.phone.holds(full()).await;
    for place in ["#/batches", "#/gear", "#/batch/b/edit"] {
        walk.at(place, place).await;
    }
    walk.phone.differs(full(), "Cellar best").await;
    walk.phone.go("#/gear").await;
    walk.phone.sees("Cellar best").await;
    // Seldom, and above all else that stands there.
    walk.look_at_most("Gear, two versions", 3.2).await;
    assert_eq!(
        walk.phone.run("return document.documentElement.dataset.stopped ?? ''").await,
        json!("")
    );
    walk.ends().await;
}
