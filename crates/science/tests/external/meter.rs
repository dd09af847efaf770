//! The breath meter against published numbers and sums by hand.

use crate::rows::agrees;
use barm_science::ethanol;
use barm_science::meter::{
    self, Blank, Liquid, Meter, MeterError, MeterPosterior, Outcome, Reading, Sample, Standard,
    checked, compare_sets, percent_over, taken_share,
};
use barm_science::units::Celsius;

/// A display of 0.40 % (0.40 g in 210 L of breath) over bags, from the mean of four published ratios of
/// ethanol between water and gas: temperature, g/L, % by volume. Worked outside.
#[test]
fn a_full_display_means_less_the_warmer_the_bag() {
    for (celsius, g_per_l, by_volume) in [
        (20.0, 12.5, 1.59),
        (25.0, 8.88, 1.13),
        (30.0, 6.37, 0.81),
        (34.0, 4.91, 0.62),
        (35.0, 4.61, 0.58),
        (40.0, 3.37, 0.43),
    ] {
        let ours = meter::liquid_g_per_l(0.40, Celsius(celsius));
        agrees(&format!("{celsius} °C"), ours, g_per_l, 0.03);
        agrees("by volume", ethanol::percent_by_volume(ours), by_volume, 0.03);
        let back = percent_over(ours, &Liquid::water(Celsius(celsius)));
        agrees("there and back", back, 0.40, 1e-12);
    }
    agrees("gas", meter::gas_mg_per_l(0.40), 1.905, 0.001);
    // 1 % in plain water at 34 °C: the ratio is 2580 there, and meters reckon with 2100.
    let breath = percent_over(10.0, &Liquid::water(Celsius(34.0)));
    agrees("breath and water", breath, 0.81, 0.03);
}

#[test]
fn a_meter_says_no_more_than_it_knows() {
    let inside = meter::estimate(0.12, 0.40, Celsius(30.0)).unwrap();
    assert!(!inside.at_least);
    assert!(inside.low_g_per_l < 0.55 * inside.g_per_l, "the gain is known to a factor of two");
    assert!(inside.high_g_per_l > 2.0 * inside.g_per_l && inside.high_g_per_l.is_finite());
    let pinned = meter::estimate(0.40, 0.40, Celsius(30.0)).unwrap();
    assert!(pinned.at_least && pinned.high_g_per_l.is_infinite());
    assert!(matches!(
        meter::estimate(-0.1, 0.4, Celsius(30.0)),
        Err(MeterError::NotAReading { .. })
    ));
    assert!(matches!(
        meter::estimate(f64::NAN, 0.4, Celsius(30.0)),
        Err(MeterError::NotAReading { .. })
    ));
    assert!(matches!(
        meter::estimate(12.0, 0.4, Celsius(30.0)),
        Err(MeterError::AboveRange { .. })
    ));
}

/// The trap that the correction is for: the warm bag reads higher and holds less.
#[test]
fn bags_are_compared_at_their_own_temperatures() {
    let warm = (0.30, Celsius(38.0));
    let cool = (0.20, Celsius(25.0));
    let ratio = meter::compare(warm, cool, 0.40).unwrap();
    assert!(ratio.ratio < 1.0, "warm over cool: {}", ratio.ratio);
    let back = meter::compare(cool, warm, 0.40).unwrap();
    agrees("there and back", ratio.ratio * back.ratio, 1.0, 1e-12);
    assert!(ratio.low < ratio.ratio && ratio.ratio < ratio.high);
    assert_eq!(meter::compare((0.4, Celsius(30.0)), cool, 0.4), Err(MeterError::EndOfRange));
    assert_eq!(
        meter::compare(warm, (0.0, Celsius(25.0)), 0.4),
        Err(MeterError::NothingToCompare)
    );
}

/// One degree changes the gas over a liquid by 6.6 % (four published ratios).
#[test]
fn a_degree_is_worth_six_and_a_half_percent() {
    for celsius in [18.0, 25.0, 32.0] {
        let step = meter::liquid_g_per_l(0.1, Celsius(celsius + 1.0))
            / meter::liquid_g_per_l(0.1, Celsius(celsius));
        assert!((0.930..0.945).contains(&step), "one degree changes the liquid by {step}");
    }
}

/// From memory: 8 % sugar raises the gas by the room it takes, 5 %; half a mole of salt by 10 %.
#[test]
fn sugar_and_salt_drive_ethanol_out() {
    let water = Liquid::water(Celsius(30.0));
    let sweet = Liquid { sugar_g_per_l: 80.0, ..water };
    let salted = Liquid { salt_mol_per_l: 0.5, ..water };
    agrees("sugar", percent_over(5.0, &sweet) / percent_over(5.0, &water), 1.05, 0.005);
    agrees("salt", percent_over(5.0, &salted) / percent_over(5.0, &water), 1.10, 0.005);
}

fn read(percent: f64, turn: u32, celsius: f64) -> Reading {
    Reading {
        percent,
        turn: Some(turn),
        liquid: Liquid::water(Celsius(celsius)),
        sample: Sample::UNTHINNED,
    }
}

