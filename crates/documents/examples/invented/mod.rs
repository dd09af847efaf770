//! Invented values for every sheet. Tamarack Bend Middle School, its groups and every number here are made up.

use barm_documents::chart::{Dot, DotRow, Estimate, Look, Moment, Reading, Sheaf, Strand};
use barm_documents::sheet::{
    Caution, Entry, ForecastPanel, ForecastRow, ForecastSheet, Imprint, PrepSheet,
    ResultsReport,
};

mod prep;
mod results;

/// The sheets of one invented class.
pub(crate) struct Class {
    /// What sort of class it is.
    pub(crate) name: &'static str,
    /// What it found.
    pub(crate) results: ResultsReport,
    /// What it needs.
    pub(crate) prep: PrepSheet,
    /// What was expected.
    pub(crate) forecast: ForecastSheet,
}

/// A treatment with the rise that the invented class saw.
#[derive(Clone)]
struct Treatment {
    name: String,
    look: Look,
    rise: f64,
    bags: usize,
}

/// Numbers that look like chance and are the same every time (Lehmer 1951, modulus 2^31 - 1).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        self.0 as f64 / 2_147_483_647.0
    }

    /// Near a bell curve with mean 0 and standard deviation 1.
    fn bell(&mut self) -> f64 {
        (0..12).map(|_| self.next()).sum::<f64>() - 6.0
    }
}

fn imprint(sheet: &str) -> Imprint {
    Imprint {
        school: "Tamarack Bend Middle School".to_owned(),
        sheet: sheet.to_owned(),
        invented: true,
        rehearsal: false,
        language: "en".to_owned(),
    }
}

fn entry(head: &str, says: &str) -> Entry {
    Entry { head: head.to_owned(), says: says.to_owned() }
}

fn caution(code: &str, says: &str, source: &str) -> Caution {
    Caution {
        code: code.to_owned(),
        says: says.to_owned(),
        source: (!source.is_empty()).then(|| source.to_owned()),
    }
}

fn around(value: f64, half: f64) -> Estimate {
    Estimate { value, low: value - half, high: value + half }
}

const FOODS: [(&str, f64); 9] = [
    ("No food", 2.0),
    ("Maple syrup", 15.0),
    ("Mashed banana", 12.6),
    ("Oat flour", 5.4),
    ("Oat flour + glucoamylase", 8.4),
    ("Potato flakes", 3.0),
    ("Potato flakes + glucoamylase", 10.3),
    ("Nonfat dry milk", 2.6),
    ("Nonfat dry milk + lactase", 7.5),
];

fn class_of_four_periods() -> Vec<Treatment> {
    FOODS
        .iter()
        .enumerate()
        .map(|(at, (name, rise))| Treatment {
            name: (*name).to_owned(),
            look: Look(at as u8),
            rise: *rise,
            bags: if at == 0 { 30 } else { 8 },
        })
        .collect()
}

fn overfull() -> Vec<Treatment> {
    let names = [
        "No food, no enzyme, and a name that goes on and on and on",
        "#let x = [*bold* _it_ $x^2$ @ref <tag> `raw` \\ //]",
        "Otters 🦦🦦 and שלום and ½ Ñandú",
        "Supercalifragilisticexpialidociousglucoamylase",
        "Whole-grain oat flour, twice sieved + glucoamylase solution, shaken",
        "Table sugar",
        "Powdered sugar with a little starch",
        "Corn syrup",
        "Honey from the school's own hives",
        "White bread flour",
        "Red lentil flour",
        "Orange juice",
        "Coconut water & <script>alert(\"x\")</script>",
    ];
    names
        .iter()
        .enumerate()
        .map(|(at, name)| Treatment {
            name: (*name).to_owned(),
            look: Look(at as u8),
            rise: 2.0 + 1.4 * at as f64,
            bags: 20,
        })
        .collect()
}

fn risen(rise: f64, minute: f64) -> f64 {
    rise * ((minute - 2.0).max(0.0) / 22.0).powf(1.12)
}

/// The bags of every treatment at the last reading, highest mean first.
fn dots(sheaves: &[Sheaf]) -> Vec<DotRow> {
    let mut rows: Vec<DotRow> = sheaves
        .iter()
        .map(|sheaf| {
            let last = |bag: &Vec<Reading>| bag.last().map_or(0.0, |reading| reading.rise);
            let doubted = |bag: &Vec<Reading>| bag.iter().any(|reading| reading.doubtful);
            let dot = |bag| Dot { rise: last(bag), set_aside: doubted(bag) };
            let dots: Vec<Dot> = sheaf.bags.iter().map(dot).collect();
            let kept: Vec<f64> = dots.iter().filter(|d| !d.set_aside).map(|d| d.rise).collect();
            let mean = kept.iter().sum::<f64>() / kept.len() as f64;
            let mad =
                kept.iter().map(|rise| (rise - mean).abs()).sum::<f64>() / kept.len() as f64;
            DotRow {
                name: sheaf.name.clone(),
                look: sheaf.look,
                dots,
                mean: Some(mean),
                mad: Some(mad),
            }
        })
        .collect();
    rows.sort_by(|a, b| b.mean.unwrap_or(0.0).total_cmp(&a.mean.unwrap_or(0.0)));
    rows
}

