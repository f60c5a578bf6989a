//! Numbers as people type them: point or comma, spaces, any minus sign, any digits.

use super::read_error::ReadError;

/// What a typed number may mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Numeral {
    /// It can mean one thing only.
    One(f64),
    /// A single comma before exactly three digits: half the world reads `1,050` as 1.050, half as
    /// 1050. The field's own range decides.
    Either {
        /// The comma as a decimal mark.
        decimal: f64,
        /// The comma as a thousands mark.
        grouped: f64,
    },
}

impl Numeral {
    /// The readings to try, the decimal one first.
    ///
    /// ```
    /// use fermentside::quantity::read_numeral;
    ///
    /// let (numeral, _) = read_numeral("1,050")?;
    /// assert_eq!(numeral.meanings().collect::<Vec<_>>(), [1.05, 1050.0]);
    /// # Ok::<(), fermentside::quantity::ReadError>(())
    /// ```
    pub fn meanings(self) -> impl Iterator<Item = f64> {
        let (first, second) = match self {
            Self::One(value) => (value, None),
            Self::Either { decimal, grouped } => (decimal, Some(grouped)),
        };
        std::iter::once(first).chain(second)
    }
}

/// Splits typed text into its number and what stands behind it (a unit, perhaps empty).
///
/// ```
/// use fermentside::quantity::{Numeral, ReadError, read_numeral};
///
/// assert_eq!(read_numeral("12,5 °P")?, (Numeral::One(12.5), "°P".to_owned()));
/// assert!(matches!(read_numeral("1,234.5"), Err(ReadError::TwoMarks { .. })));
/// assert!(matches!(read_numeral("plenty"), Err(ReadError::NotANumber { .. })));
/// # Ok::<(), ReadError>(())
/// ```
///
/// # Errors
/// [`ReadError::Empty`] for nothing, [`ReadError::NotANumber`] for what is no number and
/// [`ReadError::TwoMarks`] for a comma and a point together.
pub fn read_numeral(text: &str) -> Result<(Numeral, String), ReadError> {
    let plain = plain(text);
    let plain = plain.trim();
    if plain.is_empty() {
        return Err(ReadError::Empty);
    }
    let split = plain
        .char_indices()
        .find(|&(at, c)| {
            !(c.is_ascii_digit() || " .,".contains(c) || (at == 0 && "+-".contains(c)))
        })
        .map_or(plain.len(), |(at, _)| at);
    let (number, unit) = plain.split_at(split);
    Ok((numeral(number.trim(), text)?, unit.trim().to_owned()))
}

/// The text in the digits and marks of ASCII. Marks of direction that a keyboard sets by itself go; those
/// that turn what follows about stay and are no number, for it would be read otherwise than it is seen.
pub(super) fn plain(text: &str) -> String {
    let unseen = |c: &char| matches!(c, '\u{200E}' | '\u{200F}' | '\u{061C}');
    text.chars().filter(|c| !unseen(c)).map(plain_character).collect()
}

fn plain_character(c: char) -> char {
    match c {
        '\u{2212}' | '\u{2013}' | '\u{2012}' | '\u{FE63}' | '\u{FF0D}' => '-',
        // The Arabic decimal mark is never one of thousands.
        '\u{066B}' | '\u{FF0E}' => '.',
        '\u{FF0C}' => ',',
        c if c.is_whitespace() => ' ',
        // Arabic-Indic, extended Arabic-Indic and full-width digits.
        c => [0x0660, 0x06F0, 0xFF10]
            .iter()
            .find_map(|&zero| (c as u32).checked_sub(zero).filter(|&digit| digit < 10))
            .and_then(|digit| char::from_digit(digit, 10))
            .unwrap_or(c),
    }
}

fn numeral(number: &str, typed: &str) -> Result<Numeral, ReadError> {
    let fail = || ReadError::NotANumber { typed: typed.trim().to_owned() };
    let (sign, body) = match number.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, number.strip_prefix('+').unwrap_or(number).trim_start()),
    };
    let body = without_grouping_spaces(body).ok_or_else(fail)?;
    let value = |text: &str| -> Result<f64, ReadError> {
        if text.bytes().any(|b| b.is_ascii_digit()) {
            plain_number(text).map(|v| sign * v).ok_or_else(fail)
        } else {
            Err(fail())
        }
    };
    let commas = body.matches(',').count();
    match (commas, body.matches('.').count()) {
        (0, 0 | 1) => Ok(Numeral::One(value(&body)?)),
        (1, 0) => {
            let decimal = value(&body.replace(',', "."))?;
            let (whole, rest) = body.split_once(',').ok_or_else(fail)?;
            let may_group = rest.len() == 3 && (1..=3).contains(&whole.len()) && whole != "0";
            if may_group {
                Ok(Numeral::Either { decimal, grouped: value(&body.replace(',', ""))? })
            } else {
                Ok(Numeral::One(decimal))
            }
        }
        (_, 0) if groups_of_three(&body, ',') => Ok(Numeral::One(value(&body.replace(',', ""))?)),
        (c, p) if c > 0 && p > 0 => Err(ReadError::TwoMarks { typed: typed.trim().to_owned() }),
        _ => Err(fail()),
    }
}

