//! Ethanol in water: OIML R 22 (1975), also EU directive 76/766/EEC, −20 to 40 °C.

// The coefficients stand as printed, also where a float cannot hold the last digits.
#![allow(clippy::excessive_precision)]

use super::ScienceError;
use crate::quantity::{AlcoholByMass, AlcoholByVolume, Celsius, Density, Measured};

const A: [f64; 12] = [
    9.982_012_300e2,
    -1.929_769_495e2,
    3.891_238_958e2,
    -1.668_103_923e3,
    1.352_215_441e4,
    -8.829_278_388e4,
    3.062_874_042e5,
    -6.138_381_234e5,
    7.470_172_998e5,
    -5.478_461_354e5,
    2.234_460_334e5,
    -3.903_285_426e4,
];
const B: [f64; 6] = [
    -2.061_851_3e-1,
    -5.268_254_2e-3,
    3.613_001_3e-5,
    -3.895_770_2e-7,
    7.169_354_0e-9,
    -9.973_923_1e-11,
];
const C1: [f64; 11] = [
    1.693_443_461_530_087e-1,
    -1.046_914_743_455_169e1,
    7.196_353_469_546_523e1,
    -7.047_478_054_272_792e2,
    3.924_090_430_035_045e3,
    -1.210_164_659_068_747e4,
    2.248_646_550_400_788e4,
    -2.605_562_982_188_164e4,
    1.852_373_922_069_467e4,
    -7.420_201_433_430_137e3,
    1.285_617_841_998_974e3,
];
const C2: [f64; 10] = [
    -1.193_013_005_057_010e-2,
    2.517_399_633_803_461e-1,
    -2.170_575_700_536_993,
    1.353_034_988_843_029e1,
    -5.029_988_758_547_014e1,
    1.096_355_666_577_570e2,
    -1.422_753_946_421_155e2,
    1.080_435_942_856_230e2,
    -4.414_153_236_817_392e1,
    7.442_971_530_188_783,
];
const C3: [f64; 9] = [
    -6.802_995_733_503_803e-4,
    1.876_837_790_289_664e-2,
    -2.002_561_813_734_156e-1,
    1.022_992_966_719_220,
    -2.895_696_483_903_638,
    4.810_060_584_300_675,
    -4.672_147_440_794_683,
    2.458_043_105_903_461,
    -5.411_227_621_436_812e-1,
];
const C4: [f64; 4] = [
    4.075_376_675_622_027e-6,
    -8.763_058_573_471_110e-6,
    6.515_031_360_099_368e-6,
    -1.515_784_836_987_210e-6,
];
const C5: [f64; 2] = [-2.788_074_354_782_409e-8, 1.345_612_883_493_354e-8];

/// Density of pure ethanol at 20 °C by the same formula, kg/m³.
pub(super) const PURE_AT_20: f64 = 789.24;

fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

/// Density in kg/m³ of a mixture with mass fraction `p` of ethanol at `t` °C.
pub(super) fn rho(p: f64, t: f64) -> f64 {
    let d = t - 20.0;
    let cross: [&[f64]; 5] = [&C1, &C2, &C3, &C4, &C5];
    let mixed: f64 = cross
        .iter()
        .rev()
        .fold(0.0, |sum, coefficients| (sum + p * polynomial(coefficients, p)) * d);
    polynomial(&A, p) + d * polynomial(&B, d) + mixed
}

/// Density of ethanol in water.
///
/// ```
/// use fermentside::quantity::{AlcoholByMass, Celsius, Measured};
/// use fermentside::science::ethanol::density;
///
/// // OIML R 22: pure ethanol has 789.24 kg/m³ at 20 °C.
/// let pure = |t| density(AlcoholByMass::literal(100.0), Celsius::literal(t));
/// assert!((pure(20.0)?.value() - 789.24).abs() < 0.01);
/// assert!(pure(50.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside −20 to 40 °C.
pub fn density(alcohol: AlcoholByMass, t: Celsius) -> Result<Density, ScienceError> {
    let (min, max) = (Celsius::literal(-20.0), Celsius::literal(40.0));
    if !(min..=max).contains(&t) {
        return Err(ScienceError::Temperature { given: t, min, max });
    }
    Ok(Density::new(rho(alcohol.value() / 100.0, t.value()))?)
}

/// Alcohol by volume at 20 °C of a plain mixture of ethanol and water.
///
/// ```
/// use fermentside::quantity::{AlcoholByMass, Measured};
/// use fermentside::science::ethanol::by_volume_in_water;
///
/// // OIML R 22: 5 % by mass is 6.2679 % by volume.
/// let strength = by_volume_in_water(AlcoholByMass::literal(5.0))?;
/// assert!((strength.value() - 6.2679).abs() < 0.001);
/// assert!(by_volume_in_water(AlcoholByMass::literal(40.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::OutOfRange`] above 30 % by volume.
pub fn by_volume_in_water(alcohol: AlcoholByMass) -> Result<AlcoholByVolume, ScienceError> {
    let p = alcohol.value() / 100.0;
    Ok(AlcoholByVolume::new(100.0 * p * rho(p, 20.0) / PURE_AT_20)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_are_water_and_ethanol() {
        assert!((rho(0.0, 20.0) - 998.2012).abs() < 1e-3);
        assert!((rho(1.0, 20.0) - PURE_AT_20).abs() < 0.01, "{}", rho(1.0, 20.0));
    }
}
