//! `barm demo`: the whole job on an invented school, without harm to what a person has changed.

mod program;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

const FILES: [&str; 5] =
    ["plan.toml", "readings.csv", "forecast.pdf", "prep.pdf", "results.pdf"];

fn demo(folder: &Path) -> String {
    let (out, err) = program::run(folder, &["demo", "--out", "day"]).ended(0);
    assert_eq!(err, "", "a log holds answers only");
    out
}

/// Every file of a folder with its bytes.
fn everything(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries =
        fs::read_dir(folder).expect("the folder").map(|entry| entry.expect("an entry"));
    entries
        .map(|entry| {
            let name = entry.file_name().into_string().expect("a plain name");
            (name, fs::read(entry.path()).expect("a file"))
        })
        .collect()
}

#[test]
fn the_demo_does_the_whole_job_and_twice_is_as_once() {
    let home = tempfile::tempdir().expect("a folder");
    let first = demo(home.path());
    let day = home.path().join("day");
    let written = everything(&day);
    for name in FILES {
        let bytes = written.get(name).unwrap_or_else(|| panic!("{name} is not there"));
        assert!(!name.ends_with(".pdf") || bytes.starts_with(b"%PDF"), "{name}");
        assert!(first.contains(name), "{name} is not named in\n{first}");
    }
    assert_eq!(
        written["plan.toml"],
        fs::read(program::invented().join("plan.toml")).expect("it")
    );
    assert!(first.contains("invented"), "{first}");
    assert!(first.lines().count() <= 75, "{} lines:\n{first}", first.lines().count());
    assert!(first.lines().all(|line| line.chars().count() <= 100), "{first}");
    assert!(!first.contains("left as it is"), "nothing was there before:\n{first}");

    let second = demo(home.path());
    assert_eq!(first, second, "it says the same again");
    assert_eq!(written, everything(&day), "nothing changes");
}

#[test]
fn a_changed_plan_is_kept_and_used() {
    let home = tempfile::tempdir().expect("a folder");
    let day = home.path().join("day");
    fs::create_dir(&day).expect("made");
    let plan = fs::read_to_string(program::invented().join("plan.toml")).expect("the plan");
    let title = "Which breakfast-cupboard food feeds yeast best?";
    let mine = plan.replacen(title, "What does Ms. Alder's class feed its yeast?", 1);
    assert_ne!(plan, mine);
    fs::write(day.join("plan.toml"), &mine).expect("written");

    let out = demo(home.path());
    assert_eq!(fs::read_to_string(day.join("plan.toml")).expect("it"), mine, "kept");
    assert!(out.starts_with("What does Ms. Alder's class feed its yeast?\n"), "used:\n{out}");
    let line = out.lines().find(|line| line.contains("plan.toml")).expect("its line");
    assert!(line.contains("yours, left as it is"), "said so: {line}");
    let line = out.lines().find(|line| line.contains("readings.csv")).expect("its line");
    assert!(!line.contains("yours"), "only the plan is theirs: {line}");
}

#[test]
fn a_folder_that_cannot_be_made_is_one_sentence_and_2() {
    let home = tempfile::tempdir().expect("a folder");
    fs::write(home.path().join("note.txt"), "a file, not a folder").expect("written");
    let (out, err) = program::run(home.path(), &["demo", "--out", "note.txt/day"]).ended(2);
    assert_eq!(out, "");
    one_sentence(&err, "note.txt/day");
    assert_eq!(fs::read_to_string(home.path().join("note.txt")).expect("it").len(), 20);
}

/// One sentence that names the place; causes and hints stand under it, set in.
fn one_sentence(err: &str, place: &str) {
    let own: Vec<&str> = err.lines().filter(|line| !line.starts_with("  ")).collect();
    assert_eq!(own.len(), 1, "{err}");
    assert!(own[0].starts_with("barm: cannot ") && own[0].contains(place), "{err}");
    assert!(err.lines().any(|line| line.starts_with("  try: ")), "{err}");
}

#[cfg(unix)]
#[test]
fn a_folder_that_cannot_be_written_to_is_one_sentence_and_2() {
    use std::os::unix::fs::PermissionsExt;
    let home = tempfile::tempdir().expect("a folder");
    let day = home.path().join("day");
    fs::create_dir(&day).expect("made");
    fs::set_permissions(&day, fs::Permissions::from_mode(0o555)).expect("set");
    if fs::write(day.join("probe"), "").is_ok() {
        program::skip("a_folder_that_cannot_be_written_to", "this user may write anywhere");
        return;
    }
    let (out, err) = program::run(home.path(), &["demo", "--out", "day"]).ended(2);
    assert_eq!(out, "");
    one_sentence(&err, "day");
    assert!(everything(&day).is_empty());
}

