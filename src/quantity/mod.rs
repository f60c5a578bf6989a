//! What is measured: one checked type a quantity, read and written as people do.
//!
//! A value out of its range cannot be built, so no floor above has to ask again. Inside, everything is
//! held in one unit (the type's own); the brewer's units live at the edge, in the [`Unit`] enums.

mod decimal;
mod estimate;
mod gravity;
mod measured;
mod moment;
mod read;
mod unit;

pub use decimal::{Numeral, read_numeral, write_number};
pub use estimate::Estimate;
pub use gravity::{Gravity, GravityUnit, read_gravity, write_gravity};
pub use measured::{
    AlcoholByMass, AlcoholByVolume, Attenuation, CarbonDioxideVolumes, Celsius, Count, CubicMetres,
    Density, DissolvedOxygen, Extract, Grams, GravityChange, HeatCapacity, Hours, Kilopascals,
    Litres, Measured, Metres, OutOfRange, PartsPerMillion, Plato, Share, Skew, SpecificGravity,
    TemperatureChange, WortFactor,
};
pub use moment::{Moment, MomentError};
pub use read::{Bounds, ReadError, read, read_own, write, write_bare, write_bare_own};
pub use unit::{
    BottleUnit, BrixUnit, CountUnit, FactorUnit, GasUnit, LengthUnit, MassUnit, MinuteUnit,
    PressureUnit, RoomUnit, ShareUnit, TemperatureUnit, Unit, UnitRow, VolumeUnit,
};
