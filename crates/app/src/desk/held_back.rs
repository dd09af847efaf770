//! What holds each treatment back, in words.

use barm_domain::outlook::{HeldBackBy, Limit, limit};
use barm_domain::plan::Plan;

/// What holds back each treatment that can be followed, in the order of the plan.
pub(crate) fn held_back(plan: &Plan) -> Vec<Limit> {
    plan.treatments().filter_map(|(_, treatment)| limit(plan, treatment).ok()).collect()
}

/// What it is, in a word or two.
pub(crate) const fn what_holds(by: HeldBackBy) -> &'static str {
    match by {
        HeldBackBy::NoYeast => "no yeast",
        HeldBackBy::NoFood => "no food",
        HeldBackBy::Waking => "waking up",
        HeldBackBy::Locked => "closed food",
        HeldBackBy::Enzyme => "the enzyme",
        HeldBackBy::Food => "the food",
        HeldBackBy::Yeast => "yeast and time",
    }
}

/// Why, in a sentence.
pub(crate) const fn why_it_holds(by: HeldBackBy) -> &'static str {
    match by {
        HeldBackBy::NoYeast => "Nothing in it makes gas. It shows what the bag does by itself.",
        HeldBackBy::NoFood => {
            "Yeast lives on what it has stored, and that makes next to no gas."
        }
        HeldBackBy::Waking => {
            "Dry yeast takes its time to wake. Warmer water or an earlier start would help."
        }
        HeldBackBy::Locked => {
            "There is food, but yeast cannot take in starch or milk sugar before an enzyme has cut \
             them; raw starch is cut slowly."
        }
        HeldBackBy::Enzyme => "The enzyme frees sugar more slowly than the yeast could use it.",
        HeldBackBy::Food => {
            "The sugar that yeast can use is gone, or nearly, by the last reading."
        }
        HeldBackBy::Yeast => {
            "There is sugar to spare. How much yeast there is, how warm and for how long, decides."
        }
    }
}

/// What holds it back from the zero reading on: "first 9 minutes waking up, then the enzyme".
pub(crate) fn held_back_along(limit: &Limit) -> String {
    let Some((last, first)) = limit.along.split_last() else {
        return what_holds(limit.by).to_owned();
    };
    let mut said = String::new();
    for (nth, stretch) in first.iter().enumerate() {
        let (what, to) = (what_holds(stretch.by), stretch.to_min);
        said += &if nth == 0 {
            format!("first {to} minutes {what}, ")
        } else {
            format!("to minute {to} {what}, ")
        };
    }
    let then = if first.is_empty() { "" } else { "then " };
    format!("{said}{then}{}", what_holds(last.by))
}

#[cfg(test)]
mod tests {
    use super::held_back_along;
    use barm_domain::outlook::{HeldBackBy, Limit, Stretch};

    fn told(along: &[(u32, HeldBackBy)]) -> String {
        let mut from_min = 0;
        let along = along.iter().map(|&(to_min, by)| {
            let stretch = Stretch { from_min, to_min, by };
            from_min = to_min + 1;
            stretch
        });
        held_back_along(&Limit {
            treatment: "It".into(),
            by: HeldBackBy::NoYeast,
            along: along.collect(),
            dissolved_to_min: 0,
            more_food: None,
            more_yeast: None,
            more_enzyme: None,
            more_time: None,
        })
    }

    #[test]
    fn one_thing_or_one_after_the_other() {
        use HeldBackBy::{Enzyme, Food, Waking, Yeast};
        assert_eq!(told(&[]), "no yeast");
        assert_eq!(told(&[(24, Yeast)]), "yeast and time");
        assert_eq!(
            told(&[(9, Waking), (24, Enzyme)]),
            "first 9 minutes waking up, then the enzyme"
        );
        assert_eq!(
            told(&[(4, Waking), (14, Enzyme), (24, Food)]),
            "first 4 minutes waking up, to minute 14 the enzyme, then the food"
        );
    }
}
