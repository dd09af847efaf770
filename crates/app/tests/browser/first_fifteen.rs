//! The first fifteen minutes of a teacher who has an empty folder: from the passphrase to a checked
//! plan with its shopping list, and the run page; with clicks and keystrokes counted.

use crate::browser::Browser;
use crate::school::Served;
use crate::{skip, times};
use barm_domain::ready::{QUESTIONS, Ready};
use serde_json::{Value, json};
use std::cell::Cell;
use std::path::Path;
use std::process::Command;

/// Hands that click and type, and count what they do.
struct Hands<'b> {
    browser: &'b Browser,
    clicks: Cell<usize>,
    keys: Cell<usize>,
}

impl<'b> Hands<'b> {
    const fn on(browser: &'b Browser) -> Self {
        Self { browser, clicks: Cell::new(0), keys: Cell::new(0) }
    }

    fn click(&self, selector: &str) {
        self.browser.click(selector);
        self.clicks.set(self.clicks.get() + 1);
    }

    /// Clicks into a field, selects what stands there, which is one key, and types over it.
    fn write(&self, selector: &str, text: &str) {
        let find = format!("const one = document.querySelector({}); ", json!(selector));
        self.browser.until(&format!("{find} return one !== null;"));
        let stood = self.browser.run(&format!(
            "{find} one.focus(); one.type === 'date' || one.select(); return one.value !== '';"
        ));
        self.browser.press(text);
        let select = usize::from(stood == json!(true));
        self.clicks.set(self.clicks.get() + 1);
        self.keys.set(self.keys.get() + select + text.chars().count());
    }

    fn arrives(&self, path: &str) {
        self.browser.until(&format!("return location.pathname.startsWith({});", json!(path)));
    }
}

/// Four invented words.
const PASSPHRASE: &str = "larch kettle umbrella ninepins";

/// From the first page to the shelf.
fn passphrase(hands: &Hands<'_>, served: &Served) {
    hands.browser.open(&served.at("/"));
    hands.arrives("/teacher");
    hands.write("#passphrase", PASSPHRASE);
    hands.write("#again", PASSPHRASE);
    hands.click("form[action='/teacher/first'] button");
    hands.arrives("/shelf");
}

/// The six answers of an invented school in the mountains, written as its teacher writes them.
fn answer_all(hands: &Hands<'_>) {
    // A date is typed in the order in which the browser shows it: month, day, year.
    hands.write("#date", "03092027");
    assert_eq!(
        hands.browser.run("return document.querySelector('#date').value;"),
        "2027-03-09"
    );
    hands.write("#start", "8:25 am");
    hands.write("#altitude", "4600 ft");
    hands.write("#periods", "3");
    hands.write("#groups", "7");
    hands.write("#students", "21");
    hands.click("input[name='food'][value='honey']");
    hands.click("input[name='food'][value='banana']");
    hands.write("#bag", "sandwich");
    hands.write("#water", "104 °F");
    hands.write("#length", "48 min");
}

/// What the checks on the command line say of the plan on the shelf: the exit code.
fn checked(browser: &Browser, folder: &Path, plan: &str) -> Option<i32> {
    let script = "const [address, done] = arguments;
         fetch(address).then((answer) => answer.text()).then(done, (error) => done(String(error)));";
    let text = browser.run_later(script, &json!(plan));
    let file = folder.join("plan.toml");
    std::fs::write(&file, text.as_str().expect("the plan as text")).expect("written");
    let said = Command::new(env!("CARGO_BIN_EXE_barm")).arg("check").arg(&file).output();
    let said = said.expect("barm check runs");
    assert!(!said.stdout.is_empty());
    said.status.code()
}

#[test]
#[allow(clippy::print_stdout)]
fn six_answers_lead_from_an_empty_folder_to_a_checked_plan_and_its_shopping_list() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("the first fifteen minutes", why),
    };
    // At a smaller size: a guided, a structured and the most guided lesson.
    let order = [
        Ready::Enzyme,
        Ready::FoodOrNot,
        Ready::HowWarm,
        Ready::WhichFood,
        Ready::HowMuch,
        Ready::Salt,
        Ready::OwnQuestion,
    ];
    assert_eq!(order.len(), Ready::ALL.len());
    for (place, ready) in order.into_iter().take(times(2, 3, 7)).enumerate() {
        let name = ready.name();
        let folder = tempfile::tempdir().expect("a folder");
        let served = Served::on(folder.path(), 0);
        let hands = Hands::on(&browser);
        passphrase(&hands, &served);
        hands.click("a[href='/start']");
        hands.click(&format!("a[href='/start/ready/{name}']"));
        hands.arrives("/start/ready/");
        let asked = browser.until("return document.querySelectorAll('.question').length;");
        assert_eq!(asked, json!(QUESTIONS.len()), "{name}");
        assert!(QUESTIONS.len() <= 6);
        // Most of what is asked may stay as it is; only the day is nobody else's to know.
        let all = place > 0;
        if all {
            answer_all(&hands);
        } else {
            hands.write("#date", "03092027");
        }
        hands.click("form[action^='/start/ready/'] button[type='submit']");
        hands.arrives("/i/");
        browser.until("return document.querySelector('#tally')?.innerText === 'No faults.';");
        let plan = browser.run("return location.pathname + '.toml';");
        assert_eq!(
            checked(&browser, folder.path(), plan.as_str().expect("a path")),
            Some(0),
            "{name}"
        );
        hands.click("nav a[href$='/prepare']");
        hands.arrives("/i/1/prepare");
        browser.until("return document.querySelectorAll('main table tbody tr').length > 3;");
        assert!(browser.text().contains("What to buy, mix and lay out"), "{name}");
        hands.click("nav a[href$='/run']");
        hands.arrives("/i/1/run/");
        browser.until("return document.querySelector('#begin') !== null;");
        let (clicks, keys) = (hands.clicks.get(), hands.keys.get());
        let what = if all { "every answer typed" } else { "only the day typed" };
        println!(
            "{name}: {clicks} clicks and {keys} keystrokes from an empty folder to the run page, {what}"
        );
        // The passphrase twice and the day; and with all answers 38 letters in eight more fields.
        let typed = 2 * PASSPHRASE.len() + 8;
        if all {
            assert!(clicks <= 20 && keys <= typed + 38 + 8, "{name}: {clicks}, {keys}");
        } else {
            assert!(clicks <= 9 && keys <= typed, "{name}: {clicks}, {keys}");
        }
        served.stop();
    }
}

