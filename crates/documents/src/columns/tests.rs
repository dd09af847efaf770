use super::{Columns, ColumnsError, Wanted, read};
use proptest::prelude::*;

const ASKED: [Wanted<'_>; 2] =
    [Wanted { heading: "rise", number: true }, Wanted { heading: "food", number: false }];

fn told(text: &str) -> Columns {
    read(text.as_bytes(), &ASKED).unwrap_or_else(|why| panic!("{text}: {why}"))
}

fn pairs(columns: &Columns) -> Vec<(f64, &str)> {
    columns.rows.iter().map(|row| (row.numbers[0], row.texts[0].as_str())).collect()
}

#[test]
fn every_usual_way_to_write_a_table_is_read() {
    let wanted = [(12.5, "honey"), (-3.0, "white, sugar")];
    for text in [
        "food,rise\nhoney,12.5\n\"white, sugar\",-3\n",
        "\u{feff}food;rise\r\nhoney;12,5\r\nwhite, sugar;-3\r\n",
        "food\trise\nhoney\t12,5\nwhite, sugar\t−3.0\n",
        "sep=;\nfood;rise\nhoney;12,5\nwhite, sugar;-3,0\n",
        "Class of the morning\n\nbag;Food; Rise \n1;honey;1,25e1\n\n2;white, sugar;-3\n;;\n",
        "food|rise|note\rhoney|12.50|\rwhite, sugar|-3|spilled\r",
    ] {
        assert_eq!(pairs(&told(text)), wanted, "{text}");
    }
    let wide: Vec<u8> = "\u{feff}food,rise\nhoney,12.5\n\"white, sugar\",-3\n"
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    let columns = read(&wide, &ASKED).expect("UTF-16");
    assert_eq!(pairs(&columns), wanted);
    assert_eq!(columns.notes.len(), 1);
}

#[test]
fn levels_stay_text_and_large_numbers_whole() {
    let columns = told("food,rise\n007,1000000000000.4\n7,1e12\n7.0,\"1,000,000.5\"\n");
    let wanted = [(1_000_000_000_000.4, "007"), (1e12, "7"), (1_000_000.5, "7.0")];
    assert_eq!(pairs(&columns), wanted);
}

#[test]
fn a_comma_means_what_its_column_says() {
    let first = |text: &str| told(text).rows[0].numbers[0];
    assert!((first("food;rise\na;1,234\nb;12,5\n") - 1.234).abs() < 1e-12);
    assert!((first("food;rise\na;1,234\nb;1,234.5\n") - 1234.0).abs() < 1e-12);
    assert!((first("food;rise\na;0,125\n") - 0.125).abs() < 1e-12);
    let untold = read(b"food;rise\na;1,234\nb;2,500\n", &ASKED).expect_err("either");
    assert!(untold.to_string().contains("could be 1234 or 1.234"), "{untold}");
}

#[test]
fn rows_with_blanks_are_left_out_and_listed() {
    let columns = told("food,rise\na,1\nb,\n,3\nc,NA\nd,n/a\n,\ne,5\n");
    assert_eq!(pairs(&columns), [(1.0, "a"), (5.0, "e")]);
    assert_eq!(columns.left_out, [3, 4, 5, 6]);
    assert!(told("food,rise\n").rows.is_empty());
}

#[test]
fn what_is_wrong_is_named_with_its_place() {
    let why = |text: &str| read(text.as_bytes(), &ASKED).expect_err(text).to_string();
    let many = why("food,rise\na,tall\nb,2 mm\nc,1e308\nd,1.2.3\ne,inf\nf,--1\ng,?\n");
    assert!(many.contains("line 2, column \"rise\": \"tall\" is not a number"), "{many}");
    assert!(many.contains("line 4, column \"rise\": \"1e308\" is too large"), "{many}");
    assert!(many.contains("and 2 more like these"), "{many}");
    assert_eq!(why(""), "the file is empty");
    assert_eq!(why("\n \n"), "the file is empty");
    assert!(why("food,raise\na,1\n").contains("did you mean \"raise\"?"));
    assert!(why("x,y\n1,2\n").contains("there are \"x\", \"y\""));
    assert!(why("food,rise,rise\na,1,2\n").contains("two columns are called"));
    assert!(matches!(
        read(b"food;Rise;RISE\na;1;2\n", &ASKED),
        Err(ColumnsError::Twice { .. })
    ));
    assert_eq!(pairs(&told("food,Rise,rise\na,1,2\n")), [(2.0, "a")], "as written comes first");
}

/// Neither a swallowed rest nor half a decimal number may pass for data.
#[test]
fn what_could_be_meant_otherwise_is_refused() {
    let why = |text: &str| read(text.as_bytes(), &ASKED).expect_err(text);
    let open = why("food,rise,note\na,1,\nb,2,\"spilled\nc,3,\nd,4,\n");
    assert_eq!(open, ColumnsError::OpenQuote { line: 3 });
    assert_eq!(why("food,rise\na,3,5\nb,4,2\n"), ColumnsError::TooWide { line: 2 });
    let fine = "food,rise,note\na,1,\"spilled\ntwice\"\nb,2,12\"\nc,3,,,\n";
    assert_eq!(pairs(&told(fine)), [(1.0, "a"), (2.0, "b"), (3.0, "c")]);
}

proptest! {
    #[test]
    fn any_bytes_give_an_answer(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let _ = read(&bytes, &ASKED);
        let mut headed = b"food,rise\n".to_vec();
        headed.extend(&bytes);
        if let Ok(columns) = read(&headed, &ASKED) {
            for row in &columns.rows {
                prop_assert!(row.numbers.iter().all(|v| v.is_finite()));
                prop_assert!(row.texts.iter().all(|t| !t.is_empty()));
            }
        }
    }

    /// What is written comes back, whatever parts the cells.
    #[test]
    fn what_is_written_comes_back(
        rows in prop::collection::vec((-1e9_f64..1e9, "[a-z][a-z ,;.\"]{0,12}[a-z]"), 1..12),
        delimiter in prop::sample::select(vec![',', ';', '\t', '|']),
    ) {
        let mut text = format!("food{delimiter}rise\n");
        for (number, name) in &rows {
            text += &format!("\"{}\"{delimiter}{number}\n", name.replace('"', "\"\""));
        }
        let columns = told(&text);
        let wanted: Vec<(f64, &str)> = rows.iter().map(|(n, t)| (*n, t.as_str())).collect();
        prop_assert_eq!(pairs(&columns), wanted);
    }
}
