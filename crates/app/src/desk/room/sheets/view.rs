//! One group's sheet: a row a bag, a column a planned time, with what is on record already.

use super::clock;
use crate::desk::paper::look;
use crate::desk::room::benches::{group_name, name};
use crate::desk::room::{Kind, Scene};
use barm_documents::chart::Look;
use barm_domain::code::BagCode;
use barm_domain::plan::{Period, PlannedBag};
use barm_domain::record::{Bag, Height};
use barm_domain::schedule::schedule;
use barm_domain::sheet_code::SheetCode;
use jiff::Timestamp;

/// The page of one sheet.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct SheetView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Name of the period.
    pub(crate) period: String,
    /// Number of the group; 0 is the teacher's bench.
    pub(crate) group: u32,
    /// Periods, each with the first of its sheets that is not full.
    pub(crate) periods: Vec<(String, u32)>,
    /// Groups of this period that have bags.
    pub(crate) groups: Vec<Tab>,
    /// The next sheet of the day with something missing.
    pub(crate) next: Option<(String, u32)>,
    /// Planned minutes, the zero reading first.
    pub(crate) minutes: Vec<u32>,
    /// One row a bag, by bench place.
    pub(crate) rows: Vec<Row>,
}

/// A group with how much of its sheet is on record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Tab {
    /// Its number.
    pub(crate) group: u32,
    /// What people say.
    pub(crate) name: String,
    /// Heights on record.
    pub(crate) done: usize,
    /// Places for heights.
    pub(crate) of: usize,
}

/// One bag.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row {
    /// Its code.
    pub(crate) code: BagCode,
    /// What people say, such as `2A`.
    pub(crate) name: String,
    /// What is in it, in truth.
    pub(crate) treatment: String,
    /// How that looks.
    pub(crate) look: Look,
    /// When its clock started, or starts by the schedule, local time.
    pub(crate) zero_at: String,
    /// Whether that is on record.
    pub(crate) zero_known: bool,
    /// Whether it is vented, lost or set aside.
    pub(crate) fate: Option<Fate>,
    /// One cell a minute.
    pub(crate) cells: Vec<Cell>,
}

/// What became of a bag that is not read any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fate {
    /// Vented.
    Vented,
    /// Lost.
    Lost,
    /// Set aside by a rule.
    SetAside,
}

/// One place for a height.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Cell {
    /// Planned minute; 0 is the zero reading.
    pub(crate) minute: u32,
    /// Heights that count there (mm): none, one, or two that nobody has chosen between.
    pub(crate) there: Vec<f64>,
    /// What stood there before (mm), oldest first.
    pub(crate) was: Vec<f64>,
}

impl Cell {
    /// Whether a person must choose.
    pub(crate) const fn is_open(&self) -> bool {
        self.there.len() > 1
    }
}

/// The sheet to begin with: the first of the day that has something missing.
pub(crate) fn first_sheet(scene: &Scene<'_>) -> Option<(String, u32)> {
    let all = sheets(scene);
    let open = all.iter().find(|(_, tab)| tab.done < tab.of).or_else(|| all.first());
    open.map(|(period, tab)| (period.clone(), tab.group))
}

/// The sheet that somebody names as it stands on paper: its own code, that of one of its bags, the beginning
/// of that code up to the group, or period and group.
pub(crate) fn sheet_named(scene: &Scene<'_>, said: &str) -> Option<(String, u32)> {
    let whose = SheetCode::whose(scene.plan, said);
    let is = |of: &str, tab: &Tab| {
        whose.as_ref().is_some_and(|one| *one == (of.to_owned(), tab.group))
    };
    if sheets(scene).iter().any(|(period, tab)| is(period, tab)) {
        return whose;
    }
    let plain = |text: &str| -> String {
        text.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_uppercase()
    };
    let said = plain(said);
    let named = |period: &str, tab: &Tab| {
        let group = group_name(tab.group);
        let short = [format!("{period}{group}"), format!("{period}{:0>2}", tab.group)];
        let codes = bags(scene, period, tab.group);
        let codes = codes.iter().map(|(code, _)| plain(&code.to_string()));
        // P4-05B-K and P4-05: a code without its bag letter and check character names its group.
        let mut codes = codes.flat_map(|code| [code[..code.len() - 2].to_owned(), code]);
        short.iter().any(|short| plain(short) == said) || codes.any(|code| code == said)
    };
    let found = sheets(scene).into_iter().find(|(period, tab)| named(period, tab));
    found.map(|(period, tab)| (period, tab.group))
}

