//! Files of a pilot: readings that a teacher types, and the lots beside the plan.

use barm_documents::pilot_text::{TypedSheet, read_lots, readings, write_lots};
use barm_domain::pilot::{BagKind, EnzymeLot, Lot, Lots, Numbers, Part, Teaspoon, YeastLot};
use barm_domain::plan::{BagChoice, CardChoice, YeastKind};
use barm_science::meter::MeterPosterior;
use jiff::civil::date;
use proptest::prelude::*;

fn numbers(mean: f64, share: f64) -> Numbers {
    Numbers {
        names: vec!["vigor of instant yeast".into(), "wake".into()],
        means: vec![mean, -0.25],
        covariance: vec![vec![0.25, share * 0.4], vec![share * 0.4, 0.64]],
    }
}

fn lot<T>(name: &str, found: T) -> Lot<T> {
    let parts = vec![Part::Spoons, Part::Bags];
    Lot { name: name.into(), date: date(2027, 3, 2), in_use: true, parts, found }
}

fn lots(mean: f64, share: f64) -> Lots {
    let bag = BagChoice::parse("165 x 149 mm").expect("a bag");
    let card = CardChoice::parse("5 x 8 in").expect("a card");
    let teaspoon = Some(Teaspoon { grams: 3.1 + 0.1 * mean, grams_sd: 0.07, scatter: 0.08 });
    let kind = YeastKind::ActiveDry;
    let heat = Numbers {
        names: vec!["heat".into()],
        means: vec![mean],
        covariance: vec![vec![0.1 + 0.2]],
    };
    Lots {
        yeast: vec![lot(
            "jar “of March” #1",
            YeastLot { kind, teaspoon, numbers: numbers(mean, share) },
        )],
        bags: vec![lot("box", BagKind { bag, card, numbers: heat })],
        enzymes: vec![lot(
            "bottle",
            EnzymeLot { product: "glucoamylase-powder".into(), numbers: Numbers::default() },
        )],
        meters: vec![lot(
            "no. 2",
            MeterPosterior {
                log_gain: -0.3,
                log_gain_sd: 0.1,
                zero: 0.001,
                zero_sd: 0.004,
                checked: true,
            },
        )],
    }
}

proptest! {
    #[test]
    fn what_is_written_is_read_again(mean in -3.0..3.0_f64, share in -0.9..0.9_f64) {
        let lots = lots(mean, share);
        let file = write_lots(&lots);
        let read = read_lots(file.as_bytes());
        prop_assert_eq!(read.mistakes, vec![]);
        prop_assert_eq!(read.lots, Some(lots));
    }

    #[test]
    fn any_bytes_give_an_answer(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let _ = read_lots(&bytes);
        let _ = readings(&bytes);
    }

    /// Text that looks like the real thing, with one sign changed.
    #[test]
    fn a_slip_anywhere_gives_an_answer(at in 0..2000_usize, sign in any::<char>()) {
        for text in [write_lots(&lots(0.5, 0.2)), WHOLE.to_owned()] {
            let mut letters: Vec<char> = text.chars().collect();
            let place = at % letters.len();
            letters[place] = sign;
            let slip: String = letters.into_iter().collect();
            let _ = read_lots(slip.as_bytes());
            let _ = readings(slip.as_bytes());
        }
    }
}

#[test]
fn an_empty_file_of_lots_is_one() {
    let read = read_lots(write_lots(&Lots::default()).as_bytes());
    assert_eq!(read.lots, Some(Lots::default()));
}

