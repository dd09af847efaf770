//! The school ladder: dots, MADs and how many of them make a gap.

use crate::experiments::{by_treatment, experiment, near};
use crate::size::counts;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::ladder::{Gap, Side, dots, gap_in_mads};
use barm_science::statistics::mad_multiple::needed_multiple;
use barm_science::statistics::summary::{SummaryError, summarize};

/// The gap between bags that a group each made.
fn gap(first: &[f64], second: &[f64], doubt: f64) -> Result<Gap, SummaryError> {
    gap_in_mads(Side::each_its_group(first), Side::each_its_group(second), 1, doubt)
}

/// Worked by hand: control 4, 5, 5, 6 and treated 9, 10, 12, 13 in the table of experiments; and
/// published classroom numbers for Common Core 7.SP.B.3.
#[test]
fn mads_are_those_worked_by_hand() {
    let own = by_treatment(&experiment("mad-own"));
    let (control, treated) = (&own[0].1, &own[1].1);
    let (a, b) = (summarize(control).unwrap(), summarize(treated).unwrap());
    assert_eq!((a.mean.to_bits(), a.mad.to_bits()), (5.0_f64.to_bits(), 0.5_f64.to_bits()));
    assert_eq!((b.mean.to_bits(), b.mad.to_bits()), (11.0_f64.to_bits(), 1.5_f64.to_bits()));
    let gap = gap(control, treated, 0.0).unwrap();
    near("gap", gap.gap, 6.0, 0.0, 0.0);
    near("larger MAD", gap.mad, 1.5, 0.0, 0.0);
    near("in MADs", gap.in_mads.unwrap(), 4.0, 1e-15, 0.0);
    near("seen", summarize(&[4.0, 5.0, 7.0, 9.0, 10.0]).unwrap().mad, 2.0, 1e-15, 0.0);
    let wide = [2.0, 3.0, 6.0, 7.0, 10.0, 12.0, 14.0, 15.0, 22.0, 120.0];
    near("seen, wide", summarize(&wide).unwrap().mad, 19.96, 1e-14, 0.0);
}

#[test]
fn dots_overlap_where_both_sets_reach() {
    let far = dots(&[1.0, 2.0, 3.0], &[4.0, 5.0]).unwrap();
    assert_eq!(far.overlap, None);
    let near_by = dots(&[1.0, 2.0, 3.5], &[3.0, 3.2, 9.0]).unwrap().overlap.unwrap();
    assert_eq!((near_by.first_inside, near_by.second_inside), (1, 2));
}

/// Two bags each, exactly: the chance is E[erf(|Z|/m)²] with Z standard normal, since the gap is
/// standard normal and each MAD the size of a normal value over √2.
#[test]
fn the_multiple_for_two_bags_is_exact() {
    for gaps in [1, 2, 3, 4, 6, 10] {
        let m = needed_multiple(2, 2, gaps).unwrap();
        let step = 1e-3;
        let chance: f64 = (0..12_000_u32)
            .map(|i| {
                let z = (f64::from(i) + 0.5) * step;
                let inside = libm::erf(z / m);
                (-0.5 * z * z).exp() * inside * inside
            })
            .sum::<f64>()
            * step
            * (2.0 / std::f64::consts::PI).sqrt();
        near("false alarm", chance, 0.05 / gaps as f64, 3e-4, 0.0);
    }
}

/// With several gaps each is given its share of 1 time in 20: so much rarer does chance alone reach one,
/// in bags of a group each and in several bags a group.
#[test]
fn more_gaps_need_more_each() {
    let pairs = counts(20_000, 50_000, 1_000_000);
    for (bags, groups, gaps) in
        [(3, 3, 2), (4, 4, 3), (6, 6, 5), (12, 12, 10), (6, 3, 3), (8, 2, 6)]
    {
        let mut chance = Chance::from_seed(8_000 + 100 * bags as u64 + gaps as u64);
        let mut draw = || -> Vec<f64> {
            let spread = if groups < bags { 1.0 } else { 0.0 };
            let own: Vec<f64> = (0..groups).map(|_| spread * chance.normal()).collect();
            (0..bags).map(|bag| own[bag % groups] + chance.normal()).collect()
        };
        let mut stands_out = || {
            let (first, second) = (draw(), draw());
            let side = |values| Side { values, groups };
            gap_in_mads(side(&first), side(&second), gaps, 0.0).unwrap().stands_out()
        };
        let share = (0..pairs).filter(|_| stands_out()).count() as f64 / pairs as f64;
        // Five gaps are judged as six.
        let asked = 0.05 / if gaps == 5 { 6.0 } else { gaps as f64 };
        let slack = 2.576 * (asked * (1.0 - asked) / pairs as f64).sqrt();
        // 1 % of a multiple is up to 4 % of so rare a chance.
        assert!(
            (share - asked).abs() < slack + 0.04 * asked,
            "{bags} {groups} {gaps}: {share}"
        );
    }
    assert_eq!(needed_multiple(4, 4, 30), needed_multiple(4, 4, 10));
}

