//! `barm compare` and `barm fit` on tables as people have them, and on nonsense.

mod program;

use program::run;
use std::fs;

/// Runs a command on a table; the file's name comes after the command.
fn on(table: &str, arguments: &[&str]) -> program::Ran {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("data.csv"), table).expect("written");
    let mut all = vec![arguments[0], "data.csv"];
    all.extend(&arguments[1..]);
    run(folder.path(), &all)
}

/// One paragraph on one line.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

const COMPARE: [&str; 5] = ["compare", "--value", "rise", "--by", "food"];

/// Four foods in three periods, rises made up: honey well above the rest.
const FOODS: &str = "period;food;rise (mm)\n1;none;3,0\n1;honey;15,5\n1;oats;6,0\n1;rice;5,0\n2;none;4,5\n\
    2;honey;18,0\n2;oats;8,5\n2;rice;6,5\n3;none;2,0\n3;honey;14,5\n3;oats;4,0\n3;rice;4,5\n";

#[test]
fn a_comparison_says_what_is_clear_and_what_is_not() {
    let arguments = [
        "compare",
        "--value",
        "rise (mm)",
        "--by",
        "food",
        "--block",
        "period",
        "--control",
        "none",
    ];
    let (out, err) = on(FOODS, &arguments).ended(0);
    assert_eq!(err, "");
    let flowing = flowing(&out);
    assert!(out.starts_with("rise (mm) by food, in blocks of period\n"), "{out}");
    for says in [
        "honey above none",
        "honey above oats",
        "too close to tell apart here, which does not show that",
        "(Friedman)",
        "Each against none (Dunnett",
        "takes each row as one bag of its own",
        "inside the blocks 9999 times (seed 1)",
    ] {
        assert!(flowing.contains(says), "{says}:\n{out}");
    }
    assert!(!flowing.contains("Welch") && !flowing.contains("oats above rice"), "{out}");
}

#[test]
fn where_nothing_stands_out_that_is_no_proof_of_sameness() {
    let table = "food,rise\na,3\na,5\na,4\nb,4.5\nb,6\nb,3.5\n";
    let (out, _) = on(table, &COMPARE).ended(0);
    let flowing = flowing(&out);
    assert!(flowing.contains("do not tell the levels apart"), "{out}");
    assert!(flowing.contains("does not show that they are equal"), "{out}");
    // Three and three: 20 deals, and two of them are each other's mirror.
    assert!(flowing.contains("in only 20 ways"), "{out}");
    assert!(flowing.contains("the smallest p that any outcome could give is 0.10"), "{out}");
}

#[test]
fn a_level_that_meets_the_control_only_through_others_is_named() {
    let table = "period,food,rise\n1,none,1\n1,oats,3\n1,none,2\n1,oats,5\n2,oats,4\n2,rice,8\n2,oats,3\n";
    let arguments = [&COMPARE[..], &["--block", "period", "--control", "none"]].concat();
    let (out, _) = on(table, &arguments).ended(0);
    assert!(flowing(&out).contains("Never in a block with none: rice."), "{out}");
}

