//! What a class talks about in front of its own dots and curves, in its own words.
//!
//! Which prompts its data call for is `barm_domain::discussion`'s.

use barm_documents::catalog::Catalog;
use barm_documents::sheet::Prompted;
use barm_domain::discussion::Prompt;
use barm_domain::words::tenths;

/// A prompt with the numbers that it rests on, in a language of the students.
pub(crate) fn asked(prompt: &Prompt, words: &Catalog) -> Prompted {
    let name = |treatment: &str| words.treatment(treatment);
    let say = |key: &str, values: &[(&str, &str)]| words.say_with(key, values);
    let (asks, rests_on) = match prompt {
        Prompt::See { bags, minute } => (
            words.say("prompt-see"),
            say("prompt-see-rests", &[("bags", &bags.to_string()), ("minute", &mm(*minute))]),
        ),
        Prompt::Flat { highest_mm, readable_mm } => (
            words.say("prompt-flat"),
            say(
                "prompt-flat-rests",
                &[("highest", &tenths(*highest_mm)), ("readable", &tenths(*readable_mm))],
            ),
        ),
        Prompt::OddBag(odd) => (
            words.say("prompt-odd"),
            say(
                "prompt-odd-rests",
                &[
                    ("bag", &odd.bag),
                    ("treatment", &name(&odd.treatment)),
                    ("rise", &mm(odd.rise_mm)),
                    ("low", &mm(odd.others_mm.0)),
                    ("high", &mm(odd.others_mm.1)),
                ],
            ),
        ),
        Prompt::Clear { treatment, reference, difference_mm } => {
            let more = difference_mm.value > 0.0;
            let key = if more { "prompt-clear-more" } else { "prompt-clear-less" };
            let ends = (difference_mm.low.abs(), difference_mm.high.abs());
            (
                say(key, &[("treatment", &name(treatment)), ("reference", &name(reference))]),
                say(
                    "prompt-clear-rests",
                    &[
                        ("size", &mm(difference_mm.value.abs())),
                        ("low", &mm(ends.0.min(ends.1))),
                        ("high", &mm(ends.0.max(ends.1))),
                    ],
                ),
            )
        }
        Prompt::Overlapping { treatment, reference, difference_mm, bags } => (
            say(
                "prompt-overlapping",
                &[("treatment", &name(treatment)), ("reference", &name(reference))],
            ),
            say(
                "prompt-overlapping-rests",
                &[
                    ("bags", &bags.0.to_string()),
                    ("beside", &bags.1.to_string()),
                    ("low", &mm(difference_mm.low)),
                    ("high", &mm(difference_mm.high)),
                ],
            ),
        ),
        Prompt::Reversed { treatment, reference, foretold_mm, found_mm } => (
            words.say("prompt-reversed"),
            say(
                "prompt-reversed-rests",
                &[
                    ("treatment", &name(treatment)),
                    ("reference", &name(reference)),
                    ("foretold", &mm(*foretold_mm)),
                    ("found", &mm(found_mm.value)),
                ],
            ),
        ),
        Prompt::Spread { treatment, between_mm, bags } => (
            words.say("prompt-spread"),
            say(
                "prompt-spread-rests",
                &[
                    ("bags", &bags.to_string()),
                    ("treatment", &name(treatment)),
                    ("low", &mm(between_mm.0)),
                    ("high", &mm(between_mm.1)),
                ],
            ),
        ),
        Prompt::SetAside { bags } => {
            let listed = bags.iter().map(|(bag, rule)| format!("{bag}: {rule}"));
            (words.say("prompt-aside"), listed.collect::<Vec<_>>().join("; "))
        }
        Prompt::Control { reference, mean_mm } => (
            say("prompt-control", &[("reference", &name(reference))]),
            say("prompt-control-rests", &[("mean", &tenths(*mean_mm))]),
        ),
        Prompt::Claim => (words.say("prompt-claim"), String::new()),
        Prompt::Next => (words.say("prompt-next"), String::new()),
    };
    Prompted { asks, rests_on }
}

/// Whole millimeters, or minutes; never `-0`.
fn mm(value: f64) -> String {
    format!("{:.0}", value.round() + 0.0)
}
