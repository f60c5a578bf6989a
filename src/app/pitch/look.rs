//! What cannot be read, or is missing, step by step.

use super::day::Day;
use crate::advice::pitch::steps::Step;
use crate::app::ask::Wrong;
use crate::quantity::ReadError;
use crate::science::kit_gravity::Fermentable;

/// A sample's temperature alone is half a reading.
pub fn is_half(day: &Day) -> bool {
    day.sample_at.value.is_ok() && day.sample.value == Err(ReadError::Empty)
}

/// Marks every field of a step that cannot be read or is missing, from the top of the screen down.
pub fn look_at(step: Step, day: &Day, wrong: &mut Wrong) {
    match step {
        Step::Cool => {
            wrong.optional(&day.wort);
            wrong.optional(&day.water);
            wrong.optional(&day.ice);
            wrong.optional(&day.volume);
            wrong.optional(&day.vessel_holds);
            wrong.optional(&day.round.at);
            wrong.optional(&day.round.tub);
            wrong.optional(&day.earlier);
            wrong.optional(&day.between);
        }
        Step::Gravity => {
            if is_half(day) {
                wrong.mark(&day.sample.part.name);
            } else {
                wrong.optional(&day.sample);
            }
            wrong.optional(&day.sample_at);
            for row in day.rows.iter().filter(|row| row.kind.value.is_some()) {
                wrong.demand(&row.mass);
                if row.kind.value == Some(Fermentable::Own) {
                    wrong.demand(&row.share);
                } else {
                    wrong.optional(&row.share);
                }
            }
            wrong.optional(&day.added);
            wrong.optional(&day.ice_added);
        }
        Step::Yeast => {
            wrong.optional(&day.sachet);
            wrong.optional(&day.yeast);
        }
        Step::Satellite => {}
        Step::Air => {
            wrong.optional(&day.aerated);
        }
        Step::Place => {
            wrong.optional(&day.room);
            wrong.optional(&day.vessel_holds);
            wrong.optional(&day.room_size);
        }
        Step::In => {
            wrong.demand(&day.at);
        }
    }
}