/// By hand: 50 mL of gas with 200 mL of air is a fifth, so 0.08 shown stands for 0.40; at 25 °C 8.88 g/L.
/// 240 mL of gas over 50 mL at 25 °C take 240/(50 · 4664) = 0.10 % of the ethanol along.
#[test]
fn thinned_gas_is_reckoned_back() {
    let quiet = Meter { known: MeterPosterior::UNCHECKED, ..Meter::usual() };
    let thin = Reading {
        sample: Sample { gas_ml: 50.0, air_ml: 200.0 },
        turn: None,
        ..read(0.08, 0, 25.0)
    };
    let found = quiet.corrected(&thin).expect("a sample");
    agrees("shown", found.percent, 0.40, 1e-12);
    agrees("in the liquid", found.g_per_l, 8.88, 0.03);
    let direct = quiet.corrected(&read(0.40, 1, 25.0)).expect("a reading");
    assert!(direct.at_least && !found.at_least);
    assert!(found.own_sd > direct.own_sd, "a syringe adds doubt");
    agrees("taken", taken_share(240.0, 50.0, Celsius(25.0)), 0.001_03, 0.01);
    for (gas_ml, air_ml) in [(0.0, 100.0), (-5.0, 0.0), (50.0, -1.0), (f64::NAN, 0.0)] {
        let bad = Reading { sample: Sample { gas_ml, air_ml }, ..thin };
        assert!(matches!(quiet.corrected(&bad), Err(MeterError::NotASample { .. })));
    }
}

/// By hand: clean air of 0.00 at turn 1 and 0.04 at turn 21 make 0.02 at turn 11; the line is held back a
/// little by what zeros usually do, and after the last blank it is known less and less.
#[test]
fn a_drifting_zero_is_taken_off_turn_by_turn() {
    let blanks = |many: bool| {
        let blank = |turn: u32| Blank { turn, percent: 0.002 * f64::from(turn - 1) };
        let turns: &[u32] = if many { &[1, 6, 11, 16, 21] } else { &[1] };
        turns.iter().map(|turn| blank(*turn)).collect::<Vec<_>>()
    };
    let meter = |blanks: &[Blank]| Meter::new(MeterPosterior::UNCHECKED, blanks, 0.40, 0.001);
    let (drifting, once, never) = (meter(&blanks(true)), meter(&blanks(false)), meter(&[]));
    let (zero, sd) = drifting.zero_at(Some(11));
    assert!((zero - 0.02).abs() < 0.002, "{zero}");
    let (late, late_sd) = drifting.zero_at(Some(31));
    assert!((late - 0.06).abs() < 0.012 && late_sd > 2.0 * sd, "{late} ± {late_sd}");
    assert!(once.zero_at(Some(1)).1 < never.zero_at(Some(1)).1);
    assert!(sd < once.zero_at(Some(11)).1, "{sd}");
    // The same display late in the period means less.
    let early = drifting.corrected(&read(0.10, 2, 30.0)).expect("a reading");
    let later = drifting.corrected(&read(0.10, 20, 30.0)).expect("a reading");
    assert!(later.g_per_l < 0.75 * early.g_per_l, "{} {}", early.g_per_l, later.g_per_l);
}

/// A display that is not above what clean air shows is no ethanol, but tells how much there is at most.
#[test]
fn next_to_nothing_is_not_called_ethanol() {
    let meter =
        Meter::new(MeterPosterior::UNCHECKED, &[Blank { turn: 1, percent: 0.02 }], 0.4, 0.01);
    let none = meter.corrected(&read(0.02, 2, 30.0)).expect("a reading");
    assert!(!none.shows() && none.unseen_g_per_l > 0.0);
    let estimate = meter.estimate(&read(0.02, 2, 30.0)).expect("a reading");
    assert!(estimate.g_per_l == 0.0 && estimate.high_g_per_l > none.unseen_g_per_l);
    assert!(meter.corrected(&read(0.10, 2, 30.0)).expect("a reading").shows());
}

