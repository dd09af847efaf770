//! Invented results.

use super::{
    Chance, TITLE, Treatment, around, caution, dots, entry, enzyme_question, imprint, sheaf,
    subset,
};
use barm_documents::chart::{DotRow, Estimate, Sheaf};
use barm_documents::sheet::{
    Claim, Comparison, Counted, Gap, GasRow, LeftOut, QuestionResult, Rejected, ResultsReport,
    Slope,
};

fn verdict(difference: Estimate) -> &'static str {
    if difference.low > 0.5 {
        "clear"
    } else if difference.low > -1.0 && difference.value > 1.5 {
        "leaning"
    } else {
        "can’t tell"
    }
}

fn counted(n: usize, n_reference: usize, gap: f64, half: f64) -> Counted {
    let difference = around(gap, half);
    Counted {
        n,
        n_reference,
        difference: Some(difference),
        verdict: verdict(difference).to_owned(),
    }
}

/// The mean over every bag and over those that count.
fn means(rows: &[DotRow], name: &str) -> (f64, f64) {
    rows.iter().find(|row| row.name == name).map_or((0.0, 0.0), |row| {
        let all = row.dots.iter().map(|dot| dot.rise).sum::<f64>() / row.dots.len() as f64;
        (all, row.mean.unwrap_or(all))
    })
}

fn comparison(
    one: &Treatment,
    reference: &Treatment,
    rows: &[DotRow],
    own: bool,
) -> Comparison {
    let (all, kept) = means(rows, &one.name);
    let (_, beside) = means(rows, &reference.name);
    let half = 0.9 + one.rise * 0.06;
    let left_out = usize::from(one.look.0 == 2);
    let with_all = counted(one.bags, reference.bags, all - beside, half);
    let reason = match with_all.verdict.as_str() {
        "clear" => {
            "The whole range lies above the readable difference of 3 mm or well above zero."
        }
        "leaning" => "The range reaches close to zero; more bags would settle it.",
        _ => "The range reaches zero.",
    };
    Comparison {
        treatment: one.name.clone(),
        look: one.look,
        reference: own.then(|| reference.name.clone()),
        without_set_aside: counted(one.bags - left_out, reference.bags, kept - beside, half),
        with_all,
        reason: reason.to_owned(),
    }
}

fn gap(one: &Treatment, reference: &Treatment, rows: &[DotRow]) -> Gap {
    let row = |name: &str| rows.iter().find(|row| row.name == name);
    let number =
        |name: &str, of: fn(&DotRow) -> Option<f64>| row(name).and_then(of).unwrap_or(0.0);
    let mean = |name: &str| number(name, |row| row.mean);
    let mad = number(&one.name, |row| row.mad).max(number(&reference.name, |row| row.mad));
    let gap = mean(&one.name) - mean(&reference.name);
    let in_mads = gap / mad;
    Gap {
        treatment: one.name.clone(),
        look: one.look,
        reference: reference.name.clone(),
        gap,
        mad,
        in_mads: Some(in_mads),
        bags: one.bags.min(reference.bags),
        asked: Some(1.2),
        says: if in_mads > 1.2 { "larger than asked" } else { "smaller than asked" }.to_owned(),
    }
}

fn slope(one: &Treatment) -> Slope {
    Slope {
        treatment: one.name.clone(),
        look: one.look,
        bags: one.bags,
        slope: around(one.rise / 20.0, 0.05 + one.rise * 0.003),
        from: 4.0,
        to: 24.0,
    }
}

fn gas(one: &Treatment) -> GasRow {
    GasRow {
        treatment: one.name.clone(),
        look: one.look,
        bags: one.bags,
        gas_ml: around(4.0 + one.rise * 3.9, 3.0 + one.rise * 0.5),
        ethanol_g: around(0.01 + one.rise * 0.0071, 0.004 + one.rise * 0.0012),
    }
}

