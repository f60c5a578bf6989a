//! Drawings as data: what is drawn where, in the brewer's words and units. The page only paints.

use crate::chart::{Course, Layer};

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// What it shows, in a few words.
    pub title: String,
    /// All that can be read from it, in a sentence or two.
    pub description: String,
    /// What is drawn.
    pub sketch: Sketch,
}

/// What is drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Sketch {
    /// The course of a batch.
    Course(Box<CourseSketch>),
    /// The stem in its jar.
    Jar(JarData),
    /// A bottle and what presses in it.
    Bottle(Box<BottleData>),
    /// What meets in the vessel.
    Blend(BlendData),
    /// Self-heating over the days.
    Warmth(WarmthData),
    /// What either of two doses may come to.
    Ends(EndsData),
}

/// The course, laid out, with its words.
#[derive(Clone, Debug, PartialEq)]
pub struct CourseSketch {
    /// Where everything goes.
    pub course: Course,
    /// The sign of the gravity's scale.
    pub symbol: &'static str,
    /// What is written at each of the expected ends.
    pub ends: [&'static str; 2],
    /// What is written at now, where it is to be read again, at the satellite, and below the temperatures that
    /// suit the yeast.
    pub texts: [&'static str; 4],
    /// Place and date below each day of the axis; the month only where it begins.
    pub days: Vec<(f64, String)>,
    /// The reading that is walked to.
    pub here: Option<usize>,
}

/// The stem as it stands in the jar, with the expected end on its paper.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JarData {
    /// The scale is °P.
    pub plato: bool,
    /// Where it stands, on that scale.
    pub reading: f64,
    /// The expected end, lower and upper, in figures and what it is; of two the one where it may rest first.
    pub ends: Vec<((f64, f64), [String; 2])>,
    /// The reading, its ±, and when it was read.
    pub texts: [String; 3],
}

/// A value and what it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Figure {
    /// "2.9 bar".
    pub value: String,
    /// "at 20 °C".
    pub name: String,
}

/// How the worst case stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GlassState {
    /// Within the ceiling.
    #[default]
    Within,
    /// Within it, but much for glass like this.
    Caution,
    /// Above it.
    Above,
    /// This bottle must not be filled with anything that makes gas.
    Never,
}

/// A bottle.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BottleData {
    /// Volumes in it already, from the sugar, and that may still come.
    pub parts: [f64; 3],
    /// The most it bears; none for one that must not be filled.
    pub bears: Option<f64>,
    /// How it stands.
    pub state: GlassState,
    /// The three parts in words.
    pub keys: [String; 3],
    /// The worst case.
    pub worst: Figure,
    /// The ceiling.
    pub ceiling: Figure,
    /// What the scale is of.
    pub volumes: &'static str,
    /// Pressure at 20 °C.
    pub usual: Figure,
    /// Pressure at the hottest place.
    pub hottest: Figure,
}

/// What meets in the vessel.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BlendData {
    /// From the bottom up.
    pub layers: Vec<Layer>,
    /// What the vessel holds, in the unit of the layers.
    pub capacity: Option<f64>,
    /// The temperature that results; empty while there is none.
    pub result: Figure,
    /// The words at the brim: what it holds, or by how much it is too little.
    pub brim: String,
}

/// Self-heating, in the brewer's degrees.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WarmthData {
    /// Days, lowest, likely, highest.
    pub days: Vec<(f64, f64, f64, f64)>,
    /// The yeast's range.
    pub range: (f64, f64),
    /// The degrees' symbol.
    pub symbol: &'static str,
    /// The words for the range.
    pub range_text: String,
    /// The words for days.
    pub days_text: &'static str,
}

/// What either of two doses may come to, in volumes of carbon dioxide.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EndsData {
    /// What is wished for.
    pub target: f64,
    /// One bar a dose: from, to, with their words, and the dose.
    pub bars: Vec<EndsBar>,
}

/// What one dose may come to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EndsBar {
    /// The least, in volumes.
    pub from: f64,
    /// The most, in volumes.
    pub to: f64,
    /// The least in words.
    pub from_text: String,
    /// The most in words.
    pub to_text: String,
    /// The dose in words.
    pub dose: String,
}
