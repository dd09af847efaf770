//! What is said beside a field.

use super::form::Section;
use super::sentence;
use barm_documents::plan_text::Mistake;
use barm_domain::finding::{Finding, Severity};

/// One thing that is said of a plan.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Said {
    /// How much it matters.
    pub(crate) severity: Severity,
    /// Its code.
    pub(crate) code: &'static str,
    /// What is the matter.
    pub(crate) message: String,
    /// What to do.
    pub(crate) fix: String,
    /// Who says so.
    pub(crate) source: Option<&'static str>,
    /// The field that it is about.
    pub(crate) at: Option<String>,
    /// Its line in the text, if it is about the text itself.
    pub(crate) line: Option<usize>,
}

pub(super) fn of_finding(finding: Finding) -> Said {
    Said {
        severity: finding.severity,
        code: finding.code,
        message: finding.message,
        fix: finding.fix,
        source: finding.source,
        at: finding.at.map(|field| field.0),
        line: None,
    }
}

pub(super) fn of_mistake(mistake: Mistake) -> Said {
    Said {
        severity: Severity::Fault,
        code: "plan-text",
        message: sentence(&mistake.what),
        fix: sentence(&mistake.fix),
        source: None,
        at: mistake.field.map(|field| field.0),
        line: Some(mistake.line),
    }
}

/// Puts each thing beside the field it is about; gives what has none.
pub(super) fn beside(sections: &mut [Section], said: Vec<Said>) -> Vec<Said> {
    let names: Vec<String> = sections
        .iter()
        .flat_map(|section| &section.tables)
        .flat_map(|table| &table.fields)
        .map(|field| field.name.clone())
        .collect();
    let mut around = Vec::new();
    for one in said {
        match one.at.as_deref().and_then(|at| place(&names, at)) {
            Some(name) => {
                let mut fields = sections
                    .iter_mut()
                    .flat_map(|section| &mut section.tables)
                    .flat_map(|table| &mut table.fields);
                if let Some(field) = fields.find(|field| field.name == name) {
                    field.said.push(one);
                }
            }
            None => around.push(one),
        }
    }
    around
}

/// The field of the form at which something is said about `at`: that field; else the first one
/// below it; else that of the table around it.
pub(crate) fn place<'n>(names: &'n [String], at: &str) -> Option<&'n str> {
    let mut at = at;
    loop {
        let below = |name: &&String| {
            name.strip_prefix(at)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
        };
        if let Some(name) =
            names.iter().find(|name| *name == at).or_else(|| names.iter().find(below))
        {
            return Some(name);
        }
        at = at.rfind(['.', '[']).map(|end| &at[..end])?;
    }
}

#[cfg(test)]
mod tests {
    use super::place;

    #[test]
    fn a_fault_stands_at_its_field_or_the_nearest() {
        let names =
            ["title", "base.water", "question[0].variable", "question[0].treatment[1].name"]
                .map(String::from);
        for (at, field) in [
            ("base.water", Some("base.water")),
            ("question[0].treatment[1]", Some("question[0].treatment[1].name")),
            ("question[0].treatment[1].food", Some("question[0].treatment[1].name")),
            ("question[0]", Some("question[0].variable")),
            ("base.extra[0].item", Some("base.water")),
            ("bag[3].code", None),
            ("", None),
        ] {
            assert_eq!(place(&names, at), field, "{at}");
        }
    }
}
