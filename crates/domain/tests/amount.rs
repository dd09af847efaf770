//! Amounts as people write them, against published conversion tables.

use barm_domain::amount::{
    Amount, AmountError, AmountKind, Dimension, Quantity, Wanted, altitude_meters, celsius,
    dollars, millimeters, minutes, number, pascals, share, size,
};

fn close(ours: f64, theirs: f64, within: f64, what: &str) {
    let scale = theirs.abs().max(1e-300);
    assert!(
        (ours - theirs).abs() <= within * scale || (ours - theirs).abs() <= 1e-12,
        "{what}: {ours} against {theirs}"
    );
}

/// How the units of `rows/units.csv` are written in a plan, and what turns our base unit into
/// theirs. Units that nobody writes in a plan (grain, food calorie) are not read here.
const WRITTEN: &[(&str, &str, f64)] = &[
    ("US teaspoon", "tsp", 1.0),
    ("US tablespoon", "tbsp", 1.0),
    ("US cup", "cup", 1.0),
    ("US pint", "pint", 1.0),
    ("US gallon", "gal", 1.0),
    ("metric teaspoon", "tsp (5 mL)", 1.0),
    ("inch", "in", 1.0),
    ("foot", "ft", 1.0),
    ("ounce avoirdupois", "oz", 1.0),
    ("psi", "psi", 1.0),
    ("mmHg conventional", "mmHg", 1.0),
    ("atm", "atm", 1.0),
    ("torr", "torr", 1.0),
    ("millibar", "mbar", 1.0),
    ("hour", "h", 60.0),
    ("mile", "mi", 0.001),
    ("degF to degC", "°F", 1.0),
];

/// Rows from GNU units and pint (see the head of the file); the accuracy is theirs, 1e-9.
#[test]
fn agrees_with_gnu_units_and_pint() {
    let mut read = 0;
    let rows = include_str!("rows/units.csv").lines().filter(|l| !l.starts_with('#')).skip(1);
    for row in rows {
        let cells: Vec<&str> = row.split(',').collect();
        let (from, amount, theirs) = (cells[0], cells[2], cells[3]);
        let theirs: f64 = theirs.parse().unwrap();
        if from == "1/8 inch" {
            close(millimeters("1/8 in").unwrap(), theirs, 1e-9, from);
            read += 1;
            continue;
        }
        let Some((_, unit, scale)) = WRITTEN.iter().find(|(name, ..)| *name == from) else {
            continue;
        };
        let text = format!("{amount} {unit}");
        let ours = Quantity::parse(&text, Wanted::AMOUNT).unwrap().value * scale;
        close(ours, theirs, 1e-9, &text);
        read += 1;
    }
    assert_eq!(read, 28, "every row but grain and food calorie");
}

/// NIST Special Publication 811 (2008), appendix B.8, and 21 CFR 101.9(b)(5)(viii), as printed.
#[test]
fn agrees_with_the_printed_tables() {
    for (text, value, digits, source) in [
        ("1 tsp", 4.928922, 7, "SP 811 B.8 teaspoon"),
        ("1 tbsp", 14.78676, 7, "SP 811 B.8 tablespoon"),
        ("1 cup", 236.5882, 7, "SP 811 B.8 cup (U.S.)"),
        ("1 fl oz", 29.57353, 7, "SP 811 B.8 ounce (U.S. fluid)"),
        ("1 pint", 473.1765, 7, "SP 811 B.8 pint (U.S. liquid)"),
        ("1 quart", 946.3529, 7, "SP 811 B.8 quart (U.S. liquid)"),
        ("1 lb", 453.5924, 7, "SP 811 B.8 pound (avoirdupois)"),
        ("1 oz", 28.34952, 7, "SP 811 B.8 ounce (avoirdupois)"),
        ("1 inHg", 3386.389, 7, "SP 811 B.8 inch of mercury, conventional"),
        ("1 psi", 6894.757, 7, "SP 811 B.8 pound-force per square inch"),
        ("1 label tsp", 5.0, 16, "21 CFR 101.9(b)(5)(viii)"),
        ("1 label tbsp", 15.0, 16, "21 CFR 101.9(b)(5)(viii)"),
        ("1 label cup", 240.0, 16, "21 CFR 101.9(b)(5)(viii)"),
        ("1 label fl oz", 30.0, 16, "21 CFR 101.9(b)(5)(viii)"),
    ] {
        let ours = Quantity::parse(text, Wanted::AMOUNT).unwrap().value;
        close(ours, value, 0.6 * 10f64.powi(1 - digits), source);
    }
}

