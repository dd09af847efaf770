//! What can happen to a bag, a group, a period or an investigation.

use super::{Key, WordsKey};
use crate::plan::Difference;

/// What happened.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum What {
    // A bag.
    /// What really went in, where it differs from the plan. A later one fills in what an earlier
    /// one left open; one that says nothing puts the bag back to what the plan says.
    Made(Made),
    /// Sealed. From here on the bag is bound to this version of the plan.
    Sealed {
        /// Version of the plan, from 1.
        plan: u32,
    },
    /// The zero reading: height of the card above the bench (mm). Its time starts the bag's clock.
    Zero {
        /// Height above the bench (mm).
        height_mm: f64,
    },
    /// A reading of the card's height above the bench.
    Reading {
        /// The planned minute after zero that it is for; none for one between.
        planned: Option<u32>,
        /// Height above the bench (mm).
        height_mm: f64,
    },
    /// Another height in place of that of a zero reading or reading. The first stays on record.
    ///
    /// From the teacher it is also a choice: what others wrote down before it for the same planned
    /// minute is put aside. To choose a height as it stands, correct it to itself.
    Correction {
        /// Key of the zero reading or reading, or of a correction of it.
        of: Key,
        /// Height above the bench (mm).
        height_mm: f64,
    },
    /// What the breath meter showed for gas of this bag, for comparison only.
    Meter {
        /// As shown, in the meter's own percent.
        percent: f64,
        /// Place in the meter's order of the period, from 1, counting blank pushes.
        turn: Option<u32>,
    },
    /// Something odd that the group tapped.
    Odd(Odd),
    /// An odd thing was tapped in error. A group takes back its own taps only.
    OddBack {
        /// Key of the tap.
        of: Key,
    },
    /// The bag is in truth something else than its label says.
    SetRight(Truth),
    /// Set aside by a rule of the plan.
    SetAside {
        /// Name of the rule.
        rule: String,
    },
    /// Taken back: undoes the newest of what stands, being set aside or a loss tapped in error. Of
    /// a period: its start was a slip, and it has not begun. Of a group: it works with its own
    /// numbers again.
    TakenBack,
    /// Vented.
    Vented,
    /// Burst, spilled out or thrown away. Nothing can be read afterwards.
    Lost,

    // A group.
    /// What the group expects, before its first zero reading.
    Guess {
        /// The height above zero that it expects of each bag at the last reading: bag code and mm.
        expects: Vec<(crate::code::BagCode, f64)>,
        /// Where its reason lies, if it wrote one.
        because: Option<WordsKey>,
    },
    /// Roles without a student: how many of the group are here.
    Here {
        /// Students at the bench.
        students: u32,
    },
    /// The group works with numbers that are not its own, from here until it is taken back; they
    /// are never counted, nor is what the group writes meanwhile.
    StandIn(Lent),

    // A period.
    /// The bell rang and the clock runs; after [`What::Ended`], it starts anew.
    Began,
    /// All clocks stand still, as in a fire drill.
    Stopped,
    /// They run again; also takes back an end that was tapped in error.
    WentOn,
    /// Another last reading, as on a short day (minutes after zero).
    LastReading {
        /// Minutes after each bag's own zero.
        minute: u32,
    },
    /// Water in a jug was topped up or measured.
    Jug {
        /// Temperature (°C).
        celsius: f64,
        /// Which jug, from 1.
        jug: u32,
    },
    /// Clean air was pushed through the breath meter. A later one for the same turn stands in its place.
    Blank {
        /// Place in the meter's order of the period, from 1.
        turn: u32,
        /// As shown, in the meter's own percent; nothing if nobody noted it.
        percent: Option<f64>,
    },
    /// The period is over.
    Ended,

    // The investigation.
    /// A version of the plan was saved.
    PlanSaved {
        /// Its number, from 1.
        version: u32,
    },
    /// The teacher opened something to somebody.
    Opened {
        /// What can be seen from now on.
        face: Face,
        /// By whom.
        to: Audience,
    },
    /// The teacher closed it again.
    Closed {
        /// What can no longer be seen.
        face: Face,
        /// By whom.
        to: Audience,
    },
}

/// Numbers that a group works with in the place of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Lent {
    /// What other groups read of bags made as its own.
    ClassData,
    /// A run that was never measured: [`crate::rehearsal::simulated`] draws it from the bag model.
    Simulated {
        /// What it is drawn with.
        seed: u64,
        /// Version of the plan whose bags it is of, from 1.
        plan: u32,
    },
}

/// What really went into a bag, where it differs from the plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Made {
    /// Temperature of the water at pouring (°C), if it was measured.
    pub water_celsius: Option<f64>,
    /// What else was other than the treatment says.
    pub difference: Option<Box<Difference>>,
}

/// Something odd at the bench, one tap each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Odd {
    /// Gas escapes.
    Leak,
    /// Liquid ran out.
    Spill,
    /// Foam lifts the card.
    Foam,
    /// Read later than the clock said.
    Late,
    /// Somebody moved the bag.
    Bumped,
    /// A reading was not made.
    NotRead,
}

impl Odd {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 6] =
        [Self::Leak, Self::Spill, Self::Foam, Self::Late, Self::Bumped, Self::NotRead];

    /// The word that stands in files and addresses.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Leak => "leak",
            Self::Spill => "spill",
            Self::Foam => "foam",
            Self::Late => "late",
            Self::Bumped => "bumped",
            Self::NotRead => "not-read",
        }
    }
}

/// What a bag is in truth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Truth {
    /// Its treatment, if that is not the one on its label.
    pub treatment: Option<String>,
    /// The group that made it, if that is not the one on its label.
    pub group: Option<u32>,
}

/// Something that the teacher opens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Face {
    /// The curves of the own period.
    PeriodCurves,
    /// The curves of all periods.
    DayCurves,
    /// The verdicts.
    Results,
    /// The forecast.
    Forecast,
    /// What the teacher knows about each food.
    Background,
    /// Marks.
    Marks,
}

impl Face {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::PeriodCurves,
        Self::DayCurves,
        Self::Results,
        Self::Forecast,
        Self::Background,
        Self::Marks,
    ];

    /// The word that stands in files and addresses.
    pub const fn word(self) -> &'static str {
        match self {
            Self::PeriodCurves => "period-curves",
            Self::DayCurves => "day-curves",
            Self::Results => "results",
            Self::Forecast => "forecast",
            Self::Background => "background",
            Self::Marks => "marks",
        }
    }
}

/// To whom something is opened.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Audience {
    /// The wall page of a period.
    Wall {
        /// Name of the period.
        period: String,
    },
    /// All groups of a period.
    Groups {
        /// Name of the period.
        period: String,
    },
    /// One group.
    Group {
        /// Name of the period.
        period: String,
        /// Number within the period.
        group: u32,
    },
}
