//! Labels for bags and for the cards on them, and the page that shows whether they are hit.

use super::{looks, student_imprint, teacher_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use crate::desk::room::benches::name;
use barm_documents::page::LabelSheet;
use barm_documents::sheet::{self, Label, Labels, TestPrint};
use barm_domain::code::BagCode;
use barm_domain::plan::{Plan, PlannedBag};
use barm_domain::prep::Item;
use barm_domain::schedule::schedule;

/// What a label is stuck on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum On {
    /// A bag: it says what is in it.
    Bag,
    /// The card on a bag: it says when to read it.
    Card,
}

/// Labels as a PDF.
pub(crate) fn labels_pdf(job: &Job<'_>, on: On) -> Result<Vec<u8>, DeskError> {
    Ok(sheet::labels_pdf(&labels(job, on)?, job.wish.label_sheet())?)
}

/// The labels of all bags, in the order of the bag list, and behind them the spare ones.
pub(crate) fn labels(job: &Job<'_>, on: On) -> Result<Labels, DeskError> {
    let sheet = job.wish.label_sheet();
    let mut labels: Vec<Label> = Vec::new();
    for bag in job.bags() {
        // A code that is none cannot be in a plan that was read; it would have no label either.
        let Ok(code) = bag.code.parse::<BagCode>() else { continue };
        let first = labels.last().is_none_or(|before| before.period != code.period());
        labels.push(label(job, on, bag, code, first));
    }
    if labels.is_empty() {
        return Err(DeskError::NoBags);
    }
    labels.extend((0..spares(job, on)).map(|_| spare(job, on)));
    let words = job.wish.words;
    let code = match on {
        On::Bag => "LABELS",
        On::Card => "CARDS",
    };
    Ok(Labels {
        imprint: student_imprint(job, code),
        title: job.plan.title.clone(),
        margin: words.say("label-margin"),
        grid: sheet.grid(),
        sheets: on_sheets(labels, job.wish.start_cell - 1, sheet.cells()),
    })
}

/// How many of the spare labels that are bought are of this kind: half of them, an odd one for a
/// bag. One period gets its share, so that all periods by themselves get what the day gets.
fn spares(job: &Job<'_>, on: On) -> usize {
    // What cannot be mixed has no shopping list either, and no spare label on it.
    let bought = job.prep().ok().and_then(|prep| prep.total(&Item::Label));
    let bought = bought.map_or(0, |total| total.spare.value().ceil() as usize);
    let all = match on {
        On::Bag => bought.div_ceil(2),
        On::Card => bought / 2,
    };
    let bags = job.plan.bags.len().max(1);
    let mut periods = job.plan.periods.iter().map(|period| period.name.as_str());
    let Some(only) = job.wish.period.as_deref() else { return all };
    let of = |name: &str| job.plan.bags.iter().filter(|bag| bag.period == name).count();
    let before: usize = periods.by_ref().take_while(|name| *name != only).map(of).sum();
    all * (before + of(only)) / bags - all * before / bags
}

/// A label with nothing on it but lines to write on.
fn spare(job: &Job<'_>, on: On) -> Label {
    let words = job.wish.words;
    let second = match on {
        On::Bag => "label-spare-holds",
        On::Card => "label-spare-read",
    };
    Label {
        cell: 0,
        period: 0,
        first: false,
        name: String::new(),
        group: String::new(),
        code: String::new(),
        square: String::new(),
        square_says: String::new(),
        look: None,
        says: words.say("label-spare"),
        by_hand: ["label-spare-bag", second].map(|key| words.say(key)).to_vec(),
    }
}

/// Labels dealt onto sheets, the first of which is used up to a cell.
fn on_sheets(labels: Vec<Label>, used: u32, cells: u32) -> Vec<Vec<Label>> {
    let mut sheets: Vec<Vec<Label>> = Vec::new();
    for (place, mut label) in (used..).zip(labels) {
        label.cell = place % cells;
        match sheets.last_mut() {
            Some(sheet) if label.cell > 0 => sheet.push(label),
            _ => sheets.push(vec![label]),
        }
    }
    sheets
}

fn label(job: &Job<'_>, on: On, bag: &PlannedBag, code: BagCode, first: bool) -> Label {
    let words = job.wish.words;
    let (look, says) = match on {
        On::Bag => {
            (Some(looks::look(job.plan, &bag.treatment)), words.treatment(&bag.treatment))
        }
        On::Card => (None, when_to_read(job, bag)),
    };
    let (period, name, code) = (code.period(), name(code), code.to_string());
    Label {
        cell: 0,
        period,
        first,
        name,
        group: own_label(job.plan, bag),
        square: match &job.wish.address {
            Some(address) => address.of_bag(&code),
            None => code.clone(),
        },
        square_says: words.say_with("label-square", &[("bag", &code)]),
        code,
        look,
        says,
        by_hand: Vec::new(),
    }
}