/// Every fault of a table: words, exit 1, no answer, and the same with `--json`.
#[test]
fn tables_with_faults_are_explained_and_never_answered() {
    let block = ["--block", "period"];
    let control = ["--control", "nothing"];
    let cases: [(&str, &[&str], &str); 18] = [
        ("", &[], "the file is empty"),
        ("food,rise\n", &[], "no row under"),
        ("food,rise\n\n,\n", &[], "no row under"),
        ("food,rise\na,\nb,NA\n", &[], "all 2 rows have a blank cell"),
        ("food,height\na,1\nb,2\n", &[], "there is no column \"rise\""),
        ("foods,rise\na,1\nb,2\n", &[], "did you mean \"foods\"?"),
        ("food,rise\na,1\nb,tall\n", &[], "line 3, column \"rise\": \"tall\" is not a number"),
        ("food,rise\na,3,5\na,4,5\nb,6,0\n", &[], "line 2 has more cells than"),
        ("food,rise\na,1\nb,1e308\n", &[], "\"1e308\" is too large"),
        ("food,rise\na,1\nb,1e400\n", &[], "\"1e400\" is too large"),
        ("food,rise\na,1\nb,2\nc,4\n", &[], "no value has a second one like it"),
        ("food,rise\na,1\na,2\n", &[], "all values are of one level"),
        ("food,rise\na,3\na,3\nb,3\n", &[], "all values are 3"),
        ("food,rise\na,3\na,3\nb,4\nb,4\n", &[], "do not differ at all"),
        (
            "food,rise,period\na,3,1\na,4,1\nb,4,1\nb,6,1\n",
            &block,
            "all values are of one block",
        ),
        ("food,rise,period\na,3,1\na,4,1\nb,4,2\nb,6,2\n", &block, "never share a block"),
        ("food,rise,period\na,3,1\nb,4,1\na,4,2\nb,5,2\n", &block, "do not differ at all"),
        ("food,rise\na,3\na,4\nb,4\nb,6\n", &control, "no row is of the level \"nothing\""),
    ];
    for (table, more, words) in cases {
        for json in [&[][..], &["--json"]] {
            let arguments = [&COMPARE[..], more, json].concat();
            let (out, err) = on(table, &arguments).ended(1);
            assert_eq!(out, "", "{table}");
            assert!(flowing(&err).contains(words), "{table}: {err}");
            assert!(err.starts_with("barm: data.csv: "), "{err}");
        }
    }
    let (_, err) =
        run(&std::env::temp_dir(), &["compare", "no-such.csv", "--value", "a", "--by", "b"])
            .ended(2);
    assert!(err.contains("cannot read no-such.csv"), "{err}");
    let (_, err) = on(FOODS, &["compare", "--value", "food", "--by", "food"]).ended(1);
    assert!(err.contains("asked for twice"), "{err}");
}

#[test]
fn a_fit_says_what_it_found_and_what_it_rests_on() {
    // Gompertz with A 12, mu 0.9, lambda 6, rounded to half a millimeter.
    let row = |minute: f64| {
        let e = std::f64::consts::E;
        let y = 12.0 * (-(0.9 * e / 12.0 * (6.0 - minute) + 1.0).exp()).exp();
        format!("{minute};{}\n", ((y * 2.0).round() / 2.0).to_string().replace('.', ","))
    };
    let table: String = std::iter::once("minute;rise\n".to_owned())
        .chain((0..16).map(|at| row(2.0 * f64::from(at))))
        .collect();
    let arguments = ["fit", "--x", "minute", "--y", "rise", "--shape", "gompertz"];
    let (out, err) = on(&table, &arguments).ended(0);
    assert_eq!(err, "");
    assert!(out.starts_with("rise over minute: gompertz\n"), "{out}");
    let flowing = flowing(&out);
    for says in [
        "A exp(−exp(mu e/A (lambda − x) + 1))",
        "the 16 points lie about",
        "a near fit alone does not show that it is",
        "by the line through its straight part",
    ] {
        assert!(flowing.contains(says), "{says}:\n{out}");
    }
    assert!(out.lines().any(|line| line.trim_start().starts_with("lambda")), "{out}");
}

#[test]
fn fits_of_nonsense_are_explained_and_never_answered() {
    let cases = [
        ("", "the file is empty"),
        ("x,y\n", "no row under"),
        ("x,z\n1,2\n", "there is no column \"y\""),
        ("x,y\n1,2\n2,much\n", "\"much\" is not a number"),
        ("x,y\n1,2\n2,1e308\n", "too large"),
        ("x,y\n1,2\n2,3\n", "2 points cannot tell"),
        ("x,y\n1,5\n2,5\n3,5\n4,5\n5,5\n6,5\n", "all y are 5"),
        ("x,y\n1,5\n1,6\n1,7\n1,8\n1,4\n1,5\n", "different x"),
    ];
    for shape in ["line", "saturating", "michaelis-menten", "logistic", "gompertz", "richards"]
    {
        for (table, words) in cases {
            let arguments = ["fit", "--x", "x", "--y", "y", "--shape", shape];
            let (out, err) = on(table, &arguments).ended(1);
            assert_eq!(out, "", "{table}");
            assert!(err.contains(words), "{shape} {table}: {err}");
        }
    }
    let (_, err) =
        on("x,y\n1,2\n", &["fit", "--x", "x", "--y", "y", "--shape", "cubic"]).ended(2);
    assert!(err.contains("michaelis-menten"), "{err}");
}
