//! How a table of texts is declared: its fields and their English in one place.

/// A table of texts: labels as fields, sentences as functions of data. Another language is another value
/// of the same type, so that what it lacks does not compile.
macro_rules! texts {
    ($(#[$doc:meta])* $name:ident, $english:ident {
        $($field:ident: $text:expr,)*
    } says {
        $($say:ident: $kind:ty = $english_say:expr,)*
    }) => {
        $(#[$doc])*
        #[derive(Debug)]
        #[allow(missing_docs)] // the English beside each says what it is
        pub struct $name {
            $(pub $field: &'static str,)*
            $(pub $say: $kind,)*
        }
        pub(super) const $english: $name = $name {
            $($field: $text,)*
            $($say: $english_say,)*
        };
    };
}
pub(super) use texts;
