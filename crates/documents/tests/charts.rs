//! The charts as they are drawn: named snapshots in `tests/charts/`, and what holds for any chart.
//!
//! After a wanted change: `BARM_DRAW_AGAIN=1 cargo test -p barm-documents --test charts`, then look at the files.

use std::fs;
use std::path::Path;

use barm_documents::chart::{
    BagBeforeAfterChart, BagChart, BeforeAfterChart, BeforeAfterRow, CurvesChart, Dated,
    DatesChart, Dot, DotPlot, DotRow, Estimate, ForecastChart, Frame, IntervalChart,
    IntervalRow, Look, MeasuredGap, Moment, Reading, Sheaf, Spark, Strand,
};
use proptest::prelude::*;

fn strand(name: &str, look: u8, rise: f64) -> Strand {
    let moments = (0..=24).step_by(4).map(|minute| {
        let minute = f64::from(minute);
        let median = rise * minute / 24.0;
        Moment { minute, median, low: median * 0.75, high: median * 1.25 }
    });
    Strand { name: name.to_owned(), look: Look(look), moments: moments.collect() }
}

fn sheaf(name: &str, look: u8, rise: f64) -> Sheaf {
    let bag = |more: f64| -> Vec<Reading> {
        let read = (0..=6).map(|k| {
            let minute = f64::from(k) * 4.0;
            Reading {
                minute,
                rise: (rise + more) * minute / 24.0,
                doubtful: look == 2 && k == 4,
            }
        });
        read.collect()
    };
    let mean = (0..=6).map(|k| (f64::from(k) * 4.0, rise * f64::from(k) / 6.0)).collect();
    Sheaf { name: name.to_owned(), look: Look(look), bags: vec![bag(-1.0), bag(1.0)], mean }
}

fn row(name: &str, look: u8, rises: &[f64]) -> DotRow {
    let dots: Vec<Dot> = rises
        .iter()
        .enumerate()
        .map(|(at, &rise)| Dot { rise, set_aside: look == 2 && at == 0 })
        .collect();
    let counted: Vec<f64> = dots.iter().filter(|d| !d.set_aside).map(|d| d.rise).collect();
    let mean = counted.iter().sum::<f64>() / counted.len() as f64;
    let mad =
        counted.iter().map(|rise| (rise - mean).abs()).sum::<f64>() / counted.len() as f64;
    DotRow { name: name.to_owned(), look: Look(look), dots, mean: Some(mean), mad: Some(mad) }
}

fn interval(name: &str, look: u8, ends: Option<(f64, f64)>, verdict: &str) -> IntervalRow {
    let estimate =
        |(low, high): (f64, f64)| Estimate { value: f64::midpoint(low, high), low, high };
    let verdict = verdict.to_owned();
    IntervalRow {
        name: name.to_owned(),
        look: Look(look),
        difference: ends.map(estimate),
        verdict,
    }
}

fn strands() -> Vec<Strand> {
    vec![strand("Maple syrup", 1, 15.0), strand("Oat flour", 3, 5.0), strand("No food", 0, 2.0)]
}

/// Twelve treatments, nine of which hardly rise.
fn flat_and_steep() -> Vec<Strand> {
    let names = ["Maple syrup", "Dry milk + lactase", "Potato flakes + enzyme"];
    let steep = names.iter().zip([12.0, 4.5, 3.0]).zip(1..);
    let steep = steep.map(|((name, rise), look)| strand(name, look, rise));
    let flat = (0..9).map(|at| strand(&format!("Flat {at}"), at + 4, 0.1 * f64::from(at)));
    steep.chain(flat).collect()
}

fn sheaves() -> Vec<Sheaf> {
    vec![
        sheaf("Maple syrup", 1, 15.0),
        sheaf("Mashed banana", 2, 12.0),
        sheaf("No food", 0, 2.0),
    ]
}

fn bags() -> Vec<DotRow> {
    vec![
        row("Maple syrup", 1, &[13.0, 14.0, 14.0, 15.0, 17.0]),
        row("Potato flakes + glucoamylase", 2, &[4.0, 9.0, 10.0, 10.0, 10.0]),
        row("No food", 0, &[1.0, 2.0, 2.0, 2.0, 3.0]),
        row("Corn syrup & <more>", 9, &[7.0, 8.5]),
    ]
}

