//! What the teacher opens, and to whom.

use crate::desk::room::Scene;
use crate::desk::{Wording, say};
use barm_domain::plan::Period;
use barm_domain::record::{Audience, Face};

/// One thing that can be opened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct FaceRow {
    /// What it is and who sees it.
    pub(crate) says: String,
    /// Whether it is open.
    pub(crate) open: bool,
    /// What the button sends.
    pub(crate) sends: String,
}

/// What stands on the run page, in the order of a class. What was foretold is seen only behind curves
/// that are open.
pub(super) fn faces(scene: &Scene<'_>, w: Wording, period: &Period) -> Vec<FaceRow> {
    let wall = || Audience::Wall { period: period.name.clone() };
    let groups = || Audience::Groups { period: period.name.clone() };
    let rows = [
        (Face::PeriodCurves, wall(), "wall", say!(w, "face-curves-wall")),
        (Face::PeriodCurves, groups(), "groups", say!(w, "face-curves-groups")),
        (Face::DayCurves, wall(), "wall", say!(w, "face-day-wall")),
        (Face::Forecast, wall(), "wall", say!(w, "face-forecast-wall")),
        (Face::Forecast, groups(), "groups", say!(w, "face-forecast-groups")),
        (Face::Results, wall(), "wall", say!(w, "face-results-wall")),
        (Face::Results, groups(), "groups", say!(w, "face-results-groups")),
    ];
    let standing = scene.ledger.standing();
    let row = |(face, to, word, says): (Face, Audience, &str, String)| {
        let open = standing.open.contains(&(face, to));
        let verb = if open { "close" } else { "open" };
        FaceRow { says, open, sends: format!("{verb} {} {word}", face.word()) }
    };
    rows.into_iter().map(row).collect()
}
