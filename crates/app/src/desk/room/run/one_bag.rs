//! One bag: its whole record, nothing hidden, and everything that can be done with it.

use super::benches::{Expects, RunBag};
use super::done::{self, Done};
use super::made::{Part, WentIn, degrees, went_in};
use super::odd_word;
use crate::desk::room::benches::{Benches, group_name, local, millimeters};
use crate::desk::room::hour::Hour;
use crate::desk::room::{Kind, Scene};
use crate::desk::wording::listed;
use crate::desk::{Wording, beyond_of_bag, say};
use barm_domain::code::BagCode;
use barm_domain::plan::Period;
use barm_domain::record::{Entry, Key, Made, Subject, Tapped, What, Who};
use jiff::Timestamp;

/// The page of one bag.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BagPage {
    /// Number of the investigation.
    pub(crate) investigation: i64,
    /// Whether it happens in a class.
    pub(crate) kind: Kind,
    /// The period's clock.
    pub(crate) hour: Hour,
    /// What was done last, for ten seconds.
    pub(crate) done: Option<Done>,
    /// The bag on its forecast.
    pub(crate) bag: RunBag,
    /// Its treatment by its label, where it is another in truth.
    pub(crate) label: Option<String>,
    /// What became of it, in words.
    pub(crate) stands: String,
    /// Laws of the bag model that its forecast goes beyond, a line each.
    pub(crate) beyond: Vec<String>,
    /// Heights that count: key, what it is, height.
    pub(crate) heights: Vec<(Key, String, f64)>,
    /// The rule by which it is set aside.
    pub(crate) set_aside: Option<String>,
    /// What goes in, as planned and as it was.
    pub(crate) went_in: Vec<WentIn>,
    /// Odd things that can be taken back: key and words.
    pub(crate) odd: Vec<(Key, String)>,
    /// Whether it is lost.
    pub(crate) lost: bool,
    /// Whether it is vented.
    pub(crate) vented: bool,
    /// Rules by which it may be set aside: name and words.
    pub(crate) rules: Vec<(String, String)>,
    /// All treatments of the plan.
    pub(crate) treatments: Vec<String>,
    /// Number of groups in its period.
    pub(crate) groups: u32,
    /// Everything that was ever written about it, in order.
    pub(crate) ledger: Vec<LedgerRow>,
}

/// One line of the record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct LedgerRow {
    /// When it happened, local time.
    pub(crate) at: String,
    /// When it arrived, if much later.
    pub(crate) arrived: Option<String>,
    /// Who says so.
    pub(crate) who: String,
    /// What happened.
    pub(crate) says: String,
    /// Why it does not count, if it does not.
    pub(crate) refused: Option<String>,
}

/// An entry that arrives so much later was kept on its device.
const LATER_S: f64 = 30.0;

/// The page of a bag; nothing if it is not one of this period's.
pub(crate) fn bag_page(
    scene: &Scene<'_>,
    w: Wording,
    period: &str,
    code: BagCode,
    did: Option<Key>,
    now: Timestamp,
) -> Option<BagPage> {
    let planned = scene.plan.period(period)?;
    let benches = Benches::of(scene, planned, now);
    let expects = Expects::of(scene, &benches);
    let bench = benches.bags.iter().find(|bag| bag.code == code)?;
    let written = code.to_string();
    let label = &scene.plan.bags.iter().find(|bag| bag.code == written)?.treatment;
    let bag = scene.standing().bags.get(&code).cloned().unwrap_or_default();
    let mut heights = Vec::new();
    for zero in bag.zero.iter().chain(&bag.other_zeros) {
        heights.push((zero.key, say!(w, "bag-zero"), zero.height_mm));
    }
    for reading in &bag.readings {
        let which = reading.planned.map_or_else(
            || say!(w, "bag-between", at = local(scene, planned, reading.measured)),
            |minute| say!(w, "bag-minute", minute = minute.to_string()),
        );
        heights.push((reading.key, which, reading.height_mm));
    }
    let mut stands = Vec::new();
    if let Some((at, version)) = bag.sealed {
        let (at, version) = (local(scene, planned, at), version.to_string());
        stands.push(say!(w, "bag-is-sealed", at = at, version = version));
    }
    if let Some(group) = bag.truth.as_ref().and_then(|truth| truth.group) {
        stands.push(say!(w, "bag-is-made-by", group = group_name(group)));
    }
    if let Some(rule) = &bag.set_aside {
        stands.push(say!(w, "bag-is-aside", rule = rule));
    }
    if let Some(at) = bag.vented {
        stands.push(say!(w, "bag-is-vented", at = local(scene, planned, at)));
    }
    if let Some(at) = bag.lost {
        stands.push(say!(w, "bag-is-lost", at = local(scene, planned, at)));
    }
    let entries = scene.ledger.entries_of(&Subject::Bag(code)).iter();
    let recipe = scene.plan.treatment(&bench.treatment).map(|of| scene.plan.recipe(of));
    Some(BagPage {
        investigation: scene.investigation,
        kind: scene.kind,
        hour: Hour::of(scene, period, now)?,
        done: did.and_then(|did| done::done(scene, w, planned, did, now)),
        label: (*label != bench.treatment).then(|| label.clone()),
        stands: listed(w, &stands),
        bag: expects.with(bench),
        beyond: beyond_of_bag(scene.plan, scene.outlook, &bench.treatment),
        heights,
        set_aside: bag.set_aside.clone(),
        went_in: recipe.map_or_else(Vec::new, |recipe| went_in(&recipe, bag.made.as_ref())),
        odd: bag.odd.iter().map(|tap| odd(scene, w, planned, tap)).collect(),
        lost: bag.lost.is_some(),
        vented: bag.vented.is_some(),
        rules: scene
            .plan
            .set_aside_rules
            .iter()
            .map(|rule| (rule.id.clone(), rule.says.clone()))
            .collect(),
        treatments: scene.plan.treatments().map(|(_, of)| of.name.clone()).collect(),
        groups: planned.groups,
        ledger: entries.map(|entry| row(scene, w, planned, entry)).collect(),
    })
}

