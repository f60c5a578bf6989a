//! The brewer's own earlier batches with the same yeast: where each ended, by its log.

use super::journal::Journal;
use super::record::{BatchHeading, Vessel};
use super::summary::Summary;
use crate::advice::family::Family;
use crate::advice::own_ends::{Ended, Yeast, ended_at, offered, same};
use crate::order::in_order;
use crate::quantity::Moment;
use std::rc::Rc;

impl BatchHeading {
    /// What was taken from own earlier batches, for as long as the yeast is of the same kind.
    #[must_use]
    pub fn own_ends_with(&self, family: Family) -> Vec<Ended> {
        if family == self.family { self.own_ends.clone() } else { vec![] }
    }
}

impl Journal {
    /// Whether a batch is in bottles and of that kind of yeast: only those can tell of another one.
    #[must_use]
    pub fn bottled_with(&self, family: Family) -> Vec<super::id::Id> {
        let of = self.batches().filter(|(id, heading)| {
            heading.family == family && self.log(id).is_some_and(|log| log.bottling().is_some())
        });
        of.map(|(id, _)| id.clone()).collect()
    }
}

impl Summary {
    /// What the packet of its yeast was called, as it was noted at pitching.
    #[must_use]
    pub fn packet(&self) -> &str {
        self.pitch.as_ref().map_or("", |(_, pitch)| pitch.product.as_str())
    }

    /// Where it started and ended, and when it was bottled, if that can tell of another batch: its start was
    /// read or weighed, nothing was added later, it was bottled as finished by its readings, and no bottle has
    /// gushed or burst since.
    #[must_use]
    pub fn ended(&self) -> Option<(Moment, Ended)> {
        let (_, bottling) = self.bottling.as_ref()?;
        let start = self.original.filter(|_| self.original_was_read)?.value();
        let by_word = !bottling.went_on_because.is_empty();
        let gushed = self.openings.iter().any(|(_, one)| one.burst || one.fizz.gushed());
        if by_word || gushed || self.may_go_on() {
            return None;
        }
        let of_beer = self.lines.iter().filter(|line| {
            let reading = &line.reading;
            reading.vessel == Vessel::Main && !reading.doubtful && reading.at <= bottling.at
        });
        let read = of_beer.filter_map(|line| Some((line.reading.at, line.gravity()?.value())));
        let end = ended_at(&read.collect::<Vec<_>>())?;
        Some((bottling.at, Ended { start, end }))
    }

    /// Where earlier batches with yeast of the same kind, and of that packet where it has a name, ended, the latest
    /// first.
    #[must_use]
    pub fn ends_with(&self, packet: &str, others: &[Rc<Self>]) -> Vec<Ended> {
        let family = self.heading.family;
        let earlier = others.iter().filter(|other| {
            let its = Yeast { family: other.heading.family, packet: other.packet() };
            other.id != self.id && same(Yeast { family, packet }, its)
        });
        let ends = earlier.filter_map(|other| other.ended()).collect();
        let latest_first = in_order(ends, |a: &(Moment, Ended), b| b.0.cmp(&a.0));
        latest_first.into_iter().map(|(_, ended)| ended).collect()
    }

    /// What these offer to this one as its expected end; nothing where it is bottled, or where no end can be
    /// expected.
    #[must_use]
    pub fn own_ends(&self, packet: &str, others: &[Rc<Self>]) -> Vec<Ended> {
        if self.bottling.is_some() || self.may_go_on() {
            return vec![];
        }
        offered(self.ends_with(packet, others))
    }
}
