//! The sheet as a form: a table for each part, its rows those of the pilot and those that were typed.

use super::act::Faults;
use crate::desk::pilot::{Pilot, tables};
use crate::desk::{Wording, say};
use barm_documents::pilot_text::TypedSheet;
use barm_domain::amount::number;
use barm_domain::pilot::Part;

/// One field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Field {
    /// Its id, which is its name in the form.
    pub(crate) id: String,
    /// What it is, for whoever does not see where it stands.
    pub(crate) label: String,
    /// What stands in it.
    pub(crate) value: String,
    /// What is wrong with it and what to do.
    pub(crate) fault: Option<String>,
}

/// A table of fields.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Table {
    /// What it is, where the part has more than one.
    pub(crate) name: String,
    /// Over its columns.
    pub(crate) heads: Vec<String>,
    /// What stands before a row, and its fields.
    pub(crate) rows: Vec<(Option<String>, Vec<Field>)>,
    /// Whether it may well stay empty.
    pub(crate) spare: bool,
}

/// How a part stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum PartStands {
    /// Nothing was typed.
    Empty,
    /// What stands there is kept.
    Kept,
    /// What stands there is not kept, or not as it stands there.
    NotKept,
}

/// One part of the sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct PartForm {
    /// Which.
    pub(crate) part: Part,
    /// What it is called.
    pub(crate) name: String,
    /// How it is done.
    pub(crate) how: String,
    /// Its tables.
    pub(crate) tables: Vec<Table>,
    /// How it stands.
    pub(crate) stands: PartStands,
}

/// A form that is being laid out.
pub(super) struct Form<'a> {
    pub(super) w: Wording,
    pub(super) pilot: &'a Pilot,
    pub(super) sheet: &'a TypedSheet,
    pub(super) kept: &'a TypedSheet,
    pub(super) faults: &'a Faults,
}

/// Rows of a table: the number in the ids, and what says where it is read.
type Rows = Vec<(usize, String)>;

