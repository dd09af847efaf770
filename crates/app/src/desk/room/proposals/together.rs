//! The planning page of a group: it is asked, and never told.

use super::same::{Same, same};
use super::{Answer, Group, handed_in};
use crate::desk::DeskError;
use crate::desk::contents::Dry;
use crate::desk::room::hour::zone;
use crate::desk::room::{Kind, Room, Scene};
use barm_documents::proposals::Row;
use barm_domain::plan::{Inquiry, Plan, Variable};
use barm_domain::proposal::{Ask, Written, asks, enzyme_given, judge, opened};
use jiff::Timestamp;

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
    /// What is in the cupboard, as a group is given it.
    pub(crate) cupboard: Vec<Dry>,
    /// What every bag has unless the group says otherwise.
    pub(crate) same: Vec<Same>,
    /// A food of the cupboard, and how much of it goes into a bag; nothing if there is none.
    pub(crate) example: Option<(Dry, String)>,
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
    let inquiry = plan.inquiry_of(planned, group);
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
    let plan = room.read(|scene| scene.newest.clone());
    let own = handed_in(&room.all_words()?).remove(group);
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
    let foods = open.foods.iter().cloned().map(Dry::Named);
    let enzymes = open.enzymes.iter().filter_map(|key| {
        let amount = enzyme_given(plan, key)?;
        Some(Dry::enzyme(key, &amount))
    });
    let started = !wrote.written.changes.is_empty();
    // Judged without a forecast: a question must not tell what will happen.
    let judged = judge(plan, &wrote.written, &[], &[]);
    let lone: Vec<Ask> = if started { asks(&judged) } else { Vec::new() };
    let base = &plan.base;
    let much = base.food_amount.as_ref().map_or("1 g", |amount| amount.written.as_str());
    let example = open.foods.first().map(|food| (Dry::Named(food.clone()), much.to_owned()));
    PlanTogetherView {
        period: group.0.clone(),
        group: group.1,
        big_question: plan.big_question.clone(),
        kind,
        variables: VARIABLES.map(Variable::words).to_vec(),
        cupboard: foods.chain(enzymes).collect(),
        same: same(base),
        example,
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
    use super::{Answer, Dry, Kind, PlanTogetherView, Typed, together};
    use crate::desk::{Catalog, start};
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
            example,
            controls: _,
            wrote: _,
            asks: _,
            handed_in: _,
            looked: _,
            answer: _,
        } = view(Typed::default(), None);
        assert!(cupboard.contains(&Dry::Named("honey".into())));
        assert!(same.iter().any(|one| one.amount == "40 mL" && one.other.is_some()));
        let (food, _) = example.expect("a food");
        assert!(cupboard.contains(&food), "what stands as an example lies in the cupboard");
    }

    /// The cautions say that students never see powder: what the plan buys as powder stands in the
    /// cupboard as the solution that the teacher makes, and what a group writes by that name is
    /// understood in every language.
    #[test]
    fn no_powder_of_an_enzyme_stands_in_the_cupboard() {
        let read = plan_text::read(include_bytes!("../../../demo/plan.toml"));
        let plan = read.plan.expect("the demonstration plan");
        let group = ("2".to_owned(), 3);
        for (language, solution) in
            [("en", "glucoamylase solution"), ("es", "solución de glucoamilasa")]
        {
            let words = Catalog::of(language);
            let written = Typed {
                changes: "enzyme".into(),
                levels: vec![words.plan_words(solution), "none".into()],
                keeps: "oat flour".into(),
                beside: "none".into(),
                bags: "2".into(),
                ..Typed::default()
            };
            let row = written.row(&group);
            let view = together(&plan, Kind::Real, &group, row, false, None);
            let names: Vec<String> = view.cupboard.iter().map(|one| one.name(words)).collect();
            assert!(names.iter().any(|name| name == solution), "{names:?}");
            let powder = |name: &&String| {
                name.contains("amilasa en polvo") || name.contains("amylase powder")
            };
            assert_eq!(names.iter().find(powder), None);
            assert_eq!(view.asks, [], "{language}");
            let back = words.own_words(&view.wrote.written.levels[0]);
            assert_eq!(back, solution);
        }
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
