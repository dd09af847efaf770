//! Tables that are right, and those that are not quite.

use super::{Row, needed, read, welcome};

fn table(text: &[u8]) -> Result<Vec<Row>, String> {
    let columns = [needed("b"), welcome("none"), needed("a")];
    read("t.csv", text, &columns).map_err(|refused| refused.to_string())
}

fn row(line: u64, cells: [&str; 3]) -> Row {
    Row { line, cells: cells.map(str::to_owned).to_vec() }
}

#[test]
fn columns_are_found_in_any_order_among_others() {
    let text = b"\xef\xbb\xbfA,x, B\r\n1,secret,2\r\n\r\n\"3\"\"\n,\",,\"\"\n5,,6";
    let rows = table(text).unwrap();
    let expected =
        vec![row(2, ["2", "", "1"]), row(4, ["", "", "3\"\n,"]), row(6, ["6", "", "5"])];
    assert_eq!(rows, expected);
    assert_eq!(table(b"a,b\r1,2\r3,4\r").unwrap().len(), 2);
    assert_eq!(table(b"a,b").unwrap(), []);
}

#[test]
fn what_is_not_quite_right_is_refused_with_its_line() {
    for (text, says) in [
        (&b"a,b\n1\n"[..], "line 2: there are 1 cells under 2 heads"),
        (b"a,b\n1,2,3\n", "line 2: there are 3 cells under 2 heads"),
        (b"a,b\n1,\"2\n3,4\n", "line 2: a quotation mark is opened and never closed"),
        (b"a,b\n\"x\ny\",2\n1,2\"\n", "line 4: there is a quotation mark inside"),
        (b"a,b\n\"1\"2,3\n", "line 2: something stands behind"),
        (b"a;b\n1;2\n", "parted by semicolons"),
        (b"a\tb\n1\t2\n", "parted by tabs"),
        (b"a|b\n1|2\n", "parted by bars"),
        (b"a,a,b\n", "“a” stands there twice"),
        (b"a,c\n", "no column “b”"),
        (b"x,c\n", "no columns “b”, “a”"),
        (b"", "is empty"),
        (b"\xff\xfea\0,\0b\0", "UTF-16"),
        (b"\xfe\xff\0a\0,\0b", "UTF-16"),
        (b"a,b\n1,caf\xe9\n", "line 2: a sign is not written in UTF-8"),
        (b"a,b\n1,\0\n", "line 2: there is a NUL"),
        (b"a\0,\0b\0", "line 1: there is a NUL"),
    ] {
        let said = table(text).unwrap_err();
        assert!(said.contains(says) && said.starts_with("t.csv"), "{said}");
    }
}
