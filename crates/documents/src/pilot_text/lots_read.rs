//! Reads the file of lots.

use crate::plan_text::Mistake;
use crate::plan_text::mistake::Wrong;
use crate::plan_text::notes::Notes;
use crate::plan_text::section::Section;
use crate::plan_text::syntax;
use crate::plan_text::words::{YEASTS, choose, within};
use barm_domain::amount::{Amount, AmountKind};
use barm_domain::cupboard::Cupboard;
use barm_domain::pilot::{
    BagKind, EnzymeLot, Lot, Lots, Numbers, Part, Teaspoon, YeastLot, impossible,
};
use barm_domain::plan::{BagChoice, CardChoice, YeastKind};
use barm_science::meter::MeterPosterior;
use jiff::civil::Date;

/// The format that is written.
pub(super) const FORMAT: u32 = 1;

/// What was read from a file of lots.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadLots {
    /// The lots, if there is no mistake.
    pub lots: Option<Lots>,
    /// Every mistake, in the order of the file.
    pub mistakes: Vec<Mistake>,
}

/// Reads the file of lots; takes any bytes.
pub fn read_lots(bytes: &[u8]) -> ReadLots {
    let text = match syntax::text_of(bytes) {
        Ok(text) => text,
        Err((at, wrong)) => {
            let bytes = bytes.strip_prefix(&[0xEF, 0xBB, 0xBF]).unwrap_or(bytes);
            let sound = bytes.get(..at).and_then(|sound| std::str::from_utf8(sound).ok());
            let mut notes = Notes::on(sound.unwrap_or_default());
            notes.wrong_at(at, None, wrong);
            return ReadLots { lots: None, mistakes: notes.done().0 };
        }
    };
    let mut notes = Notes::on(text);
    let mended = syntax::mend(text, &mut notes);
    let document = syntax::table(&mended);
    let mut top = Section::new(String::new(), document.get_ref(), 0, &mut notes);
    let format = top.need_count(&mut notes, "format", 0..=u32::MAX);
    if format > FORMAT {
        let what = format!(
            "this file was written by a newer Barm (format {format}); this one reads up to format \
             {FORMAT} and would lose what it does not know"
        );
        let fix = "open it with the newer Barm, or update this one";
        top.wrong(&mut notes, "format", Wrong::new(what, fix));
        return ReadLots { lots: None, mistakes: notes.done().0 };
    }
    let lots = Lots {
        yeast: lots(&mut top, &mut notes, "yeast", yeast),
        bags: lots(&mut top, &mut notes, "bags", bags),
        enzymes: lots(&mut top, &mut notes, "enzyme", enzyme),
        meters: lots(&mut top, &mut notes, "meter", meter),
    };
    top.finish(&mut notes);
    let mistakes = notes.done().0;
    ReadLots { lots: mistakes.is_empty().then_some(lots), mistakes }
}

fn lots<T>(
    top: &mut Section<'_>,
    notes: &mut Notes<'_>,
    key: &'static str,
    found: fn(&mut Section<'_>, &mut Notes<'_>) -> Option<T>,
) -> Vec<Lot<T>> {
    let mut all = Vec::new();
    for mut section in top.tables(notes, key, key) {
        let name = section.need_name(notes, "lot", "\"jar of March\"");
        let date = section.need(notes, "date", "2027-03-02", |text| {
            text.parse::<Date>().map_err(|_| {
                Wrong::new(format!("“{text}” is not a date"), "write it like 2027-03-02")
            })
        });
        let in_use = section.flag(notes, "in_use").unwrap_or(true);
        let parts = section.texts(notes, "measured").unwrap_or_default();
        let parts = parts.iter().filter_map(|word| part(&section, notes, word)).collect();
        let found = found(&mut section, notes);
        section.finish(notes);
        if let (Some(date), Some(found)) = (date, found) {
            all.push(Lot { name, date, in_use, parts, found });
        }
    }
    all
}

fn part(section: &Section<'_>, notes: &mut Notes<'_>, word: &str) -> Option<Part> {
    let read = choose(word, &Part::ALL.map(|part| (part.word(), part)));
    read.map_err(|wrong| section.wrong(notes, "measured", wrong)).ok()
}

