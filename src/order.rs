//! Putting short lists in order, on any floor.

use std::cmp::Ordering;

/// The items in order; of two that compare alike, the first stays first.
///
/// The standard sort is 4 kB for every type and order it is used with, a tenth of the whole page. The
/// lists here have hundreds of items, mostly in order already, and each is put into its place.
#[must_use]
pub fn in_order<T>(items: Vec<T>, compare: impl Fn(&T, &T) -> Ordering) -> Vec<T> {
    let mut ordered: Vec<T> = Vec::with_capacity(items.len());
    for item in items {
        let at = ordered.partition_point(|before| compare(before, &item).is_le());
        ordered.insert(at, item);
    }
    ordered
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn does_what_the_standard_sort_does() {
        let items: Vec<(u8, usize)> = [3, 1, 2, 3, 1, 0].into_iter().zip(0..).collect();
        let mut sorted = items.clone();
        sorted.sort_by_key(|item| item.0);
        assert_eq!(in_order(items, |a, b| a.0.cmp(&b.0)), sorted);
        assert!(in_order(Vec::<u8>::new(), Ord::cmp).is_empty());
    }
}
