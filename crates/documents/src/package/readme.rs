//! `README.md`: what is in a package, for a stranger.

use super::About;
use super::tables::{Field, Kind, TABLES};
use barm_domain::shared::{Rows, Rule};
use std::fmt::Write as _;

const DONE: &str = "\
Groups of students put baker's yeast and warm water into zip bags, most of them with a food, some with an
enzyme that cuts it. They pressed out the air, closed each bag, laid it flat and put a card on top. Yeast makes
carbon dioxide; the bag swells and lifts the card. Every few minutes a student read the height of the card's
underside above the bench with a ruler.

- **A bag is one measurement.** Readings of one bag follow each other and are not independent.
- A height counts from the bench. Take off the bag's own height at minute 0 to get its rise.
- The class compared treatments within periods, each with the one in `compared_with`.
- Bags in `set-aside.csv` were left out by rules agreed before the day. Their readings are here all the same.
- This was a class practical. No bag was measured by any instrument beyond a ruler: heights carry the reading
  doubt of a student with a ruler (1 mm or so), amounts that of spoons, jugs and kitchen balances. Amounts, sizes
  and temperatures are those of the recipe, not of each bag.
";

const MADE_UP: &str = "\
**These data are invented. No class made these bags;** they come from simulated groups and say nothing about
real yeast.
";

const METER: &str = "\
- The gas of some bags was held to a hand-held breath meter. It is made for breath, was not calibrated for
  this, and tells which of two bags has more; its numbers mean nothing by themselves, and nothing about people.
";

const WHO: &str = "\
Students of one school, in groups that are known by numbers only. Names, school, place and dates were never
part of these tables; air pressure is rounded so that it names no place. A code such as `P1-02B-6` means
period 1, group 02, bag B; the last character checks the others.
";

/// The text.
pub(super) fn written(rows: &Rows, about: &About) -> String {
    let mut text = String::from("# Yeast bags of a school class\n\n");
    let add = |text: &mut String, part: &str| {
        text.push_str(part);
        text.push('\n');
    };
    if about.made_up {
        add(&mut text, MADE_UP);
    }
    text.push_str("## What was done\n\n");
    text.push_str(DONE);
    if !rows.meter.is_empty() {
        text.push_str(METER);
    }
    text.push_str("\n## Who made it\n\n");
    text.push_str(WHO);
    if let Some(grade) = about.grade {
        let _ = writeln!(text, "The class was in grade {grade} (US).");
    }
    if let Some(mm) = about.readable_mm {
        let _ = writeln!(text, "It took differences in rise of {mm} mm and more for readable.");
    }
    text.push_str("\n## Tables\n\n");
    text.push_str(
        "UTF-8, commas, a row of heads. A blank cell was not noted. Units are UCUM codes; `Cel` is a\n\
         degree Celsius. `datapackage.json` says the same for programs (Data Package, version 2).\n",
    );
    let counts = [
        rows.treatments.len(),
        rows.ingredients.len(),
        rows.bags.len(),
        rows.readings.len(),
        rows.set_aside.len(),
        rows.meter.len(),
    ];
    for (table, count) in TABLES.iter().zip(counts) {
        let rows = if count == 1 { "row" } else { "rows" };
        let _ = write!(
            text,
            "\n### {}.csv ({count} {rows})\n\n{}.\n\n| column | unit | what it holds |\n|---|---|---|\n",
            table.name, table.says
        );
        for field in table.fields {
            let unit = field.unit.unwrap_or("");
            let _ = writeln!(text, "| `{}` | {unit} | {} |", field.name, holds(field));
        }
    }
    text.push_str("\nRules in `set-aside.csv`:\n\n");
    for rule in Rule::ALL {
        let _ = writeln!(text, "- `{}`: {}", rule.word(), rule.says());
    }
    let licence = about.licence;
    let _ = write!(
        text,
        "\n## License\n\n{} ({}), {}\n",
        licence.title(),
        licence.id(),
        licence.address()
    );
    text
}

fn holds(field: &Field) -> String {
    let words = match field.kind {
        // The list of all foods stands in datapackage.json.
        Kind::OneOf(words) if words().len() <= 6 => {
            format!(" (`{}`)", words().join("`, `"))
        }
        _ => String::new(),
    };
    let blank = if field.required { "" } else { "; may be blank" };
    format!("{}{words}{blank}", field.says)
}
