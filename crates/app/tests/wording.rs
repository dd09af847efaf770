//! The teacher's pages take every word from the catalog, and the catalog holds no word that no
//! page asks for.

use barm_documents::catalog::Wording;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn home() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

fn sources(folder: &Path, all: &mut Vec<PathBuf>) {
    if folder.is_file() {
        all.push(folder.to_owned());
        return;
    }
    for file in fs::read_dir(folder).expect("a folder of sources") {
        let path = file.expect("a file").path();
        let source = path.extension().is_some_and(|end| end == "rs");
        if path.is_dir() || (source && !path.ends_with("tests.rs")) {
            sources(&path, all);
        }
    }
}

/// A source without comments, and without the tests at its end.
fn code(file: &Path) -> String {
    let text = fs::read_to_string(file).expect("a source");
    let in_line = |at: usize| text[at..].lines().nth(1).is_some_and(|mod_| mod_.ends_with('{'));
    let mut tests = text.match_indices("#[cfg(test)]\nmod ").map(|(at, _)| at);
    let text = tests.find(|at| in_line(*at)).map_or(text.as_str(), |at| &text[..at]);
    let kept = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    kept.collect::<Vec<_>>().join("\n")
}

/// A piece of a source: a literal with what is in it, or one other character.
#[derive(Debug, Clone, PartialEq)]
enum Piece {
    Literal(String),
    Other(char),
}

/// A source as literals and other characters.
fn pieces(code: &str) -> Vec<Piece> {
    let mut all = Vec::new();
    let mut rest = code.chars().peekable();
    while let Some(c) = rest.next() {
        let fences = all.iter().rev().take_while(|piece| **piece == Piece::Other('#')).count();
        let raw = fences > 0 && all.iter().rev().nth(fences) == Some(&Piece::Other('r'));
        match c {
            // Raw literals hold pictures and no texts.
            '"' if raw => {
                let end = format!("\"{}", "#".repeat(fences));
                let mut literal = String::new();
                while !literal.ends_with(&end) {
                    let Some(c) = rest.next() else { break };
                    literal.push(c);
                }
            }
            '"' => {
                let mut literal = String::new();
                while let Some(c) = rest.next().filter(|c| *c != '"') {
                    if c == '\\' {
                        let escaped = rest.next().unwrap_or(' ');
                        literal.push(if escaped.is_whitespace() { ' ' } else { escaped });
                    } else {
                        literal.push(c);
                    }
                }
                all.push(Piece::Literal(literal));
            }
            // A character such as '"' opens no literal.
            '\'' if rest.peek() == Some(&'"') => {
                rest.next();
                all.push(Piece::Other('\''));
            }
            c => all.push(Piece::Other(c)),
        }
    }
    all
}

/// One call of `say!` or `lay!`: its key, and the names of what it fills in.
#[derive(Debug, PartialEq)]
struct Call {
    key: String,
    names: Vec<String>,
}

/// Every call in a source.
fn calls(code: &str) -> Vec<Call> {
    let pieces = pieces(code);
    let starts = |at: usize| {
        ["say!(", "lay!("].iter().any(|start| {
            start.chars().enumerate().all(|(i, c)| pieces.get(at + i) == Some(&Piece::Other(c)))
        })
    };
    (0..pieces.len()).filter(|at| starts(*at)).map(|at| call(&pieces[at + 5..])).collect()
}

