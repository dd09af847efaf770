//! What the teacher does on the run page: read from a form, turned into entries.
//!
//! Every button sends one line in the field `do`: a word, then what it is about, such as
//! `odd P3-05A-1 leak`. What is typed stands in fields of its own.

use crate::desk::room::Scene;
use crate::desk::room::benches::name;
use crate::desk::{Wording, say};
use barm_domain::amount::{celsius, millimeters};
use barm_domain::board::{State, board};
use barm_domain::code::BagCode;
use barm_domain::plan::Period;
use barm_domain::record::{
    Audience, Entry, Face, Key, Lent, Made, Odd, Subject, Truth, What, Who,
};
use barm_domain::schedule::schedule;
use jiff::Timestamp;
use std::collections::BTreeMap;

/// Something that the teacher does.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Act {
    /// About the period.
    Period(Vec<What>),
    /// About a group: its number and what.
    Group(u32, What),
    /// Lends numbers to a group in the place of its own. A run that is not drawn yet is drawn.
    Lend(u32, Option<Lent>),
    /// About bags: the same for each.
    Bags(Vec<String>, What),
    /// A height, for whatever the bag waits for.
    Write {
        /// As typed: a code, or group and letter.
        bag: String,
        /// Height above the bench (mm).
        height_mm: f64,
    },
    /// What really went into a bag.
    Made {
        /// As typed.
        bag: String,
        /// All that is other than the plan; nothing if it is as the plan says.
        made: Made,
    },
    /// What the breath meter showed.
    Meter {
        /// As typed.
        bag: String,
        /// As shown.
        percent: f64,
        /// Whether clean air was pushed before it, and what that showed, if anybody noted it.
        blank: Option<Option<f64>>,
    },
    /// Opens or closes something.
    Whole(What),
}

/// Why something was not done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum ActError {
    /// Nothing that the page offers.
    Unknown {
        /// What was sent.
        said: String,
    },
    /// A number that is none.
    Number {
        /// What was typed.
        said: String,
        /// What is wanted.
        wanted: Wanted,
    },
    /// A bag that is none of this period's.
    NoBag {
        /// What was typed.
        said: String,
        /// The period.
        period: String,
    },
    /// A bag of another period.
    OtherPeriod {
        /// The bag.
        said: String,
        /// Its own period.
        other: String,
        /// The period.
        period: String,
    },
}

/// A number that is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Wanted {
    /// A minute of the reading.
    Minute,
    /// A temperature of water.
    Celsius,
    /// The number of a jug.
    Jug,
    /// How many students are here.
    Students,
    /// What the breath meter shows.
    Percent,
    /// A turn at the breath meter.
    Turn,
    /// The number of a group.
    Group,
    /// A height of the card.
    Height,
    /// A temperature of water, with its unit.
    Warmth,
    /// An amount, with its unit.
    Amount,
}

impl ActError {
    /// What happened and what to do, as a sentence.
    pub(crate) fn says(&self, w: Wording) -> String {
        match self {
            Self::Unknown { said } => say!(w, "act-unknown", said = said),
            Self::Number { said, wanted } => {
                say!(w, "act-number", said = said, wanted = wanted.says(w))
            }
            Self::NoBag { said, period } => say!(w, "act-no-bag", said = said, period = period),
            Self::OtherPeriod { said, other, period } => {
                say!(w, "act-other-period", said = said, other = other, period = period)
            }
        }
    }
}

impl Wanted {
    fn says(self, w: Wording) -> String {
        match self {
            Self::Minute => say!(w, "act-minute"),
            Self::Celsius => say!(w, "act-celsius"),
            Self::Jug => say!(w, "act-jug"),
            Self::Students => say!(w, "act-students"),
            Self::Percent => say!(w, "act-percent"),
            Self::Turn => say!(w, "act-turn"),
            Self::Group => say!(w, "act-group"),
            Self::Height => say!(w, "act-height"),
            Self::Warmth => say!(w, "act-warmth"),
            Self::Amount => say!(w, "act-amount"),
        }
    }
}

/// The fields of a form.
pub(crate) type Fields = BTreeMap<String, String>;

/// The tallest height that is taken (mm): no bag on a bench stands higher, a slip of ten does.
const TALLEST_MM: f64 = 300.0;

