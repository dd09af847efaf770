//! An invented school whose yeast, bags and meter are known, and what its pilot reads.

use barm_domain::bench;
use barm_domain::pilot::{
    BagHeights, Height, Part, PilotReadings, Protocol, Seen, Shown, Temperature, Volume,
    Weight, protocol,
};
use barm_domain::plan::{Plan, Treatment};
use barm_domain::testing::{base_plan, enzyme, food, period, question, treatment};
use barm_science::ethanol::percent_by_volume;
use barm_science::meter::Liquid;
use barm_science::meter::percent_over;
use barm_science::model::{Parameters, run};
use barm_science::units::Celsius;
use jiff::civil::{Date, date};

/// A plan with maple syrup, potato and an enzyme, read with a meter.
pub(crate) fn plan() -> Plan {
    let mut plan = base_plan();
    let mut amylase = enzyme("glucoamylase-powder", "2 mL");
    amylase.food = Some(Some("potato_flakes".into()));
    amylase.food_amount = food("potato_flakes", "1 g").food_amount;
    let treatments: Vec<Treatment> = vec![
        treatment("Maple syrup", food("maple_syrup", "1 g")),
        treatment("Potato", food("potato_flakes", "1 g")),
        treatment("Potato with enzyme", amylase),
    ];
    plan.questions.push(question("foods", treatments));
    plan.periods.push(period("1"));
    plan.equipment.meters = Some(1);
    plan.base.yeast_amount = barm_domain::testing::amount("1/2 tsp");
    plan
}

pub(crate) const DAY: Date = date(2027, 3, 2);

/// What the school's things are in truth.
#[derive(Clone, Copy)]
pub(crate) struct Truth {
    pub(crate) vigor: f64,
    pub(crate) heat_loss: f64,
    pub(crate) capacity: f64,
    pub(crate) teaspoon_g: f64,
    pub(crate) gain: f64,
}

pub(crate) const TRUTH: Truth =
    Truth { vigor: 0.65, heat_loss: 1.3, capacity: 1.0, teaspoon_g: 3.5, gain: 0.6 };

/// Numbers that scatter, the same in every run.
pub(crate) struct Scatter(u64);

impl Scatter {
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// Between −1 and 1 (Park & Miller's generator, constants from memory).
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(48_271) % 2_147_483_647;
        self.0 as f64 / 1_073_741_823.5 - 1.0
    }
}

const fn seen<T>(value: T, line: u64) -> Seen<T> {
    Seen { value, line }
}

/// What the pilot reads, all parts of it.
pub(crate) fn readings(plan: &Plan, truth: Truth, seed: u64) -> (Protocol, PilotReadings) {
    let protocol = protocol(plan).expect("a pilot");
    let mut scatter = Scatter::new(seed);
    let parameters = Parameters {
        vigor: truth.vigor,
        heat_loss: truth.heat_loss,
        capacity: truth.capacity,
        ..Parameters::median()
    };
    let day = &plan.days[0];
    let mut bags = Vec::new();
    for bag in &protocol.bags {
        let mut setup = bench::setup(plan, &bag.recipe, day).expect("a bag");
        if let Some(yeast) = &mut setup.yeast {
            let spoons = bag.recipe.yeast_amount.value / bench::TEASPOON_ML;
            yeast.grams = spoons * truth.teaspoon_g;
        }
        let moments = run(&setup, &parameters, 30).expect("a run").moments;
        let rest = 6.0;
        let minutes = std::iter::once(0).chain(bag.minutes.iter().copied());
        let heights = minutes.map(|minute| {
            let height = rest + moments[minute as usize].rise_mm + 0.5 * scatter.next();
            let height = Height { minute: f64::from(minute), height_mm: height.round() };
            seen(height, u64::from(minute))
        });
        bags.push(BagHeights { bag: bag.letter.clone(), heights: heights.collect() });
    }
    let syringe = protocol.syringe.as_ref().map_or_else(Vec::new, |syringe| {
        let prior = barm_science::card_height::prior(
            &syringe.bag.bag,
            &syringe.card.card,
            syringe.water_ml,
        );
        let curve = prior.curve(0.0, 0.0, truth.capacity);
        let air = bench::tools::TRAPPED_AIR.value;
        let volumes = std::iter::once(0.0).chain(syringe.volumes_ml.iter().copied());
        let read = volumes.map(|air_ml| {
            let height_mm = (5.0 + curve.rise_mm(air_ml + air)).round();
            seen(Volume { air_ml, height_mm }, 0)
        });
        read.collect()
    });
    let mut dummy = bench::setup(plan, &protocol.dummy.recipe, day).expect("a bag");
    dummy.wet_before_zero_min = 0.0;
    let cooling = run(&dummy, &parameters, 20).expect("a run").moments;
    let dummy = protocol.dummy.minutes.iter().map(|minute| {
        let celsius = (cooling[*minute as usize].celsius + 0.3 * scatter.next()).round();
        seen(Temperature { minute: f64::from(*minute), celsius }, 0)
    });
    let dummy = dummy.collect();
    let spoons = (0..10).map(|_| {
        let grams = truth.teaspoon_g * (1.0 + 0.12 * scatter.next());
        seen(Weight { grams: (10.0 * grams).round() / 10.0 }, 0)
    });
    let spoons = spoons.collect();
    let strengths = protocol.meter.as_ref().map_or(&[][..], |meter| &meter.strengths);
    let meter = strengths.iter().map(|strength| {
        let liquid = Liquid::water(Celsius(day.room_celsius));
        let over = percent_over(strength / percent_by_volume(1.0), &liquid);
        let percent = (100.0 * truth.gain * over).round() / 100.0;
        seen(Shown { strength: *strength, celsius: None, percent }, 0)
    });
    let meter = meter.collect();
    let readings = PilotReadings {
        date: Some(DAY),
        spoons,
        dummy,
        syringe,
        bags,
        meter,
        ..PilotReadings::default()
    };
    (protocol, readings)
}

/// The same with some parts only.
pub(crate) fn only(readings: &PilotReadings, parts: &[Part]) -> PilotReadings {
    let mut readings = readings.clone();
    let keep = |part| parts.contains(&part);
    if !keep(Part::Spoons) {
        readings.spoons.clear();
    }
    if !keep(Part::Dummy) {
        readings.dummy.clear();
    }
    if !keep(Part::Syringe) {
        readings.syringe.clear();
    }
    if !keep(Part::Bags) {
        readings.bags.clear();
    }
    if !keep(Part::Meter) {
        readings.meter.clear();
    }
    readings
}