#[test]
fn everything_wrong_with_the_lots_is_said_at_once() {
    let file = write_lots(&lots(0.5, 0.2))
        .replace(
            "in_use = true\nmeasured = [\"spoons\", \"bags\"]\nkind",
            "in_use = 3\ncolour = \"red\"\nmeasured = [\"spoons\", \"bags\"]\nkind",
        )
        .replace("kind = \"active dry\"", "kind = \"wild\"")
        .replace(
            "date = 2027-03-02\nin_use = true\nmeasured = [\"spoons\", \"bags\"]\nbag",
            "date = \"soon\"\nin_use = true\nmeasured = [\"spoons\", \"beds\"]\nbag",
        )
        .replace("log_gain_doubt = 0.1", "log_gain_doubt = 9.0");
    let read = read_lots(file.as_bytes());
    assert_eq!(read.lots, None);
    let line =
        |text: &str| file.lines().position(|line| line.starts_with(text)).expect(text) + 1;
    let lines: Vec<usize> = read.mistakes.iter().map(|mistake| mistake.line).collect();
    let wanted = [
        line("in_use = 3"),
        line("colour"),
        line("kind"),
        line("date = \"soon\""),
        line("measured = [\"spoons\", \"beds\"]"),
        line("log_gain_doubt"),
    ];
    assert_eq!(lines, wanted, "{:#?}", read.mistakes);
    assert!(read.mistakes.iter().all(|mistake| !mistake.fix.is_empty()));
}

#[test]
fn covariances_that_cannot_be_are_refused() {
    let file = write_lots(&lots(0.5, 0.2)).replace("with = [0.25]", "with = [0.0001]");
    let read = read_lots(file.as_bytes());
    assert_eq!(read.lots, None);
    assert_eq!(read.mistakes.len(), 1, "{:?}", read.mistakes);
    let short = write_lots(&lots(0.5, 0.2)).replace("with = [0.25]", "with = []");
    assert!(read_lots(short.as_bytes()).lots.is_none());
}

#[test]
fn a_newer_file_is_not_touched() {
    let file = write_lots(&lots(0.5, 0.2)).replace("format = 1", "format = 2");
    let read = read_lots(file.as_bytes());
    assert_eq!(read.lots, None);
    assert_eq!(read.mistakes.len(), 1);
    assert!(read.mistakes[0].what.contains("newer"));
}

/// Everything that can stand in such a file, as people write it.
const WHOLE: &str = "\
date,2027-03-02
room,70 °F
yeast lot,jar of March
bag lot,box 2
meter name,no. 1

spoon,mass (g)
1,3.2
2,3.4 g
3,

cooling,temperature (°F)
0,104
5 min,39 °C

syringe (mL),height
0,5 mm
30,9
60,1.3 cm

made,yeast,sugar,water,water temperature,tray
A,0.41 g,1/8 tsp,40 mL,35 °C,95 °F

bag,0,5,10 min
A,6,8,11
B,5,,6

bag,minute,height (cm)
B,15,0.8

ethanol,meter,temperature
0 %,0.00,21 °C
0.5 %,0.03,
";

#[test]
fn a_file_is_read_as_people_write_it() {
    let file = readings(WHOLE.as_bytes());
    assert_eq!(file.faults, vec![]);
    let found = &file.readings;
    assert_eq!(found.parts(), Part::ALL);
    assert_eq!(found.date, Some(date(2027, 3, 2)));
    assert!((found.room_celsius.expect("a room") - 21.111).abs() < 0.001);
    assert_eq!(found.lots.yeast.as_deref(), Some("jar of March"));
    assert_eq!(found.lots.meter.as_deref(), Some("no. 1"));
    let close = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let grams: Vec<f64> = found.spoons.iter().map(|spoon| spoon.value.grams).collect();
    assert_eq!(grams.len(), 2);
    assert!(close(grams[0], 3.2) && close(grams[1], 3.4));
    assert!(close(found.dummy[0].value.celsius, 40.0));
    assert!(
        close(found.dummy[1].value.celsius, 39.0) && close(found.dummy[1].value.minute, 5.0)
    );
    let heights: Vec<f64> = found.syringe.iter().map(|one| one.value.height_mm).collect();
    assert_eq!(heights, [5.0, 9.0, 13.0]);
    assert_eq!(found.syringe[2].line, 19);
    assert_eq!(found.made[0].yeast.as_ref().map(|amount| amount.value), Some(0.41));
    assert!(close(found.made[0].tray_celsius.expect("a tray"), 35.0));
    let of = |bag: &str| {
        let bag = found.bags.iter().find(|one| one.bag == bag).expect("the bag");
        bag.heights.iter().map(|h| (h.value.minute, h.value.height_mm)).collect::<Vec<_>>()
    };
    assert_eq!(of("A"), [(0.0, 6.0), (5.0, 8.0), (10.0, 11.0)]);
    assert_eq!(of("B"), [(0.0, 5.0), (10.0, 6.0), (15.0, 8.0)]);
    let meter: Vec<(f64, f64)> =
        found.meter.iter().map(|one| (one.value.strength, one.value.percent)).collect();
    assert_eq!(meter, [(0.0, 0.0), (0.5, 0.03)]);
    assert_eq!(found.meter[1].value.celsius, None);
}