fn question(
    asks: &str,
    reference: &Treatment,
    treatments: &[Treatment],
    (sheaves, rows): (&[Sheaf], &[DotRow]),
    pairs: Option<&[(usize, usize)]>,
) -> QuestionResult {
    let of = |at: usize| &treatments[at];
    let pairs: Vec<(&Treatment, &Treatment)> = match pairs {
        Some(pairs) => pairs.iter().map(|(one, beside)| (of(*one), of(*beside))).collect(),
        None => treatments.iter().filter(|t| t.look.0 > 0).map(|t| (t, reference)).collect(),
    };
    QuestionResult {
        asks: asks.to_owned(),
        reference: reference.name.clone(),
        minute: 24.0,
        curves: treatments
            .iter()
            .filter_map(|one| sheaves.iter().find(|sheaf| sheaf.look == one.look).cloned())
            .collect(),
        comparisons: pairs
            .iter()
            .map(|(one, beside)| comparison(one, beside, rows, beside.name != reference.name))
            .collect(),
        gaps: pairs.iter().map(|(one, beside)| gap(one, beside, rows)).collect(),
        slopes: treatments.iter().map(slope).collect(),
    }
}

fn report(title: &str, summary: &str) -> ResultsReport {
    ResultsReport {
        imprint: imprint("RES-D-M"),
        title: title.to_owned(),
        summary: summary.to_owned(),
        claims: Vec::new(),
        every_bag: Vec::new(),
        minute: 24.0,
        questions: Vec::new(),
        gas: Vec::new(),
        day: None,
        meter: None,
        left_out: Vec::new(),
        did_not_work: Vec::new(),
        rejected: Vec::new(),
        method: Vec::new(),
        cautions: Vec::new(),
        periods: Vec::new(),
    }
}

fn claim(verdict: &str, claim: &str, evidence: &str) -> Claim {
    Claim {
        verdict: verdict.to_owned(),
        claim: claim.to_owned(),
        evidence: evidence.to_owned(),
    }
}

fn claims(rows: &[DotRow]) -> Vec<Claim> {
    let lifted = |name: &str, from: &str| means(rows, name).1 - means(rows, from).1;
    let maple = lifted("Maple syrup", "No food");
    let (low, high) = (maple - 1.8, maple + 1.8);
    let potato = lifted("Potato flakes + glucoamylase", "Potato flakes");
    let milk = lifted("Nonfat dry milk + lactase", "Nonfat dry milk");
    let oat = lifted("Oat flour + glucoamylase", "Oat flour");
    let plain = lifted("Potato flakes", "No food");
    vec![
        claim(
            "Clear",
            "Maple syrup and mashed banana feed yeast best.",
            &format!(
                "Maple syrup rose {maple:.1} mm more than no food (between {low:.1} and {high:.1})."
            ),
        ),
        claim(
            "Clear",
            "Two enzymes helped.",
            &format!(
                "Glucoamylase lifted potato flakes by {potato:.1} mm, lactase lifted dry milk by {milk:.1} mm."
            ),
        ),
        claim(
            "Leaning",
            "Glucoamylase may lift oat flour:",
            &format!("{oat:.1} mm, but it could be less than 2."),
        ),
        claim(
            "Can’t tell",
            "Potato flakes and dry milk alone:",
            &format!(
                "{plain:.1} mm over no food, and the range reaches zero. With so many bags a difference of 3 mm would usually have shown."
            ),
        ),
    ]
}