/// A group's sheet; nothing if the plan has no such period or the group has no bag in it.
pub(crate) fn sheet_view(scene: &Scene<'_>, period: &str, group: u32) -> Option<SheetView> {
    let planned = scene.plan.period(period)?;
    let all = sheets(scene);
    let here = all.iter().position(|(of, tab)| of == period && tab.group == group)?;
    let after = all[here + 1..].iter().chain(&all[..here]);
    let next = after.clone().find(|(_, tab)| tab.done < tab.of);
    let minutes = minutes(scene, planned);
    let own = bags(scene, period, group);
    let rows = own.iter().map(|(code, bag)| row(scene, planned, *code, bag, &minutes));
    let first_of = |name: &str| {
        let mut own = all.iter().filter(|(of, _)| of == name);
        let first = own.clone().next()?;
        let open = own.find(|(_, tab)| tab.done < tab.of).unwrap_or(first);
        Some((name.to_owned(), open.1.group))
    };
    let periods = scene.plan.periods.iter().filter_map(|period| first_of(&period.name));
    Some(SheetView {
        id: scene.investigation,
        kind: scene.kind,
        title: scene.plan.title.clone(),
        period: period.to_owned(),
        group,
        periods: periods.collect(),
        groups: all.iter().filter(|(of, _)| of == period).map(|(_, tab)| tab.clone()).collect(),
        next: next.map(|(period, tab)| (period.clone(), tab.group)),
        rows: rows.collect(),
        minutes,
    })
}

/// All sheets of the day in their order.
fn sheets(scene: &Scene<'_>) -> Vec<(String, Tab)> {
    let mut all = Vec::new();
    for period in &scene.plan.periods {
        let minutes = minutes(scene, period);
        for group in 0..=period.groups {
            let own = bags(scene, &period.name, group);
            if own.is_empty() {
                continue;
            }
            let standing = &scene.standing().bags;
            let count = |(code, _): &(BagCode, &PlannedBag)| {
                let bag = standing.get(code);
                let full =
                    |minute: &&u32| bag.is_some_and(|bag| !there(bag, **minute).is_empty());
                minutes.iter().filter(full).count()
            };
            let tab = Tab {
                group,
                name: group_name(group),
                done: own.iter().map(count).sum(),
                of: own.len() * minutes.len(),
            };
            all.push((period.name.clone(), tab));
        }
    }
    all
}

/// The bags of a group by bench place, as on its sheet.
pub(super) fn bags<'a>(
    scene: &Scene<'a>,
    period: &str,
    group: u32,
) -> Vec<(BagCode, &'a PlannedBag)> {
    let own = scene.plan.bags.iter().filter(|bag| bag.period == period && bag.group == group);
    let mut own: Vec<_> = own.filter_map(|bag| Some((bag.code.parse().ok()?, bag))).collect();
    own.sort_by_key(|(code, bag)| (bag.place, *code));
    own
}

/// Planned minutes of a period, and those for which something was written all the same.
fn minutes(scene: &Scene<'_>, period: &Period) -> Vec<u32> {
    let day = scene.standing().periods.get(&period.name);
    let mut minutes = schedule(scene.plan, period, day).minutes;
    let known = &scene.ledger.known().bags;
    let own = scene
        .standing()
        .bags
        .iter()
        .filter(|(code, _)| known.get(code).is_some_and(|home| home.period == period.name));
    minutes.extend(own.flat_map(|(_, bag)| bag.readings.iter().filter_map(|one| one.planned)));
    minutes.push(0);
    minutes.sort_unstable();
    minutes.dedup();
    minutes
}

/// The heights that count at a planned minute; of two that are alike, one.
pub(super) fn there(bag: &Bag, minute: u32) -> Vec<&Height> {
    let heights: Vec<&Height> = if minute == 0 {
        bag.zero.iter().chain(&bag.other_zeros).collect()
    } else {
        bag.readings.iter().filter(|height| height.planned == Some(minute)).collect()
    };
    match heights.first() {
        Some(first) if !first.rival => vec![*first],
        _ => heights,
    }
}

fn row(
    scene: &Scene<'_>,
    period: &Period,
    code: BagCode,
    planned: &PlannedBag,
    minutes: &[u32],
) -> Row {
    let bag = scene.standing().bags.get(&code);
    let treatment = scene.treatment_of(code).unwrap_or(&planned.treatment).to_owned();
    let zero = bag.and_then(|bag| bag.zero.as_ref());
    let at: Option<Timestamp> = zero
        .map(|zero| zero.measured)
        .or_else(|| clock::planned_zero(scene, period, planned.group));
    let cell = |minute: &u32| {
        let heights = bag.map(|bag| there(bag, *minute)).unwrap_or_default();
        let mended = heights.iter().flat_map(|height| &height.mended);
        Cell {
            minute: *minute,
            was: mended.map(|mended| mended.height_mm).collect(),
            there: heights.iter().map(|height| height.height_mm).collect(),
        }
    };
    let fate = bag.and_then(|bag| match bag {
        Bag { lost: Some(_), .. } => Some(Fate::Lost),
        Bag { set_aside: Some(_), .. } => Some(Fate::SetAside),
        Bag { vented: Some(_), .. } => Some(Fate::Vented),
        _ => None,
    });
    Row {
        code,
        name: name(code),
        look: look(scene.plan, &treatment),
        treatment,
        zero_at: at.map(|at| clock::shown(scene, period, at)).unwrap_or_default(),
        zero_known: zero.is_some(),
        fate,
        cells: minutes.iter().map(cell).collect(),
    }
}
