//! How warm beer makes itself, and how much gas it gives off.
//!
//! ΔT = heat rate ÷ UA, the heat rate from a standard course of the extract fermented: a logistic in
//! time, warm or cold (common practice, no source). It is no forecast of a batch, only of its warmth;
//! the beer's own slowness to warm (some hours) is left out.

use super::carbon_dioxide::GRAMS_PER_VOLUME;
use super::heat::{OF_FERMENTATION_KJ_PER_G, heat_capacity};
use super::yeast::Pitching;
use super::{Amount, ScienceError, Source, Term, Worked, sucrose};
use crate::quantity::{
    Celsius, Estimate, Grams, Hours, Litres, Measured, Plato, Share, SpecificGravity,
    TemperatureChange,
};

/// Heat of fermentation in print, kJ a gram: least and most.
const HEAT: (f64, f64) = (0.56, 0.65);
/// Grams of carbon dioxide a gram of extract (Balling 1865: 0.9565 from 2.0665).
const GAS: f64 = 0.9565 / 2.0665;
/// How much quicker or slower a batch may go than the standard course (common practice, no source).
const PACE: f64 = 1.25;
/// Days of the course that are shown.
const DAYS: u32 = 14;

crate::choices! {
    /// What the beer stands in. The stored names never change.
    pub enum Vessel {
        /// A plastic bucket of 20 to 25 L in still air.
        Bucket = "bucket",
        /// Glass of that size in still air.
        Glass = "glass",
        /// Either, wrapped.
        Insulated = "insulated",
        /// Either, standing in a tub of water.
        WaterTub = "water_tub",
    }
}

impl Vessel {
    /// Heat lost for each degree, W/K, least and most, for 23 L. The bucket is the usual figure; the
    /// others are set beside it (no source): thin glass a little more, a blanket about half, water
    /// several times as much.
    const fn loss(self) -> (f64, f64) {
        match self {
            Self::Bucket => (2.0, 3.0),
            Self::Glass => (2.2, 3.4),
            Self::Insulated => (0.8, 1.5),
            Self::WaterTub => (6.0, 12.0),
        }
    }
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FermentingBeer {
    /// Beer in the vessel.
    pub volume: Litres,
    /// Gravity at the start.
    pub original: SpecificGravity,
    /// Gravity it will end at.
    pub end: SpecificGravity,
    /// Fermented warm or cold.
    pub pitching: Pitching,
    /// The vessel.
    pub vessel: Vessel,
    /// Of the air or water around it.
    pub room: Celsius,
}

/// One day of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Day {
    /// Since pitching, its middle.
    pub at: Hours,
    /// Coolest that is likely.
    pub from: Celsius,
    /// The best value.
    pub likely: Celsius,
    /// Warmest that is likely.
    pub to: Celsius,
}

/// The warmth and the gas of one fermentation.
#[derive(Clone, Debug, PartialEq)]
pub struct SelfHeating {
    /// The beer, day by day from pitching.
    pub days: Vec<Day>,
    /// How far over the room it gets at the height, with one standard deviation.
    pub rise: Estimate<TemperatureChange>,
    /// Most it may rise over the room.
    pub rise_at_most: TemperatureChange,
    /// When that is, since pitching.
    pub peak: Hours,
    /// Extract that ferments.
    pub extract: Grams,
    /// Gas given off in all, litres at the room's temperature and 1 atm.
    pub gas: Litres,
    /// Gas in the busiest day.
    pub gas_in_busiest_day: Litres,
    /// How it was worked out.
    pub worked: Worked,
}

/// Middle of the course and its scale, days: warm is half done after two days, cold after five.
const fn course(pitching: Pitching) -> (f64, f64) {
    match pitching {
        Pitching::Warm => (2.0, 0.45),
        Pitching::Cold => (5.0, 1.2),
    }
}

/// Share of the extract that has fermented after some time by the standard course.
///
/// ```
/// use fermentside::quantity::{Hours, Share};
/// use fermentside::science::{self_heating::fermented, yeast::Pitching};
///
/// assert_eq!(fermented(Pitching::Warm, Hours::literal(48.0)), Share::literal(0.5));
/// ```
#[must_use]
pub fn fermented(pitching: Pitching, after: Hours) -> Share {
    let (middle, scale) = course(pitching);
    Share::nearest(1.0 / (1.0 + (-(after.days() - middle) / scale).exp()))
}

