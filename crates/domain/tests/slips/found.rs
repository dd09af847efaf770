//! Slips that were made on purpose, and when they are found.

use crate::mishap::Mishap;
use crate::share::Share;
use crate::trial::{leak_found, unit_found};
use crate::{bags, classes, full, not_held};
use std::collections::BTreeMap;

/// Three times the doubt of a difference of two readings (0.71 mm,
/// [`barm_science::ruler::usual_difference_sd_mm`]): leaks that lose more between two readings are to
/// be found.
pub(crate) const LARGE_MM: f64 = 2.1213;

#[test]
fn unit_slips_are_found_by_the_reading_after() {
    let chances = |mishap| if mishap == Mishap::Unit { 0.05 } else { 0.0 };
    let classes = classes("unit slips", bags(), &chances);
    let (mut found, mut half) = (Share::default(), Share::default());
    let mut units = BTreeMap::<String, Share>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        let Some(spoiled) = &bag.read.spoiled else { continue };
        if spoiled.at + 1 >= bag.read.heights.len() {
            continue;
        }
        let is_found = unit_found(bag, spoiled);
        match bag.read.sound_mm[spoiled.at] {
            rise if rise >= 4.0 => {
                found.count(is_found);
                let unit = spoiled.unit.map(|unit| unit.word()).unwrap_or_default();
                units.entry(unit.into()).or_default().count(is_found);
            }
            rise if rise >= 2.0 => half.count(is_found),
            _ => {}
        }
    }
    println!("| unit slips at a rise of 4 mm or more, by the reading after | {found} |");
    println!("| the same at 2 to 4 mm | {half} |");
    for (unit, share) in units {
        println!("| of these in {unit} | {share} |");
    }
    found.at_least(0.95, full(), "unit slips");
}

#[test]
fn leaks_are_found_by_the_second_reading() {
    let chances = |mishap| if mishap == Mishap::Leak { 0.25 } else { 0.0 };
    let classes = classes("leaks", bags(), &chances);
    let (mut found, mut half) = (Share::default(), Share::default());
    let mut sizes = BTreeMap::<u32, Share>::new();
    for bag in classes.iter().flat_map(|class| &class.bags) {
        let Some(spoiled) = &bag.read.spoiled else { continue };
        if spoiled.at + 1 >= bag.read.heights.len() {
            continue;
        }
        let is_found = leak_found(bag, spoiled);
        let times = spoiled.lost_mm / LARGE_MM;
        if times > 1.0 {
            found.count(is_found);
            sizes.entry((times as u32).min(4)).or_default().count(is_found);
        } else if times > 0.5 {
            half.count(is_found);
        }
    }
    println!(
        "| leaks of more than 3 times the reading doubt, by the second reading | {found} |"
    );
    for (times, share) in sizes {
        println!("| of these {} times the reading doubt and more | {share} |", 3 * times);
    }
    println!("| the same between 1.5 and 3 times | {half} |");
    not_held::at_least(found, 0.90, full(), "leaks");
}
