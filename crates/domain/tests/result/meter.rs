//! Bags at the breath meter: compared at their own warmth, and never more said than is known.

use crate::class::{Class, treatment};
use barm_domain::outlook::{Look, Treated, forecast, forecast_from};
use barm_domain::plan::{Difference, Treatment};
use barm_domain::record::{Bag, Height, Key, PeriodStanding, Standing, Who};
use barm_domain::result::meter::{ClassMeter, MeterReading, MeterResult, by_meter, on_record};
use barm_domain::words::Voice;
use barm_science::ethanol::water_gas_ratio;
use barm_science::meter::{Blank, Outcome, RELATIVE_ONLY, Sample};
use barm_science::prior::{Learned, Prior};
use barm_science::units::Celsius;
use std::collections::BTreeMap;

/// Two periods, in each two bags of warm and two of cool water.
struct Meters {
    class: Class,
    warm: Vec<String>,
    cool: Vec<String>,
}

fn poured_at(name: &str, celsius: f64) -> Treatment {
    let difference = Difference { water_celsius: Some(celsius), ..Difference::default() };
    Treatment { difference, ..treatment(name, None) }
}

fn meters() -> Meters {
    let mut class = Class::with_periods(&["1", "2"]);
    class.ask("warmth", Some("Cool"), [poured_at("Warm", 42.0), poured_at("Cool", 24.0)]);
    let mut add =
        |name: &str| ["1", "1", "2", "2"].map(|period| class.add(name, period)).to_vec();
    let (warm, cool) = (add("Warm"), add("Cool"));
    Meters { class, warm, cool }
}

impl Meters {
    fn forecasts(&self) -> Vec<Treated> {
        let look = Look { draws: 64, ..Look::default() };
        self.class
            .plan
            .treatments()
            .map(|(_, treatment)| forecast(&self.class.plan, treatment, look).unwrap())
            .collect()
    }

    fn result(&self, readings: &[MeterReading], meter: &ClassMeter) -> MeterResult {
        by_meter(&self.class.plan, &self.forecasts(), readings, &self.class.set_aside, meter)
    }
}

fn shown(bag: &str, percent: f64, minute: f64, turn: u32) -> MeterReading {
    MeterReading {
        bag: bag.into(),
        percent,
        turn: Some(turn),
        minute: Some(minute),
        celsius: None,
        sample: Sample::UNTHINNED,
        line: 0,
    }
}

fn all_shown(meters: &Meters, warm: f64, cool: f64) -> Vec<MeterReading> {
    let warm = meters.warm.iter().map(|code| shown(code, warm, 10.0, 3));
    warm.chain(meters.cool.iter().map(|code| shown(code, cool, 10.0, 4))).collect()
}

fn quiet() -> ClassMeter {
    let blank = |turn| Blank { turn, percent: 0.01 };
    let blanks = ["1", "2"].map(|period| (period.to_owned(), vec![blank(1), blank(5)]));
    ClassMeter { blanks: blanks.into(), ..ClassMeter::default() }
}

/// At minute 10 the warm bags are some ten degrees warmer than the cool ones: the four published ratios of
/// ethanol between water and gas then differ by about a half, so that a display 1.25 times as high stands
/// for less ethanol.
#[test]
fn the_display_is_corrected_for_the_warmth_of_each_bag_and_a_turned_order_is_told() {
    let meters = meters();
    let result = meters.result(&all_shown(&meters, 0.25, 0.20), &quiet());
    assert_eq!(result.note, RELATIVE_ONLY);
    assert!(result.rejected.is_empty(), "{:?}", result.rejected);
    assert_eq!((result.bags.len(), result.comparisons.len()), (8, 1));
    let compared = &result.comparisons[0];
    assert_eq!((compared.treatment.as_str(), compared.reference.as_str()), ("Warm", "Cool"));
    assert_eq!((compared.n, compared.n_reference), (4, 4));
    let Outcome::Ratio(found) = compared.outcome else { panic!("{:?}", compared.outcome) };
    let celsius = |code: &str| {
        result.bags.iter().find(|bag| bag.bag.code == code).map(|bag| bag.celsius).unwrap()
    };
    let (warm, cool) = (celsius(&meters.warm[0]), celsius(&meters.cool[0]));
    assert!(warm > cool + 6.0 && cool > 20.0 && warm < 40.0, "{warm} {cool}");
    let by_hand = 0.24 / 0.19 * water_gas_ratio(Celsius(warm)) / water_gas_ratio(Celsius(cool));
    assert!((found.ratio.ratio / by_hand - 1.0).abs() < 0.02, "{found:?} against {by_hand}");
    assert!(found.turned() && found.order_is_in_doubt(), "{found:?}");
    assert!((found.shown - 1.25).abs() < 1e-9);
}