/// The call whose bracket was just opened.
fn call(pieces: &[Piece]) -> Call {
    let (mut depth, mut part, mut parts) = (1, Vec::new(), Vec::new());
    for piece in pieces {
        match piece {
            Piece::Other('(' | '{' | '[') => depth += 1,
            Piece::Other(')' | '}' | ']') => depth -= 1,
            _ => {}
        }
        let ends = depth == 1 && matches!(piece, Piece::Other(',' | ';'));
        if depth == 0 || ends {
            parts.push(std::mem::take(&mut part));
        } else {
            part.push(piece.clone());
        }
        if depth == 0 {
            break;
        }
    }
    let key = parts.get(1).into_iter().flatten().find_map(|piece| match piece {
        Piece::Literal(key) => Some(key.clone()),
        Piece::Other(_) => None,
    });
    let name = |part: &Vec<Piece>| -> String {
        let letters = part.iter().map_while(|piece| match piece {
            Piece::Other(c) if *c != '=' => Some(*c),
            _ => None,
        });
        letters.collect::<String>().trim().to_owned()
    };
    let mut names: Vec<String> = parts.iter().skip(2).map(name).collect();
    names.retain(|name| !name.is_empty());
    names.sort();
    Call { key: key.unwrap_or_default(), names }
}

#[test]
fn calls_and_catalog_agree_in_keys_and_in_open_places() {
    let mut files = Vec::new();
    sources(&home(), &mut files);
    let english = Wording::english();
    let keys: BTreeSet<&String> = english.keys().iter().collect();
    let (mut asked, mut wrong) = (BTreeSet::new(), Vec::new());
    let macros = [home().join("desk/wording.rs"), home().join("web/words.rs")];
    for file in files.iter().filter(|file| !macros.contains(file)) {
        for Call { key, names } in calls(&code(file)) {
            if !keys.contains(&key) {
                wrong.push(format!("{}: no text for {key:?}", file.display()));
            } else if names != english.placeholders(&key) {
                let open = english.placeholders(&key);
                wrong.push(format!("{}: {key} fills {names:?} of {open:?}", file.display()));
            }
            asked.insert(key);
        }
    }
    // The words of the macros' own module.
    asked.insert("word-and".to_owned());
    assert!(asked.len() > 100, "only {} keys are asked for", asked.len());
    assert!(wrong.is_empty(), "{wrong:#?}");
    let unused: Vec<&&String> = keys.iter().filter(|key| !asked.contains(**key)).collect();
    assert!(unused.is_empty(), "nobody asks for {unused:?}");
}

#[test]
fn calls_are_found_with_everything_they_fill_in() {
    let found = calls(
        "(say!(w, \"a-b\")) x(lay!(\n w,\n \"c\",\n one = html! { b { (x(1, 2)) \"=, )\" } },\n \
         two = y[0],\n ; n = z.len()))",
    );
    let call = |key: &str, names: &[&str]| Call {
        key: key.to_owned(),
        names: names.iter().map(|name| (*name).to_owned()).collect(),
    };
    assert_eq!(found, [call("a-b", &[]), call("c", &["n", "one", "two"])]);
}

/// The pages whose words are in the catalog, and what is worded for them.
const MOVED: &[&str] = &[
    "web/again",
    "web/approve",
    "web/claims",
    "web/devices.rs",
    "web/enter",
    "web/every_bag",
    "web/head.rs",
    "web/kept",
    "web/marks",
    "web/network.rs",
    "web/plan",
    "web/prepare",
    "web/rehearse",
    "web/results",
    "web/round",
    "web/run",
    "web/sign_in.rs",
    "web/signs.rs",
    "web/start",
    "web/talk",
    "web/years",
    "desk/drawings.rs",
    "desk/editing/form.rs",
    "desk/editing/verdict.rs",
    "desk/room/claims",
    "desk/room/doubts.rs",
    "desk/room/round.rs",
    "desk/room/run",
    "desk/room/talk",
    "desk/start.rs",
];

/// What is no English although it has words: what one types, and values of a plan.
const TYPED: &[&str] = &[
    "barm passphrase",
    "barm restore \"",
    "barm export barm-text --data \"",
    "--lan",
    "active dry",
    "America/New_York",
];

