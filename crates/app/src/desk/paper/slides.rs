//! Slides for the talk after the day.

use super::prompts::asked;
use super::results::{every_bag, questions_drawn};
use super::student_imprint;
use crate::desk::print::Job;
use crate::desk::{Analysis, DeskError};
use barm_documents::catalog::Catalog;
use barm_documents::chart::Words;
use barm_documents::sheet::{self, ClassSlides, SlideWords, Slides};
use barm_domain::discussion::prompts;
use barm_domain::plan::{Period, Plan};

/// The slides as a PDF: a run of them for each period that is printed.
pub(crate) fn slides_pdf(job: &Job<'_>, analysis: &Analysis) -> Result<Vec<u8>, DeskError> {
    let (plan, words) = (job.plan, job.wish.words);
    let bags = analysis.result.bags.iter();
    let older = super::older_names_told(words, bags.map(|bag| bag.bag.treatment.as_str()));
    let explained = |says: String| match &older {
        Some(older) => format!("{says} {older}"),
        None => says,
    };
    let slides = Slides {
        imprint: student_imprint(job, "SLIDES"),
        title: if plan.big_question.is_empty() { &plan.title } else { &plan.big_question }
            .clone(),
        classes: job.periods().map(|period| class(plan, period, analysis, words)).collect(),
        words: SlideWords {
            dots: words.say("slides-dots"),
            dots_after: explained(words.say("slides-dots-after")),
            curves: explained(words.say("slides-curves")),
            talk: words.say("slides-talk"),
            nothing: words.say("slides-nothing"),
        },
    };
    Ok(sheet::slides_pdf(&slides, Words::of(words))?)
}

fn class(plan: &Plan, period: &Period, analysis: &Analysis, words: &Catalog) -> ClassSlides {
    let result = &analysis.result.of_period(plan, &period.name);
    let (day, forecasts) = (&analysis.result.bags, &analysis.outlook.treated);
    let prompts = prompts(plan, result, day, forecasts);
    let place =
        plan.periods.iter().position(|other| other.name == period.name).unwrap_or(0) + 1;
    let mut every_bag = every_bag(plan, &result.bags);
    let mut questions = questions_drawn(plan, &result.bags);
    for row in &mut every_bag {
        row.name = words.treatment(&row.name);
    }
    for sheaf in questions.iter_mut().flat_map(|drawn| &mut drawn.curves) {
        sheaf.name = words.treatment(&sheaf.name);
    }
    ClassSlides {
        period: words.say_with("slides-period", &[("period", &period.name)]),
        sign: super::period_number(plan, &period.name).unwrap_or(place),
        every_bag,
        minute: result.minute.map_or_else(|| "–".to_owned(), |minute| format!("{minute:.0}")),
        questions,
        prompts: prompts.iter().map(|prompt| asked(prompt, words)).collect(),
    }
}