#[test]
fn every_mistake_has_its_line_and_what_to_do() {
    let text = "\
5,6
date,yesterday
spoon,mass
1,50 mL
2,32 g
cooling,warmth
0,40
syringe,height
10 mL,12
20 g,14
made,yeast
A,lots
A,1 g
bag,0,5
A,4,900
A,4,5,6
ethanol,meter
0.5,7
";
    let file = readings(text.as_bytes());
    let lines: Vec<u64> = file.faults.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [1, 2, 4, 5, 6, 6, 10, 12, 13, 15, 16, 18], "{:#?}", file.faults);
    assert!(file.faults.iter().all(|fault| !fault.what.is_empty() && !fault.fix.is_empty()));
    let text = "cooling,temperature\n0,40\n";
    let bare = readings(text.as_bytes());
    assert_eq!(bare.faults.len(), 1, "degrees of which kind: {:?}", bare.faults);
}

#[test]
fn other_signs_between_cells_will_do() {
    for (sign, other) in [(";", ","), ("\t", "."), ("|", ".")] {
        let text = format!("spoon{sign}mass (g)\n1{sign}3{other}2\n2{sign}3{other}4\n");
        let file = readings(text.as_bytes());
        assert_eq!(file.faults, vec![], "{text}");
        assert!((file.readings.spoons[0].value.grams - 3.2).abs() < 1e-9, "{text}");
    }
}

/// A sheet with something in every table, as somebody may type it.
fn typed() -> TypedSheet {
    let mut sheet = TypedSheet::default();
    for (id, text) in [
        ("date", "2027-03-02"),
        ("room", "70 °F"),
        ("yeast", "jar, the \"good\" one"),
        ("spoon-0", "3.2"),
        ("spoon-2", "0.12 oz"),
        ("cooling-0-at", "0"),
        ("cooling-0", "104 °F"),
        ("cooling-1-at", "5"),
        ("cooling-1", "36,5"),
        ("cooling-2-at", "10"),
        ("syringe-0-at", "0"),
        ("syringe-0", "5"),
        ("syringe-1-at", "25"),
        ("syringe-1", "0.8 cm"),
        ("made-A-yeast", "1/4 tsp"),
        ("made-A-tray", "35"),
        ("minute-0", "0"),
        ("minute-1", "5"),
        ("bag-A-0", "6"),
        ("bag-A-1", "9"),
        ("bag-B-0", "6"),
        ("ethanol-0-at", "0.5"),
        ("ethanol-0", "0.03"),
        ("ethanol-0-warm", "21"),
    ] {
        sheet.set(id, text);
    }
    sheet
}

