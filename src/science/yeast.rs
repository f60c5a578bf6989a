//! How much dry yeast: by the makers' dose, and beside it by cells.

use super::{Amount, ScienceError, Source, Term, Worked};
use crate::quantity::{Grams, Litres, Measured, Plato};

/// Living cells a gram: more than 5e9 guaranteed by makers, up to about three times that measured.
const CELLS_PER_GRAM: (f64, f64) = (5e9, 15e9);
/// Wort stronger than this wants more yeast (about 1.061; common practice, no source).
const STRONG: f64 = 15.0;

crate::choices! {
    /// Warm or cold fermentation.
    pub enum Pitching {
        /// Ale: makers say 50 to 80 g/hL; 0.75 million cells a mL and degree Plato.
        Warm = "warm",
        /// Lager, pitched cold: 80 to 120 g/hL; 1.5 million.
        Cold = "cold",
    }
}

impl Pitching {
    const fn maker(self) -> (f64, f64) {
        match self {
            Self::Warm => (50.0, 80.0),
            Self::Cold => (80.0, 120.0),
        }
    }

    const fn million_per_ml_and_plato(self) -> f64 {
        match self {
            Self::Warm => 0.75,
            Self::Cold => 1.5,
        }
    }
}

/// A lowest and a highest amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Lowest.
    pub from: Grams,
    /// Highest.
    pub to: Grams,
}

/// How much dry yeast a wort wants.
#[derive(Clone, Debug, PartialEq)]
pub struct DryYeast {
    /// By the makers' dose, raised in proportion for wort above 15 °P.
    pub by_maker: Range,
    /// By cells: the low end if the sachet is as lively as measured, the high end if only as guaranteed.
    pub by_cells: Range,
    /// How it was worked out.
    pub worked: Worked,
}

/// Dry yeast for `volume` of wort of `extract`.
///
/// ```
/// use fermentside::quantity::{Litres, Measured, Plato};
/// use fermentside::science::{ScienceError, yeast::{Pitching, dry_yeast}};
///
/// // 50 to 80 g/hL, as a maker says for ale.
/// let ale = |litres| dry_yeast(Pitching::Warm, Litres::literal(litres), Plato::literal(12.0));
/// let wanted = ale(19.0)?.by_maker;
/// let written = format!("{:.1} to {:.1} g", wanted.from.value(), wanted.to.value());
/// assert_eq!(written, "9.5 to 15.2 g");
/// assert_eq!(ale(0.0), Err(ScienceError::NothingThere));
/// # Ok::<(), ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no wort; [`ScienceError::OutOfRange`] for more than can be.
pub fn dry_yeast(
    pitching: Pitching,
    volume: Litres,
    extract: Plato,
) -> Result<DryYeast, ScienceError> {
    let (litres, plato) = (volume.value(), extract.value().max(0.0));
    if litres <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let strong = (plato / STRONG).max(1.0);
    let (low, high) = pitching.maker();
    let maker = |per_hl: f64| Grams::new(per_hl / 100.0 * litres * strong);
    let by_maker = Range { from: maker(low)?, to: maker(high)? };
    let cells = pitching.million_per_ml_and_plato() * 1e6 * litres * 1000.0 * plato;
    let by_cells = Range {
        from: Grams::new(cells / CELLS_PER_GRAM.1)?,
        to: Grams::new(cells / CELLS_PER_GRAM.0)?,
    };
    let worked = Worked::default()
        .input(Term::BeerVolume, volume)
        .input(Term::OriginalExtract, extract)
        .step(
            Term::AmountOfYeastFromMaker,
            by_maker.from,
            "g/hL × L ÷ 100, × °P ÷ 15 above 15",
            Source::MakersDose,
        )
        .step(Term::AmountOfYeastFromMaker, by_maker.to, "the same, upper dose", Source::MakersDose)
        .step(
            Term::YeastCells,
            Amount::Number(cells / 1e9, 0, "thousand million"),
            "million a mL and °P × mL × °P",
            Source::CommonPractice,
        )
        .step(
            Term::AmountOfYeastFromCells,
            by_cells.from,
            "cells ÷ 15·10⁹ a gram",
            Source::CommonPractice,
        )
        .step(
            Term::AmountOfYeastFromCells,
            by_cells.to,
            "cells ÷ 5·10⁹ a gram",
            Source::CommonPractice,
        );
    Ok(DryYeast { by_maker, by_cells, worked })
}

/// Whole sachets of `size` that hold at least `wanted`.
///
/// ```
/// use fermentside::quantity::Grams;
/// use fermentside::science::{ScienceError, yeast::sachets};
///
/// let (wanted, size) = (Grams::literal(15.2), Grams::literal(11.0));
/// assert_eq!(sachets(wanted, size), Ok(2));
/// assert_eq!(sachets(wanted, Grams::literal(0.0)), Err(ScienceError::NothingThere));
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for an empty sachet.
pub fn sachets(wanted: Grams, size: Grams) -> Result<u32, ScienceError> {
    if size.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    // A hair over a whole number is that number.
    Ok((wanted.value() / size.value() - 1e-6).ceil().max(0.0) as u32)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_makers_range_for_a_common_batch() {
        // 19 L of ale: 9.5 to 15.2 g, one 11 g sachet; the same as lager: 15 to 23 g, two.
        let ale = dry_yeast(Pitching::Warm, Litres::literal(19.0), Plato::literal(12.0))
            .expect("in range");
        assert!((ale.by_maker.from.value() - 9.5).abs() < 1e-9);
        assert!((ale.by_maker.to.value() - 15.2).abs() < 1e-9);
        assert_eq!(sachets(ale.by_maker.from, Grams::literal(11.0)), Ok(1));
        let lager = dry_yeast(Pitching::Cold, Litres::literal(19.0), Plato::literal(12.0))
            .expect("in range");
        assert_eq!(sachets(lager.by_maker.from, Grams::literal(11.0)), Ok(2));
        assert!(lager.by_cells.to > ale.by_cells.to);
    }

    #[test]
    fn whole_sachets_are_not_rounded_up_again() {
        assert_eq!(sachets(Grams::literal(22.0), Grams::literal(11.0)), Ok(2));
        assert_eq!(sachets(Grams::literal(22.1), Grams::literal(11.0)), Ok(3));
    }
}
