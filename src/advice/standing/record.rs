//! What is recorded of a batch, as the judgement wants it.

use crate::advice::bottle::kinds::Bottle;
use crate::advice::family::{Family, Purpose, Span};
use crate::advice::own_ends::Ended;
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Litres, Moment, Plato, SpecificGravity,
};

/// One corrected reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// When.
    pub at: Moment,
    /// The corrected gravity, with one standard deviation by instrument and sample.
    pub gravity: Estimate<SpecificGravity>,
    /// Of the beer, if it was read.
    pub beer: Option<Celsius>,
    /// Which instrument: what is wrong with one is wrong in all of its readings.
    pub instrument: u32,
    /// It was asked about and kept: it may be wrong.
    pub doubtful: bool,
}

/// How a bottle was when it was opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opened {
    /// It gushed, or one burst.
    Gushed,
    /// Flat.
    Flat,
    /// As it should be, or nearly.
    Well,
}

/// All that the judgement stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Readings of the main beer, in any order.
    pub main: Vec<Seen>,
    /// Readings of the satellite, in any order.
    pub satellite: Vec<Seen>,
    /// Gravity at the start, if known.
    pub original: Option<Estimate<SpecificGravity>>,
    /// When the batch was begun.
    pub begun: Moment,
    /// When the yeast went in, if known.
    pub pitched: Option<Moment>,
    /// The yeast.
    pub family: Family,
    /// The packet's own range, which wins.
    pub packet: Option<Span<Celsius>>,
    /// The end that kit or recipe states.
    pub stated_end: Option<SpecificGravity>,
    /// Where own earlier batches with this yeast ended, once the brewer took that as a ground.
    pub own_ends: Vec<Ended>,
    /// What a refractometer showed of the fermenting beer, in any order: it tells no gravity, only whether
    /// there was a change.
    pub refracted: Vec<(Moment, Plato)>,
    /// When something that ferments was last added after the yeast: sugar, fruit.
    pub added: Option<Moment>,
    /// The weakest bottle on hand; sound reusable glass when none is named.
    pub weakest: Option<Bottle>,
    /// The brewer's own target; 2.4 volumes when none is named.
    pub target: Option<CarbonDioxideVolumes>,
    /// In the fermenter, which tells how much of a dose one step of the scale is; 20 L when it is not known.
    pub volume: Option<Litres>,
    /// When it was bottled.
    pub bottled: Option<Moment>,
    /// Bottles that were opened, and when.
    pub opened: Vec<(Moment, Opened)>,
    /// What a gush or a burst asks for was done after it.
    pub made_safe: Option<Moment>,
}

impl Record {
    /// Nothing read yet.
    ///
    /// ```
    /// use fermentside::advice::{family::Family, standing::Record};
    /// use fermentside::quantity::Moment;
    ///
    /// let record = Record::of(Family::Saison, Moment::EPOCH);
    /// assert!(record.main.is_empty() && record.may_go_on());
    /// assert_eq!(record.range(), Family::Saison.ferments_at());
    /// ```
    #[must_use]
    pub const fn of(family: Family, begun: Moment) -> Self {
        Self {
            main: vec![],
            satellite: vec![],
            original: None,
            begun,
            pitched: None,
            family,
            packet: None,
            stated_end: None,
            own_ends: vec![],
            refracted: vec![],
            added: None,
            weakest: None,
            target: None,
            volume: None,
            bottled: None,
            opened: vec![],
            made_safe: None,
        }
    }

    /// The yeast may go on for weeks, or it was fed later: an expected end proves nothing.
    ///
    /// ```
    /// use fermentside::advice::{family::Family, standing::Record};
    /// use fermentside::quantity::Moment;
    ///
    /// assert!(!Record::of(Family::CleanAle, Moment::EPOCH).may_go_on());
    /// ```
    #[must_use]
    pub const fn may_go_on(&self) -> bool {
        self.family.may_go_on() || self.added.is_some()
    }

    /// Of the beer at its last reading, the coldest that was noted.
    ///
    /// ```
    /// use fermentside::advice::{family::Family, standing::Record};
    /// use fermentside::quantity::Moment;
    ///
    /// assert_eq!(Record::of(Family::CleanAle, Moment::EPOCH).beer_at_last(), None);
    /// ```
    #[must_use]
    pub fn beer_at_last(&self) -> Option<Celsius> {
        let last = self.main.iter().map(|seen| seen.at).max()?;
        let at_last = self.main.iter().filter(|seen| seen.at == last);
        at_last.filter_map(|seen| seen.beer).reduce(|a, b| if b < a { b } else { a })
    }

    /// The range the yeast ferments in: the packet's own wins.
    ///
    /// ```
    /// use fermentside::advice::family::{Family, Span};
    /// use fermentside::advice::standing::Record;
    /// use fermentside::quantity::{Celsius, Moment};
    ///
    /// let mut record = Record::of(Family::CleanAle, Moment::EPOCH);
    /// record.packet = Some(Span::new(Celsius::literal(15.0), Celsius::literal(24.0)));
    /// assert_eq!(record.range().from, Celsius::literal(15.0));
    /// ```
    #[must_use]
    pub fn range(&self) -> Span<Celsius> {
        self.family.range_for(Purpose::Fermenting, self.packet)
    }
}