/// A meter that shows 0.6 of what it should and 0.01 of clean air, over 0.5 and 1.0 % by volume (3.95 and
/// 7.89 g/L) and water at 25 °C: the check finds both, and is surer than before.
#[test]
fn a_check_with_known_ethanol_finds_gain_and_zero() {
    let shown =
        |g_per_l: f64| 0.01 + 0.6 * percent_over(g_per_l, &Liquid::water(Celsius(25.0)));
    let standards = [0.0, 3.95, 7.89].map(|g_per_l| Standard {
        g_per_l,
        celsius: Celsius(25.0),
        percent: shown(g_per_l),
    });
    let before = MeterPosterior::UNCHECKED;
    let after = checked(&before, &standards, 0.40, 0.001).expect("standards");
    assert!(after.is_possible() && after.checked);
    assert!((after.log_gain - 0.6_f64.ln()).abs() < 0.1, "{after:?}");
    assert!((after.zero - 0.01).abs() < 0.003, "{after:?}");
    assert!(after.log_gain_sd < 0.2 && after.log_gain_sd > 0.066, "{after:?}");
    // One thermometer that may be off by a degree leaves 6.6 % open however many standards there are.
    let many: Vec<Standard> = (0..12).flat_map(|_| standards).collect();
    let surer = checked(&before, &many, 0.40, 0.001).expect("standards");
    assert!(surer.log_gain_sd > 0.06 && surer.log_gain_sd < after.log_gain_sd, "{surer:?}");
    // Used on a bag, it brings the meter's number back to the liquid, and is narrower by half.
    let used = Meter::new(after, &[], 0.40, 0.001);
    let bag = used.estimate(&read(shown(5.0), 3, 25.0)).expect("a reading");
    agrees("a bag of 5 g/L", bag.g_per_l, 5.0, 0.1);
    let blind = Meter::new(before, &[], 0.40, 0.001);
    let wide = blind.estimate(&read(shown(5.0), 3, 25.0)).expect("a reading");
    let width = |one: &meter::MeterEstimate| (one.high_g_per_l / one.low_g_per_l).ln();
    assert!(width(&bag) < 0.5 * width(&wide), "{} {}", width(&bag), width(&wide));
    for (bad, wanted) in [
        (Standard { percent: 0.40, ..standards[1] }, MeterError::EndOfRange),
        (Standard { g_per_l: 789.0, ..standards[1] }, MeterError::Strength { g_per_l: 789.0 }),
        (
            Standard { celsius: Celsius(77.0), ..standards[1] },
            MeterError::Warmth { celsius: 77.0 },
        ),
    ] {
        assert_eq!(checked(&before, &[bad], 0.40, 0.01), Err(wanted));
    }
    assert_eq!(checked(&before, &[], 0.40, 0.01), Err(MeterError::NoStandard));
}

/// Warm bags (38 °C) that show 0.30 and cool ones (25 °C) that show 0.20: by the published ratios 1925 and
/// 4664 the warm ones hold 0.30 · 1925/(0.20 · 4664) = 0.62 of what the cool ones hold.
#[test]
fn an_order_that_the_temperature_turns_round_is_told() {
    let meter =
        Meter::new(MeterPosterior::UNCHECKED, &[Blank { turn: 1, percent: 0.0 }], 0.4, 0.01);
    let set = |percent: f64, celsius: f64| {
        [0.98, 1.0, 1.02].map(|share| {
            meter.corrected(&read(share * percent, 5, celsius)).expect("a reading")
        })
    };
    let Outcome::Ratio(turned) = compare_sets(&set(0.30, 38.0), &set(0.20, 25.0), None) else {
        panic!("ethanol shows in all")
    };
    assert!(turned.turned() && turned.order_is_in_doubt());
    agrees("shown", turned.shown, 1.5, 1e-9);
    agrees("held", turned.ratio.ratio, 0.62, 0.06);
    // At one temperature nothing is turned round, and what differs clearly stands.
    let Outcome::Ratio(clear) = compare_sets(&set(0.30, 30.0), &set(0.10, 30.0), Some(0.0))
    else {
        panic!("ethanol shows in all")
    };
    assert!(!clear.turned() && !clear.open() && !clear.order_is_in_doubt());
    // Nearly the same display over a warmer bag: which holds more cannot be told.
    let Outcome::Ratio(open) = compare_sets(&set(0.22, 32.0), &set(0.20, 30.5), None) else {
        panic!("ethanol shows in all")
    };
    assert!(open.open() && open.order_is_in_doubt(), "{open:?}");
    // A thermometer that is off for both leaves less open than two that are off on their own.
    let one = compare_sets(&set(0.22, 32.0), &set(0.20, 30.5), Some(0.02));
    let Outcome::Ratio(one) = one else { panic!("ethanol shows in all") };
    assert!(one.ratio.high / one.ratio.low < open.ratio.high / open.ratio.low);
}

#[test]
fn sets_that_have_no_ratio_are_told_as_what_they_are() {
    let meter = Meter::usual();
    let one = |percent: f64| meter.corrected(&read(percent, 3, 30.0)).expect("a reading");
    let (none, some, end) = (one(0.0), one(0.2), one(0.4));
    let outcome = |a: &[meter::Corrected], b: &[meter::Corrected]| compare_sets(a, b, None);
    assert_eq!(outcome(&[none, none], &[none]), Outcome::None);
    assert_eq!(outcome(&[some], &[none]), Outcome::OnlyTheFirst);
    assert_eq!(outcome(&[none], &[some, some]), Outcome::OnlyTheOthers);
    assert_eq!(outcome(&[some, none], &[some]), Outcome::Partly);
    assert_eq!(outcome(&[end], &[end]), Outcome::BothAtTheEnd);
    assert!(matches!(outcome(&[end, some], &[some]), Outcome::AtLeast(low) if low > 0.5));
    assert!(matches!(outcome(&[some], &[end]), Outcome::AtMost(high) if high < 1.0));
    assert_eq!(outcome(&[], &[]), Outcome::None);
}
