//! What may be in the cupboard, and what of it a lesson can use.

use super::ReadyError;
use crate::amount::Amount;
use crate::cupboard::Cupboard;
use crate::plan::{Material, Plan};
use barm_science::food::{self, FoodKind};

/// Something that many cupboards hold, with a pack as it is often sold (sizes from memory).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offered {
    /// Id of the food, or key of the enzyme.
    pub id: &'static str,
    /// A pack.
    pub pack: &'static str,
}

const fn offered(id: &'static str, pack: &'static str) -> Offered {
    Offered { id, pack }
}

/// What is offered to be ticked, foods first.
pub const OFFERED: &[Offered] = &[
    offered("sugar_white", "1 lb"),
    offered("sugar_brown_packed", "1 lb"),
    offered("honey", "8 oz"),
    offered("maple_syrup", "8 fl oz"),
    offered("corn_syrup_light", "16 fl oz"),
    offered("banana", "1 lb"),
    offered("applesauce", "23 oz"),
    offered("raisins", "12 oz"),
    offered("wheat_flour_white", "2 lb"),
    offered("oat_flour", "22 oz"),
    offered("corn_starch", "16 oz"),
    offered("rice_flour", "24 oz"),
    offered("potato_flakes", "13.3 oz"),
    offered("milk_powder_nonfat", "9.6 oz"),
    offered("salt", "26 oz"),
    offered("glucoamylase-powder", "1 oz"),
    offered("lactase-drops", "15 mL"),
];

/// What is ticked to begin with.
pub const USUAL: [&str; 5] =
    ["sugar_white", "honey", "wheat_flour_white", "potato_flakes", "salt"];

/// Packs of what every class needs.
const ALWAYS: &[(&str, &str)] = &[
    ("bags", "100 bags"),
    ("cards", "100 cards"),
    ("labels", "300 labels"),
    ("cups", "50 pieces"),
    ("spoons", "48 pieces"),
];

/// Most foods that one lesson compares: each is a fifth of the bags then.
const MOST: usize = 4;

/// Sweet by itself from this share of sugar that yeast eats at once (g per 100 g).
const SWEET: f64 = 20.0;

/// Starch or milk sugar from this share (g per 100 g).
const STORED: f64 = 20.0;

/// A food that yeast can hardly eat, with the enzyme that cuts it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Pair {
    pub(super) food: &'static str,
    pub(super) enzyme: &'static str,
}

/// What of the cupboard lessons can use.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Larder {
    /// Foods to compare, two to four.
    pub(super) foods: Vec<&'static str>,
    /// The food that shows most.
    pub(super) sweet: &'static str,
    /// Foods to cut, one or two.
    pub(super) pairs: Vec<Pair>,
}

/// Sorts what is in a cupboard; what a lesson must have is put on the shopping list if it is not
/// there.
pub(super) fn sort(cupboard: &[String]) -> Result<Larder, ReadyError> {
    let known = Cupboard::with(&[]);
    let mut foods: Vec<&'static str> = Vec::new();
    for written in cupboard {
        // Enzymes come with the foods that they cut.
        if Cupboard::enzyme(written).is_ok() {
            continue;
        }
        let id = known.food(written)?;
        if let Some(food) = food::by_id(&id).filter(|food| to_compare(food))
            && !foods.contains(&food.id)
        {
            foods.push(food.id);
        }
    }
    let sweet = foods.iter().copied().find(|id| sugar(id) >= SWEET).unwrap_or("sugar_white");
    // Enzymes cut cooked starch and milk sugar fast, raw flour hardly in a period.
    let quick = foods.iter().copied().filter(|id| at_hand(id));
    let mut pairs: Vec<Pair> = quick.filter_map(pair).collect();
    if pairs.is_empty() {
        pairs.extend(pair("potato_flakes"));
    }
    pairs.truncate(2);
    for usual in ["sugar_white", "wheat_flour_white"] {
        if foods.len() < 2 && !foods.contains(&usual) {
            foods.push(usual);
        }
    }
    // A sweet food shows that the yeast is alive: it is never the one left out.
    foods.sort_by_key(|id| *id != sweet);
    foods.truncate(MOST);
    Ok(Larder { foods, sweet, pairs })
}

/// Whether bags can be compared by it: a thin liquid, a packet or a pinch of acid is no food for a
/// lesson, and salt and yeast are none at all.
fn to_compare(food: &food::Food) -> bool {
    let kind = !matches!(food.kind, FoodKind::Liquid | FoodKind::Packet | FoodKind::Yeast);
    kind && !["salt", "baking_soda"].contains(&food.id)
}

/// Sugar that baker's yeast eats at once (g per 100 g).
fn sugar(id: &str) -> f64 {
    food::by_id(id).map_or(0.0, |food| {
        let c = &food.composition;
        c.sucrose + c.glucose + c.fructose
    })
}

/// Whether most of a food can be cut within a period.
fn at_hand(id: &str) -> bool {
    food::by_id(id).is_some_and(|food| {
        let c = &food.composition;
        c.lactose + c.cooked_starch + c.dextrin > c.raw_starch
    })
}

fn pair(id: &'static str) -> Option<Pair> {
    let c = &food::by_id(id)?.composition;
    let enzyme = if c.lactose >= STORED {
        "lactase-drops"
    } else if c.raw_starch + c.cooked_starch >= STORED && sugar(id) < SWEET {
        "glucoamylase-powder"
    } else {
        return None;
    };
    Some(Pair { food: id, enzyme })
}

/// Packs of everything that a plan uses, and of all that is open to the groups, as they are often
/// sold; the teacher puts prices in.
pub(super) fn packs(plan: &Plan, open: &[String]) -> Result<Vec<Material>, ReadyError> {
    let known = Cupboard::with(&[]);
    let open: Vec<String> = open
        .iter()
        .filter_map(|written| Cupboard::enzyme(written).or_else(|_| known.food(written)).ok())
        .collect();
    let recipes: Vec<_> =
        plan.treatments().map(|(_, treatment)| plan.recipe(treatment)).collect();
    let used = |id: &str| {
        let open = open.iter().any(|one| one == id);
        open || recipes.iter().any(|recipe| {
            recipe.food.as_deref() == Some(id)
                || recipe.enzyme.as_deref() == Some(id)
                || recipe.extras.iter().any(|extra| extra.item == id)
        })
    };
    // Larger bags take more yeast than a jar holds: the price per gram falls with the pack.
    let yeast = [("yeast", "113 g"), ("yeast", "454 g")];
    let foods = OFFERED.iter().filter(|one| used(one.id)).map(|one| (one.id, one.pack));
    let all = yeast.into_iter().chain(foods).chain(ALWAYS.iter().copied());
    all.map(|(item, pack)| {
        let pack = Amount::parse(pack)?;
        Ok(Material { item: item.to_owned(), pack, price: None, in_stock: None })
    })
    .collect()
}
