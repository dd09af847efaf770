//! Reads questions, their treatments, and shared controls.

use super::notes::Notes;
use super::recipe::difference;
use super::section::Section;
use super::words::variable;
use barm_domain::cupboard::Cupboard;
use barm_domain::plan::{Control, Question, Treatment, Variable};

/// More bags of one treatment than a school has in a day.
const MOST_REPLICATES: u32 = 999;

pub(super) fn questions(
    top: &mut Section<'_>,
    cupboard: &Cupboard<'_>,
    notes: &mut Notes<'_>,
) -> Vec<Question> {
    let mut questions = Vec::new();
    for mut section in top.tables(notes, "question", "question") {
        let path = format!("{}.treatment", section.path());
        questions.push(Question {
            id: section.need_name(notes, "id", "\"food\""),
            asks: section.need_text(notes, "asks", "\"Which food feeds yeast best?\""),
            variable: section
                .need(notes, "variable", "\"food\"", variable)
                .unwrap_or(Variable::Food),
            crossed_with: section.read(notes, "crossed_with", "\"food\"", variable),
            reference: section.name(notes, "reference"),
            treatments: section
                .tables(notes, "treatment", &path)
                .into_iter()
                .map(|mut treatment| {
                    let read = Treatment {
                        name: treatment.need_name(notes, "name", "\"Maple syrup\""),
                        beside: treatment.name(notes, "beside"),
                        replicates: treatment.count(notes, "replicates", 1..=MOST_REPLICATES),
                        difference: difference(&mut treatment, cupboard, notes),
                    };
                    treatment.finish(notes);
                    read
                })
                .collect(),
            uses: section.texts(notes, "uses").unwrap_or_default(),
            replicates: section.need_count(notes, "replicates", 1..=MOST_REPLICATES),
        });
        section.finish(notes);
    }
    questions
}

pub(super) fn controls(
    top: &mut Section<'_>,
    cupboard: &Cupboard<'_>,
    notes: &mut Notes<'_>,
) -> Vec<Control> {
    let mut controls = Vec::new();
    for mut section in top.tables(notes, "control", "control") {
        controls.push(Control {
            treatment: Treatment {
                name: section.need_name(notes, "name", "\"No food\""),
                beside: None,
                replicates: None,
                difference: difference(&mut section, cupboard, notes),
            },
            per_period: section.need_count(notes, "per_period", 1..=99),
        });
        section.finish(notes);
    }
    controls
}
