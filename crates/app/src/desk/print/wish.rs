//! How a teacher wants things printed.

use super::super::Size;
use super::Address;
use barm_documents::catalog::Catalog;
use barm_documents::page::LabelSheet;
use barm_domain::plan::Inquiry;

/// How things are to be printed; the same for all parts, each takes what concerns it.
#[derive(Clone)]
pub(crate) struct Wish {
    /// Paper in the printer.
    pub(crate) size: Size,
    /// The words of students and families.
    pub(crate) words: &'static Catalog,
    /// Whether what students hold is set in large print.
    pub(crate) large: bool,
    /// Sheet of labels; none takes the usual one of the paper.
    pub(crate) labels: Option<LabelSheet>,
    /// First cell to print on a sheet of labels that is partly used, from 1.
    pub(crate) start_cell: u32,
    /// Address that stands before the bag code in square codes, and on the join sheet.
    pub(crate) address: Option<Address>,
    /// Inquiry level; none takes that of each period.
    pub(crate) level: Option<Inquiry>,
    /// Name of the only period to print for; none prints for all.
    pub(crate) period: Option<String>,
}

impl Wish {
    /// Plain English on paper of that size.
    pub(crate) fn plain(size: Size) -> Self {
        Self {
            size,
            words: Catalog::of("en"),
            large: false,
            labels: None,
            start_cell: 1,
            address: None,
            level: None,
            period: None,
        }
    }

    /// The sheet of labels to print on.
    pub(crate) fn label_sheet(&self) -> LabelSheet {
        self.labels.unwrap_or_else(|| LabelSheet::usual(self.size.into()))
    }
}
