//! The prints that all tests look at, made once: every part of four plans, in both languages, on
//! both papers.

use crate::program::{invented, run};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

/// Which plan was printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Class {
    /// The invented school of the demo.
    Demo,
    /// One group in one period.
    One,
    /// Twelve treatments, twenty groups, hostile texts everywhere, prices missing.
    Overfull,
    /// One period and one treatment; no bags, cupboard, controls, rules or standards, and no reading.
    Bare,
}

/// One run of `barm print`.
#[derive(Debug)]
pub(crate) struct Print {
    /// The plan.
    pub(crate) class: Class,
    /// `en` or `es`.
    pub(crate) language: &'static str,
    /// `letter` or `a4`.
    pub(crate) paper: &'static str,
    /// Where its files lie.
    pub(crate) folder: PathBuf,
}

impl Print {
    /// One of its files; none if this plan has no use for it.
    pub(crate) fn file(&self, name: &str) -> Option<PathBuf> {
        let path = self.folder.join(name);
        path.is_file().then_some(path)
    }

    /// All its PDFs, by name.
    pub(crate) fn pdfs(&self) -> Vec<PathBuf> {
        let files = fs::read_dir(&self.folder).expect("a folder").map(|file| file.expect("it"));
        let mut files: Vec<PathBuf> = files.map(|file| file.path()).collect();
        files.retain(|file| file.extension().is_some_and(|end| end == "pdf"));
        files.sort();
        files
    }
}

/// Where the prints lie: a folder that goes, or the one named by `BARM_PAPER`, to be looked at.
static HOME: LazyLock<(PathBuf, Option<tempfile::TempDir>)> = LazyLock::new(|| {
    if let Some(folder) = std::env::var_os("BARM_PAPER") {
        let folder = PathBuf::from(folder);
        fs::create_dir_all(&folder).expect("a folder");
        return (folder.canonicalize().expect("a folder"), None);
    }
    let folder = tempfile::tempdir().expect("a folder");
    (folder.path().to_owned(), Some(folder))
});

/// Every print. Only the long suite prints the large plans in all four ways: the others the demo once in each
/// language and on each paper, the overfull plan likewise, in the quick one once.
pub(crate) static PRINTS: LazyLock<Vec<Print>> = LazyLock::new(|| {
    let size = std::env::var("BARM_TEST_SIZE");
    let (quick, long) = (size.as_deref() == Ok("quick"), size.as_deref() == Ok("long"));
    let home = HOME.0.as_path();
    write_plans(home);
    let mut prints = Vec::new();
    for class in [Class::Demo, Class::One, Class::Overfull, Class::Bare] {
        for (language, paper) in
            [("es", "letter"), ("en", "a4"), ("en", "letter"), ("es", "a4")]
        {
            let enough = match class {
                Class::Demo => (language == "en") == (paper == "letter"),
                Class::One => true,
                Class::Overfull if quick => (language, paper) == ("es", "letter"),
                Class::Overfull => (language == "es") == (paper == "letter"),
                Class::Bare => (language, paper) == ("en", "letter"),
            };
            if !long && !enough {
                continue;
            }
            let folder = home.join(format!("{class:?}-{language}-{paper}"));
            prints.push(Print { class, language, paper, folder });
        }
    }
    std::thread::scope(|scope| {
        let (some, others) = prints.split_at(prints.len() / 2);
        let other = scope.spawn(|| others.iter().for_each(|print| make(home, print)));
        some.iter().for_each(|print| make(home, print));
        other.join().expect("printed");
    });
    prints
});

/// The plan file of a class, for tests that print something else of it.
pub(crate) fn plan_of(class: Class) -> PathBuf {
    LazyLock::force(&PRINTS);
    HOME.0.join(format!("{class:?}.toml"))
}

/// The print of a class in a language on a paper.
pub(crate) fn print_of(class: Class, language: &str, paper: &str) -> &'static Print {
    let fits = |print: &&Print| {
        print.class == class && print.language == language && print.paper == paper
    };
    PRINTS.iter().find(fits).expect("it is made in every size of the suite")
}

fn make(home: &Path, print: &Print) {
    let plan = format!("{:?}.toml", print.class);
    let out = print.folder.to_str().expect("a plain name");
    let mut arguments = vec!["print", &plan, "--out", out];
    arguments.extend(["--language", print.language, "--paper", print.paper]);
    arguments.extend(["--address", ADDRESS]);
    match print.class {
        Class::Demo => arguments.extend(["--readings", "readings.csv"]),
        Class::Bare => arguments.extend(["--readings", "no-readings.csv"]),
        Class::One | Class::Overfull => {}
    }
    let (said, _) = run(home, &arguments).ended(0);
    assert!(said.contains(out), "{said}");
}