fn yeast(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Option<YeastLot> {
    let kind =
        section.need(notes, "kind", "\"instant\"", |text| choose(text, YEASTS)).flatten();
    let kind = kind.unwrap_or(YeastKind::Instant);
    let grams = section.read(notes, "teaspoon", "\"3.1 g\"", |text| mass(text, 0.5, 15.0));
    let grams_sd =
        section.read(notes, "teaspoon_doubt", "\"0.05 g\"", |text| mass(text, 1e-6, 5.0));
    let scatter = section.read(notes, "teaspoon_scatter", "0.1", |text| {
        within(number(text)?, 0.0..=1.0, "", text)
    });
    let teaspoon = match (grams, grams_sd, scatter) {
        (Some(grams), Some(grams_sd), Some(scatter)) => {
            Some(Teaspoon { grams, grams_sd, scatter })
        }
        (None, None, None) => None,
        _ => {
            for key in ["teaspoon", "teaspoon_doubt", "teaspoon_scatter"] {
                if !section.has(key) {
                    section.missing(notes, key, "… as the two others have it");
                }
            }
            None
        }
    };
    Some(YeastLot { kind, teaspoon, numbers: numbers(section, notes) })
}

fn bags(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Option<BagKind> {
    let bag = section.need(notes, "bag", "\"sandwich\"", |text| Ok(BagChoice::parse(text)?));
    let card = section.need(notes, "card", "\"5 x 8 in\"", |text| Ok(CardChoice::parse(text)?));
    let numbers = numbers(section, notes);
    Some(BagKind { bag: bag?, card: card?, numbers })
}

fn enzyme(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Option<EnzymeLot> {
    let product = section
        .need(notes, "product", "\"glucoamylase powder\"", |text| Ok(Cupboard::enzyme(text)?));
    let numbers = numbers(section, notes);
    Some(EnzymeLot { product: product?, numbers })
}

fn meter(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Option<MeterPosterior> {
    let mut real = |key, example| {
        section.need(notes, key, example, |text| within(number(text)?, -5.0..=5.0, "", text))
    };
    let (log_gain, log_gain_sd) = (real("log_gain", "-0.2"), real("log_gain_doubt", "0.1"));
    let (zero, zero_sd) = (real("zero_percent", "0.0"), real("zero_doubt", "0.005"));
    let found = MeterPosterior {
        log_gain: log_gain?,
        log_gain_sd: log_gain_sd?,
        zero: zero?,
        zero_sd: zero_sd?,
        checked: true,
    };
    if found.is_possible() {
        return Some(found);
    }
    let what = "no check of a meter leaves such numbers";
    let fix = "run the pilot again, or take this table out";
    section.wrong(notes, "log_gain", Wrong::new(what, fix));
    None
}

/// The numbers of a lot, each with the covariances of those above it.
fn numbers(section: &mut Section<'_>, notes: &mut Notes<'_>) -> Numbers {
    let mut all = Numbers::default();
    let path = section.field("numbers");
    for mut one in section.tables(notes, "numbers", &path) {
        let name = one.need_name(notes, "name", "\"wake\"");
        let mean = one.need(notes, "mean", "0.0", number);
        let with = one.numbers(notes, "with");
        let at = all.names.len();
        match with {
            Some(with) if with.len() == at + 1 => {
                for (row, entry) in all.covariance.iter_mut().zip(&with) {
                    row.push(*entry);
                }
                all.covariance.push(with);
                all.names.push(name);
                all.means.push(mean.unwrap_or(0.0));
            }
            Some(with) => {
                let what =
                    format!("with has {} numbers, and {} are wanted", with.len(), at + 1);
                let fix = "give one for each number above, and the own variance last";
                one.wrong(notes, "with", Wrong::new(what, fix));
            }
            None if !one.has("with") => one.missing(notes, "with", "[1.0]"),
            None => {}
        }
        one.finish(notes);
    }
    if let Some(what) = impossible(&all).filter(|_| section.all_read(notes)) {
        let fix = "run the pilot again, or take these numbers out";
        section.wrong(notes, "numbers", Wrong::new(what, fix));
    }
    all
}

fn number(text: &str) -> Result<f64, Wrong> {
    let read = text.parse::<f64>().ok().filter(|value| value.is_finite());
    read.ok_or_else(|| {
        Wrong::new(format!("“{text}” is not a number"), "write it like 0.25, without a unit")
    })
}

fn mass(text: &str, low: f64, high: f64) -> Result<f64, Wrong> {
    let amount = Amount::parse(text)?;
    if amount.kind != AmountKind::Mass {
        let what = format!("“{text}” is not a mass");
        return Err(Wrong::new(what, "write grams, such as 3.2 g"));
    }
    within(amount.value, low..=high, "g", text)
}
