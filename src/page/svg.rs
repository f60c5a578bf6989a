//! Pictures in the words of SVG.

use crate::app::drawing::Drawing;
use std::fmt::Write;
use std::sync::atomic::{AtomicU32, Ordering};

/// A name that no other element of the page has: patterns and titles are found by it.
pub fn unique(what: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{what}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}

/// A text that means nothing but itself in a picture.
pub fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            other => safe.push(other),
        }
    }
    safe
}

/// A picture in the making.
#[derive(Default)]
pub struct Svg(pub String);

impl Svg {
    /// A path in a dress.
    pub fn path(&mut self, class: &str, d: &str) {
        // Writing to a text cannot fail.
        let _ = write!(self.0, r#"<path class="{class}" d="{d}"/>"#);
    }

    /// Letters in a dress; `more` is attributes of their own, such as where they are held.
    pub fn text(&mut self, class: &str, (x, y): (f64, f64), more: &str, text: &str) {
        let text = escaped(text);
        let _ =
            write!(self.0, r#"<text class="{class}" x="{x:.1}" y="{y:.1}" {more}>{text}</text>"#);
    }

    /// A rectangle in a dress.
    pub fn rect(
        &mut self,
        class: &str,
        (x, y): (f64, f64),
        (width, height): (f64, f64),
        more: &str,
    ) {
        let _ = write!(
            self.0,
            r#"<rect class="{class}" x="{x:.1}" y="{y:.1}" width="{width:.1}" height="{height:.1}" {more}/>"#
        );
    }

    /// Something as it stands.
    pub fn raw(&mut self, text: &str) {
        self.0.push_str(text);
    }

    /// Where only what lies within a path is seen, found by `id`.
    pub fn clip(&mut self, id: &str, d: &str) {
        let _ = write!(self.0, r#"<clipPath id="{id}"><path d="{d}"/></clipPath>"#);
    }

    /// Slanted lines to fill an area with, found by `id`, or lines both ways; the class gives their tone.
    pub fn hatch(&mut self, id: &str, tone: &str, crossed: bool) {
        let lines = if crossed { "M0 4H8M4 0V8" } else { "M4 0V8" };
        let _ = write!(
            self.0,
            r#"<pattern id="{id}" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch {tone}" d="{lines}"/></pattern>"#
        );
    }

    /// The whole picture, `size` wide and high, named and described for those who cannot see it. Its class
    /// is `kind` behind `picture-`; one of its units is a CSS pixel at a phone's width.
    pub fn framed(self, kind: &str, size: (f64, f64), drawing: &Drawing) -> String {
        self.named(kind, &format!(r#"viewBox="0 0 {} {}""#, size.0, size.1), drawing)
    }

    /// The same with other attributes: without a size of its own it takes the room it is given.
    pub fn named(self, kind: &str, more: &str, drawing: &Drawing) -> String {
        let (title, description) = (unique("title"), unique("description"));
        format!(
            r#"<svg class="picture picture-{kind}" {more} role="img" aria-labelledby="{title}" aria-describedby="{description}"><title id="{title}">{}</title><desc id="{description}">{}</desc>{}</svg>"#,
            escaped(&drawing.title),
            escaped(&drawing.description),
            self.0
        )
    }
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn a_text_means_nothing_but_itself() {
        assert_eq!(
            escaped("<b a='1'>\"&\"</b>"),
            "&lt;b a=&#39;1&#39;&gt;&quot;&amp;&quot;&lt;/b&gt;"
        );
        assert_eq!(escaped("20.0\u{A0}°C"), "20.0\u{A0}°C");
    }
}
