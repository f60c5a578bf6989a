//! How weight lies by points of gravity, in steps of a tenth.

/// How the weight lies by what is left.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Left(Vec<f64>);

/// Steps of a tenth of a point, and how many.
const STEPS: f64 = 10.0;
const MOST: usize = 500;

impl Left {
    pub(super) fn new() -> Self {
        Self(vec![0.0; MOST])
    }

    pub(super) fn add(&mut self, points: f64, weight: f64) {
        let place = (points * STEPS).clamp(0.0, (MOST - 2) as f64);
        let (at, part) = (place as usize, place.fract());
        self.0[at] += weight * (1.0 - part);
        self.0[at + 1] += weight * part;
    }

    pub(super) fn weight(&self) -> f64 {
        self.0.iter().sum()
    }

    /// Adds all of another, so many times.
    pub(super) fn join(&mut self, other: &Self, times: f64) {
        for (here, there) in self.0.iter_mut().zip(&other.0) {
            *here += times * there;
        }
    }

    /// Points below which lies `share` of the weight.
    pub(super) fn quantile(&self, share: f64) -> f64 {
        let wanted = share * self.weight();
        let mut below = 0.0;
        for (at, weight) in self.0.iter().enumerate() {
            if below + weight >= wanted && *weight > 0.0 {
                return (at as f64 + (wanted - below) / weight - 1.0).max(0.0) / STEPS;
            }
            below += weight;
        }
        MOST as f64 / STEPS
    }

    /// The mean of the points.
    pub(super) fn mean(&self) -> f64 {
        self.mean_of(0, MOST)
    }

    /// The mean of what is above so many points, and of what is below.
    pub(super) fn mean_above(&self, points: f64) -> f64 {
        let from = (points * STEPS) as usize;
        self.mean_of(from, MOST)
    }

    pub(super) fn mean_below(&self, points: f64) -> f64 {
        self.mean_of(0, (points * STEPS) as usize)
    }

    fn mean_of(&self, from: usize, to: usize) -> f64 {
        let part = || self.0.iter().enumerate().take(to).skip(from);
        let weight: f64 = part().map(|(_, weight)| weight).sum();
        let sum: f64 = part().map(|(at, weight)| at as f64 * weight).sum();
        if weight > 0.0 { sum / STEPS / weight } else { 0.0 }
    }

    /// The weight of what is more than so many points.
    pub(super) fn above(&self, points: f64) -> f64 {
        self.0.iter().skip((points * STEPS) as usize).sum()
    }
}
