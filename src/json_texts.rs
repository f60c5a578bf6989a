//! JSON objects that hold texts alone, written; on any floor.

/// Writes an object of texts.
///
/// # Errors
/// When a text cannot be written as JSON; no such text is known.
pub fn write_texts<'a>(
    texts: impl Iterator<Item = (&'a String, &'a String)>,
) -> Result<String, serde_json::Error> {
    let mut pairs = vec![];
    for (name, text) in texts {
        pairs.push(format!("{}:{}", serde_json::to_string(name)?, serde_json::to_string(text)?));
    }
    Ok(format!("{{{}}}", pairs.join(",")))
}

/// Writes an object with a line for each text, or `null` where there is none.
///
/// # Errors
/// As [`write_texts`].
pub fn write_lines<'a>(
    texts: impl Iterator<Item = (&'a str, Option<&'a str>)>,
) -> Result<String, serde_json::Error> {
    let mut lines = vec![];
    for (name, text) in texts {
        let text = text.map_or(Ok("null".to_owned()), serde_json::to_string)?;
        lines.push(format!("\n  {}: {text}", serde_json::to_string(name)?));
    }
    let end = if lines.is_empty() { "" } else { "\n" };
    Ok(format!("{{{}{end}}}", lines.join(",")))
}