/// The number of digits with at most one point, by the reader that stored numbers pass anyway: the
/// standard one brings 10 kB of tables of its own.
fn plain_number(text: &str) -> Option<f64> {
    let (whole, rest) = text.split_once('.').unwrap_or((text, ""));
    let significant = whole.trim_start_matches('0');
    let whole = if significant.is_empty() { "0" } else { significant };
    let rest = if rest.is_empty() { "0" } else { rest };
    let digits = whole.bytes().chain(rest.bytes()).all(|b| b.is_ascii_digit());
    let read = serde_json::from_str(&format!("{whole}.{rest}")).ok();
    // Digits alone fail only when there are too many: a number all the same, beyond every limit.
    read.or(digits.then_some(f64::MAX))
}

/// `1 050` is 1050; `1 05` is nothing.
fn without_grouping_spaces(body: &str) -> Option<String> {
    let whole_end = body.find(['.', ',']).unwrap_or(body.len());
    let (whole, rest) = body.split_at(whole_end);
    let fits = rest.find(' ').is_none() && (!whole.contains(' ') || groups_of_three(whole, ' '));
    fits.then(|| body.replace(' ', ""))
}

fn groups_of_three(text: &str, mark: char) -> bool {
    let mut groups = text.split(mark);
    groups.next().is_some_and(|first| (1..=3).contains(&first.len()))
        && groups.all(|group| group.len() == 3)
}

/// Writes a number with a fixed count of decimals, a true minus sign and never a negative zero.
///
/// ```
/// use fermentside::quantity::write_number;
///
/// assert_eq!(write_number(1.05, 3), "1.050");
/// assert_eq!(write_number(-2.5, 1), "\u{2212}2.5");
/// assert_eq!(write_number(-0.0004, 2), "0.00");
/// ```
#[must_use]
pub fn write_number(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    match text.strip_prefix('-') {
        Some(size) if size.bytes().all(|b| b == b'0' || b == b'.') => size.to_owned(),
        Some(size) => format!("\u{2212}{size}"),
        None => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(text: &str) -> f64 {
        match read_numeral(text) {
            Ok((Numeral::One(value), unit)) if unit.is_empty() => value,
            other => panic!("{text:?} read as {other:?}"),
        }
    }

    #[test]
    fn reads_the_ways_people_write() {
        for (text, value) in [
            ("1.050", 1.05),
            (" 12,5 ", 12.5),
            ("\u{2212}2", -2.0),
            ("- 2.5", -2.5),
            ("+7", 7.0),
            ("1 050", 1050.0),
            ("1\u{202F}050,5", 1050.5),
            ("1,234,567", 1_234_567.0),
            (".5", 0.5),
            ("5.", 5.0),
            ("0,998", 0.998),
            ("\u{0661}\u{066B}\u{0665}", 1.5),
            ("\u{FF12}\u{FF10}", 20.0),
        ] {
            assert_eq!(one(text), value, "{text}");
        }
    }

    #[test]
    fn more_digits_than_a_number_holds_are_beyond_every_limit() {
        assert_eq!(one(&"9".repeat(400)), f64::MAX);
    }

    #[test]
    fn a_comma_before_three_digits_may_be_either() {
        assert_eq!(
            read_numeral("1,050"),
            Ok((Numeral::Either { decimal: 1.05, grouped: 1050.0 }, String::new()))
        );
    }

    #[test]
    fn refuses_what_is_no_number() {
        for text in ["1 05", "1.2.3", "--2", ".", "-", "abc", "1,2,3", "1,23,456"] {
            let read = read_numeral(text);
            assert!(matches!(read, Err(ReadError::NotANumber { .. })), "{text}: {read:?}");
        }
        assert!(matches!(read_numeral("1,234.5"), Err(ReadError::TwoMarks { .. })));
        assert_eq!(read_numeral(" \u{A0} "), Err(ReadError::Empty));
    }

    #[test]
    fn another_script_means_what_it_says_or_nothing() {
        for (text, value) in [
            ("\u{0661}\u{066B}\u{0660}\u{0665}\u{0660}", 1.05),
            ("\u{06F1}\u{06F2}\u{066B}\u{06F5}", 12.5),
            ("\u{200E}1.050\u{200F}", 1.05),
            ("\u{061C}\u{2212}2", -2.0),
        ] {
            assert_eq!(one(text), value, "{text}");
        }
        // Digits that are not known, a mark of thousands, and what is shown turned about.
        for text in ["\u{0967}.\u{0966}\u{096B}", "\u{202E}050.1", "\u{2067}1.5\u{2069}", "\u{BD}"]
        {
            let read = read_numeral(text);
            assert!(matches!(read, Err(ReadError::NotANumber { .. })), "{text}: {read:?}");
        }
        let (_, unit) = read_numeral("\u{0661}\u{066C}\u{0660}\u{0665}\u{0660}").expect("a number");
        assert!(!unit.is_empty(), "the rest is no unit of any field");
    }

    #[test]
    fn keeps_the_unit_apart() {
        assert_eq!(read_numeral("68F"), Ok((Numeral::One(68.0), "F".into())));
        assert_eq!(read_numeral("5 US gal"), Ok((Numeral::One(5.0), "US gal".into())));
    }

    #[test]
    fn writes_no_negative_zero() {
        assert_eq!(write_number(-0.0004, 2), "0.00");
        assert_eq!(write_number(-1.25, 1), "\u{2212}1.2");
    }
}
