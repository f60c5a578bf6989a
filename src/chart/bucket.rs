//! What meets in a vessel: layers as high as their share of the room.

use super::lettering::apart;

/// What a layer is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Substance {
    /// Wort.
    Wort,
    /// Water.
    Water,
    /// Ice.
    Ice,
}

/// One thing that goes into the vessel.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What it is.
    pub substance: Substance,
    /// Its volume, in the unit of the capacity.
    pub volume: f64,
    /// How warm it is, °C; decides the tone only.
    pub celsius: f64,
    /// How much at which temperature, as the page words it.
    pub figure: String,
    /// Its name, as the page words it.
    pub name: String,
}

/// One layer in the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Its upper edge.
    pub top: f64,
    /// Its lower edge.
    pub bottom: f64,
    /// The middle of its words.
    pub label: f64,
    /// From 0 (ice cold) to 5 (hot).
    pub tone: usize,
}

/// Where everything in the picture stands (320 wide, 272 high).
#[derive(Clone, Debug, PartialEq)]
pub struct Bucket {
    /// The layers in the order given, from the bottom up.
    pub layers: Vec<Placed>,
    /// The surface of the whole.
    pub surface: f64,
    /// The brim.
    pub brim: f64,
    /// How far above the brim the hatched overflow reaches, when there is more than the vessel holds.
    pub overflow: Option<f64>,
}

/// The inside of the vessel, from the brim down to the floor.
const BRIM: f64 = 78.0;
const FLOOR: f64 = 258.0;
/// How full a vessel of unknown size is drawn.
const USUAL: f64 = 0.8;
/// The most that can be shown above the brim, and the least that is seen.
const OVER: (f64, f64) = (8.0, 26.0);
/// Room for the words of one layer.
const LABEL: f64 = 42.0;
/// Warmer than each of these is one tone on, °C.
const TONES: [f64; 5] = [4.0, 15.0, 26.0, 45.0, 75.0];

/// Stacks the layers. Volumes that are no positive number take no room.
#[must_use]
pub fn bucket(layers: &[Layer], capacity: Option<f64>) -> Bucket {
    let room = |v: f64| if v.is_finite() { v.clamp(0.0, 1e9) } else { 0.0 };
    let total: f64 = layers.iter().map(|l| room(l.volume)).sum();
    let holds = capacity.map(room).filter(|c| *c > 0.0);
    let fullness = match holds {
        Some(capacity) => total / capacity,
        None if total > 0.0 => USUAL,
        None => 0.0,
    };
    let height = fullness.min(1.0) * (FLOOR - BRIM);
    let share = |v: f64| if total > 0.0 { room(v) / total } else { 0.0 };
    let mut floor = FLOOR;
    let placed: Vec<Placed> = layers
        .iter()
        .map(|layer| {
            let bottom = floor;
            floor -= share(layer.volume) * height;
            let tone = TONES.iter().filter(|t| layer.celsius > **t).count();
            Placed { top: floor, bottom, label: f64::midpoint(floor, bottom), tone }
        })
        .collect();
    // Words are placed from the top down, layers from the bottom up.
    let wished: Vec<f64> = placed.iter().rev().map(|p| p.label).collect();
    let labels = apart(&wished, &vec![LABEL; wished.len()], BRIM + 22.0, FLOOR + 6.0);
    let layers = placed
        .into_iter()
        .zip(labels.into_iter().rev())
        .map(|(p, label)| Placed { label, ..p })
        .collect();
    let over = (fullness - 1.0) * (FLOOR - BRIM);
    // A rounding error is no overflow.
    let overflow = (fullness > 1.0 + 1e-6).then(|| BRIM - over.clamp(OVER.0, OVER.1));
    Bucket { layers, surface: FLOOR - height, brim: BRIM, overflow }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn layer(volume: f64, celsius: f64) -> Layer {
        let (figure, name) = (String::new(), String::new());
        Layer { substance: Substance::Water, volume, celsius, figure, name }
    }

    #[test]
    fn layers_are_as_high_as_their_share() {
        let b = bucket(&[layer(12.0, 90.0), layer(6.0, 12.0)], Some(36.0));
        let heights: Vec<f64> = b.layers.iter().map(|p| p.bottom - p.top).collect();
        assert!((heights[0] - 60.0).abs() < 1e-9 && (heights[1] - 30.0).abs() < 1e-9);
        assert_eq!((b.layers[0].tone, b.layers[1].tone, b.overflow), (5, 1, None));
        assert!(b.layers[0].label > b.layers[1].label);
    }

    #[test]
    fn more_than_it_holds_stands_above_the_brim() {
        let b = bucket(&[layer(20.0, 20.0), layer(5.0, 0.0)], Some(23.0));
        assert!(b.overflow.is_some_and(|top| top < b.brim));
        assert_eq!(bucket(&[layer(23.0, 20.0)], Some(23.0)).overflow, None);
        assert_eq!(bucket(&[], None).surface, FLOOR);
    }

    proptest! {
        #[test]
        fn everything_is_finite(
            parts in proptest::collection::vec((any::<f64>(), any::<f64>()), 0..5),
            capacity in proptest::option::of(any::<f64>()),
        ) {
            let layers: Vec<_> = parts.iter().map(|&(v, t)| layer(v, t)).collect();
            let b = bucket(&layers, capacity);
            prop_assert!(b.surface >= BRIM - 1e-6 && b.surface <= FLOOR);
            for p in &b.layers {
                prop_assert!(p.top.is_finite() && p.label.is_finite() && p.top <= p.bottom);
            }
        }
    }
}
