//! What groups handed in and what the teacher answered.
//!
//! Proposals are words of children: they lie where words can be deleted, apart from the record.
//! What was approved stands in the plan.

use super::hour::zone;
use super::{Kind, Room, Scene, Scope};
use crate::desk::queue::{Queue, queue};
use crate::desk::{DeskError, Wording, doors};
use barm_documents::plan_text;
use barm_documents::proposals::Row;
use barm_domain::plan::{Inquiry, Plan, Variable};
use barm_domain::proposal::{Ask, Written, approve, asks, judge, opened};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A group: period and number.
pub(crate) type Group = (String, u32);

const HANDED_IN: &str = "proposal";
const ANSWERED: &str = "proposal-answer";

/// A proposal as it lies on disk.
#[derive(Debug, Clone, Serialize, Deserialize)]
struct Kept {
    at: i64,
    period: String,
    group: u32,
    asks: String,
    changes: String,
    levels: Vec<String>,
    keeps: String,
    beside: String,
    bags: u32,
    expects: String,
    because: String,
}

/// An answer as it lies on disk.
#[derive(Debug, Clone, Serialize, Deserialize)]
struct KeptAnswer {
    at: i64,
    period: String,
    group: u32,
    approved: bool,
    asks: String,
}

/// What the teacher answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Answer {
    /// It is in the plan.
    Approved,
    /// It went back with one question.
    Returned(String),
}

/// What a group handed in, and what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct HandedIn {
    /// The proposal with its words.
    pub(crate) row: Row,
    /// The answer to it, if there is one.
    pub(crate) answer: Option<Answer>,
}

fn row(kept: Kept) -> (Group, i64, Row) {
    let group = (kept.period.clone(), kept.group);
    let written = Written {
        period: kept.period,
        group: kept.group,
        asks: kept.asks,
        changes: kept.changes,
        levels: kept.levels,
        keeps: kept.keeps,
        beside: kept.beside,
        bags: kept.bags,
    };
    (group, kept.at, Row { line: 0, written, expects: kept.expects, because: kept.because })
}

/// What every group handed in last, with the answer to it. Waits for the disk.
pub(crate) fn handed_in(room: &Room) -> Result<BTreeMap<Group, HandedIn>, DeskError> {
    let mut newest: BTreeMap<Group, (i64, HandedIn)> = BTreeMap::new();
    let mut answers: Vec<KeptAnswer> = Vec::new();
    for (_, kind, text) in room.store.all_words(room.id)? {
        match kind.as_str() {
            HANDED_IN => {
                let Ok(kept) = serde_json::from_str::<Kept>(&text) else { continue };
                let (group, at, row) = row(kept);
                let later = newest.get(&group).is_none_or(|(known, _)| *known <= at);
                if later {
                    newest.insert(group, (at, HandedIn { row, answer: None }));
                }
            }
            ANSWERED => answers.extend(serde_json::from_str::<KeptAnswer>(&text)),
            _ => {}
        }
    }
    answers.sort_by_key(|answer| answer.at);
    for answer in answers {
        let group = (answer.period, answer.group);
        // An answer to an older proposal says nothing of the newest.
        if let Some((_, own)) = newest.get_mut(&group).filter(|(at, _)| *at <= answer.at) {
            own.answer = Some(if answer.approved {
                Answer::Approved
            } else {
                Answer::Returned(answer.asks)
            });
        }
    }
    Ok(newest.into_iter().map(|(group, (_, own))| (group, own)).collect())
}

/// Keeps what a group hands in. Waits for the disk.
pub(crate) fn hand_in(room: &Room, handed: &Row, now: Timestamp) -> Result<(), DeskError> {
    let written = handed.written.clone();
    let kept = Kept {
        at: now.as_millisecond(),
        period: written.period,
        group: written.group,
        asks: written.asks,
        changes: written.changes,
        levels: written.levels,
        keeps: written.keeps,
        beside: written.beside,
        bags: written.bags,
        expects: handed.expects.clone(),
        because: handed.because.clone(),
    };
    let group = (kept.period.clone(), kept.group);
    keep(room, HANDED_IN, &group, &kept)
}

