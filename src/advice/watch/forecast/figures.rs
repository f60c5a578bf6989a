//! Weighing: quantiles of weighed values, and how little a reading far off the curve says.

/// Standard deviations from the middle to the outer tenth of a normal distribution.
pub(super) const TENTH: f64 = 1.2816;

/// One reading of so many is off by more than its error: gas on the bulb, a slip of the pen.
const OFF: f64 = 0.06;
/// And is then so many times as rough.
const ROUGHER: f64 = 6.0;
/// Steps of the table for each standard deviation, and how far it reaches.
const STEPS: f64 = 32.0;
const REACH: usize = 2048;

/// What a distance of so many standard deviations costs: −ln of a normal density mixed with a wide one,
/// from a table, because it is asked for a million times.
pub(super) struct Cost(Vec<f64>);

impl Cost {
    pub(super) fn new() -> Self {
        let normal = |z: f64| (-0.5 * z * z).exp();
        let cost = |step: usize| {
            let z = step as f64 / STEPS;
            -((1.0 - OFF) * normal(z) + OFF / ROUGHER * normal(z / ROUGHER)).ln()
        };
        Self((0..REACH).map(cost).collect())
    }

    /// Of a distance, either way.
    pub(super) fn of(&self, z: f64) -> f64 {
        let step = (z.abs() * STEPS + 0.5) as usize;
        self.0[step.min(REACH - 1)]
    }
}

/// Weights by value, in steps.
pub(super) struct Histogram {
    low: f64,
    step: f64,
    bins: Vec<f64>,
}

impl Histogram {
    /// Values from `low` to `high` in so many steps; what lies beyond counts at the ends.
    pub(super) fn new(low: f64, high: f64, steps: usize) -> Self {
        let step = ((high - low) / steps as f64).max(f64::MIN_POSITIVE);
        Self { low, step, bins: vec![0.0; steps + 2] }
    }

    /// Adds a value, shared between the two marks it lies between.
    pub(super) fn add(&mut self, value: f64, weight: f64) {
        let place = ((value - self.low) / self.step).clamp(0.0, (self.bins.len() - 2) as f64);
        let at = place as usize;
        let part = place - at as f64;
        self.bins[at] += weight * (1.0 - part);
        self.bins[at + 1] += weight * part;
    }

    /// Adds a weight spread evenly from one value to another.
    pub(super) fn spread(&mut self, from: f64, to: f64, weight: f64) {
        let parts = (((to - from) / self.step).ceil().max(1.0)) as usize;
        for i in 0..parts {
            let at = from + (to - from) * (i as f64 + 0.5) / parts as f64;
            self.add(at, weight / parts as f64);
        }
    }

    /// The share of the weight below a value.
    pub(super) fn below(&self, value: f64) -> f64 {
        let place = (value - self.low) / self.step + 0.5;
        let whole: f64 = self.bins.iter().sum();
        let part = |(at, weight): (usize, &f64)| weight * (place - at as f64).clamp(0.0, 1.0);
        self.bins.iter().enumerate().map(part).sum::<f64>() / whole.max(f64::MIN_POSITIVE)
    }

    /// The value below which lies `share` of the weight.
    pub(super) fn quantile(&self, share: f64) -> f64 {
        let wanted = share * self.bins.iter().sum::<f64>();
        let mut below = 0.0;
        for (at, weight) in self.bins.iter().enumerate() {
            if below + weight >= wanted && *weight > 0.0 {
                // Each mark's weight is spread half a step to both sides.
                let part = ((wanted - below) / weight).clamp(0.0, 1.0) - 0.5;
                return self.low + (at as f64 + part) * self.step;
            }
            below += weight;
        }
        self.low
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn far_readings_cost_little_more() {
        let cost = Cost::new();
        // Alone, six standard deviations would cost 18.
        assert!((cost.of(1.0) - cost.of(0.0) - 0.5).abs() < 0.02);
        assert!(cost.of(-6.0) - cost.of(0.0) < 6.0);
        assert!(cost.of(1e300) >= cost.of(50.0) && cost.of(f64::NAN) >= 0.0);
    }

    #[test]
    fn quantiles_of_an_even_spread() {
        let mut even = Histogram::new(0.0, 10.0, 100);
        (0..=1000).for_each(|i| even.add(f64::from(i) / 100.0, 1.0));
        for share in [0.1, 0.5, 0.9] {
            assert!((even.quantile(share) - 10.0 * share).abs() < 0.1, "{}", even.quantile(share));
        }
    }
}
