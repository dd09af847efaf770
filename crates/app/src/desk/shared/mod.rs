//! Data for others and from others: packages out, packages in, classes beside each other.

mod lots;
mod on_shelf;
mod onto_shelf;
mod out;
mod package;
mod taken;
mod years;

#[cfg(test)]
pub(crate) use barm_documents::bundle::{Bundle, Limits};
pub(crate) use barm_documents::package::Licence;
pub(crate) use barm_domain::years::Difference as OverYears;
pub(crate) use lots::{
    LotsFound, by_says, lot_name, lot_says, lots_on_shelf, lots_picture, lots_say,
};
pub(crate) use on_shelf::{YearsKept, years_on_shelf, years_picture};
pub(crate) use onto_shelf::{StaysBehind, put_on_shelf, stays_behind};
pub(in crate::desk) use out::write_all;
pub(crate) use out::{Form, Parcel, Said, share};
pub(crate) use package::Package;
pub(crate) use taken::{Taken, take};
pub(crate) use years::{YearsFound, years, years_chart};
