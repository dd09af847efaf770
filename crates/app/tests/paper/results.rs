//! What the class found, on paper: every chart has its words, its units and one scale; every period has
//! its own answers; families read no term of statistics.

use crate::pages::{Page, pages, texts};
use crate::prints::{Class, PRINTS, Print, plan_of, print_of};
use crate::program::skip;
use crate::reading::{ease, grade, sentences, without};
use crate::tools::{name, say};
use std::fs;
use std::path::PathBuf;

fn demo() -> [&'static Print; 2] {
    [print_of(Class::Demo, "en", "letter"), print_of(Class::Demo, "es", "a4")]
}

fn file(print: &Print, part: &str) -> PathBuf {
    print.file(part).unwrap_or_else(|| panic!("{part} of {print:?}"))
}

/// What figures are said to show to those who cannot see them, as qpdf reads the tags of a file (PDF
/// 1.7, ISO 32000-1, 14.9.3); none without qpdf. Panics for a figure without words.
fn told(pdf: &std::path::Path) -> Option<Vec<String>> {
    let (_, said) = say("qpdf", &["--json=2", "--json-key=qpdf", name(pdf)])?;
    let file: serde_json::Value = serde_json::from_str(&said).expect("JSON");
    let objects = file["qpdf"][1].as_object().expect("objects");
    let figures = objects.values().map(|object| &object["value"]);
    let figures = figures.filter(|value| value["/S"] == "/Figure");
    let words = figures.map(|figure| {
        let words =
            figure["/Alt"].as_str().unwrap_or_else(|| panic!("{}: {figure}", name(pdf)));
        words.trim_start_matches("u:").to_owned()
    });
    Some(words.collect())
}

#[test]
fn every_chart_of_results_slides_and_summary_is_told_in_a_sentence_with_its_unit() {
    for print in demo() {
        for (part, least) in [("results.pdf", 15), ("slides.pdf", 16), ("summary.pdf", 1)] {
            let Some(told) = told(&file(print, part)) else {
                return skip("every_chart_is_told", "qpdf is not installed");
            };
            assert!(told.len() >= least, "{part} {print:?}: {} charts", told.len());
            for words in told {
                let sentence = words.ends_with('.') && words.contains("mm") && words.len() > 40;
                assert!(sentence, "{part} {print:?}: {words}");
            }
        }
    }
}

/// Lines of text of each page with their size (pt), as poppler reads them.
fn lines(pdf: &std::path::Path) -> Option<Vec<Vec<(f64, String)>>> {
    let (_, said) = say("pdftohtml", &["-xml", "-i", "-stdout", "-zoom", "3", name(pdf)])?;
    let value = |line: &str, key: &str| -> Option<String> {
        Some(line.split_once(&format!("{key}=\""))?.1.split('"').next()?.to_owned())
    };
    let mut sizes = std::collections::BTreeMap::new();
    let mut pages = Vec::new();
    for line in said.lines().map(str::trim) {
        if line.starts_with("<page ") {
            pages.push(Vec::new());
        } else if line.starts_with("<fontspec ") {
            let size: f64 = value(line, "size").expect("a size").parse().expect("a number");
            sizes.insert(value(line, "id").expect("a number"), size / 3.0);
        } else if line.starts_with("<text ") {
            let size = sizes[&value(line, "font").expect("a font")];
            let mut text = line.to_owned();
            while let (Some(from), Some(to)) = (text.find('<'), text.find('>')) {
                text.replace_range(from..=to, "");
            }
            pages.last_mut().expect("a page").push((size, text.trim().to_owned()));
        }
    }
    Some(pages)
}

/// Names, figures and notes of a chart on a slide can be read from the back of a room: 18 pt on a slide
/// of 540 pt (common advice for slides, no source). Only the foot, which nobody needs there, is smaller.
#[test]
fn slides_can_be_read_from_the_back_of_a_room() {
    for print in demo() {
        let Some(pages) = lines(&file(print, "slides.pdf")) else {
            return skip("slides_can_be_read", "poppler is not installed");
        };
        for (at, page) in pages.iter().enumerate() {
            let small: Vec<_> = page
                .iter()
                .filter(|(size, text)| *size < 17.9 && !text.is_empty())
                .filter(|(_, text)| !text.contains("inv") && !text.contains("real"))
                .collect();
            assert!(small.is_empty(), "{print:?} page {}: {small:?}", at + 1);
        }
    }
}

