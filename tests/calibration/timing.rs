//! How long a forecast takes: printed, because a busy machine is slow. The counts of work are in
//! `advice::watch::forecast`.

use crate::quantile;
use fermentside::advice::family::Family;
use fermentside::advice::watch::forecast::forecast;
use fermentside::advice::watch::{Course, Look};
use fermentside::quantity::{Estimate, Hours, Measured, Moment, SpecificGravity};
use std::time::Instant;

/// An ale read so many times in twelve days.
fn read(times: u32) -> Course {
    let pitched: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    let main = (0..times).map(|i| {
        let hours = 20.0 + 268.0 * f64::from(i) / f64::from(times - 1);
        let wobble = 0.0005 * f64::from(i % 3) - 0.0005;
        let gravity = 1.011 + 0.039 / (1.0 + ((hours - 52.0) / 12.0).exp()) + wobble;
        let gravity = Estimate::new(SpecificGravity::nearest(gravity), 0.0007);
        Look { at: pitched.after(Hours::nearest(hours)), gravity, beer: None }
    });
    Course {
        main: main.collect(),
        satellite: Vec::new(),
        original: Some(Estimate::new(SpecificGravity::literal(1.050), 0.001)),
        pitched: Some(pitched),
        family: Family::CleanAle,
        stated_end: None,
        added: None,
        refracted: vec![],
    }
}

#[test]
fn it_takes_milliseconds() {
    for times in [5, 30, 200, 1000] {
        let course = read(times);
        let took = (0..15).map(|_| {
            let start = Instant::now();
            let found = forecast(&course).expect("a forecast");
            assert!((found.end_middle.value() - 1.011).abs() < 0.001, "{:?}", found.end);
            start.elapsed().as_secs_f64() * 1000.0
        });
        let median = quantile(took.collect::<Vec<_>>().into_iter(), 0.5);
        println!("{times} readings: {median:.1} ms");
        // Only what is out of all proportion fails, in any build on any machine.
        assert!(median < 2000.0, "{times} readings took {median} ms");
    }
}
