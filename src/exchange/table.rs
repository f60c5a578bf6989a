//! Readings as a table for a spreadsheet, out and in. Names of columns are those of the form, with the unit
//! in brackets; a reading is as it was read, and a table says less than a copy.

pub use super::column::{Column, LONGEST, MOST, NoTable};
use super::column::{WRITTEN, column, same, told};
use super::csv::{defused, mark_of, plain, read_lines, write_line};
use crate::advice::odd::Odd;
use crate::batch::{Added, Id, Reading, Refractometer, Vessel};
use crate::quantity::{
    Bounds, Celsius, Gravity, GravityUnit, Measured, Moment, ReadError, Zone,
    read as read_quantity, read_gravity,
};
use crate::science::hydrometer_sample::Condition;
use crate::science::refractometer::USUAL_FACTOR;

/// The most letters of a note.
const LONGEST_NOTE: usize = 4_000;

/// Why a line is left out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BadLine {
    /// The date is not written as 2026-03-07 or 2026-03-07 18:30, or there is no such day.
    Date,
    /// A cell cannot be read; the head of its column.
    Cell(String, ReadError),
    /// A cell says none of what may stand in that column.
    Word(String),
    /// There is no gravity, no temperature, nothing added and no note.
    Nothing,
    /// The note is too long.
    Note,
}

/// A table that was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Its readings, in the order of its lines.
    pub readings: Vec<Reading>,
    /// The number of the line of each of them in the text.
    pub lines: Vec<usize>,
    /// What is odd about them, by the number of the line, once they were looked at.
    pub odd: Vec<(usize, Vec<Odd>)>,
    /// Lines that are left out, by their number in the text.
    pub bad: Vec<(usize, BadLine)>,
    /// Heads of columns that mean nothing here.
    pub unknown: Vec<String>,
}

/// The readings as a table; with a comma in numbers the cells are parted by semicolons.
#[must_use]
pub fn write(readings: &[(Id, Reading)], comma: bool) -> String {
    let mark = if comma { ';' } else { ',' };
    let number = |value: f64| {
        let text = value.to_string();
        if comma { text.replace('.', ",") } else { text }
    };
    let warmth = |t: Option<Celsius>| t.map(|t| number(t.value())).unwrap_or_default();
    let mut out = String::new();
    write_line(&mut out, &WRITTEN.map(|(head, _)| head.to_owned()), mark);
    for (_, reading) in readings {
        let gravity = |scale| match reading.as_read {
            Some(Gravity::Specific(sg)) if scale == GravityUnit::SpecificGravity => {
                number(sg.value())
            }
            Some(Gravity::Plato(plato)) if scale == GravityUnit::Plato => number(plato.value()),
            _ => String::new(),
        };
        let cells = WRITTEN.map(|(_, column)| match column {
            Column::Date => reading.at.to_string(),
            Column::Vessel => reading.vessel.name().to_owned(),
            Column::Gravity(scale) => gravity(scale),
            Column::Sample(_) => warmth(reading.sample),
            Column::State => reading.condition.name().to_owned(),
            Column::Beer(_) => warmth(reading.beer),
            Column::Room(_) => warmth(reading.room),
            Column::Brix => {
                reading.refractometer.map(|glass| number(glass.brix.value())).unwrap_or_default()
            }
            Column::Added => reading.added.map_or("", Added::name).to_owned(),
            Column::Note => defused(&reading.note),
        });
        write_line(&mut out, &cells, mark);
    }
    out
}

