//! Second rounds, in a teacher's words.

use super::number::{bags, percent, sentence_start, tenths};
use super::{Voice, mid_sentence};
use crate::outlook::HeldBackBy;
use crate::plan::Round;
use crate::prep::Item;
use crate::round_two::{Looks, Proposal, Reason, Shared, Told};
use barm_science::statistics::verdict::Code;

impl Voice {
    /// What a proposal makes, in a few words.
    pub fn proposal(self, one: &Proposal) -> String {
        let pairs: Vec<_> = one.told.iter().map(|told| &told.pair).collect();
        let names = listed(pairs.iter().map(|pair| pair.treatment.as_str()));
        let mut references: Vec<&str> = Vec::new();
        for pair in &pairs {
            if !references.contains(&pair.reference.as_str()) {
                references.push(&pair.reference);
            }
        }
        let beside = listed(references);
        let more = match one.reason {
            Reason::Open { .. } => "more",
            _ => "new",
        };
        let each = if pairs.len() > 1 { " each" } else { "" };
        let count = if one.each == 1 { "bag" } else { "bags" };
        format!("{} {more} {count}{each} of {names}, beside {beside}", one.each)
    }

    /// Why, in a sentence or two.
    pub fn proposal_why(self, one: &Proposal) -> String {
        match &one.reason {
            Reason::Open { verdicts } => open(&one.told, verdicts),
            Reason::Between { best, thing, from, to } => format!(
                "{best} rose most, with {from}. {} lies between it and its neighbor: is there a {} that does better still?",
                sentence_start(to),
                thing.words()
            ),
            Reason::Beyond { best, thing, from, to } => format!(
                "{best} rose most, with {from}. Nobody tried another {} beyond that, such as {to}.",
                thing.words()
            ),
            Reason::HeldBack { treatment, by, from, to, .. } => format!(
                "By the bag model, as round one moved it, {} bags of {} back, which had {from}. With {to} that would no longer be so, or less.",
                held(*by),
                mid_sentence(treatment)
            ),
        }
    }

    /// What is expected, a sentence a comparison.
    pub fn proposal_expects(self, told: &Told) -> String {
        let (low, middle, high) = told.apart_mm;
        let of = if told.pooled { "both rounds together" } else { "round two by itself" };
        format!(
            "{} beside {}: {} expected, {} to {} mm 8 times in 10; a clear verdict of {of} {}.",
            told.pair.treatment,
            mid_sentence(&told.pair.reference),
            format_args!("{} mm", tenths(middle)),
            tenths(low),
            tenths(high),
            times(told.clear)
        )
    }

    /// What it shares with round one.
    pub fn proposal_shares(self, shared: &Shared) -> String {
        let mut parts = Vec::new();
        let mut part = |says: &str, names: &[String]| {
            if !names.is_empty() {
                parts.push(format!("{says} {}", listed(names.iter().map(String::as_str))));
            }
        };
        part("the same treatment as in round one:", &shared.treatments);
        part("the same to compare with:", &shared.controls);
        part("new:", &shared.new);
        part("the forecast takes the same lots of", &shared.lots);
        let says = parts.join("; ");
        format!("{}.", sentence_start(&says))
    }

    /// What its bags cost, as far as prices are known.
    pub fn proposal_costs(self, one: &Proposal) -> String {
        let missing = listed(one.worth.without_price.iter().map(Item::name));
        match (one.worth.dollars > 0.0, missing.is_empty()) {
            (true, true) => format!("Uses up about ${:.2}.", one.worth.dollars),
            (true, false) => {
                format!(
                    "Uses up about ${:.2}; no price is known of {missing}.",
                    one.worth.dollars
                )
            }
            (false, _) => "No price is known of what it uses up.".to_owned(),
        }
    }

    /// How a second round of a plan will be judged.
    pub const fn second_look(self, round: Round) -> &'static str {
        match round {
            Round::First => {
                "Round one was judged at 2 %, because a second round was foreseen. Both rounds are judged together at what that leaves, so that a question without a difference comes out clear at most 5 times in 100, over both."
            }
            Round::Only | Round::Second => {
                "Round one was told at the full 5 %, which leaves nothing for a second verdict on the same bags. Its words stay. With more bags, both rounds together give the best difference and interval, without a word; round two is judged by itself, as a repetition. Foresee a second round by round = \"first of two\" in the plan, before the day."
            }
        }
    }

    /// At which level a question of both rounds was judged, and why.
    pub fn looked(self, looks: &Looks) -> String {
        match (looks.first, looks.pooled) {
            (_, None) => "Told once at the full level, so both rounds together have no verdict, only a difference and an interval. Round two is judged by itself; one of two such words is false in up to 10 of 100 questions without a difference."
                .to_owned(),
            (Some(first), Some(pooled)) => format!(
                "First look at {}, both rounds together at {}.",
                percent(first),
                percent(pooled)
            ),
            (None, Some(pooled)) => {
                format!("Looked at for the first time, at {}.", percent(pooled))
            }
        }
    }
}

fn open(told: &[Told], verdicts: &[Code]) -> String {
    let of = |wanted: &[Code]| {
        let both = told.iter().zip(verdicts).filter(|(_, code)| wanted.contains(code));
        listed(both.map(|(told, _)| told.pair.treatment.as_str()))
    };
    let mut says = Vec::new();
    let (leaning, unclear) = (of(&[Code::Leaning]), of(&[Code::Unclear]));
    let lost = of(&[Code::NotComparable]);
    if !leaning.is_empty() {
        says.push(format!("Round one leaned one way on {leaning}, which may still be chance."));
    }
    if !unclear.is_empty() {
        says.push(format!("Round one could not tell {unclear} from what it stands beside."));
    }
    if !lost.is_empty() {
        says.push(format!("Round one could not compare {lost}."));
    }
    if let [one] = told {
        says.push(format!(
            "The interval now reaches {} mm to each side; {} and {} would bring that to about {}.",
            tenths(one.half_now_mm),
            bags(one.bags.0),
            one.bags.1,
            tenths(one.half_then_mm)
        ));
    }
    says.join(" ")
}

const fn held(by: HeldBackBy) -> &'static str {
    match by {
        HeldBackBy::Waking => "slow waking held",
        HeldBackBy::NoYeast => "the lack of yeast held",
        HeldBackBy::NoFood | HeldBackBy::Locked => "the lack of food that yeast can use held",
        HeldBackBy::Enzyme => "too little enzyme held",
        HeldBackBy::Food => "too little food held",
        HeldBackBy::Yeast => "too little yeast held",
    }
}

/// A chance, as how often.
fn times(chance: f64) -> String {
    match (100.0 * chance).round() {
        percent if percent < 1.0 => "hardly ever".to_owned(),
        percent if percent > 99.0 => "nearly always".to_owned(),
        percent => format!("{percent:.0} times in 100"),
    }
}

fn listed<T: AsRef<str>>(names: impl IntoIterator<Item = T>) -> String {
    let names: Vec<String> =
        names.into_iter().map(|name| mid_sentence(name.as_ref())).collect();
    match names.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
    }
}
