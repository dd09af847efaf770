//! Amounts as people write them.

/// What kind of amount was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum AmountKind {
    /// Weighed; `value` in g.
    Mass,
    /// Measured with a jug, cylinder, syringe or pipette; `value` in mL.
    Volume,
    /// Level spoons or cups in customary (1 tsp = 4.929 mL) or labelling (1 tsp = 5 mL)
    /// measure; `value` in mL.
    Spoon,
    /// Drops; `value` is the count.
    Drops,
    /// Packets, tablets or other pieces; `value` is the count.
    Pieces,
}

/// An amount: what was written, and what it means.
#[derive(Debug, Clone, PartialEq)]
pub struct Amount {
    /// As the person wrote it, such as `1/4 tsp`.
    pub written: String,
    /// What kind of amount it is.
    pub kind: AmountKind,
    /// The value in the unit that `kind` names.
    pub value: f64,
}
