//! The join sheet: one page, the address large, its square code right.

use crate::picture::{Picture, read_squares};
use crate::prints::{ADDRESS, PRINTS, plan_of};
use crate::program::{run, skip};
use crate::tools::{name, say};

#[test]
fn the_join_sheet_gives_the_address_to_eyes_and_cameras() {
    for print in PRINTS.iter() {
        let pdf = print.file("join.pdf").expect("an address was given");
        let Some((_, text)) = say("pdftotext", &[name(&pdf), "-"]) else {
            return skip("the join sheet", "poppler is not installed");
        };
        let join = format!("{ADDRESS}/join");
        assert!(text.contains(&join), "{text}");
        assert_eq!(text.matches('\u{c}').count(), 1, "one page: {text}");
        let class_code =
            if print.language == "es" { "código de la clase" } else { "class code" };
        assert!(text.contains(class_code), "{text}");
        // Two steps are numbered; what to do when the page is lost is none.
        let numbers = text.lines().filter(|line| ["1", "2", "3"].contains(&line.trim()));
        assert_eq!(numbers.count(), 2, "{text}");
        let lost =
            if print.language == "es" { "¿Se cerró la página?" } else { "Lost the page?" };
        assert!(text.contains(lost), "{text}");
        let page = Picture::of_page(&pdf, 1).expect("poppler is there");
        let Some(read) = read_squares(&[page]) else {
            return skip("the join sheet", "zbar is not installed");
        };
        assert_eq!(read, [[join]]);
    }
}

#[test]
fn an_address_that_no_device_could_open_is_refused() {
    let plan = plan_of(crate::prints::Class::One);
    let home = tempfile::tempdir().expect("a folder");
    for (address, says) in [
        ("barm.example", "write the whole address"),
        ("https://barm.example/a b", "no spaces"),
        (&format!("https://{}.example", "a".repeat(100)), "give a shorter one"),
    ] {
        let arguments = ["print", name(&plan), "--out", "paper", "--address", address];
        let (_, err) = run(home.path(), &arguments).ended(2);
        assert!(err.contains(says), "{address}: {err}");
    }
    let (_, err) =
        run(home.path(), &["print", name(&plan), "--out", "p", "--what", "join"]).ended(2);
    assert!(err.contains("--address"), "{err}");
}