fn differences() -> Vec<IntervalRow> {
    vec![
        interval("Maple syrup", 1, Some((11.2, 14.8)), "clear"),
        interval("Nonfat dry milk", 7, Some((-0.5, 1.7)), "can’t tell"),
        interval("Oat flour", 3, None, "not comparable"),
    ]
}

fn forecast(strands: &[Strand], frame: &Frame) -> String {
    ForecastChart { title: "Forecast", strands, last_reading: 24.0, bell: Some(31.0) }
        .svg(frame)
}

fn before_after() -> Vec<BeforeAfterRow> {
    let row = |name: &str, value: f64, half: f64, was: &str, is: &str| BeforeAfterRow {
        name: name.to_owned(),
        before: Estimate { value: 0.0, low: -1.28, high: 1.28 },
        after: Estimate { value, low: value - half, high: value + half },
        was: was.to_owned(),
        is: is.to_owned(),
    };
    vec![
        row(
            "strength of the yeast",
            -1.2,
            0.4,
            "× 1.00 (0.60 to 1.67)",
            "× 0.62 (0.53 to 0.73)",
        ),
        row(
            "how fast a bag loses heat",
            0.8,
            0.7,
            "× 1.00 (0.70 to 1.43)",
            "× 1.25 (1.03 to 1.52)",
        ),
    ]
}

fn bag_before_after<'a>(
    before: &'a Strand,
    after: &'a Strand,
    readings: &'a [Reading],
) -> BagBeforeAfterChart<'a> {
    let (title, words) = ("Bag A", ("before", "now"));
    BagBeforeAfterChart {
        title,
        words,
        before: &before.moments,
        after: &after.moments,
        readings,
    }
}

fn gap() -> MeasuredGap {
    MeasuredGap { row: 0, reference: 2, in_mads: Some(10.4) }
}

/// Compares a drawing with the one that was looked at and kept.
fn kept(name: &str, svg: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/charts").join(name);
    // One element a line, so that a change can be read.
    let drawn = svg.replace("><", ">\n<") + "\n";
    if std::env::var_os("BARM_DRAW_AGAIN").is_some() {
        fs::write(&path, &drawn).unwrap();
    }
    let looked_at = fs::read_to_string(&path).unwrap();
    assert!(drawn == looked_at, "{name} is drawn differently; see the head of this file");
}

#[test]
fn charts_look_as_they_did_when_someone_looked() {
    let print = Frame::print(430.0);
    kept("forecast.svg", &forecast(&strands(), &print));
    let curves = CurvesChart { title: "Readings", sheaves: &sheaves(), bands: &[] };
    kept("curves.svg", &curves.svg(&print));
    let dots =
        DotPlot { title: "Every bag", rows: &bags(), gap: Some(gap()), set: &[], brief: false };
    kept("dots.svg", &dots.svg(&print));
    let intervals =
        IntervalChart { title: "Differences", reference: "No food", rows: &differences() };
    kept("intervals.svg", &intervals.svg(&print));
    let rows = &before_after();
    let before_after =
        BeforeAfterChart { title: "What changed", words: ("before", "now"), rows };
    kept("before-after.svg", &before_after.svg(&print));
    let (before, after) = (strand("", 0, 15.0), strand("", 1, 9.0));
    let readings: Vec<Reading> = [(8.0, 3.0), (16.0, 6.0), (24.0, 9.0)]
        .map(|(minute, rise)| Reading { minute, rise, doubtful: false })
        .into();
    let bag = bag_before_after(&before, &after, &readings);
    kept("bag-before-after.svg", &bag.svg(&print));
    assert_eq!(bag.description(&print), "before: 11 to 19 mm; now: 7 to 11 mm; 24 min: 9 mm.");
    kept("forecast-phone.svg", &forecast(&strands(), &Frame::screen(340.0)));
    kept("intervals-phone.svg", &intervals.svg(&Frame::screen(320.0)));
}

