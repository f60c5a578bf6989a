//! Ways to bring wort to the yeast's range: waiting, cold water, ice, or warm water when it is too cold,
//! side by side with what each costs.
//!
//! Nothing is ever offered over the vessel's volume: where the water that is needed does not fit, the
//! way goes as far as the vessel lets it and says so.

use super::clock::{Bath, into_range};
use crate::advice::family::Span;
use crate::order::in_order;
use crate::quantity::{
    Celsius, Estimate, Grams, GravityChange, Hours, Litres, Measured, SpecificGravity,
};
use crate::science::cooling::{Look, Window};
use crate::science::heat::{Blend, Part, blend, ice_to_reach, water_to_reach};
use crate::science::{Worked, sucrose};

/// A wait up to this is no trouble (common practice, no source).
const SHORT_WAIT: Hours = Hours::literal(2.0);
/// Unpitched wort should not stand longer than this (common practice, no source).
const LONG_WAIT: Hours = Hours::literal(12.0);
/// A loss of gravity smaller than this is not tasted (common practice, no source).
const LITTLE: GravityChange = GravityChange::literal(0.002);

/// What there is to work with.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// The wort as it stands.
    pub wort: Part,
    /// Where it should come to.
    pub range: Span<Celsius>,
    /// What the vessel may hold at most, foam's room left free.
    pub vessel: Litres,
    /// The volume the recipe wants in the end, if it is still to be topped up. Water up to there
    /// weakens nothing that was not meant to be.
    pub planned: Option<Litres>,
    /// Cold water at hand.
    pub cold: Option<Celsius>,
    /// Warm water at hand, for wort that is too cold.
    pub warm: Option<Celsius>,
    /// Clean ice at hand, at 0 °C.
    pub ice: Option<Grams>,
    /// Looks at the wort, and the water bath or room that it stands in.
    pub waiting: Option<(Vec<Look>, Bath)>,
}

/// What a way takes.
#[derive(Clone, Debug, PartialEq)]
pub enum Takes {
    /// Time, counted from the last look.
    Time(Window),
    /// Water of a temperature.
    Water(Litres, Celsius),
    /// Ice.
    Ice(Grams),
}

/// Which way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Means {
    /// Leave it in its bath or room.
    Wait,
    /// Add cold water.
    ColdWater,
    /// Add ice.
    Ice,
    /// Add warm water.
    WarmWater,
}

/// How far a way goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Into the range.
    There,
    /// Part of the way: the vessel holds no more.
    VesselFull,
    /// Part of the way: no more is at hand.
    NoMoreAtHand,
    /// Nowhere: it is not cold (or warm) enough, or the wort is not moving that way.
    Nowhere,
}

/// One way and its cost.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Which.
    pub means: Means,
    /// How far it goes.
    pub reach: Reach,
    /// What it takes; `None` when it leads nowhere.
    pub takes: Option<Takes>,
    /// Where the wort ends, with one standard deviation.
    pub temperature: Estimate<Celsius>,
    /// Volume in the vessel after.
    pub volume: Litres,
    /// Gravity after.
    pub gravity: SpecificGravity,
    /// How much weaker it becomes.
    pub weaker: GravityChange,
    /// The volume after is no more than the recipe wants, so that the water was due anyway.
    pub within_plan: bool,
    /// How it was worked out.
    pub worked: Worked,
}

/// Every way that can be thought of with what is at hand, the most sensible first. Empty when the wort
/// is in the range.
///
/// Order: what reaches the range before what does not; then what costs neither beer nor evening: a
/// short wait, water that was due anyway or weakens it by less than two points, ice that does, a wait
/// up to twelve hours, water or ice that weakens it more, and a longer or endless wait last.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::pitch::ways_to_range::{Reach, Scene, ways};
/// use fermentside::quantity::{Celsius, Litres, Plato};
/// use fermentside::science::heat::Part;
///
/// let (volume, extract) = (Litres::literal(15.0), Plato::literal(12.0));
/// let wort = Part { volume, extract, temperature: Celsius::literal(25.0) };
/// let (range, cold) = (Family::CleanAle.pitch_at(), Some(Celsius::literal(10.0)));
/// let first = |litres| {
///     let vessel = Litres::literal(litres);
///     let scene =
///         Scene { wort, range, vessel, planned: None, cold, warm: None, ice: None, waiting: None };
///     ways(&scene)[0].reach
/// };
/// assert_eq!([first(25.0), first(16.0)], [Reach::There, Reach::VesselFull]);
/// ```
#[must_use]
pub fn ways(scene: &Scene) -> Vec<Way> {
    let t = scene.wort.temperature;
    let too_warm = t > scene.range.to;
    if scene.range.contains(t) {
        return vec![];
    }
    let aim = scene.range.middle();
    let mut ways = vec![];
    if let Some((looks, bath)) = &scene.waiting {
        ways.push(wait(scene, looks, bath));
    }
    let water = if too_warm {
        scene.cold.map(|at| (Means::ColdWater, at))
    } else {
        scene.warm.map(|at| (Means::WarmWater, at))
    };
    if let Some((means, at)) = water {
        ways.push(add_water(scene, means, at, aim));
    }
    if let Some(at_hand) = scene.ice.filter(|_| too_warm) {
        ways.push(add_ice(scene, at_hand, aim));
    }
    // Stable: equals stay in the order waiting, water, ice.
    in_order(ways, |a, b| order(a).cmp(&order(b)))
}

