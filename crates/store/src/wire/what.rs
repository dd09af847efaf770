//! The frozen layout of the body of every kind of entry.

use super::opened::{Opened1, odd_named, odd_word};
use super::parts::{Difference1, Expected, Num};
use barm_domain::record::{Key, Lent, Made, Truth, What, WordsKey};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// Every kind with the number of its newest layout. The names never change.
pub(crate) const KINDS: &[(&str, i64)] = &[
    ("made", 1),
    ("sealed", 1),
    ("zero", 1),
    ("reading", 1),
    ("correction", 1),
    ("meter", 1),
    ("odd", 1),
    ("odd-back", 1),
    ("set-right", 1),
    ("set-aside", 1),
    ("taken-back", 1),
    ("vented", 1),
    ("lost", 1),
    ("guess", 1),
    ("here", 1),
    ("stand-in", 2),
    ("began", 1),
    ("stopped", 1),
    ("went-on", 1),
    ("last-reading", 1),
    ("jug", 1),
    ("blank", 1),
    ("ended", 1),
    ("plan-saved", 1),
    ("opened", 1),
    ("closed", 1),
];

/// A frozen layout: a field that is not there says nothing, one too many is refused.
macro_rules! layout {
    ($name:ident { $($field:ident: $kind:ty),* } $({ $($maybe:ident: $inner:ty),* })?) => {
        #[derive(Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        struct $name {
            $($field: $kind,)*
            $($(
                #[serde(default, skip_serializing_if = "Option::is_none")]
                $maybe: Option<$inner>,
            )*)?
        }
    };
}

layout!(Nothing1 {});
layout!(Made1 {} { water_celsius: Num, difference: Difference1 });
layout!(Sealed1 { plan: u32 });
layout!(Zero1 { height_mm: Num });
layout!(Reading1 { height_mm: Num } { planned: u32 });
layout!(Correction1 { of: String, height_mm: Num });
layout!(Meter1 { percent: Num } { turn: u32 });
layout!(Odd1 { odd: String });
layout!(OddBack1 { of: String });
layout!(SetRight1 {} { treatment: String, group: u32 });
layout!(SetAside1 { rule: String });
layout!(Guess1 { expects: Vec<Expected> } { because: String });
layout!(Here1 { students: u32 });
layout!(StandIn2 {} { seed: u64, plan: u32 });
layout!(LastReading1 { minute: u32 });
layout!(Jug1 { celsius: Num, jug: u32 });
layout!(Blank1 { turn: u32 } { percent: Num });
layout!(PlanSaved1 { version: u32 });

/// The kind and the body in its newest layout.
pub(super) fn body(what: &What) -> Result<(&'static str, String), serde_json::Error> {
    fn json(layout: &impl Serialize) -> Result<String, serde_json::Error> {
        serde_json::to_string(layout)
    }
    let nothing = || json(&Nothing1 {});
    Ok(match what {
        What::Made(made) => {
            let water_celsius = made.water_celsius.map(Num);
            let difference = made.difference.as_deref().map(Difference1::of);
            ("made", json(&Made1 { water_celsius, difference })?)
        }
        What::Sealed { plan } => ("sealed", json(&Sealed1 { plan: *plan })?),
        What::Zero { height_mm } => ("zero", json(&Zero1 { height_mm: Num(*height_mm) })?),
        What::Reading { planned, height_mm } => {
            let height_mm = Num(*height_mm);
            ("reading", json(&Reading1 { height_mm, planned: *planned })?)
        }
        What::Correction { of, height_mm } => {
            let height_mm = Num(*height_mm);
            ("correction", json(&Correction1 { of: of.to_string(), height_mm })?)
        }
        What::Meter { percent, turn } => {
            ("meter", json(&Meter1 { percent: Num(*percent), turn: *turn })?)
        }
        What::Odd(odd) => ("odd", json(&Odd1 { odd: odd_word(*odd).into() })?),
        What::OddBack { of } => ("odd-back", json(&OddBack1 { of: of.to_string() })?),
        What::SetRight(Truth { treatment, group }) => {
            ("set-right", json(&SetRight1 { treatment: treatment.clone(), group: *group })?)
        }
        What::SetAside { rule } => ("set-aside", json(&SetAside1 { rule: rule.clone() })?),
        What::TakenBack => ("taken-back", nothing()?),
        What::Vented => ("vented", nothing()?),
        What::Lost => ("lost", nothing()?),
        What::Guess { expects, because } => {
            let expects = expects.iter().map(Expected::of).collect();
            let because = because.map(|words| words.to_string());
            ("guess", json(&Guess1 { expects, because })?)
        }
        What::Here { students } => ("here", json(&Here1 { students: *students })?),
        What::StandIn(lent) => {
            let (seed, plan) = match lent {
                Lent::ClassData => (None, None),
                Lent::Simulated { seed, plan } => (Some(*seed), Some(*plan)),
            };
            ("stand-in", json(&StandIn2 { seed, plan })?)
        }
        What::Began => ("began", nothing()?),
        What::Stopped => ("stopped", nothing()?),
        What::WentOn => ("went-on", nothing()?),
        What::LastReading { minute } => {
            ("last-reading", json(&LastReading1 { minute: *minute })?)
        }
        What::Jug { celsius, jug } => {
            ("jug", json(&Jug1 { celsius: Num(*celsius), jug: *jug })?)
        }
        What::Blank { turn, percent } => {
            ("blank", json(&Blank1 { turn: *turn, percent: percent.map(Num) })?)
        }
        What::Ended => ("ended", nothing()?),
        What::PlanSaved { version } => ("plan-saved", json(&PlanSaved1 { version: *version })?),
        What::Opened { face, to } => ("opened", json(&Opened1::of(*face, to))?),
        What::Closed { face, to } => ("closed", json(&Opened1::of(*face, to))?),
        _ => return Err(serde::ser::Error::custom("the record has no place for its kind")),
    })
}

