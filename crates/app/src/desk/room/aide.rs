//! The aide's page: tick lists of the stations, from the preparation of the day,
//! with every sealed bag as it was sealed.
//!
//! What is ticked stays on the aide's device: a tick is a memory aid, says nothing about a bag, and
//! does not belong in the record. Nothing here tells what is expected of any bag.

use super::prepare::prepared;
use super::{Kind, Scene};
use barm_documents::catalog::Catalog;
use barm_domain::prep::{Hands, Mix, Prep};

/// What the page shows: every station that the day needs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct AideView {
    /// Whether it happens in a class.
    pub(crate) kind: Kind,
    /// Stations in the order of the day.
    pub(crate) stations: Vec<Station>,
}

/// One station.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Station {
    /// The word in its address.
    pub(crate) word: &'static str,
    /// Its name.
    pub(crate) name: String,
    /// What it asks for.
    pub(crate) ticks: Vec<Tick>,
    /// What to watch out for.
    pub(crate) caution: Option<String>,
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Tick {
    /// The same on every load, so that a tick is found again.
    pub(crate) key: String,
    /// When, if there is a time for it.
    pub(crate) at: Option<String>,
    /// What to do.
    pub(crate) says: String,
}

/// The stations in a language.
pub(crate) fn aide_view(scene: &Scene<'_>, words: &Catalog) -> AideView {
    let prep = prepared(scene.newest, scene.plan).ok();
    let of_prep = prep
        .iter()
        .flat_map(|prep| [trays(prep, words), water(prep, words), stock(prep, words)]);
    let stations = of_prep
        .chain([said("vent", VENT, words), said("clean", CLEAN, words)])
        .filter(|station| !station.ticks.is_empty());
    AideView { kind: scene.kind, stations: stations.collect() }
}

const VENT: &[&str] = &[
    "aide-vent-goggles",
    "aide-vent-open",
    "aide-vent-pour",
    "aide-vent-window",
    "aide-vent-count",
];
const CLEAN: &[&str] = &[
    "aide-clean-cloth",
    "aide-clean-floor",
    "aide-clean-rulers",
    "aide-clean-trays",
    "aide-clean-hands",
];

fn said(word: &'static str, keys: &[&str], words: &Catalog) -> Station {
    let tick = |key: &&str| Tick { key: (*key).to_owned(), at: None, says: words.say(key) };
    Station {
        word,
        name: words.say(&format!("aide-{word}")),
        ticks: keys.iter().map(tick).collect(),
        caution: None,
    }
}

fn trays(prep: &Prep, words: &Catalog) -> Station {
    let ticks = prep.periods.iter().flat_map(|period| {
        period.trays.iter().filter(|tray| tray.group > 0).map(|tray| {
            let bags = tray.bags.len().to_string();
            let group = tray.group.to_string();
            let values =
                [("period", period.period.as_str()), ("group", &group), ("bags", &bags)];
            Tick {
                key: format!("tray-{}-{group}", period.period),
                at: None,
                says: words.say_with("aide-tray", &values),
            }
        })
    });
    Station {
        word: "trays",
        name: words.say("aide-trays"),
        ticks: ticks.collect(),
        caution: Some(words.say("aide-trays-caution")),
    }
}

fn water(prep: &Prep, words: &Catalog) -> Station {
    let mut ticks = Vec::new();
    let mut hot = false;
    for period in &prep.periods {
        for (at, jug) in period.jugs.iter().enumerate() {
            hot |= jug.hands != Hands::Students;
            let (makes, celsius) = (jug.makes.to_string(), format!("{:.0}", jug.mixed_celsius));
            let mut values = vec![
                ("period", period.period.as_str()),
                ("makes", makes.as_str()),
                ("degrees", celsius.as_str()),
            ];
            let parts = match jug.mix {
                Mix::Parts { hot, cold } => Some((hot.to_string(), cold.to_string())),
                Mix::NeedsHotter | Mix::NeedsColder => None,
            };
            let key = match &parts {
                Some((hot, cold)) => {
                    values.extend([("hot", hot.as_str()), ("cold", cold.as_str())]);
                    "aide-jug"
                }
                None => "aide-jug-teacher",
            };
            ticks.push(Tick {
                key: format!("jug-{}-{at}", period.period),
                at: Some(jug.mix_at.strftime("%-I:%M").to_string()),
                says: words.say_with(key, &values),
            });
        }
    }
    let caution = if hot { "aide-water-hot" } else { "aide-water-caution" };
    Station {
        word: "water",
        name: words.say("aide-water"),
        ticks,
        caution: Some(words.say(caution)),
    }
}

fn stock(prep: &Prep, words: &Catalog) -> Station {
    let ticks = prep.stocks.iter().enumerate().flat_map(|(batch, stock)| {
        let name = words.solution(stock.product);
        let (makes, takes) = (stock.makes.to_string(), stock.takes.to_string());
        let until = stock.use_by.strftime("%-I:%M").to_string();
        let values = [
            ("name", name.as_str()),
            ("makes", makes.as_str()),
            ("takes", takes.as_str()),
            ("until", until.as_str()),
        ];
        ["aide-stock-make", "aide-stock-label", "aide-stock-shake"].map(|key| Tick {
            key: format!("{key}-{batch}-{}", stock.product),
            at: (key == "aide-stock-make")
                .then(|| stock.make_at.strftime("%-I:%M").to_string()),
            says: words.say_with(key, &values),
        })
    });
    Station {
        word: "stock",
        name: words.say("aide-stock"),
        ticks: ticks.collect(),
        caution: Some(words.say("aide-stock-caution")),
    }
}

#[cfg(test)]
mod tests {
    use super::aide_view;
    use crate::desk::room::acted::{Acted, PERIOD, bag};
    use barm_documents::catalog::Catalog;
    use barm_domain::plan::Plan;
    use barm_domain::record::What;
    use std::sync::Arc;

    #[test]
    fn trays_count_a_sealed_bag_that_the_newest_plan_does_not_list() {
        let mut acted = Acted::new(2, 2);
        let told = |acted: &Acted| -> Vec<String> {
            let view = acted.scene(|scene| aide_view(scene, Catalog::of("en")));
            let trays = view.stations.into_iter().find(|station| station.word == "trays");
            let own = |key: &str| key.starts_with(&format!("tray-{PERIOD}-"));
            let ticks = trays.expect("trays").ticks.into_iter();
            ticks.filter(|tick| own(&tick.key)).map(|tick| tick.says).collect()
        };
        let before = told(&acted);
        assert_eq!(before.len(), 2);
        assert!(before.iter().all(|says| says.ends_with(": 2")), "{before:?}");
        acted.bag(600.0, bag(1, 0), What::Sealed { plan: 1 });
        let mut plan = Plan::clone(&acted.plan);
        let gone = [bag(1, 0), bag(2, 0)].map(|code| code.to_string());
        plan.bags.retain(|own| !gone.contains(&own.code));
        acted.plans.insert(2, Arc::new(plan));
        let after = told(&acted);
        assert!(after[0].ends_with(": 2"), "it is sealed: {after:?}");
        assert!(after[1].ends_with(": 1"), "it is not: {after:?}");
    }
}
