//! What needs the teacher: slips that can still be mended, then what is late, then who is silent.

use super::benches::{Expects, RunBag};
use super::odd_word;
use crate::desk::room::Scene;
use crate::desk::room::benches::{
    BenchBag, Benches, after, group_name, local, millimeters, name,
};
use crate::desk::room::doubts::{Doubt, own, own_words};
use crate::desk::room::hour::{Hour, Stage};
use crate::desk::wording::listed;
use crate::desk::{Wording, say};
use barm_domain::board::State;
use barm_domain::code::BagCode;
use barm_domain::plan::Period;
use barm_domain::record::{Bag, Key, Odd, Who};
use barm_domain::slip::{Followed, Mend, Own, Slip, SlipKind, seen_by_teacher};
use jiff::Timestamp;

/// The word beside a need.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum NeedTag {
    /// Somebody must look; what it may be.
    Doubt(Doubt),
    /// Late since then.
    Late(Timestamp),
    /// Not heard since, local time.
    Silent(String),
}

/// One thing that needs the teacher.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Need {
    /// What it is about, as people say it.
    pub(crate) about: String,
    /// Its bags; none if it is about a whole group.
    pub(crate) bags: Vec<RunBag>,
    /// The word beside it.
    pub(crate) tag: NeedTag,
    /// What is the matter and what to do, in plain words.
    pub(crate) says: String,
    /// What can be done, all alike.
    pub(crate) offers: Vec<Offer>,
}

/// Something that can be done with one tap.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Offer {
    /// What it says.
    pub(crate) says: String,
    /// What is sent; see [`super::Act::read`]. Nothing if it leads to the bag's own page.
    pub(crate) sends: Option<String>,
    /// The bag whose page it leads to otherwise.
    pub(crate) bag: BagCode,
}

impl Need {
    /// Whether a reading is doubted.
    pub(crate) const fn is_doubtful(&self) -> bool {
        self.is_doubt()
    }

    /// Whether a reading is doubted.
    pub(super) const fn is_doubt(&self) -> bool {
        matches!(self.tag, NeedTag::Doubt(_))
    }
}

/// All of them, in their order.
pub(super) fn needs(
    scene: &Scene<'_>,
    w: Wording,
    period: &Period,
    hour: &Hour,
    benches: &Benches,
    expects: &Expects,
) -> Vec<Need> {
    let mut needs = slips(scene, w, period, benches, expects);
    needs.extend(late(w, hour, benches, expects));
    needs.extend(silent(scene, w, period, hour, benches));
    needs
}

fn slips(
    scene: &Scene<'_>,
    w: Wording,
    period: &Period,
    benches: &Benches,
    expects: &Expects,
) -> Vec<Need> {
    let mut needs = Vec::new();
    for (bench, bag, slips) in seen(scene, period, benches, expects) {
        let worded = slips.iter().filter_map(|slip| {
            let asks = Asks { scene, w, period, bench, bag, benches };
            let (tag, says) = asks.words(slip)?;
            Some(Need {
                about: bench.name.clone(),
                bags: vec![expects.with(bench)],
                tag: NeedTag::Doubt(tag),
                says,
                offers: slip.mends.iter().filter_map(|mend| asks.offer(slip, mend)).collect(),
            })
        });
        needs.extend(worded);
    }
    needs
}

/// The slips of each bag that can have any.
pub(super) fn seen<'a, 'b>(
    scene: &Scene<'a>,
    period: &Period,
    benches: &'b Benches,
    expects: &Expects,
) -> Vec<(&'b BenchBag, &'a Bag, Vec<Slip>)> {
    let bags: Vec<(&'b BenchBag, Own<'a>)> = benches
        .bags
        .iter()
        .filter_map(|bench| Some((bench, own(scene, period, bench)?)))
        .collect();
    let followed: Vec<Followed<'_>> =
        bags.iter().map(|(bench, own)| followed(scene, bench, *own, expects)).collect();
    let slips = seen_by_teacher(&followed, &scene.plan.set_aside_rules);
    bags.into_iter().zip(slips).map(|((bench, own), slips)| (bench, own.bag, slips)).collect()
}

