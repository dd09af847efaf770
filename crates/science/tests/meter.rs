//! Intervals of the breath meter hold what they promise, on simulated meters and bags.

#[path = "cards/dice.rs"]
mod dice;
#[path = "statistics/size.rs"]
mod size;

use barm_science::meter::{
    Blank, Liquid, Meter, MeterPosterior, Outcome, Reading, Sample, Standard, checked,
    compare_sets, percent_over,
};
use barm_science::units::Celsius;
use dice::Dice;
use size::counts;

impl Dice {
    /// Log-normal with the range as its central 90 %.
    fn within(&mut self, low: f64, high: f64) -> f64 {
        let (middle, sd) = (0.5 * (low * high).ln(), (high / low).ln() / 3.29);
        (middle + sd * self.normal()).exp()
    }
}

/// A meter of a day as it is, and what is off for all of the day: the thermometer and the ratio.
struct Truth {
    gain: f64,
    zero: f64,
    drift: f64,
    off_kelvin: f64,
    ratio: f64,
}

const RANGE: f64 = 0.40;
const STEP: f64 = 0.01;

impl Truth {
    fn drawn(dice: &mut Dice) -> Self {
        Self {
            gain: (0.42 * dice.normal()).exp(),
            zero: 0.01 * dice.normal(),
            drift: 0.001 * dice.normal(),
            off_kelvin: dice.normal(),
            ratio: (0.02 * dice.normal()).exp(),
        }
    }

    /// What the display shows at a turn of gas over so much ethanol, as a thermometer shows its warmth.
    fn shows(&self, dice: &mut Dice, g_per_l: f64, celsius: f64, turn: u32) -> f64 {
        let truly = Liquid::water(Celsius(celsius + self.off_kelvin));
        let way = dice.within(0.7, 1.0) * dice.within(0.8, 1.0);
        let percent = percent_over(g_per_l, &truly) / self.ratio;
        let zero = self.zero + self.drift * f64::from(turn);
        let shown = zero + self.gain * way * percent + 0.004 * dice.normal();
        ((shown / STEP).round() * STEP).clamp(0.0, RANGE)
    }

    fn blanks(&self, dice: &mut Dice) -> Vec<Blank> {
        let blank = |turn: u32| Blank { turn, percent: self.shows(dice, 0.0, 25.0, turn) };
        [1, 6, 11, 16].map(blank).to_vec()
    }
}

fn reading(percent: f64, celsius: f64, turn: u32) -> Reading {
    Reading {
        percent,
        turn: Some(turn),
        liquid: Liquid::water(Celsius(celsius)),
        sample: Sample::UNTHINNED,
    }
}

#[track_caller]
fn holds(what: &str, held: usize, of: usize) {
    let share = held as f64 / of as f64;
    let sampling = 2.326 * (0.95 * 0.05 / of as f64).sqrt();
    assert!(share > 0.95 - sampling, "{what}: {share:.3} of {of}");
}