/// On a phone no word of a verdict is cut off, and no interval is too short to be compared.
#[test]
fn intervals_on_a_phone_can_be_read() {
    let rows = [interval("Nonfat dry milk", 0, Some((-0.7, 1.6)), "no readable rise")];
    let chart = IntervalChart { title: "Differences", reference: "No food", rows: &rows };
    let svg = chart.svg(&Frame::screen(320.0));
    assert!(svg.contains(">no readable rise<"), "{svg}");
    assert!(svg.contains(">\u{2212}0.7 to 1.6<"), "{svg}");
    let upright = |line: &str| -> Option<f64> {
        let (x1, x2) = (number(line, "x1=\"")?, number(line, "x2=\"")?);
        ((x1 - x2).abs() < 1e-9).then_some(x1)
    };
    let places: Vec<f64> = svg.split("<line ").filter_map(upright).collect();
    let ends = places.iter().fold((f64::MAX, 0.0_f64), |(a, b), x| (a.min(*x), b.max(*x)));
    assert!(ends.1 - ends.0 > 120.0, "{ends:?}");
}

/// The number behind a name in a line of a drawing.
fn number(line: &str, name: &str) -> Option<f64> {
    line.split_once(name)?.1.split('"').next()?.parse().ok()
}

#[test]
fn a_chart_says_in_words_what_it_shows() {
    let print = Frame::print(430.0);
    let dots =
        DotPlot { title: "Every bag", rows: &bags()[..1], gap: None, set: &[], brief: false };
    assert_eq!(dots.description(&print), "Maple syrup (5): 14.6 mm, MAD 1.1.");
    let rows = &differences()[..1];
    let intervals = IntervalChart { title: "Differences", reference: "No food", rows };
    assert_eq!(
        intervals.description(&print),
        "same as No food: Maple syrup: +13.0 mm (11.2 to 14.8), clear."
    );
}

/// A line that leads to a label is whole and stays in the margin, so that it is not read as data; lines that end
/// together have one label, under which each is named with its mark.
#[test]
fn lines_that_end_together_are_told_together_and_no_leader_runs_over_the_field() {
    for frame in [Frame::print(430.0), Frame::screen(340.0), Frame::screen(720.0)] {
        let svg = forecast(&flat_and_steep(), &frame);
        assert!(svg.contains(">9 kinds"), "{svg}");
        for name in flat_and_steep().iter().map(|strand| &strand.name) {
            let start = name.get(..6).expect("a name");
            assert!(svg.contains(&format!(">{start}")), "{name}");
        }
        // The bell stands at the right edge of the field.
        let lines = svg.split("<line x1=\"").skip(1);
        let bell = lines
            .filter(|line| line.contains("stroke=\"#17233B\""))
            .filter_map(|line| line.split('"').next()?.parse::<f64>().ok())
            .fold(0.0, f64::max);
        let elements =
            svg.split("<path d=\"").skip(1).filter_map(|rest| rest.split("/>").next());
        let leaders: Vec<&str> = elements
            .filter(|path| {
                path.contains("fill=\"none\"") && path.contains("stroke=\"#857C69\"")
            })
            .collect();
        assert!(leaders.len() >= 3, "two brackets and what joins them: {svg}");
        for leader in leaders {
            assert!(!leader.contains("dasharray"), "{leader}");
            let path = leader.split('"').next().expect("a path");
            assert!(points(path).iter().all(|(x, _)| *x > bell), "{bell}: {leader}");
        }
    }
}

/// By hand: two bags a millimeter above and below their mean at minute 24 lie one MAD from it; a doubted reading
/// and a bag alone have no spread.
#[test]
fn the_spread_of_bags_is_drawn_around_their_mean() {
    let spread = sheaf("Maple syrup", 1, 15.0).spread();
    let (minute, low, high) = *spread.last().expect("the last minute");
    assert!(
        (minute - 24.0).abs() < 1e-9 && (low - 14.0).abs() < 1e-9 && (high - 16.0).abs() < 1e-9
    );
    assert_eq!(sheaf("Mashed banana", 2, 12.0).spread().len(), 6, "minute 16 is doubted");
    let mut alone = sheaf("No food", 0, 2.0);
    alone.bags.truncate(1);
    assert!(alone.spread().is_empty());
    let tints = |sheaves: &[Sheaf]| {
        CurvesChart { title: "", sheaves, bands: &[] }
            .svg(&Frame::print(430.0))
            .matches("fill-opacity")
            .count()
    };
    assert_eq!((tints(&sheaves()), tints(&[alone])), (3, 0));
}

