//! What a kitchen measures, in litres or in gallons and what goes with them, and the amounts of a working.

use super::write::{Writer, attenuation, duration, extract, volumes};
use crate::quantity::{
    BottleUnit, CarbonDioxideVolumes, Extract, GasUnit, Grams, GravityUnit, Kilopascals, Litres,
    Measured, PressureUnit, Unit, VolumeUnit, write, write_gravity, write_number,
};
use crate::science::Amount;

impl Writer<'_> {
    pub(super) fn is_small(self, volume: Litres) -> bool {
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

/// Bar and psi.
fn pressure(p: Kilopascals) -> String {
    format!("{} ({})", write(p, PressureUnit::Bar), write(p, PressureUnit::Psi))
}