/// Where the figures under the dots of a slide stand, by figure; none on a slide without dots.
fn scale(page: &Page) -> Vec<(String, i64)> {
    // The unit of the axis stands below those of the rows.
    let units =
        page.words.iter().filter(|word| word.text == "mm" && word.left > page.width * 0.4);
    let unit = units.max_by(|a, b| a.top.total_cmp(&b.top));
    let Some(unit) = unit else { return Vec::new() };
    let on_line = page.words.iter().filter(|word| (word.bottom - unit.bottom).abs() < 2.0);
    let figures = on_line.filter(|word| word.text.parse::<f64>().is_ok());
    figures.map(|word| (word.text.clone(), word.left.round() as i64)).collect()
}

#[test]
fn the_dots_of_a_period_stand_on_one_scale_however_many_slides_they_take() {
    let Some(pages) = pages(&file(demo()[0], "slides.pdf")) else {
        return skip("dots_on_one_scale", "poppler is not installed");
    };
    for sign in ["P1", "P2", "P4", "P6"] {
        let own = pages.iter().filter(|page| page.words.iter().any(|word| word.text == sign));
        let own: Vec<&Page> = own.collect();
        let dots = own.iter().filter(|page| page.words.iter().any(|word| word.text == "MAD"));
        let scales: Vec<_> = dots.map(|page| scale(page)).collect();
        assert!(scales.len() > 1, "{sign}: twelve kinds do not fit on one slide");
        assert!(scales[0].len() > 2, "{sign}: {scales:?}");
        assert!(scales.iter().all(|one| *one == scales[0]), "{sign}: {scales:?}");
    }
}

#[test]
fn curves_on_slides_name_every_kind_and_both_units() {
    let Some(texts) = texts(&file(demo()[0], "slides.pdf")) else {
        return skip("curves_on_slides", "poppler is not installed");
    };
    let curves: Vec<&String> =
        texts.iter().filter(|text| text.contains("Each thin line")).collect();
    assert_eq!(curves.len(), 8, "four periods, two questions");
    for text in curves {
        let kinds: &[&str] = if text.contains("Which breakfast-cupboard") {
            &[
                "Maple syrup",
                "Oat flour",
                "Potato flakes",
                "Nonfat dry milk",
                "Mashed banana",
                "No food",
            ]
        } else {
            &[
                "Oat flour + glucoamylase",
                "Potato flakes + glucoamylase",
                "Nonfat dry milk + lactase",
            ]
        };
        for said in kinds.iter().chain(&["mm", "24 min", "The tint"]) {
            assert!(text.contains(said), "{said}: {text}");
        }
    }
}

#[test]
fn each_period_has_its_answers_on_two_pages_and_says_what_was_left_out() {
    let Some(texts) = texts(&file(demo()[0], "results.pdf")) else {
        return skip("each_period_has_its_answers", "poppler is not installed");
    };
    // The head of a chapter names the bags of its period; running heads repeat it.
    let first = texts.iter().position(|text| text.contains("What it says")).expect("a period");
    let periods = &texts[first..];
    assert!(periods.len() <= 8, "four periods on {} pages", periods.len());
    let text = periods.join("\n");
    let count = |words: &str| text.matches(words).count();
    for said in ["Period 1", "Period 2", "Period 4", "Period 6"] {
        assert!(text.contains(said), "{said}");
    }
    // Period 1 had a leak; nothing was left out in the others.
    assert_eq!(count("Nothing was left out."), 3);
    assert!(count("Nothing to report.") >= 1);
    assert_eq!(count("gap in MADs"), 8, "a table for each question of each period");
    assert_eq!(count("between"), 8 + text.matches("(between").count(), "with its range");
    assert_eq!(count(" MADs"), 8 + 4, "and a gap over the dots");
}

