//! A question's verdicts in words, for the wall and for a group.

use crate::desk::Catalog;
use crate::desk::room::opened::Answered;

/// A verdict.
pub(in crate::web) struct Said<'a> {
    /// The treatment that it is about, by its name in the plan.
    pub(super) treatment: &'a str,
    /// In a word or two.
    pub(in crate::web) verdict: String,
    /// In a sentence.
    pub(in crate::web) says: String,
    /// That it hangs on bags which are set aside, where it does.
    pub(in crate::web) hangs: Option<String>,
}

/// All verdicts of a question.
pub(in crate::web) fn verdicts<'a>(
    answer: &'a Answered,
    words: &'static Catalog,
) -> impl Iterator<Item = Said<'a>> {
    answer.told.iter().map(|(treatment, reference, told, hangs)| {
        let names = [words.treatment(treatment), words.treatment(reference)];
        let named = [("treatment", names[0].as_str()), ("reference", names[1].as_str())];
        Said {
            treatment,
            verdict: words.say(&format!("found-{}", told.word())),
            says: words.say_with(&format!("found-{}-says", told.word()), &named),
            hangs: hangs.then(|| words.say("found-hangs")),
        }
    })
}

/// What else is to be said: which treatments wait for their turn, or that there is nothing yet.
pub(in crate::web) fn waiting(answer: &Answered, words: &'static Catalog) -> Option<String> {
    let waits: Vec<String> = answer.not_run.iter().map(|name| words.treatment(name)).collect();
    if waits.is_empty() {
        return answer.told.is_empty().then(|| words.say("found-nothing"));
    }
    Some(words.say_with("found-not-run", &[("treatments", &waits.join(", "))]))
}