impl Act {
    /// Reads what a form sent.
    pub(crate) fn read(fields: &Fields, period: &str) -> Result<Self, ActError> {
        let said = fields.get("do").map_or("", String::as_str).trim();
        let unknown = || ActError::Unknown { said: said.chars().take(60).collect() };
        let mut words = said.split_whitespace();
        let first = words.next().ok_or_else(unknown)?;
        let rest: Vec<&str> = words.collect();
        let typed = |name: &str| fields.get(name).map_or("", |value| value.trim());
        let bag = |what| match rest.first() {
            Some(code) => Ok(Self::Bags(vec![(*code).to_owned()], what)),
            None => Err(unknown()),
        };
        let whole = |face: &str, to: &str| -> Option<(Face, Audience)> {
            let face = Face::ALL.into_iter().find(|one| one.word() == face)?;
            let period = period.to_owned();
            let to = match (to, to.parse::<u32>()) {
                ("wall", _) => Audience::Wall { period },
                ("groups", _) => Audience::Groups { period },
                (_, Ok(group)) => Audience::Group { period, group },
                _ => return None,
            };
            Some((face, to))
        };
        Ok(match (first, rest.as_slice()) {
            ("begin", []) => Self::Period(vec![What::Began]),
            ("not-begun", []) => Self::Period(vec![What::TakenBack]),
            ("stop", []) => Self::Period(vec![What::Stopped]),
            ("go-on", []) => Self::Period(vec![What::WentOn]),
            ("go-on", [last]) => {
                let minute = last.parse().map_err(|_| unknown())?;
                Self::Period(vec![What::LastReading { minute }, What::WentOn])
            }
            ("last", []) => {
                let minute = whole_number(typed("minute"), Wanted::Minute)?;
                Self::Period(vec![What::LastReading { minute }])
            }
            ("last", [minute]) => {
                let minute = minute.parse().map_err(|_| unknown())?;
                Self::Period(vec![What::LastReading { minute }])
            }
            ("end", []) => Self::Period(vec![What::Ended]),
            ("jug", []) => {
                let celsius = warmth(typed("celsius"))?;
                let jug = whole_number(typed("jug"), Wanted::Jug)?;
                Self::Period(vec![What::Jug { celsius, jug }])
            }
            ("here", [group]) => {
                let students = whole_number(typed("students"), Wanted::Students)?;
                Self::Group(group.parse().map_err(|_| unknown())?, What::Here { students })
            }
            ("here", [group, students]) => {
                let students = students.parse().map_err(|_| unknown())?;
                Self::Group(group.parse().map_err(|_| unknown())?, What::Here { students })
            }
            ("lend-class", [group]) => {
                Self::Lend(group.parse().map_err(|_| unknown())?, Some(Lent::ClassData))
            }
            ("lend-run", [group]) => Self::Lend(group.parse().map_err(|_| unknown())?, None),
            ("lend-run", [group, seed, plan]) => {
                let seed = seed.parse().map_err(|_| unknown())?;
                let plan = plan.parse().map_err(|_| unknown())?;
                let run = Lent::Simulated { seed, plan };
                Self::Lend(group.parse().map_err(|_| unknown())?, Some(run))
            }
            ("own-numbers", [group]) => {
                Self::Group(group.parse().map_err(|_| unknown())?, What::TakenBack)
            }
            ("odd", [_, odd]) => {
                let odd = Odd::ALL.into_iter().find(|one| one.word() == *odd);
                bag(What::Odd(odd.ok_or_else(unknown)?))?
            }
            ("odd-back", [_, of]) => {
                bag(What::OddBack { of: of.parse().map_err(|_| unknown())? })?
            }
            ("made", [bag]) => {
                Self::Made { bag: (*bag).to_owned(), made: super::made::read(typed)? }
            }
            ("not-read", [_, ..]) => Self::Bags(
                rest.iter().map(|code| (*code).to_owned()).collect(),
                What::Odd(Odd::NotRead),
            ),
            ("write", []) => {
                Self::Write { bag: typed("bag").to_owned(), height_mm: height(typed("mm"))? }
            }
            ("correct", [_, of]) => bag(What::Correction {
                of: of.parse().map_err(|_| unknown())?,
                height_mm: height(typed("mm"))?,
            })?,
            ("correct", [_, of, mm]) => bag(What::Correction {
                of: of.parse().map_err(|_| unknown())?,
                height_mm: height(mm)?,
            })?,
            ("set-aside", [_]) => bag(What::SetAside { rule: typed("rule").to_owned() })?,
            ("set-aside", [_, rule @ ..]) => bag(What::SetAside { rule: rule.join(" ") })?,
            ("take-back", [_]) => bag(What::TakenBack)?,
            ("set-right", [_]) => {
                bag(What::SetRight(truth(typed("treatment"), typed("group"))?))?
            }
            ("lost", [_]) => bag(What::Lost)?,
            ("vented", [_, ..]) => {
                Self::Bags(rest.iter().map(|code| (*code).to_owned()).collect(), What::Vented)
            }
            ("meter", []) => Self::Meter {
                bag: typed("bag").to_owned(),
                percent: number(typed("percent"), 0.0, 10.0, Wanted::Percent)?,
                // A page that was opened before this field was there ticks a box.
                blank: match typed("air") {
                    "" => (!typed("blank").is_empty()).then_some(None),
                    air => Some(Some(number(air, 0.0, 10.0, Wanted::Percent)?)),
                },
            },
            ("air", []) => Self::Period(vec![What::Blank {
                turn: whole_number(typed("turn"), Wanted::Turn)?,
                percent: Some(number(typed("air"), 0.0, 10.0, Wanted::Percent)?),
            }]),
            ("air", [turn, percent @ ..]) => Self::Period(vec![What::Blank {
                turn: turn.parse().map_err(|_| unknown())?,
                percent: percent
                    .first()
                    .map(|percent| number(percent, 0.0, 10.0, Wanted::Percent))
                    .transpose()?,
            }]),
            ("open", [face, to]) => {
                let (face, to) = whole(face, to).ok_or_else(unknown)?;
                Self::Whole(What::Opened { face, to })
            }
            ("close", [face, to]) => {
                let (face, to) = whole(face, to).ok_or_else(unknown)?;
                Self::Whole(What::Closed { face, to })
            }
            _ => return Err(unknown()),
        })
    }

