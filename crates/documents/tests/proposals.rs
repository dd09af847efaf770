//! Proposals as a table: read, written, and no formula for a spreadsheet.

use barm_documents::proposals::{HEADS, Row, read, write};
use barm_domain::proposal::Written;
use proptest::prelude::*;

const TABLE: &str = "\
Period,Group,Question,Changes,Levels,Keeps,Compared with,Bags,Expects,Because
1,2,Is honey better?,food,honey; white sugar,,No food,2,honey wins,it is sweeter
1,3,,water temperature,20 °C | 40 °C,white sugar + 0.5 g,20 °C,,,
";

#[test]
fn a_line_is_a_proposal() {
    let rows = read(TABLE.as_bytes()).unwrap();
    assert_eq!(rows.len(), 2);
    assert_eq!(rows[0].line, 2);
    assert_eq!(rows[0].written.levels, ["honey", "white sugar"]);
    assert_eq!(rows[0].because, "it is sweeter");
    assert_eq!((rows[1].written.group, rows[1].written.bags), (3, 2));
    assert_eq!(rows[1].written.levels, ["20 °C", "40 °C"]);
    let tabs = TABLE.replace(',', "\t");
    assert_eq!(read(tabs.as_bytes()).unwrap(), rows);
}

#[test]
fn what_is_wrong_is_named_with_its_line() {
    let missing = read(b"period,group,levels\n1,2,honey\n").unwrap_err();
    assert_eq!(missing.len(), 2);
    assert!(missing.iter().all(|wrong| wrong.line == 1));
    let number = TABLE.replace("1,3,", "1,three,");
    let wrong = read(number.as_bytes()).unwrap_err();
    assert_eq!((wrong.len(), wrong[0].line), (1, 3));
    assert!(read(b"\xff\xfe").is_err());
    assert!(read(b"").is_err());
}

fn text() -> impl Strategy<Value = String> {
    "[-=+@'a-zA-Z0-9 °,\"\n]{0,12}".prop_map(|text| text.trim().to_owned())
}

proptest! {
    #[test]
    fn what_is_written_is_read_again(
        period in text(), group in 0_u32..100, asks in text(), changes in text(),
        levels in prop::collection::vec("[a-z0-9 ]{1,8}", 0..4), keeps in text(),
        beside in text(), bags in 1_u32..9, expects in text(), because in text(),
    ) {
        let levels: Vec<String> =
            levels.iter().map(|l| l.trim().to_owned()).filter(|l| !l.is_empty()).collect();
        let written = Written { period, group, asks, changes, levels, keeps, beside, bags };
        let row = Row { line: 0, written, expects, because };
        let text = write(std::slice::from_ref(&row));
        let mut again = read(text.as_bytes()).unwrap();
        prop_assert_eq!(again.len(), 1);
        again[0].line = 0;
        prop_assert_eq!(&again[0], &row);
    }

    #[test]
    fn no_cell_is_a_formula(first in "[=+@-]", rest in "[a-zA-Z0-9()!|']{0,10}") {
        let evil = format!("{first}{rest}");
        let written = Written { asks: evil.clone(), period: evil, ..Written::default() };
        let text = write(&[Row { written, ..Row::default() }]);
        for record in csv::Reader::from_reader(text.as_bytes()).records() {
            for cell in &record.unwrap() {
                prop_assert!(!cell.starts_with(['=', '+', '-', '@']), "{cell}");
            }
        }
        prop_assert_eq!(text.lines().next().unwrap(), HEADS.join(","));
    }
}