/// A pilot that found bags to cool quickly makes their liquid cooler under the meter, as it makes the
/// forecast.
#[test]
fn what_a_pilot_found_of_cooling_reaches_the_meter() {
    let meters = meters();
    let celsius = |mean: f64| {
        let learned = Learned {
            names: vec!["heat".into()],
            means: vec![mean],
            covariance: vec![vec![0.01]],
        };
        let prior = Prior::default().knowing(&learned).unwrap();
        let plan = &meters.class.plan;
        let look = Look { draws: 64, ..Look::default() };
        let forecasts: Vec<Treated> = plan
            .treatments()
            .map(|(_, one)| forecast_from(plan, &plan.days[0], one, look, &prior).unwrap())
            .collect();
        let readings = [shown(&meters.warm[0], 0.2, 10.0, 2)];
        let result = by_meter(plan, &forecasts, &readings, &[], &quiet());
        let drawn = forecasts[0].forecast.celsius().band().median[10];
        (result.bags[0].celsius, drawn)
    };
    let ((usual, _), (quick, drawn)) = (celsius(0.0), celsius(2.0));
    assert!(quick < usual - 2.0, "{quick} °C beside {usual} °C");
    assert!((quick - drawn).abs() < 0.5, "{quick} °C beside {drawn} °C of the forecast");
}

/// The same case in words: the display put the warm bags ahead, and that must not be told.
#[test]
fn a_turned_order_is_warned_of_and_a_plain_one_is_told() {
    let meters = meters();
    let voice = Voice::english(8);
    let turned = meters.result(&all_shown(&meters, 0.25, 0.20), &quiet());
    let compared = &turned.comparisons[0];
    let warning = voice.metered_warning(compared).expect("a warning");
    let start = "The display put warm ahead; corrected for how warm each bag was, cool ";
    assert!(warning.starts_with(start), "{warning}");
    assert!(warning.ends_with("Do not tell the display’s order."), "{warning}");
    assert_eq!(voice.metered_bags(compared), "4 bags against 4.");
    assert!(compared.told().order_in_doubt);
    let plain = meters.result(&all_shown(&meters, 0.05, 0.30), &quiet());
    let compared = &plain.comparisons[0];
    let says = voice.metered(compared);
    // Cool bags hold more, by more than the display says: their ethanol keeps to the water.
    assert!(
        says.starts_with("Cool held about ")
            && says.contains(" as much ethanol as warm (between "),
        "{says}"
    );
    assert_eq!(voice.metered_warning(compared), None);
    let Outcome::Ratio(found) = compared.outcome else { panic!("{:?}", compared.outcome) };
    assert!(1.0 / found.ratio.ratio > 0.30 / 0.05, "{found:?}");
    assert_eq!(compared.told().outcome, "ratio");
}

#[test]
fn a_display_at_its_end_says_at_least() {
    let meters = meters();
    let voice = Voice::english(6);
    let result = meters.result(&all_shown(&meters, 0.40, 0.20), &quiet());
    assert!(result.bags[0].at_least);
    assert!(voice.metered_bag(&result.bags[0]).is_some_and(|says| says.contains("at least")));
    let compared = &result.comparisons[0];
    assert!(voice.metered(compared).contains("held at least "), "{}", voice.metered(compared));
    assert_eq!((compared.told().outcome, compared.told().times[0]), ("at-least", None));
    // A display that showed more has a longer scale; no display shows 3 percent.
    let readings = all_shown(&meters, 0.45, 0.20);
    let of = |readings: &[MeterReading]| {
        ClassMeter::of(quiet().known, readings, quiet().blanks).range_percent
    };
    assert!((of(&readings) - 0.45).abs() < 1e-12);
    assert!(
        (of(&all_shown(&meters, 3.0, 0.2)) - ClassMeter::default().range_percent).abs() < 1e-12
    );
}

/// A thermometer in the bag is believed before the forecast.
#[test]
fn a_temperature_that_was_read_counts() {
    let meters = meters();
    let with = |celsius: f64| {
        let mut readings = all_shown(&meters, 0.25, 0.20);
        readings.iter_mut().for_each(|reading| reading.celsius = Some(celsius));
        meters.result(&readings, &quiet())
    };
    let result = with(30.0);
    assert!(result.bags.iter().all(|bag| (bag.celsius - 30.0).abs() < 1e-12));
    let Outcome::Ratio(found) = result.comparisons[0].outcome else { panic!("a ratio") };
    // Both at 30 °C, the zero of 0.01 taken off: 0.24 over 0.19.
    assert!((found.ratio.ratio - 0.24 / 0.19).abs() < 0.03, "{found:?}");
    assert!(!found.turned());
    assert_eq!(with(90.0).rejected.len(), 8);
}

