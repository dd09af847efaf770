//! Bench cards: what a group asks and does, at the level that is left to it, never named.

use super::care::care;
use super::seats::{Bench, Seat, seats};
use super::{face, student_imprint};
use crate::desk::DeskError;
use crate::desk::contents::{Content, contents};
use crate::desk::print::Job;
use barm_documents::catalog::Catalog;
use barm_documents::sheet::{
    self, BenchCard, BenchCards, CardAmount, CardOwn, CardStep, CardThing,
};
use barm_domain::amount::show::both_degrees;
use barm_domain::bench::other_unit;
use barm_domain::plan::{Inquiry, Lies, Plan, PlannedBag, Question, Recipe};
use barm_domain::schedule::schedule;

/// Rows to write on, for a group that plans its own bags: what changes beside yeast and water has
/// seldom more parts.
const BLANKS: u32 = 3;

/// Lines for how it makes them; what every bag needs stands in steps of its own.
const HOW: u32 = 2;

/// The cards as a PDF.
pub(crate) fn bench_cards_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let cards = BenchCards {
        imprint: student_imprint(job, "CARD"),
        title: job.plan.title.clone(),
        cards: seats(job, "card-name", Bench::Too).iter().map(|seat| card(job, seat)).collect(),
    };
    Ok(sheet::bench_cards_pdf(&cards, face(job))?)
}

fn card(job: &Job<'_>, seat: &Seat<'_>) -> BenchCard {
    let plan = job.plan;
    let own = questions(plan, &seat.bags);
    let asks = match seat.inquiry {
        Inquiry::Open => Vec::new(),
        _ if own.is_empty() => vec![plan.big_question.clone()],
        _ => own.iter().map(|question| question.asks.clone()).collect(),
    };
    let known = match seat.inquiry {
        Inquiry::Confirmation => known(job.wish.words, &own),
        _ => Vec::new(),
    };
    let things = if seat.plans() { Vec::new() } else { things(job, seat) };
    BenchCard {
        head: seat.head.clone(),
        asks,
        known,
        own_plan: seat.plans(),
        same: same(job),
        steps: steps(job, seat),
        bags: seat.head_bags(job),
        things,
        blanks: BLANKS,
        care: care(job, seat),
    }
}

/// The questions that bags answer, in the order of the plan.
pub(super) fn questions<'a>(plan: &'a Plan, bags: &[&PlannedBag]) -> Vec<&'a Question> {
    let asked = |question: &&Question| bags.iter().any(|bag| bag.question == question.id);
    plan.questions.iter().filter(asked).collect()
}

/// What is known of the things that questions change; each once.
pub(super) fn known(words: &Catalog, questions: &[&Question]) -> Vec<String> {
    let mut said = Vec::new();
    for question in questions {
        let key = format!("card-known-{}", question.variable.words().replace(' ', "-"));
        let says = words.say(&key);
        if !said.contains(&says) {
            said.push(says);
        }
    }
    said
}

/// What all bags of the class have, in both kinds of unit, as the planning page names it.
pub(super) fn same(job: &Job<'_>) -> Vec<String> {
    let (words, base) = (job.wish.words, &job.plan.base);
    // Food and enzyme are what groups choose; all else of the base recipe stays.
    let plain = Recipe { food: None, enzyme: None, ..base.clone() };
    let dry = contents(job.plan, &plain);
    let mut said: Vec<String> = dry.iter().map(|content| in_both(words, content)).collect();
    let (amount, degrees) = (water(words, base), both_degrees(base.water_celsius));
    let water = [("amount", amount.as_str()), ("degrees", degrees.as_str())];
    said.push(words.say_with("card-same-water", &water));
    said.push(words.say_with("card-same-bag", &[("bag", &words.bag(&base.bag.written))]));
    said
}

fn in_both(words: &Catalog, content: &Content) -> String {
    let much = words.much(&content.amount.written, &content.thing.name(words));
    with(words, much, content.other.as_deref())
}

fn with(words: &Catalog, amount: String, other: Option<&str>) -> String {
    match other {
        Some(other) => {
            words.say_with("card-with", &[("amount", &amount), ("other", &words.amount(other))])
        }
        None => amount,
    }
}

/// Water in both kinds of unit.
fn water(words: &Catalog, recipe: &Recipe) -> String {
    let other = other_unit(&recipe.water, None);
    with(words, words.amount(&recipe.water.written), other.as_deref())
}

