//! Figures of common practice that more than one file goes by: how well things are read at home. Each is
//! named once here; none has a source.

use crate::quantity::{Celsius, Estimate, Litres, Measured, Share, TemperatureChange};

/// One standard deviation of a vessel's litre mark, as a share of what is in it (common practice, no
/// source).
pub const VOLUME_MARK: Share = Share::literal(0.03);
/// One standard deviation of a temperature that is remembered, and not read from a record (common
/// practice, no source).
pub const REMEMBERED: TemperatureChange = TemperatureChange::literal(1.0);

/// A volume as a vessel's litre mark tells it, with one standard deviation of [`VOLUME_MARK`].
///
/// ```
/// use fermentside::quantity::{Litres, Measured};
/// use fermentside::science::practice::by_mark;
///
/// assert!((by_mark(Litres::literal(20.0)).sigma() - 0.6).abs() < 1e-12);
/// ```
#[must_use]
pub fn by_mark(volume: Litres) -> Estimate<Litres> {
    Estimate::new(volume, VOLUME_MARK.value() * volume.value())
}

/// A temperature as it is remembered, with one standard deviation of [`REMEMBERED`].
///
/// ```
/// use fermentside::quantity::{Celsius, Measured};
/// use fermentside::science::practice::remembered;
///
/// assert_eq!(remembered(Celsius::literal(20.0)).sigma(), 1.0);
/// ```
#[must_use]
pub fn remembered(t: Celsius) -> Estimate<Celsius> {
    Estimate::new(t, REMEMBERED.value())
}
