//! What is printed when it is asked for, and what becomes of files that are there already.

use crate::prints::{Class, PRINTS, plan_of, print_of};
use crate::program::run;
use crate::tools::name;
use std::fs;

#[test]
fn a_plan_gets_what_it_has_use_for() {
    for print in PRINTS.iter() {
        assert!(print.file("prep.pdf").is_some(), "{print:?}");
        let found = print.file("results.pdf").is_some();
        let given = matches!(print.class, Class::Demo | Class::Bare);
        assert_eq!(found, given, "only these are given a file of readings: {print:?}");
    }
    assert!(print_of(Class::Demo, "es", "a4").file("forecast.pdf").is_some());
}

#[test]
fn printed_again_it_takes_the_place_of_the_older_print_but_of_nobodys_own_file() {
    let home = tempfile::tempdir().expect("a folder");
    let plan = home.path().join("plan.toml");
    fs::copy(plan_of(Class::One), &plan).expect("a copy");
    let print = |what: &str| {
        run(home.path(), &["print", "plan.toml", "--what", what, "--out", "paper"])
    };
    let prep = home.path().join("paper/prep.pdf");
    print("prep").ended(0);
    let first = fs::read(&prep).expect("printed");
    let text = fs::read_to_string(&plan).expect("the plan");
    fs::write(&plan, text.replacen("title = \"", "title = \"Again: ", 1)).expect("changed");
    let (said, _) = print("prep").ended(0);
    assert!(said.contains("written anew"), "{said}");
    assert_ne!(fs::read(&prep).expect("printed"), first);

    fs::write(&prep, "mine").expect("written");
    let (_, err) = print("forecast,prep").ended(2);
    assert!(err.contains("prep.pdf is there already, and nothing was written"), "{err}");
    assert_eq!(fs::read(&prep).expect("it"), b"mine");
    assert!(!home.path().join("paper/forecast.pdf").exists(), "nothing was written");
}

#[test]
fn what_cannot_be_printed_is_said_with_what_to_do() {
    let plan = plan_of(Class::One);
    let home = tempfile::tempdir().expect("a folder");
    for (more, says, hint) in [
        (&["--what", "results"][..], "only from the class's readings", "--readings"),
        (&["--period", "9"], "no period “9”", ""),
        (&["--labels", "10-up", "--start-cell", "11"], "no label 11", "from 1 to 10"),
        (&["--what", "poster"], "invalid value 'poster'", "possible values"),
        (&["--language", "fi"], "invalid value 'fi'", "en, es"),
    ] {
        let mut arguments = vec!["print", name(&plan), "--out", "paper"];
        arguments.extend(more);
        let (_, err) = run(home.path(), &arguments).ended(2);
        assert!(err.contains(says) && err.contains(hint), "{more:?}: {err}");
    }
    assert!(!home.path().join("paper").exists(), "nothing was written");
}
