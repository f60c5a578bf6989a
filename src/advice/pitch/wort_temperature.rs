//! Pitch: is the wort at a temperature that this yeast can be put into?

use crate::advice::family::{Family, Purpose, Span};
use crate::advice::{Advice, Verdict};
use crate::quantity::{Celsius, Estimate, Measured, TemperatureChange};
use crate::science::{Term, Worked};

/// What is known on pitching day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wort {
    /// What the thermometer says, with that instrument's own uncertainty.
    pub temperature: Estimate<Celsius>,
    /// It was stirred before it was read; unstirred wort lies in layers.
    pub stirred: bool,
    /// The yeast.
    pub family: Family,
    /// The packet's own range, which wins.
    pub packet: Option<Span<Celsius>>,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// In the range.
    Within(Span<Celsius>),
    /// Warmer than the range by so much.
    TooWarm(Span<Celsius>, TemperatureChange),
    /// Colder than the range by so little that it only begins slower.
    ALittleCool(Span<Celsius>, TemperatureChange),
    /// Colder than the range by so much.
    TooCold(Span<Celsius>, TemperatureChange),
    /// Yeast is harmed at this temperature.
    HarmsYeast(Celsius),
    /// It scalds, and cracks glass.
    Scalds,
    /// Not stirred: a layer was read.
    Layers,
    /// The thermometer's own error reaches out of the range.
    ThermometerTooRough(TemperatureChange),
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Put the yeast in.
    Pitch,
    /// Cool to this.
    CoolTo(Celsius),
    /// Warm to this.
    WarmTo(Celsius),
    /// Stir, wait a minute, read again.
    StirAndRead,
    /// Read with a better thermometer.
    ReadWithProbe,
}

/// From this on, liquid scalds within seconds (common practice, no source).
pub const SCALDS: Celsius = Celsius::literal(50.0);

/// Wort so little under the range begins slower and takes no harm (common practice, no source).
pub const A_LITTLE_COOL: TemperatureChange = TemperatureChange::literal(3.0);

/// Judges the wort. `Go` never above the range, and below it by no more than [`A_LITTLE_COOL`]; a rougher
/// thermometer can turn a `Go` into "can't tell" but never anything into a `Go`.
///
/// ```
/// use fermentside::advice::{Verdict, family::Family, pitch::{Next, Wort, judge}};
/// use fermentside::quantity::{Celsius, Estimate};
///
/// let temperature = Estimate::new(Celsius::literal(19.0), 0.5);
/// let wort = Wort { temperature, stirred: true, family: Family::CleanAle, packet: None };
/// assert_eq!(judge(wort).verdict, Verdict::Go);
/// assert_eq!(judge(Wort { stirred: false, ..wort }).next, Next::StirAndRead);
/// let hot = judge(Wort { temperature: Estimate::new(Celsius::literal(45.0), 0.5), ..wort });
/// assert_eq!((hot.verdict, hot.next), (Verdict::Stop, Next::CoolTo(Celsius::literal(20.0))));
/// ```
#[must_use]
pub fn judge(wort: Wort) -> Advice<Reason, Next> {
    let range = wort.family.range_for(Purpose::Pitching, wort.packet);
    let t = wort.temperature.value();
    let (low, high) = (wort.temperature.lower(1.0), wort.temperature.upper(1.0));
    let worked = Worked::default()
        .input(Term::WortTemperature, t)
        .input(Term::TargetTemperature, range.from)
        .input(Term::TargetTemperature, range.to)
        .doubt(Term::WortTemperature, wort.temperature.sigma());
    let advice = |verdict, reasons, next| Advice { verdict, reasons, next, worked: worked.clone() };
    let harm = wort.family.harmed_above();

    // The high end counts where yeast or skin can be hurt.
    if high >= harm || high >= SCALDS {
        let mut reasons = vec![Reason::HarmsYeast(harm)];
        if high >= SCALDS {
            reasons.push(Reason::Scalds);
        }
        return advice(Verdict::Stop, reasons, Next::CoolTo(range.to));
    }
    if t > range.to {
        let reasons = vec![Reason::TooWarm(range, t.above(range.to))];
        return advice(Verdict::Wait, reasons, Next::CoolTo(range.to));
    }
    let cool = range.from.above(t);
    if cool > A_LITTLE_COOL {
        let reasons = vec![Reason::TooCold(range, cool)];
        return advice(Verdict::Wait, reasons, Next::WarmTo(range.from));
    }
    let stands =
        if t < range.from { Reason::ALittleCool(range, cool) } else { Reason::Within(range) };
    if !wort.stirred {
        return advice(Verdict::CantTell, vec![Reason::Layers, stands], Next::StirAndRead);
    }
    // Half the range is what a thermometer may be out by before its word is worth nothing here.
    let wholly_in = range.from.above(low) <= A_LITTLE_COOL && high <= range.to;
    let half = 0.5 * range.to.above(range.from).value();
    if !wholly_in && wort.temperature.sigma() > half.min(1.0) {
        let rough = TemperatureChange::nearest(wort.temperature.sigma());
        return advice(
            Verdict::CantTell,
            vec![Reason::ThermometerTooRough(rough)],
            Next::ReadWithProbe,
        );
    }
    advice(Verdict::Go, vec![stands], Next::Pitch)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ale(t: f64, sigma: f64) -> Verdict {
        let temperature = Estimate::new(Celsius::literal(t), sigma);
        judge(Wort { temperature, stirred: true, family: Family::CleanAle, packet: None }).verdict
    }

    #[test]
    fn says_go_inside_the_range_and_a_little_under_it() {
        assert_eq!(ale(18.5, 0.5), Verdict::Go);
        assert_eq!(ale(20.5, 0.5), Verdict::Wait);
        assert_eq!(ale(16.5, 0.5), Verdict::Go);
        assert_eq!(ale(14.0, 0.5), Verdict::Go);
        assert_eq!(ale(13.9, 0.5), Verdict::Wait);
        assert_eq!(ale(39.8, 0.5), Verdict::Stop);
        assert_eq!(ale(18.5, 2.5), Verdict::CantTell);
    }

    #[test]
    fn unstirred_wort_is_not_believed() {
        let temperature = Estimate::new(Celsius::literal(18.5), 0.5);
        let wort = Wort { temperature, stirred: false, family: Family::CleanAle, packet: None };
        assert_eq!(judge(wort).verdict, Verdict::CantTell);
    }

    #[test]
    fn the_packet_wins() {
        let temperature = Estimate::new(Celsius::literal(24.0), 0.5);
        let packet = Some(Span::new(Celsius::literal(20.0), Celsius::literal(25.0)));
        let wort = Wort { temperature, stirred: true, family: Family::CleanAle, packet };
        assert_eq!(judge(wort).verdict, Verdict::Go);
    }
}