/// Reads a table of readings of a batch, taken with this instrument by the clock of this zone.
///
/// # Errors
/// [`NoTable`] when it is none as a whole; a line that cannot be read is told, and the others are read.
pub fn read(text: &str, batch: &Id, hydrometer: &Id, zone: &Zone) -> Result<Table, NoTable> {
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    if text.len() > LONGEST {
        return Err(NoTable::TooLong);
    }
    let mut lines = read_lines(text, mark_of(text)).into_iter();
    let (_, heads) = lines.next().ok_or(NoTable::Empty)?;
    let mut table = Table::default();
    let mut columns: Vec<Option<Column>> = vec![];
    for head in &heads {
        let column = column(head)?;
        if column.is_some_and(|new| columns.iter().flatten().any(|c| same(*c, new))) {
            return Err(NoTable::Twice(told(head)));
        }
        if column.is_none() && !head.trim().is_empty() {
            table.unknown.push(told(head));
        }
        columns.push(column);
    }
    let is = |wanted: fn(&Column) -> bool| columns.iter().flatten().any(wanted);
    if !is(|column| *column == Column::Date) {
        return Err(NoTable::NoDate);
    }
    if !is(|c| {
        !matches!(c, Column::Date | Column::Vessel | Column::State | Column::Added | Column::Note)
    }) {
        return Err(NoTable::NothingRead);
    }
    for (at, cells) in lines {
        if table.readings.len() + table.bad.len() == MOST {
            return Err(NoTable::TooLong);
        }
        let mut reading = empty(batch, hydrometer);
        let mut bad = None;
        for ((head, column), cell) in heads.iter().zip(&columns).zip(&cells) {
            let Some(column) = column else { continue };
            if let Err(why) = fill(&mut reading, *column, head, cell, zone) {
                bad = bad.or(Some(why));
            }
        }
        let dated = columns
            .iter()
            .zip(&cells)
            .any(|(column, cell)| *column == Some(Column::Date) && !cell.trim().is_empty());
        let bad = bad.or((!dated).then_some(BadLine::Date)).or(nothing(&reading));
        match bad {
            Some(why) => table.bad.push((at, why)),
            None => {
                table.readings.push(reading);
                table.lines.push(at);
            }
        }
    }
    if table.readings.is_empty() && table.bad.is_empty() {
        return Err(NoTable::Empty);
    }
    Ok(table)
}

fn empty(batch: &Id, hydrometer: &Id) -> Reading {
    Reading {
        batch: batch.clone(),
        at: Moment::EPOCH,
        vessel: Vessel::Main,
        as_read: None,
        typed: String::new(),
        sample: None,
        condition: Condition::Still,
        hydrometer: hydrometer.clone(),
        refractometer: None,
        added: None,
        beer: None,
        room: None,
        note: String::new(),
        doubtful: false,
    }
}

fn nothing(reading: &Reading) -> Option<BadLine> {
    let read = reading.as_read.is_some() || reading.refractometer.is_some();
    let warm = reading.beer.is_some() || reading.room.is_some();
    let said = reading.added.is_some() || !reading.note.trim().is_empty();
    (!read && !warm && !said).then_some(BadLine::Nothing)
}

fn fill(
    reading: &mut Reading,
    column: Column,
    head: &str,
    cell: &str,
    zone: &Zone,
) -> Result<(), BadLine> {
    let cell = plain(cell.trim());
    if cell.is_empty() {
        return Ok(());
    }
    let wrong = |why| BadLine::Cell(told(head), why);
    let word = || BadLine::Word(told(head));
    let warmth = |unit| read_quantity(cell, unit, Bounds::all()).map(Some).map_err(wrong);
    let lower = cell.to_ascii_lowercase();
    match column {
        Column::Date => reading.at = date(cell, zone).ok_or(BadLine::Date)?,
        Column::Vessel => reading.vessel = Vessel::named(&lower).ok_or_else(word)?,
        Column::Gravity(scale) => {
            reading.as_read = Some(read_gravity(cell, scale).map_err(wrong)?);
            cell.clone_into(&mut reading.typed);
        }
        Column::Sample(unit) => reading.sample = warmth(unit)?,
        Column::State => reading.condition = Condition::named(&lower).ok_or_else(word)?,
        Column::Beer(unit) => reading.beer = warmth(unit)?,
        Column::Room(unit) => reading.room = warmth(unit)?,
        Column::Brix => match read_gravity(cell, GravityUnit::Plato).map_err(wrong)? {
            Gravity::Plato(brix) => {
                reading.refractometer = Some(Refractometer { brix, factor: USUAL_FACTOR });
            }
            Gravity::Specific(_) => return Err(word()),
        },
        Column::Added => reading.added = Some(Added::named(&lower).ok_or_else(word)?),
        Column::Note if cell.chars().count() > LONGEST_NOTE => return Err(BadLine::Note),
        Column::Note => cell.clone_into(&mut reading.note),
    }
    Ok(())
}

/// A date and time of ISO 8601; a day alone is its noon. No other order of day, month and year is guessed.
fn date(cell: &str, zone: &Zone) -> Option<Moment> {
    let cell = cell.replacen(' ', "T", 1);
    match cell.len() {
        10 => zone.local(&format!("{cell}T12:00")).ok(),
        16 | 19 => zone.local(&cell).ok(),
        _ => cell.parse().ok(),
    }
}