/// Words of a literal of two letters at least; what is filled in does not count.
fn words(literal: &str) -> Vec<String> {
    let mut plain = String::new();
    let mut depth = 0;
    for c in literal.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ if depth == 0 => plain.push(c),
            _ => plain.push(' '),
        }
    }
    let parts = plain.split(|c: char| c.is_whitespace());
    let letters = |part: &str| part.chars().filter(|c| c.is_alphabetic()).count();
    parts.filter(|part| letters(part) >= 2).map(str::to_owned).collect()
}

/// Whether a literal reads like a text for people: several words, a word with a capital letter, or
/// anything of three letters that stands by itself in an element or has a space beside it.
fn reads_like_a_text(literal: &str, alone: bool) -> bool {
    let shapes = ["charset=", "filename=", "%Y", "%-I"];
    let has_shape = shapes.iter().any(|part| literal.contains(part));
    if has_shape || literal.starts_with(['/', '<']) || TYPED.contains(&literal) {
        return false;
    }
    let words = words(literal);
    let Some(first) = words.first() else { return false };
    let letters = first.chars().filter(|c| c.is_alphabetic()).count();
    let mut start = first.chars();
    let capital = start.next().is_some_and(char::is_uppercase)
        && start.next().is_some_and(char::is_lowercase);
    words.len() > 1 || capital || (letters > 2 && alone)
}

/// Texts that stand in a source itself.
fn texts(code: &str) -> Vec<String> {
    let pieces = pieces(code);
    let mut found = Vec::new();
    for (at, piece) in pieces.iter().enumerate() {
        let Piece::Literal(literal) = piece else { continue };
        let before: String = pieces[at.saturating_sub(60)..at]
            .iter()
            .map(|piece| if let Piece::Other(c) = piece { *c } else { '"' })
            .collect();
        // The log is written for whoever looks after the program, in English.
        let logged = ["write(web.now()", "log.write("].iter().any(|call| before.contains(call));
        let for_the_log = logged || before.contains("reason = ");
        let clause = before.strip_suffix("{ ").unwrap_or_default();
        let clause = clause.rsplit(['{', '}', ';']).next().unwrap_or_default();
        let chosen =
            !clause.contains('@') && (clause.contains("if ") || clause.contains("else"));
        let attribute = before.ends_with("={ ");
        let spaced = literal.starts_with(' ') || literal.ends_with(' ');
        let alone = (spaced || before.ends_with("{ ")) && !chosen && !attribute;
        if !for_the_log && reads_like_a_text(literal, alone) {
            found.push(literal.clone());
        }
    }
    found
}

#[test]
fn no_english_stands_in_the_pages_themselves() {
    let mut offences = Vec::new();
    for place in MOVED {
        let mut files = Vec::new();
        sources(&home().join(place), &mut files);
        assert!(!files.is_empty(), "nothing at {place}");
        for file in files {
            let found = texts(&code(&file));
            offences.extend(found.iter().map(|text| format!("{}: {text:?}", file.display())));
        }
    }
    assert!(offences.is_empty(), "words belong into the catalog: {offences:#?}");
}

#[test]
fn a_text_is_told_from_a_name() {
    for text in [
        "p { \"Nothing waits.\" }",
        "h2 { \"bags\" }",
        "a { \"Plan\" }",
        "b { (x) \" zero\" }",
        "format!(\"{n} bags of each\")",
        "format!(\"Plan: {}\", title)",
    ] {
        assert_eq!(texts(text).len(), 1, "{text}");
    }
    for name in [
        "input type=\"hidden\" name=\"do\"",
        "span { (mm) \" mm\" }",
        "format!(\"correct {code} {of}\")",
        "href={ \"/i/\" (id) \"/plan\" }",
        "kbd { \"j\" }",
        "(\"text/csv; charset=utf-8\")",
        "if c == '\"' { x } else { y }",
        "concat!(r##\"<path fill=\"#fff\" d=\"Two words\"/>\"##, x)",
    ] {
        assert_eq!(texts(name), [""; 0], "{name}");
    }
}
