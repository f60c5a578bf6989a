//! Quantities in the brewer's units, as text.

use super::Words;
use crate::batch::Units;
use crate::quantity::{
    AlcoholByVolume, Attenuation, CarbonDioxideVolumes, Celsius, GasUnit, Grams, Gravity,
    GravityUnit, Hours, Litres, MassUnit, Measured, Metres, Moment, Plato, SpecificGravity,
    TemperatureUnit, Unit, VolumeUnit, Zone, write, write_gravity, write_number,
};
use crate::science::sucrose;

const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/// Writes in the brewer's units and language, by the clock of the phone.
#[derive(Clone, Copy, Debug)]
pub struct Writer<'a> {
    /// The units.
    pub units: Units,
    /// The texts.
    pub words: &'static Words,
    /// The clock.
    pub zone: &'a Zone,
}

impl Writer<'_> {
    /// A moment that lies ahead, by the clock that the phone will show then.
    pub fn ahead(self, at: Moment) -> String {
        moment(self.zone.shown(at))
    }

    /// The day of a moment that lies ahead.
    pub fn day_ahead(self, at: Moment) -> String {
        day(self.zone.shown(at))
    }

    /// A temperature.
    pub fn temperature(self, t: Celsius) -> String {
        write(t, self.units.temperature)
    }

    /// A difference of temperatures.
    pub fn warmth(self, degrees: f64) -> String {
        let (scale, symbol) = match self.units.temperature {
            TemperatureUnit::Celsius => (1.0, "°C"),
            TemperatureUnit::Fahrenheit => (1.8, "°F"),
        };
        format!("{}\u{A0}{symbol}", write_number(degrees * scale, 1))
    }

    /// A temperature in whole degrees, where a drawing has little room.
    pub fn degrees(self, t: Celsius) -> String {
        let number = self.units.temperature.express(t.value());
        format!("{}\u{A0}{}", write_number(number, 0), self.units.temperature.symbol())
    }

    /// Whether litres are used, and not gallons.
    pub fn is_metric(self) -> bool {
        self.units.volume == VolumeUnit::Litres
    }

    /// Whether gravities are told in points.
    pub fn counts_points(self) -> bool {
        self.is_metric() && self.units.gravity == GravityUnit::SpecificGravity
    }

    /// A volume; of less than a quarter of a gallon fluid ounces.
    pub fn volume(self, volume: Litres) -> String {
        if self.is_small(volume) {
            return self.small(volume);
        }
        let places = match self.units.volume {
            crate::quantity::VolumeUnit::Litres => 1,
            _ => 2,
        };
        let number = self.units.volume.express(volume.value());
        format!("{}\u{A0}{}", write_number(number, places), self.units.volume.symbol())
    }

    /// A volume to the hundredth of a litre.
    pub fn wort(self, volume: Litres) -> String {
        if self.is_small(volume) { self.small(volume) } else { write(volume, self.units.volume) }
    }

    /// A mass: whole grams from ten up; tenths below.
    pub fn mass(self, mass: Grams) -> String {
        match self.units.mass {
            MassUnit::Grams => {
                let places = if mass.value() < 9.95 { 1 } else { 0 };
                format!("{}\u{A0}g", write_number(mass.value(), places))
            }
            unit => write(mass, unit),
        }
    }

    /// A mass as a scale with that step shows it.
    pub fn weighed(self, mass: Grams, step: Grams) -> String {
        if self.units.mass != MassUnit::Grams {
            return self.mass(mass);
        }
        format!("{}\u{A0}g", write_number(mass.value(), places(step)))
    }

    /// A height.
    pub fn height(self, height: Metres) -> String {
        write(height, self.units.height)
    }

    /// A gravity that was worked out, on the brewer's scale.
    pub fn gravity(self, sg: SpecificGravity) -> String {
        match self.units.gravity {
            GravityUnit::SpecificGravity => write_number(sg.value(), 3),
            GravityUnit::Plato => write_gravity(Gravity::Plato(sucrose::plato(sg))),
        }
    }

    /// The ± of a gravity.
    pub fn gravity_doubt(self, sigma: f64) -> String {
        match self.units.gravity {
            // To the places of the gravity; less than half of the last is still not nothing.
            GravityUnit::SpecificGravity => {
                let points = (1000.0 * sigma).round().max(1.0);
                format!("±\u{A0}{}", write_number(points / 1000.0, 3))
            }
            // A point is about a quarter of a degree Plato everywhere in range.
            GravityUnit::Plato => format!("±\u{A0}{}", write_number(sigma * 255.0, 2)),
        }
    }
}