    /// The entries of it. The first has this key, the others the numbers after it, so that a form
    /// sent twice counts once.
    pub(crate) fn entries(
        self,
        scene: &Scene<'_>,
        period: &Period,
        key: Key,
        now: Timestamp,
    ) -> Result<Vec<Entry>, ActError> {
        // The record holds nobody's own words: what names no rule and no treatment is not written.
        let known = scene.ledger.known();
        let unknown = match &self {
            Self::Bags(_, What::SetAside { rule }) if !known.rules.contains(rule) => Some(rule),
            Self::Bags(_, What::SetRight(Truth { treatment: Some(name), .. }))
                if !known.treatments.contains(name) =>
            {
                Some(name)
            }
            _ => None,
        };
        if let Some(said) = unknown {
            return Err(ActError::Unknown { said: said.chars().take(60).collect() });
        }
        let about: Vec<(Subject, What)> = match self {
            Self::Period(whats) => {
                let subject = Subject::Period(period.name.clone());
                whats.into_iter().map(|what| (subject.clone(), what)).collect()
            }
            Self::Group(group, what) => {
                vec![(Subject::Group { period: period.name.clone(), group }, what)]
            }
            Self::Lend(group, lent) => {
                // The key was made at random, and a form that is sent twice draws one run.
                let seed = (key.0 & LARGEST_SEED) as u64;
                let drawn = Lent::Simulated { seed, plan: scene.version };
                let what = What::StandIn(lent.unwrap_or(drawn));
                vec![(Subject::Group { period: period.name.clone(), group }, what)]
            }
            Self::Bags(bags, what) => bags
                .iter()
                .map(|said| Ok((Subject::Bag(bag(scene, period, said)?), what.clone())))
                .collect::<Result<_, ActError>>()?,
            Self::Write { bag: said, height_mm } => {
                let code = bag(scene, period, &said)?;
                let whats = written(scene, period, code, height_mm, now);
                whats.into_iter().map(|what| (Subject::Bag(code), what)).collect()
            }
            Self::Made { bag: said, made } => {
                let subject = Subject::Bag(bag(scene, period, &said)?);
                // The page says all of it: what stood before goes first.
                let said = Some(made).filter(|made| *made != Made::default());
                let all = [Made::default()].into_iter().chain(said);
                all.map(|made| (subject.clone(), What::Made(made))).collect()
            }
            Self::Meter { bag: said, percent, blank } => {
                let code = bag(scene, period, &said)?;
                let next = super::meter::last_turn(scene, period) + 1;
                let turn = Some(next + u32::from(blank.is_some()));
                let air = blank.map(|percent| {
                    let period = Subject::Period(period.name.clone());
                    (period, What::Blank { turn: next, percent })
                });
                let own = (Subject::Bag(code), What::Meter { percent, turn });
                [own].into_iter().chain(air).collect()
            }
            Self::Whole(what) => vec![(Subject::Investigation, what)],
        };
        let entry = |(after, (subject, what)): (u128, (Subject, What))| Entry {
            key: Key(key.0.wrapping_add(after)),
            subject,
            what,
            measured: now,
            arrived: now,
            who: Who::Teacher,
        };
        Ok((0..).zip(about).map(entry).collect())
    }
}

/// Whole numbers up to this are the same in every reader of JSON (RFC 8259, section 6).
const LARGEST_SEED: u128 = (1 << 53) - 1;

