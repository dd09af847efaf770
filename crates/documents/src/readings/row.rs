//! One row after another, until the file is read.

use super::cells::Cells;
use super::codes::Codes;
use super::context::{Context, is_no, not_a_time};
use super::heading::Column;
use super::height::{HeightCell, LengthUnit, height};
use super::meter::Metering;
use super::quoted::quoted;
use super::settle::settle;
use super::sheet::{Layout, Sheet};
use super::table::Row;
use super::time::{ClockTime, TimeColumn, When, time};
use super::typed::Typed;
use super::{ReadingsFile, ZeroTime};
use barm_domain::plan::{Plan, PlannedBag};
use barm_domain::reading::{Rejected, Remark, SetAside};
use std::collections::BTreeMap;

/// What was taken from the rows so far.
pub(super) struct Taking<'a> {
    plan: &'a Plan,
    codes: &'a Codes<'a>,
    typed: Vec<Typed>,
    /// Times of day of zero readings by bag.
    zero_times: BTreeMap<usize, ClockTime>,
    set_aside: Vec<SetAside>,
    metering: Metering,
    remarks: Vec<Remark>,
    cells: Cells,
    marks: usize,
    assumed_mm: usize,
    /// What was rejected.
    pub(super) rejected: Vec<Rejected>,
    /// What a person should know.
    pub(super) notes: Vec<String>,
}

impl<'a> Taking<'a> {
    /// Nothing taken yet.
    pub(super) fn new(plan: &'a Plan, codes: &'a Codes<'a>) -> Self {
        Self {
            plan,
            codes,
            typed: Vec::new(),
            zero_times: BTreeMap::new(),
            set_aside: Vec::new(),
            metering: Metering::default(),
            remarks: Vec::new(),
            cells: Cells::default(),
            marks: 0,
            assumed_mm: 0,
            rejected: Vec::new(),
            notes: Vec::new(),
        }
    }

    /// Says what has to be said about a new line of headings.
    pub(super) fn start(&mut self, sheet: &Sheet, times: Option<(usize, TimeColumn)>) {
        for (column, heading) in sheet.columns.iter().zip(&sheet.headings) {
            if *column == Column::Unused && !heading.is_empty() {
                self.notes.push(format!("The column {} was not read.", quoted(heading)));
            }
        }
        let either = sheet.columns.contains(&Column::Time(TimeColumn::Either));
        if either && matches!(times, Some((_, TimeColumn::Minutes))) {
            self.notes.push(
                "A time of 0:00 stands in the file, so its times were read as minutes and \
                 seconds."
                    .to_owned(),
            );
        }
    }

    /// Takes one row.
    pub(super) fn row(&mut self, row: &Row, sheet: &Sheet, times: Option<(usize, TimeColumn)>) {
        self.cells_without_heading(row, sheet);
        let context = match Context::of(row, sheet, times) {
            Ok(context) => context,
            Err(reason) => return self.reject_row(row, sheet, &reason),
        };
        if sheet.layout == Layout::BagsAcross {
            return self.bags_across(&context);
        }
        match self.metering.air(&context, self.plan) {
            Ok(true) => return,
            Ok(false) => {}
            Err(reason) => return self.reject_row(row, sheet, &reason),
        }
        match context.bag(self.codes) {
            Ok(place) => self.one_bag(place, &context),
            Err(reason) => self.reject_row(row, sheet, &reason),
        }
    }

    fn one_bag(&mut self, bag: usize, context: &Context<'_>) {
        let before = self.typed.len();
        for (place, column) in context.sheet.columns.iter().enumerate() {
            let cell = context.row.cell(place);
            match column {
                Column::Height(unit) => {
                    self.height(bag, place, *unit, context.when.as_ref(), context);
                }
                Column::Zero(unit) => {
                    let zero = Ok(When::Minute(0.0));
                    self.height(bag, place, *unit, Some(&zero), context);
                }
                Column::At(when, unit) => {
                    let at = Ok(when.clone());
                    self.height(bag, place, *unit, Some(&at), context);
                }
                Column::ZeroTime if !cell.is_empty() => {
                    self.zero_time(bag, cell, context.row.line);
                }
                Column::Rule if !is_no(cell) => self.set_aside.push(SetAside {
                    bag: self.code(bag),
                    rule: cell.to_owned(),
                    line: context.row.line,
                }),
                _ => {}
            }
        }
        let code = self.code(bag);
        if let Err(reason) = self.metering.bag(&code, context) {
            self.rejected.push(Rejected { line: context.row.line, reason });
        }
        let Some(event) = &context.event else { return };
        match &mut self.typed[before..] {
            // Beside several heights of one row a note belongs to the bag, not to one of them.
            [only] if context.sheet.layout == Layout::Long => only.event = Some(event.clone()),
            _ => {
                let minute = match &context.when {
                    Some(Ok(When::Minute(minute))) => Some(*minute),
                    _ => None,
                };
                let bag = self.code(bag);
                let line = context.row.line;
                self.remarks.push(Remark { bag, minute, says: event.clone(), line });
            }
        }
    }

