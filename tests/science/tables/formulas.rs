//! Short published formulas, worked out beside ours over the range where both hold.

use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, GravityChange, Kilopascals, Litres, Measured,
    Plato, SpecificGravity,
};
use fermentside::science::carbon_dioxide::{GRAMS_PER_VOLUME, dissolved_in_water};
use fermentside::science::priming::{Priming, SUCROSE_YIELD, Sugar, dose};
use fermentside::science::strength::{from_priming, strength};
use fermentside::science::{bottle_pressure, sucrose, water};

/// The largest of |ours − theirs| over a range, told with the name.
fn largest(name: &str, inputs: impl Iterator<Item = f64>, miss: impl Fn(f64) -> f64) -> f64 {
    let all: Vec<f64> = inputs.map(|input| miss(input).abs()).collect();
    assert!(all.len() > 5 && all.iter().all(|miss| miss.is_finite()), "{name}");
    let largest = all.iter().copied().fold(0.0, f64::max);
    println!("{name}: {} values, largest difference {largest:.2e}", all.len());
    largest
}

fn tenths(from: i32, to: i32) -> impl Iterator<Item = f64> {
    (from * 10..=to * 10).map(|tenth| f64::from(tenth) / 10.0)
}

fn gravity(plato: f64) -> f64 {
    sucrose::specific_gravity(Plato::literal(plato)).value()
}

#[test]
fn plato_by_the_short_cubics() {
    // ASBC cubic.
    let asbc = largest("ASBC cubic", tenths(0, 30), |p| {
        let s = gravity(p);
        135.997 * s.powi(3) - 630.272 * s.powi(2) + 1111.14 * s - 616.868 - p
    });
    assert!(asbc < 0.012);
    // The fit for Brix found in encyclopedias.
    let brix = largest("Brix cubic", tenths(0, 30), |p| {
        let s = gravity(p);
        182.460_07 * s.powi(3) - 775.682_12 * s.powi(2) + 1262.7794 * s - 669.562_18 - p
    });
    assert!(brix < 0.019);
    // J. Buhl's P = 260.4 (1 − 1/s); the range its author meant was not seen.
    let buhl = largest("Buhl", tenths(0, 15), |p| 260.4 * (1.0 - 1.0 / gravity(p)) - p);
    assert!(buhl < 0.06);
}

#[test]
fn water_by_the_cipm_formula() {
    // Tanaka and others, Metrologia 38 (2001) 301, 0 to 40 °C (coefficients from memory).
    let miss = largest("Tanaka 2001", tenths(0, 40), |t| {
        let cipm = 999.974_950
            * (1.0 - (t - 3.983_035).powi(2) * (t + 301.797) / (522_528.9 * (t + 69.348_81)));
        water::density(Celsius::literal(t)).expect("in range").value() - cipm
    });
    assert!(miss < 0.005);
}

#[test]
fn carbon_dioxide_by_another_school() {
    // Carroll, Slupsky and Mather, J. Phys. Chem. Ref. Data 20 (1991) 1201:
    // ln(H/MPa) = −6.8346 + 1.2817e4/T − 3.7668e6/T² + 2.997e8/T³. The two schools differ by 3 %.
    let miss = largest("Carroll 1991 (relative)", tenths(0, 40), |t| {
        let t = Celsius::literal(t);
        let k = t.kelvin();
        let henry = (-6.8346 + 1.2817e4 / k - 3.7668e6 / k.powi(2) + 2.997e8 / k.powi(3)).exp();
        let water = water::density(t).expect("in range").value() / 18.015;
        // At 1 kPa gas is nearly ideal; x/(1 − x) is the moles for each of water.
        let x = 0.001 / henry;
        let theirs = x / (1.0 - x) * water * 44.009 / GRAMS_PER_VOLUME;
        let ours = dissolved_in_water(t, Kilopascals::literal(1.0)).expect("in range").value();
        ours / theirs - 1.0
    });
    assert!(miss < 0.03);
}

#[test]
fn strength_by_the_rules_others_use() {
    let found = |og: f64, fg: f64| {
        let exact = |v| Estimate::exact(SpecificGravity::literal(v));
        strength(exact(og), exact(fg)).expect("in range")
    };
    // Worked by hand from each rule; Balling's formula with a constant quotient runs 1 to 2 % above
    // his tables, more so in strong beer.
    for (og, fg, common, balling) in
        [(1.050, 1.010, 5.25, 5.29), (1.080, 1.016, 8.40, 8.59), (1.100, 1.022, 10.24, 10.58)]
    {
        let ours = found(og, fg);
        let main = ours.alcohol.value().value();
        println!("{og} to {fg}: {main:.3}, by Balling's formula {balling}");
        assert!((ours.by_common_rule.value() - common).abs() < 0.006, "{og}");
        assert!((main - balling).abs() < 0.02 * balling, "{og}: {main}");
        // The band covers the rules shown beside the figure, two standard deviations of it.
        assert!((main - common).abs() <= 2.0 * ours.alcohol.sigma() + 1e-9, "{og}");
    }
    for (fall, factor) in
        [(1.0, 0.125), (30.0, 0.129), (40.0, 0.130), (50.0, 0.131), (60.0, 0.132), (95.0, 0.135)]
    {
        let change = GravityChange::literal(fall / 1000.0);
        assert_eq!(fermentside::science::strength::duty_factor(change).value(), factor, "{fall}");
    }
    // Two readings each off by u: x131.25 x sqrt 2.
    for (u, sigma) in [(0.0005, 0.09), (0.001, 0.19), (0.002, 0.37)] {
        let read = |v| Estimate::new(SpecificGravity::literal(v), u);
        let ours = strength(read(1.050), read(1.010)).expect("in range").alcohol.sigma();
        assert!((ours - sigma).abs() < 0.03, "{u}: {ours}");
    }
}

#[test]
fn priming_by_hand() {
    // Priming of 6 g/L is worth 0.4 % by volume.
    let added = from_priming(Grams::literal(6.0), Litres::literal(1.0)).expect("beer").value();
    assert!((added - 0.4).abs() < 0.03);
    // One point that still ferments is half a volume.
    let point = bottle_pressure::from_points(GravityChange::literal(0.001)).value();
    assert!((point - 0.5).abs() < 0.03);
    // About 4 g/L of table sugar a volume.
    let a_volume = GRAMS_PER_VOLUME / SUCROSE_YIELD.value();
    assert!((a_volume - 3.85).abs() < 0.01);
    // 19 L that hold 0.88, to 2.4 volumes: 111 g of sucrose and 127 g of monohydrate at full yield.
    for (sugar, grams) in [(Sugar::Sucrose, 111.0), (Sugar::DextroseMonohydrate, 127.0)] {
        let priming = Priming {
            target: CarbonDioxideVolumes::literal(2.4),
            already_in: Estimate::exact(CarbonDioxideVolumes::literal(0.88)),
            beer: Estimate::exact(Litres::literal(19.0)),
            sugar,
        };
        // The dose counts on 95 % of the full yield.
        let ours = 0.95 * dose(priming).expect("in range").sugar.value().value();
        assert!((ours - grams).abs() < 2.0, "{sugar:?}: {ours}");
    }
}
