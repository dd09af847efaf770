//! Faults that teachers and students make, each with the code under which it must be found.

use crate::dice::Dice;
use crate::school::{Asks, amount, bag, card, food, treatment};
use barm_domain::plan::{Difference, Extra, Lies, Place, Plan, Treatment, Variable};

/// A fault and how it gets into a sound plan.
pub(crate) struct Fault {
    /// The code under which it must be found.
    pub(crate) code: &'static str,
    /// What was done.
    pub(crate) what: &'static str,
    /// The plans into which it fits.
    pub(crate) fits: &'static [Asks],
    pub(crate) plant: Plant,
}

/// When a fault gets in: into the plan, or into its bag list.
pub(crate) enum Plant {
    Plan(fn(&mut Plan, &mut Dice)),
    List(fn(&mut Plan, &mut Dice)),
}

use Asks::{Food, FoodAmount, FoodAndEnzyme, Salt, Tray, Warmth, YeastAmount};
use Plant::{List, Plan as Whole};

const ANY: &[Asks] = &Asks::ALL;

/// A treatment of the first question that is compared with something, at random.
fn one<'p>(plan: &'p mut Plan, dice: &mut Dice) -> &'p mut Treatment {
    let question = &plan.questions[0];
    let compared: Vec<usize> = (0..question.treatments.len())
        .filter(|t| plan.beside(question, &question.treatments[*t]).is_some())
        .collect();
    let chosen = dice.pick(&compared);
    &mut plan.questions[0].treatments[chosen]
}

fn change(plan: &mut Plan, dice: &mut Dice, change: fn(&mut Difference)) {
    change(&mut one(plan, dice).difference);
}

fn drop_control(plan: &mut Plan, name: &str) {
    plan.controls.retain(|control| control.treatment.name != name);
}

const fn fault(
    code: &'static str,
    what: &'static str,
    fits: &'static [Asks],
    plant: Plant,
) -> Fault {
    Fault { code, what, fits, plant }
}