#[test]
fn a_typed_sheet_is_read_as_a_file_and_comes_back_as_it_was_typed() {
    let sheet = typed();
    let file = sheet.write();
    let read = readings(file.text.as_bytes());
    assert_eq!(read.faults, [], "{}", file.text);
    let all = read.readings;
    assert_eq!(all.lots.yeast.as_deref(), Some("jar, the \"good\" one"));
    let masses: Vec<f64> = all.spoons.iter().map(|one| one.value.grams).collect();
    // 1 oz = 28.349523125 g exactly (international avoirdupois, NIST SP 811, B.8, from memory).
    assert!((masses[0] - 3.2).abs() < 1e-9 && (masses[1] - 0.12 * 28.349_523_125).abs() < 1e-6);
    let water: Vec<f64> = all.dummy.iter().map(|one| one.value.celsius).collect();
    assert_eq!(water.len(), 2, "nothing was read at minute 10");
    assert!((water[0] - 40.0).abs() < 1e-6 && (water[1] - 36.5).abs() < 1e-9);
    assert!((all.syringe[1].value.height_mm - 8.0).abs() < 1e-9);
    assert_eq!(all.made[0].yeast.as_ref().expect("yeast").written, "1/4 tsp");
    assert_eq!(all.made[0].tray_celsius, Some(35.0));
    assert_eq!(all.bags[0].heights.len(), 2);
    assert_eq!(all.meter[0].value.celsius, Some(21.0));
    let back = TypedSheet::read(file.text.as_bytes());
    assert_eq!(back.write().text, file.text);
    assert_eq!(back.get("cooling-0"), "104 °F");
}

#[test]
fn a_table_of_another_shape_or_unit_is_a_sheet_too() {
    let file =
        "yeast lot,jar\ncooling,temperature (°F)\n0,104\n5,98.6 °F\n\nbag,0,5\nA,6,9\nb,-,7\n";
    let sheet = TypedSheet::read(file.as_bytes());
    assert_eq!(sheet.get("cooling-0"), "104 °F");
    assert_eq!(sheet.get("cooling-1"), "98.6 °F");
    assert_eq!(
        (sheet.get("bag-A-1"), sheet.get("bag-B-0"), sheet.get("bag-B-1")),
        ("9", "", "7")
    );
    let (as_file, as_sheet) =
        (readings(file.as_bytes()), readings(sheet.write().text.as_bytes()));
    assert_eq!(as_sheet.faults, []);
    let plain = |mut all: barm_domain::pilot::PilotReadings| {
        let lines = all.bags.iter_mut().flat_map(|bag| &mut bag.heights);
        lines.for_each(|one| one.line = 0);
        all.dummy.iter_mut().for_each(|one| one.line = 0);
        all
    };
    assert_eq!(plain(as_file.readings), plain(as_sheet.readings));
}

#[test]
fn what_is_wrong_is_said_at_its_cell() {
    let mut sheet = typed();
    for (id, text) in [
        ("spoon-0", "heavy"),
        ("cooling-1-at", ""),
        ("syringe-1-at", "spoon"),
        ("made-A-tray", "500 °C"),
        ("bag-A-1", "900"),
    ] {
        sheet.set(id, text);
    }
    let file = sheet.write();
    let faults = readings(file.text.as_bytes()).faults;
    let mut cells: Vec<&str> =
        faults.iter().filter_map(|fault| file.cell_of(&sheet, fault)).collect();
    cells.extend(file.unwritten().iter().map(|(id, _)| id.as_str()));
    cells.sort_unstable();
    let wanted = ["bag-A-1", "cooling-1-at", "made-A-tray", "spoon-0", "syringe-1-at"];
    assert_eq!(cells, wanted, "{faults:?}\n{}", file.text);
}

#[test]
fn a_part_is_taken_over_by_itself() {
    let (mut mine, theirs) = (TypedSheet::default(), typed());
    mine.set("spoon-0", "9");
    mine.set("spoon-7", "9");
    let both = mine.with(Part::Spoons, &theirs);
    assert_eq!((both.get("spoon-0"), both.get("spoon-7")), ("3.2", ""));
    assert_eq!((both.get("room"), both.get("syringe-0")), ("70 °F", ""));
    assert!(both.same_in(Part::Spoons, &theirs) && !both.same_in(Part::Syringe, &theirs));
    assert!(both.has(Part::Spoons) && !both.has(Part::Bags));
    mine.set("minute-3", "5");
    mine.set("onclick", "x");
    mine.set("spoon-100", "3");
    assert!(!mine.has(Part::Bags), "a minute is no reading");
    assert_eq!((mine.get("onclick"), mine.get("spoon-100")), ("", ""));
}
