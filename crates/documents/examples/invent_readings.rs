//! Invents a class's readings for a plan, with the slips that real classes make.
//!
//! `cargo run -p barm-documents --example invent_readings -- PLAN > readings.csv`
//!
//! One possible day of the forecast is taken as the truth; every bag then has its own spoons and
//! its own card. Nothing here was ever measured.

use barm_documents::plan_text;
use barm_domain::outlook;
use barm_domain::plan::{Plan, PlannedBag};
use barm_science::forecast::{Span, Streams, forecast};
use std::error::Error;
use std::io::Write;

/// Seed of the invented day.
const DAY: u64 = 1_400;
/// Possible days, of which one is taken.
const DAYS: usize = 32;
/// Which one; in the middle for the strength of its yeast.
const TAKEN: usize = 18;
/// How far the water of each period was off (K): the jug of the third had cooled.
const JUGS: [f64; 4] = [0.5, -0.5, -5.0, 0.0];

fn main() -> Result<(), Box<dyn Error>> {
    let path = std::env::args().nth(1).ok_or("name the plan file")?;
    let read = plan_text::read(&std::fs::read(path)?);
    let plan = read.plan.filter(|_| read.mistakes.is_empty()).ok_or("the plan has mistakes")?;
    let mut out = std::io::stdout().lock();
    writeln!(out, "bag,minute,height (mm),note,set aside")?;
    for (at, bag) in plan.bags.iter().enumerate() {
        for row in rows(&plan, at, bag)? {
            writeln!(out, "{row}")?;
        }
    }
    Ok(())
}

fn rows(plan: &Plan, at: usize, bag: &PlannedBag) -> Result<Vec<String>, Box<dyn Error>> {
    let treatment = plan.treatment(&bag.treatment).ok_or("a bag of no treatment")?;
    let mut setup = outlook::setup(plan, treatment)?;
    let period = plan.periods.iter().position(|p| p.name == bag.period).unwrap_or(0);
    setup.water_celsius += JUGS.get(period).copied().unwrap_or(0.0);
    let last = plan.common_last_reading_min();
    let span = Span { last_minute: last, draws: DAYS, until_hours: 0.0 };
    let mut chance = Chance(DAY ^ (at as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    let streams = Streams::alone(DAY, chance.next());
    let forecast = forecast(&setup, &span, &streams)?;
    let rises = forecast.rise_mm().draw(TAKEN);
    let zero = 4.0 + 1.2 * chance.normal();
    let leaks_at = (slip(at) == Slip::Leak).then_some(12);
    let mut rows = Vec::new();
    for minute in (0..=last).step_by(plan.timing.interval_min as usize) {
        if slip(at) == Slip::Dropped && minute > 8 || slip(at) == Slip::Missed && minute == 16 {
            continue;
        }
        let lost = leaks_at.map_or(0.0, |from| 0.9 * f64::from(minute.saturating_sub(from)));
        let rise = rises[minute as usize] - lost;
        let height = (zero + rise.max(0.0) + 0.4 * chance.normal()).round().max(1.0);
        let late = u32::from(slip(at) == Slip::Late && minute == 12);
        let written = match slip(at) {
            Slip::Centimeters => format!("{:.1} cm", height / 10.0),
            _ => format!("{height}"),
        };
        let (note, rule) = match slip(at) {
            Slip::Leak if minute == last => ("hissed at the zip", "leak"),
            Slip::Dropped if minute == 8 => ("bag fell off the bench after this", ""),
            Slip::Late if minute == 12 => ("read late", ""),
            _ => ("", ""),
        };
        let code = match slip(at) {
            Slip::Misread if minute == 20 => bag.code.replace("-0", "-1"),
            _ => bag.code.clone(),
        };
        rows.push(format!("{code},{},{written},{note},{rule}", minute + late));
    }
    Ok(rows)
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Slip {
    None,
    Leak,
    Dropped,
    Missed,
    Late,
    Centimeters,
    Misread,
}

/// What went wrong with the bag at that place of the list.
fn slip(at: usize) -> Slip {
    match at {
        25 => Slip::Leak,
        17 => Slip::Late,
        30 => Slip::Centimeters,
        44 => Slip::Missed,
        61 => Slip::Dropped,
        70 => Slip::Misread,
        _ => Slip::None,
    }
}

/// SplitMix64 (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators").
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A standard normal number: twelve uniform ones less six are near enough for a ruler.
    fn normal(&mut self) -> f64 {
        let mut sum = -6.0;
        for _ in 0..12 {
            sum += (self.next() >> 11) as f64 / (1u64 << 53) as f64;
        }
        sum
    }
}