/// Degrees Plato.
pub fn extract(plato: Plato) -> String {
    format!("{}\u{A0}°P", write_number(plato.value(), 2))
}

/// Decimals of a scale with that step.
pub fn places(step: Grams) -> usize {
    match step.value() {
        step if step < 0.05 => 2,
        step if step < 0.5 => 1,
        _ => 0,
    }
}

/// Volumes of carbon dioxide.
pub fn volumes(gas: CarbonDioxideVolumes) -> String {
    write(gas, GasUnit::Volumes)
}

/// Strength to one decimal, never more.
pub fn strength(abv: AlcoholByVolume) -> String {
    format!("{}\u{A0}%", write_number(abv.value(), 1))
}

/// Attenuation in whole per cent.
pub fn attenuation(share: Attenuation) -> String {
    format!("{}\u{A0}%", write_number(share.value(), 0))
}

/// A length of time, in the unit that fits.
pub fn duration(hours: Hours) -> String {
    let h = hours.value().abs();
    if h < 1.0 {
        format!("{}\u{A0}min", write_number(h * 60.0, 0))
    } else if h < 47.5 {
        format!("{}\u{A0}h", write_number(h, if h < 9.95 { 1 } else { 0 }))
    } else {
        format!("{}\u{A0}days", write_number(h / 24.0, if h < 239.0 { 1 } else { 0 }))
    }
}

/// `Wed 25 Nov, 14:05`.
pub fn moment(at: Moment) -> String {
    let (_, _, _, hour, minute, _) = at.parts();
    format!("{}, {hour:02}:{minute:02}", day(at))
}

/// `Wed 25 Nov`.
pub fn day(at: Moment) -> String {
    let (_, month, day, _, _, weekday) = at.parts();
    let weekday = DAYS.get(usize::from(weekday)).unwrap_or(&"");
    format!("{weekday}\u{A0}{}", day_month(day, month))
}

/// `25 Nov`.
pub fn day_month(day: u8, month: u8) -> String {
    let month = MONTHS.get(usize::from(month).saturating_sub(1)).unwrap_or(&"");
    format!("{day}\u{A0}{month}")
}

/// `Wed 25 Nov 2026`.
pub fn full_day(at: Moment) -> String {
    format!("{}\u{A0}{}", day(at), at.parts().0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_of_time_is_told_in_the_unit_that_fits() {
        let told = |hours| duration(Hours::literal(hours)).replace('\u{A0}', " ");
        assert_eq!(told(0.5), "30 min");
        assert_eq!(told(1.25), "1.2 h");
        assert_eq!(told(36.0), "36 h");
        assert_eq!(told(60.0), "2.5 days");
        assert_eq!(told(480.0), "20 days");
    }

    #[test]
    fn a_moment_is_told_by_the_clock_it_was_read_on() {
        let at: Moment = "2026-11-25T14:05+01:00".parse().expect("a moment");
        assert_eq!(moment(at).replace('\u{A0}', " "), "Wed 25 Nov, 14:05");
        assert_eq!(full_day(at).replace('\u{A0}', " "), "Wed 25 Nov 2026");
    }

    #[test]
    fn strength_never_has_more_than_one_decimal() {
        assert_eq!(strength(AlcoholByVolume::literal(5.249)).replace('\u{A0}', " "), "5.2 %");
        let zone = Zone::fixed(0);
        let w = Writer { units: Units::US, words: &super::super::ENGLISH, zone: &zone };
        assert_eq!(w.temperature(Celsius::literal(20.0)).replace('\u{A0}', " "), "68.0 °F");
        assert_eq!(w.warmth(5.0).replace('\u{A0}', " "), "9.0 °F");
        assert_eq!(w.mass(Grams::literal(114.6)).replace('\u{A0}', " "), "115 g");
    }
}
