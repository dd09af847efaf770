//! Hot and cold water on paper.

use super::clock::Hours;
use barm_documents::sheet::{Entry, WaterMix};
use barm_domain::amount::show::both_degrees;
use barm_domain::prep::{Hands, Jug, Mix, PeriodPrep};

/// The waters of a period.
pub(super) fn mixes(period: &PeriodPrep, hours: Hours) -> Vec<WaterMix> {
    period.jugs.iter().map(|jug| water_mix(period, jug, hours)).collect()
}

/// Which bags get the water of a jug, where a period has several.
fn whose(period: &PeriodPrep, jug: &Jug) -> String {
    let most = period.jugs.iter().map(|jug| jug.treatments.len()).max().unwrap_or(0);
    let alone = period.jugs.iter().filter(|jug| jug.treatments.len() == most).count() == 1;
    match period.jugs.len() {
        0 | 1 => String::new(),
        // The other jugs of the period name theirs.
        _ if alone && most > 3 && jug.treatments.len() == most => "all other bags".to_owned(),
        _ => jug.treatments.join(", "),
    }
}

/// A water as the trays name it.
pub(super) fn degrees(celsius: f64) -> String {
    // A half degree tells two jugs apart; a tenth is finer than any thermometer here.
    format!("{} °C", (10.0 * celsius).round() / 10.0)
}

fn water_mix(period: &PeriodPrep, jug: &Jug, hours: Hours) -> WaterMix {
    let (hot, cold) = match jug.mix {
        Mix::Parts { hot, cold } => (hot.to_string(), cold.to_string()),
        Mix::NeedsHotter => ("hotter water needed".to_owned(), String::new()),
        Mix::NeedsColder => (String::new(), "colder water needed".to_owned()),
    };
    let (least, most) = jug.in_bag_celsius;
    let bag = if most - least < 0.5 {
        format!("{least:.0} °C")
    } else {
        format!("{least:.0} to {most:.0} °C")
    };
    let hands = match jug.hands {
        Hands::Students => "",
        Hands::Teacher => ", teacher pours",
        Hands::Nobody => ", too hot for students",
    };
    WaterMix {
        period: format!("Period {}", period.period),
        poured: degrees(jug.poured_celsius),
        whose: whose(period, jug),
        clock: hours.about(jug.mix_at),
        hot,
        cold,
        total: jug.makes.to_string(),
        jug: if jug.mixed_celsius > 100.0 {
            "no water is that hot".to_owned()
        } else {
            format!("{}{hands}", both_degrees(jug.mixed_celsius))
        },
        bag,
    }
}

/// When and how a jug is topped up while the groups of a period pour.
pub(super) fn top_ups(period: &PeriodPrep, hours: Hours) -> impl Iterator<Item = Entry> {
    period.jugs.iter().filter_map(move |jug| {
        let top_up = jug.top_up?;
        let water = if top_up.hot { "hot" } else { "cold" };
        let which = if period.jugs.len() > 1 {
            format!("the jug of {}", degrees(jug.poured_celsius))
        } else {
            "the jug".to_owned()
        };
        Some(Entry {
            head: format!("Period {}", period.period),
            says: format!(
                "Top {which} up with {} of {water} water at {}.",
                top_up.adds,
                hours.about(top_up.at)
            ),
        })
    })
}
