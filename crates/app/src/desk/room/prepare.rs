//! What the prepare page shows: the prep sheet, as on paper.

use super::{Kind, Room, Scene};
use crate::desk::{self, DeskError, PrepSheet};
use barm_domain::check;
use barm_domain::finding::{Finding, Severity};
use barm_domain::outlook::Look;
use barm_domain::plan::Plan;
use barm_domain::prep::{self, Prep, PrepError};

/// The prepare page.
#[derive(Debug)]
pub(crate) struct PrepareView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Faults of the plan; buying anything should wait for them.
    pub(crate) faults: usize,
    /// The sheet, or why there is none.
    pub(crate) sheet: Result<PrepSheet, String>,
    /// Periods with bags that the newest plan makes otherwise than they were sealed, or does not
    /// list, and how many those are.
    pub(crate) kept: Vec<(String, usize)>,
    /// One line about the lots that forecasts go by, if a pilot tried any.
    pub(crate) by_pilot: Option<String>,
}

/// The prepare page of an investigation.
pub(crate) fn prepare_view(room: &Room) -> PrepareView {
    let (plan, held, entries) =
        room.read(|scene| (scene.newest.clone(), scene.plan.clone(), scene.foreseen()));
    let found = check::check(&plan, &entries);
    let sheet = prepared(&plan, &held)
        .map(|prep| desk::prep_sheet(&held, &prep, &in_the_room(room, &held)))
        .map_err(DeskError::from)
        .map_err(|error| {
            let hint = error.hint().map(|hint| format!(" {}", desk::editing::sentence(&hint)));
            format!(
                "{}{}",
                desk::editing::sentence(&error.to_string()),
                hint.unwrap_or_default()
            )
        });
    PrepareView {
        kept: room.read(kept),
        id: room.id,
        kind: room.kind,
        title: plan.title.clone(),
        by_pilot: plan.known.says(),
        faults: found.iter().filter(|finding| finding.severity == Severity::Fault).count(),
        sheet,
    }
}

/// The prep sheet as a PDF, made now.
pub(crate) fn prep_pdf(room: &Room, size: desk::Size) -> Result<Vec<u8>, DeskError> {
    let (plan, held) = room.read(|scene| (scene.newest.clone(), scene.plan.clone()));
    let prep = prepared(&plan, &held)?;
    desk::paper::prep_pdf_of(room.kind, &held, &prep, &in_the_room(room, &held), size)
}

/// What is found of the bags as they stand there, the sealed ones as they were sealed.
fn in_the_room(room: &Room, held: &Plan) -> Vec<Finding> {
    let foreseen = |scene: &Scene<'_>| scene.outlook.map(|outlook| outlook.entries.clone());
    check::check(held, &room.read(foreseen).unwrap_or_default())
}

/// What is bought and made by the newest plan, with the trays and the water of every period as its
/// bags are in `held`, so that a sealed bag stands there as it was sealed. Every page and every
/// paper asks it.
pub(crate) fn prepared(newest: &Plan, held: &Plan) -> Result<Prep, PrepError> {
    let prep = prep::prep(newest)?;
    if std::ptr::eq(newest, held) {
        return Ok(prep);
    }
    let periods = prep::prep(held)?.periods;
    Ok(Prep { periods, ..prep })
}

/// Periods with bags that stand there as they were sealed and not as the newest plan has them, in
/// the order of the plan, and how many those are.
fn kept(scene: &Scene<'_>) -> Vec<(String, usize)> {
    let kept: Vec<String> = scene.bound.kept.iter().map(ToString::to_string).collect();
    let bags = |period: &str| {
        let own = scene.plan.bags.iter().filter(|bag| bag.period == period);
        own.filter(|bag| kept.contains(&bag.code)).count()
    };
    let periods = scene.plan.periods.iter();
    let counted = periods.map(|period| (period.name.clone(), bags(&period.name)));
    counted.filter(|(_, bags)| *bags > 0).collect()
}

/// The forecast as a PDF, worked out anew. For the teacher only.
pub(crate) fn forecast_pdf(room: &Room, size: desk::Size) -> Result<Vec<u8>, DeskError> {
    let plan = room.read(|scene| scene.newest.clone());
    let outlook = desk::outlook(&plan, Look::default(), &desk::Unheard)?;
    desk::paper::forecast_pdf_of(room.kind, &plan, &outlook, size)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::print::{Job, Wish};
    use crate::desk::room::acted::{Acted, PERIOD, bag};
    use barm_domain::record::What;
    use std::sync::Arc;

    #[test]
    fn trays_show_what_sealed_bags_are_and_shopping_what_the_newest_plan_is() {
        let mut acted = Acted::new(2, 2);
        let looked = |acted: &Acted| {
            let (plan, held, kept) =
                acted.scene(|scene| (scene.newest.clone(), scene.plan.clone(), kept(scene)));
            let prep = prepared(&plan, &held).expect("a preparation");
            let period = prep.periods.iter().find(|own| own.period == PERIOD).expect("it");
            let bags = period.trays.iter().flat_map(|tray| &tray.bags);
            let bags = bags.map(|bag| (bag.code.clone(), bag.treatment.clone()));
            let bags: std::collections::BTreeMap<String, String> = bags.collect();
            // Whatever is printed asks the same.
            let wish = Wish::plain(desk::Size::Letter);
            let job = Job::new(&held, &wish, None, &desk::Unheard).bought_by(&plan);
            assert_eq!(job.prep().ok(), Some(&prep));
            (bags, prep.shopping, kept)
        };
        let (before, ..) = looked(&acted);
        acted.bag(600.0, bag(1, 0), What::Sealed { plan: 1 });
        assert_eq!(looked(&acted).2, [], "the newest plan says the same");
        // A second version: both bags of group 1 are to be something else.
        let mut plan = Plan::clone(&acted.plan);
        let other = before[&bag(2, 0).to_string()].clone();
        let question = plan.treatments().find(|(_, own)| own.name == other);
        let question = question.expect("its question").0.to_owned();
        let (sealed, open) = (bag(1, 0).to_string(), bag(1, 1).to_string());
        for own in plan.bags.iter_mut().filter(|own| [&sealed, &open].contains(&&own.code)) {
            own.treatment.clone_from(&other);
            own.question.clone_from(&question);
        }
        assert_ne!(before[&sealed], other);
        acted.plans.insert(2, Arc::new(plan));
        let (after, shopping, kept) = looked(&acted);
        assert_eq!(after[&sealed], before[&sealed], "it is sealed");
        assert_eq!(after[&open], other, "it is not");
        assert_eq!(kept, [(PERIOD.to_owned(), 1)]);
        let newest = desk::prep(&acted.plans[&2]).expect("a preparation");
        assert_eq!(shopping, newest.shopping);
    }
}