impl Form<'_> {
    fn field(&self, id: String, label: String, usual: &str) -> Field {
        let typed = self.sheet.get(&id);
        let value = if typed.is_empty() { usual } else { typed }.to_owned();
        Field { fault: self.faults.cells.get(&id).cloned(), label, value, id }
    }

    /// What is written once: day, room, and what the lots are called.
    pub(super) fn heads(&self, today: &str) -> Vec<Field> {
        let w = self.w;
        let mut all = vec![
            self.field("date".into(), say!(w, "pilot-date"), today),
            self.field("room".into(), say!(w, "pilot-room"), ""),
        ];
        let protocol = &self.pilot.protocol;
        if !protocol.bags.is_empty() || protocol.spoons.is_some() {
            all.push(self.field("yeast".into(), say!(w, "pilot-yeast-lot"), ""));
        }
        all.push(self.field("bags".into(), say!(w, "pilot-bag-lot"), ""));
        if protocol.bags.len() > 1 {
            all.push(self.field("enzyme".into(), say!(w, "pilot-enzyme-lot"), ""));
        }
        if protocol.meter.is_some() {
            all.push(self.field("meter".into(), say!(w, "pilot-meter-name"), ""));
        }
        all
    }

    /// Every part that this pilot has.
    pub(super) fn parts(&self) -> Vec<PartForm> {
        let w = self.w;
        let hows = tables(&self.pilot.protocol);
        let how = |typed: &str| {
            let own = hows.iter().find(|table| table.typed.starts_with(typed));
            own.map(|table| (table.name.clone(), table.how.clone()))
        };
        let mut all = Vec::new();
        if let Some(of) = how("spoon") {
            all.push(self.part(Part::Spoons, of, vec![self.spoons()]));
        }
        if let Some(of) = how("cooling") {
            let minutes =
                self.pilot.protocol.dummy.minutes.iter().map(u32::to_string).collect();
            let heads = [say!(w, "pilot-minute"), say!(w, "pilot-temperature")];
            all.push(self.part(Part::Dummy, of, vec![self.pairs("cooling", minutes, &heads)]));
        }
        if let (Some(of), Some(syringe)) = (how("syringe"), &self.pilot.protocol.syringe) {
            let volumes = syringe.volumes_ml.iter().map(|volume| format!("{volume:.0}"));
            let volumes = std::iter::once("0".to_owned()).chain(volumes).collect();
            let heads = [say!(w, "pilot-air"), say!(w, "pilot-height")];
            all.push(self.part(
                Part::Syringe,
                of,
                vec![self.pairs("syringe", volumes, &heads)],
            ));
        }
        if !self.pilot.protocol.bags.is_empty() {
            let of = (say!(w, "pilot-bags"), say!(w, "pilot-bags-how"));
            all.push(self.part(Part::Bags, of, vec![self.heights(), self.went_in()]));
        }
        if let (Some(of), Some(meter)) = (how("ethanol"), &self.pilot.protocol.meter) {
            let strengths = meter.strengths.iter().map(f64::to_string).collect();
            let heads =
                [say!(w, "pilot-strength"), say!(w, "pilot-display"), say!(w, "pilot-warm")];
            all.push(self.part(
                Part::Meter,
                of,
                vec![self.pairs("ethanol", strengths, &heads)],
            ));
        }
        all
    }

    fn part(&self, part: Part, of: (String, String), tables: Vec<Table>) -> PartForm {
        let (name, how) = of;
        let stands = if !self.sheet.same_in(part, self.kept) {
            PartStands::NotKept
        } else if self.kept.has(part) {
            PartStands::Kept
        } else {
            PartStands::Empty
        };
        PartForm { part, name, how, tables, stands }
    }

    fn spoons(&self) -> Table {
        let w = self.w;
        let count = self.pilot.protocol.spoons.map_or(0, |spoons| spoons.count as usize);
        let last = self.sheet.rows("spoon").last().map_or(0, |last| last + 1);
        let row = |at: usize| {
            let number = (at + 1).to_string();
            let label = say!(w, "pilot-spoon", number = &number);
            (Some(number), vec![self.field(format!("spoon-{at}"), label, "")])
        };
        Table {
            name: String::new(),
            heads: vec![say!(w, "pilot-spoon-head"), say!(w, "pilot-mass")],
            rows: (0..count.max(last)).map(row).collect(),
            spare: false,
        }
    }

    /// Rows of the pilot and those that were typed, by what says where they are read, and one more.
    fn rows(&self, table: &str, id: impl Fn(usize) -> String, usual: Vec<String>) -> Rows {
        let value = |text: &str| {
            let digits = |c: &char| c.is_ascii_digit() || matches!(c, '.' | ',');
            number(&text.chars().take_while(digits).collect::<String>()).ok()
        };
        let mut rows: Rows =
            self.sheet.rows(table).into_iter().map(|at| (at, String::new())).collect();
        for (at, says) in &mut rows {
            self.sheet.get(&id(*at)).clone_into(says);
        }
        let mut next = rows.last().map_or(0, |(at, _)| at + 1);
        for says in usual {
            let there =
                rows.iter().any(|(_, own)| value(own).is_some() && value(own) == value(&says));
            if !there {
                rows.push((next, says));
                next += 1;
            }
        }
        let order = |text: &str| value(text).unwrap_or(f64::MAX);
        rows.sort_by(|a, b| order(&a.1).total_cmp(&order(&b.1)));
        rows.push((next, String::new()));
        rows
    }

    fn pairs(&self, table: &str, usual: Vec<String>, heads: &[String]) -> Table {
        let w = self.w;
        let rows = self.rows(table, |at| format!("{table}-{at}-at"), usual);
        let row = |(at, says): (usize, String)| {
            let named = |head: &String| {
                if says.is_empty() {
                    say!(w, "pilot-one-more", what = head)
                } else {
                    say!(w, "pilot-read-at", what = head, at = &heads[0], value = &says)
                }
            };
            let first = self.field(format!("{table}-{at}-at"), named(&heads[0]), &says);
            let mut cells =
                vec![first, self.field(format!("{table}-{at}"), named(&heads[1]), "")];
            if let Some(warm) = heads.get(2) {
                cells.push(self.field(format!("{table}-{at}-warm"), named(warm), ""));
            }
            (None, cells)
        };
        Table {
            name: String::new(),
            heads: heads.to_vec(),
            rows: rows.into_iter().map(row).collect(),
            spare: false,
        }
    }

    /// Letters of the pilot's bags, and of others of which something was typed.
    fn letters(&self) -> Vec<String> {
        let own = self.pilot.protocol.bags.iter().map(|bag| bag.letter.clone());
        let mut all: Vec<String> = own.chain(self.sheet.letters()).collect();
        all.sort();
        all.dedup();
        all
    }

    fn heights(&self) -> Table {
        let w = self.w;
        let minutes = self.pilot.protocol.bags.first().map(|bag| bag.minutes.as_slice());
        let minutes = std::iter::once(&0).chain(minutes.unwrap_or_default());
        let usual = minutes.map(u32::to_string).collect();
        let letters = self.letters();
        let row = |(at, says): (usize, String)| {
            let minute = if says.is_empty() { say!(w, "pilot-more") } else { says.clone() };
            let label = say!(w, "pilot-minute-of", minute = &minute);
            let mut cells = vec![self.field(format!("minute-{at}"), label, &says)];
            cells.extend(letters.iter().map(|bag| {
                let label = say!(w, "pilot-height-of", bag = bag, minute = &minute);
                self.field(format!("bag-{bag}-{at}"), label, "")
            }));
            (None, cells)
        };
        let rows = self.rows("minute", |at| format!("minute-{at}"), usual);
        let named = letters.iter().map(|bag| say!(w, "pilot-bag", bag = bag));
        Table {
            name: say!(w, "pilot-heights"),
            heads: std::iter::once(say!(w, "pilot-minute")).chain(named).collect(),
            rows: rows.into_iter().map(row).collect(),
            spare: false,
        }
    }

    fn went_in(&self) -> Table {
        let w = self.w;
        let things = [
            ("yeast", say!(w, "pilot-went-yeast")),
            ("food", say!(w, "pilot-went-food")),
            ("water", say!(w, "pilot-went-water")),
            ("temperature", say!(w, "pilot-went-temperature")),
            ("tray", say!(w, "pilot-went-tray")),
        ];
        let letters = self.letters();
        let row = |(id, says): (&str, String)| {
            let cells = letters.iter().map(|bag| {
                let label = say!(w, "pilot-went-of", thing = &says, bag = bag);
                self.field(format!("made-{bag}-{id}"), label, "")
            });
            let cells = cells.collect();
            (Some(says), cells)
        };
        let named = letters.iter().map(|bag| say!(w, "pilot-bag", bag = bag));
        Table {
            name: say!(w, "pilot-went"),
            heads: std::iter::once(say!(w, "pilot-thing")).chain(named).collect(),
            rows: things.into_iter().map(row).collect(),
            spare: true,
        }
    }
}
