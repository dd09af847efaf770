//! Snapshots of the plain-letter charts, and what holds for any of them.

use proptest::prelude::*;
use unicode_width::UnicodeWidthStr;

use super::*;
use crate::chart::{Dot, Look, Moment};

fn strand(name: &str, rise: f64) -> Strand {
    let moments = (0..=24).map(|minute| {
        let minute = f64::from(minute);
        let median = rise * minute / 24.0;
        Moment { minute, median, low: median * 0.8, high: median * 1.25 }
    });
    Strand { name: name.to_owned(), look: Look(1), moments: moments.collect() }
}

fn interval(name: &str, value: f64, half: f64, verdict: &str) -> IntervalRow {
    let difference = Estimate { value, low: value - half, high: value + half };
    IntervalRow {
        name: name.to_owned(),
        look: Look(1),
        difference: (half > 0.0).then_some(difference),
        verdict: verdict.to_owned(),
    }
}

fn dots(name: &str, rises: &[f64]) -> DotRow {
    let dots = rises.iter().map(|&rise| Dot { rise, set_aside: false }).collect();
    let mean = rises.iter().sum::<f64>() / rises.len() as f64;
    let mad = rises.iter().map(|rise| (rise - mean).abs()).sum::<f64>() / rises.len() as f64;
    DotRow { name: name.to_owned(), look: Look(1), dots, mean: Some(mean), mad: Some(mad) }
}

fn before_after(name: &str, value: f64, half: f64) -> BeforeAfterRow {
    BeforeAfterRow {
        name: name.to_owned(),
        before: Estimate { value: 0.0, low: -1.28, high: 1.28 },
        after: Estimate { value, low: value - half, high: value + half },
        was: "1.00 (0.60 to 1.67)".to_owned(),
        is: "× 0.62".to_owned(),
    }
}

const WIDE: Terminal = Terminal { width: 78, unicode: true };
const PLAIN: Terminal = Terminal { width: 64, unicode: false };

fn strands() -> Vec<Strand> {
    vec![
        strand("Maple syrup", 15.0),
        strand("Potato flakes + glucoamylase", 8.0),
        strand("No food", 2.0),
    ]
}

fn differences() -> Vec<IntervalRow> {
    vec![
        interval("Maple syrup", 13.0, 1.8, "clear"),
        interval("Dry milk", 0.6, 1.1, "can’t tell"),
        interval("Oat flour", 0.0, 0.0, "not comparable"),
    ]
}

fn bags() -> Vec<DotRow> {
    vec![
        dots("Maple syrup", &[13.0, 14.0, 14.0, 15.0, 17.0]),
        dots("No food", &[1.0, 2.0, 2.0, 2.0, 3.0]),
    ]
}

/// Trailing newline kept, leading one not: the drawing as it stands below.
fn drawn(text: &str) -> &str {
    text.trim_start_matches('\n')
}

#[test]
fn a_forecast_in_letters() {
    let expected = "
Maple syrup                  ▁▁▂▃▄▅▅▆▇             ├──●───┤    15 mm  12 to 19
Potato flakes + glucoamylase ▁▁▁▂▂▃▃▃▄        ├─●─┤             8 mm  6 to 10
No food                      ▁▁▁▁▁▁▁▁▁    ●                     2 mm  2 to 2
                                        0        10       20 mm
";
    assert_eq!(WIDE.forecast(&strands()), drawn(expected));
}

#[test]
fn differences_in_letters() {
    let expected = "
0: same as No food
Maple syrup     │               ├──●──┤    +13.0  11.2 to 14.8  clear
Dry milk       ├┼●┤                         +0.6  −0.5 to 1.7   can’t tell
Oat flour       │                              –                not comparable
                0             10 mm
";
    assert_eq!(WIDE.intervals("No food", &differences()), drawn(expected));
}

#[test]
fn bags_in_letters() {
    let expected = "
Maple syrup  │                                 ● 2  ●    ●    14.6 mm  MAD 1.1
No food      │  ● 3  ●                                         2.0 mm  MAD 0.4
             0            5           10           15 mm
";
    assert_eq!(WIDE.dots(&bags()), drawn(expected));
}

#[test]
fn a_plain_terminal_gets_the_same_in_ascii() {
    let expected = "
Maple syrup               _.:-+*         [o-]    15 mm  12 to 19
Potato flakes + glucoamy. __..:-      o-]         8 mm  6 to 10
No food                   ______   o              2 mm  2 to 2
                                  0    10   20 mm
0: same as No food
Maple syrup   |       [-o]   +13.0  11.2 to 14.8  clear
Dry milk      [o]             +0.6  -0.5 to 1.7   can't tell
Oat flour     |                  -                not comparable
              0      10 mm
Maple syrup  |                    o2 o  o       14.6 mm  MAD 1.1
No food      | o3 o                              2.0 mm  MAD 0.4
             0              10              20 mm
";
    let all = PLAIN.forecast(&strands())
        + &PLAIN.intervals("No food", &differences())
        + &PLAIN.dots(&bags());
    assert_eq!(all, drawn(expected));
}

/// A dot where it was thought to lie, a bar where it is known to lie.
#[test]
fn before_and_after_in_letters() {
    let rows =
        [before_after("strength of the yeast", -1.2, 0.4), before_after("wake", 0.0, 1.28)];
    let drawn = WIDE.before_after(&rows);
    let lines: Vec<&str> = drawn.lines().collect();
    assert_eq!(lines.len(), 2, "no axis in millimeters: {drawn}");
    let first = lines[0].chars().position(|letter| letter == '●').expect("a mark");
    let zero =
        lines[0].chars().position(|letter| letter == '│').expect("the best guess of then");
    let second = lines[1].chars().position(|letter| letter == '●').expect("a mark");
    assert!(first < zero && zero == second, "{drawn}");
    assert!(lines[0].contains("··") && !lines[1].contains('·'), "{drawn}");
    assert!(lines.iter().all(|line| line.ends_with("× 0.62")), "{drawn}");
}

proptest! {
    #[test]
    fn no_row_is_wider_than_the_terminal(
        names in prop::collection::vec("[a-zA-Z🦦é ]{0,60}", 0..6),
        rise in -1e6..1e6_f64,
        half in 0.0..1e4_f64,
        width in 40usize..160,
        unicode: bool,
    ) {
        let terminal = Terminal { width, unicode };
        let strands: Vec<_> = names.iter().map(|name| strand(name, rise)).collect();
        let rows: Vec<_> = names.iter().map(|name| interval(name, rise, half, "clear")).collect();
        let bags: Vec<_> = names.iter().map(|name| dots(name, &[rise, rise + half])).collect();
        let known: Vec<_> = names.iter().map(|name| before_after(name, rise, half)).collect();
        for chart in [
            terminal.forecast(&strands),
            terminal.intervals("No food", &rows),
            terminal.dots(&bags),
            terminal.before_after(&known),
        ] {
            for line in chart.lines() {
                prop_assert!(line.width() <= width, "{} > {width}: {line}", line.width());
                prop_assert!(unicode || line.is_ascii());
            }
        }
    }

    #[test]
    fn numbers_that_are_none_do_no_harm(low in any::<f64>(), value in any::<f64>(), high in any::<f64>()) {
        let difference = Some(Estimate { value, low, high });
        let row = IntervalRow { difference, ..interval("A", 1.0, 1.0, "") };
        WIDE.intervals("B", &[row]);
        WIDE.dots(&[dots("A", &[low, value, high])]);
    }
}