/// What was foretold lies behind everything that was read, ends with the last reading, has room to its highest edge
/// and is told in words; without it the picture is what it was.
#[test]
fn what_was_foretold_lies_behind_what_was_read() {
    let frame = Frame::print(430.0);
    let sheaves = sheaves();
    let bare = CurvesChart { title: "Readings", sheaves: &sheaves, bands: &[] };
    let mut high = strand("Maple syrup", 1, 40.0);
    high.moments.push(Moment { minute: 90.0, median: 400.0, low: 300.0, high: 500.0 });
    let bands = [high, strand("No food", 0, 2.0)];
    let chart = CurvesChart { bands: &bands, ..bare };
    let (without, with) = (bare.svg(&frame), chart.svg(&frame));
    let tints = |svg: &str| svg.matches("fill-opacity").count();
    assert_eq!(tints(&with), tints(&without) + bands.len());
    let first = |svg: &str, what: &str| svg.find(what).expect("drawn");
    let band = first(&with, "fill-opacity=\"0.09\"");
    assert!(band < first(&with, "fill-opacity=\"0.16\""), "{with}");
    assert!(!with.contains("NaN") && !with.contains("500"), "what comes after is not drawn");
    let said = chart.description(&frame);
    assert!(said.contains("Maple syrup: 15.0 mm (foretold "), "{said}");
    assert!(said.contains("Mashed banana: 12.0 mm;"), "nothing was foretold of it: {said}");
    assert!(!bare.description(&frame).contains("foretold"));
}

/// Numbers over dates: a mark and an interval each, and one more mark beside the name of each thing; in words all of
/// it. A lone date and no date at all are drawn too.
#[test]
fn numbers_over_dates_are_drawn_with_what_they_leave_open() {
    let dot = |month, value: f64| {
        let at = Estimate { value, low: 0.8 * value, high: 1.2 * value };
        (jiff::civil::date(2027, month, 9), at)
    };
    let of = |name: &str, look, dots| Dated { name: name.into(), look: Look(look), dots };
    let series = [
        of("jar <of> March", 1, vec![dot(3, 1.0), dot(4, 0.9), dot(9, 0.5)]),
        of("box", 2, vec![dot(9, 1.3)]),
    ];
    let frame = Frame::screen(340.0);
    let draw = |series: &[Dated]| {
        DatesChart { title: "Lots", usual: "times usual", series }.svg(&frame)
    };
    let all = draw(&series);
    assert!(!all.contains("NaN") && all.contains("jar &lt;of&gt; March"), "{all}");
    let circles = |svg: &str| svg.matches("<circle").count();
    assert_eq!(circles(&all), 4, "three dates of a disc and its name");
    let said = DatesChart { title: "", usual: "", series: &series }.description(&frame);
    assert!(said.contains("2027-09-09: 0.50 (0.40 to 0.60); box: "), "{said}");
    assert!(!draw(&series[1..]).contains("NaN"));
    assert!(draw(&[]).contains(frame.words.nothing));
}

