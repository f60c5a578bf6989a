//! The air outside: its pressure by height.

use crate::quantity::{Kilopascals, Measured, Metres};

/// Air pressure at the sea by the standard atmosphere.
pub const SEA_LEVEL: Kilopascals = Kilopascals::literal(101.325);

/// Air pressure at a height, by the standard atmosphere (ISO 2533): p = 101.325 (1 − 2.25577e-5 h)^5.2559.
/// Weather moves it by about ±2 %.
///
/// ```
/// use fermentside::quantity::{Measured, Metres};
/// use fermentside::science::air::pressure;
///
/// // ISO 2533 at 1000 m: 89.875 kPa (from memory).
/// assert!((pressure(Metres::literal(1000.0)).value() - 89.875).abs() < 0.02);
/// // So high nobody brews, so that there is always air.
/// assert!(Metres::new(8848.0).is_err());
/// ```
#[must_use]
pub fn pressure(height: Metres) -> Kilopascals {
    Kilopascals::nearest(SEA_LEVEL.value() * (1.0 - 2.255_77e-5 * height.value()).powf(5.2559))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_standard_atmosphere() {
        // ISO 2533 at 0, 1000 and 3000 m (from memory).
        for (height, kpa) in [(0.0, 101.325), (1000.0, 89.875), (3000.0, 70.109)] {
            let found = pressure(Metres::literal(height)).value();
            assert!((found - kpa).abs() < 0.02, "{height} {found}");
        }
    }
}
