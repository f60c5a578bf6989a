//! What is measured: one checked type a quantity, read and written as people do.
//!
//! A value out of its range cannot be built, so no floor above has to ask again. Inside, everything is
//! held in one unit (the type's own); the brewer's units live at the edge, in the [`Unit`] enums.
//!
//! What makes no sense does not compile. Two temperatures have a difference and no sum:
//!
//! ```
//! use fermentside::quantity::{Celsius, TemperatureChange};
//!
//! let (warm, cool) = (Celsius::literal(20.0), Celsius::literal(15.0));
//! assert_eq!(warm.above(cool), TemperatureChange::literal(5.0));
//! ```
//! ```compile_fail,E0369
//! use fermentside::quantity::Celsius;
//!
//! let neither = Celsius::literal(20.0) + Celsius::literal(15.0);
//! ```
//!
//! Five degrees are no change by themselves:
//!
//! ```compile_fail,E0308
//! use fermentside::quantity::Celsius;
//!
//! let warmer = Celsius::literal(20.0).changed_by(Celsius::literal(5.0));
//! ```
//!
//! A bare number is no quantity; its range is asked first ([`Measured::new`]):
//!
//! ```compile_fail,E0423
//! use fermentside::quantity::Litres;
//!
//! let unchecked = Litres(-5.0);
//! ```
//!
//! A literal out of range stops the build:
//!
//! ```compile_fail,E0080
//! use fermentside::quantity::SpecificGravity;
//!
//! const MARK: SpecificGravity = SpecificGravity::literal(1050.0);
//! ```

mod decimal;
mod estimate;
mod gravity;
mod hair;
mod measured;
mod moment;
mod read;
mod read_error;
mod unit;
mod zone;

pub use decimal::{Numeral, read_numeral, write_number};
pub use estimate::Estimate;
pub use gravity::{Gravity, GravityUnit, read_gravity, write_gravity};
pub use hair::HAIR;
pub use measured::{
    AlcoholByMass, AlcoholByVolume, Attenuation, CarbonDioxideVolumes, Celsius, Count, CubicMetres,
    Density, DissolvedOxygen, Extract, Grams, GravityChange, HeatCapacity, Hours, Kilopascals,
    Litres, Measured, Metres, OutOfRange, PartsPerMillion, Plato, Share, SpecificGravity,
    TemperatureChange, WortFactor,
};
pub use moment::{Moment, MomentError};
pub use read::{Bounds, read, read_own, write, write_bare_own};
pub use read_error::ReadError;
pub use unit::{
    BottleUnit, BrixUnit, CountUnit, DayUnit, FactorUnit, GasUnit, LengthUnit, MassUnit,
    MinuteUnit, PressureUnit, RoomUnit, ShareUnit, TemperatureUnit, Unit, UnitRow, VolumeUnit,
};
pub use zone::Zone;
