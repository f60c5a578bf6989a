//! The cooling clock of pitching day: when wort that stands in a bath or a room comes into its yeast's
//! range. The card, the ways beside it and the Bench all read this one.

use crate::advice::family::Span;
use crate::advice::thermometer::for_the_clock;
use crate::quantity::{Celsius, Estimate, Grams, Hours, Litres, Measured, Plato};
use crate::science::cooling::{Look, Window, window};
use crate::science::{ScienceError, Term, Worked, heat};

/// What the wort stands in, by where it will come to rest there.
#[derive(Clone, Debug, PartialEq)]
pub struct Bath {
    settles: Estimate<Celsius>,
    worked: Worked,
}

impl Bath {
    /// A room, or water that is kept at this.
    ///
    /// ```
    /// use fermentside::{advice::pitch::clock::Bath, quantity::Celsius};
    ///
    /// let iced = Bath::steady(Celsius::literal(4.0));
    /// assert_eq!(iced.settles().value(), Celsius::literal(4.0));
    /// ```
    #[must_use]
    pub fn steady(t: Celsius) -> Self {
        Self { settles: Estimate::exact(t), worked: Worked::default() }
    }

    /// A tub of so much still water, which is at `t` while the wort is as it stands: they share their heat,
    /// and none goes to the room. 0 to 100 °C.
    ///
    /// With that the difference between the wort and where both come to rest still dies away by Newton's
    /// law: dT/dt = −U (T − T_b) ÷ C and dT_b/dt = U (T − T_b) ÷ C_b keep C T + C_b T_b, so that
    /// T − T_end = (T₀ − T_end) e^(−kt) with k = U (1/C + 1/C_b).
    ///
    /// ```
    /// use fermentside::advice::pitch::clock::Bath;
    /// use fermentside::quantity::{Celsius, Litres, Measured, Plato};
    /// use fermentside::science::heat::Part;
    ///
    /// let [wort, tub] = [40.0, 10.0].map(Celsius::literal);
    /// let (twenty, extract) = (Litres::literal(20.0), Plato::literal(0.0));
    /// let wort = Part { volume: twenty, extract, temperature: wort };
    /// // As much water as wort: halfway, less a little for the lighter hot one.
    /// let end = Bath::tub(wort, twenty, tub)?.settles().value().value();
    /// assert_eq!(format!("{end:.1}"), "24.9");
    /// assert!(Bath::tub(wort, twenty, Celsius::literal(120.0)).is_err());
    /// # Ok::<(), fermentside::science::ScienceError>(())
    /// ```
    ///
    /// # Errors
    /// As [`heat::blend`].
    pub fn tub(wort: heat::Part, water: Litres, t: Celsius) -> Result<Self, ScienceError> {
        let water = heat::Part { volume: water, extract: Plato::literal(0.0), temperature: t };
        // Heat is shared through a wall as it is in a blend.
        let shared = heat::blend(&[wort, water], Grams::literal(0.0))?;
        let mut worked = shared.worked;
        worked.steps.retain(|step| step.term != Term::VolumeAfter);
        worked.steps.retain(|step| step.term != Term::CorrectedGravity);
        Ok(Self { settles: shared.temperature, worked })
    }

    /// Whether the wort comes to rest in it short of `target`, as far as that can be known.
    ///
    /// ```
    /// use fermentside::{advice::pitch::clock::Bath, quantity::Celsius};
    ///
    /// let [warm, target, cold] = [25.0, 20.0, 12.0].map(Celsius::literal);
    /// // Wort that is cooling, and wort that is warming.
    /// assert!(Bath::steady(warm).stops_short(target, true));
    /// assert!(Bath::steady(cold).stops_short(target, false));
    /// assert!(!Bath::steady(cold).stops_short(target, true));
    /// ```
    #[must_use]
    pub fn stops_short(&self, target: Celsius, cooling: bool) -> bool {
        let settles = self.settles;
        if cooling { settles.lower(2.0) >= target } else { settles.upper(2.0) <= target }
    }

