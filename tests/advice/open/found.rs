//! What the bottle opened last asks of the others.

use fermentside::advice::Verdict;
use fermentside::advice::open::{Found, Next, WaitingBottles, judge};
use fermentside::quantity::{Hours, Measured, Moment};

/// What is said of the last one and what is asked of the others are one answer.
#[test]
fn a_little_fizz_is_given_time_and_a_lively_one_too_soon_is_chilled() {
    let bottled: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    let day = |days: f64| bottled.after(Hours::nearest(days * 24.0));
    let at = |found, now| {
        let waiting = WaitingBottles { bottled, place: None, original: None, found, now };
        let advice = judge(waiting);
        (advice.verdict, advice.next)
    };
    let wait = |then| (Verdict::Wait, Next::WaitUntil(day(then)));
    let try_one = (Verdict::Go, Next::TryOne);
    assert_eq!(at(Found::Little(day(6.0)), day(6.0)), wait(14.0));
    assert_eq!(at(Found::Little(day(6.0)), day(14.0)), try_one);
    assert_eq!(at(Found::Little(day(20.0)), day(20.0)), wait(34.0));
    assert_eq!(at(Found::Little(day(20.0)), day(34.0)), try_one);
    let chill = (Verdict::Stop, Next::Chill(day(8.0)));
    assert_eq!(at(Found::Lively(day(6.0)), day(6.0)), chill);
    assert_eq!(at(Found::Lively(day(6.0)), day(8.0)), try_one);
    assert_eq!(at(Found::Lively(day(20.0)), day(20.0)), (Verdict::Go, Next::Enjoy));
}
