//! Where chance comes from: numbers given by the caller.

/// Seeds of one forecast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Streams {
    /// Seed of all that the bags of one day share. Give every forecast of the day the same one.
    pub day: u64,
    /// Seed of what belongs to one bag. Give every treatment, and every replicate of it, its own.
    pub bag: u64,
}