    /// Where the wort comes to rest in it.
    ///
    /// ```
    /// use fermentside::{advice::pitch::clock::Bath, quantity::Celsius};
    ///
    /// let room = Bath::steady(Celsius::literal(19.0));
    /// assert_eq!(room.settles().sigma(), 0.0);
    /// ```
    #[must_use]
    pub const fn settles(&self) -> Estimate<Celsius> {
        self.settles
    }
}

/// When the wort reaches `target`, counted from the last look. The looks are those of one thermometer.
///
/// ```
/// use fermentside::advice::pitch::clock::{Bath, reaches};
/// use fermentside::quantity::{Celsius, Estimate, Hours, Measured};
/// use fermentside::science::cooling::Look;
///
/// let looks = [(0.0, 40.0), (1.0, 25.0)].map(|(at, t)| Look {
///     at: Hours::literal(at),
///     temperature: Estimate::new(Celsius::literal(t), 0.5),
/// });
/// let bath = Bath::steady(Celsius::literal(10.0));
/// // 30 above the bath, then 15: it halves in an hour, and 7.5 are wanted.
/// assert_eq!(format!("{:.1}", reaches(&looks, &bath, Celsius::literal(17.5))?.likely.value()), "1.0");
/// assert!(reaches(&looks, &bath, Celsius::literal(5.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`window`].
pub fn reaches(looks: &[Look], bath: &Bath, target: Celsius) -> Result<Window, ScienceError> {
    let looks = for_the_clock(looks);
    let settles = bath.settles;
    // Where it comes to rest is known to so much alone, and near that end it is what counts.
    let ends = [settles.lower(2.0), settles.upper(2.0)].map(|t| window(&looks, t, target));
    let mut found = match (window(&looks, settles.value(), target), &ends) {
        (Ok(found), _) => found,
        // It may come there yet.
        (Err(_), [Ok(end), _] | [_, Ok(end)]) => end.clone(),
        (Err(why), _) => return Err(why),
    };
    for end in &ends {
        match end {
            Ok(end) => {
                found.earliest = sooner(found.earliest, end.earliest);
                found.latest = found.latest.zip(end.latest).map(|(a, b)| later(a, b));
            }
            Err(_) => found.latest = None,
        }
    }
    if settles.sigma() > 0.0
        && let [Ok(one), Ok(other)] = &ends
    {
        let apart = (one.likely.value() - other.likely.value()).abs();
        found.worked = found.worked.doubt(Term::BathTemperature, apart / 4.0);
    }
    let mut worked = bath.worked.clone();
    worked.inputs.extend(found.worked.inputs);
    worked.steps.extend(found.worked.steps);
    worked.doubts = found.worked.doubts;
    Ok(Window { worked, ..found })
}

/// When wort that is now at `t` comes into the range: at its near end, whence the middle may never be
/// reached.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::pitch::clock::{Bath, into_range, reaches};
/// use fermentside::quantity::{Celsius, Estimate, Hours};
/// use fermentside::science::cooling::Look;
///
/// let now = Celsius::literal(25.0);
/// let looks = [(0.0, 40.0), (1.0, 25.0)].map(|(at, t)| Look {
///     at: Hours::literal(at),
///     temperature: Estimate::new(Celsius::literal(t), 0.5),
/// });
/// let (bath, range) = (Bath::steady(Celsius::literal(10.0)), Family::CleanAle.pitch_at());
/// assert_eq!(into_range(&looks, &bath, range, now), reaches(&looks, &bath, range.to));
/// ```
///
/// # Errors
/// As [`window`].
pub fn into_range(
    looks: &[Look],
    bath: &Bath,
    range: Span<Celsius>,
    t: Celsius,
) -> Result<Window, ScienceError> {
    reaches(looks, bath, if t > range.to { range.to } else { range.from })
}

fn sooner(a: Hours, b: Hours) -> Hours {
    if a <= b { a } else { b }
}

fn later(a: Hours, b: Hours) -> Hours {
    if a >= b { a } else { b }
}