/// A bag with all that the teacher may judge it by.
pub(super) fn followed<'a>(
    scene: &Scene<'_>,
    bench: &'a BenchBag,
    own: Own<'a>,
    expects: &'a Expects,
) -> Followed<'a> {
    let treatment = scene.plan.treatment(&bench.treatment);
    Followed {
        own,
        treatment: &bench.treatment,
        enzyme: treatment.is_some_and(|made| scene.plan.recipe(made).enzyme.is_some()),
        control: scene.plan.is_control(&bench.treatment),
        band: expects.band(bench.code),
    }
}

/// A reading that is worth a second look, in words.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OddReading {
    /// The bag.
    pub(crate) bag: BagCode,
    /// The reading, by its first entry.
    pub(crate) reading: Option<Key>,
    /// What it may be.
    pub(crate) tag: Doubt,
    /// The same in a sentence.
    pub(crate) says: String,
}

/// Every reading of a period that is worth a second look, as the run page words it.
pub(crate) fn doubts(
    scene: &Scene<'_>,
    w: Wording,
    period: &str,
    now: Timestamp,
) -> Vec<OddReading> {
    let Some(period) = scene.plan.period(period) else { return Vec::new() };
    let benches = Benches::of(scene, period, now);
    let expects = Expects::of(scene, &benches);
    let mut doubts = Vec::new();
    for (bench, bag, slips) in seen(scene, period, &benches, &expects) {
        let asks = Asks { scene, w, period, bench, bag, benches: &benches };
        doubts.extend(slips.iter().filter_map(|slip| {
            let (tag, says) = asks.words(slip)?;
            Some(OddReading { bag: bench.code, reading: slip.reading, tag, says })
        }));
    }
    doubts
}

/// What words need to know of a slip.
struct Asks<'a> {
    scene: &'a Scene<'a>,
    w: Wording,
    period: &'a Period,
    bench: &'a BenchBag,
    bag: &'a Bag,
    benches: &'a Benches,
}

