//! A brewer's own past batches with the same yeast: what they make of the end's window when they are taken, and
//! what they cost when one of them had stalled and nobody saw it.

use crate::courses::{Kind, Truth};
use crate::lot::Lot;
use crate::proving::{at_length, quantile};
use crate::reader::{CAREFUL, Log, Reader, TIRED, at, pitched};
use fermentside::advice::family::Family;
use fermentside::advice::own_ends::Ended;
use fermentside::advice::standing::{Next, Standing, State};
use fermentside::quantity::{Measured, SpecificGravity};

/// What one brewer's yeast attenuates from batch to batch, one standard deviation, percent: mash, warmth and
/// what the packet holds (common practice, no source).
const SPREAD: f64 = 1.8;

fn points(sg: SpecificGravity) -> f64 {
    (sg.value() - 1.0) * 1000.0
}

/// A brewer who does it alike each time: the one batch in hand, and where the earlier ones ended as they were read.
struct Brewer {
    truth: Truth,
    own: Vec<Ended>,
}

/// One batch of a yeast that attenuates `percent` with this brewer.
fn brewed(lot: &mut Lot, kind: Kind, percent: f64) -> Truth {
    let truth = Truth::draw(lot, Family::CleanAle, kind, false);
    truth.ending_at(percent + SPREAD * lot.normal())
}

impl Brewer {
    fn draw(lot: &mut Lot, kind: Kind, batches: usize, stuck: usize, reader: Reader) -> Self {
        // As broad as such yeasts are taken to be among all brewers.
        let percent = f64::midpoint(lot.between(71.0, 82.0), lot.between(71.0, 82.0));
        let mut own = vec![];
        for past in 0..batches {
            let truth = brewed(lot, Kind::Logistic, percent);
            let sigma = lot.between(reader.sigma.0, reader.sigma.1).min(1.2);
            let off = 0.5 * lot.normal();
            let mut read = |points: f64| {
                let shown = points + off + sigma * lot.normal();
                SpecificGravity::nearest(1.0 + (shown * 2.0).round() / 2000.0)
            };
            let mut ended = Ended { start: read(truth.start), end: read(truth.end) };
            if past < stuck {
                let high = points(ended.end) + lot.between(2.0, 6.0);
                ended.end = SpecificGravity::nearest(1.0 + high.round() / 1000.0);
            }
            own.push(ended);
        }
        Self { truth: brewed(lot, kind, percent), own }
    }
}

/// What the end's window did at the looks of one batch.
#[derive(Default)]
struct Windows {
    held: Vec<bool>,
    widths: Vec<f64>,
}

impl Windows {
    fn take(&mut self, standing: &Standing, end: f64) {
        let Some(outlook) = &standing.outlook else { return };
        let window = outlook.end.end;
        let (low, high) = (points(window.from), points(window.to));
        self.held.push((low..=high).contains(&end));
        self.widths.push(high - low);
    }

    fn held(&self) -> f64 {
        100.0 * self.held.iter().filter(|held| **held).count() as f64 / self.held.len() as f64
    }

    fn width(&self) -> f64 {
        quantile(self.widths.clone(), 0.5)
    }
}

fn count() -> u64 {
    let wanted = std::env::var("COUNT").ok().and_then(|n| n.parse().ok());
    wanted.unwrap_or(2)
}

/// The looks at a falling beer that has six to one points to go: before that nobody asks, after it the readings
/// tell.
fn windows(reader: Reader, batches: usize, count: u64) -> [Windows; 2] {
    let mut found = [Windows::default(), Windows::default()];
    for seed in 0..count {
        let mut lot = Lot::new(31 + seed * 101 + batches as u64);
        let brewer = Brewer::draw(&mut lot, Kind::Logistic, batches, 0, reader);
        let mut log = Log::new(&brewer.truth, Family::CleanAle, reader, 500 + seed);
        let mut hours = 40.0;
        while hours < 24.0 * 20.0 && brewer.truth.left(hours) > 1.0 {
            log.read(hours);
            if brewer.truth.left(hours) < 16.0 {
                for (windows, own) in found.iter_mut().zip([vec![], brewer.own.clone()]) {
                    log.record.own_ends = own;
                    let standing = Standing::of(&log.record, at(hours));
                    windows.take(&standing, brewer.truth.end);
                }
            }
            hours += 24.0;
        }
    }
    found
}

