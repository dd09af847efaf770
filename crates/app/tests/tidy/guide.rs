//! The guide for teachers says what is there: its links, pictures, commands and the program's own words.

use super::{root, tracked};
use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

/// Files outside the wording in which words stand that a teacher reads on a page.
const BESIDE: [&str; 4] = [
    "crates/app/src/desk/held_back.rs",
    "crates/domain/src/ready/answers.rs",
    "crates/domain/src/ready/mod.rs",
    "crates/domain/src/words/comparison.rs",
];

/// What a guide may speak of.
struct Program {
    /// Texts, each cut at its open places.
    texts: Vec<Vec<String>>,
    /// Names of commands.
    commands: BTreeSet<String>,
    /// All of the help, for options.
    help: String,
}

/// A page: its name under `docs/guide`, and what stands in it.
type Page = (String, String);

fn pages() -> Vec<Page> {
    let files = tracked().into_iter().filter(|file| {
        file.starts_with("docs/guide") && file.extension().is_some_and(|e| e == "md")
    });
    let read = |file: PathBuf| {
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        (name, fs::read_to_string(root().join(&file)).expect("a page is UTF-8"))
    };
    files.map(read).collect()
}

fn program() -> Program {
    let mut texts = Vec::new();
    let wording = tracked().into_iter().filter(|file| {
        file.ends_with("catalog/en.ftl") || file.to_string_lossy().contains("/teacher/en/")
    });
    for file in wording {
        let text = fs::read_to_string(root().join(&file)).expect("wording is UTF-8");
        for value in messages(&text) {
            patterns(&value, &mut texts);
        }
    }
    for file in BESIDE {
        let text = fs::read_to_string(root().join(file)).expect("a source file is UTF-8");
        for line in text.lines().filter(|line| !line.trim_start().starts_with("//")) {
            texts.extend(line.split('"').skip(1).step_by(2).map(|said| vec![said.to_owned()]));
        }
    }
    let help = fs::read_to_string(root().join("crates/app/tests/snapshots/help.txt"));
    let help = help.expect("the help of every command");
    let list = help.split("\nCommands:\n").nth(1).and_then(|rest| rest.split("\n\n").next());
    let rows = list.unwrap_or_default().lines().filter(|row| !row.starts_with("   "));
    let commands = rows.filter_map(|row| row.split_whitespace().next()).map(str::to_owned);
    Program { texts, commands: commands.collect(), help }
}

/// The values of a file of wording, each with its line ends.
fn messages(file: &str) -> Vec<String> {
    let mut values: Vec<String> = Vec::new();
    for line in file.lines().filter(|line| !line.starts_with('#')) {
        let goes_on = line.starts_with([' ', '}']);
        if goes_on {
            if let Some(last) = values.last_mut() {
                *last += "\n";
                *last += line.trim();
            }
        } else if let Some((_, value)) = line.split_once(" = ") {
            values.push(value.to_owned());
        }
    }
    values
}

/// A value cut at its open places; one that is a choice and nothing else is each of its choices.
fn patterns(value: &str, all: &mut Vec<Vec<String>>) {
    let (mut pieces, mut open, mut depth) = (vec![String::new()], String::new(), 0_u32);
    for letter in value.chars() {
        match letter {
            '{' => depth += 1,
            '}' => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    pieces.push(String::new());
                }
            }
            _ => {}
        }
        if depth > 0 {
            open.push(letter);
        } else if letter != '}' {
            pieces.last_mut().expect("there is a first").push(letter);
        }
    }
    if pieces.iter().all(|piece| piece.trim().is_empty()) && open.contains("->") {
        for choice in open.lines().filter_map(|line| line.split_once("] ")) {
            patterns(choice.1, all);
        }
    } else {
        all.push(pieces);
    }
}

/// Whether somebody could read `said` where a text with open places stands.
fn is_said(said: &str, pieces: &[String]) -> bool {
    let Some((first, rest)) = pieces.split_first() else { return false };
    let Some((last, middle)) = rest.split_last() else { return said == first };
    let inside =
        said.strip_prefix(first.as_str()).and_then(|on| on.strip_suffix(last.as_str()));
    let Some(mut left) = inside else { return false };
    // What is all open place says nothing.
    let letters = |piece: &String| piece.chars().filter(|c| c.is_alphabetic()).count();
    if pieces.iter().map(letters).sum::<usize>() < 3 {
        return false;
    }
    for piece in middle {
        let Some((_, behind)) = left.split_once(piece.as_str()) else { return false };
        left = behind;
    }
    true
}

