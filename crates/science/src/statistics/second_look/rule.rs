//! How the chance of a false find is shared between two looks.

/// How the chance of a false find is shared between two looks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rule {
    /// The same nominal level at both looks (Pocock 1977).
    Pocock,
    /// c₁ = c₂/√s: the first look finds only what is huge, the pooled one has nearly the full level
    /// (O'Brien & Fleming 1979).
    OBrienFleming,
    /// α ln(1 + (e − 1) s) is spent at the first look, the rest at the pooled one (Lan & DeMets 1983);
    /// near Pocock's.
    SpendingPocock,
    /// On each side 2 − 2 Φ(z/√s) is spent at the first look, z that which a normal value exceeds with
    /// chance α/4 (Lan & DeMets 1983); near O'Brien and Fleming's.
    SpendingOBrienFleming,
    /// A first look at this level (1), from 0 for a round that is not judged up to the total, after which
    /// nothing is left.
    FirstAt(f64),
}