/// Of a brewer who does it alike each time they make the window narrower, and it holds the end about as often as
/// it says.
#[test]
fn own_batches_narrow_the_end_and_it_still_lies_there() {
    let count = count();
    println!(
        "own batches: looks, the end in its window without and with, its width without and with"
    );
    for (who, reader) in [("careful", CAREFUL), ("tired", TIRED)] {
        for &batches in if at_length() { &[3, 4, 5][..] } else { &[3] } {
            let [without, with] = windows(reader, batches, count);
            let looks = with.held.len();
            println!(
                "{who} {batches}: {looks:4} | {:3.0} {:3.0} % | {:4.1} {:4.1} points",
                without.held(),
                with.held(),
                without.width(),
                with.width(),
            );
            assert!(with.width() < without.width(), "{who} {batches}: no narrower");
            // Looks at one batch are alike, so few batches stray far.
            let stray = 100.0 / (count as f64).sqrt();
            assert!(with.held() > 75.0 - stray, "{who} {batches}: {:.0} %", with.held());
        }
    }
}

/// The first dose of a reader who does what the page says, and what was left then.
fn first_dose(brewer: &Brewer, own: &[Ended], seed: u64) -> Option<f64> {
    let mut log = Log::new(&brewer.truth, Family::CleanAle, CAREFUL, seed);
    log.record.own_ends = own.to_vec();
    let rests = brewer.truth.rests.or_else(|| brewer.truth.one_point()).unwrap_or(0.0);
    let mut hours = 60.0;
    while hours < rests + 24.0 * 18.0 {
        log.read(hours);
        let standing = Standing::of(&log.record, at(hours));
        if standing.state == State::Finished {
            return Some(brewer.truth.left(hours));
        }
        hours = match standing.next {
            Next::ReadAgain(then) | Next::Rouse(then) | Next::LookForSigns(then) => {
                then.since(pitched()).value().max(hours + 12.0)
            }
            _ => hours + 48.0,
        };
    }
    None
}

/// A past batch that had stalled, and was taken for an end, makes the next stall look like one. It must not let
/// more of them over the ceiling than stalls without any past do.
#[test]
fn a_past_batch_that_was_stuck_unseen_lets_no_stall_over_the_ceiling() {
    let count = count();
    println!(
        "own batches, of them stuck: stalled beer over the ceiling, by > 0.7; ale without a dose"
    );
    let all = [(3, 1), (0, 0), (3, 0), (4, 0), (5, 0), (4, 1), (5, 1), (5, 2), (3, 2), (3, 3)];
    for (batches, stuck) in all.into_iter().take(if at_length() { all.len() } else { 1 }) {
        let of = |kind: Kind| {
            (0..count).map(move |seed| {
                let mut lot = Lot::new(7 + seed * 211);
                let brewer = Brewer::draw(&mut lot, kind, batches, stuck, CAREFUL);
                first_dose(&brewer, &brewer.own, 900 + seed)
            })
        };
        let rests: Vec<_> = of(Kind::Rests).collect();
        let over = |most: f64| {
            let over = rests.iter().flatten().filter(|left| **left > most).count();
            100.0 * over as f64 / count as f64
        };
        let never = of(Kind::Logistic).filter(Option::is_none).count();
        println!(
            "{batches} {stuck}: {:4.1} {:4.1} | {:4.1} %",
            over(1.8),
            over(3.2),
            100.0 * never as f64 / count as f64
        );
        let chance = 250.0 / count as f64;
        assert!(stuck > 1 || over(1.8) <= 8.0 + chance, "{batches} {stuck}: {:.1} %", over(1.8));
        assert!(stuck > 1 || over(3.2) <= 1.0 + chance, "{batches} {stuck}: {:.1} %", over(3.2));
    }
}
