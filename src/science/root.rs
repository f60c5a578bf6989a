//! The root of a function that only rises: every inverse in this floor is one of these.

/// Finds `x` in `low..=high` where the rising function `f` is zero.
///
/// The chord between the ends of the bracket, with the end that stays put counted half (the Illinois
/// rule), and a halving whenever four chords have not halved the bracket: so it can neither run away
/// nor stall, and needs some eight values of `f` where plain halving needs sixty. Returns the nearer
/// end when the root lies outside.
pub(super) fn rising_root(low: f64, high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (low, high);
    let (mut below, mut above) = (f(low), f(high));
    // What is not a number counts as above, as a halving would take it.
    if below >= 0.0 || below.is_nan() {
        return low;
    }
    if above <= 0.0 {
        return high;
    }
    let (mut wide, mut stayed, mut root) = (high - low, 0, low);
    for step in 1..=200 {
        let chord = low + (high - low) * (below / (below - above));
        let halve = step % 4 == 0 && high - low > 0.5 * wide;
        if step % 4 == 0 {
            wide = high - low;
        }
        let inside = chord > low && chord < high;
        let x = if halve || !inside { 0.5 * (low + high) } else { chord };
        if x <= low || x >= high {
            break;
        }
        let found = f(x);
        let moved = (x - root).abs();
        root = x;
        if found < 0.0 {
            (low, below) = (x, found);
            if stayed > 0 {
                above *= 0.5;
            }
            stayed = 1;
        } else {
            (high, above) = (x, found);
            if stayed < 0 {
                below *= 0.5;
            }
            stayed = -1;
        }
        if found == 0.0 || moved <= f64::EPSILON * x.abs() {
            break;
        }
    }
    root
}

#[cfg(test)]
mod tests {
    use super::rising_root;

    #[test]
    fn needs_few_values_and_does_not_stall() {
        let of = |low: f64, high: f64, f: &dyn Fn(f64) -> f64| {
            let asked = std::cell::Cell::new(0);
            let root = rising_root(low, high, |x| {
                asked.set(asked.get() + 1);
                f(x)
            });
            (root, asked.get())
        };
        let (root, asked) = of(-0.14, 0.6, &|w| w * (385.0 + w * (135.0 + 41.0 * w)) - 40.0);
        assert!((root * (385.0 + root * (135.0 + 41.0 * root)) - 40.0).abs() < 1e-12);
        assert!(asked < 16, "{asked}");
        // Flat for most of its way, then steep.
        let (root, asked) = of(0.0, 30.0, &|x: f64| x.powi(12) - 1.0);
        assert!((root - 1.0).abs() < 1e-13 && asked < 90, "{root} {asked}");
        let (root, asked) = of(-1.0, 1.0, &|x: f64| if x < 0.25 { -1.0 } else { 1.0 });
        assert!((root - 0.25).abs() < 1e-15 && asked < 180, "{root} {asked}");
        assert_eq!(rising_root(2.0, 3.0, |_| f64::NAN), 2.0);
    }

    #[test]
    fn finds_a_root_and_keeps_to_its_interval() {
        assert!((rising_root(0.0, 2.0, |x| x * x - 2.0) - 2f64.sqrt()).abs() < 1e-15);
        assert!((rising_root(0.0, 1.0, |x| x - 5.0) - 1.0).abs() < 1e-15);
        assert!(rising_root(0.0, 1.0, |x| x + 5.0).abs() < 1e-15);
    }
}
