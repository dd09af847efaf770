//! The frozen layout of what stands inside a body: numbers, and what went into a bag.

use barm_domain::amount::{Amount, AmountKind};
use barm_domain::code::BagCode;
use barm_domain::plan::{Bag, BagChoice, Card, CardChoice, Difference, Extra, Lies, YeastKind};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A number that JSON can hold.
#[derive(Clone, Copy, Deserialize)]
pub(super) struct Num(pub(super) f64);

impl Serialize for Num {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        if !self.0.is_finite() {
            return Err(serde::ser::Error::custom("a number in it is no number"));
        }
        to.serialize_f64(self.0)
    }
}

/// A bag and the rise that is expected of it.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Expected {
    bag: String,
    rise_mm: Num,
}

impl Expected {
    pub(super) fn of((bag, rise_mm): &(BagCode, f64)) -> Self {
        Self { bag: bag.to_string(), rise_mm: Num(*rise_mm) }
    }

    pub(super) fn read(self) -> Result<(BagCode, f64), String> {
        Ok((self.bag.parse().map_err(|e| format!("{e}"))?, self.rise_mm.0))
    }
}

/// What differs in a bag. A field that is not there says nothing; `null` says that there was none.
#[derive(Serialize, Deserialize, Default)]
#[serde(deny_unknown_fields, default)]
pub(super) struct Difference1 {
    #[serde(skip_serializing_if = "Option::is_none")]
    bag: Option<Bag1>,
    #[serde(skip_serializing_if = "Option::is_none")]
    card: Option<Card1>,
    #[serde(skip_serializing_if = "Option::is_none")]
    water: Option<Amount1>,
    #[serde(skip_serializing_if = "Option::is_none")]
    water_celsius: Option<Num>,
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "present")]
    yeast: Option<Option<String>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    yeast_amount: Option<Amount1>,
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "present")]
    food: Option<Option<String>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    food_amount: Option<Amount1>,
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "present")]
    enzyme: Option<Option<String>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    enzyme_amount: Option<Amount1>,
    #[serde(skip_serializing_if = "Option::is_none")]
    extras: Option<Vec<Extra1>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    lies: Option<Lies1>,
}

