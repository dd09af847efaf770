//! Data of an investigation on the shelf for others: what counts of its record, codes and numbers only.

use super::results::what_counts;
use super::{Kind, Room};
use crate::desk::shared::{Parcel, Said};
use crate::desk::{DeskError, Pushes};

/// What can be given away of an investigation, each bag as what it is in truth.
pub(crate) fn parcel(room: &Room, said: Said) -> Result<Parcel, DeskError> {
    let (plan, counted, pushes) = room.read(|scene| {
        let (plan, counted) = what_counts(scene);
        let pushes = Pushes::on_record(&plan, scene.standing());
        (plan, counted, pushes)
    });
    let said = Said { made_up: said.made_up || room.kind != Kind::Real, ..said };
    Parcel::new(&plan, &counted.readings, &counted.set_aside, &pushes.readings, said)
}
