//! How a batch stands, from its record: what the judgement is given.

use super::entry::{Entry, Kind};
use super::journal::Journal;
use super::line::ReadingLine;
use super::record::Vessel;
use super::summary::Summary;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::weakest;
use crate::advice::standing::{Opened, Record, Seen};

/// Fizz of a flat bottle, on the scale of one to five.
pub(super) const FLAT: u8 = 1;

impl Journal {
    /// The weakest bottle on hand that is made for pressure; `None` where none is entered.
    pub(super) fn weakest_on_hand(&self) -> Option<Bottle> {
        let usable = |entry: &Entry| match entry {
            Entry::Bottles(item) if item.bottles.class.ceiling(false).is_some() => {
                Some(item.bottles)
            }
            _ => None,
        };
        let all = self.gear(Kind::Bottles).filter_map(|(_, entry)| usable(entry));
        weakest(&all.collect::<Vec<_>>())
    }
}

impl Summary {
    /// What is recorded, as the judgement wants it.
    #[must_use]
    pub fn record(&self) -> Record {
        // What is wrong with one hydrometer is wrong in all of its readings: each has a number.
        let mut known = Vec::new();
        let mut number = |line: &ReadingLine| {
            let id = &line.reading.hydrometer;
            let at = known.iter().position(|other| other == id).unwrap_or(known.len());
            if at == known.len() {
                known.push(id.clone());
            }
            u32::try_from(at).unwrap_or(0)
        };
        let mut seen = |vessel: Vessel| -> Vec<Seen> {
            let of_vessel = self.lines.iter().filter(|line| line.reading.vessel == vessel);
            let one = |line: &ReadingLine| {
                Some(Seen {
                    at: line.reading.at,
                    gravity: line.gravity()?,
                    beer: line.reading.beer,
                    instrument: number(line),
                    doubtful: line.reading.doubtful,
                })
            };
            of_vessel.filter_map(one).collect()
        };
        let (main, satellite) = (seen(Vessel::Main), seen(Vessel::Satellite));
        let bottling = self.bottling.as_ref().map(|(_, record)| record);
        // What was never bottled cannot have been opened.
        let opened = self.openings.iter().filter(|_| bottling.is_some()).map(|(_, opening)| {
            let how = match opening.fizz {
                _ if opening.burst => Opened::Gushed,
                fizz if fizz.gushed() => Opened::Gushed,
                fizz if fizz.value() == FLAT => Opened::Flat,
                _ => Opened::Well,
            };
            (opening.at, how)
        });
        Record {
            main,
            satellite,
            original: self.original,
            begun: self.heading.started,
            pitched: self.pitch.as_ref().map(|(_, pitch)| pitch.at),
            family: self.heading.family,
            packet: self.heading.packet,
            stated_end: self.heading.expected_end,
            own_ends: self.heading.own_ends.clone(),
            refracted: self.refracted.clone(),
            added: self.added,
            weakest: bottling.map(|record| record.weakest).or(self.on_hand),
            target: bottling.map(|record| record.target).or(self.heading.target),
            volume: Some(self.noted_volume()),
            bottled: bottling.map(|record| record.at),
            opened: opened.collect(),
            made_safe: bottling.and_then(|record| record.made_safe.as_ref()).map(|safe| safe.at),
        }
    }
}
