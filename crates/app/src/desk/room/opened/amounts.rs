//! How much the class found, treatment by treatment: height, gas and ethanol, for a group to which
//! results are open.
//!
//! It has no field that could hold one bag, a group or a period: only means over all bags that count, as the verdicts
//! beside it rest on them.

use crate::desk::paper::dot_rows;
use crate::desk::room::every_bag::Quantity;
use barm_documents::chart::{DotPlot, DotRow, Frame, Words};
use barm_domain::plan::Plan;
use barm_domain::result::ClassResult;

/// Means of one quantity.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Amounts {
    /// Of what.
    pub(crate) quantity: Quantity,
    /// The minute after the zero reading at which bags are compared.
    pub(crate) minute: f64,
    /// A row a treatment, the highest first.
    pub(crate) rows: Vec<AmountRow>,
    drawn: Vec<DotRow>,
}

/// The mean of a treatment.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct AmountRow {
    /// The treatment.
    pub(crate) treatment: String,
    /// Bags.
    pub(crate) bags: usize,
    /// Their mean.
    pub(crate) mean: f64,
    /// How far they lie from it on the average; nothing of one bag.
    pub(crate) mad: Option<f64>,
}

/// The quantities of which any treatment has a value: gas and ethanol only where forecasts are there.
pub(super) fn amounts(plan: &Plan, result: &ClassResult) -> Vec<Amounts> {
    let Some(minute) = result.minute else { return Vec::new() };
    let of = |quantity: Quantity| {
        let all = dot_rows(plan, &result.bags, |bag| Some(quantity.measured(bag)?.value));
        let counted = |row: &DotRow| row.dots.iter().filter(|dot| !dot.set_aside).count();
        let rows: Vec<AmountRow> = all
            .iter()
            .filter_map(|row| {
                let (treatment, mad) = (row.name.clone(), row.mad);
                Some(AmountRow { treatment, bags: counted(row), mean: row.mean?, mad })
            })
            .collect();
        // Single bags stay behind.
        let bare = |row: DotRow| DotRow { dots: Vec::new(), ..row };
        let drawn = all.into_iter().filter(|row| row.mean.is_some()).map(bare).collect();
        Amounts { quantity, minute, rows, drawn }
    };
    let all = Quantity::ALL.into_iter().map(of);
    all.filter(|amounts| !amounts.rows.is_empty()).collect()
}

impl Amounts {
    /// The treatments that are named in it.
    pub(super) fn treatments(&self) -> impl Iterator<Item = &str> {
        self.rows.iter().map(|row| row.treatment.as_str())
    }

    /// Drawn for a narrow screen; `name` says what a treatment is called there.
    pub(crate) fn svg(
        &self,
        title: &str,
        words: Words,
        name: impl Fn(&str) -> String,
    ) -> String {
        let named = |row: &DotRow| DotRow { name: name(&row.name), ..row.clone() };
        let rows: Vec<DotRow> = self.drawn.iter().map(named).collect();
        let words = Words { millimeters: self.quantity.unit(), ..words };
        let frame = Frame::phone(words);
        DotPlot { title, rows: &rows, gap: None, set: &[], brief: true }.svg(&frame)
    }
}
