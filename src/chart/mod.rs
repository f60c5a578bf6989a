//! Pictures without a screen: where everything in a drawing goes, worked out before anything is drawn.
//!
//! Nothing here knows a screen or a word for people: the page gives the numbers and draws what comes
//! back. Every function takes any finite number and gives finite coordinates.

mod bottle;
mod bucket;
mod course;
mod curve;
mod lettering;
mod paper_scale;
mod scale;
mod ticks;
mod warmth;

pub use bottle::{BottleScale, SIDES as BOTTLE_SIDES, bottle_scale};
pub use bucket::{Bucket, Layer, Placed, Substance, bucket};
pub use course::{
    AxisMark, Course, CourseData, CoursePoint, EndZone, Mark, OutlookPoint, Stop, Zone, course,
    gravity_symbol,
};
pub use curve::{Point, band, smooth, straight};
pub use lettering::{apart, wrap};
pub use paper_scale::{PaperScale, Printed};
pub use scale::Scale;
pub use ticks::{DayTick, Ticks, days, within};
pub use warmth::{Warmth, warmth};