/// Plots that are looked at together have one scale: a bag without food that did not rise stands at the same
/// place beside maple syrup and without it.
#[test]
fn plots_of_one_set_share_their_scale() {
    let all = bags();
    let frame = Frame::print(430.0);
    let plot = |rows: &[DotRow]| {
        let svg = DotPlot { title: "", rows, gap: None, set: &all, brief: false }.svg(&frame);
        let ticks = svg
            .split("<line x1=\"")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap().to_owned());
        let places: std::collections::BTreeSet<String> = ticks.filter(|at| at != "0").collect();
        let figures: Vec<String> = svg
            .split("text-anchor=\"middle\">")
            .skip(1)
            .map(|rest| rest.split('<').next().unwrap().to_owned())
            .collect();
        (places, figures)
    };
    let ((places, figures), (_, others)) = (plot(&all[..2]), plot(&all[2..3]));
    assert_eq!(figures, others);
    let (alone, _) = plot(&all[2..3]);
    assert!(
        figures.len() > 2 && alone.intersection(&places).count() >= figures.len(),
        "{alone:?} {places:?}"
    );
    let brief = DotPlot { title: "", rows: &all, gap: None, set: &[], brief: true };
    assert!(!brief.svg(&frame).contains("MAD") && !brief.description(&frame).contains("MAD"));
}

#[test]
fn a_bag_is_drawn_on_what_was_expected_of_it_and_told_in_words() {
    let reading = |minute, rise| Reading { minute, rise, doubtful: rise < 0.0 };
    let readings = [reading(0.0, 0.0), reading(4.0, 3.0), reading(8.0, -2.0)];
    let of = |readings: &[Reading], band: &[(f64, f64, f64)]| {
        let (title, name, look) = ("Bag 5A", "5A", Look(6));
        BagChart { title, name, look, readings, band, last_reading: 24.0 }
            .svg(&Frame::screen(720.0))
    };
    let whole = of(&readings, &[(0.0, 0.0, 0.0), (24.0, 4.0, 9.0)]);
    well_formed(&whole).expect("a picture");
    for part in ["0 min: 0 mm", "4 min: 3 mm", "8 min: −2 mm", "last reading"] {
        assert!(whole.contains(part), "{part}: {whole}");
    }
    let unforeseen = of(&readings, &[]);
    assert!(unforeseen.matches("Z\"").count() < whole.matches("Z\"").count(), "no band");
    well_formed(&of(&[], &[])).expect("an empty one");
}

#[test]
fn empty_charts_are_drawn_too() {
    let screen = Frame::screen(340.0);
    for svg in [
        forecast(&[], &screen),
        CurvesChart { title: "", sheaves: &[], bands: &[] }.svg(&screen),
        DotPlot { title: "", rows: &[], gap: Some(gap()), set: &[], brief: false }.svg(&screen),
        IntervalChart { title: "", reference: "", rows: &[] }.svg(&screen),
        BeforeAfterChart { title: "", words: ("", ""), rows: &[] }.svg(&screen),
        bag_before_after(&strand("", 0, 0.0), &strand("", 0, 0.0), &[]).svg(&screen),
    ] {
        assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>"));
    }
}

/// Every start tag has its end tag, attributes are quoted, and no name from outside has become a tag.
fn well_formed(svg: &str) -> Result<(), String> {
    const TAGS: [&str; 8] = ["svg", "title", "desc", "line", "path", "circle", "text", "g"];
    let mut open: Vec<&str> = Vec::new();
    for piece in svg.split('<').skip(1) {
        let (tag, _) = piece.split_once('>').ok_or("a tag without an end")?;
        if let Some(name) = tag.strip_prefix('/') {
            if open.pop() != Some(name) {
                return Err(format!("</{name}> closes nothing"));
            }
            continue;
        }
        let name = tag.split([' ', '/']).next().unwrap_or_default();
        if !TAGS.contains(&name) || tag.matches('"').count() % 2 != 0 {
            return Err(format!("unknown or unquoted: <{tag}>"));
        }
        if !tag.ends_with('/') {
            open.push(name);
        }
    }
    if open.is_empty() { Ok(()) } else { Err(format!("never closed: {open:?}")) }
}

/// The numbers of a path such as `M3 4L5 6Z`, as points.
fn points(path: &str) -> Vec<(f64, f64)> {
    let numbers: Vec<f64> = path
        .split(|c: char| !c.is_ascii_digit() && c != '.' && c != '-')
        .filter_map(|number| number.parse().ok())
        .collect();
    numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect()
}

