//! Charts in the house style, as SVG for the page and the screen and as text for the terminal.
//!
//! Labels sit on the data, spread is always drawn, axes carry their unit on the last figure.

mod bag_before_after;
mod before_after;
mod curves;
mod dots;
mod field;
mod forecast;
mod frame;
mod intervals;
mod labels;
mod law;
mod lettering;
mod look;
mod marks;
mod one_bag;
mod over_dates;
mod piles;
mod rows;
mod scale;
mod series;
#[cfg(test)]
mod sight;
mod spacing;
mod spark;
mod svg;
mod terminal;
mod words;

pub use bag_before_after::BagBeforeAfterChart;
pub use before_after::{BeforeAfterChart, BeforeAfterRow};
pub use curves::CurvesChart;
pub use dots::{DotPlot, MeasuredGap};
pub use forecast::ForecastChart;
pub use frame::{Frame, Ground};
pub use intervals::IntervalChart;
pub use law::{Axis, LawChart, LawLine};
pub use look::{INK, INK_SOFT, Look, Mark, PAPER, RULE, RULE_STRONG};
pub use marks::mark;
pub use one_bag::BagChart;
pub use over_dates::{Dated, DatesChart};
pub use series::{Dot, DotRow, Estimate, IntervalRow, Moment, Reading, Sheaf, Strand};
pub use spark::Spark;
pub use terminal::Terminal;
pub use words::Words;
