//! Readings of an invented school's pilot: our own model with a weak yeast, a cold room and a meter that
//! shows too little, with noise.

use barm_domain::bench::{self, tools::TRAPPED_AIR};
use barm_domain::pilot::protocol;
use barm_domain::plan::Plan;
use barm_science::card_height;
use barm_science::ethanol::percent_by_volume;
use barm_science::meter::{Liquid, percent_over};
use barm_science::model::{Parameters, run};
use barm_science::units::Celsius;
use std::fmt::Write;

/// Strength of the yeast over the usual.
pub(crate) const VIGOR: f64 = 0.6;
/// Loss of heat over the usual.
const LOSS: f64 = 1.4;
/// What the meter shows over what it should.
const GAIN: f64 = 0.7;

/// Between −1 and 1, the same in every run (Park & Miller's generator, constants from memory).
struct Noise(u64);

impl Noise {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(48_271) % 2_147_483_647;
        self.0 as f64 / 1_073_741_823.5 - 1.0
    }
}

/// A whole file of readings, as somebody would type it.
pub(crate) fn readings(plan: &Plan) -> String {
    let protocol = protocol(plan).expect("a pilot");
    let day = &plan.days[0];
    let mut noise = Noise(11);
    let truth = Parameters { vigor: VIGOR, heat_loss: LOSS, ..Parameters::median() };
    let mut file = String::from("date,2027-03-02\nyeast lot,jar of March\nmeter name,no. 1\n");
    let mut say = |line: String| writeln!(file, "{line}").expect("text grows");
    say("\nspoon,mass (g)".into());
    for number in 1..=10 {
        say(format!("{number},{:.1}", 3.1 + 0.3 * noise.next()));
    }
    say("\ncooling,temperature (°C)".into());
    let mut water = bench::setup(plan, &protocol.dummy.recipe, day).expect("a bag");
    water.wet_before_zero_min = 0.0;
    let cooling = run(&water, &truth, 20).expect("a run").moments;
    for minute in &protocol.dummy.minutes {
        say(format!("{minute},{:.0}", cooling[*minute as usize].celsius + 0.3 * noise.next()));
    }
    if let Some(syringe) = &protocol.syringe {
        say("\nsyringe (mL),height (mm)".into());
        let (bag, card) = (&syringe.bag.bag, &syringe.card.card);
        let curve = card_height::prior(bag, card, syringe.water_ml).curve(0.0, 0.0, 1.0);
        for air in std::iter::once(0.0).chain(syringe.volumes_ml.iter().copied()) {
            say(format!("{air},{:.0}", 5.0 + curve.rise_mm(air + TRAPPED_AIR.value)));
        }
    }
    let bags = protocol.bags.iter();
    let minutes: Vec<u32> =
        std::iter::once(0).chain(protocol.bags[0].minutes.iter().copied()).collect();
    say(format!("\nbag,{}", joined(minutes.iter().map(u32::to_string))));
    for bag in bags {
        let setup = bench::setup(plan, &bag.recipe, day).expect("a bag");
        let moments = run(&setup, &truth, 30).expect("a run").moments;
        let height = |minute: &u32| {
            format!("{:.0}", 6.0 + moments[*minute as usize].rise_mm + 0.4 * noise.next())
        };
        say(format!("{},{}", bag.letter, joined(minutes.iter().map(height))));
    }
    if let Some(meter) = &protocol.meter {
        say("\nethanol (%),meter (%)".into());
        for strength in &meter.strengths {
            let liquid = Liquid::water(Celsius(day.room_celsius));
            let over = percent_over(strength / percent_by_volume(1.0), &liquid);
            say(format!("{strength},{:.2}", GAIN * over));
        }
    }
    file
}

fn joined(all: impl Iterator<Item = String>) -> String {
    all.collect::<Vec<_>>().join(",")
}

/// The invented plan.
pub(crate) fn plan() -> Plan {
    let path = crate::program::invented().join("plan.toml");
    let read = barm_documents::plan_text::read(&std::fs::read(path).expect("the plan"));
    read.plan.expect("a sound plan")
}
