//! Answers that a person chooses from a few: each one's type holds them all, in the order offered, with the
//! name it is stored under. One table each; the words for people stand elsewhere.

/// An answer of a few.
pub trait Choices: Copy + PartialEq + 'static {
    /// Every answer, in the order offered.
    fn all() -> &'static [Self];

    /// The name it is stored under. Once released it never changes.
    fn name(self) -> &'static str;
}

/// An enumeration that is chosen from, each answer with its stored name.
///
/// ```
/// use fermentside::advice::bottle::history::Seal;
/// use fermentside::choices::Choices;
///
/// assert_eq!(Seal::ALL.map(Seal::name), ["airlock", "sealed", "unsure"]);
/// assert_eq!((Seal::named("sealed"), Seal::named("bunged")), (Some(Seal::Sealed), None));
/// assert_eq!(Seal::all(), Seal::ALL);
/// // What is stored in a record is the same name.
/// assert_eq!(serde_json::to_string(&Seal::Unsure).ok().as_deref(), Some("\"unsure\""));
/// ```
#[macro_export]
macro_rules! choices {
    ($($(#[$about:meta])* pub enum $name:ident { $($(#[$each:meta])* $one:ident = $stored:tt),+ $(,)? })+) => {$(
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        pub enum $name {
            $($(#[$each])* #[serde(rename = $stored)] $one,)+
        }

        impl $name {
            /// Every one, in the order offered.
            pub const ALL: [Self; [$($stored),+].len()] = [$(Self::$one),+];

            /// The name it is stored under.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$one => $stored,)+ }
            }

            /// The one stored under that name.
            #[allow(dead_code)] // a field finds its answer by way of the trait
            #[must_use]
            pub fn named(name: &str) -> Option<Self> {
                match name { $($stored => Some(Self::$one),)+ _ => None }
            }
        }

        impl $crate::choices::Choices for $name {
            fn all() -> &'static [Self] {
                &Self::ALL
            }

            fn name(self) -> &'static str {
                self.name()
            }
        }
    )+};
}

choices! {
    /// Whether something is so.
    pub enum YesNo {
        /// It is not.
        No = "no",
        /// It is.
        Yes = "yes",
    }
}

impl YesNo {
    /// As a plain truth.
    #[must_use]
    pub fn is_yes(self) -> bool {
        self == Self::Yes
    }
}