impl Asks<'_> {
    /// A word and a sentence, and how likely it is; nothing for what mends itself.
    fn words(&self, slip: &Slip) -> Option<(Doubt, String)> {
        let (doubt, says) = self.says(slip)?;
        let Some(probability) = slip.probability else { return Some((doubt, says)) };
        // Nothing is certain.
        let percent = (100.0 * probability).round().clamp(1.0, 99.0);
        let likely = say!(self.w, "need-likely", percent = format!("{percent:.0}"));
        Some((doubt, format!("{says} {likely}")))
    }

    fn says(&self, slip: &Slip) -> Option<(Doubt, String)> {
        let w = self.w;
        let mm = |mm: f64| millimeters(mm);
        if let Some(says) = likely_words(w, &slip.kind) {
            return Some(says);
        }
        Some(match &slip.kind {
            SlipKind::Fell { .. } => {
                let (doubt, mut says) = own_words(w, &slip.kind)?;
                if let Some(sister) = self.sister() {
                    says = format!("{says} {sister}");
                }
                (doubt, says)
            }
            SlipKind::Copied { with, readings } => {
                (Doubt::Copied, say!(w, "need-copied", count = *readings, bag = name(*with)))
            }
            SlipKind::FarFromBand { minute: at, rise_mm, low_mm, high_mm } => (
                Doubt::FarOff,
                say!(
                    w,
                    "need-far-off",
                    minute = format!("{at:.0}"),
                    mm = mm(*rise_mm),
                    low = mm(low_mm.round()),
                    high = mm(high_mm.round()),
                ),
            ),
            kind => return own_words(w, kind),
        })
    }

    /// What the sister bag did.
    fn sister(&self) -> Option<String> {
        let others = self.benches.of_group(self.bench.group);
        let sister = others.into_iter().find(|other| {
            other.code != self.bench.code && other.treatment == self.bench.treatment
        })?;
        let (_, rise) = sister.rises.last().filter(|_| sister.rises.len() > 1)?;
        Some(say!(self.w, "need-sister", bag = &sister.name, mm = millimeters(*rise)))
    }

    fn offer(&self, slip: &Slip, mend: &Mend) -> Option<Offer> {
        let (w, code) = (self.w, self.bench.code);
        let correct = |of: Key, mm: f64| Some(format!("correct {code} {of} {mm}"));
        let (says, sends) = match mend {
            Mend::Write(mm) => (
                say!(w, "need-write", mm = millimeters(*mm)),
                correct(slip.reading?, (*mm * 10.0).round() / 10.0),
            ),
            Mend::Choose(key) => {
                let heights = self.bag.readings.iter().chain(&self.bag.zero);
                let height =
                    heights.chain(&self.bag.other_zeros).find(|height| height.key == *key)?;
                let who = match &height.who {
                    Who::Teacher => say!(w, "who-you"),
                    Who::Group { group, .. } => {
                        say!(w, "who-group", group = group_name(*group))
                    }
                    Who::Aide => say!(w, "who-aide"),
                    Who::Import => say!(w, "who-paper"),
                    Who::Program => say!(w, "who-program"),
                };
                let at = local(self.scene, self.period, height.measured);
                let mm = millimeters(height.height_mm);
                (
                    say!(w, "need-choose", mm = mm, who = who, at = at),
                    correct(*key, height.height_mm),
                )
            }
            Mend::AskAgain => (say!(w, "need-ask-again"), None),
            Mend::Tap(Odd::Leak) => {
                (say!(w, "need-leaks"), Some(format!("odd {code} {}", Odd::Leak.word())))
            }
            Mend::Tap(odd) => (
                say!(w, "need-mark", odd = odd_word(w, *odd)),
                Some(format!("odd {code} {}", odd.word())),
            ),
            Mend::SetAside(rule) => (
                say!(w, "need-set-aside", rule = rule),
                Some(format!("set-aside {code} {rule}")),
            ),
            Mend::Leave => {
                let of = slip.reading?;
                let heights = self.bag.readings.iter().chain(&self.bag.zero);
                let height = heights.into_iter().find(|height| height.key == of)?;
                (say!(w, "need-leave"), correct(of, height.height_mm))
            }
            _ => return None,
        };
        Some(Offer { says, sends, bag: code })
    }
}

/// What is said of a slip that forecast and sister bags show.
fn likely_words(w: Wording, kind: &SlipKind) -> Option<(Doubt, String)> {
    let minute = |minute: &f64| format!("{minute:.0}");
    Some(match kind {
        SlipKind::Transposed { wrote_mm, meant_mm } => {
            let (wrote, meant) = (millimeters(*wrote_mm), millimeters(*meant_mm));
            (Doubt::Misread, say!(w, "need-transposed", wrote = wrote, meant = meant))
        }
        SlipKind::Misread { wrote_mm } => {
            (Doubt::Misread, say!(w, "need-misread", mm = millimeters(*wrote_mm)))
        }
        SlipKind::Tilted { minute: at } => {
            (Doubt::Misread, say!(w, "need-tilted", minute = minute(at)))
        }
        SlipKind::Leaks { from, .. } => {
            (Doubt::Leak, say!(w, "need-leaks-from", minute = minute(from)))
        }
        SlipKind::Lifted { minute: at } => {
            (Doubt::FarOff, say!(w, "need-lifted", minute = minute(at)))
        }
        SlipKind::WrongStart => (Doubt::FarOff, say!(w, "need-wrong-start")),
        SlipKind::NoYeast => (Doubt::FarOff, say!(w, "need-no-yeast")),
        SlipKind::HotWater => (Doubt::FarOff, say!(w, "need-hot-water")),
        SlipKind::Unshaken => (Doubt::FarOff, say!(w, "need-unshaken")),
        SlipKind::Heaped => (Doubt::FarOff, say!(w, "need-heaped")),
        SlipKind::Swapped { with } => {
            (Doubt::FarOff, say!(w, "need-swapped", bag = name(*with)))
        }
        SlipKind::Fives => (Doubt::Misread, say!(w, "need-fives")),
        _ => return None,
    })
}

