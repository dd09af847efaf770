//! What stays the same in all bags of a class, as a group that plans reads it.

use crate::desk::Catalog;
use barm_domain::amount::Amount;
use barm_domain::amount::show::both_degrees;
use barm_domain::bench::{other_unit, yeast_per_tsp};
use barm_domain::plan::{Recipe, Variable};

/// Something that every bag has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Same {
    /// What it is.
    pub(crate) variable: Variable,
    /// How much, such as `40 mL`; for the bag its size.
    pub(crate) amount: String,
    /// The same in the other kind of unit, if there is one.
    pub(crate) other: Option<String>,
}

impl Same {
    /// In the words of a language, such as `how much water: 40 mL (2 tbsp + 2 tsp)`.
    pub(crate) fn says(&self, words: &Catalog) -> String {
        if self.variable == Variable::Bag {
            return format!("{}: {}", words.say("together-same-bag"), words.bag(&self.amount));
        }
        let key = format!("together-{}", self.variable.words().replace(' ', "-"));
        let amount = words.amount(&self.amount);
        let amount = match &self.other {
            Some(other) => {
                let other = words.amount(other);
                words.say_with("card-with", &[("amount", &amount), ("other", &other)])
            }
            None => amount,
        };
        format!("{}: {amount}", words.say(&key))
    }
}

/// What every bag has; the amount of food is that of whatever food a group takes.
pub(super) fn same(base: &Recipe) -> Vec<Same> {
    let of = |variable, amount: &Amount, grams_per_tsp| Same {
        variable,
        amount: amount.written.clone(),
        other: other_unit(amount, grams_per_tsp),
    };
    let plain = |variable, amount: String| Same { variable, amount, other: None };
    let mut all = vec![
        of(Variable::Water, &base.water, None),
        plain(Variable::WaterTemperature, both_degrees(base.water_celsius)),
        of(Variable::YeastAmount, &base.yeast_amount, base.yeast.and_then(yeast_per_tsp)),
    ];
    let food = base.food_amount.as_ref();
    all.extend(food.map(|amount| plain(Variable::FoodAmount, amount.written.clone())));
    all.push(plain(Variable::Bag, base.bag.written.clone()));
    all
}