/// Meters drawn anew each day, with and without a check by plain water and two standards (3.95 and
/// 7.89 g/L): the 95 % interval of the ethanol in a bag holds what is in it.
#[test]
fn the_ethanol_of_a_bag_lies_in_its_interval() {
    let days = counts(300, 2_000, 20_000);
    let mut dice = Dice(41);
    let (mut held, mut width) = ([0; 2], [0.0; 2]);
    let (mut of, mut seen) = (0, 0);
    while of < days {
        let truth = Truth::drawn(&mut dice);
        let blanks = truth.blanks(&mut dice);
        let standards = [0.0, 3.95, 7.89].map(|g_per_l: f64| {
            let strength = g_per_l * (1.0 + 0.03 * dice.normal());
            let percent = truth.shows(&mut dice, strength, 24.0, 0);
            Standard { g_per_l, celsius: Celsius(24.0), percent }
        });
        let Ok(known) = checked(&MeterPosterior::UNCHECKED, &standards, RANGE, STEP) else {
            // The strongest stood at the end of the range: such a meter is checked with weaker ones.
            continue;
        };
        of += 1;
        let (g_per_l, celsius, turn) = (6.0 * dice.uniform(), 22.0 + 16.0 * dice.uniform(), 8);
        let percent = truth.shows(&mut dice, g_per_l, celsius, turn);
        for (which, known) in [MeterPosterior::UNCHECKED, known].into_iter().enumerate() {
            let meter = Meter::new(known, &blanks, RANGE, STEP);
            let found = meter.estimate(&reading(percent, celsius, turn)).expect("a reading");
            held[which] +=
                usize::from((found.low_g_per_l..=found.high_g_per_l).contains(&g_per_l));
            if found.low_g_per_l > 0.0 && found.high_g_per_l.is_finite() {
                width[which] += (found.high_g_per_l / found.low_g_per_l).ln();
                seen += which;
            }
        }
    }
    holds("unchecked", held[0], days);
    holds("checked", held[1], days);
    assert!(width[1] < 0.5 * width[0] && seen * 2 > days, "{width:?} {seen}");
}

/// Two sets of one to four bags, one warmer than the other: the 95 % interval of the ratio holds the truth,
/// whatever the gain is.
#[test]
fn the_ratio_of_two_sets_lies_in_its_interval() {
    let days = counts(500, 3_000, 30_000);
    let mut dice = Dice(43);
    let (mut held, mut of) = (0, 0);
    while of < days {
        let truth = Truth::drawn(&mut dice);
        let meter =
            Meter::new(MeterPosterior::UNCHECKED, &truth.blanks(&mut dice), RANGE, STEP);
        let mut turn = 1;
        let mut set = |dice: &mut Dice, g_per_l: f64, celsius: f64| {
            let bags = 1 + (4.0 * dice.uniform()) as usize;
            let warmer = Truth { off_kelvin: dice.normal(), ..truth };
            let corrected = |_| {
                turn += 1;
                let percent = warmer.shows(dice, g_per_l, celsius, turn);
                meter.corrected(&reading(percent, celsius, turn)).expect("a reading")
            };
            (0..bags).map(corrected).collect::<Vec<_>>()
        };
        let strengths = [1.0 + 5.0 * dice.uniform(), 1.0 + 5.0 * dice.uniform()];
        let first = set(&mut dice, strengths[0], 24.0);
        let others = set(&mut dice, strengths[1], 34.0);
        if let Outcome::Ratio(found) = compare_sets(&first, &others, None) {
            let ratio = strengths[0] / strengths[1];
            of += 1;
            held += usize::from((found.ratio.low..=found.ratio.high).contains(&ratio));
        }
    }
    holds("ratio", held, of);
}

/// By hand: the four published ratios were compared from 15 to 45 °C; sugar and salt are from memory up
/// to 200 g/L and 1 mol/L.
#[test]
fn a_liquid_of_which_less_is_known_is_marked() {
    let water = |celsius: f64| Liquid::water(Celsius(celsius));
    let marks = |liquid: Liquid| liquid.beyond(7.0);
    assert!(marks(water(20.0)).is_empty() && marks(water(44.0)).is_empty());
    for (liquid, law, value) in [
        (water(52.0), "ethanol.water_gas_ratio", 52.0),
        (water(10.0), "ethanol.water_gas_ratio", 10.0),
        (Liquid { sugar_g_per_l: 260.0, ..water(30.0) }, "meter.sugar_room", 260.0),
        (Liquid { salt_mol_per_l: 1.7, ..water(30.0) }, "meter.salting_out", 1.7),
    ] {
        let found = marks(liquid);
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!((found[0].law.name, found[0].from_min), (law, 7.0));
        assert!((found[0].value - value).abs() < 1e-12);
        assert!(found[0].to_string().contains(law), "{}", found[0]);
    }
}
