//! What is lost on the way by numbers of so many binary digits.

/// A hair: two numbers no further apart may be one that was worked out in two ways. So a limit is one within
/// a hair. For numbers of the size of a gravity, a volume in litres or a share.
pub const HAIR: f64 = 1e-9;
