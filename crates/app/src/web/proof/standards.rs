//! Standards: a tick for what groups handed in and for nothing else, in the teacher's words.

use super::class::{Call, Class, DURING_1};
use super::forgetting::teachers;
use super::marked::bag;
use super::students::page;
use crate::desk::room::Kind;
use barm_domain::record::{Subject, What, Who};
use barm_domain::standards::{Product, STANDARDS};
use jiff::SignedDuration;

/// What stands beside a code in the tables: its own row.
fn row<'p>(page: &'p str, code: &str) -> &'p str {
    let start = format!("<b>{code}</b>");
    page.split("<tr>")
        .find(|row| row.contains(&start))
        .unwrap_or_else(|| panic!("{code}: {page}"))
}

/// Codes that have a tick.
fn ticked(page: &str) -> Vec<&'static str> {
    let codes = STANDARDS.iter().map(|standard| standard.code);
    codes.filter(|code| row(page, code).contains('✓')).collect()
}

/// Codes that one of these products shows.
fn by(products: &[Product]) -> Vec<&'static str> {
    let shown =
        STANDARDS.iter().filter(|one| one.products.iter().any(|p| products.contains(p)));
    shown.map(|standard| standard.code).collect()
}

#[tokio::test]
async fn a_standard_gets_a_tick_for_what_was_handed_in_and_for_nothing_else() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let seen = || page(&class, &teacher, "/standards");
    let first = seen().await.body;
    assert!(
        ticked(&first).is_empty() && !first.contains('✓'),
        "nothing was handed in: {first}"
    );
    // A zero reading alone is no rise.
    let bag = bag(&class, "1", 3);
    let who = || Who::Group { period: "1".into(), group: 3 };
    class.note(Subject::Bag(bag), who(), What::Zero { height_mm: 20.0 });
    assert!(ticked(&seen().await.body).is_empty());
    class.later(SignedDuration::from_mins(4));
    class.note(Subject::Bag(bag), who(), What::Reading { planned: Some(4), height_mm: 31.0 });
    let mut products = vec![Product::Readings];
    let now = seen().await.body;
    assert_eq!(ticked(&now), by(&products));
    assert!(row(&now, "RST.6-8.3").contains("1 of 32 groups"), "{now}");
    // A claim with evidence and reasoning.
    let own = class.group("1", 3);
    let claim = class.call(Call::get("/claim").cookie("barm-bench", &own)).await.body;
    let mut about = claim.split("<option value=\"").filter_map(|rest| rest.split('"').next());
    let about = about.find(|value| value.contains('/')).expect("something to claim about");
    let about = about.replace("&amp;", "%26").replace(' ', "+");
    let wrote = |reasoning: &str| {
        format!(
            "about={about}&says=more&by=6+mm&evidence=It+rose+11+mm&reasoning={reasoning}&do=hand-in"
        )
    };
    let call = Call::form(&class, "/claim", &wrote("Yeast+eats+it")).cookie("barm-bench", &own);
    let handed = class.call(call).await.body;
    assert!(handed.contains("It is handed in"), "{handed}");
    products.extend([Product::Evidence, Product::Reasoning]);
    assert_eq!(ticked(&seen().await.body), by(&products));
    // Marked at level 0, nothing was handed in; at level 2 there was a graph.
    let marks = format!("/i/{}/marks/1/3", class.room.id);
    teachers(&class, &teacher, &marks, "level-analysis=0&do=stay").await;
    assert_eq!(ticked(&seen().await.body), by(&products));
    class.later(SignedDuration::from_secs(1));
    teachers(&class, &teacher, &marks, "level-analysis=2&do=stay").await;
    products.push(Product::Analysis);
    assert_eq!(ticked(&seen().await.body), by(&products));
    // What nobody handed in has none.
    let unmarked = seen().await.body;
    assert!(row(&unmarked, "SEP1").contains("no product yet"), "{unmarked}");
}

#[tokio::test]
async fn standards_stand_in_the_words_of_a_state_and_its_own_beside_them() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/standards", class.room.id);
    let all: String = STANDARDS.iter().map(|one| format!("use={}&", one.code)).collect();
    let saves = |more: &str| {
        let body = format!("{all}{more}&do=save");
        let (class, teacher, path) = (&class, &teacher, &path);
        async move { teachers(class, teacher, path, &body).await }
    };
    let saved = saves("words-MS-LS1-7=As+our+state+has+it").await;
    assert_eq!(saved.status, 200, "{}", saved.body);
    assert!(row(&saved.body, "MS-LS1-7").contains("As our state has it"), "{}", saved.body);
    for (wrong, says) in [
        ("own-0-code=NY+7&own-0-words=yeast", "choose which product shows it"),
        ("own-0-words=yeast&own-0-product=readings", "needs a code"),
        (
            "own-0-code=SEP3&own-0-words=yeast&own-0-product=readings",
            "SEP3 stands there already",
        ),
        (&format!("words-SEP3={}", "x".repeat(301)), "300 characters"),
    ] {
        let told = saves(wrong).await;
        assert_eq!(told.status, 422, "{wrong}");
        assert!(
            told.body.contains("Nothing is saved yet") && told.body.contains(says),
            "{}",
            told.body
        );
        let kept = page(&class, &teacher, "/standards").await.body;
        assert!(row(&kept, "MS-LS1-7").contains("As our state has it"), "as it was");
    }
    // The first words go back to the gist when they are blank; a standard of one's own; one left out.
    let body = format!(
        "{}own-0-code=NY+7&own-0-words=Measure+a+living+thing&own-0-product=readings&do=save",
        all.replace("use=SEP3&", "")
    );
    let saved = teachers(&class, &teacher, &path, &body).await.body;
    assert!(row(&saved, "MS-LS1-7").contains(STANDARDS[0].gist), "{saved}");
    assert!(row(&saved, "NY 7").contains("no product yet"), "{saved}");
    let tables = saved.split("id=\"words\"").next().expect("the tables");
    assert!(!tables.contains("<b>SEP3</b>"), "left out: {tables}");
    let again = teachers(&class, &teacher, &path, "do=again").await.body;
    assert!(again.contains("<b>SEP3</b>") && !again.contains("NY 7"), "{again}");
}
