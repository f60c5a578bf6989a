//! The root of a function that only rises: every inverse in this floor is one of these.

/// Finds `x` in `low..=high` where the rising function `f` is zero, by bisection.
///
/// Sixty halvings are exact to the last bits of the intervals used here and cannot run away, which
/// faster methods can. Returns the nearer end when the root lies outside.
pub(super) fn rising_root(low: f64, high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (low, high);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::rising_root;

    #[test]
    fn finds_a_root_and_keeps_to_its_interval() {
        assert!((rising_root(0.0, 2.0, |x| x * x - 2.0) - 2f64.sqrt()).abs() < 1e-15);
        assert!((rising_root(0.0, 1.0, |x| x - 5.0) - 1.0).abs() < 1e-15);
        assert!(rising_root(0.0, 1.0, |x| x + 5.0).abs() < 1e-15);
    }
}
