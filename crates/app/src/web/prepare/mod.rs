//! The prepare page: what to buy, mix and lay out, as on paper.

mod answer;
mod page;

pub(super) use answer::{Paper, forecast_pdf, pdf, prep_pdf, show};
