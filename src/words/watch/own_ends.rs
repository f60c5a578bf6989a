//! What own earlier batches with the same yeast say of the end.

use crate::advice::own_ends::Ended;
use crate::quantity::{Estimate, SpecificGravity};
use crate::words::write::Writer;

/// Where they ended and where this one would, asked about or, once it is taken, said.
pub(super) fn own_ends(
    w: Writer,
    ends: &[Ended],
    carried: Estimate<SpecificGravity>,
    taken: bool,
) -> String {
    let one = |ended: &Ended| format!("{} from {}", w.gravity(ended.end), w.gravity(ended.start));
    let all: Vec<String> = ends.iter().map(one).collect();
    let listed = match all.split_last() {
        Some((last, before)) if !before.is_empty() => format!("{} and {last}", before.join(", ")),
        _ => all.concat(),
    };
    let about = w.gravity(carried.value());
    let doubt = w.gravity_doubt(carried.sigma());
    let said = format!(
        "Your last {} batches with this yeast ended at {listed}. From this start that makes {about} {doubt}",
        ends.len()
    );
    if taken { format!("{said}: the expected end is by them as well.") } else { format!("{said}.") }
}