/// Share that ferments in a day, `days` after pitching, at a pace.
fn rate(pitching: Pitching, days: f64, pace: f64) -> f64 {
    let (middle, scale) = course(pitching);
    let x = (days * pace - middle) / scale;
    // The hyperbolic form cannot overflow.
    pace / (4.0 * scale * (0.5 * x).cosh().powi(2))
}

/// How warm the beer will be and how much gas it will give.
///
/// Extract fermented is the fall in real extract, (OE − AE)(0.814 + 0.00086 OE) % of the wort's mass.
/// The heat lost grows with the surface, so UA is scaled by (V ÷ 23 L)^⅔. No rise is larger than that of
/// all the heat at once with none lost.
///
/// ```
/// use fermentside::quantity::{Celsius, Litres, SpecificGravity};
/// use fermentside::science::self_heating::{FermentingBeer, Vessel, self_heating};
/// use fermentside::science::{ScienceError, yeast::Pitching};
///
/// let [original, end] = [1.050, 1.010].map(SpecificGravity::literal);
/// let (volume, room) = (Litres::literal(20.0), Celsius::literal(20.0));
/// let (pitching, vessel) = (Pitching::Warm, Vessel::Bucket);
/// let ale = FermentingBeer { volume, original, end, pitching, vessel, room };
/// assert!(self_heating(ale)?.gas > Litres::literal(400.0));
/// let risen = FermentingBeer { original: end, end: original, ..ale };
/// assert_eq!(self_heating(risen), Err(ScienceError::RisingGravity));
/// # Ok::<(), ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no beer; [`ScienceError::RisingGravity`] for an end above the
/// start; [`ScienceError::Temperature`] for a room outside 0 to 100 °C; [`ScienceError::OutOfRange`] for more than can be.
pub fn self_heating(beer: FermentingBeer) -> Result<SelfHeating, ScienceError> {
    let litres = beer.volume.value();
    if litres <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let [oe, ae] = [beer.original, beer.end].map(|sg| sucrose::plato(sg).value());
    if ae > oe {
        return Err(ScienceError::RisingGravity);
    }
    let share = (oe - ae) * (0.814 + 0.000_86 * oe) / 100.0;
    let mass = litres * sucrose::rho(oe / 100.0, 20.0);
    let extract = share * mass;
    let size = (litres / 23.0).powf(2.0 / 3.0);
    let (low, high) = beer.vessel.loss();
    let (low, high) = (low * size, high * size);
    let capacity = mass / 1000.0 * heat_capacity(Plato::nearest(oe), beer.room)?.value();
    // kJ a day for each W/K; and never more than all the heat at once could do with none lost.
    let rise = |per_day: f64, heat: f64, loss: f64| {
        (extract * heat * per_day / (86.4 * loss)).min(extract * heat / capacity)
    };
    let middle_loss = 0.5 * (low + high);
    let pitching = beer.pitching;
    let room = beer.room;
    let warm = |by: f64| Celsius::new(room.value() + by);
    let days = (0..DAYS)
        .map(|day| {
            let at = f64::from(day) + 0.5;
            let rates = [1.0 / PACE, 1.0, PACE].map(|pace| rate(pitching, at, pace));
            let least = rates.iter().copied().fold(f64::INFINITY, f64::min);
            let most = rates.iter().copied().fold(0.0, f64::max);
            Ok(Day {
                at: Hours::new(24.0 * at)?,
                from: warm(rise(least, HEAT.0, high))?,
                likely: warm(rise(rates[1], OF_FERMENTATION_KJ_PER_G, middle_loss))?,
                to: warm(rise(most, HEAT.1, low))?,
            })
        })
        .collect::<Result<Vec<_>, ScienceError>>()?;
    let (middle, scale) = course(pitching);
    let height = 1.0 / (4.0 * scale);
    let likely = rise(height, OF_FERMENTATION_KJ_PER_G, middle_loss);
    let at_most = rise(PACE * height, HEAT.1, low);
    let busiest = (0.25 / scale).tanh();
    let gas = extract * GAS / GRAMS_PER_VOLUME * room.kelvin() / Celsius::ZERO_IN_KELVIN;
    let peak = Hours::new(24.0 * middle)?;
    let extract = Grams::new(extract)?;
    let (all, day) = (Litres::new(gas)?, Litres::new(gas * busiest)?);
    let watts = extract.value() * OF_FERMENTATION_KJ_PER_G * height / 86.4;
    let worked = Worked::default()
        .input(Term::BeerVolume, beer.volume)
        .input(Term::OriginalGravity, beer.original)
        .input(Term::FinalGravity, beer.end)
        .input(Term::RoomTemperature, room)
        .input(Term::HeatLoss, Amount::Number(middle_loss, 1, "W/K"))
        .step(
            Term::ExtractFermented,
            extract,
            "(OE − AE)(0.814 + 0.00086 OE) % × mass",
            Source::SpeersQuotient,
        )
        .step(
            Term::HeatRate,
            Amount::Number(watts, 1, "W"),
            "0.586 kJ/g × extract × busiest share of a day ÷ 86.4",
            Source::CommonPractice,
        )
        .step(
            Term::RiseOverRoom,
            Amount::Number(likely, 1, "°C"),
            "heat rate ÷ UA",
            Source::HeatBalance,
        )
        .step(
            Term::GasMade,
            all,
            "0.4629 g/g × extract, as gas at the room's temperature",
            Source::Balling1865,
        )
        .step(Term::GasBusiestDay, day, "× tanh(1 day ÷ 4 s)", Source::CommonPractice)
        .doubt(Term::HeatLoss, likely * (high - low) / (2.0 * middle_loss))
        .doubt(Term::HeatRate, likely * (PACE - 1.0))
        .doubt(Term::ModelError, likely * (HEAT.1 - HEAT.0) / (2.0 * OF_FERMENTATION_KJ_PER_G));
    Ok(SelfHeating {
        days,
        rise: Estimate::new(TemperatureChange::new(likely)?, worked.sigma()),
        rise_at_most: TemperatureChange::new(at_most)?,
        peak,
        extract,
        gas: all,
        gas_in_busiest_day: day,
        worked,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn usual(pitching: Pitching, vessel: Vessel) -> SelfHeating {
        self_heating(FermentingBeer {
            volume: Litres::literal(20.0),
            original: SpecificGravity::literal(1.050),
            end: SpecificGravity::literal(1.010),
            pitching,
            vessel,
            room: Celsius::literal(20.0),
        })
        .expect("in range")
    }

    #[test]
    fn a_common_ale_gives_the_gas_it_is_known_for() {
        // About 430 L in all and up to about 200 L in the busiest day (worked by hand).
        let found = usual(Pitching::Warm, Vessel::Bucket);
        assert!((400.0..450.0).contains(&found.gas.value()), "{found:?}");
        assert!((180.0..230.0).contains(&found.gas_in_busiest_day.value()), "{found:?}");
    }

    #[test]
    fn a_bucket_rises_by_one_to_five_degrees_and_lager_by_less() {
        let ale = usual(Pitching::Warm, Vessel::Bucket);
        assert!((1.5..4.0).contains(&ale.rise.value().value()), "{:?}", ale.rise);
        assert!(ale.rise_at_most.value() < 6.0, "{:?}", ale.rise_at_most);
        let lager = usual(Pitching::Cold, Vessel::Bucket);
        assert!(lager.rise.value() < ale.rise.value() && lager.peak > ale.peak);
        let tub = usual(Pitching::Warm, Vessel::WaterTub);
        let wrapped = usual(Pitching::Warm, Vessel::Insulated);
        assert!(tub.rise.value() < ale.rise.value() && wrapped.rise.value() > ale.rise.value());
    }

    #[test]
    fn the_band_is_in_order_and_the_whole_course_is_there() {
        for pitching in [Pitching::Warm, Pitching::Cold] {
            let found = usual(pitching, Vessel::Bucket);
            for day in &found.days {
                assert!(day.from <= day.likely && day.likely <= day.to, "{day:?}");
            }
            let warmest =
                found.days.iter().max_by(|a, b| a.likely.value().total_cmp(&b.likely.value()));
            let warmest = warmest.expect("days").at;
            assert!((warmest.days() - found.peak.days()).abs() <= 0.5);
            assert!(fermented(pitching, Hours::literal(24.0 * 14.0)).value() > 0.99);
            assert!(fermented(pitching, Hours::literal(0.0)).value() < 0.02);
        }
    }
}
