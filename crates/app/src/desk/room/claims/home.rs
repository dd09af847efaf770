//! What a group takes home: its own bags, its own claim, and nothing of anybody else.

use super::group::about;
use super::{TypedClaim, claimed};
use crate::desk::room::bench::own_rises;
use crate::desk::room::proposals::Group;
use crate::desk::room::wall::mean;
use crate::desk::room::{Kind, Room};
use crate::desk::{Catalog, ChartWords, DeskError};
use barm_documents::chart::{CurvesChart, Frame, Look, Reading, Sheaf};

/// The page that a group takes home.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct HomeView {
    /// Name of the period.
    pub(crate) period: String,
    /// The group's number.
    pub(crate) group: u32,
    /// Whether nothing here counts.
    pub(crate) kind: Kind,
    /// The class's big question, or what the investigation is called.
    pub(crate) question: String,
    /// Its bags.
    pub(crate) bags: Vec<HomeBag>,
    /// The same as a picture, if something was read.
    pub(crate) curves: Option<String>,
    /// Its claim, and what that stands beside, if it handed one in.
    pub(crate) claim: Option<(TypedClaim, String)>,
}

/// A bag of the group.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct HomeBag {
    /// Its treatment, as its label says.
    pub(crate) treatment: String,
    /// How that looks on every page.
    pub(crate) look: Look,
    /// Minutes after the zero reading and rises (mm), the zero first; empty without a zero reading.
    pub(crate) rises: Vec<(f64, f64)>,
}

/// What a group takes home, in its words. Waits for the disk.
pub(crate) fn home_view(
    room: &Room,
    group: &Group,
    words: &Catalog,
) -> Result<HomeView, DeskError> {
    let (plan, bags) =
        room.read(|scene| (scene.plan.clone(), own_rises(scene, &group.0, group.1)));
    let about = about(&plan);
    let claim = claimed(&room.all_words()?).remove(group).map(|handed| {
        let one = about.iter().find(|one| one.is_of(&handed.claim));
        let beside = one.map_or_else(String::new, |one| one.beside.clone());
        (handed.claim, beside)
    });
    let question = if plan.big_question.is_empty() { &plan.title } else { &plan.big_question };
    Ok(HomeView {
        period: group.0.clone(),
        group: group.1,
        kind: room.kind,
        question: question.clone(),
        curves: curves(&bags, plan.timing.interval_min, words),
        bags,
        claim,
    })
}

/// The curves of a group's own bags as a picture, if something was read of them.
pub(crate) fn own_curves(room: &Room, group: &Group, words: &Catalog) -> Option<String> {
    let (bags, interval_min) = room
        .read(|scene| (own_rises(scene, &group.0, group.1), scene.plan.timing.interval_min));
    curves(&bags, interval_min, words)
}

/// Its curves, those of one treatment under one name.
fn curves(bags: &[HomeBag], interval_min: f64, words: &Catalog) -> Option<String> {
    let read: Vec<&HomeBag> = bags.iter().filter(|bag| bag.rises.len() > 1).collect();
    let mut sheaves: Vec<Sheaf> = Vec::new();
    for bag in &read {
        let name = words.treatment(&bag.treatment);
        if sheaves.iter().any(|sheaf| sheaf.name == name) {
            continue;
        }
        let alike = read.iter().filter(|other| other.treatment == bag.treatment);
        let rises: Vec<&[(f64, f64)]> = alike.map(|other| other.rises.as_slice()).collect();
        let bags = rises.iter().map(|rises| rises.iter().map(point).collect()).collect();
        sheaves.push(Sheaf { name, look: bag.look, bags, mean: mean(&rises, interval_min) });
    }
    let title = words.say("home-title");
    let chart = CurvesChart { title: &title, sheaves: &sheaves, bands: &[] };
    let frame = Frame::phone(ChartWords::of(words));
    (!sheaves.is_empty()).then(|| chart.svg(&frame))
}

fn point((minute, rise): &(f64, f64)) -> Reading {
    Reading { minute: *minute, rise: *rise, doubtful: false }
}