/// A row a thing, in the order in which the bags name them.
fn things(job: &Job<'_>, seat: &Seat<'_>) -> Vec<CardThing> {
    let words = job.wish.words;
    let bags: Vec<Vec<Content>> = recipes(job.plan, seat)
        .iter()
        .map(|recipe| recipe.as_ref().map_or_else(Vec::new, |one| contents(job.plan, one)))
        .collect();
    let mut rows: Vec<CardThing> = Vec::new();
    for (at, bag) in bags.iter().enumerate() {
        for content in bag {
            let thing = content.thing.name(words);
            let place = rows.iter().position(|row| row.thing == thing).unwrap_or_else(|| {
                rows.push(CardThing { thing, cells: vec![None; bags.len()] });
                rows.len() - 1
            });
            rows[place].cells[at] = Some(CardAmount {
                amount: words.amount(&content.amount.written),
                other: content.other.as_deref().map(|other| words.amount(other)),
            });
        }
    }
    rows
}

/// The recipe of each bag; none where the plan has no such treatment any more.
fn recipes(plan: &Plan, seat: &Seat<'_>) -> Vec<Option<Recipe>> {
    let recipe = |bag: &&PlannedBag| Some(plan.recipe(plan.treatment(&bag.treatment)?));
    seat.bags.iter().map(recipe).collect()
}

fn steps(job: &Job<'_>, seat: &Seat<'_>) -> Vec<CardStep> {
    let words = job.wish.words;
    let say = |key: &str| words.say(key);
    let step = |icon, says: String| CardStep { icon, says, ..CardStep::default() };
    let loud =
        |icon, key: &str, says: String| CardStep { strong: Some(say(key)), ..step(icon, says) };
    // The teacher's bench guesses nothing.
    let guess = if seat.group > 0 { say("card-guess") } else { String::new() };
    let labels = format!("{} {guess}", say("step-labels"));
    let mut steps =
        vec![loud("goggles", "step-goggles", say("care-s09")), step("label", labels)];
    if seat.plans() {
        steps.push(CardStep { recipe: true, ..step("spoon", say("card-own-bags")) });
        steps.push(CardStep { lines: HOW, ..step("dropper", say("card-own-steps")) });
        // What a group changes is its choice; all else is poured as the class pours it.
        let base = &job.plan.base;
        let (amount, degrees) = (water(words, base), both_degrees(base.water_celsius));
        let poured = [("amount", amount.as_str()), ("degrees", degrees.as_str())];
        steps.push(step("thermometer", words.say_with("card-pour", &poured)));
    } else {
        steps.push(CardStep { recipe: true, ..step("spoon", say("step-each")) });
        steps.push(each(job, seat, "thermometer", |recipe| {
            let degrees = both_degrees(recipe.water_celsius);
            let amount = water(words, recipe);
            words.say_with("step-water", &[("amount", &amount), ("degrees", &degrees)])
        }));
    }
    steps.push(step("bag", say("step-close")));
    steps.push(step("yeast", say("step-rub")));
    let lies = |recipe: &Recipe| {
        say(match recipe.lies {
            Lies::Bench => "step-bench",
            Lies::Towel => "step-towel",
            Lies::WarmTray(_) => "step-tray",
        })
    };
    steps.push(if seat.plans() {
        step("card", lies(&job.plan.base))
    } else {
        each(job, seat, "card", lies)
    });
    steps.push(loud("ruler", "step-zero", say("bench-how")));
    steps.push(step("clock", format!("{} {}", readings(job, seat), say("card-missed"))));
    steps
}

/// A step that is said once where it is the same for all bags, else for those that share it.
fn each(
    job: &Job<'_>,
    seat: &Seat<'_>,
    icon: &'static str,
    say: impl Fn(&Recipe) -> String,
) -> CardStep {
    let mut own: Vec<CardOwn> = Vec::new();
    for (bag, recipe) in seat.head_bags(job).into_iter().zip(recipes(job.plan, seat)) {
        let Some(recipe) = recipe else { continue };
        let says = say(&recipe);
        match own.iter_mut().find(|one| one.says == says) {
            Some(one) => one.whose = format!("{}, {}", one.whose, bag.letter),
            None => own.push(CardOwn { whose: bag.letter, says }),
        }
    }
    match own.as_slice() {
        [] => CardStep { icon, says: say(&job.plan.base), ..CardStep::default() },
        [only] => CardStep { icon, says: only.says.clone(), ..CardStep::default() },
        _ => CardStep { icon, own, ..CardStep::default() },
    }
}

/// When bags are read: every so many minutes, or at the minutes of the schedule where they are uneven.
fn readings(job: &Job<'_>, seat: &Seat<'_>) -> String {
    let minutes = schedule(job.plan, seat.period, None).minutes;
    let step = minutes.first().copied().unwrap_or_default();
    let even = (1_u32..).zip(&minutes).all(|(n, minute)| *minute == n * step);
    let words = job.wish.words;
    if even {
        let (step, count) = (step.to_string(), minutes.len().to_string());
        return words.say_with("card-every", &[("minutes", &step), ("count", &count)]);
    }
    let minutes: Vec<String> = minutes.iter().map(u32::to_string).collect();
    words.say_with("card-read", &[("minutes", &minutes.join(", "))])
}