/// The report of Tamarack Bend's day.
pub(crate) fn full(all: &[Treatment]) -> ResultsReport {
    let mut chance = Chance(41);
    let sheaves: Vec<Sheaf> = all.iter().map(|one| sheaf(one, &mut chance)).collect();
    let rows = dots(&sheaves);
    let readings = (&sheaves[..], &rows[..]);
    let foods = subset(all, &[1, 2, 3, 5, 7, 0]);
    let pairs = [(0, 3), (1, 4), (2, 5)];
    let enzyme = subset(all, &[4, 6, 8, 3, 5, 7]);
    let beside = Treatment { name: "same food, no enzyme".to_owned(), ..enzyme[3].clone() };
    let questions = vec![
        question(TITLE, &all[0], &foods, readings, None),
        question(enzyme_question(), &beside, &enzyme, readings, Some(&pairs)),
    ];
    ResultsReport {
        claims: claims(&rows),
        questions,
        gas: all.iter().map(gas).collect(),
        left_out: vec![LeftOut {
            bag: "P3-02B-B".to_owned(),
            treatment: "Mashed banana".to_owned(),
            rule: "leak".to_owned(),
            seen: "The card fell from 11 to 8 mm between minutes 12 and 16, and foam stood at the zip.".to_owned(),
        }],
        did_not_work: vec![
            entry("Cool water", "The jug of period 3 read 34 °C, plan 40 °C. Kept in: each period is compared with its own no-food bags."),
            entry("Too short", "24 minutes were too few for potato flakes and dry milk alone. Round two: read on to 32."),
        ],
        rejected: vec![
            Rejected { line: 37, reason: "no bag has the code \"P2-09A-1\"; group 9 does not exist in period 2".to_owned() },
            Rejected { line: 102, reason: "the height \"1O\" is not a number; did you mean 10?".to_owned() },
        ],
        method: vec![
            entry("One bag, one number", "The rise of each bag is its card height at 24 minutes less its own zero reading. Six readings of one bag are not six bags."),
            entry("Periods", "Each period is a block: a bag is compared with the reference bags of its own period, then the periods are put together."),
            entry("Ranges", "95 % intervals; all intervals of one question hold together 95 times in 100 (Dunnett 1955)."),
            entry("Words", "\"Clear\" is said falsely at most 1 time in 20. \"Can’t tell\" does not mean \"no difference\"."),
            entry("Gas and ethanol", "From the height by the shape of the bag, then by the sugar that makes as much ethanol as carbon dioxide. Both carry the doubt of ruler, bag and temperature."),
        ],
        cautions: vec![
            caution("S22", "The teacher empties the bags, or students under the teacher's eye: into the sink with plenty of water. None is taken home, none is tasted, gas is not sniffed from a bag.", "common practice"),
            caution("S15", "By this plan's own upper forecast a bag holds at most 0.17 g of ethanol, about 0.5 % by volume. It is an estimate, not a test of a person; nothing here is a drink.", "own arithmetic"),
        ],
        every_bag: rows,
        ..report(TITLE, "Results, 4 periods, 94 bags")
    }
}

/// The report of a day without readings.
pub(crate) fn empty() -> ResultsReport {
    ResultsReport {
        questions: vec![QuestionResult {
            asks: "Does more sugar help?".to_owned(),
            reference: "No food".to_owned(),
            minute: 24.0,
            curves: Vec::new(),
            comparisons: Vec::new(),
            gaps: Vec::new(),
            slopes: Vec::new(),
        }],
        ..report("Yeast", "Results, no bags")
    }
}

/// A report that is too full.
pub(crate) fn many(title: &str, all: &[Treatment]) -> ResultsReport {
    let mut chance = Chance(7);
    let sheaves: Vec<Sheaf> = all.iter().map(|one| sheaf(one, &mut chance)).collect();
    let rows = dots(&sheaves);
    let readings = (&sheaves[..], &rows[..]);
    let long = "This sentence has # $ @ [ ] * _ \\ < > ` in it and ends in a word that fits no column: ";
    let rejected = |line| Rejected { line, reason: format!("{long}{}", "x".repeat(60)) };
    let left_out = |bag: usize| LeftOut {
        bag: format!("P1-{bag:02}B-K"),
        treatment: all[bag % all.len()].name.clone(),
        rule: "not-mixed-as-planned".to_owned(),
        seen: format!("{long}{}", "y".repeat(50)),
    };
    ResultsReport {
        claims: all.iter().map(|one| claim("Not comparable", &one.name, long)).collect(),
        questions: vec![question(title, &all[0], all, readings, None)],
        every_bag: rows,
        gas: all.iter().map(gas).collect(),
        left_out: (1..30).map(left_out).collect(),
        did_not_work: (0..20).map(|_| entry("Cool water in every period", long)).collect(),
        rejected: (2..120).map(rejected).collect(),
        method: vec![entry("Worked out", long)],
        cautions: (0..28).map(|_| caution("S01", long, "UN GHS Rev. chapter 3.4")).collect(),
        ..report(title, "Results, 3 periods, 260 bags")
    }
}
