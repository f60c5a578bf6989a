//! Short lists in order, and values by their key, on any floor.

use std::cmp::Ordering;

/// The items in order; of two that compare alike, the first stays first.
///
/// The standard sort is 4 kB for every type and order it is used with, which came to 45 kB. Here the
/// places alone are sorted, by one function for all types.
#[must_use]
pub fn in_order<T>(items: Vec<T>, compare: impl Fn(&T, &T) -> Ordering) -> Vec<T> {
    // As a rule they are in order already.
    if items.is_sorted_by(|a, b| compare(a, b).is_le()) {
        return items;
    }
    let places = places_in_order(items.len(), &|a, b| compare(&items[a], &items[b]));
    let mut taken: Vec<Option<T>> = items.into_iter().map(Some).collect();
    places.into_iter().filter_map(|place| taken[place].take()).collect()
}

/// The places 0 to `count` in the order of what stands there, by merging.
fn places_in_order(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    let mut width = 1;
    while width < count {
        let mut merged = Vec::with_capacity(count);
        for pair in places.chunks(2 * width) {
            let (mut left, mut right) = pair.split_at(width.min(pair.len()));
            while let ([a, rest_left @ ..], [b, rest_right @ ..]) = (left, right) {
                if compare(*a, *b).is_le() {
                    merged.push(*a);
                    left = rest_left;
                } else {
                    merged.push(*b);
                    right = rest_right;
                }
            }
            merged.extend_from_slice(left);
            merged.extend_from_slice(right);
        }
        places = merged;
        width *= 2;
    }
    places
}

/// Values by their key, in the keys' order. For what fits in a list: thousands at the most, for each that
/// is put in or taken out moves those behind it. Many at once are collected.
///
/// The standard map is 10 kB for every pair of types it is used with; this one a few hundred bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ByKey<K, V> {
    pairs: Vec<(K, V)>,
}

impl<K, V> Default for ByKey<K, V> {
    fn default() -> Self {
        Self { pairs: Vec::new() }
    }
}

impl<K: Ord, V> ByKey<K, V> {
    /// Nothing yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn place(&self, key: &K) -> Result<usize, usize> {
        // As a rule they come in order.
        match self.pairs.last().map(|(last, _)| last.cmp(key)) {
            Some(Ordering::Less) | None => return Err(self.pairs.len()),
            Some(Ordering::Equal) => return Ok(self.pairs.len() - 1),
            Some(Ordering::Greater) => {}
        }
        self.pairs.binary_search_by(|(known, _)| known.cmp(key))
    }

    /// The value of a key.
    #[must_use]
    pub fn get(&self, key: &K) -> Option<&V> {
        self.place(key).ok().and_then(|at| self.pairs.get(at)).map(|(_, value)| value)
    }

    /// The value of a key, to be changed.
    pub fn get_mut(&mut self, key: &K) -> Option<&mut V> {
        self.place(key).ok().and_then(|at| self.pairs.get_mut(at)).map(|(_, value)| value)
    }

    /// Puts a value there, and gives the one before it.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.place(&key) {
            Ok(at) => self.pairs.get_mut(at).map(|pair| std::mem::replace(&mut pair.1, value)),
            Err(at) => {
                self.pairs.insert(at, (key, value));
                None
            }
        }
    }

    /// The value of a key, made first if it is not there.
    pub fn or_insert_with(&mut self, key: K, make: impl FnOnce() -> V) -> &mut V {
        let at = self.place(&key).unwrap_or_else(|at| {
            self.pairs.insert(at, (key, make()));
            at
        });
        &mut self.pairs[at].1
    }

    /// Takes a value out.
    pub fn remove(&mut self, key: &K) -> Option<V> {
        self.place(key).ok().map(|at| self.pairs.remove(at).1)
    }

    /// Keys and values in order.
    pub fn iter(&self) -> impl Iterator<Item = (&K, &V)> {
        self.pairs.iter().map(|(key, value)| (key, value))
    }

    /// Keys and values in order, the values to be changed.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = (&K, &mut V)> {
        self.pairs.iter_mut().map(|(key, value)| (&*key, value))
    }

    /// Keeps the pairs whose key is wanted.
    pub fn retain(&mut self, wanted: impl Fn(&K) -> bool) {
        self.pairs.retain(|(key, _)| wanted(key));
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for ByKey<K, V> {
    /// Of several with one key, the last.
    fn from_iter<I: IntoIterator<Item = (K, V)>>(pairs: I) -> Self {
        let ordered = in_order(pairs.into_iter().collect(), |a: &(K, V), b| a.0.cmp(&b.0));
        let mut pairs: Vec<(K, V)> = Vec::with_capacity(ordered.len());
        for pair in ordered {
            match pairs.last_mut() {
                Some(last) if last.0 == pair.0 => *last = pair,
                _ => pairs.push(pair),
            }
        }
        Self { pairs }
    }
}

impl<K, V> IntoIterator for ByKey<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.pairs.into_iter()
    }
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
        let mut state = 7_u64;
        for count in 0..70 {
            let drawn = std::iter::repeat_with(|| {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                (state >> 33) % 20
            });
            let items: Vec<(u64, usize)> = drawn.take(count).zip(0..).collect();
            let mut sorted = items.clone();
            sorted.sort_by_key(|item| item.0);
            assert_eq!(in_order(items, |a, b| a.0.cmp(&b.0)), sorted);
        }
        assert!(in_order(Vec::<u8>::new(), Ord::cmp).is_empty());
    }

    #[test]
    fn does_what_the_standard_map_does() {
        let (mut ours, mut theirs) = (ByKey::new(), std::collections::BTreeMap::new());
        for (step, key) in [5, 1, 9, 5, 3, 1, 7, 9].into_iter().enumerate() {
            assert_eq!(ours.insert(key, step), theirs.insert(key, step));
        }
        for key in 0..10 {
            assert_eq!(ours.get(&key), theirs.get(&key));
        }
        assert_eq!(ours.remove(&5), theirs.remove(&5));
        assert_eq!(ours.remove(&5), None);
        assert_eq!(*ours.or_insert_with(4, || 40), *theirs.entry(4).or_insert(40));
        assert_eq!(*ours.or_insert_with(9, || 90), *theirs.entry(9).or_insert(90));
        ours.retain(|key| *key != 3);
        theirs.retain(|key, _| *key != 3);
        assert!(ours.iter().eq(theirs.iter()));
        assert!(ours.clone().into_iter().eq(theirs));
        assert_eq!(ours.clone().into_iter().rev().collect::<ByKey<_, _>>(), ours);
        let twice = [(2, 'a'), (1, 'b'), (2, 'c')].into_iter().collect::<ByKey<_, _>>();
        assert!(twice.iter().eq([(&1, &'b'), (&2, &'c')]));
    }
}