/// The invented day opens with two periods done, one at work, and a clock that runs thirty times
/// as fast as a true one.
#[test]
#[cfg(unix)]
fn the_demo_is_served_in_the_middle_of_its_day() {
    let home = tempfile::tempdir().expect("a folder");
    let mut served = Served::start(&home.path().join("day"));
    assert!(served.said.contains("An invented school"), "{}", served.said);
    let (before, speed) = served.time();
    assert!((speed - 30.0).abs() < 1e-9, "{speed}");
    let pause = std::time::Duration::from_millis(400);
    std::thread::sleep(pause);
    let (after, _) = served.time();
    // It went on for at least the true time between the two questions, thirty times.
    let least = 30.0 * pause.as_secs_f64() * 1e3;
    assert!(after - before >= least, "{} ms", after - before);
    let record = home.path().join("day").join("record");
    // The period begins once the simulated teacher has come in.
    let patience = std::time::Instant::now() + std::time::Duration::from_secs(60);
    let (began, ended, read) = loop {
        let stands = stands(&record);
        if stands.0.len() >= 3 || std::time::Instant::now() > patience {
            break stands;
        }
        std::thread::sleep(pause);
    };
    served.stop();
    assert_eq!(ended.len(), 2, "two are over: {ended:?}");
    assert_eq!(began.len(), 3, "and one is at work: {began:?}");
    assert!(ended.iter().all(|name| began.contains(name)));
    assert!(read.len() >= 2, "what is over was read: {read:?}");
}

/// What the invented groups claim could have been handed in by them: of their own bags, and whole.
#[test]
fn invented_claims_are_claims_of_the_groups_that_make_them() {
    use barm_domain::claim::{Claim, Typed};
    let plan = include_bytes!("../src/demo/plan.toml");
    let plan = barm_documents::plan_text::read(plan).plan.expect("a sound plan");
    let file = include_str!("../src/demo/claims.json");
    let claims: Vec<serde_json::Value> = serde_json::from_str(file).expect("JSON");
    assert!(claims.len() > 4);
    for one in &claims {
        let text = |key: &str| one["claim"][key].as_str().expect("a text");
        let typed = Typed {
            question: text("question"),
            treatment: text("treatment"),
            says: text("says"),
            by: text("by"),
            evidence: text("evidence"),
            reasoning: text("reasoning"),
        };
        let claim =
            Claim::read(&plan, &typed).unwrap_or_else(|faults| panic!("{faults:?}: {one}"));
        assert!(!claim.evidence.is_empty() && !claim.reasoning.is_empty());
        let made = plan.bags.iter().any(|bag| {
            one["period"] == bag.period.as_str()
                && one["group"] == bag.group
                && bag.treatment == claim.treatment
        });
        assert!(made, "made by nobody of that group: {one}");
    }
}

/// Periods that began, periods that ended, and periods of bags that were read: of a copy, since the
/// record is at work.
#[cfg(unix)]
fn stands(record: &Path) -> (Vec<String>, Vec<String>, std::collections::BTreeSet<u8>) {
    use barm_domain::record::{Subject, What};
    let copy = tempfile::tempdir().expect("a folder");
    for file in fs::read_dir(record).expect("the record").flatten() {
        let name = file.file_name();
        if name.to_string_lossy().contains(".sqlite") {
            // What comes and goes beside the record need not be there any more.
            let _ = fs::copy(file.path(), copy.path().join(name));
        }
    }
    let place = barm_store::Place::Folder(copy.path().to_owned());
    let store = barm_store::Store::open(&place).expect("the record");
    let (mut began, mut ended) = (Vec::new(), Vec::new());
    let mut read = std::collections::BTreeSet::new();
    for (_, entry) in store.entries(1, 0).expect("entries") {
        match (&entry.subject, &entry.what) {
            (Subject::Period(name), What::Began) => began.push(name.clone()),
            (Subject::Period(name), What::Ended) => ended.push(name.clone()),
            (Subject::Bag(code), What::Reading { .. }) => {
                read.insert(code.period());
            }
            _ => {}
        }
    }
    (began, ended, read)
}

/// The demonstration, serving; killed when it is dropped.
#[cfg(unix)]
struct Served {
    child: std::process::Child,
    _out: std::io::BufReader<std::process::ChildStdout>,
    address: String,
    said: String,
}

#[cfg(unix)]
impl Served {
    fn start(day: &Path) -> Self {
        use std::io::BufRead;
        let mut command = program::barm();
        command.args(["demo", "--serve", "--port", "0", "--out"]).arg(day);
        let mut child =
            command.stdout(std::process::Stdio::piped()).spawn().expect("it starts");
        let mut out = std::io::BufReader::new(child.stdout.take().expect("its answer"));
        let mut said = String::new();
        while !said.contains("Stop with Ctrl-C") {
            assert!(out.read_line(&mut said).expect("text") > 0, "it ended:\n{said}");
        }
        let page = said.split("http://").nth(1).and_then(|rest| rest.split('/').next());
        let address = page.expect("it says where the run page is").to_owned();
        Self { child, _out: out, address, said }
    }

    /// Its clock (ms since 1970) and how fast that runs.
    fn time(&self) -> (f64, f64) {
        use std::io::{Read, Write};
        let mut stream = std::net::TcpStream::connect(&self.address).expect("open");
        let host = &self.address;
        let head = format!("GET /time HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n");
        stream.write_all(head.as_bytes()).expect("sent");
        let mut answer = String::new();
        stream.read_to_string(&mut answer).expect("an answer");
        let (_, body) = answer.split_once("\r\n\r\n").expect("a body");
        let body: serde_json::Value = serde_json::from_str(body).expect("JSON");
        (body["now_ms"].as_f64().expect("a time"), body["speed"].as_f64().expect("a speed"))
    }

    fn stop(&mut self) {
        let _ = self.child.kill();
        self.child.wait().expect("it ends");
    }
}

#[cfg(unix)]
impl Drop for Served {
    fn drop(&mut self) {
        self.stop();
    }
}
