//! Reads a plan file.

use super::mistake::Mistake;
use super::notes::Notes;
use super::places::Places;
use super::section::Section;
use super::words::{inquiry, round, within};
use super::{
    bags, class, label, measurable, names, question, recipe, references, supply, syntax,
    upgrade,
};
use barm_domain::amount::{millimeters, share};
use barm_domain::cupboard::Cupboard;
use barm_domain::pilot::Known;
use barm_domain::plan::{Inquiry, Plan};

/// What was read from a plan file.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// The plan, if there is no mistake.
    pub plan: Option<Plan>,
    /// Whether the file is no text or no TOML, so that no plan can be made out at all.
    pub unreadable: bool,
    /// Every mistake, in the order of the file.
    pub mistakes: Vec<Mistake>,
    /// Where each field stands.
    pub places: Places,
    /// The file's format number, if it is older than today's: saving will upgrade it.
    pub older_format: Option<u32>,
}

/// The smallest difference in rise that counts as readable, where the plan does not say (mm): a
/// difference of two rises read by ruler carries about ±2 mm.
const READABLE_MM: f64 = 3.0;
/// Spare where the plan does not say; common practice, no source.
const SPARE: f64 = 0.10;

/// Reads a plan from the bytes of a file.
///
/// Takes any bytes. A byte order mark and Windows line ends are passed over.
pub fn read(bytes: &[u8]) -> Read {
    read_with(bytes, false)
}

/// [`read`], where bags of the list may be of periods, groups, questions and treatments that are no
/// longer in the plan: for whoever brings the list in step.
pub fn read_with_old_list(bytes: &[u8]) -> Read {
    read_with(bytes, true)
}

fn read_with(bytes: &[u8], old_list: bool) -> Read {
    match syntax::text_of(bytes) {
        Ok(text) => read_text(text, old_list),
        Err((at, wrong)) => {
            let bytes = bytes.strip_prefix(&[0xEF, 0xBB, 0xBF]).unwrap_or(bytes);
            let sound = bytes.get(..at).and_then(|sound| std::str::from_utf8(sound).ok());
            let mut notes = Notes::on(sound.unwrap_or_default());
            notes.wrong_at(at, None, wrong);
            refused(notes, true)
        }
    }
}

fn refused(notes: Notes<'_>, unreadable: bool) -> Read {
    let (mistakes, places) = notes.done();
    Read { plan: None, unreadable, mistakes, places, older_format: None }
}

fn read_text(text: &str, old_list: bool) -> Read {
    let mut notes = Notes::on(text);
    let mended = syntax::mend(text, &mut notes);
    let mut document = syntax::table(&mended);
    let format = match upgrade::format_of(document.get_ref(), &notes) {
        Ok(format) => format,
        Err((at, wrong)) => {
            notes.wrong_at(at, Some("format"), wrong);
            let unreadable = notes.broken;
            return refused(notes, unreadable);
        }
    };
    upgrade::upgrade(document.get_mut(), format);
    let plan = plan(document.get_ref(), &mut notes);
    // A line that was left out may have held the name that another line refers to.
    if !notes.broken {
        names::check(&plan, &mut notes);
        references::check(&plan, old_list, &mut notes);
        measurable::check(&plan, &mut notes);
    }
    let unreadable = notes.broken;
    let (mistakes, places) = notes.done();
    let plan = mistakes.is_empty().then_some(plan);
    let older_format = (format < upgrade::FORMAT).then_some(format);
    Read { plan, unreadable, mistakes, places, older_format }
}

fn plan(table: &toml::de::DeTable<'_>, notes: &mut Notes<'_>) -> Plan {
    let mut top = Section::new(String::new(), table, 0, notes);
    top.count(notes, "format", 0..=upgrade::FORMAT);
    let label_foods = label::label_foods(&mut top, notes);
    let cupboard = Cupboard::with(&label_foods);
    let base = match top.table(notes, "base") {
        Some(mut section) => {
            let base = recipe::base(&mut section, &cupboard, notes);
            section.finish(notes);
            base
        }
        None => {
            if !top.has("base") {
                top.missing(notes, "base", "…, a table that starts with [base]");
            }
            recipe::none()
        }
    };
    let (bags, retired_codes) = bags::bag_list(&mut top, notes);
    let plan = Plan {
        title: top.need_text(notes, "title", "\"Which food feeds yeast best?\""),
        school: top.text(notes, "school"),
        invented: top.flag(notes, "invented").unwrap_or(false),
        big_question: top.need_text(notes, "big_question", "\"Which food feeds yeast best?\""),
        grade: need_grade(&mut top, notes),
        inquiry: top.read(notes, "inquiry", "\"guided\"", inquiry).unwrap_or(Inquiry::Guided),
        round: top.read(notes, "round", "\"only\"", round).unwrap_or_default(),
        standards: class::standards(&mut top, notes),
        days: class::days(&mut top, notes),
        periods: class::periods(&mut top, notes),
        group_settings: class::groups(&mut top, notes),
        readable_mm: top
            .read(notes, upgrade::READABLE_DIFFERENCE, "\"3 mm\"", |text| {
                within(millimeters(text)?, 0.5..=50.0, "mm", text)
            })
            .unwrap_or(READABLE_MM),
        spare: top
            .read(notes, "spare", "\"10 %\"", |text| {
                within(share(text)?, 0.0..=1.0, "(0 % to 100 %)", text)
            })
            .unwrap_or(SPARE),
        set_aside_rules: class::set_aside_rules(&mut top, notes),
        circumstances: class::circumstances(&mut top, notes),
        answered: class::answered(&mut top, notes),
        base: base.0,
        timing: base.1,
        questions: question::questions(&mut top, &cupboard, notes),
        controls: question::controls(&mut top, &cupboard, notes),
        materials: supply::materials(&mut top, &cupboard, notes),
        equipment: supply::equipment(&mut top, notes),
        label_foods: label_foods.clone(),
        bags,
        retired_codes,
        known: Known::default(),
    };
    top.finish(notes);
    plan
}

fn need_grade(top: &mut Section<'_>, notes: &mut Notes<'_>) -> u8 {
    if !top.has("grade") {
        top.missing(notes, "grade", "8");
    }
    class::grade(top, notes).unwrap_or(8)
}
