//! The plan page: a form over the plan's own text, with a forecast that follows the keys.

mod answer;
mod form;
mod page;

pub(super) use answer::{back, download, forecast, post, show, text};
pub(super) use page::{beyond, chart, verdicts};