/// Bags that are late, one line a group.
fn late(w: Wording, hour: &Hour, benches: &Benches, expects: &Expects) -> Vec<Need> {
    let mut needs = Vec::new();
    for group in benches.groups() {
        let bags = benches.of_group(group);
        let late: Vec<(&BenchBag, f64)> = bags
            .iter()
            .filter_map(|bag| match bag.state {
                State::Late { late_s, .. } => Some((*bag, late_s)),
                _ => None,
            })
            .collect();
        let Some(longest) = late.iter().map(|(_, late_s)| *late_s).reduce(f64::max) else {
            continue;
        };
        let letters = |bags: &[&BenchBag]| -> Vec<String> {
            bags.iter().map(|bag| bag.code.letter().to_string()).collect()
        };
        let open: Vec<&BenchBag> = late.iter().map(|(bag, _)| *bag).collect();
        let read: Vec<&BenchBag> = bags
            .iter()
            .copied()
            .filter(|bag| matches!(bag.state, State::Waiting { .. } | State::Done))
            .collect();
        let whole = open.len() == bags.len();
        let missing = listed(w, &letters(&open));
        let ask = if group == 0 {
            say!(w, "need-ask-own", letters = missing)
        } else {
            say!(w, "need-ask", group = group.to_string(), letters = missing)
        };
        let says = match (read.as_slice(), whole) {
            ([], true) if open.len() > 1 => format!("{} {ask}", say!(w, "need-nothing-in")),
            ([], _) => ask,
            (read, _) => {
                let letters = listed(w, &letters(read));
                format!("{} {ask}", say!(w, "need-in", count = read.len(), letters = letters))
            }
        };
        let codes: Vec<String> = open.iter().map(|bag| bag.code.to_string()).collect();
        let Some(first) = open.first() else { continue };
        let about = match open.as_slice() {
            [only] => only.name.clone(),
            _ => group_name(group),
        };
        needs.push((
            longest,
            Need {
                about,
                bags: open.iter().map(|bag| expects.with(bag)).collect(),
                tag: NeedTag::Late(after(hour.now, -longest)),
                says,
                offers: vec![Offer {
                    says: say!(w, "need-not-read"),
                    sends: Some(format!("not-read {}", codes.join(" "))),
                    bag: first.code,
                }],
            },
        ));
    }
    needs.sort_by(|(a, _), (b, _)| b.total_cmp(a));
    needs.into_iter().map(|(_, need)| need).collect()
}

/// A device is silent after an interval and so many seconds more (own rule: every group writes
/// once an interval).
const SILENT_S: f64 = 120.0;

/// Groups whose devices have not been heard of although they have bags to read.
fn silent(
    scene: &Scene<'_>,
    w: Wording,
    period: &Period,
    hour: &Hour,
    benches: &Benches,
) -> Vec<Need> {
    if hour.stage != Stage::Running {
        return Vec::new();
    }
    let patience = 60.0 * hour.interval_min + SILENT_S;
    let mut groups: Vec<u32> = benches.groups();
    groups.sort_unstable();
    let silent = groups.into_iter().filter_map(|group| {
        let standing = scene.ledger.standing().groups.get(&(period.name.clone(), group))?;
        let heard = standing.heard.filter(|_| standing.stand_in.is_none())?;
        let reads = benches.of_group(group).iter().any(|bag| {
            matches!(bag.state, State::Due { .. } | State::Late { .. } | State::Waiting { .. })
        });
        let long = hour.now.duration_since(heard).as_secs_f64() > patience;
        (reads && long).then(|| Need {
            about: group_name(group),
            bags: Vec::new(),
            tag: NeedTag::Silent(local(scene, period, heard)),
            says: say!(w, "need-silent", group = group.to_string()),
            offers: Vec::new(),
        })
    });
    silent.collect()
}