#[test]
fn reads_amounts_in_every_usual_spelling() {
    use AmountKind::{Drops, Mass, Pieces, Spoon, Volume};
    const TSP: f64 = 4.92892159375;
    for (text, kind, value) in [
        ("1 tsp", Spoon, TSP),
        ("1/4 tsp", Spoon, TSP / 4.0),
        ("¼ tsp", Spoon, TSP / 4.0),
        ("1⁄4 tsp", Spoon, TSP / 4.0),
        ("1 1/2 cups", Spoon, TSP * 72.0),
        ("1-1/2 cups", Spoon, TSP * 72.0),
        ("1½ cups", Spoon, TSP * 72.0),
        ("1 ½ Cups", Spoon, TSP * 72.0),
        ("1 level teaspoon", Spoon, TSP),
        ("2 Tbsp.", Spoon, TSP * 6.0),
        ("1 tbsp + 1 tsp", Spoon, TSP * 4.0),
        ("1 tbsp and 1 tsp", Spoon, TSP * 4.0),
        ("1 tsp (5 mL)", Spoon, 5.0),
        ("1 5 mL tsp", Spoon, 5.0),
        ("1/2 5-mL tsp", Spoon, 2.5),
        ("2 labeling teaspoons", Spoon, 10.0),
        ("2 labelling teaspoons", Spoon, 10.0),
        ("2.5 g", Mass, 2.5),
        ("2,5 g", Mass, 2.5),
        ("2.5g", Mass, 2.5),
        (".5 g", Mass, 0.5),
        ("0,125 g", Mass, 0.125),
        ("1,250,000 mg", Mass, 1250.0),
        ("1,250.5 g", Mass, 1250.5),
        ("250 mg", Mass, 0.25),
        ("1 lb 4 oz", Mass, 453.59237 + 4.0 * 28.349523125),
        ("60 mL", Volume, 60.0),
        ("60 ML", Volume, 60.0),
        ("60 cc", Volume, 60.0),
        ("0.04 l", Volume, 40.0),
        ("8 fl. oz.", Volume, TSP * 48.0),
        ("1 pint", Volume, TSP * 96.0),
        ("1 qt", Volume, TSP * 192.0),
        ("5 drops", Drops, 5.0),
        ("1 tablet", Pieces, 1.0),
        ("2 packets", Pieces, 2.0),
        ("50 bags", Pieces, 50.0),
    ] {
        let amount = Amount::parse(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(amount.kind, kind, "{text}");
        close(amount.value, value, 1e-12, text);
        assert_eq!(amount.written, text);
    }
}

#[test]
fn reads_temperatures_lengths_times_pressures_shares_and_prices() {
    for (text, value) in [
        ("105 °F", 365.0 / 9.0),
        ("105F", 365.0 / 9.0),
        ("105 deg F", 365.0 / 9.0),
        ("105 degrees Fahrenheit", 365.0 / 9.0),
        ("32 °F", 0.0),
        ("104 ºF", 40.0),
        ("-40 °F", -40.0),
        ("41 C", 41.0),
        ("41°C", 41.0),
        ("41 ℃", 41.0),
        ("−5 °C", -5.0),
        ("37,5 °C", 37.5),
    ] {
        close(celsius(text).unwrap(), value, 1e-12, text);
    }
    for (text, value) in [
        ("1 in", 25.4),
        ("1 3/8 in", 34.925),
        ("1 3/8\"", 34.925),
        ("1⅜″", 34.925),
        ("3 mm", 3.0),
        ("1.2 cm", 12.0),
    ] {
        close(millimeters(text).unwrap(), value, 1e-12, text);
    }
    for (text, a, b) in [
        ("165 x 83 mm", 165.0, 83.0),
        ("165x83mm", 165.0, 83.0),
        ("165 mm × 83 mm", 165.0, 83.0),
        ("16.5 X 8.3 cm", 165.0, 83.0),
        ("3 x 5 in", 76.2, 127.0),
        ("3 in by 5 in", 76.2, 127.0),
        ("6 1/2 x 3 1/4 in", 165.1, 82.55),
        ("6½ × 3¼ inches", 165.1, 82.55),
    ] {
        let size = size(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        close(size.first_mm, a, 1e-12, text);
        close(size.second_mm, b, 1e-12, text);
    }
    for (text, value) in [
        ("3 min 30 s", 3.5),
        ("3 min, 30 sec", 3.5),
        ("45 min", 45.0),
        ("1 h 15 min", 75.0),
        ("1.5 hours", 90.0),
        ("90 s", 1.5),
    ] {
        close(minutes(text).unwrap(), value, 1e-12, text);
    }
    for (text, value) in [
        ("85.6 kPa", 85_600.0),
        ("856 hPa", 85_600.0),
        ("856 mbar", 85_600.0),
        ("25.3 inHg", 25.3 * 25.4 * 133.322387415),
        ("25.3 in Hg", 25.3 * 25.4 * 133.322387415),
        ("642 mmHg", 642.0 * 133.322387415),
        ("1 atm", 101_325.0),
    ] {
        close(pascals(text).unwrap(), value, 1e-12, text);
    }
    for (text, value) in [
        ("1400 m", 1400.0),
        ("4600 ft", 1402.08),
        ("4600 feet", 1402.08),
        ("1.4 km", 1400.0),
        ("-58 m", -58.0),
    ] {
        close(altitude_meters(text).unwrap(), value, 1e-12, text);
    }
    for (text, value) in [("10 %", 0.1), ("10%", 0.1), ("12,5 percent", 0.125), ("0 %", 0.0)] {
        close(share(text).unwrap(), value, 1e-12, text);
    }
    for (text, value) in [
        ("$5.49", 5.49),
        ("$ 5.49", 5.49),
        ("5.49", 5.49),
        ("5,49", 5.49),
        ("5.49 USD", 5.49),
        ("$1,249.00", 1249.0),
    ] {
        close(dollars(text).unwrap(), value, 1e-12, text);
    }
    for (text, value) in [("12", 12.0), ("1 3/8", 1.375), ("2,5", 2.5), ("-1.5", -1.5)] {
        close(number(text).unwrap(), value, 1e-12, text);
    }
}

/// Each sentence names what is wrong and what to write instead.
#[test]
fn says_what_is_wrong_and_what_to_write() {
    for (text, what, fix) in [
        ("", "an amount is missing", "write it like 1/4 tsp, 2.5 g or 60 mL"),
        (
            "tsp",
            "“tsp” has no number where one belongs",
            "write it like 1/4 tsp, 2.5 g or 60 mL",
        ),
        (
            "5 mL tsp",
            "“5 mL tsp” has no number where one belongs",
            "write it like 1/4 tsp, 2.5 g or 60 mL",
        ),
        (
            "some",
            "“some” has no number where one belongs",
            "write it like 1/4 tsp, 2.5 g or 60 mL",
        ),
        ("2", "“2” has no unit", "write it like 1/4 tsp, 2.5 g or 60 mL"),
        ("2 teaspon", "“teaspon” is not a unit known here", "did you mean teaspoon?"),
        ("2 gramms", "“gramms” is not a unit known here", "did you mean grams?"),
        (
            "2 furlongs",
            "“furlongs” is not a unit known here",
            "write it like 1/4 tsp, 2.5 g or 60 mL",
        ),
        ("1 T", "“T” can be read in more than one way", "write tsp or tbsp"),
        (
            "1 heaping tsp",
            "“heaping” can be read in more than one way",
            "write a level measure, such as 1 1/2 tsp",
        ),
        (
            "40 °C",
            "“40 °C” is a temperature, and an amount is wanted here",
            "write it like 1/4 tsp, 2.5 g or 60 mL",
        ),
        ("1,250 g", "the comma can mean 1250 or 1.250", "write 1250 or 1.250"),
        ("1/0 tsp", "a fraction cannot have 0 below the line", "write it like 1/4 or 1 1/2"),
        ("2-3 g", "“2-3 g” is a range, and one amount is wanted here", "write one amount"),
        (
            "2 to 3 g",
            "“2 to 3 g” is a range, and one amount is wanted here",
            "write one amount",
        ),
        (
            "2 g – 3 g",
            "“2 g – 3 g” is a range, and one amount is wanted here",
            "write one amount",
        ),
        (
            "1 250 g",
            "“1 250 g” has a gap within its number or lacks a unit",
            "write a whole number without spaces, and a unit after it",
        ),
        ("2 g of sugar", "“of sugar” stands after the amount", "write the amount alone"),
        (
            "1 tsp 1 tbsp",
            "the parts of “1 tsp 1 tbsp” do not go from large to small",
            "write it like 3 min 30 s",
        ),
        ("-2 g", "“-2 g” is below zero", "write an amount of 0 or more"),
        (
            "99999999999999 g",
            "“99999999999999 g” is too large to be meant",
            "check the number and its unit",
        ),
    ] {
        let error = Amount::parse(text).unwrap_err();
        assert_eq!((error.what().as_str(), error.fix().as_str()), (what, fix), "{text}");
        assert_eq!(error.to_string(), format!("{what}; {fix}"));
    }
    assert!(matches!(celsius("40"), Err(AmountError::NoUnit { .. })));
    assert!(matches!(
        celsius("40°"),
        Err(AmountError::UnclearUnit { instead: "°C or °F", .. })
    ));
    assert!(matches!(celsius("313 K"), Err(AmountError::UnclearUnit { .. })));
    assert!(matches!(minutes("5 m"), Err(AmountError::WrongKind { is: "a length", .. })));
    assert!(matches!(minutes("3:30"), Err(AmountError::UnclearUnit { .. })));
    assert!(matches!(minutes("-5 min"), Err(AmountError::Negative { .. })));
    assert!(matches!(size("3 in"), Err(AmountError::WrongKind { is: "a length", .. })));
    assert!(matches!(size("3 x 5"), Err(AmountError::NoUnit { .. })));
    assert!(matches!(share("10"), Err(AmountError::NoUnit { .. })));
    assert!(matches!(
        dollars("free"),
        Err(AmountError::NoNumber { wanted: Wanted::PRICE, .. })
    ));
    assert!(matches!(Amount::parse(&"9".repeat(500)), Err(AmountError::TooLong { .. })));
}

#[test]
fn keeps_ounces_of_mass_and_of_volume_apart() {
    assert_eq!(Amount::parse("4 oz").unwrap().kind, AmountKind::Mass);
    assert_eq!(Amount::parse("4 fl oz").unwrap().kind, AmountKind::Volume);
    let tsp = Quantity::parse("1 tsp", Wanted::AMOUNT).unwrap();
    let label = Quantity::parse("1 label tsp", Wanted::AMOUNT).unwrap();
    assert_eq!(tsp.dimension, Dimension::Spoon);
    // 1.4 % apart: enough to matter in a shopping list, too little to see in a bag.
    close(label.value / tsp.value, 1.01442, 1e-5, "label over customary");
}
