//! What a day taught, as the prior of the next one.

use super::dealt::{MINUTES, day, deal, new_bag, right};
use super::recovery::days;
use barm_science::fit::day::fit_day;
use barm_science::forecast::{Span, Streams, forecast_from};
use barm_science::prior::{Learned, Prior, UNMOVED};
use barm_science::statistics::chance::Chance;

/// The error that normal curves and lines may cost, on top of what is left open (standard deviations of that).
const COST: f64 = 0.41;

/// The most that any number may be off by them (the same): Φ(1.96 − 2.5) is 0.29.
const FAR: f64 = 2.5;

/// New bags of the same day: the same yeast, enzymes, room and box; other spoons.
#[test]
fn forecasts_after_a_fit_are_narrower_and_hold_the_truth() {
    const MINUTE: u32 = 20;
    let prior = Prior::default();
    let planned = day();
    let (mut within, mut count) = (0, 0);
    let (mut before, mut after) = (0.0, 0.0);
    for seed in 0..days(2, 6, 60) {
        let mut chance = Chance::from_seed(500 + seed);
        let dealt = deal(&planned, &prior, &mut chance, right);
        let fit = fit_day(&dealt.bags, &prior).expect("a day");
        let knowing = prior.knowing(&fit.learned).expect("what a fit says");
        for (place, one) in planned.iter().take(6).enumerate() {
            let truth = new_bag(&one.setup, &prior, &dealt.day, &mut chance);
            let span = Span { draws: 128, until_hours: 0.0, ..Span::to(MINUTE) };
            let streams = Streams::alone(seed, 900 + place as u64);
            let band = |prior: &Prior| {
                let forecast = forecast_from(&one.setup, &span, &streams, prior);
                let band = forecast.expect("a bag").rise_mm().band();
                (band.low[MINUTE as usize], band.high[MINUTE as usize])
            };
            let (wide, narrow) = (band(&prior), band(&knowing));
            before += wide.1 - wide.0;
            after += narrow.1 - narrow.0;
            count += 1;
            within += u32::from((narrow.0..=narrow.1).contains(&truth[MINUTE as usize]));
        }
    }
    assert!(after < 0.7 * before, "{after} mm after {before} mm");
    // Bands of 80 %; bags of a day go together, so that few days say little. Were all six of a day one
    // and the same, fewer than half of six days in the band would be a chance of one in sixty.
    let share = f64::from(within) / f64::from(count);
    assert!(share > 0.5, "{within} of {count} in the band");
}

/// A number that no bag hangs on moves with one that it is known to go with, as the joint normal
/// has it: E g = c E v, var g = 1 − c² + c² var v.
#[test]
fn what_goes_together_is_learned_together() {
    let names = ["vigor of instant yeast", "galactose"];
    let together = Learned {
        names: names.map(str::to_owned).to_vec(),
        means: vec![0.0, 0.0],
        covariance: vec![vec![1.0, 0.9], vec![0.9, 1.0]],
    };
    let prior = Prior::default();
    let bags = deal(&day(), &prior, &mut Chance::from_seed(8), right).bags;
    let fit = fit_day(&bags, &prior.knowing(&together).expect("numbers")).expect("a day");
    let [vigor, galactose] = names.map(|name| fit.learned.place(name).expect("a number"));
    let (mean, variance) = (fit.learned.means[vigor], fit.learned.covariance[vigor][vigor]);
    assert!((fit.learned.means[galactose] - 0.9 * mean).abs() < 1e-9);
    let expected = 1.0 - 0.81 + 0.81 * variance;
    assert!((fit.learned.covariance[galactose][galactose] - expected).abs() < 1e-9);
    // To the fit it is the same vigor as without that.
    let alone = fit_day(&bags, &prior).expect("a day").learned;
    let at = alone.place(names[0]).expect("a number");
    assert!((alone.means[at] - mean).abs() < 1e-3 * alone.sd(at).max(0.1));
}