/// Tells `null` from a field that is not there.
fn present<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Option<String>>, D::Error> {
    Option::deserialize(from).map(Some)
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Bag1 {
    written: String,
    width_mm: Num,
    height_mm: Num,
    film_um: Num,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Card1 {
    written: String,
    length_mm: Num,
    width_mm: Num,
    grams: Num,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Amount1 {
    written: String,
    kind: String,
    value: Num,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Extra1 {
    item: String,
    amount: Amount1,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Lies1 {
    how: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    celsius: Option<Num>,
}

impl Difference1 {
    pub(super) fn of(made: &Difference) -> Self {
        let amount = |amount: &Option<Amount>| amount.as_ref().map(Amount1::of);
        let extras =
            |extras: &Vec<Extra>| -> Vec<Extra1> { extras.iter().map(Extra1::of).collect() };
        Self {
            bag: made.bag.as_ref().map(Bag1::of),
            card: made.card.as_ref().map(Card1::of),
            water: amount(&made.water),
            water_celsius: made.water_celsius.map(Num),
            yeast: made.yeast.map(|kind| kind.map(|kind| yeast_word(kind).to_owned())),
            yeast_amount: amount(&made.yeast_amount),
            food: made.food.clone(),
            food_amount: amount(&made.food_amount),
            enzyme: made.enzyme.clone(),
            enzyme_amount: amount(&made.enzyme_amount),
            extras: made.extras.as_ref().map(extras),
            lies: made.lies.map(Lies1::of),
        }
    }

    pub(super) fn read(self) -> Result<Difference, String> {
        let amount = |amount: Option<Amount1>| amount.map(Amount1::read).transpose();
        let yeast = |kind: Option<String>| kind.map(|word| yeast_named(&word)).transpose();
        let extras = |extras: Vec<Extra1>| {
            extras.into_iter().map(Extra1::read).collect::<Result<_, _>>()
        };
        Ok(Difference {
            bag: self.bag.map(Bag1::read),
            card: self.card.map(Card1::read),
            water: amount(self.water)?,
            water_celsius: self.water_celsius.map(|n| n.0),
            yeast: self.yeast.map(yeast).transpose()?,
            yeast_amount: amount(self.yeast_amount)?,
            food: self.food,
            food_amount: amount(self.food_amount)?,
            enzyme: self.enzyme,
            enzyme_amount: amount(self.enzyme_amount)?,
            extras: self.extras.map(extras).transpose()?,
            lies: self.lies.map(Lies1::read).transpose()?,
        })
    }
}

const fn yeast_word(kind: YeastKind) -> &'static str {
    match kind {
        YeastKind::ActiveDry => "active-dry",
        YeastKind::Instant => "instant",
        YeastKind::Compressed => "compressed",
    }
}

fn yeast_named(word: &str) -> Result<YeastKind, String> {
    let all = [YeastKind::ActiveDry, YeastKind::Instant, YeastKind::Compressed];
    let kind = all.into_iter().find(|kind| yeast_word(*kind) == word);
    kind.ok_or_else(|| format!("“{word}” is no yeast"))
}

impl Bag1 {
    fn of(BagChoice { written, bag }: &BagChoice) -> Self {
        Self {
            written: written.clone(),
            width_mm: Num(bag.width_mm),
            height_mm: Num(bag.height_mm),
            film_um: Num(bag.film_um),
        }
    }

    fn read(self) -> BagChoice {
        let bag = Bag {
            width_mm: self.width_mm.0,
            height_mm: self.height_mm.0,
            film_um: self.film_um.0,
        };
        BagChoice { written: self.written, bag }
    }
}

impl Card1 {
    fn of(CardChoice { written, card }: &CardChoice) -> Self {
        Self {
            written: written.clone(),
            length_mm: Num(card.length_mm),
            width_mm: Num(card.width_mm),
            grams: Num(card.grams),
        }
    }

    fn read(self) -> CardChoice {
        let card = Card {
            length_mm: self.length_mm.0,
            width_mm: self.width_mm.0,
            grams: self.grams.0,
        };
        CardChoice { written: self.written, card }
    }
}

impl Amount1 {
    fn of(Amount { written, kind, value }: &Amount) -> Self {
        let kind = match kind {
            AmountKind::Mass => "g",
            AmountKind::Volume => "mL",
            AmountKind::Spoon => "spoon mL",
            AmountKind::Drops => "drops",
            AmountKind::Pieces => "pieces",
        };
        Self { written: written.clone(), kind: kind.into(), value: Num(*value) }
    }

    fn read(self) -> Result<Amount, String> {
        let kind = match self.kind.as_str() {
            "g" => AmountKind::Mass,
            "mL" => AmountKind::Volume,
            "spoon mL" => AmountKind::Spoon,
            "drops" => AmountKind::Drops,
            "pieces" => AmountKind::Pieces,
            other => return Err(format!("“{other}” is no kind of amount")),
        };
        Ok(Amount { written: self.written, kind, value: self.value.0 })
    }
}

impl Extra1 {
    fn of(Extra { item, amount }: &Extra) -> Self {
        Self { item: item.clone(), amount: Amount1::of(amount) }
    }

    fn read(self) -> Result<Extra, String> {
        Ok(Extra { item: self.item, amount: self.amount.read()? })
    }
}

impl Lies1 {
    fn of(lies: Lies) -> Self {
        let (how, celsius) = match lies {
            Lies::Bench => ("bench", None),
            Lies::Towel => ("towel", None),
            Lies::WarmTray(celsius) => ("warm-tray", Some(Num(celsius))),
        };
        Self { how: how.into(), celsius }
    }

    fn read(self) -> Result<Lies, String> {
        match (self.how.as_str(), self.celsius) {
            ("bench", None) => Ok(Lies::Bench),
            ("towel", None) => Ok(Lies::Towel),
            ("warm-tray", Some(celsius)) => Ok(Lies::WarmTray(celsius.0)),
            _ => Err(format!("“{}” is no way to lie", self.how)),
        }
    }
}