fn order(way: &Way) -> (u8, u8) {
    let reach = match way.reach {
        Reach::There => 0,
        Reach::VesselFull | Reach::NoMoreAtHand => 1,
        Reach::Nowhere => 2,
    };
    let costs_little = way.within_plan || way.weaker <= LITTLE;
    let sense = match &way.takes {
        Some(Takes::Time(window)) => match window.latest {
            Some(latest) if latest <= SHORT_WAIT => 0,
            Some(latest) if latest <= LONG_WAIT => 3,
            _ => 5,
        },
        Some(Takes::Water(..)) if costs_little => 1,
        Some(Takes::Ice(_)) if costs_little => 2,
        Some(_) => 4,
        None => 6,
    };
    (reach, sense)
}

fn unchanged(scene: &Scene, means: Means) -> Way {
    Way {
        means,
        reach: Reach::Nowhere,
        takes: None,
        temperature: Estimate::exact(scene.wort.temperature),
        volume: scene.wort.volume,
        gravity: sucrose::specific_gravity(scene.wort.extract),
        weaker: GravityChange::literal(0.0),
        within_plan: false,
        worked: Worked::default(),
    }
}

fn wait(scene: &Scene, looks: &[Look], bath: &Bath) -> Way {
    let still = unchanged(scene, Means::Wait);
    let (range, t) = (scene.range, scene.wort.temperature);
    // Waiting stops at the near end of the range.
    let near = if t > range.to { range.to } else { range.from };
    match into_range(looks, bath, range, t) {
        Err(_) => still,
        Ok(window) => Way {
            reach: Reach::There,
            temperature: Estimate::exact(near),
            worked: window.worked.clone(),
            takes: Some(Takes::Time(window)),
            within_plan: true,
            ..still
        },
    }
}

fn blended(scene: &Scene, means: Means, reach: Reach, takes: Takes, blend: Blend) -> Way {
    let before = sucrose::specific_gravity(scene.wort.extract);
    Way {
        means,
        reach,
        takes: Some(takes),
        temperature: blend.temperature,
        volume: blend.volume,
        gravity: blend.gravity,
        weaker: GravityChange::nearest(before.value() - blend.gravity.value()),
        within_plan: scene.planned.is_some_and(|planned| blend.volume <= planned),
        worked: blend.worked,
    }
}

fn add_water(scene: &Scene, means: Means, at: Celsius, aim: Celsius) -> Way {
    let with = |litres: Litres| {
        let water = Part { volume: litres, temperature: at, ..nothing() };
        blend(&[scene.wort, water], Grams::literal(0.0)).ok()
    };
    // Water that is only as cold as the wort, or colder than the range is warm, leads nowhere.
    let moves = match means {
        Means::WarmWater => at > scene.wort.temperature,
        _ => at < scene.wort.temperature,
    };
    if !moves || scene.wort.volume.value() <= 0.0 {
        return unchanged(scene, means);
    }
    // The middle of the range, or its near end when that is all this water can do.
    let near = if means == Means::WarmWater { scene.range.from } else { scene.range.to };
    for target in [aim, near] {
        if let Ok((litres, blend)) = water_to_reach(scene.wort, at, target)
            && blend.volume <= scene.vessel
        {
            return blended(scene, means, Reach::There, Takes::Water(litres, at), blend);
        }
    }
    let litres = most(scene, |litres| with(litres).map(|blend| blend.volume));
    match with(litres).filter(|_| litres.value() > 0.0) {
        Some(blend) => {
            let full = blend.volume.value() >= scene.vessel.value() - 0.01;
            let reach = if full { Reach::VesselFull } else { Reach::Nowhere };
            blended(scene, means, reach, Takes::Water(litres, at), blend)
        }
        None => Way { reach: Reach::VesselFull, ..unchanged(scene, means) },
    }
}

fn add_ice(scene: &Scene, at_hand: Grams, aim: Celsius) -> Way {
    let with = |ice: Grams| blend(&[scene.wort], ice).ok();
    if scene.wort.volume.value() <= 0.0 || at_hand.value() <= 0.0 {
        return unchanged(scene, Means::Ice);
    }
    let mut short = Reach::VesselFull;
    for target in [aim, scene.range.to] {
        if let Ok((ice, blend)) = ice_to_reach(scene.wort, target) {
            if blend.volume > scene.vessel {
                continue;
            }
            if ice <= at_hand {
                return blended(scene, Means::Ice, Reach::There, Takes::Ice(ice), blend);
            }
            short = Reach::NoMoreAtHand;
        }
    }
    // A litre of melted ice is about a kilogram.
    let room = most(scene, |litres| {
        with(Grams::nearest(1000.0 * litres.value())).map(|blend| blend.volume)
    });
    let ice = Grams::nearest(at_hand.value().min(1000.0 * room.value()));
    match with(ice).filter(|_| ice.value() > 0.0) {
        Some(blend) => blended(scene, Means::Ice, short, Takes::Ice(ice), blend),
        None => Way { reach: short, ..unchanged(scene, Means::Ice) },
    }
}

fn nothing() -> Part {
    Part {
        volume: Litres::literal(0.0),
        extract: crate::quantity::Plato::literal(0.0),
        temperature: Celsius::literal(0.0),
    }
}

/// The most that can be added before the vessel is full, by halving: the blend's volume is not quite
/// the sum of its parts. Always on the safe side of the brim.
fn most(scene: &Scene, volume_with: impl Fn(Litres) -> Option<Litres>) -> Litres {
    let fits = |litres: f64| {
        volume_with(Litres::nearest(litres)).is_some_and(|volume| volume <= scene.vessel)
    };
    let (mut low, mut high) = (0.0, scene.vessel.value());
    if !fits(low) {
        return Litres::literal(0.0);
    }
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if fits(middle) { low = middle } else { high = middle }
    }
    Litres::nearest(low)
}