/// Keeps what concerns one group; only the teacher's pages and its own hear of it.
fn keep(
    room: &Room,
    kind: &str,
    group: &Group,
    what: &impl Serialize,
) -> Result<(), DeskError> {
    let text = serde_json::to_string(what).map_err(|_| DeskError::Stopped)?;
    room.store.keep_words(room.id, doors::words_key()?, kind, &text)?;
    let own = Scope::Group { period: group.0.clone(), group: group.1 };
    room.pulse.beat(|scope| *scope == Scope::Teacher || *scope == own);
    Ok(())
}

fn answer(
    room: &Room,
    group: &Group,
    approved: bool,
    asks: &str,
    now: Timestamp,
) -> Result<(), DeskError> {
    let kept = KeptAnswer {
        at: now.as_millisecond(),
        period: group.0.clone(),
        group: group.1,
        approved,
        asks: asks.to_owned(),
    };
    keep(room, ANSWERED, group, &kept)
}

/// Sends a proposal back with one question. Waits for the disk.
pub(crate) fn send_back(
    room: &Room,
    group: &Group,
    asks: &str,
    now: Timestamp,
) -> Result<(), DeskError> {
    answer(room, group, false, asks, now)
}

/// Puts a proposal into the plan as a new version, with changes if some were made; gives false if
/// it has faults. Waits for the disk.
pub(crate) fn take_in(
    room: &Room,
    written: &Written,
    now: Timestamp,
) -> Result<bool, DeskError> {
    let (plan, version) = room.read(|scene| (scene.plan.clone(), scene.version));
    let all: Vec<_> =
        handed_in(room)?.values().filter_map(|own| own.row.written.read(&plan).ok()).collect();
    let judged = judge(&plan, written, &all, &[]);
    let Some(proposal) = judged.proposal.as_ref().filter(|_| judged.faults() == 0) else {
        return Ok(false);
    };
    let new = approve(&plan, std::slice::from_ref(proposal))?;
    let text = plan_text::write(&new, &room.plan_text(version)?);
    room.save_plan(&text, doors::key(now)?, now)?;
    answer(room, &(written.period.clone(), written.group), true, "", now)?;
    Ok(true)
}

/// The queue page.
#[derive(Debug)]
pub(crate) struct ApproveView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// What waits for an answer.
    pub(crate) queue: Queue,
    /// Groups that wait for nothing: what they asked, and the answer.
    pub(crate) answered: Vec<(Row, Answer)>,
    /// Groups that have handed in nothing.
    pub(crate) missing: Vec<Group>,
}

/// The queue page of an investigation. Waits for the disk and for forecasts.
pub(crate) fn approve_view(room: &Room, w: Wording) -> Result<ApproveView, DeskError> {
    let plan = room.read(|scene| scene.plan.clone());
    let handed = handed_in(room)?;
    let missing = plan
        .periods
        .iter()
        .flat_map(|period| (1..=period.groups).map(|group| (period.name.clone(), group)))
        .filter(|group| !handed.contains_key(group))
        .collect();
    let (mut waiting, mut answered) = (Vec::new(), Vec::new());
    for own in handed.into_values() {
        match own.answer {
            Some(answer) => answered.push((own.row, answer)),
            None => waiting.push(own.row),
        }
    }
    Ok(ApproveView {
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        queue: queue(w, &plan, &waiting),
        answered,
        missing,
    })
}

/// What a group's planning page shows. It has no place for a forecast, for another group's
/// proposal, or for what the checks say in full.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct PlanTogetherView {
    /// Name of the period.
    pub(crate) period: String,
    /// The group's number.
    pub(crate) group: u32,
    /// The class's big question.
    pub(crate) big_question: String,
    /// Whether nothing here counts: a rehearsal or the made-up class.
    pub(crate) kind: Kind,
    /// Things that may be changed.
    pub(crate) variables: Vec<&'static str>,
    /// What is in the cupboard, by ids.
    pub(crate) cupboard: Vec<String>,
    /// What every bag has unless the group says otherwise, such as `40 mL`.
    pub(crate) same: Vec<(Variable, String)>,
    /// Names of controls that bags can be compared with.
    pub(crate) controls: Vec<String>,
    /// What the group wrote, or nothing yet.
    pub(crate) wrote: Row,
    /// Questions to the group about what it wrote.
    pub(crate) asks: Vec<Ask>,
    /// Whether it is handed in.
    pub(crate) handed_in: bool,
    /// Whether the group has just sent what it wrote, and not only opened the page.
    pub(crate) looked: bool,
    /// The teacher's answer.
    pub(crate) answer: Option<Answer>,
}

