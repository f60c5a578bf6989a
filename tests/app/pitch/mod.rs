//! Pitching day.

mod day;
mod judged;
mod order;
mod steps;

use crate::paper::{Paper, Shelf, brewing_day};
use crate::told::told;
use fermentside::advice::family::Family;
use fermentside::app::{Keeper, Part, Screen};
use fermentside::batch::{BatchHeading, Change, Entry, HydrometerItem, Id};
use fermentside::quantity::{Litres, Zone};
use fermentside::store::Token;

fn batch() -> Id {
    Id::new("b1").expect("an identity")
}

/// A phone with one batch, at its Pitch.
fn pitching() -> Paper {
    pitching_with(Family::EnglishAle)
}

/// The same with another yeast.
fn pitching_with(family: Family) -> Paper {
    let heading = BatchHeading {
        name: "Cellar bitter".to_owned(),
        started: brewing_day(),
        volume: Litres::literal(20.0),
        family,
        hydrometer: HydrometerItem::usual_id(),
        packet: None,
        expected_start: None,
        expected_end: None,
        target: None,
        own_ends: vec![],
    };
    let shelf = Shelf::default();
    let mut keeper = Keeper::new(shelf.clone());
    let change = Change::put(batch(), Entry::Batch(heading));
    keeper.load().expect("it is empty");
    keeper.save(1, (&change, &change), brewing_day(), &mut || Token::from_random([7; 8]));
    let mut phone = Paper::with(shelf, brewing_day(), Zone::fixed(60), 1);
    phone.go("#/batch/b1/pitch");
    phone
}

/// What stands at Pitch, below the head of the batch.
fn stage(phone: &Paper) -> String {
    let of_stage =
        |part: &Part| ["pitch/", "pitched/"].iter().any(|scope| part.name.starts_with(scope));
    let main = phone.screen().main.into_iter().filter(of_stage).collect();
    told(&Screen { main, ..Screen::default() })
}
