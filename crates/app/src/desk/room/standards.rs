//! Which standards the groups' products show, and in whose words.

use super::claims::{claimed, reviews};
use super::marks;
use super::proposals::{Answer, Group, handed_in};
use super::results::what_counts;
use super::{Kind, Room};
use crate::desk::DeskError;
use barm_domain::standards::{OwnStandard, Product, STANDARDS, Set, Worded, shows};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// One wording for everything on the shelf: it is the teacher's, not the lesson's.
const STANDARDS_KEPT: &str = "standards";

/// The strand of the rubric by which graphs and summaries are marked.
const ANALYSIS: &str = "analysis";

/// Words by code, codes that are left out, and own standards: code, words, products.
#[derive(Serialize, Deserialize)]
struct KeptWording {
    words: BTreeMap<String, String>,
    left_out: BTreeSet<String>,
    own: Vec<(String, String, Vec<String>)>,
}

/// The page of standards.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct StandardsView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// Groups in all.
    pub(crate) groups: usize,
    /// How many groups handed in each product.
    pub(crate) handed_in: BTreeMap<Product, usize>,
    /// The standards.
    pub(crate) rows: Vec<StandardRow>,
    /// The teacher's words.
    pub(crate) worded: Worded,
}

/// A standard with what shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct StandardRow {
    /// Where it comes from; nothing for the teacher's own.
    pub(crate) set: Option<Set>,
    /// Its code.
    pub(crate) code: String,
    /// Its words here.
    pub(crate) words: String,
    /// Products of which any one shows it.
    pub(crate) products: Vec<Product>,
    /// Whether it was not read in the standard again.
    pub(crate) from_memory: bool,
    /// Groups that handed in one of them.
    pub(crate) groups: usize,
}

/// The teacher's words, or none. Waits for the disk.
pub(crate) fn wording(room: &Room) -> Result<Worded, DeskError> {
    let kept = room.store.setting(STANDARDS_KEPT)?;
    let kept = kept.and_then(|text| serde_json::from_str::<KeptWording>(&text).ok());
    let Some(KeptWording { words, left_out, own }) = kept else { return Ok(Worded::default()) };
    let own = own.into_iter().map(|(code, words, products)| {
        let products = products.iter().filter_map(|word| Product::of(word)).collect();
        OwnStandard { code, words, products }
    });
    Ok(Worded { words, left_out, own: own.collect() })
}

/// Keeps the teacher's words, or goes back to the gists. They must be without faults. Waits for the disk.
pub(crate) fn keep_wording(room: &Room, worded: Option<&Worded>) -> Result<(), DeskError> {
    let Some(worded) = worded else { return Ok(room.store.drop_setting(STANDARDS_KEPT)?) };
    let own = worded.own.iter().map(|own| {
        let products = own.products.iter().map(|product| product.word().to_owned());
        (own.code.clone(), own.words.clone(), products.collect())
    });
    let kept = KeptWording {
        words: worded.words.clone(),
        left_out: worded.left_out.clone(),
        own: own.collect(),
    };
    let text = serde_json::to_string(&kept).map_err(|_| DeskError::Stopped)?;
    Ok(room.store.keep_setting(STANDARDS_KEPT, &text)?)
}

/// What every group handed in. Waits for the disk.
fn products(room: &Room) -> Result<BTreeMap<Group, BTreeSet<Product>>, DeskError> {
    let (groups, read) = room.read(|scene| {
        let (plan, counted) = what_counts(scene);
        let of = |one: &barm_domain::plan::Period| {
            let name = one.name.clone();
            (1..=one.groups).map(move |group| (name.clone(), group)).collect::<Vec<Group>>()
        };
        let groups: Vec<Group> = plan.periods.iter().flat_map(of).collect();
        let rose = counted.readings.iter().filter(|reading| reading.minute > 0.0);
        let rose: BTreeSet<&str> = rose.map(|reading| reading.bag.as_str()).collect();
        let read = plan.bags.iter().filter(|bag| rose.contains(bag.code.as_str()));
        let read: BTreeSet<Group> = read.map(|bag| (bag.period.clone(), bag.group)).collect();
        (groups, read)
    });
    let words = room.all_words()?;
    let (claims, proposals, given) = (claimed(&words), handed_in(&words), marks::given(&words));
    let wrote = reviews(&words);
    let of_group = |group: Group| {
        let mut own = BTreeSet::new();
        let mut has = |product: Product, there: bool| {
            if there {
                own.insert(product);
            }
        };
        let proposal = proposals.get(&group).and_then(|handed| handed.answer.as_ref());
        has(Product::FairTest, proposal == Some(&Answer::Approved));
        has(Product::Readings, read.contains(&group));
        let claim = claims.get(&group).map(|handed| &handed.claim);
        has(Product::Evidence, claim.is_some_and(|claim| !claim.evidence.trim().is_empty()));
        has(Product::Reasoning, claim.is_some_and(|claim| !claim.reasoning.trim().is_empty()));
        let review = wrote.iter().any(|one| {
            one.period == group.0
                && one.reader == group.1
                && !(one.convinces.trim().is_empty() && one.asks.trim().is_empty())
        });
        has(Product::Review, review);
        let level = given.get(&group).and_then(|given| given.levels.get(ANALYSIS));
        has(Product::Analysis, level.is_some_and(|level| *level > 0));
        (group, own)
    };
    Ok(groups.into_iter().map(of_group).collect())
}

/// The page of standards, in words that are kept or, if given, in those that were typed. Waits for the disk.
pub(crate) fn standards_view(
    room: &Room,
    typed: Option<Worded>,
) -> Result<StandardsView, DeskError> {
    let worded = match typed {
        Some(typed) => typed,
        None => wording(room)?,
    };
    let products = products(room)?;
    let showing =
        |of: &[Product]| products.values().filter(|handed_in| shows(of, handed_in)).count();
    let usual = STANDARDS.iter().filter(|one| !worded.left_out.contains(one.code));
    let usual = usual.map(|one| StandardRow {
        set: Some(one.set),
        code: one.code.to_owned(),
        words: worded.of(one).to_owned(),
        products: one.products.to_vec(),
        from_memory: one.from_memory,
        groups: showing(one.products),
    });
    let own = worded.own.iter().map(|one| StandardRow {
        set: None,
        code: one.code.clone(),
        words: one.words.clone(),
        products: one.products.clone(),
        from_memory: false,
        groups: showing(&one.products),
    });
    let rows = usual.chain(own).collect();
    let handed_in = Product::ALL.map(|product| (product, showing(&[product]))).into();
    let title = room.read(|scene| scene.plan.title.clone());
    let groups = products.len();
    Ok(StandardsView { id: room.id, kind: room.kind, title, groups, handed_in, rows, worded })
}
