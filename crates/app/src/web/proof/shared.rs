//! Data for others: what the results page gives away, and no word of anybody in it.

use super::class::{Call, Class, DURING_1, plan_text};
use crate::desk::rehearse::done_before;
use crate::desk::room::Kind;
use crate::desk::shared::{Bundle, Limits};
use barm_domain::record::{Odd, Subject, What, Who};
use jiff::SignedDuration;

/// Stands in every text of the plan that is worded freely.
const MARK: &str = "Zwitschermaschine";

/// The invented plan with the mark in titles, questions, labels, names and rules.
fn marked() -> String {
    let mut text = plan_text().replace("\"Nonfat dry milk", &format!("\"{MARK}"));
    for key in ["title", "school", "big_question", "asks", "says", "wording", "answer", "label"]
    {
        let lines: Vec<String> = text
            .lines()
            .map(|line| match line.split_once(" = \"") {
                Some((name, rest)) if name == key => format!("{name} = \"{MARK} {rest}"),
                _ => line.to_owned(),
            })
            .collect();
        text = lines.join("\n");
    }
    text
}

/// The names and texts of a zip.
fn unzipped(bytes: &[u8]) -> Vec<(String, String)> {
    let mut bundle = Bundle::open(bytes, &Limits::USUAL).expect("a sound zip");
    let names: Vec<String> = bundle.names().map(str::to_owned).collect();
    let read = |name: String| {
        let bytes = bundle.read(&name).expect("sound").expect("there");
        (name, String::from_utf8(bytes).expect("UTF-8"))
    };
    names.into_iter().map(read).collect()
}

#[tokio::test]
async fn what_is_given_away_holds_numbers_and_codes_and_no_word_of_anybody() {
    let class = Class::of(&marked(), DURING_1, Kind::Real);
    let (id, teacher) = (class.room.id, class.teacher());
    let get =
        |path: &str| Call::get(&format!("/i/{id}/{path}")).cookie("barm-teacher", &teacher);
    // Before anything was read there is nothing to share, and that is said.
    assert!(!class.call(get("results")).await.body.contains("Data for others"));
    assert_eq!(class.call(get("data.zip")).await.status, 404);
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    let code = class.room.read(|scene| scene.plan.bags[0].code.parse().expect("a code"));
    class.note(Subject::Bag(code), Who::Teacher, What::Odd(Odd::Bumped));
    let page = class.call(get("results")).await.body;
    assert!(page.contains("Data for others") && page.contains(MARK), "{page}");

    let zip = class.call(get("data.zip?license=CC0-1.0&grade=yes")).await;
    assert_eq!(zip.status, 200);
    assert!(zip.header("content-disposition").ends_with("filename=\"data.zip\""));
    let mut given = unzipped(&zip.bytes);
    assert_eq!(given.len(), 8);
    let told = &given.iter().find(|(name, _)| name == "datapackage.json").expect("it").1;
    assert!(told.contains("CC0-1.0") && told.contains("\"grade\": 8"), "{told}");
    let table = class.call(get("data.csv")).await;
    assert_eq!(table.header("content-type"), "text/csv; charset=utf-8");
    given.push(("data.csv".to_owned(), table.body));
    for (name, text) in &given {
        for word in [MARK, "Tamarack", "Otters", "Denver", "2027-03-09", "Tuesday"] {
            assert!(!text.contains(word), "{word} in {name}: {text}");
        }
    }
    let readings = &given.iter().find(|(name, _)| name == "readings.csv").expect("it").1;
    assert!(readings.lines().count() > 200, "{readings}");
}

#[tokio::test]
async fn data_of_a_rehearsal_say_that_nobody_measured_them() {
    let class = Class::at(DURING_1, Kind::Rehearsal);
    let (id, teacher) = (class.room.id, class.teacher());
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    let call = Call::get(&format!("/i/{id}/data.zip")).cookie("barm-teacher", &teacher);
    let zip = class.call(call).await;
    assert!(zip.header("content-disposition").contains("rehearsal-data.zip"));
    let readme = unzipped(&zip.bytes).into_iter().find(|(name, _)| name == "README.md");
    assert!(readme.expect("it").1.contains("These data are invented"));
}
