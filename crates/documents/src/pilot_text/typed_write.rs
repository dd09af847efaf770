//! A typed sheet as a file of readings, with the place of every cell.

use super::typed::{HEADS, TypedSheet, WENT};
use barm_domain::pilot::PilotFault;

/// A file of readings and which cells stand on which of its lines.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct WrittenSheet {
    /// The file.
    pub text: String,
    /// Line, from 1, with the ids of its cells in the order in which they stand there.
    lines: Vec<(u64, Vec<String>)>,
    /// What is wrong with cells that no line can show.
    alone: Vec<(String, PilotFault)>,
}

impl WrittenSheet {
    fn line(&mut self, cells: &[&str], ids: Vec<String>) {
        let cells: Vec<String> = cells.iter().map(|cell| quoted(cell)).collect();
        self.text.push_str(&cells.join(","));
        self.text.push('\n');
        let number = self.text.matches('\n').count() as u64;
        if !ids.is_empty() {
            self.lines.push((number, ids));
        }
    }

    fn head(&mut self, row: &[&str]) {
        self.text.push('\n');
        self.line(row, Vec::new());
    }

    /// A row whose first cell says where it was read; says what is wrong if that is no number.
    fn pair(&mut self, sheet: &TypedSheet, table: &str, row: usize, what: &str, more: &[&str]) {
        let at = format!("{table}-{row}-at");
        let own = format!("{table}-{row}");
        if sheet.get(&own).is_empty() {
            return;
        }
        if !self.is_number(sheet, &at, what) {
            return;
        }
        let mut cells = vec![sheet.get(&at), sheet.get(&own)];
        let mut ids = vec![at.clone(), own.clone()];
        for end in more {
            let id = format!("{own}-{end}");
            cells.push(sheet.get(&id));
            ids.push(id);
        }
        self.line(&cells, ids);
    }

    /// Whether a cell that says where something was read holds a number.
    fn is_number(&mut self, sheet: &TypedSheet, id: &str, what: &str) -> bool {
        let text = sheet.get(id);
        let begins = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
        if text.starts_with(begins) {
            return true;
        }
        let says = if text.is_empty() {
            format!("the {what} is missing")
        } else {
            format!("“{text}” is no {what}")
        };
        let fix = "write it as a number; without it, what was read says nothing".to_owned();
        self.alone.push((id.to_owned(), PilotFault { line: 0, what: says, fix }));
        false
    }

    /// What is wrong with single cells that could not be written at all, by their ids.
    pub fn unwritten(&self) -> &[(String, PilotFault)] {
        &self.alone
    }

    /// The cell that a fault is about; nothing if it is about no one cell. Of the cells of its line,
    /// it is the one that the fault quotes, or else the last one that something stands in.
    pub fn cell_of(&self, sheet: &TypedSheet, fault: &PilotFault) -> Option<&str> {
        let (_, ids) = self.lines.iter().find(|(line, _)| *line == fault.line)?;
        let shown = |id: &&String| {
            let cell = crate::readings::quoted::quoted(sheet.get(id));
            cell.len() > 2 && fault.what.starts_with(&cell)
        };
        let quoted = ids.iter().find(shown);
        let filled = || ids.iter().rev().find(|id| !sheet.get(id).is_empty());
        quoted.or_else(filled).map(String::as_str)
    }
}

/// A cell of a file whose cells are parted by commas.
fn quoted(cell: &str) -> String {
    let plain = !cell.contains([',', '"', ';', '|', '\t', '#']);
    if plain { cell.to_owned() } else { format!("\"{}\"", cell.replace('"', "\"\"")) }
}

impl TypedSheet {
    /// The sheet as a file that `barm pilot` reads. Rows in which nothing was read are left out.
    pub fn write(&self) -> WrittenSheet {
        let mut file = WrittenSheet { text: "sep=,\n".into(), ..WrittenSheet::default() };
        for (id, name) in HEADS {
            if !self.get(id).is_empty() {
                file.line(&[name, self.get(id)], vec![id.to_owned()]);
            }
        }
        let spoons = self.rows("spoon");
        if !spoons.is_empty() {
            file.head(&["spoon", "mass (g)"]);
        }
        for (number, row) in (1_u32..).zip(spoons) {
            let id = format!("spoon-{row}");
            file.line(&[&number.to_string(), self.get(&id)], vec![id.clone()]);
        }
        if self
            .rows("cooling")
            .iter()
            .any(|row| !self.get(&format!("cooling-{row}")).is_empty())
        {
            file.head(&["cooling (min)", "temperature (°C)"]);
        }
        for row in self.rows("cooling") {
            file.pair(self, "cooling", row, "minute", &[]);
        }
        if self
            .rows("syringe")
            .iter()
            .any(|row| !self.get(&format!("syringe-{row}")).is_empty())
        {
            file.head(&["syringe (mL)", "height (mm)"]);
        }
        for row in self.rows("syringe") {
            file.pair(self, "syringe", row, "volume of air", &[]);
        }
        self.write_bags(&mut file);
        if self
            .rows("ethanol")
            .iter()
            .any(|row| !self.get(&format!("ethanol-{row}")).is_empty())
        {
            file.head(&["ethanol (%)", "meter (%)", "temperature (°C)"]);
        }
        for row in self.rows("ethanol") {
            file.pair(self, "ethanol", row, "strength", &["warm"]);
        }
        file
    }

    fn write_bags(&self, file: &mut WrittenSheet) {
        let letters = self.letters();
        let went = |bag: &str| WENT.map(|(id, _)| format!("made-{bag}-{id}"));
        let made = |bag: &&String| went(bag).iter().any(|id| !self.get(id).is_empty());
        if letters.iter().any(|bag| made(&bag)) {
            file.head(&["made", WENT[0].1, WENT[1].1, WENT[2].1, WENT[3].1, WENT[4].1]);
        }
        for bag in letters.iter().filter(made) {
            let ids = went(bag);
            let mut cells = vec![bag.as_str()];
            cells.extend(ids.iter().map(|id| self.get(id)));
            file.line(&cells, ids.to_vec());
        }
        let heights = |bag: &String| {
            let own = |at: &usize| !self.get(&format!("bag-{bag}-{at}")).is_empty();
            (0..super::typed::MOST).filter(own).collect::<Vec<usize>>()
        };
        if letters.iter().any(|bag| !heights(bag).is_empty()) {
            file.head(&["bag", "minute", "height (mm)"]);
        }
        for bag in &letters {
            for at in heights(bag) {
                let (minute, height) = (format!("minute-{at}"), format!("bag-{bag}-{at}"));
                if file.is_number(self, &minute, "minute") {
                    let cells = [bag.as_str(), self.get(&minute), self.get(&height)];
                    file.line(&cells, vec![minute.clone(), height.clone()]);
                }
            }
        }
    }
}
