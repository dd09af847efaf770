//! The rows of a package's tables, cell by cell.

use super::tables::{Kind, Table, YEASTS};
use crate::bundle::Refused;
use crate::readings::quoted::quoted;
use crate::rfc4180::Row;
use barm_domain::code::BagCode;
use barm_domain::shared::{
    AsideRow, BagRow, IngredientRow, Item, Lying, Measure, MeterRow, Part, ReadingRow, Rows,
    Rule, TreatmentCode, TreatmentRow,
};
use barm_science::setup::YeastKind;

/// The cells of one row.
pub(super) struct Cells<'a> {
    pub(super) file: &'a str,
    pub(super) table: &'static Table,
    pub(super) row: &'a Row,
}

impl Cells<'_> {
    fn at(&self, column: usize) -> &str {
        self.row.cell(column).trim()
    }

    fn wrong(&self, column: usize, needs: &str) -> Refused {
        let head = self.table.fields.get(column).map_or("", |field| field.name);
        let what = format!("{} stands under {head}, where {needs}", quoted(self.at(column)));
        Refused::of(self.file, what, "ask for the package again")
    }

    fn read<T: std::str::FromStr>(&self, column: usize, needs: &str) -> Result<T, Refused> {
        self.at(column).parse().map_err(|_| self.wrong(column, needs))
    }

    fn or_blank<T>(
        &self,
        column: usize,
        read: impl Fn(&Self, usize) -> Result<T, Refused>,
    ) -> Result<Option<T>, Refused> {
        if self.at(column).is_empty() { Ok(None) } else { read(self, column).map(Some) }
    }

    fn bag(&self, column: usize) -> Result<BagCode, Refused> {
        let code: BagCode = self.read(column, "the code of a bag has to be")?;
        // One bag, one way to write it.
        let same = code.to_string() == self.at(column);
        if same { Ok(code) } else { Err(self.wrong(column, "the code of a bag has to be")) }
    }

    fn treatment(&self, column: usize) -> Result<TreatmentCode, Refused> {
        self.read(column, "the code of a treatment has to be, such as T01")
    }

    fn number(&self, column: usize) -> Result<f64, Refused> {
        let number: f64 = self.read(column, "a number has to be")?;
        if number.is_finite() {
            Ok(number)
        } else {
            Err(self.wrong(column, "a number has to be"))
        }
    }

    fn whole(&self, column: usize) -> Result<u32, Refused> {
        self.read(column, "a whole number has to be")
    }

    fn small(&self, column: usize) -> Result<u16, Refused> {
        self.read(column, "a whole number has to be")
    }

    fn boolean(&self, column: usize) -> Result<bool, Refused> {
        match self.at(column) {
            "true" | "True" | "TRUE" | "1" => Ok(true),
            "false" | "False" | "FALSE" | "0" => Ok(false),
            _ => Err(self.wrong(column, "true or false has to be")),
        }
    }

    fn one_of<T>(
        &self,
        column: usize,
        all: impl IntoIterator<Item = T>,
        word: fn(&T) -> &'static str,
    ) -> Result<T, Refused> {
        let found = all.into_iter().find(|one| word(one) == self.at(column));
        found.ok_or_else(|| {
            let words = match self.table.fields.get(column).map(|field| field.kind) {
                Some(Kind::OneOf(words)) if words().len() <= 8 => words().join(", "),
                _ => "a food or an enzyme that is known here".to_owned(),
            };
            self.wrong(column, &format!("one of these has to be: {words}"))
        })
    }
}

/// Adds what a row says to the rows of its table.
pub(super) fn add(cells: &Cells<'_>, rows: &mut Rows) -> Result<(), Refused> {
    match cells.table.name {
        "treatments" => rows.treatments.push(treatment(cells)?),
        "ingredients" => rows.ingredients.push(IngredientRow {
            treatment: cells.treatment(0)?,
            part: cells.one_of(1, Part::ALL, |part| part.word())?,
            item: cells.one_of(2, Item::of(cells.at(2)), |item| item.id())?,
            amount: cells.number(3)?,
            measure: cells.one_of(4, Measure::ALL, |measure| measure.ucum())?,
        }),
        "bags" => rows.bags.push(bag(cells)?),
        "readings" => rows.readings.push(ReadingRow {
            bag: cells.bag(0)?,
            minute: cells.number(1)?,
            height_mm: cells.number(2)?,
        }),
        "set-aside" => rows.set_aside.push(AsideRow {
            bag: cells.bag(0)?,
            rule: cells.one_of(1, Rule::ALL, |rule| rule.word())?,
        }),
        _ => rows.meter.push(MeterRow {
            bag: cells.bag(0)?,
            turn: cells.or_blank(1, Cells::whole)?,
            minute: cells.or_blank(2, Cells::number)?,
            percent: cells.number(3)?,
            celsius: cells.or_blank(4, Cells::number)?,
            gas_ml: cells.number(5)?,
            air_ml: cells.number(6)?,
        }),
    }
    Ok(())
}

fn treatment(cells: &Cells<'_>) -> Result<TreatmentRow, Refused> {
    let kinds = [
        None,
        Some(YeastKind::ActiveDry),
        Some(YeastKind::Instant),
        Some(YeastKind::Compressed),
    ];
    let (_, yeast) = cells.one_of(10, YEASTS.into_iter().zip(kinds), |(word, _)| word)?;
    Ok(TreatmentRow {
        code: cells.treatment(0)?,
        question: cells.or_blank(1, Cells::small)?,
        beside: cells.or_blank(2, Cells::treatment)?,
        control: cells.boolean(3)?,
        bag_width_mm: cells.number(4)?,
        bag_height_mm: cells.number(5)?,
        card_length_mm: cells.number(6)?,
        card_width_mm: cells.number(7)?,
        water_ml: cells.number(8)?,
        water_celsius: cells.number(9)?,
        yeast,
        yeast_g: cells.number(11)?,
        lying: cells.one_of(12, Lying::ALL, |lying| lying.word())?,
        tray_celsius: cells.or_blank(13, Cells::number)?,
    })
}

fn bag(cells: &Cells<'_>) -> Result<BagRow, Refused> {
    let code = cells.bag(0)?;
    if cells.whole(1)? != u32::from(code.period()) {
        return Err(cells.wrong(1, "the period of the bag's code has to be"));
    }
    if cells.whole(2)? != u32::from(code.group()) {
        return Err(cells.wrong(2, "the group of the bag's code has to be"));
    }
    Ok(BagRow {
        code,
        treatment: cells.treatment(3)?,
        replicate: cells.whole(4)?,
        room_celsius: cells.number(5)?,
        pressure_hpa: cells.number(6)?,
    })
}