/// A bag of this period by its code, or by group and letter.
pub(crate) fn bag(scene: &Scene<'_>, period: &Period, said: &str) -> Result<BagCode, ActError> {
    let said: String = said.trim().chars().take(40).collect();
    let codes = |own: bool| {
        scene.plan.bags.iter().filter(move |bag| (bag.period == period.name) == own)
    };
    if let Ok(code) = said.parse::<BagCode>() {
        let written = code.to_string();
        if codes(true).any(|bag| bag.code == written) {
            return Ok(code);
        }
        if let Some(other) = codes(false).find(|bag| bag.code == written) {
            let (other, period) = (other.period.clone(), period.name.clone());
            return Err(ActError::OtherPeriod { said, other, period });
        }
    }
    let short = said.to_ascii_uppercase().replace(['-', ' '], "");
    let short = short.trim_start_matches('0');
    codes(true)
        .filter_map(|bag| bag.code.parse::<BagCode>().ok())
        .find(|code| name(*code) == short)
        .ok_or_else(|| ActError::NoBag { said: said.clone(), period: period.name.clone() })
}

/// A height is the zero reading of a bag without one, else for the planned minute that is due or
/// within a minute of it, else one between.
fn written(
    scene: &Scene<'_>,
    period: &Period,
    code: BagCode,
    height_mm: f64,
    now: Timestamp,
) -> Vec<What> {
    let standing = scene.ledger.standing();
    let schedule = schedule(scene.plan, period, standing.periods.get(&period.name));
    let lines = board(scene.plan, &schedule, standing, period, now).lines;
    let state = lines.iter().find(|line| line.code == code).map(|line| line.state);
    let planned = match state {
        Some(State::Due { planned, .. } | State::Late { planned, .. }) => Some(planned),
        Some(State::Waiting { planned, in_s }) if in_s < EARLY_S => Some(planned),
        _ => None,
    };
    let bag = standing.bags.get(&code);
    if bag.is_some_and(|bag| bag.zero.is_some()) {
        return vec![What::Reading { planned, height_mm }];
    }
    let sealed = bag.is_some_and(|bag| bag.sealed.is_some());
    let seal = (!sealed).then_some(What::Sealed { plan: scene.version });
    seal.into_iter().chain([What::Zero { height_mm }]).collect()
}

/// So long before its minute a height is taken for it (own rule; bags rise a millimeter in it).
const EARLY_S: f64 = 60.0;

fn truth(treatment: &str, group: &str) -> Result<Truth, ActError> {
    let group = match group {
        "" => None,
        group => Some(whole_number(group, Wanted::Group)?),
    };
    Ok(Truth { treatment: Some(treatment.to_owned()).filter(|t| !t.is_empty()), group })
}

/// A height in mm, or in the unit that is written behind it.
fn height(said: &str) -> Result<f64, ActError> {
    let read = with_unit(said).then(|| millimeters(said).ok()).flatten();
    match read {
        Some(mm) => number(&format!("{mm}"), 0.0, TALLEST_MM, Wanted::Height)
            .map_err(|_| ActError::Number { said: short(said), wanted: Wanted::Height }),
        None => number(said, 0.0, TALLEST_MM, Wanted::Height),
    }
}

/// The warmth of water in °C, or in the unit that is written behind it.
fn warmth(said: &str) -> Result<f64, ActError> {
    if with_unit(said)
        && let Ok(read) = celsius(said)
    {
        let wrong = || ActError::Number { said: short(said), wanted: Wanted::Celsius };
        return Some(read).filter(|read| (0.0..=100.0).contains(read)).ok_or_else(wrong);
    }
    number(said, 0.0, 100.0, Wanted::Celsius)
}

fn with_unit(said: &str) -> bool {
    said.trim().ends_with(|c: char| !c.is_ascii_digit())
}

fn short(said: &str) -> String {
    said.chars().take(20).collect()
}

fn number(said: &str, low: f64, high: f64, wanted: Wanted) -> Result<f64, ActError> {
    let plain = said.trim().replace(',', ".");
    let plain = plain.trim_end_matches(|c: char| c.is_alphabetic() || "%° ".contains(c));
    let wrong = || ActError::Number { said: short(said), wanted };
    let value: f64 = plain.parse().map_err(|_| wrong())?;
    if (low..=high).contains(&value) { Ok(value) } else { Err(wrong()) }
}

fn whole_number(said: &str, wanted: Wanted) -> Result<u32, ActError> {
    let wrong = || ActError::Number { said: short(said), wanted };
    said.trim().parse().ok().filter(|number| *number <= 1440).ok_or_else(wrong)
}