fn sheaf(one: &Treatment, chance: &mut Chance) -> Sheaf {
    let minutes: Vec<f64> = (0..=6).map(|k| f64::from(k) * 4.0).collect();
    let bags: Vec<Vec<Reading>> = (0..one.bags)
        .map(|bag| {
            let strength = 1.0 + 0.12 * chance.bell();
            let mut last = 0.0_f64;
            let read = minutes.iter().map(|&minute| {
                // The mean of the two ends of the card, each read to a whole millimeter.
                let rise = risen(one.rise * strength, minute) + 0.3 * chance.bell();
                let rise = (rise * 2.0).round() / 2.0;
                last = last.max(rise);
                let fell = one.look.0 == 2 && bag == 3 && minute > 15.0;
                let rise = if fell { last - 3.0 } else { last };
                Reading { minute, rise, doubtful: fell && minute < 17.0 }
            });
            read.collect()
        })
        .collect();
    let mean = minutes.iter().enumerate().map(|(at, &minute)| {
        let sum: f64 = bags.iter().map(|bag| bag[at].rise).sum();
        (minute, sum / bags.len() as f64)
    });
    Sheaf { name: one.name.clone(), look: one.look, mean: mean.collect(), bags }
}

fn strand(one: &Treatment) -> Strand {
    let moments = (0..=24).map(|minute| {
        let minute = f64::from(minute);
        let median = risen(one.rise, minute);
        let high = median * 1.25 + 0.4 * (minute / 4.0).min(1.0);
        Moment { minute, median, low: median * 0.74, high }
    });
    Strand { name: one.name.clone(), look: one.look, moments: moments.collect() }
}

fn forecast_row(one: &Treatment, reference: f64) -> ForecastRow {
    let of_reference = one.look.0 == 0;
    let gap = one.rise - reference;
    let rise = Estimate { value: one.rise, low: one.rise * 0.74, high: one.rise * 1.25 + 0.4 };
    let chance = (gap / 8.0).clamp(0.02, 0.99);
    let readable = (gap > 3.0).then(|| 4.0 + 60.0 / gap);
    let remark = match (of_reference, gap > 4.0) {
        (true, _) => "",
        (false, true) => "Shows",
        (false, false) => "May not show",
    };
    ForecastRow {
        treatment: one.name.clone(),
        look: one.look,
        rise,
        gas_ml: around(one.rise * 3.9, one.rise),
        ethanol_g: around(one.rise * 0.0071, one.rise * 0.002),
        readable_at: if of_reference { None } else { readable },
        chance: (!of_reference).then_some(chance),
        fill: 0.3 + one.rise / 60.0,
        vent_by: (one.rise > 4.0).then(|| 24.0 + 900.0 / one.rise),
        remark: remark.to_owned(),
    }
}

fn panel(asks: &str, treatments: &[Treatment]) -> ForecastPanel {
    let reference = treatments.first().map_or(0.0, |one| one.rise);
    ForecastPanel {
        asks: asks.to_owned(),
        reference: treatments.first().map_or_else(String::new, |one| one.name.clone()),
        strands: treatments.iter().map(strand).collect(),
        last_reading: 24.0,
        bell: Some(31.0),
        rows: treatments.iter().map(|one| forecast_row(one, reference)).collect(),
    }
}

fn forecast(title: &str, panels: Vec<ForecastPanel>) -> ForecastSheet {
    ForecastSheet {
        imprint: imprint("FOR-D-T"),
        title: title.to_owned(),
        summary: "Forecast".to_owned(),
        panels,
        notes: vec![
            entry(
                "Water",
                "40 mL at 40 °C (104 °F) in the bag at the start, room 21 °C, altitude 1,400 m.",
            ),
            entry(
                "Yeast",
                "2 g instant yeast from a fresh jar. Old yeast makes every bag lower.",
            ),
            entry(
                "Not known",
                "How active the yeast is, how level the spoons are, how well the air is pressed out.",
            ),
        ],
    }
}

const TITLE: &str = "Which breakfast-cupboard food feeds yeast best?";
const ENZYME: &str = "Does the digestive enzyme help?";

/// Tamarack Bend's four periods.
pub(crate) fn full() -> Class {
    let all = class_of_four_periods();
    Class {
        name: "full",
        results: results::full(&all),
        prep: prep::full(4, 8, 3, &all),
        forecast: forecast(TITLE, vec![panel(TITLE, &all)]),
    }
}

/// A plan without bags and a day without readings.
pub(crate) fn empty() -> Class {
    Class {
        name: "empty",
        results: results::empty(),
        prep: prep::empty(),
        forecast: forecast("Yeast", Vec::new()),
    }
}

/// Twelve treatments and a reference, twenty groups, names that would break a weaker page.
pub(crate) fn many() -> Class {
    let all = overfull();
    let title = "#$@[]*_\\<>` ".repeat(9) + "🦦 שלום " + &"#".repeat(90);
    Class {
        name: "many",
        results: results::many(&title, &all),
        prep: prep::of_three_waters(prep::full(3, 20, 4, &all)),
        forecast: forecast(&title, vec![panel(&title, &all)]),
    }
}

fn subset(all: &[Treatment], wanted: &[usize]) -> Vec<Treatment> {
    wanted.iter().filter_map(|at| all.get(*at).cloned()).collect()
}

fn enzyme_question() -> &'static str {
    ENZYME
}