/// An address that all prints are made with. The host is reserved for examples (RFC 2606).
pub(crate) const ADDRESS: &str = "https://barm.example";

fn write_plans(home: &Path) {
    let demo = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let write = |name: &str, text: &str| fs::write(home.join(name), text).expect("written");
    write("Demo.toml", &demo);
    let readings = fs::read_to_string(invented().join("readings.csv")).expect("the readings");
    write("readings.csv", &readings);
    let head = readings.lines().next().expect("a heading");
    write("no-readings.csv", &format!("{head}\n"));
    write("Bare.toml", &bare(&demo));
    write("One.toml", &one(home));
    write("Overfull.toml", &overfull(&demo));
    run(home, &["bags", "Overfull.toml", "--anew"]).ended(0);
}

/// A plan for one group in one period, as the program itself writes it.
fn one(home: &Path) -> String {
    let mut arguments = vec!["new", "new.toml", "--date", "2027-03-09"];
    arguments.extend(["--periods", "1", "--groups", "1", "--students", "3"]);
    let new = home.join("new.toml");
    run(home, &arguments).ended(0);
    let text = fs::read_to_string(&new).expect("it was written");
    fs::remove_file(new).expect("taken away");
    text
}

/// The demo with every part left empty that a plan may leave empty.
fn bare(demo: &str) -> String {
    let start = demo.find("[[standard]]").expect("standards");
    let mut text = demo[..start].to_owned();
    for (from, to) in
        [("[[day]]", "[[period]]"), ("[[period]]", "[[period]]"), ("[base]", "# Questions.")]
    {
        let (_, rest) = demo.split_once(from).expect("a section");
        let (section, _) = rest.split_once(to).expect("its end");
        text.push_str(&format!("{from}{section}\n"));
    }
    text.push_str("[[question]]\nid = \"food\"\nasks = \"Which food?\"\nvariable = \"food\"\nreplicates = 1\n");
    text.push_str("[[question.treatment]]\nname = \"Honey\"\nfood = \"honey\"\n");
    text
}

/// Letters that mean something to markup, a title of 200 letters, another direction, pictures.
pub(crate) const HOSTILE: &str = r##"#$@[]*_\<>`{}~^&%"##;

/// The demo with twelve treatments in the questions, twenty groups in a period, and texts that
/// try to break the page.
fn overfull(demo: &str) -> String {
    let title = format!("{HOSTILE} {}", "A very long title indeed ".repeat(8));
    let title: String = title.chars().take(200).collect();
    let quoted = |text: &str| toml::Value::from(text).to_string();
    let mut text = demo
        .replacen(
            r#""Which breakfast-cupboard food feeds yeast best?""#,
            &quoted(title.trim_end()),
            1,
        )
        .replacen("groups = 8", "groups = 20", 1)
        .replacen("students = 24", "students = 60", 1)
        .replace("Nonfat dry milk", &format!("Nonfat {} milk", HOSTILE.replace('\\', r"\\")))
        .replace("\"Otters\"", "\"\u{202B}\u{5E7}\u{5D1}\u{5D5}\u{5E6}\u{5D4} \u{1F9A6}\"");
    // Three more make twelve besides the reference.
    let mut more = String::new();
    for (name, food) in [
        ("A name as long as a name of a treatment can be before nobody reads it", "honey"),
        ("Incomprehensibilities-without-any-space-or-break-in-them", "corn flour"),
        ("White sugar", "white sugar"),
        ("Oat drink", "oat flour"),
    ] {
        more.push_str(&format!(
            "[[question.treatment]]\nname = {}\nfood = {}\n\n",
            quoted(name),
            quoted(food)
        ));
    }
    let start = "# Starch and milk sugar are food only once";
    assert!(text.contains(start), "the demo says where its second question begins");
    text = text.replacen(start, &format!("{more}{start}"), 1);
    without_prices(&text)
}

/// A plan whose materials have no price and no pack.
fn without_prices(text: &str) -> String {
    let kept = text.lines().filter(|line| !line.trim_start().starts_with("price"));
    kept.flat_map(|line| [line, "\n"]).collect()
}
