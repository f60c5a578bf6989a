//! Numbers that look drawn by lot and are always the same.

/// A small generator of numbers that look drawn by lot (PCG: O'Neill, 2014): always the same ones.
pub struct Lot(u64);

impl Lot {
    pub fn new(seed: u64) -> Self {
        let mut lot = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15).wrapping_add(1));
        lot.next();
        lot
    }

    fn next(&mut self) -> u32 {
        let old = self.0;
        self.0 =
            old.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let mixed = (((old >> 18) ^ old) >> 27) as u32;
        mixed.rotate_right((old >> 59) as u32)
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * f64::from(self.next()) / f64::from(u32::MAX)
    }

    pub fn normal(&mut self) -> f64 {
        let (a, b) = (self.between(1e-9, 1.0), self.between(0.0, std::f64::consts::TAU));
        (-2.0 * a.ln()).sqrt() * b.cos()
    }
}
