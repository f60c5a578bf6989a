//! The words of Gear.

use super::texts::texts;

texts! {
    /// What stands at Gear.
    GearWords, GEAR {} says {}
}
