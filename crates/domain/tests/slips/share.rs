//! So many of so many.

use std::fmt;

/// So many of so many.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Share {
    pub(crate) found: u32,
    pub(crate) of: u32,
}

impl Share {
    pub(crate) fn count(&mut self, found: bool) {
        self.of += 1;
        self.found += u32::from(found);
    }

    pub(crate) fn value(self) -> f64 {
        f64::from(self.found) / f64::from(self.of.max(1))
    }

    /// Half of the width in which 99 of 100 such samples lie if the share is `truly`.
    pub(crate) fn sampling(self, truly: f64) -> f64 {
        2.576 * (truly * (1.0 - truly) / f64::from(self.of.max(1))).sqrt()
    }

    /// Asks for at least so much; with fewer draws than at full size, as far as the sample can say.
    pub(crate) fn at_least(self, wanted: f64, full: bool, what: &str) {
        let bar = if full { wanted } else { wanted - self.sampling(wanted) };
        assert!(self.value() >= bar, "{what}: {self}, at least {:.1} % wanted", 100.0 * bar);
    }

    /// Asks for less than so much.
    pub(crate) fn under(self, wanted: f64, full: bool, what: &str) {
        let bar = if full { wanted } else { wanted + self.sampling(wanted) };
        assert!(self.value() < bar, "{what}: {self}, under {:.1} % wanted", 100.0 * bar);
    }
}

impl fmt::Display for Share {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.1} % ({} of {})", 100.0 * self.value(), self.found, self.of)
    }
}