#[test]
fn families_read_a_date_and_counts_and_rules_and_no_term_of_statistics() {
    let plan = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    let planned = plan.matches("{ code = \"").count().to_string();
    for print in PRINTS.iter().filter(|print| print.class == Class::Demo) {
        let Some(texts) = texts(&file(print, "summary.pdf")) else {
            return skip("families_read", "poppler is not installed");
        };
        let text = texts.join(" ").split_whitespace().collect::<Vec<_>>().join(" ");
        let (date, rules, read) = match print.language {
            "en" => ("March 9, 2027", "our plan asks for", "heights of 111 of them"),
            _ => ("9 de marzo de 2027", "pide nuestro plan", "la altura de 111 de ellas"),
        };
        for said in [date, rules, read, planned.as_str()] {
            assert!(text.contains(said), "{said}: {print:?}");
        }
        for hidden in ["MAD", "DMA", "2027-03-09", "✓"] {
            assert!(!text.contains(hidden), "{hidden}: {print:?}");
        }
    }
}

/// Slides, the join sheet and the page for families, as plain as what students hold: grade 6 at most, 75
/// of ease at least, no sentence of more than 15 words.
#[test]
fn what_is_shown_and_sent_home_is_plain() {
    let plan: toml::Table =
        fs::read_to_string(plan_of(Class::Demo)).expect("the plan").parse().expect("TOML");
    let asks = |value: &toml::Value| value.as_str().unwrap_or_default().to_owned();
    let mut own = vec![asks(&plan["big_question"]), asks(&plan["title"])];
    own.extend(
        plan["question"].as_array().expect("questions").iter().map(|one| asks(&one["asks"])),
    );
    for print in demo() {
        for (part, least) in [("slides", 8), ("join", 3), ("summary", 12)] {
            let Some(texts) = texts(&file(print, &format!("{part}.pdf"))) else {
                return skip("what_is_shown_is_plain", "poppler is not installed");
            };
            let read = sentences(&without(&texts.join("\n\n"), &own));
            let place = format!("{part} {}", print.language);
            assert!(read.len() >= least, "{place}: {} sentences", read.len());
            let most = read.iter().max_by_key(|one| one.len()).expect("a sentence");
            assert!(most.len() <= 15, "{place}: {most:?}");
            match print.language {
                "en" => assert!(grade(&read) <= 6.0, "{place}: grade {:.1}", grade(&read)),
                _ => assert!(ease(&read) >= 75.0, "{place}: ease {:.1}", ease(&read)),
            }
        }
    }
}

/// A plan without bags, cupboard, controls and rules: what has no use is left out, and who asks for it
/// reads what to do.
#[test]
fn a_plan_with_empty_parts_prints_what_it_can_and_says_what_it_cannot() {
    let print = PRINTS.iter().find(|print| print.class == Class::Bare).expect("a bare plan");
    let parts = ["packet", "substitute", "prep", "planning", "bench-cards", "graph-paper"];
    for part in parts.iter().chain(&["forecast", "results", "summary", "slides"]) {
        file(print, &format!("{part}.pdf"));
    }
    for part in ["labels", "card-labels"] {
        assert!(print.file(&format!("{part}.pdf")).is_none(), "{part}: there are no bags");
    }
    let home = tempfile::tempdir().expect("a folder");
    let plan = plan_of(Class::Bare);
    let arguments = ["print", name(&plan), "--what", "labels", "--out", "paper"];
    let (_, said) = crate::program::run(home.path(), &arguments).ended(2);
    assert!(said.contains("there are no bags") && said.contains("barm bags"), "{said}");
    let none = fs::read_to_string(&plan).expect("the plan");
    let (none, _) = none.split_once("[[question]]").expect("a question");
    fs::write(home.path().join("none.toml"), none).expect("written");
    let (_, said) =
        crate::program::run(home.path(), &["print", "none.toml", "--out", "paper"]).ended(1);
    assert!(said.contains("the plan has no questions"), "{said}");
}