impl PlanTogetherView {
    /// Whether what is written can be handed in: something is written, and the group has seen what
    /// it is asked about it, or nothing is asked.
    pub(crate) fn may_be_handed_in(&self, seen: bool) -> bool {
        !self.is_blank() && (seen || self.asks.is_empty())
    }

    /// Whether too little is written to be asked about it.
    pub(crate) fn is_blank(&self) -> bool {
        let written = &self.wrote.written;
        written.changes.is_empty() || written.levels.is_empty()
    }
}

/// Whether a group is to plan before it reads: the plan leaves it the choice, its period has not
/// begun, and its day has not come or no bag is its own yet.
pub(crate) fn plans_first(scene: &Scene<'_>, period: &str, group: u32, now: Timestamp) -> bool {
    let plan = scene.plan;
    let Some(planned) = plan.period(period) else { return false };
    let setting =
        plan.group_settings.iter().find(|one| one.period == period && one.group == group);
    let inquiry =
        setting.and_then(|one| one.inquiry).or(planned.inquiry).unwrap_or(plan.inquiry);
    let began = scene.standing().periods.get(period).is_some_and(|one| one.began.is_some());
    let has_bags = plan.bags.iter().any(|bag| bag.period == period && bag.group == group);
    let today = now.to_zoned_datetime(zone(scene, planned)).date();
    // What is made up knows no day.
    let early = !scene.made_up() && plan.day(&planned.day).is_some_and(|day| today < day.date);
    matches!(inquiry, Inquiry::Guided | Inquiry::Open) && !began && (early || !has_bags)
}

/// The planning page of a group: with what it typed just now, or what it handed in. Waits for the
/// disk.
pub(crate) fn together_view(
    room: &Room,
    group: &Group,
    typed: Option<Row>,
) -> Result<PlanTogetherView, DeskError> {
    let plan = room.read(|scene| scene.plan.clone());
    let own = handed_in(room)?.remove(group);
    let looked = typed.is_some();
    let handed_in = !looked && own.is_some();
    let answer = own.as_ref().and_then(|own| own.answer.clone());
    let wrote = typed.or_else(|| own.map(|own| own.row)).unwrap_or_else(|| blank(group));
    let view = together(&plan, room.kind, group, wrote, handed_in, answer);
    Ok(PlanTogetherView { looked, ..view })
}

fn blank(group: &Group) -> Row {
    let written =
        Written { period: group.0.clone(), group: group.1, bags: 2, ..Written::default() };
    Row { written, ..Row::default() }
}

/// The view, from plain values.
pub(crate) fn together(
    plan: &Plan,
    kind: Kind,
    group: &Group,
    wrote: Row,
    handed_in: bool,
    answer: Option<Answer>,
) -> PlanTogetherView {
    let open = opened(plan);
    let ids = open.foods.iter().chain(&open.enzymes).map(ToString::to_string);
    let started = !wrote.written.changes.is_empty();
    // Judged without a forecast: a question must not tell what will happen.
    let judged = judge(plan, &wrote.written, &[], &[]);
    let lone: Vec<Ask> = if started { asks(&judged) } else { Vec::new() };
    let base = &plan.base;
    PlanTogetherView {
        period: group.0.clone(),
        group: group.1,
        big_question: plan.big_question.clone(),
        kind,
        variables: VARIABLES.map(Variable::words).to_vec(),
        cupboard: ids.collect(),
        same: vec![
            (Variable::Water, base.water.written.clone()),
            (Variable::WaterTemperature, format!("{} °C", base.water_celsius.round())),
            (Variable::YeastAmount, base.yeast_amount.written.clone()),
            (
                Variable::FoodAmount,
                base.food_amount
                    .as_ref()
                    .map(|amount| amount.written.clone())
                    .unwrap_or_default(),
            ),
            (Variable::Bag, base.bag.written.clone()),
        ],
        controls: plan.controls.iter().map(|control| control.treatment.name.clone()).collect(),
        wrote,
        asks: lone,
        handed_in,
        looked: false,
        answer,
    }
}

