//! Every code that a check may give, with what it means.

use super::cautions::{ANSWER_TO_NOTHING, CAUTION_RULES};
use crate::finding::Severity;

/// A code that a check may give.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Code {
    /// The code.
    pub code: &'static str,
    /// How much it usually matters.
    pub severity: Severity,
    /// What it means.
    pub means: &'static str,
}

const fn fault(code: &'static str, means: &'static str) -> Code {
    Code { code, severity: Severity::Fault, means }
}

const fn warning(code: &'static str, means: &'static str) -> Code {
    Code { code, severity: Severity::Warning, means }
}

const fn note(code: &'static str, means: &'static str) -> Code {
    Code { code, severity: Severity::Note, means }
}

/// Codes of faults, warnings and notes; those of cautions stand in [`CAUTION_RULES`].
pub const CODES: &[Code] = &[
    fault("two-variables", "two bags that are compared differ in more than the question asks"),
    fault("other-variable", "the bags differ, but not in what the question asks"),
    fault("same-as-reference", "a treatment is made just like what it is compared with"),
    fault("no-reference", "a treatment is compared with nothing"),
    fault(
        "no-matching-reference",
        "a crossed treatment has no bag that differs only in the question's variable",
    ),
    fault("one-level", "a question with one kind of bag"),
    fault("levels-not-distinct", "two treatments of a question are made alike"),
    warning(
        "spoons-hide-mass",
        "one spoon of two foods weighs differently, so mass changes with the food",
    ),
    note("more-liquid", "an enzyme liquid adds over 5 % to the water of one of two bags"),
    fault("no-gas", "no bag of a question can make gas"),
    fault("blind-card", "the card is so small for the bag that it does not see the first gas"),
    fault(
        "no-control",
        "no bag with yeast and no food; a warning where no question is about food or enzyme",
    ),
    fault(
        "no-enzyme-control",
        "no bag with yeast and an enzyme that carries sugar, but no food",
    ),
    warning("no-yeastless-control", "no bag with food and no yeast"),
    warning("period-without-control", "a period without a control bag"),
    fault("no-replicate", "fewer than two bags of a kind"),
    note("few-replicates", "two or three bags of a kind show only a big effect"),
    fault("apart", "a treatment and its reference share no period"),
    fault("one-group", "one group makes all bags of a treatment and none of its reference"),
    note("no-bag-list", "the plan has no bag list yet"),
    fault("unknown-period", "a bag of a period that the plan does not have"),
    fault("unknown-group", "a bag of a group that its period does not have"),
    fault("unknown-treatment", "a bag with something that its question does not ask for"),
    fault("wrong-code", "a bag code whose check character does not fit"),
    fault("used-code", "a code that was once another bag's"),
    fault("same-code", "two bags with one code"),
    fault("same-place", "two bags at one place of a bench"),
    warning("missing-bags", "fewer bags on the list than the plan asks for"),
    fault("no-day", "the plan has no school day"),
    fault("cannot-make", "a recipe that cannot be weighed or measured out"),
    fault("cannot-foresee", "a recipe that the bag model refuses"),
    fault("too-few-readings", "time for fewer than three readings"),
    warning("hurried-start", "less than 8 min before the zero reading"),
    warning("hurried-end", "less than 4 min to clear up"),
    warning("wet-too-soon", "the yeast is wetted before the bell"),
    fault("periods-overlap", "two periods of a day overlap"),
    fault("dotted-period", "a period whose name is nothing but a dot or two"),
    fault("past-midnight", "a period would run past midnight"),
    warning("short-changeover", "less than 3 min between two periods"),
    warning("idle-group", "a group has no bag to make"),
    warning("thin-groups", "a period has fewer students than groups"),
    warning(
        "crowded-group",
        "a group has more bags than it can read, at half a minute each, before they are due again",
    ),
    warning("few-rulers", "fewer rulers than groups"),
    fault("few-goggles", "fewer goggles than students"),
    warning("no-thermometer", "no thermometer"),
    warning("no-balance", "grams, but no balance"),
    warning(
        "few-meters",
        "no two kinds of bag that are compared have a turn at the meter after their last reading; a note where some kinds have none",
    ),
    fault("water-scalds", "water above 60 °C"),
    warning(
        "water-hot",
        "water above 50 °C kills yeast; a note where temperature is the question",
    ),
    warning("water-cool", "water below 27 °C; a note where temperature is the question"),
    fault("nothing-to-cut", "an enzyme whose food holds nothing that it cuts"),
    fault("overfull", "a bag may be over 80 % full before the last reading"),
    note("vent", "when the first bag must be opened if it were left shut"),
    warning(
        "nothing-shows",
        "no difference of a question is likely to be read before the bell",
    ),
    note("letters-missing", "a text has letters that no page can print"),
    warning(ANSWER_TO_NOTHING, "an answer to a caution that does not exist"),
    note("may-not-show", "one difference is not likely to be read before the bell"),
];

/// Every code of faults, warnings, notes and cautions.
pub fn all() -> Vec<Code> {
    let cautions = CAUTION_RULES.iter().map(|rule| Code {
        code: rule.code,
        severity: Severity::Caution,
        means: rule.trigger,
    });
    CODES.iter().copied().chain(cautions).collect()
}
