//! Proposals as a table: read, written, and no formula for a spreadsheet.

use barm_documents::proposals::{HEADS, Row, read, write, write_marked};
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

#[test]
fn a_table_of_what_no_class_did_says_so_in_every_line_and_is_read_again() {
    let rows = read(TABLE.as_bytes()).unwrap();
    let marked = write_marked(&rows, "rehearsal");
    let lines: Vec<&str> = marked.lines().collect();
    assert!(lines[0].ends_with(",made up"), "{marked}");
    assert!(lines[1..].iter().all(|line| line.ends_with(",rehearsal")), "{marked}");
    assert_eq!(read(marked.as_bytes()).unwrap(), rows);
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

    // The signs are those of ASVS 5.0, V1.2.10, and a carriage return.
    #[test]
    fn no_cell_is_a_formula(
        space in "[ \n\r\t\u{0}]{0,2}", first in "[=+@\t\r\u{0}-]",
        rest in "[a-zA-Z0-9()!|',;\"\n]{0,10}",
    ) {
        let evil = format!("{space}{first}{rest}");
        let cell = || evil.clone();
        let written = Written {
            period: cell(), group: 1, asks: cell(), changes: cell(),
            levels: vec![cell(), cell()], keeps: cell(), beside: cell(), bags: 1,
        };
        let row = Row { line: 0, written, expects: cell(), because: cell() };
        let mark = cell();
        let text = write_marked(&[row], &mark);
        let mut cells = 0;
        for record in csv::Reader::from_reader(text.as_bytes()).records() {
            for cell in &record.unwrap() {
                let shown = cell.trim_start_matches([' ', '\n']);
                prop_assert!(!shown.starts_with(['=', '+', '-', '@', '\t', '\r', '\0']), "{cell:?}");
                cells += usize::from(cell.starts_with('\''));
            }
        }
        prop_assert_eq!(cells, HEADS.len() - 1, "all but two numbers are guarded");
        prop_assert_eq!(text.lines().next().unwrap(), format!("{},made up", HEADS.join(",")));
    }
}
