//! Readings made late. The true time counts, so this is only said.

use super::{Mend, Own, Slip, SlipKind};
use crate::board::{LATE_S, running_s};

/// Readings made more than [`LATE_S`] after their planned minute.
pub(super) fn late<'a>(own: &'a Own<'_>) -> impl Iterator<Item = Slip> + 'a {
    let zero = own.bag.zero.as_ref();
    let readings = own.bag.readings.iter().filter(|reading| !reading.is_confirmed());
    readings.filter_map(move |reading| {
        let planned = reading.planned?;
        let read_s = running_s(own.stopped, zero?.measured, reading.measured);
        let late_s = read_s - 60.0 * f64::from(planned);
        (late_s > LATE_S).then(|| Slip {
            bag: own.code,
            kind: SlipKind::Late { planned, late_s },
            reading: Some(reading.key),
            mends: vec![Mend::Leave],
            probability: None,
        })
    })
}
