//! Tables as text: RFC 4180, written by hand, with any of the three usual marks between cells.

/// The cells of a line, and the number of the line of the text that it begins on, from 1.
pub type Line = (usize, Vec<String>);

/// What a spreadsheet would take for a formula.
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// A text made harmless: a spreadsheet shows what begins like a formula as it stands.
#[must_use]
pub fn defused(text: &str) -> String {
    if text.starts_with(FORMULA) || is_marked(text) { format!("'{text}") } else { text.to_owned() }
}

/// The text as it was before [`defused`].
#[must_use]
pub fn plain(text: &str) -> &str {
    if is_marked(text) { text.get(1..).unwrap_or_default() } else { text }
}

/// It begins with the mark itself, however often, before what would be a formula.
fn is_marked(text: &str) -> bool {
    text.starts_with('\'') && text.trim_start_matches('\'').starts_with(FORMULA)
}

/// One line with its end.
pub fn write_line(out: &mut String, cells: &[String], mark: char) {
    for (at, cell) in cells.iter().enumerate() {
        if at > 0 {
            out.push(mark);
        }
        let quoted = cell.contains([mark, '"', '\r', '\n']);
        if quoted {
            out.push('"');
            out.push_str(&cell.replace('"', "\"\""));
            out.push('"');
        } else {
            out.push_str(cell);
        }
    }
    out.push_str("\r\n");
}

/// The mark between the cells: whichever of `;`, tab and `,` the first line has most of outside quotes.
#[must_use]
pub fn mark_of(text: &str) -> char {
    let mut quoted = false;
    let mut counts = [0_usize; 3];
    for c in text.chars() {
        match c {
            '"' => quoted = !quoted,
            '\n' | '\r' if !quoted => break,
            ',' if !quoted => counts[0] += 1,
            ';' if !quoted => counts[1] += 1,
            '\t' if !quoted => counts[2] += 1,
            _ => {}
        }
    }
    let [comma, semicolon, tab] = counts;
    if tab > comma.max(semicolon) {
        '\t'
    } else if semicolon > 0 && semicolon >= comma {
        ';'
    } else {
        ','
    }
}

/// Every line that holds anything; a line may end with either end or both, and lack its last.
#[must_use]
pub fn read_lines(text: &str, mark: char) -> Vec<Line> {
    let (mut lines, mut cells, mut cell) = (vec![], vec![], String::new());
    let (mut number, mut begun) = (1, 1);
    let (mut quoted, mut was_quoted) = (false, false);
    let mut letters = text.chars().peekable();
    while let Some(c) = letters.next() {
        let ends = matches!(c, '\r' | '\n') && !(c == '\r' && letters.peek() == Some(&'\n'));
        number += usize::from(ends);
        match c {
            '"' if quoted && letters.peek() == Some(&'"') => {
                letters.next();
                cell.push('"');
            }
            '"' if quoted => quoted = false,
            _ if quoted => cell.push(c),
            '"' if cell.is_empty() && !was_quoted => (quoted, was_quoted) = (true, true),
            c if c == mark => {
                cells.push(std::mem::take(&mut cell));
                was_quoted = false;
            }
            '\r' | '\n' => {
                if ends {
                    end_line(&mut lines, &mut cells, &mut cell, begun);
                    (begun, was_quoted) = (number, false);
                }
            }
            c => cell.push(c),
        }
    }
    end_line(&mut lines, &mut cells, &mut cell, begun);
    lines
}

fn end_line(lines: &mut Vec<Line>, cells: &mut Vec<String>, cell: &mut String, begun: usize) {
    cells.push(std::mem::take(cell));
    let all = std::mem::take(cells);
    if all.iter().any(|cell| !cell.trim().is_empty()) {
        lines.push((begun, all));
    }
}