/// The multiples are those with which chance alone gives an alarm 1 time in 20: simulated with
/// fresh seeds here, and against an independent simulation of 400,000 pairs each (NumPy).
#[test]
fn the_multiples_give_one_false_alarm_in_twenty() {
    let pairs = counts(20_000, 50_000, 1_000_000);
    let outside = [
        (2, 4.85),
        (3, 2.57),
        (4, 1.99),
        (5, 1.67),
        (6, 1.48),
        (8, 1.24),
        (10, 1.09),
        (12, 0.99),
        (20, 0.75),
    ];
    for (bags, multiple) in outside {
        let ours = needed_multiple(bags, bags, 1).unwrap();
        // 400,000 draws and two decimals leave about this much.
        assert!((ours - multiple).abs() < 0.02, "{bags} bags: {ours} against {multiple}");
        let mut chance = Chance::from_seed(7_000 + bags as u64);
        let mut draw = || -> Vec<f64> { (0..bags).map(|_| chance.normal()).collect() };
        let alarms =
            (0..pairs).filter(|_| gap(&draw(), &draw(), 0.0).unwrap().stands_out()).count();
        let share = alarms as f64 / pairs as f64;
        let slack = 2.576 * (0.05 * 0.95 / pairs as f64).sqrt();
        assert!((share - 0.05).abs() < slack + 0.0005, "{bags} bags: {share} of {pairs}");
    }
    assert_eq!(needed_multiple(1, 1, 1), None);
    assert_eq!(needed_multiple(14, 14, 1), needed_multiple(12, 12, 1));
}

/// The same of bags several of which a group made, where groups differ as much as their bags do. The
/// multiples come from another simulation (NumPy), so this one is from outside of them.
#[test]
fn several_bags_a_group_need_more() {
    let pairs = counts(10_000, 20_000, 400_000);
    for (bags, groups) in [(3, 2), (4, 2), (4, 3), (6, 2), (6, 3), (8, 4), (12, 6), (20, 2)] {
        let mut chance = Chance::from_seed(9_000 + 100 * bags as u64 + groups as u64);
        let mut draw = || -> Vec<f64> {
            let own: Vec<f64> = (0..groups).map(|_| chance.normal()).collect();
            (0..bags).map(|bag| own[bag % groups] + chance.normal()).collect()
        };
        let mut stands_out = || {
            let (first, second) = (draw(), draw());
            let side = |values| Side { values, groups };
            gap_in_mads(side(&first), side(&second), 1, 0.0).unwrap().stands_out()
        };
        let alarms = (0..pairs).filter(|_| stands_out()).count();
        let share = alarms as f64 / pairs as f64;
        let slack = 2.576 * (0.05 * 0.95 / pairs as f64).sqrt();
        assert!((share - 0.05).abs() < slack + 0.001, "{bags} of {groups}: {share} of {pairs}");
        assert!(needed_multiple(bags, groups, 1) > needed_multiple(bags, bags, 1));
    }
    assert_eq!(needed_multiple(5, 1, 1), None);
    assert_eq!(needed_multiple(9, 5, 1), needed_multiple(8, 4, 1));
}

#[test]
fn one_groups_bags_never_stand_out() {
    let sides = ([1.0, 1.1, 0.9], [9.0, 9.1, 8.9]);
    let one = Side { values: &sides.1, groups: 1 };
    let gap = gap_in_mads(Side::each_its_group(&sides.0), one, 1, 0.0).unwrap();
    assert!(gap.one_groups_bags && gap.needed.is_none() && !gap.stands_out());
}

#[test]
fn a_mad_smaller_than_the_reading_doubt_is_not_believed() {
    let doubtful = gap(&[5.0, 5.0], &[7.0, 7.0], 0.7).unwrap();
    assert!(doubtful.mad_is_reading_doubt && !doubtful.stands_out());
    let exact = gap(&[5.0, 5.0], &[7.0, 7.0], 0.0).unwrap();
    assert!(exact.in_mads.is_none() && !exact.stands_out());
}

#[test]
fn sets_that_cannot_be_laid_on_an_axis_say_why() {
    for wild in [f64::NAN, f64::INFINITY, 1e308] {
        assert!(gap(&[1.0, wild], &[1.0, 2.0], 0.0).is_err());
        assert!(dots(&[1.0], &[wild]).is_err());
    }
    assert!(dots(&[], &[1.0]).is_err());
    let single = gap(&[1.0], &[9.0], 0.7).unwrap();
    assert!(single.needed.is_none() && !single.stands_out());
}
