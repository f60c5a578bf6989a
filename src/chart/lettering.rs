//! Room for words in a drawing: lines of a length, and labels that do not cover each other.

/// Breaks a text between words into lines of at most `most` letters; a longer word stands alone.
#[must_use]
pub fn wrap(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split([' ', '\n']).filter(|w| !w.is_empty()) {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Moves labels that stand at `wished` (rising) so that each has its `heights` of room and all stay
/// between `top` and `bottom` as far as there is room; each value is the middle of its label.
#[must_use]
pub fn apart(wished: &[f64], heights: &[f64], top: f64, bottom: f64) -> Vec<f64> {
    let mut placed: Vec<f64> = Vec::with_capacity(wished.len());
    let mut free = top;
    for (at, height) in wished.iter().zip(heights) {
        let middle = at.max(free + height / 2.0);
        free = middle + height / 2.0;
        placed.push(middle);
    }
    let mut free = bottom;
    for (at, height) in placed.iter_mut().zip(heights).rev() {
        *at = at.min(free - height / 2.0);
        free = *at - height / 2.0;
    }
    placed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn breaks_between_words() {
        assert_eq!(wrap("1.052 corrected", 10), ["1.052", "corrected"]);
        assert_eq!(wrap("tap water", 10), ["tap water"]);
        assert!(wrap("", 10).is_empty());
    }

    #[test]
    fn labels_make_room_for_each_other() {
        let placed = apart(&[50.0, 52.0, 99.0], &[20.0; 3], 0.0, 100.0);
        assert!(placed.windows(2).all(|w| w[1] - w[0] >= 19.9), "{placed:?}");
        assert!(placed[2] <= 90.0);
        assert_eq!(apart(&[10.0, 80.0], &[10.0; 2], 0.0, 100.0), [10.0, 80.0]);
    }
}
