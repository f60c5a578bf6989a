//! Yeast families and their usual figures. The packet's own numbers win over all of these.
//!
//! Temperatures and attenuations: common practice, no source.

use crate::quantity::{Attenuation, Celsius, Hours, Measured, Plato, SpecificGravity};
use crate::science::{sucrose, yeast::Pitching};
use serde::{Deserialize, Serialize};

crate::choices! {
    /// A family of yeast, by how it is used.
    pub enum Family {
        /// Clean, American-type ale.
        CleanAle = "clean_ale",
        /// English-type ale.
        EnglishAle = "english_ale",
        /// Belgian-type ale.
        BelgianAle = "belgian_ale",
        /// German wheat beer.
        GermanWheat = "german_wheat",
        /// Saison-type, and any farmhouse yeast that is not known: often eats on slowly for weeks
        /// (diastatic).
        Saison = "saison",
        /// Lager.
        Lager = "lager",
        /// Kveik.
        Kveik = "kveik",
        /// Cider.
        Cider = "cider",
        /// Wine and country wine.
        Wine = "wine",
        /// The kit's own, or not known.
        Unknown = "unknown",
    }
}

/// What a range of temperatures is wanted for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Wort that the yeast is put into.
    Pitching,
    /// Beer while it ferments.
    Fermenting,
}

/// From a lowest to a highest value.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(from = "Ends<T>", bound(deserialize = "T: Measured + Deserialize<'de>"))]
pub struct Span<T> {
    /// Lowest.
    pub from: T,
    /// Highest.
    pub to: T,
}

/// The two ends as they were stored, in whatever order.
#[derive(Deserialize)]
struct Ends<T> {
    from: T,
    to: T,
}

impl<T: Measured> From<Ends<T>> for Span<T> {
    fn from(Ends { from, to }: Ends<T>) -> Self {
        Self::new(from, to)
    }
}

impl<T: Measured> Span<T> {
    /// From one value to another, put in order.
    ///
    /// ```
    /// use fermentside::{advice::family::Span, quantity::Celsius};
    ///
    /// let [from, to, hot] = [17.0, 20.0, 26.0].map(Celsius::literal);
    /// let range = Span::new(to, from);
    /// assert_eq!((range.from, range.to), (from, to));
    /// assert!(range.contains(to) && !range.contains(hot));
    /// ```
    #[must_use]
    pub fn new(a: T, b: T) -> Self {
        if a <= b { Self { from: a, to: b } } else { Self { from: b, to: a } }
    }

    /// Whether the value lies in the span, ends included.
    #[must_use]
    pub fn contains(self, value: T) -> bool {
        (self.from..=self.to).contains(&value)
    }

    /// The middle.
    ///
    /// ```
    /// use fermentside::{advice::family::Family, quantity::Celsius};
    ///
    /// assert_eq!(Family::Lager.pitch_at().middle(), Celsius::literal(10.0));
    /// ```
    #[must_use]
    pub fn middle(self) -> T {
        T::nearest(0.5 * (self.from.value() + self.to.value()))
    }
}

impl Family {
    /// Wort temperature to pitch at.
    #[must_use]
    pub const fn pitch_at(self) -> Span<Celsius> {
        match self {
            Self::CleanAle | Self::EnglishAle | Self::Unknown => celsius(17.0, 20.0),
            Self::BelgianAle => celsius(18.0, 20.0),
            Self::GermanWheat => celsius(15.5, 19.0),
            Self::Saison => celsius(19.0, 22.0),
            Self::Lager => celsius(8.0, 12.0),
            Self::Kveik => celsius(25.0, 38.0),
            Self::Cider => celsius(13.0, 20.0),
            Self::Wine => celsius(15.0, 24.0),
        }
    }

    /// Beer temperature while it ferments.
    #[must_use]
    pub const fn ferments_at(self) -> Span<Celsius> {
        match self {
            Self::CleanAle | Self::GermanWheat | Self::Unknown => celsius(17.0, 22.0),
            Self::EnglishAle => celsius(18.0, 22.0),
            Self::BelgianAle => celsius(18.0, 26.0),
            Self::Saison => celsius(20.0, 30.0),
            Self::Lager => celsius(9.0, 14.0),
            Self::Kveik => celsius(20.0, 40.0),
            Self::Cider => celsius(13.0, 20.0),
            Self::Wine => celsius(15.0, 24.0),
        }
    }