/// A meter that shows 0.05 of clean air at the end of the second period shows so much less of its bags.
#[test]
fn each_period_has_its_own_zero() {
    let meters = meters();
    let mut drifted = quiet();
    let blanks = [1, 3, 5].map(|turn| Blank { turn, percent: 0.05 });
    drifted.blanks.insert("2".into(), blanks.to_vec());
    let readings = all_shown(&meters, 0.20, 0.20);
    let percent = |meter: &ClassMeter, code: &str| {
        let result = meters.result(&readings, meter);
        result.bags.iter().find(|bag| bag.bag.code == code).map(|bag| bag.percent).unwrap()
    };
    let (first, second) = (&meters.warm[0], &meters.warm[3]);
    assert!((percent(&drifted, first) - percent(&quiet(), first)).abs() < 1e-12);
    let less = percent(&quiet(), second) - percent(&drifted, second);
    assert!((0.03..0.045).contains(&less), "{less}");
}

#[test]
fn what_cannot_be_used_is_told_and_bags_set_aside_are_shown_only() {
    let mut meters = meters();
    let leaking = meters.warm[0].clone();
    meters.class.put_aside(&leaking, "leak");
    let mut readings = all_shown(&meters, 0.25, 0.20);
    readings.push(MeterReading { line: 7, ..shown("P9-01A-0 wrong", 0.1, 10.0, 9) });
    readings.push(MeterReading { line: 8, ..shown(&meters.warm[1], 7.0, 10.0, 9) });
    let result = meters.result(&readings, &quiet());
    let reasons: Vec<&str> = result.rejected.iter().map(|r| r.reason.as_str()).collect();
    assert_eq!(result.rejected.len(), 2, "{reasons:?}");
    assert!(reasons[0].ends_with("is no bag of this plan"), "{reasons:?}");
    assert!(reasons[1].contains("decimal point"), "{reasons:?}");
    let aside = result.bags.iter().find(|bag| bag.bag.code == leaking).unwrap();
    assert_eq!(aside.set_aside.as_deref(), Some("leak"));
    // One is set aside and one could not be used.
    assert_eq!(result.comparisons[0].n, 2);
    // Without a forecast only a thermometer helps.
    let plan = &meters.class.plan;
    let mut one = vec![shown(&meters.cool[0], 0.2, 10.0, 2)];
    let none = by_meter(plan, &[], &one, &[], &quiet());
    assert!(none.rejected[0].reason.contains("thermometer"), "{:?}", none.rejected);
    one[0].celsius = Some(27.0);
    let some = by_meter(plan, &[], &one, &[], &quiet());
    assert!(some.rejected.is_empty() && some.bags.len() == 1 && some.comparisons.is_empty());
}

#[test]
fn what_stands_on_record_is_taken_bag_by_bag() {
    let meters = meters();
    let at = |minute: i64| jiff::Timestamp::from_second(1_800_000_000 + 60 * minute).unwrap();
    let zero = Height {
        key: Key(1),
        measured: at(0),
        planned: None,
        height_mm: 5.0,
        who: Who::Teacher,
        mended: Vec::new(),
        rival: false,
    };
    let bag = Bag {
        zero: Some(zero),
        meter: vec![(at(26), 0.12, Some(2)), (at(30), 0.14, Some(6))],
        ..Bag::default()
    };
    let mut standing = Standing::default();
    standing.bags.insert(meters.warm[0].parse().unwrap(), bag);
    let readings = on_record(&standing);
    assert_eq!(
        readings,
        [shown(&meters.warm[0], 0.12, 26.0, 2), shown(&meters.warm[0], 0.14, 30.0, 6)]
    );
    let day = PeriodStanding {
        blanks: [(1, Some(0.01)), (3, None), (5, Some(0.02))].into(),
        ..PeriodStanding::default()
    };
    standing.periods.insert("1".into(), day);
    standing.periods.insert("2".into(), PeriodStanding::default());
    let meter = ClassMeter::on_record(ClassMeter::default().known, &standing);
    let blanks = [Blank { turn: 1, percent: 0.01 }, Blank { turn: 5, percent: 0.02 }];
    assert_eq!(meter.blanks, BTreeMap::from([("1".to_owned(), blanks.to_vec())]));
    // The last one counts, and bags of a class without forecasts beyond minute 24 are followed there.
    let result = meters.result(&readings, &ClassMeter::default());
    assert_eq!(result.bags.len(), 1);
    assert!((result.bags[0].shown_percent - 0.14).abs() < 1e-12);
    let ethanol = result.bags[0].ethanol_g_per_l;
    assert!(ethanol.low < ethanol.value && ethanol.value < ethanol.high);
}
