//! One table: reading it, checking its rows, and saying how near they came.

use super::unmet::UNMET;
use std::collections::HashMap;
use std::path::PathBuf;

/// Where the tables lie.
pub fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference")
}

/// One row, by column.
pub struct Row(HashMap<String, String>);

impl Row {
    pub fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("{}: {column} is {text:?}", self.text("id")))
    }

    /// The tolerance printed with the row, for a value of this size: absolute, or a share of it.
    pub fn tolerance(&self, known: f64) -> f64 {
        let text = self.text("tol");
        match text.strip_suffix('%') {
            Some(share) => share.parse::<f64>().expect("a share") / 100.0 * known.abs(),
            None => self.number("tol"),
        }
    }
}

/// What a check says about one value of a row.
pub struct Found {
    /// By the science; `None` when it offers no such value.
    pub found: Option<f64>,
    /// By the table.
    pub known: f64,
    /// How far apart they may be.
    pub within: f64,
}

impl Found {
    /// Against a known value within the row's own tolerance.
    pub fn within_own(row: &Row, found: f64, known: f64) -> Self {
        Self { found: Some(found), known, within: row.tolerance(known) }
    }

    /// Against a value the table holds exact.
    pub fn same(found: f64, known: f64) -> Self {
        Self { found: Some(found), known, within: 1e-9 }
    }

    /// The science offers nothing to compare with.
    pub fn nothing() -> Self {
        Self { found: None, known: f64::NAN, within: 0.0 }
    }

    /// The difference and how it stands to what is allowed; the last bits are not counted.
    fn miss(&self) -> Option<(f64, f64)> {
        let size = (self.found? - self.known).abs();
        Some((size, size / (self.within + 1e-12)))
    }
}

/// Checks every row of a table, prints the row that came nearest its tolerance, and fails when a row
/// is missed that is not known to be, or met that is said not to be.
pub fn check(name: &str, rows_of: fn(&Row) -> Vec<Found>) {
    let path = folder().join(format!("{name}.csv"));
    let mut reader = csv::Reader::from_path(&path).expect("the table");
    let (mut rows, mut unmet, mut wrong) = (0, 0, Vec::new());
    let mut nearest: Option<(f64, f64, f64, String)> = None;
    for record in reader.deserialize() {
        let row = Row(record.expect("a row"));
        let id = row.text("id").to_owned();
        let values = rows_of(&row);
        assert!(!values.is_empty(), "{id}: nothing was compared");
        rows += 1;
        let met = values.iter().all(|value| value.miss().is_some_and(|(_, share)| share <= 1.0));
        match (met, UNMET.iter().any(|(unmet, _)| *unmet == id)) {
            (true, true) => wrong.push(format!("{id} is met, though listed as unmet")),
            (false, true) => unmet += 1,
            (false, false) => {
                let seen: Vec<_> = values.iter().map(|v| (v.found, v.known, v.within)).collect();
                wrong.push(format!("{id}: (found, known, within) {seen:?}"));
            }
            (true, false) => {
                for value in &values {
                    let (size, share) = value.miss().expect("was met");
                    if nearest.as_ref().is_none_or(|(_, _, most, _)| share > *most) {
                        nearest = Some((size, value.within, share, id.clone()));
                    }
                }
            }
        }
    }
    assert!(rows > 0, "{name} is empty");
    let (size, within, _, id) = nearest.expect("a row that was checked");
    println!(
        "{name}: {} of {rows} rows met, {unmet} known unmet, largest difference {size:.2e} of \
         {within:.2e} allowed ({id})",
        rows - unmet - wrong.len(),
    );
    assert!(wrong.is_empty(), "{name}:\n{}", wrong.join("\n"));
}