/// The paths of a picture in order.
fn paths(svg: &str) -> Vec<Vec<(f64, f64)>> {
    svg.split("<path d=\"")
        .skip(1)
        .map(|rest| points(rest.split('"').next().unwrap()))
        .collect()
}

/// On the run page a bag's curve lies on its forecast: one scale for both, so that what is in the
/// band is drawn in it and what is not is not.
#[test]
fn a_curve_in_the_size_of_a_word_lies_on_its_band() {
    let band = [(0.0, 0.0, 0.0), (12.0, 4.0, 8.0), (24.0, 8.0, 16.0)];
    let drawn = |last: f64| {
        let rises = [(0.0, 0.0), (12.0, 6.0), (24.0, last)];
        let spark =
            Spark { rises: &rises, band: &band, doubtful: false, to_min: 24.0, top_mm: 20.0 };
        let paths = paths(&spark.svg(132.0, "Rose 12 mm"));
        // Up along the upper edge and back along the lower one; then the line of the readings.
        let (edge, line) = (paths[0].clone(), paths.last().unwrap().clone());
        assert_eq!((edge.len(), line.len()), (6, 3), "{paths:?}");
        let (high, low) = (edge[1..3].to_vec(), [edge[4], edge[3]]);
        (high, low, line)
    };
    let (high, low, line) = drawn(12.0);
    // 6 of 4 to 8 and 12 of 8 to 16 are the middle; a picture's numbers have one decimal.
    for at in [0, 1] {
        let middle = (high[at].1 + low[at].1) / 2.0;
        assert!((line[at + 1].0 - high[at].0).abs() < 0.11, "the same minute");
        assert!((line[at + 1].1 - middle).abs() < 0.11, "{line:?} {high:?} {low:?}");
        assert!(high[at].1 < low[at].1, "higher is up");
    }
    assert!(line[0].1 > line[1].1 && line[1].1 > line[2].1, "it rises");
    let (_, low, line) = drawn(5.0);
    assert!(line[2].1 > low[1].1 + 1.0, "what lies under the band is drawn under it");
    let (high, _, line) = drawn(19.0);
    assert!(line[2].1 < high[1].1 - 1.0, "what lies over the band is drawn over it");
}

proptest! {
    #[test]
    fn any_name_and_number_gives_a_well_formed_picture(
        name in any::<String>(),
        look: u8,
        numbers in prop::collection::vec(any::<f64>(), 3..8),
        width in 200.0..1200.0_f64,
    ) {
        let frame = Frame::screen(width);
        let moments = numbers.windows(3).enumerate().map(|(minute, n)| Moment {
            minute: minute as f64, median: n[0], low: n[1], high: n[2],
        });
        let strand = Strand { name: name.clone(), look: Look(look), moments: moments.collect() };
        let reading = |(at, &rise): (usize, &f64)| Reading { minute: at as f64, rise, doubtful: true };
        let sheaf = Sheaf {
            name: name.clone(),
            look: Look(look),
            bags: vec![numbers.iter().enumerate().map(reading).collect()],
            mean: vec![(numbers[0], numbers[1])],
        };
        let dots = DotRow {
            name: name.clone(),
            look: Look(look),
            dots: numbers.iter().map(|&rise| Dot { rise, set_aside: true }).collect(),
            mean: Some(numbers[0]),
            mad: Some(numbers[1]),
        };
        let difference = Estimate { value: numbers[0], low: numbers[1], high: numbers[2] };
        let interval = IntervalRow {
            name: name.clone(),
            look: Look(look),
            difference: Some(difference),
            verdict: name.clone(),
        };
        for svg in [
            forecast(&[strand], &frame),
            CurvesChart { title: &name, sheaves: &[sheaf], bands: &[] }.svg(&frame),
            DotPlot { title: &name, rows: &[dots], gap: None, set: &[], brief: false }.svg(&frame),
            IntervalChart { title: &name, reference: &name, rows: &[interval] }.svg(&frame),
        ] {
            let checked = well_formed(&svg);
            prop_assert!(checked.is_ok(), "{:?}", checked);
            prop_assert!(!svg.contains("NaN") && !svg.contains("inf"));
        }
    }
}
