//! Reads the bag list.

use super::class::MOST_GROUPS;
use super::mistake::Wrong;
use super::notes::Notes;
use super::section::Section;
use barm_domain::code::BagCode;
use barm_domain::plan::PlannedBag;

/// Reads the bags and the retired codes. The bags are called `bag[0]`, `bag[1]` … in
/// [`barm_domain::finding::Field`].
pub(super) fn bag_list(
    top: &mut Section<'_>,
    notes: &mut Notes<'_>,
) -> (Vec<PlannedBag>, Vec<String>) {
    let Some(mut list) = top.table(notes, "bag_list") else { return Default::default() };
    let mut bags = Vec::new();
    for mut section in list.tables(notes, "bags", "bag") {
        bags.push(PlannedBag {
            code: section.need(notes, "code", "\"P1-01A-C\"", code).unwrap_or_default(),
            period: section.need_name(notes, "period", "\"1\""),
            group: section.need_count(notes, "group", 0..=MOST_GROUPS),
            place: section.need_count(notes, "place", 1..=999),
            question: section.need_name(notes, "question", "\"food\""),
            treatment: section.need_name(notes, "treatment", "\"Maple syrup\""),
            replicate: section.need_count(notes, "replicate", 1..=9999),
        });
        section.finish(notes);
    }
    let mut retired = Vec::new();
    for (index, written) in list.texts(notes, "retired").unwrap_or_default().iter().enumerate()
    {
        match code(written) {
            Ok(code) => retired.push(code),
            Err(wrong) => notes.wrong(format!("bag_list.retired[{index}]"), wrong),
        }
    }
    list.finish(notes);
    (bags, retired)
}

/// The code as it is printed, however it was typed.
fn code(written: &str) -> Result<String, Wrong> {
    let code = written.parse::<BagCode>().map_err(|error| Wrong::split(&error.to_string()))?;
    Ok(code.to_string())
}
