//! Invented jars of yeast that were tried on several days, as pilots keep them.

use crate::school::School;
use barm_domain::pilot::{EnzymeLot, Lot, Lots, Numbers, Part, YeastLot};
use barm_domain::plan::YeastKind;
use jiff::Timestamp;
use jiff::civil::{Date, date};

fn numbers(name: &str, (mean, sd): (f64, f64)) -> Numbers {
    Numbers { names: vec![name.into()], means: vec![mean], covariance: vec![vec![sd * sd]] }
}

fn lot<T>(name: &str, date: Date, in_use: bool, found: T) -> Lot<T> {
    Lot { name: name.into(), date, in_use, parts: vec![Part::Bags], found }
}

impl School {
    /// An investigation of which only pilots are on record: a jar that aged, one that was tried once, and lactase.
    pub(crate) fn tried(&self) -> i64 {
        let yeast = |known| YeastLot {
            kind: YeastKind::Instant,
            teaspoon: None,
            numbers: numbers("vigor of instant yeast", known),
        };
        let enzyme = |known| EnzymeLot {
            product: "lactase-drops".into(),
            numbers: numbers("activity of neutral lactase", known),
        };
        let lots = Lots {
            yeast: vec![
                lot("jar of March", date(2027, 3, 2), false, yeast((0.4, 0.32))),
                lot("jar of March", date(2027, 4, 6), false, yeast((0.1, 0.24))),
                lot("jar of March", date(2027, 5, 11), false, yeast((-0.6, 0.18))),
                lot("box of May", date(2027, 5, 11), true, yeast((0.2, 0.3))),
            ],
            enzymes: vec![
                lot("drops", date(2027, 3, 2), false, enzyme((0.3, 0.5))),
                lot("drops", date(2027, 5, 11), true, enzyme((0.2, 0.36))),
            ],
            ..Lots::default()
        };
        let made = self.begin("Jars");
        let lots = barm_documents::pilot_text::write_lots(&lots);
        self.keep_lots(made, &lots, Timestamp::now());
        made
    }
}