#[test]
fn the_invented_school_says_on_every_page_that_it_is_invented() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("the invented school from the shelf", why),
    };
    let folder = tempfile::tempdir().expect("a folder");
    let served = Served::on(folder.path(), 0);
    let hands = Hands::on(&browser);
    passphrase(&hands, &served);
    hands.click("form[action='/start/invented'] button");
    hands.arrives("/i/1/");
    assert_eq!(hands.clicks.get(), 4, "one click more than the passphrase takes");
    for part in ["plan", "approve", "prepare", "run", "results"] {
        browser.open(&served.at(&format!("/i/1/{part}")));
        browser.until("return document.querySelector('h1') !== null;");
        assert!(browser.text().contains("Made-up class. Nothing here is real."), "{part}");
    }
    // A second look opens the same one.
    browser.open(&served.at("/start"));
    hands.click("form[action='/start/invented'] button");
    hands.arrives("/i/1/");
}

/// Chooses a file, as somebody does in the window that the system opens.
fn choose(browser: &Browser, file: &Path) {
    let document = browser.special("DOM.getDocument", &json!({}));
    let root = document["root"]["nodeId"].clone();
    let find = json!({ "nodeId": root, "selector": "#pick" });
    let node = browser.special("DOM.querySelector", &find)["nodeId"].clone();
    assert_ne!(node, Value::Null);
    browser.special("DOM.setFileInputFiles", &json!({ "files": [file], "nodeId": node }));
    browser.until("return document.getElementById('brought').value !== '';");
}

#[test]
fn a_file_opens_and_a_faulty_one_shows_what_is_wrong_beside_its_lines() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("opening a plan file", why),
    };
    let folder = tempfile::tempdir().expect("a folder");
    let served = Served::on(folder.path(), 0);
    let hands = Hands::on(&browser);
    passphrase(&hands, &served);
    let sound = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/demo/plan.toml");
    let text = std::fs::read_to_string(&sound).expect("the invented plan");
    let faulty = folder.path().join("faulty.toml");
    // Two faults, at lines that are known.
    let mut lines: Vec<&str> = text.lines().collect();
    let at = |lines: &[&str], start: &str| {
        lines.iter().position(|line| line.starts_with(start)).expect("such a line")
    };
    let (grade, yeast) = (at(&lines, "grade ="), at(&lines, "yeast ="));
    lines[grade] = "grade = 42";
    lines[yeast] = "yeast = \"sourdough\"";
    std::fs::write(&faulty, lines.join("\n")).expect("written");
    browser.open(&served.at("/start"));
    choose(&browser, &faulty);
    hands.click("form[data-opener] button[type='submit']");
    browser.until("return document.querySelectorAll('#wrong li').length >= 2;");
    let seen = browser.run(
        "const box = document.querySelector('#wrong li').getBoundingClientRect();
         return box.top >= 0 && box.bottom <= innerHeight;",
    );
    assert_eq!(seen, json!(true), "what is wrong is seen without scrolling");
    let said = browser.run(
        "return [...document.querySelectorAll('#wrong li')].map((one) =>
             [one.querySelector('.line')?.innerText, one.querySelector('code')?.innerText, one.innerText]);",
    );
    for (line, wrote) in [(grade, lines[grade]), (yeast, lines[yeast])] {
        let found = said.as_array().and_then(|all| {
            all.iter().find(|one| one[0] == json!(format!("Line {}", line + 1)))
        });
        let found = found.unwrap_or_else(|| panic!("line {}: {said}", line + 1));
        assert_eq!(found[1], json!(wrote), "the line stands beside what is wrong with it");
    }
    // What was brought is still there to be mended, and mended it opens.
    let mended = json!(text);
    browser.run(&format!("document.getElementById('brought').value = {mended};"));
    hands.click("form[data-opener] button[type='submit']");
    hands.arrives("/i/1/plan");
    browser.open(&served.at("/start"));
    choose(&browser, &sound);
    hands.click("form[data-opener] button[type='submit']");
    hands.arrives("/i/2/plan");
}