/// A page without its blocks of code, on one line.
fn prose(text: &str) -> String {
    let outside = text.split("```").step_by(2).collect::<String>();
    outside.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What stands in a page as code: blocks and spans.
fn code(text: &str) -> Vec<String> {
    let blocks = text.split("```").skip(1).step_by(2);
    let lines = blocks.flat_map(str::lines).map(str::to_owned);
    let prose = prose(text);
    lines.chain(prose.split('`').skip(1).step_by(2).map(str::to_owned)).collect()
}

fn links(text: &str) -> Vec<String> {
    let behind = text.split("](").skip(1);
    let target = |rest: &str| rest.split([')', '#']).next().unwrap_or_default().to_owned();
    behind.map(target).filter(|to| !to.is_empty() && !to.contains("://")).collect()
}

/// Everything in these pages that is not so.
fn faults(pages: &[Page], program: &Program) -> Vec<String> {
    let folder = root().join("docs/guide");
    let way_in = pages.iter().find(|(name, _)| name == "README.md");
    let listed = way_in.map(|(_, text)| links(text)).unwrap_or_default();
    let mut faults = Vec::new();
    for (name, text) in pages {
        let mut fault = |says: String| faults.push(format!("{name}: {says}"));
        if name != "README.md" && !listed.contains(name) {
            fault("README.md does not lead here".to_owned());
        }
        let links = links(text);
        for to in links.iter().filter(|to| !folder.join(to).is_file()) {
            fault(format!("{to} is no file"));
        }
        let picture = |to: &String| to.starts_with("../gallery/") && to.ends_with(".png");
        if !links.iter().any(picture) {
            fault("no picture of the gallery".to_owned());
        }
        let prose = prose(text);
        let parts: Vec<&str> = prose.split("**").collect();
        if parts.len().is_multiple_of(2) {
            fault("a ** without another".to_owned());
        }
        for said in parts.iter().skip(1).step_by(2) {
            if !program.texts.iter().any(|pieces| is_said(said, pieces)) {
                fault(format!("the program does not say “{said}”"));
            }
        }
        for line in code(text) {
            let line = line.split(" # ").next().unwrap_or_default();
            let mut words = line.split_whitespace().skip_while(|word| *word != "barm").skip(1);
            let Some(first) = words.next() else { continue };
            if !first.starts_with('-') && !program.commands.contains(first) {
                fault(format!("barm has no command {first}"));
            }
            for option in line.split_whitespace().filter(|word| word.starts_with("--")) {
                if !program.help.contains(&format!(" {option} "))
                    && !program.help.contains(&format!(" {option}\n"))
                {
                    fault(format!("barm has no option {option}"));
                }
            }
        }
    }
    faults
}

#[test]
fn the_guide_says_what_is_there() {
    let (pages, program) = (pages(), program());
    assert!(pages.len() > 15, "only {} pages were found", pages.len());
    assert!(program.texts.len() > 1000, "only {} texts were found", program.texts.len());
    assert!(program.commands.len() > 20, "commands: {:?}", program.commands);
    let faults = faults(&pages, &program);
    assert!(faults.is_empty(), "mend the guide:\n{}", faults.join("\n"));
}

/// Each break of a copy is found, and named by its own words.
#[test]
fn a_guide_that_is_wrong_is_noticed() {
    let (pages, program) = (pages(), program());
    let breaks = [
        ("**Start the clock**", "**Start the watch**", "the program does not say"),
        ("**Start the clock**", "**Start the clock", "a ** without another"),
        ("](../gallery/run.png)", "](../gallery/runs.png)", "is no file"),
        ("barm rehearse", "barm repeat", "barm has no command repeat"),
        ("--short 30", "--shorter 30", "barm has no option --shorter"),
        ("](run-a-period.md)", "](let-groups-in.md)", "README.md does not lead here"),
    ];
    for (stands, instead, says) in breaks {
        let broken: Vec<Page> = pages
            .iter()
            .map(|(name, text)| (name.clone(), text.replace(stands, instead)))
            .collect();
        assert_ne!(broken, pages, "{stands} stands nowhere");
        let faults = faults(&broken, &program);
        assert!(faults.iter().any(|one| one.contains(says)), "{stands}: {faults:?}");
    }
    let bare = vec![("bare.md".to_owned(), "Nothing to see.".to_owned())];
    assert!(faults(&bare, &program).iter().any(|one| one.contains("no picture")));
}

#[test]
fn open_places_match_words_and_nothing_else() {
    let mut texts = Vec::new();
    patterns("Write { $mm } mm", &mut texts);
    patterns("{ $count ->\n[one] 1 fault\n*[other] { $count } faults\n}", &mut texts);
    patterns("{ $time }", &mut texts);
    let said = |text: &str| texts.iter().any(|pieces| is_said(text, pieces));
    for text in ["Write 10 mm", "1 fault", "3 faults"] {
        assert!(said(text), "{text}");
    }
    for text in ["Write", "Write 10 cm", "fault", "anything", "3 faults more"] {
        assert!(!said(text), "{text}");
    }
}