fn odd(scene: &Scene<'_>, w: Wording, period: &Period, tap: &Tapped) -> (Key, String) {
    let (odd, at) = (odd_word(w, tap.odd), local(scene, period, tap.at));
    (tap.key, say!(w, "bag-odd-at", odd = odd, at = at))
}

fn row(scene: &Scene<'_>, w: Wording, period: &Period, entry: &Entry) -> LedgerRow {
    let late = entry.arrived.duration_since(entry.measured).as_secs_f64() > LATER_S;
    let refused = scene.standing().refused.iter().find(|(key, _)| *key == entry.key);
    LedgerRow {
        at: local(scene, period, entry.measured),
        arrived: late.then(|| local(scene, period, entry.arrived)),
        who: match &entry.who {
            Who::Teacher => say!(w, "who-you"),
            Who::Group { period: own, group } if **own == period.name => {
                say!(w, "who-group", group = group_name(*group))
            }
            Who::Group { period: own, group } => {
                say!(w, "who-group-of", group = group_name(*group), period = own.as_ref())
            }
            Who::Aide => say!(w, "who-aide"),
            Who::Import => say!(w, "who-paper"),
            Who::Program => say!(w, "who-program"),
        },
        says: says(w, &entry.what),
        refused: refused.map(|(_, reason)| reason.to_string()),
    }
}

fn says(w: Wording, what: &What) -> String {
    let mm = |mm: f64| millimeters(mm);
    match what {
        What::Made(made) => made_of(w, made),
        What::Sealed { plan } => say!(w, "entry-sealed", version = plan.to_string()),
        What::Zero { height_mm } => say!(w, "entry-zero", mm = mm(*height_mm)),
        What::Reading { planned: Some(minute), height_mm } => {
            say!(w, "entry-reading", mm = mm(*height_mm), minute = minute.to_string())
        }
        What::Reading { planned: None, height_mm } => {
            say!(w, "entry-between", mm = mm(*height_mm))
        }
        What::Correction { height_mm, .. } => say!(w, "entry-corrected", mm = mm(*height_mm)),
        What::Meter { percent, turn: None } => {
            say!(w, "entry-meter", percent = percent.to_string())
        }
        What::Meter { percent, turn: Some(turn) } => {
            let (percent, turn) = (percent.to_string(), turn.to_string());
            say!(w, "entry-meter-turn", percent = percent, turn = turn)
        }
        What::Odd(odd) => odd_word(w, *odd),
        What::OddBack { .. } => say!(w, "entry-odd-back"),
        What::SetRight(truth) => match (&truth.treatment, truth.group) {
            (Some(treatment), _) => say!(w, "entry-is", treatment = treatment),
            (None, Some(group)) => say!(w, "entry-made-by", group = group_name(group)),
            (None, None) => say!(w, "entry-as-labeled"),
        },
        What::SetAside { rule } => say!(w, "bag-is-aside", rule = rule),
        What::TakenBack => say!(w, "entry-taken-back"),
        What::Vented => say!(w, "entry-vented"),
        What::Lost => say!(w, "entry-lost"),
        _ => say!(w, "entry-noted"),
    }
}

fn made_of(w: Wording, made: &Made) -> String {
    if *made == Made::default() {
        return say!(w, "entry-made-planned");
    }
    let water = made.water_celsius.map(degrees);
    let other = made.difference.as_deref();
    let amounts = other.into_iter().flat_map(|other| {
        [
            (Part::Water, &other.water),
            (Part::Yeast, &other.yeast_amount),
            (Part::Food, &other.food_amount),
            (Part::Enzyme, &other.enzyme_amount),
        ]
    });
    let amounts = amounts.filter_map(|(part, amount)| {
        let what = part_word(w, part);
        let amount = amount.as_ref()?.written.clone();
        Some(say!(w, "entry-made-part", what = what, amount = amount))
    });
    let water = water.map(|amount| {
        say!(w, "entry-made-part", what = part_word(w, Part::Warmth), amount = amount)
    });
    let all: Vec<String> = water.into_iter().chain(amounts).collect();
    if all.is_empty() {
        return say!(w, "entry-made");
    }
    say!(w, "entry-made-with", parts = all.join(", "))
}

/// What a thing that goes in is called.
pub(crate) fn part_word(w: Wording, part: Part) -> String {
    match part {
        Part::Warmth => say!(w, "part-warmth"),
        Part::Water => say!(w, "part-water"),
        Part::Yeast => say!(w, "part-yeast"),
        Part::Food => say!(w, "part-food"),
        Part::Enzyme => say!(w, "part-enzyme"),
    }
}
