//! Words for what can be opened, to whom, and for odd things. They never change.

use barm_domain::record::{Audience, Face, Odd};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Opened1 {
    face: String,
    to: String,
    period: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    group: Option<u32>,
}

impl Opened1 {
    pub(super) fn of(face: Face, to: &Audience) -> Self {
        let (to, period, group) = match to {
            Audience::Wall { period } => ("wall", period, None),
            Audience::Groups { period } => ("groups", period, None),
            Audience::Group { period, group } => ("group", period, Some(*group)),
        };
        let face = match face {
            Face::PeriodCurves => "period-curves",
            Face::DayCurves => "day-curves",
            Face::Results => "results",
            Face::Forecast => "forecast",
            Face::Background => "background",
            Face::Marks => "marks",
        };
        Self { face: face.into(), to: to.into(), period: period.clone(), group }
    }

    pub(super) fn read(self) -> Result<(Face, Audience), String> {
        let face = match self.face.as_str() {
            "period-curves" => Face::PeriodCurves,
            "day-curves" => Face::DayCurves,
            "results" => Face::Results,
            "forecast" => Face::Forecast,
            "background" => Face::Background,
            "marks" => Face::Marks,
            other => return Err(format!("“{other}” is nothing that can be opened")),
        };
        let period = self.period;
        let to = match (self.to.as_str(), self.group) {
            ("wall", None) => Audience::Wall { period },
            ("groups", None) => Audience::Groups { period },
            ("group", Some(group)) => Audience::Group { period, group },
            (other, _) => return Err(format!("“{other}” is nobody to open something to")),
        };
        Ok((face, to))
    }
}

pub(super) const fn odd_word(odd: Odd) -> &'static str {
    match odd {
        Odd::Leak => "leak",
        Odd::Spill => "spill",
        Odd::Foam => "foam",
        Odd::Late => "late",
        Odd::Bumped => "bumped",
        Odd::NotRead => "not-read",
    }
}

pub(super) fn odd_named(word: &str) -> Result<Odd, String> {
    let odd = Odd::ALL.into_iter().find(|odd| odd_word(*odd) == word);
    odd.ok_or_else(|| format!("“{word}” is nothing odd that is known"))
}