    /// The range that counts for this use, wherever it is judged or shown: the packet's own, where it
    /// gives one, else the family's.
    ///
    /// ```
    /// use fermentside::advice::family::{Family, Purpose, Span};
    /// use fermentside::quantity::Celsius;
    ///
    /// let packet = Span::new(Celsius::literal(15.0), Celsius::literal(24.0));
    /// let family = Family::CleanAle;
    /// assert_eq!(family.range_for(Purpose::Pitching, Some(packet)), packet);
    /// assert_eq!(family.range_for(Purpose::Pitching, None), family.pitch_at());
    /// assert_eq!(family.range_for(Purpose::Fermenting, None), family.ferments_at());
    /// ```
    #[must_use]
    pub fn range_for(self, purpose: Purpose, packet: Option<Span<Celsius>>) -> Span<Celsius> {
        packet.unwrap_or(match purpose {
            Purpose::Pitching => self.pitch_at(),
            Purpose::Fermenting => self.ferments_at(),
        })
    }

    /// Above this the yeast itself is harmed.
    #[must_use]
    pub const fn harmed_above(self) -> Celsius {
        match self {
            Self::Kveik => Celsius::literal(43.0),
            _ => Celsius::literal(40.0),
        }
    }

    /// Apparent attenuation at the end. Wide where kits and extract make it so.
    #[must_use]
    pub const fn attenuates(self) -> Span<Attenuation> {
        let (from, to) = match self {
            Self::CleanAle => (73.0, 80.0),
            Self::EnglishAle => (65.0, 76.0),
            Self::BelgianAle => (74.0, 85.0),
            Self::GermanWheat => (72.0, 80.0),
            Self::Saison => (80.0, 95.0),
            Self::Lager => (73.0, 82.0),
            Self::Kveik => (75.0, 82.0),
            Self::Cider => (92.0, 110.0),
            Self::Wine => (100.0, 112.0),
            Self::Unknown => (65.0, 85.0),
        };
        Span { from: Attenuation::literal(from), to: Attenuation::literal(to) }
    }

    /// The yeast may go on through dextrins for weeks, so an expected end proves nothing.
    #[must_use]
    pub const fn may_go_on(self) -> bool {
        matches!(self, Self::Saison)
    }

    /// It may take three days until anything shows.
    #[must_use]
    pub const fn starts_slowly(self) -> bool {
        matches!(self, Self::Lager)
    }

    /// Pitched warm or cold, for the amount of yeast.
    #[must_use]
    pub const fn pitching(self) -> Pitching {
        match self {
            Self::Lager => Pitching::Cold,
            _ => Pitching::Warm,
        }
    }

    /// Fewest hours from pitching to a finish that can be believed.
    #[must_use]
    pub const fn least_time(self) -> Hours {
        let days = match self {
            Self::Kveik => 3.0,
            Self::CleanAle | Self::EnglishAle | Self::BelgianAle | Self::GermanWheat => 6.0,
            Self::Lager => 12.0,
            Self::Cider | Self::Wine => 14.0,
            Self::Saison => 21.0,
            Self::Unknown => 8.0,
        };
        Hours::literal(days * 24.0)
    }

    /// Where the gravity may end, from the original gravity.
    ///
    /// ```
    /// use fermentside::{advice::family::Family, quantity::{Measured, SpecificGravity}};
    ///
    /// let end = Family::CleanAle.ends_at(SpecificGravity::literal(1.050));
    /// let written = format!("{:.3} to {:.3}", end.from.value(), end.to.value());
    /// assert_eq!(written, "1.010 to 1.013");
    /// ```
    #[must_use]
    pub fn ends_at(self, original: SpecificGravity) -> Span<SpecificGravity> {
        let oe = sucrose::plato(original).value();
        let end = |attenuation: Attenuation| {
            let ae = oe * (1.0 - attenuation.value() / 100.0);
            sucrose::specific_gravity(Plato::nearest(ae))
        };
        Span::new(end(self.attenuates().from), end(self.attenuates().to))
    }
}

const fn celsius(from: f64, to: f64) -> Span<Celsius> {
    Span { from: Celsius::literal(from), to: Celsius::literal(to) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_usual_ale_ends_about_a_quarter_of_the_way() {
        let end = Family::CleanAle.ends_at(SpecificGravity::literal(1.050));
        assert!((1.009..1.011).contains(&end.from.value()), "{end:?}");
        assert!((1.012..1.015).contains(&end.to.value()), "{end:?}");
        assert!(Family::Cider.ends_at(SpecificGravity::literal(1.048)).from.value() < 1.0);
    }

    #[test]
    fn every_family_pitches_where_it_can_live() {
        for family in Family::ALL {
            assert!(family.pitch_at().to < family.harmed_above(), "{family:?}");
            assert!(family.pitch_at().from <= family.ferments_at().to, "{family:?}");
        }
    }
}