/// Everything that is planted.
pub(crate) const FAULTS: &[Fault] = &[
    fault(
        "two-variables",
        "more of another food",
        &[Food],
        Whole(|p, d| {
            change(p, d, |c| c.food_amount = Some(amount("1.7 g")));
            // Two foods of unlike mass are unlike whatever is in the others.
            p.questions[0].reference = Some(p.questions[0].treatments[0].name.clone());
            p.questions[0].treatments[0].difference.food_amount = Some(amount("0.5 g"));
        }),
    ),
    fault(
        "two-variables",
        "warmer water too",
        &[Food, FoodAmount, YeastAmount, Salt, Tray],
        Whole(|p, d| {
            change(p, d, |c| c.water_celsius = Some(33.0));
        }),
    ),
    fault(
        "two-variables",
        "more yeast too",
        &[Food, FoodAmount, Warmth, Salt, Tray],
        Whole(|p, d| {
            change(p, d, |c| c.yeast_amount = Some(amount("1 g")));
        }),
    ),
    fault(
        "two-variables",
        "another yeast too",
        &[Food, FoodAmount, Warmth, Salt, Tray],
        Whole(|p, d| {
            let other = if p.base.yeast == Some(barm_science::setup::YeastKind::Instant) {
                barm_science::setup::YeastKind::ActiveDry
            } else {
                barm_science::setup::YeastKind::Instant
            };
            one(p, d).difference.yeast = Some(Some(other));
        }),
    ),
    fault(
        "two-variables",
        "another bag too",
        &[Food, FoodAmount, Warmth, YeastAmount, Salt, Tray],
        Whole(|p, d| {
            change(p, d, |c| (c.bag, c.card) = (Some(bag("quart")), Some(card("6 x 8 in"))));
        }),
    ),
    fault(
        "two-variables",
        "another card too",
        &[Food, FoodAmount, Warmth, YeastAmount, Salt, Tray],
        Whole(|p, d| {
            change(p, d, |c| c.card = Some(card("4.5 x 6 in")));
        }),
    ),
    fault(
        "two-variables",
        "in a tray too",
        &[Food, FoodAmount, YeastAmount, Salt],
        Whole(|p, d| {
            change(p, d, |c| c.lies = Some(Lies::WarmTray(30.0)));
        }),
    ),
    fault(
        "two-variables",
        "salt too",
        &[Food, FoodAmount, Warmth, YeastAmount, Tray],
        Whole(|p, d| {
            change(p, d, |c| {
                c.extras = Some(vec![Extra { item: "salt".into(), amount: amount("0.5 g") }]);
            });
        }),
    ),
    fault(
        "two-variables",
        "less water in the reference",
        &[Food, FoodAmount],
        Whole(|p, _| {
            p.controls[0].treatment.difference.water = Some(amount("30 mL"));
        }),
    ),
    fault(
        "two-variables",
        "sweeter in another way",
        &[FoodAmount],
        Whole(|p, _| {
            p.questions[0].treatments[1].difference = food("honey", "0.9 g");
        }),
    ),
    fault(
        "two-variables",
        "a crossed question changes a third thing",
        &[FoodAndEnzyme],
        Whole(|p, d| {
            let chosen = d.below(2);
            p.questions[1].treatments[chosen].difference.water = Some(amount("55 mL"));
        }),
    ),
    fault(
        "two-variables",
        "two different changes beside no food",
        &[FoodAmount],
        Whole(|p, _| {
            p.questions[0].treatments[2].difference = food("maple_syrup", "1.2 g");
        }),
    ),
    fault(
        "same-as-reference",
        "a food that is none",
        &[Food, FoodAmount],
        Whole(|p, d| {
            change(p, d, |c| *c = Difference { food: Some(None), ..Difference::default() });
        }),
    ),
    fault(
        "same-as-reference",
        "salt that is none",
        &[Salt],
        Whole(|p, d| {
            change(p, d, |c| c.extras = None);
        }),
    ),
    fault(
        "no-reference",
        "nothing to compare with",
        &[Food, FoodAmount, Warmth, YeastAmount, Salt, Tray],
        Whole(|p, _| {
            p.questions[0].reference = None;
        }),
    ),
    fault(
        "other-variable",
        "asks about the yeast and changes the food",
        &[Food, FoodAmount],
        Whole(|p, _| {
            p.questions[0].variable = Variable::Yeast;
        }),
    ),
    fault(
        "other-variable",
        "asks about the bag and changes the warmth",
        &[Warmth, Tray, Salt],
        Whole(|p, _| {
            p.questions[0].variable = Variable::Bag;
        }),
    ),
    fault(
        "no-matching-reference",
        "an enzyme beside another food",
        &[FoodAndEnzyme],
        Whole(|p, d| {
            let chosen = d.below(2);
            let beside = ["Oat flour", "Dry milk"][chosen];
            p.questions[1].treatments[chosen].beside = Some(beside.into());
        }),
    ),
    fault(
        "one-level",
        "one kind of bag",
        &[Salt, Tray, Warmth],
        Whole(|p, _| {
            p.questions[0].treatments.truncate(1);
        }),
    ),
    fault(
        "levels-not-distinct",
        "one kind under two names",
        &[Food, FoodAmount],
        Whole(|p, d| {
            let twin = Treatment { name: "Something else".into(), ..one(p, d).clone() };
            p.questions[0].treatments.push(twin);
        }),
    ),
    fault(
        "spoons-hide-mass",
        "a spoon of each",
        &[Food],
        Whole(|p, _| {
            p.questions[0].treatments = vec![
                treatment("Honey", food("honey", "1/8 tsp")),
                treatment("Potato flakes", food("potato_flakes", "1/8 tsp")),
                treatment("Powdered sugar", food("sugar_powdered", "1/8 tsp")),
            ];
        }),
    ),
    fault("no-gas", "no yeast anywhere", ANY, Whole(|p, _| p.base.yeast = None)),
    fault(
        "blind-card",
        "an index card on a large bag",
        &[Food, Warmth, YeastAmount],
        Whole(|p, d| {
            p.base.bag = bag(d.pick(&["quart", "gallon"]));
            p.base.card = card("3 x 5 in");
        }),
    ),
    fault(
        "no-control",
        "no bag without food",
        &[Food],
        Whole(|p, _| {
            drop_control(p, "No food");
            p.questions[0].reference = Some(p.questions[0].treatments[0].name.clone());
        }),
    ),
    fault(
        "no-control",
        "no bag without food, by and by",
        &[Warmth, YeastAmount, Salt, Tray],
        Whole(|p, _| {
            drop_control(p, "No food");
        }),
    ),
    fault(
        "no-enzyme-control",
        "no bag with enzyme and no food",
        &[FoodAndEnzyme],
        Whole(|p, _| {
            drop_control(p, "Enzyme, no food");
        }),
    ),
    fault(
        "no-yeastless-control",
        "no bag without yeast",
        ANY,
        Whole(|p, _| {
            drop_control(p, "Food, no yeast");
        }),
    ),
    fault(
        "period-without-control",
        "a period without controls",
        ANY,
        List(|p, d| {
            let period = d.below(p.periods.len());
            let name = p.periods[period].name.clone();
            let controls: Vec<String> =
                p.controls.iter().map(|c| c.treatment.name.clone()).collect();
            p.bags.retain(|b| b.period != name || !controls.contains(&b.treatment));
        }),
    ),
    fault(
        "no-replicate",
        "one bag of each",
        ANY,
        Whole(|p, _| {
            for question in &mut p.questions {
                question.replicates = 1;
            }
        }),
    ),
    fault(
        "no-replicate",
        "one bag of one kind",
        &[Food, FoodAmount, Warmth],
        Whole(|p, d| {
            one(p, d).replicates = Some(1);
        }),
    ),
    fault(
        "apart",
        "each kind in a period of its own",
        &[Salt, Tray, YeastAmount],
        List(|p, _| {
            let reference = p.questions[0].reference.clone().unwrap();
            let (first, last) = (p.periods[0].name.clone(), p.periods[1].name.clone());
            for bag in p.bags.iter_mut().filter(|bag| bag.question != "controls") {
                bag.period =
                    if bag.treatment == reference { first.clone() } else { last.clone() };
            }
        }),
    ),
    fault(
        "one-group",
        "a group makes all of a kind",
        &[Food, FoodAmount],
        List(|p, d| {
            let name = one(p, d).name.clone();
            let reference = p.questions[0].reference.clone().unwrap();
            let period = p.periods[0].name.clone();
            p.bags.retain(|b| b.treatment != reference || b.period != period || b.group != 2);
            for bag in p.bags.iter_mut().filter(|bag| bag.treatment == name) {
                (bag.period, bag.group) = (period.clone(), 2);
            }
        }),
    ),
    fault("no-day", "no school day", ANY, Whole(|p, _| p.days.clear())),
    fault(
        "cannot-make",
        "a packet of honey",
        &[Food],
        Whole(|p, d| {
            change(p, d, |c| *c = food("honey", "1 packet"));
        }),
    ),
    fault(
        "cannot-make",
        "a spoon of enzyme powder",
        &[FoodAndEnzyme],
        Whole(|p, _| {
            p.questions[1].treatments[1].difference.enzyme_amount = Some(amount("1/8 tsp"));
        }),
    ),
    fault(
        "cannot-make",
        "an altitude that is none",
        ANY,
        Whole(|p, _| p.days[0].place = Place::Altitude(40_000.0)),
    ),
    fault(
        "too-few-readings",
        "a short day",
        ANY,
        Whole(|p, d| {
            let period = d.below(p.periods.len());
            p.periods[period].length_min = 28.0;
        }),
    ),
    fault(
        "too-few-readings",
        "readings far apart",
        ANY,
        Whole(|p, _| p.timing.interval_min = 12.0),
    ),
    fault("hurried-start", "no time to mix", ANY, Whole(|p, _| p.timing.mixing_min = 5.0)),
    fault("hurried-end", "no time to clear", ANY, Whole(|p, _| p.timing.clearing_min = 2.0)),
    fault(
        "wet-too-soon",
        "yeast wet before the bell",
        ANY,
        Whole(|p, _| p.timing.wet_before_zero_min = 25.0),
    ),
    fault(
        "periods-overlap",
        "two periods at once",
        ANY,
        Whole(|p, _| {
            p.periods[1].start =
                p.periods[0].start.wrapping_add(jiff::SignedDuration::from_mins(30));
        }),
    ),
    fault(
        "dotted-period",
        "a dot for the name of a period",
        ANY,
        Whole(|p, d| p.periods[0].name = d.pick(&[".", ".."]).to_owned()),
    ),
    fault(
        "short-changeover",
        "no time between periods",
        ANY,
        Whole(|p, _| {
            let minutes = p.periods[0].length_min as i64 + 2;
            p.periods[1].start =
                p.periods[0].start.wrapping_add(jiff::SignedDuration::from_mins(minutes));
        }),
    ),
    fault("few-rulers", "rulers short", ANY, Whole(|p, _| p.equipment.rulers = Some(4))),
    fault("few-goggles", "goggles short", ANY, Whole(|p, _| p.equipment.goggles = Some(12))),
    fault(
        "no-thermometer",
        "no thermometer",
        ANY,
        Whole(|p, _| p.equipment.thermometers = Some(0)),
    ),
    fault(
        "no-balance",
        "no balance",
        ANY,
        Whole(|p, _| {
            p.equipment.balances = Some(0);
            p.base.yeast_amount = amount("2 g");
        }),
    ),
    fault(
        "few-meters",
        "one meter, and the last reading when clearing begins",
        ANY,
        Whole(|p, _| {
            p.equipment.meters = Some(1);
            p.timing.clearing_min = 4.0;
            let read = p.periods[0].length_min - p.timing.mixing_min - p.timing.clearing_min;
            p.timing.mixing_min += read % p.timing.interval_min;
        }),
    ),
    fault(
        "water-scalds",
        "very hot water",
        &[Food, FoodAmount, FoodAndEnzyme, YeastAmount, Salt, Tray],
        Whole(|p, _| p.base.water_celsius = 70.0),
    ),
    fault(
        "water-scalds",
        "a very hot level",
        &[Warmth],
        Whole(|p, d| {
            change(p, d, |c| c.water_celsius = Some(66.0));
        }),
    ),
    fault(
        "water-hot",
        "water that kills yeast",
        &[Food, FoodAmount, FoodAndEnzyme, YeastAmount, Salt, Tray],
        Whole(|p, _| p.base.water_celsius = 55.0),
    ),
    fault(
        "water-cool",
        "cold water",
        &[Food, FoodAmount, FoodAndEnzyme, YeastAmount, Salt, Tray],
        Whole(|p, _| p.base.water_celsius = 15.0),
    ),
    fault(
        "nothing-to-cut",
        "lactase on oats",
        &[FoodAndEnzyme],
        Whole(|p, _| {
            let difference = &mut p.questions[1].treatments[1].difference;
            difference.enzyme = Some(Some("lactase-drops".into()));
            difference.enzyme_amount = Some(amount("5 drops"));
        }),
    ),
    fault(
        "nothing-to-cut",
        "bean enzyme on oats",
        &[FoodAndEnzyme],
        Whole(|p, _| {
            let difference = &mut p.questions[1].treatments[1].difference;
            difference.enzyme = Some(Some("alpha-galactosidase-tablet".into()));
            difference.enzyme_amount = Some(amount("5 mL"));
        }),
    ),
    fault(
        "nothing-to-cut",
        "starch cutter on milk",
        &[FoodAndEnzyme],
        Whole(|p, _| {
            let difference = &mut p.questions[1].treatments[0].difference;
            difference.enzyme = Some(Some("amylase-powder".into()));
            difference.enzyme_amount = Some(amount("2 mL"));
        }),
    ),
    fault(
        "overfull",
        "much sugar in a small bag",
        &[Food],
        Whole(|p, d| {
            (p.base.bag, p.base.card) = (bag("snack"), card("3 x 5 in"));
            p.base.lies = Lies::WarmTray(40.0);
            change(p, d, |c| *c = food("sugar_white", "4 g"));
        }),
    ),
    fault(
        "overfull",
        "much sugar for all",
        &[YeastAmount, Tray],
        Whole(|p, _| {
            (p.base.bag, p.base.card) = (bag("snack"), card("3 x 5 in"));
            p.base.food_amount = Some(amount("3 g"));
        }),
    ),
    fault(
        "nothing-shows",
        "hardly any yeast",
        &[Food, FoodAmount],
        Whole(|p, _| p.base.yeast_amount = amount("0.1 g")),
    ),
    fault(
        "nothing-shows",
        "foods that yeast cannot eat",
        &[Food],
        Whole(|p, _| {
            p.questions[0].treatments = vec![
                treatment("Erythritol", food("erythritol", "1 g")),
                treatment("Corn starch", food("corn_starch", "1 g")),
            ];
        }),
    ),
    fault(
        "unknown-period",
        "a bag of no period",
        ANY,
        List(|p, d| {
            let bag = d.below(p.bags.len());
            p.bags[bag].period = "9Z".into();
        }),
    ),
    fault(
        "unknown-group",
        "a bag of no group",
        ANY,
        List(|p, d| {
            let bag = d.below(p.bags.len());
            p.bags[bag].group = 40;
        }),
    ),
    fault(
        "unknown-treatment",
        "a bag of nothing asked",
        ANY,
        List(|p, d| {
            let bag = d.below(p.bags.len());
            p.bags[bag].treatment = "Lemonade".into();
        }),
    ),
    fault(
        "wrong-code",
        "one sign of a code wrong",
        ANY,
        List(|p, d| {
            let bag = d.below(p.bags.len());
            let code = p.bags[bag].code.clone();
            let last = code.chars().last().unwrap();
            let other = if last == '7' { '8' } else { '7' };
            p.bags[bag].code = format!("{}{other}", &code[..code.len() - 1]);
        }),
    ),
    fault(
        "same-code",
        "one code twice",
        ANY,
        List(|p, _| p.bags[1].code = p.bags[0].code.clone()),
    ),
    fault(
        "used-code",
        "a code of a bag that is gone",
        ANY,
        List(|p, d| {
            let bag = d.below(p.bags.len());
            p.retired_codes.push(p.bags[bag].code.clone());
        }),
    ),
    fault(
        "same-place",
        "two bags in one place",
        ANY,
        List(|p, _| {
            let first = p.bags[0].clone();
            (p.bags[1].period, p.bags[1].group, p.bags[1].place) =
                (first.period, first.group, first.place);
        }),
    ),
    fault(
        "missing-bags",
        "bags left out",
        ANY,
        List(|p, d| {
            let name = p.questions[0].treatments[0].name.clone();
            let mut left = 1 + d.below(2);
            p.bags.retain(|bag| {
                let goes = bag.treatment == name && left > 0;
                left -= usize::from(goes);
                !goes
            });
            p.questions[0].replicates = p.questions[0].replicates.max(3);
        }),
    ),
    fault(
        "idle-group",
        "a group that makes nothing",
        ANY,
        List(|p, d| {
            let (period, group) = (p.periods[0].name.clone(), 1 + d.below(6) as u32);
            p.bags.retain(|bag| bag.period != period || bag.group != group);
        }),
    ),
    fault(
        "idle-group",
        "a class that came after the list was written",
        ANY,
        List(|p, _| p.periods.push(barm_domain::testing::period("11"))),
    ),
    fault(
        "thin-groups",
        "the size of a group written for that of the class",
        ANY,
        List(|p, d| p.periods[0].students = d.below(4) as u32),
    ),
    fault(
        "crowded-group",
        "one group makes the bags of everybody",
        ANY,
        List(|p, d| {
            let (period, group) = (p.periods[0].name.clone(), 1 + d.below(6) as u32);
            for bag in &mut p.bags {
                (bag.period, bag.group) = (period.clone(), group);
            }
        }),
    ),
    fault(
        "past-midnight",
        "an hour of the evening in place of the morning",
        ANY,
        Whole(|p, _| {
            let last = p.periods.last_mut().unwrap();
            last.start = jiff::civil::time(23, 40, 0, 0);
        }),
    ),
];
