//! A plan that is changed after bags were sealed: every page that names an older kind says what
//! its name means, and the prep sheet says which bags stand there as they were sealed.

use crate::bench::join;
use crate::browser::Browser;
use crate::eyes::{Eyes, Hands};
use crate::looks::PASSPHRASE;
use crate::school::{PERIOD, School, plan_text};
use crate::skip;
use serde_json::json;

#[test]
fn names_of_an_older_plan_are_explained_where_they_stand() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("names of an older plan", why),
    };
    let school = School::new();
    school.has_read(&[(0, 8.0), (4, 9.0), (8, 12.0), (12, 15.0)], 20);
    // Every other bag is made with less yeast now.
    let (was, now) = ("yeast_amount = \"2 g\"", "yeast_amount = \"1.5 g\"");
    let text = plan_text();
    assert_eq!(text.matches(was).count(), 1);
    school.save(&text.replace(was, now));
    let served = school.serve(0);
    join(&browser, &school, &served);
    let says = |what: &str| {
        let text = browser.text();
        assert!(text.contains(what), "{what}: {text}");
    };
    says("(plan 1)");
    says("“(plan 1)” behind a name");
    let eyes = Eyes::on(&browser);
    eyes.look("bench with an older kind", Hands::Fingers);
    browser.click("[data-k='lang-es']");
    browser.until("return document.documentElement.lang === 'es';");
    says("«(plan 1)» tras un nombre");
    browser.open(&served.at("/teacher"));
    let first = "const [word, done] = arguments;
         document.getElementById('passphrase').value = word;
         document.getElementById('again').value = word;
         document.querySelector(\"form[action='/teacher/first'] button\").click();
         done(true);";
    browser.run_later(first, &json!(PASSPHRASE));
    browser.until(
        "return location.pathname !== '/teacher' && document.readyState === 'complete';",
    );
    let home = format!("/i/{}", school.investigation);
    let bag = school.bags[0];
    let pages = [
        ("run", format!("{home}/run/{PERIOD}")),
        ("bag", format!("{home}/run/{PERIOD}/bag/{bag}")),
        ("results", format!("{home}/results")),
        ("prepare", format!("{home}/prepare")),
    ];
    for (name, path) in pages {
        browser.open(&served.at(&path));
        browser.run("for (const one of document.querySelectorAll('details')) one.open = true;");
        says("(plan 1)");
        let told = browser.text().matches("behind a name").count();
        assert_eq!(told, 1, "{path}: {}", browser.text());
        eyes.look(&format!("{name} with an older kind"), Hands::Mouse);
    }
    says(&format!(
        "Period {PERIOD}: {} bags are sealed as an older plan had them",
        school.bags.len()
    ));
    eyes.done();
}
