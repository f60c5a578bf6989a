//! Quantities in the brewer's units, as text.

use super::Words;
use crate::batch::Units;
use crate::quantity::{
    AlcoholByVolume, Attenuation, BottleUnit, CarbonDioxideVolumes, Celsius, Extract, GasUnit,
    Grams, Gravity, GravityUnit, Hours, Kilopascals, Litres, MassUnit, Measured, Metres, Moment,
    Plato, PressureUnit, SpecificGravity, TemperatureUnit, Unit, VolumeUnit, Zone, write,
    write_gravity, write_number,
};
use crate::science::{Amount, sucrose};

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

    fn is_small(self, volume: Litres) -> bool {
        !self.is_metric() && self.units.volume.express(volume.value()) < 0.25
    }

    /// A volume of a cup or two, or a bottle's.
    pub fn small(self, volume: Litres) -> String {
        let unit = self.units.bottle();
        let number = unit.express(volume.value());
        if unit == BottleUnit::Millilitres {
            return format!("{}\u{A0}mL", write_number(number, 0));
        }
        // 12 and not 12.0: bottles are known by whole ounces.
        let whole = (number - number.round()).abs() < 0.05;
        format!("{}\u{A0}fl\u{A0}oz", write_number(number, usize::from(!whole)))
    }

    /// From so much to so much of water in a kitchen.
    pub fn cups(self, from: Litres, to: Litres) -> String {
        // A US cup is half a US pint.
        let cups = |litres: Litres| write_number(litres.value() / 0.236_588, 0);
        match self.units.volume {
            VolumeUnit::Litres => {
                let from = write_number(1000.0 * from.value(), 0);
                format!("{from} to {}", self.small(to))
            }
            VolumeUnit::UsGallons => format!("{} to {} cups", cups(from), cups(to)),
            VolumeUnit::ImperialGallons => format!("{} to {}", self.small(from), self.small(to)),
        }
    }

    /// A volume of gas.
    pub fn gas(self, gas: Litres) -> String {
        if self.is_metric() {
            format!("{}\u{A0}L", write_number(gas.value(), 0))
        } else {
            let feet = gas.value() / 28.316_846_592;
            format!("{}\u{A0}ft³", write_number(feet, usize::from(feet < 9.95)))
        }
    }

    /// Oxygen in wort, milligrams a litre: parts in a million of its weight, where litres are not used.
    pub fn oxygen(self) -> &'static str {
        if self.is_metric() { "mg/L" } else { "ppm" }
    }

    /// Grams in each litre, or in each gallon.
    pub fn a_litre(self, extract: Extract) -> String {
        let grams = extract.value() * self.units.volume.to_own(1.0);
        let unit = match self.units.volume {
            VolumeUnit::Litres => return format!("{}\u{A0}g/L", write_number(grams, 1)),
            unit => unit.symbol(),
        };
        format!("{}\u{A0}g/{unit}", write_number(grams, 1))
    }

    /// A mass of kilograms or pounds.
    pub fn heavy(self, mass: Grams) -> String {
        let unit = self.units.heavy();
        format!("{}\u{A0}{}", write_number(unit.express(mass.value()), 1), unit.symbol())
    }

    /// A pressure: bar and psi, or psi alone.
    pub fn pressure(self, p: Kilopascals) -> String {
        if self.is_metric() { pressure(p) } else { write(p, PressureUnit::Psi) }
    }

    /// Volumes of carbon dioxide, and grams a litre where litres are used.
    pub fn volumes_in_full(self, gas: CarbonDioxideVolumes) -> String {
        let volumes = write_number(gas.value(), 1);
        if self.is_metric() {
            format!("{volumes} volumes ({})", write(gas, GasUnit::GramsPerLitre))
        } else {
            format!("{volumes} volumes")
        }
    }

    /// A number of a working that has a unit of its own.
    fn number(self, value: f64, places: usize, unit: &'static str) -> String {
        let (factor, places, unit) = match unit {
            "°C" => return self.warmth(value),
            "mg/L" => (1.0, places, self.oxygen()),
            _ if self.is_metric() => (1.0, places, unit),
            "kg/m³" => (0.008_345_404, 3, "lb/US\u{A0}gal"),
            "g/L a volume" if self.units.volume == VolumeUnit::UsGallons => {
                (3.785_411_784, 1, "g/US\u{A0}gal a volume")
            }
            "g/L a volume" => (4.546_09, 1, "g/imp\u{A0}gal a volume"),
            "m³" => (35.314_667, 0, "ft³"),
            unit => (1.0, places, unit),
        };
        format!("{}\u{A0}{unit}", write_number(value * factor, places))
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

    /// A difference of gravities, given in points (thousandths), on the brewer's scale. Where gallons are
    /// used it is told as a hydrometer shows it.
    pub fn points(self, n: f64) -> String {
        let small = n.abs() < 9.95;
        match (self.units.gravity, self.units.volume) {
            // A point is about a quarter of a degree Plato everywhere in range.
            (GravityUnit::Plato, _) => {
                format!("{}\u{A0}°P", write_number(n * 0.255, if small { 2 } else { 1 }))
            }
            (_, VolumeUnit::Litres) if (n - 1.0).abs() < 0.05 => "1\u{A0}point".to_owned(),
            (_, VolumeUnit::Litres) => {
                format!("{}\u{A0}points", write_number(n, usize::from(small)))
            }
            _ => format!("{}\u{A0}SG", write_number(n / 1000.0, if small { 4 } else { 3 })),
        }
    }

    /// Any amount of a working.
    pub fn amount(self, amount: Amount) -> String {
        match amount {
            Amount::Read(gravity) => write_gravity(gravity),
            Amount::Gravity(sg) => write_number(sg.value(), 4),
            Amount::Points(points) => self.points(points),
            Amount::Extract(plato) => extract(plato),
            Amount::Temperature(t) => self.temperature(t),
            Amount::Volume(volume) => self.volume(volume),
            Amount::Mass(mass) => self.mass(mass),
            Amount::Gas(gas) => volumes(gas),
            Amount::Pressure(p) => self.pressure(p),
            Amount::Strength(abv) => format!("{}\u{A0}% ABV", write_number(abv.value(), 2)),
            Amount::Attenuation(share) => attenuation(share),
            Amount::Height(height) => self.height(height),
            Amount::Time(hours) => duration(hours),
            Amount::Number(value, places, unit) => self.number(value, places, unit),
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

/// Bar and psi.
fn pressure(p: Kilopascals) -> String {
    format!("{} ({})", write(p, PressureUnit::Bar), write(p, PressureUnit::Psi))
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