/// What a group may choose to change.
const VARIABLES: [Variable; 7] = [
    Variable::Food,
    Variable::FoodAmount,
    Variable::Extra,
    Variable::WaterTemperature,
    Variable::Water,
    Variable::YeastAmount,
    Variable::Enzyme,
];

/// Everything that was handed in, as a table. Waits for the disk.
pub(crate) fn table_of(room: &Room) -> Result<String, DeskError> {
    let rows: Vec<Row> = handed_in(room)?.into_values().map(|own| own.row).collect();
    Ok(barm_documents::proposals::write(&rows))
}

/// The longest text of a group that is kept (characters).
pub(crate) const HANDED_MOST: usize = 400;

/// What a group typed. Whose it is comes from its session, never from here.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Typed {
    /// The question.
    pub(crate) asks: String,
    /// The one thing.
    pub(crate) changes: String,
    /// Kinds of bag.
    pub(crate) levels: Vec<String>,
    /// What every bag has.
    pub(crate) keeps: String,
    /// What they are compared with.
    pub(crate) beside: String,
    /// Bags of each kind.
    pub(crate) bags: String,
    /// What it expects.
    pub(crate) expects: String,
    /// Why.
    pub(crate) because: String,
}

impl Typed {
    /// The proposal of that group.
    pub(crate) fn row(self, group: &Group) -> Row {
        let written = Written {
            period: group.0.clone(),
            group: group.1,
            asks: self.asks,
            changes: self.changes,
            levels: self.levels,
            keeps: self.keeps,
            beside: self.beside,
            bags: self.bags.parse().unwrap_or_default(),
        };
        Row { line: 0, written, expects: self.expects, because: self.because }
    }
}

#[cfg(test)]
mod tests {
    use super::{Answer, Kind, PlanTogetherView, Typed, together};
    use crate::desk::start;
    use barm_documents::plan_text;
    use barm_domain::plan::Plan;
    use barm_domain::proposal::Ask;
    use barm_domain::ready::Ready;

    fn plan() -> Plan {
        let typed = start::Typed { date: "2027-03-09".into(), ..start::Typed::default() };
        let text = start::written(crate::desk::Wording::english(), Ready::OwnQuestion, &typed)
            .expect("a plan");
        plan_text::read(text.as_bytes()).plan.expect("a sound plan")
    }

    fn view(typed: Typed, answer: Option<Answer>) -> PlanTogetherView {
        let group = ("2".to_owned(), 3);
        let row = typed.row(&group);
        together(&plan(), Kind::Real, &group, row, false, answer)
    }

    #[test]
    fn a_group_is_asked_and_never_told() {
        let typed = Typed {
            changes: "food".into(),
            levels: vec!["honey + 45 °C".into(), "white sugar".into()],
            beside: "No food".into(),
            bags: "2".into(),
            ..Typed::default()
        };
        assert_eq!(view(typed, None).asks, [Ask::TwoThings]);
        assert!(view(Typed::default(), None).asks.is_empty(), "nobody is asked before writing");
    }

    /// Taking the view apart names every field it has: a new one must be looked at here first.
    #[test]
    fn the_view_has_no_place_for_a_forecast_or_for_others() {
        let PlanTogetherView {
            period: _,
            group: _,
            big_question: _,
            kind: _,
            variables: _,
            cupboard,
            same,
            controls: _,
            wrote: _,
            asks: _,
            handed_in: _,
            looked: _,
            answer: _,
        } = view(Typed::default(), None);
        assert!(cupboard.iter().any(|food| food == "honey"));
        assert!(same.iter().any(|(_, amount)| amount == "40 mL"));
    }

    #[test]
    fn what_would_burst_the_bag_asks_nothing_more_than_what_would_not() {
        let of = |amount: &str| Typed {
            changes: "food amount".into(),
            levels: vec![amount.into(), "0.1 g".into()],
            keeps: "white sugar".into(),
            beside: "No food".into(),
            bags: "2".into(),
            ..Typed::default()
        };
        assert_eq!(view(of("30 g"), None).asks, view(of("0.4 g"), None).asks);
    }
}
