//! The help of the program, word for word: a named snapshot in `tests/snapshots/help.txt`.
//!
//! After a wanted change, run this test with `BARM_RENEW=1` and read the difference.

mod program;

use std::fmt::Write;
use std::fs;
use std::path::Path;

/// Commands that the top help lists, in its order, but for `help` itself.
fn commands(help: &str) -> Vec<&str> {
    let listed = help.lines().skip_while(|line| *line != "Commands:").skip(1);
    let names = listed.take_while(|line| !line.is_empty());
    let names = names.filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    let names = names.filter_map(|line| line.split_whitespace().next());
    names.filter(|name| *name != "help").collect()
}

#[test]
fn the_help_says_what_it_said() {
    let help = |arguments: &[&str]| {
        let (out, err) = program::run(&program::invented(), arguments).ended(0);
        assert_eq!(err, "", "help goes to the answer");
        out
    };
    let top = help(&["--help"]);
    let mut all = format!("$ barm --help\n{top}");
    let commands = commands(&top);
    assert!(commands.len() >= 8, "{commands:?}");
    for command in commands {
        let own = help(&[command, "--help"]);
        write!(all, "\n$ barm {command} --help\n{own}").expect("text grows");
    }
    // Blanks at line ends are no part of what is said.
    let all: String = all.lines().flat_map(|line| [line.trim_end(), "\n"]).collect();
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/snapshots/help.txt");
    if std::env::var_os("BARM_RENEW").is_some() {
        fs::write(&file, &all).expect("the snapshot is written");
    }
    let snapshot = fs::read_to_string(&file).expect("the snapshot");
    for (number, (found, expected)) in all.lines().zip(snapshot.lines()).enumerate() {
        assert_eq!(found, expected, "line {} of {}", number + 1, file.display());
    }
    assert_eq!(all.lines().count(), snapshot.lines().count());
}
