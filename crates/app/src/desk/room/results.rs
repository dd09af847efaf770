//! What the results page shows: the record's answers, in their plain first form.

use super::day::DayLook;
use super::every_bag::foretelling;
use super::foretold::CurvesShown;
use super::poured::{Poured, poured};
use super::{Kind, Room, Scene};
use crate::desk::paper::{Beside, all_curves};
use crate::desk::{self, Analysis, DaySays, DeskError, Metered, Pushes};
use barm_domain::code::BagCode;
use barm_domain::plan::Plan;
use barm_domain::record::{Counted, Lent};
use barm_domain::result::{BagResult, ClassResult, Compared, Hint};
use std::collections::BTreeSet;
use std::sync::Arc;

/// The results page. For the teacher only.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ResultsView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// At which minute bags are compared, in a sentence.
    pub(crate) compared: String,
    /// Bags with a height that counts.
    pub(crate) bags: usize,
    /// Each question with its answer.
    pub(crate) questions: Vec<Answered>,
    /// What was left out and what did not work, a sentence each.
    pub(crate) left_out: Vec<String>,
    /// What the breath meter says of bags, if any was held to it.
    pub(crate) meter: Option<Metered>,
    /// What the day's readings teach, as far as it was worked out.
    pub(crate) day: DayShown,
    /// Laws of the bag model that forecasts behind it go beyond, a line each.
    pub(crate) beyond: Vec<String>,
    /// How warm the water was at pouring, where that was measured.
    pub(crate) poured: Option<Poured>,
}

/// What the day's readings teach, as it is shown.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum DayShown {
    /// Nothing is said of it yet.
    Waits,
    /// It is being worked out.
    Working,
    /// It could not be worked out: why.
    Lost(String),
    /// In words, with a picture for a wide page and one for a narrow one, if anything changed.
    There(DaySays, Option<[String; 2]>),
}

/// What the day teaches; works it out in the background where that is not done.
pub(crate) fn day_shown(room: &Arc<Room>) -> DayShown {
    match room.day() {
        DayLook::Waits => DayShown::Waits,
        DayLook::Working => DayShown::Working,
        DayLook::Lost(why) => DayShown::Lost(why),
        DayLook::There(taught) => {
            let plan = room.read(|scene| what_counts(scene).0);
            let says = desk::day_says(&plan, &taught);
            let pictures = says.pictures(&plan.title);
            DayShown::There(says, pictures)
        }
    }
}

/// A question with its answer.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Answered {
    /// The question in words.
    pub(crate) asks: String,
    /// Differences as a picture, for a wide page and for a narrow one.
    pub(crate) pictures: [String; 2],
    /// How the cards rose, on what was foretold of them, if any was read.
    pub(crate) curves: Option<CurvesShown>,
    /// Treatments of which nothing is told, since no bag of them was read yet and a
    /// period that makes them is not over.
    pub(crate) not_run: Vec<String>,
    /// A verdict in a word or two, the treatment, and why.
    pub(crate) verdicts: Vec<(&'static str, String, String)>,
    /// What else is to be said.
    pub(crate) notes: Vec<String>,
}

/// The results page of an investigation. Works out forecasts: not for asynchronous code.
pub(crate) fn results_view(room: &Room) -> Result<ResultsView, DeskError> {
    let (plan, analysis, waits) = analysis(room)?;
    let voice = desk::voice(&plan);
    let foretold = foretelling(room, &analysis.result.bags);
    let sheaves = all_curves(&plan, &analysis.result.bags);
    let curves = |id: &str, asks: &str| {
        let question = plan.questions.iter().find(|question| question.id == id)?;
        let answering = plan.answering(question);
        let own = |name: &str| answering.iter().any(|treatment| treatment.name == name);
        let own: Vec<_> = sheaves.iter().filter(|sheaf| own(&sheaf.name)).cloned().collect();
        CurvesShown::of(asks, &own, &foretold)
    };
    let questions = desk::questions(&plan).into_iter().filter_map(|(id, asks)| {
        let answer = analysis.result.questions.iter().find(|answer| answer.question == id)?;
        let comparisons = &answer.comparisons;
        let verdicts = comparisons.iter().map(|compared| {
            let verdict = voice.verdict(compared.with.verdict.code);
            (verdict, compared.treatment.clone(), voice.why(compared))
        });
        let notes = comparisons.iter().filter_map(|compared| voice.without_set_aside(compared));
        let crossed = answer.crossed.as_ref().and_then(|crossed| voice.interaction(crossed));
        // Set-aside bags are left out: what is not comparable hints at nothing.
        let ladder = answer.ladder_without.as_ref().unwrap_or(&answer.ladder);
        let beside = voice.neighbors(&ladder.neighbors(), plan.readable_mm);
        Some(Answered {
            asks: asks.to_owned(),
            not_run: waiting_for(&plan, id, &waits),
            pictures: [960.0, 340.0]
                .map(|width| desk::interval_picture(&plan, asks, answer, width)),
            curves: curves(id, asks),
            verdicts: verdicts.collect(),
            notes: notes.chain(crossed).chain(beside).collect(),
        })
    });
    let questions = questions.collect();
    let bags = &analysis.result.bags;
    let aside = bags.iter().filter_map(|bag| voice.set_aside(bag, &plan));
    // A bag that nobody read is no failure while its period is still to come or runs.
    let over = room.read(periods_over);
    let waits = |bag: &&BagResult| {
        bag.hints.contains(&Hint::NotRead) && !over.contains(&bag.bag.period)
    };
    let told: Vec<BagResult> = bags.iter().filter(|bag| !waits(bag)).cloned().collect();
    let hints = desk::by_hint(&plan, &told).into_iter();
    let hints = hints.map(|(hint, codes)| format!("{codes}: {hint}"));
    let left_out = aside.chain(hints).chain(room.read(who_had_lent)).collect();
    Ok(ResultsView {
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        compared: voice.common_minute(&analysis.result),
        bags: bags.iter().filter(|bag| bag.summary.is_some()).count(),
        questions,
        left_out,
        meter: desk::metered(&plan, analysis.meter.as_ref()),
        day: DayShown::Waits,
        beyond: desk::beyond_says(&plan, &analysis.beyond),
        poured: room.read(poured),
    })
}