/// What a body says; `None` if the kind or its layout is newer than this program.
pub(super) fn read(kind: &str, shape: i64, body: &str) -> Option<Result<What, String>> {
    let known = KINDS.iter().any(|(name, newest)| *name == kind && shape <= *newest);
    known.then(|| read_known(kind, body))
}

fn read_known(kind: &str, body: &str) -> Result<What, String> {
    fn from<T: DeserializeOwned>(body: &str) -> Result<T, String> {
        serde_json::from_str(body).map_err(|error| error.to_string())
    }
    let nothing = |what: What| from::<Nothing1>(body).map(|_| what);
    Ok(match kind {
        "made" => {
            let Made1 { water_celsius, difference } = from(body)?;
            let difference = difference.map(Difference1::read).transpose()?.map(Box::new);
            What::Made(Made { water_celsius: water_celsius.map(|n| n.0), difference })
        }
        "sealed" => What::Sealed { plan: from::<Sealed1>(body)?.plan },
        "zero" => What::Zero { height_mm: from::<Zero1>(body)?.height_mm.0 },
        "reading" => {
            let Reading1 { planned, height_mm } = from(body)?;
            What::Reading { planned, height_mm: height_mm.0 }
        }
        "correction" => {
            let Correction1 { of, height_mm } = from(body)?;
            let of = of.parse::<Key>().map_err(|error| error.to_string())?;
            What::Correction { of, height_mm: height_mm.0 }
        }
        "meter" => {
            let Meter1 { percent, turn } = from(body)?;
            What::Meter { percent: percent.0, turn }
        }
        "odd" => What::Odd(odd_named(&from::<Odd1>(body)?.odd)?),
        "odd-back" => {
            let of = from::<OddBack1>(body)?.of;
            What::OddBack { of: of.parse::<Key>().map_err(|error| error.to_string())? }
        }
        "set-right" => {
            let SetRight1 { treatment, group } = from(body)?;
            What::SetRight(Truth { treatment, group })
        }
        "set-aside" => What::SetAside { rule: from::<SetAside1>(body)?.rule },
        "taken-back" => nothing(What::TakenBack)?,
        "vented" => nothing(What::Vented)?,
        "lost" => nothing(What::Lost)?,
        "guess" => {
            let Guess1 { expects, because } = from(body)?;
            let expects = expects.into_iter().map(Expected::read).collect::<Result<_, _>>()?;
            let because = because.map(|words| words.parse::<WordsKey>()).transpose();
            What::Guess { expects, because: because.map_err(|error| error.to_string())? }
        }
        "here" => What::Here { students: from::<Here1>(body)?.students },
        // The first layout was empty and meant the numbers of the class.
        "stand-in" => {
            let StandIn2 { seed, plan } = from(body)?;
            let lent = seed.zip(plan);
            What::StandIn(
                lent.map_or(Lent::ClassData, |(seed, plan)| Lent::Simulated { seed, plan }),
            )
        }
        "began" => nothing(What::Began)?,
        "stopped" => nothing(What::Stopped)?,
        "went-on" => nothing(What::WentOn)?,
        "last-reading" => What::LastReading { minute: from::<LastReading1>(body)?.minute },
        "jug" => {
            let Jug1 { celsius, jug } = from(body)?;
            What::Jug { celsius: celsius.0, jug }
        }
        "blank" => {
            let Blank1 { turn, percent } = from(body)?;
            What::Blank { turn, percent: percent.map(|percent| percent.0) }
        }
        "ended" => nothing(What::Ended)?,
        "plan-saved" => What::PlanSaved { version: from::<PlanSaved1>(body)?.version },
        "opened" => {
            let (face, to) = from::<Opened1>(body)?.read()?;
            What::Opened { face, to }
        }
        "closed" => {
            let (face, to) = from::<Opened1>(body)?.read()?;
            What::Closed { face, to }
        }
        _ => return Err("nobody wrote down how to read it".into()),
    })
}