/// A second fit of what says nothing leaves what the first said: nothing of it is lost, counted twice or
/// told on another scale.
#[test]
fn a_reading_that_says_nothing_changes_nothing() {
    let prior = Prior::default();
    let mut bags = deal(&day(), &prior, &mut Chance::from_seed(9), right).bags;
    let first = fit_day(&bags, &prior).expect("a day").learned;
    let knowing = prior.knowing(&first).expect("what a fit says");
    bags.truncate(1);
    // A tenth of a second after the zero reading no card has moved.
    bags[0].readings = vec![(0.002, 0.0)];
    let second = fit_day(&bags, &knowing).expect("a day").learned;
    assert_eq!(first.len(), second.len());
    for (at, name) in second.names.iter().enumerate() {
        let there = first.place(name).expect("it");
        let off = (second.means[at] - first.means[there]).abs();
        assert!(off < 1e-4, "{name}: {} {}", second.means[at], first.means[there]);
        let off = (second.sd(at) / first.sd(there) - 1.0).abs();
        assert!(off < 1e-4, "{name}: {} {}", second.sd(at), first.sd(there));
    }
}

/// Half of a day, and the other half from what the first taught, must not know less than the first, and
/// come to about what both say at once.
///
/// They would say the same if bags hung on the numbers along straight lines: no bag of one half shares
/// anything but the day with one of the other. What differs is what lines and normal curves cost, and
/// how far each half trusts its bags. An error of r standard deviations on top of what is left open makes
/// intervals of 95 % hold 2 Φ(1.96/√(1 + r²)) − 1: the 93 % that they must hold at least leave r = 0.41.
///
/// Now and then the second half shows that a day has several tops, and then less is known than before: on one
/// day in ten at most.
#[test]
fn a_second_fit_goes_on_from_the_first() {
    let days: Vec<Onward> = (0..days(2, 6, 40)).map(gone_on).collect();
    let off: Vec<f64> = days.iter().flat_map(|day| &day.off).map(|(by, _)| *by).collect();
    let square: f64 = off.iter().map(|by| by * by).sum::<f64>() / off.len() as f64;
    assert!(square.sqrt() < COST, "{} standard deviations", square.sqrt());
    none_is_far(&days);
    let wider: Vec<&String> = days.iter().filter_map(|day| day.wider.as_ref()).collect();
    assert!(10 * wider.len() <= days.len().max(10), "{wider:?}");
}

/// Two days on which readings of glucoamylase have a lower top beside the higher one: one search for all readings
/// ends on it on the first, one that goes on from half of them on the second.
#[test]
fn days_with_several_tops_are_told_by_all_of_them() {
    none_is_far(&[19, 21].map(gone_on));
}

/// What half of a day and then the other say beside both at once.
struct Onward {
    /// How far numbers are off (standard deviations of what both at once leave open), with their names.
    off: Vec<(f64, String)>,
    /// A number of which less is known after the second half than after the first.
    wider: Option<String>,
}

fn gone_on(seed: u64) -> Onward {
    let prior = Prior::default();
    let mut bags = deal(&day(), &prior, &mut Chance::from_seed(9 + seed), right).bags;
    assert_eq!(bags[0].readings.len(), MINUTES.len());
    let all = fit_day(&bags, &prior).expect("a day").learned;
    let later = bags.split_off(12);
    let first = fit_day(&bags, &prior).expect("a day").learned;
    let knowing = prior.knowing(&first).expect("what a fit says");
    let both = fit_day(&later, &knowing).expect("a day").learned;
    let (mut off, mut wider) = (Vec::new(), None);
    for (at, name) in both.names.iter().enumerate() {
        let (before, once) = (first.place(name).expect("it"), all.place(name).expect("it"));
        // Bags are seen over what is left open, which differs a little between the halves.
        if both.sd(at) > 1.02 * first.sd(before) {
            wider = Some(format!("seed {seed}: {name}"));
        }
        if all.sd(once) < UNMOVED {
            let by = (both.means[at] - all.means[once]) / all.sd(once);
            off.push((by, format!("seed {seed}: {name}")));
        }
    }
    Onward { off, wider }
}

/// None is so far off that an interval of 95 % would hold in fewer than three of ten such days.
fn none_is_far(days: &[Onward]) {
    for (by, which) in days.iter().flat_map(|day| &day.off) {
        assert!(by.abs() < FAR, "{which}: {by} standard deviations");
    }
}