/// What the bag's group calls itself; empty if it has only its number.
fn own_label(plan: &Plan, bag: &PlannedBag) -> String {
    let own = plan
        .group_settings
        .iter()
        .find(|setting| setting.period == bag.period && setting.group == bag.group);
    own.and_then(|setting| setting.label.clone()).unwrap_or_default()
}

/// When the card on a bag is read, in words.
fn when_to_read(job: &Job<'_>, bag: &PlannedBag) -> String {
    let words = job.wish.words;
    let planned = job.plan.period(&bag.period).map(|period| schedule(job.plan, period, None));
    match planned.as_ref().map(|planned| planned.minutes.as_slice()) {
        Some([first, .., last]) => words.say_with(
            "label-card-read",
            &[("every", &first.to_string()), ("last", &last.to_string())],
        ),
        Some([only]) => words.say_with("label-card-once", &[("last", &only.to_string())]),
        _ => words.say("label-card"),
    }
}

/// The page to be held against a sheet of labels, as a PDF.
pub(crate) fn test_print_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let sheet = job.wish.label_sheet();
    Ok(sheet::test_print_pdf(&test_print(job, sheet), sheet)?)
}

fn test_print(job: &Job<'_>, sheet: LabelSheet) -> TestPrint {
    let grid = sheet.grid();
    let steps = [
        "Print this page on plain paper, at 100 %, not fitted to the page.",
        "Measure both scales: each is 100 mm. If not, look for “actual size” when you print.",
        "Hold this page and a label sheet to the light: each frame lies on a label.",
        "All off the same way? Move the paper guides. 2 mm off spoils nothing.",
        "Sheet partly used? Start at the number of its first free label.",
    ];
    TestPrint {
        imprint: teacher_imprint(job, "TEST"),
        title: "Test print for labels".to_owned(),
        sheet: sheet.says().to_owned(),
        steps: steps.map(str::to_owned).to_vec(),
        measure: format!(
            "The frames begin {:.1} mm from the top edge of the paper and {:.1} mm from the left: \
             common practice, by centring. Your own sheet decides.",
            grid.top, grid.left
        ),
        grid,
    }
}

#[cfg(test)]
mod tests {
    use super::{On, labels};
    use crate::desk::print::{Job, Wish};
    use crate::desk::{Size, Unheard, demo};
    use barm_documents::plan_text;
    use barm_domain::plan::Plan;
    use barm_domain::prep::{Item, Measure};

    /// Labels of bags and spare ones, for one period or for the day.
    fn printed(plan: &Plan, on: On, period: Option<&str>) -> (usize, usize) {
        let period = period.map(str::to_owned);
        let wish = Wish { period, ..Wish::plain(Size::Letter) };
        let sheets = labels(&Job::new(plan, &wish, None, &Unheard), on).expect("labels").sheets;
        let all: Vec<_> = sheets.into_iter().flatten().collect();
        let spare = all.iter().filter(|label| !label.by_hand.is_empty()).count();
        (all.len() - spare, spare)
    }

    #[test]
    fn every_label_that_is_bought_is_printed_and_none_besides() {
        let mut plan =
            plan_text::read(demo::plan().as_bytes()).plan.expect("the invented plan");
        for share in [0.0, 0.1, 0.137] {
            plan.spare = share;
            let prep = barm_domain::prep::prep(&plan).expect("a preparation");
            let bought = prep.total(&Item::Label).expect("labels");
            let [bags, cards] = [On::Bag, On::Card].map(|on| {
                let day = printed(&plan, on, None);
                let own = plan.periods.iter().map(|own| printed(&plan, on, Some(&own.name)));
                let sum = own.fold((0, 0), |sum, own| (sum.0 + own.0, sum.1 + own.1));
                assert_eq!(sum, day, "period by period as for the day");
                day
            });
            assert_eq!((bags.0, cards.0), (plan.bags.len(), plan.bags.len()));
            let all = bags.0 + bags.1 + cards.0 + cards.1;
            assert_eq!(Measure::pieces(all as u32), bought.need(), "{share}");
            assert_eq!(bags.1 + cards.1 == 0, share == 0.0);
        }
    }
}