/// The report as a PDF, made now. For the teacher only.
pub(crate) fn results_pdf(room: &Room, size: desk::Size) -> Result<Vec<u8>, DeskError> {
    let (plan, mut analysis, waits) = analysis(room)?;
    analysis.day = room.day_there().map(|taught| taught.as_ref().clone());
    let beside = beside(room, waits);
    desk::paper::results_pdf_with(room.kind, &plan, &analysis, &beside, size)
}

/// What the report says besides what the readings say.
pub(super) fn beside(room: &Room, waits: BTreeSet<String>) -> Beside {
    Beside { lent: room.read(who_had_lent), not_run: waits.into_iter().collect() }
}

/// What counts of the record, each bag as what it is in truth; and the treatments that wait for
/// their period, by [`not_run`].
pub(super) fn analysis(room: &Room) -> Result<(Plan, Analysis, BTreeSet<String>), DeskError> {
    let (plan, counted, pushes, waits) = room.read(|scene| {
        let (plan, counted) = what_counts(scene);
        let waits = not_run(scene, &plan);
        let pushes = Pushes::on_record(&plan, scene.standing());
        (plan, counted, pushes, waits)
    });
    let mut analysis = desk::analyze_record(&plan, counted, &pushes, &desk::Unheard)?;
    only_run(&mut analysis.result, &waits);
    Ok((plan, analysis, waits))
}

/// Leaves out comparisons that wait for periods which are not over.
pub(super) fn only_run(result: &mut ClassResult, waits: &BTreeSet<String>) {
    for answer in &mut result.questions {
        answer.comparisons.retain(|compared| has_run(compared, waits));
    }
}

/// Treatments of which nothing was read while a period that makes them is still to come or runs:
/// they are no failure yet.
pub(super) fn not_run(scene: &Scene<'_>, plan: &Plan) -> BTreeSet<String> {
    let standing = scene.standing();
    let over = periods_over(scene);
    let was_read = |code: &str| {
        let code = code.parse::<BagCode>().ok();
        code.and_then(|code| standing.bags.get(&code)).is_some_and(|bag| bag.zero.is_some())
    };
    let bags = plan.bags.iter();
    let read: BTreeSet<&str> = bags
        .clone()
        .filter(|bag| was_read(&bag.code))
        .map(|bag| bag.treatment.as_str())
        .collect();
    bags.filter(|bag| !over.contains(&bag.period) && !read.contains(bag.treatment.as_str()))
        .map(|bag| bag.treatment.clone())
        .collect()
}

/// Periods that have ended.
fn periods_over(scene: &Scene<'_>) -> BTreeSet<String> {
    let periods = scene.standing().periods.iter();
    periods.filter(|(_, one)| one.ended.is_some()).map(|(name, _)| name.clone()).collect()
}

/// Whether both sides of a comparison had their turn.
pub(super) fn has_run(compared: &Compared, waits: &BTreeSet<String>) -> bool {
    !waits.contains(&compared.treatment) && !waits.contains(&compared.reference)
}

/// Treatments that answer a question and wait for their period.
pub(super) fn waiting_for(plan: &Plan, id: &str, waits: &BTreeSet<String>) -> Vec<String> {
    let question = plan.questions.iter().find(|question| question.id == id);
    let answering = question.map(|question| plan.answering(question)).unwrap_or_default();
    let names = answering.iter().map(|treatment| treatment.name.clone());
    names.filter(|name| waits.contains(name)).collect()
}

/// What counts of the record, and the plan with each bag as what it is in truth.
pub(super) fn what_counts(scene: &Scene<'_>) -> (Plan, Counted) {
    let truth = scene.bound.plan_in_truth();
    (truth, Counted::of(scene.ledger.known(), scene.standing()))
}

/// Groups that work with numbers that are not their own, a sentence each.
pub(super) fn who_had_lent(scene: &Scene<'_>) -> Vec<String> {
    let groups = scene.standing().groups.iter();
    let lent = groups.filter_map(|((period, group), standing)| {
        let whose = match standing.stand_in?.lent {
            Lent::ClassData => "class data",
            Lent::Simulated { .. } => "a simulated run that was not measured",
        };
        Some(format!(
            "Group {group} of period {period} works with {whose}; what it wrote meanwhile does not count."
        ))
    });
    lent.collect()
}
