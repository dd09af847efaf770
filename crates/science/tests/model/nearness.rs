//! How near the bands of few draws come to those of very many.
//!
//! Width within a tenth and median within 3 % of theirs, for at least 95 % of treatments and minutes. A
//! share of next to nothing cannot be asked for: in the first minutes, and all the time in bags
//! without food, the whole band is some tenths of a millimetre. A width or median within 0.1 mm, a
//! seventh of what a ruler leaves open, or 0.4 mL counts as the same. What keeps to the shares alone
//! is printed: of all widths, and of medians where the rise can be read, from 3 mm on.

use barm_science::forecast::{Band, Forecast};

/// Rises and gas of many bags.
#[derive(Debug, Default)]
pub(crate) struct Nearness {
    rises: Tally,
    gases: Tally,
}

impl Nearness {
    /// Counts every minute after the zero reading of one forecast beside the same with very many
    /// draws.
    pub(crate) fn add(&mut self, few: &Forecast, many: &Forecast) {
        self.rises.add(&few.rise_mm().band(), &many.rise_mm().band(), 0.1, 3.0);
        self.gases.add(&few.gas_ml().band(), &many.gas_ml().band(), 0.4, 12.0);
    }

    /// Holds the rises to what is asked; gas is only told of, as an enzyme's label leaves a factor of
    /// two to three of it open.
    pub(crate) fn check(&self) {
        self.gases.tell("gas");
        self.rises.tell("rise");
        let (width, median) = self.rises.off();
        assert!(width <= 5.0, "{width} % of the widths are off");
        assert!(median <= 5.0, "{median} % of the medians are off");
    }
}

/// What was seen at all minutes, and how much of it was off.
#[derive(Debug, Default)]
struct Tally {
    seen: usize,
    width_off: usize,
    width_share_off: usize,
    median_off: usize,
    readable: usize,
    readable_off: usize,
}

impl Tally {
    /// Counts one pair of bands; within `floor` all is the same, medians from `readable` on can be
    /// read.
    fn add(&mut self, few: &Band, many: &Band, floor: f64, readable: f64) {
        for minute in 1..few.median.len() {
            let width = |band: &Band| band.high[minute] - band.low[minute];
            let (expected, off) =
                (many.median[minute], few.median[minute] - many.median[minute]);
            let share = 0.03 * expected.abs();
            self.seen += 1;
            let (wide, wider) = (0.1 * width(many), (width(few) - width(many)).abs());
            self.width_off += usize::from(wider > wide.max(floor));
            self.width_share_off += usize::from(wider > wide);
            self.median_off += usize::from(off.abs() > share.max(floor));
            if expected >= readable {
                self.readable += 1;
                self.readable_off += usize::from(off.abs() > share);
            }
        }
    }

    /// Shares of widths and medians that are off (%).
    fn off(&self) -> (f64, f64) {
        (share(self.width_off, self.seen), share(self.median_off, self.seen))
    }

    #[expect(clippy::print_stdout, reason = "how near they come is worth seeing")]
    fn tell(&self, what: &str) {
        let (width, median) = self.off();
        let strict = share(self.width_share_off, self.seen);
        let readable = share(self.readable_off, self.readable);
        println!(
            "{what}: of {} bands {width:.1} % are off in width ({strict:.1} % without a floor) and \
             {median:.1} % in the median; by more than 3 % are {readable:.1} % of {} that can be \
             read",
            self.seen, self.readable
        );
    }
}

fn share(off: usize, of: usize) -> f64 {
    100.0 * off as f64 / of.max(1) as f64
}