    fn bags_across(&mut self, context: &Context<'_>) {
        for (place, column) in context.sheet.columns.iter().enumerate() {
            if let Column::OfBag(bag, unit) = column {
                self.height(*bag, place, *unit, context.when.as_ref(), context);
            }
        }
        if let Some(event) = &context.event {
            self.notes.push(format!(
                "Line {}: the note {} stands beside no single bag.",
                context.row.line,
                quoted(event)
            ));
        }
    }

    fn height(
        &mut self,
        bag: usize,
        place: usize,
        column_unit: Option<LengthUnit>,
        when: Option<&Result<When, String>>,
        context: &Context<'_>,
    ) {
        let cell = context.row.cell(place);
        let line = context.row.line;
        if context.row.has_stray_quote(place) {
            let reason = format!("{} has a quotation mark too many or too few", quoted(cell));
            return self.reject_cell(line, reason);
        }
        let mm = match height(cell, context.unit.or(column_unit)) {
            HeightCell::Blank => {
                self.cells.blank += 1;
                return;
            }
            HeightCell::Mark => {
                self.cells.blank += 1;
                self.marks += 1;
                return;
            }
            HeightCell::Wrong(reason) => {
                let beside = match context.sheet.layout {
                    Layout::Long | Layout::Metered => String::new(),
                    Layout::Wide | Layout::BagsAcross => {
                        let heading = context.sheet.headings.get(place).map_or("", |h| h);
                        format!("in the column {}: ", quoted(heading))
                    }
                };
                return self.reject_cell(line, format!("{beside}{reason}"));
            }
            HeightCell::Height { mm, assumed } => {
                self.assumed_mm += usize::from(assumed);
                mm
            }
        };
        match when {
            Some(Ok(when)) => self.typed.push(Typed {
                bag,
                when: when.clone(),
                mm,
                line,
                event: None,
                from_zero_column: matches!(context.sheet.columns[place], Column::Zero(_)),
            }),
            Some(Err(reason)) => self.reject_cell(line, reason.clone()),
            None => self.reject_cell(
                line,
                format!("no time stands beside the height {}", quoted(cell)),
            ),
        }
    }

    fn zero_time(&mut self, bag: usize, cell: &str, line: u64) {
        match time(cell, TimeColumn::Clock) {
            Some(When::Clock(clock)) => {
                let known = self.zero_times.entry(bag).or_insert_with(|| clock.clone());
                if *known != clock {
                    let reason = format!(
                        "{} has another time of its zero reading on an earlier line than {}",
                        self.code(bag),
                        quoted(cell)
                    );
                    self.rejected.push(Rejected { line, reason });
                }
            }
            _ => {
                let reason = not_a_time(cell, TimeColumn::Clock);
                self.rejected.push(Rejected { line, reason });
            }
        }
    }

    /// Cells that stand under no heading are listed, each of them.
    fn cells_without_heading(&mut self, row: &Row, sheet: &Sheet) {
        for (place, cell) in row.cells.iter().enumerate() {
            let headed = sheet.headings.get(place).is_some_and(|heading| !heading.is_empty());
            if !headed && !cell.is_empty() {
                self.reject_cell(row.line, format!("{} stands under no heading", quoted(cell)));
            }
        }
    }

    fn reject_cell(&mut self, line: u64, reason: String) {
        self.cells.rejected += 1;
        self.rejected.push(Rejected { line, reason });
    }

    /// Lists a row once, and counts its heights.
    pub(super) fn reject_row(&mut self, row: &Row, sheet: &Sheet, reason: &str) {
        for (place, column) in sheet.columns.iter().enumerate() {
            if column.holds_heights() {
                match height(row.cell(place), None) {
                    HeightCell::Blank | HeightCell::Mark => self.cells.blank += 1,
                    _ => self.cells.rejected += 1,
                }
            }
        }
        self.rejected.push(Rejected { line: row.line, reason: reason.to_owned() });
    }

    fn code(&self, bag: usize) -> String {
        self.codes.bag(bag).map(|bag: &PlannedBag| bag.code.clone()).unwrap_or_default()
    }

    /// Settles the times and hands everything over.
    pub(super) fn finish(mut self, file: &mut ReadingsFile) {
        let settled = settle(std::mem::take(&mut self.typed), &self.zero_times, self.plan);
        self.cells.taken += settled.readings.len() + settled.repeated_zeros;
        self.cells.rejected += settled.rejected.len();
        self.rejected.extend(settled.rejected);
        self.remarks.extend(settled.remarks);
        self.notes.extend(settled.notes);
        if self.assumed_mm > 0 {
            self.notes.push(format!(
                "{} heights have no unit, in their cell or in their heading; they were read as \
                 millimeters.",
                self.assumed_mm
            ));
        }
        if self.marks > 0 {
            let marks = self.marks;
            self.notes.push(format!("{marks} cells hold a dash or n/a and count as not read."));
        }
        let clocks = settled.zero_times.iter().map(|(bag, clock)| ZeroTime {
            bag: self.code(*bag),
            seconds: clock.seconds,
            half_known: clock.half_known,
        });
        file.zero_times = clocks.collect();
        file.readings = settled.readings;
        file.set_aside = self.set_aside;
        file.meter = self.metering.readings;
        file.blanks = self.metering.blanks;
        file.remarks = self.remarks;
        file.rejected.extend(self.rejected);
        file.notes.extend(self.notes);
        file.cells = self.cells;
    }
}
