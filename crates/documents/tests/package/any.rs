//! Shared data of any kind that can be.

use barm_domain::code::BagCode;
use barm_domain::shared::{
    AsideRow, BagRow, IngredientRow, Item, Lying, Measure, MeterRow, Part, ReadingRow, Rows,
    Rule, Shared, TreatmentCode, TreatmentRow,
};
use barm_science::setup::YeastKind;
use proptest::prelude::*;
use proptest::sample::{Index, select};

fn code(number: u16) -> TreatmentCode {
    TreatmentCode::of(number).unwrap()
}

/// One bag of one treatment, read twice.
pub(crate) fn small() -> Shared {
    let bag = "P1-02B-6".parse().unwrap();
    let reading = |minute, height_mm| ReadingRow { bag, minute, height_mm };
    let treatment = TreatmentRow {
        code: code(1),
        question: Some(2),
        beside: None,
        control: false,
        bag_width_mm: 165.0,
        bag_height_mm: 83.0,
        card_length_mm: 127.0,
        card_width_mm: 76.2,
        water_ml: 40.0,
        water_celsius: 40.0,
        yeast: Some(YeastKind::Instant),
        yeast_g: 2.0,
        lying: Lying::Bench,
        tray_celsius: None,
    };
    let (part, item, measure) = (Part::Food, Item::of("honey").unwrap(), Measure::Gram);
    let rows = Rows {
        treatments: vec![treatment],
        ingredients: vec![IngredientRow {
            treatment: code(1),
            part,
            item,
            amount: 2.5,
            measure,
        }],
        bags: vec![BagRow {
            code: bag,
            treatment: code(1),
            replicate: 1,
            room_celsius: 21.0,
            pressure_hpa: 860.0,
        }],
        readings: vec![reading(4.02, 7.5), reading(0.0, 6.0)],
        set_aside: vec![AsideRow { bag, rule: Rule::Leak }],
        meter: vec![MeterRow {
            bag,
            turn: None,
            minute: Some(26.0),
            percent: 0.12,
            celsius: None,
            gas_ml: 20.0,
            air_ml: 0.0,
        }],
    };
    Shared::new(rows).unwrap()
}

fn any_bag() -> impl Strategy<Value = BagCode> {
    (1_u8..=99, 0_u8..=99, any::<Index>()).prop_map(|(period, group, at)| {
        let codes: Vec<BagCode> = BagCode::all_of(period, group).collect();
        *at.get(&codes)
    })
}

prop_compose! {
    fn any_treatment(number: u16)(
        question in prop::option::of(1_u16..=999), beside in prop::option::of(any::<Index>()), control: bool,
        size in prop::array::uniform4(20.0_f64..=1000.0),
        water_ml in 0.0_f64..=5000.0, water_celsius in 0.0_f64..=100.0,
        yeast in prop::option::of((select(YeastKind::ALL.to_vec()), 0.0_f64..=1000.0)),
        lying in select(Lying::ALL.to_vec()), tray in 0.0_f64..=100.0,
    ) -> (TreatmentRow, Option<Index>) {
        let row = TreatmentRow {
            code: code(number), question, beside: None, control,
            bag_width_mm: size[0], bag_height_mm: size[1],
            card_length_mm: size[2], card_width_mm: size[3],
            water_ml, water_celsius,
            yeast: yeast.map(|(kind, _)| kind), yeast_g: yeast.map_or(0.0, |(_, grams)| grams),
            lying, tray_celsius: (lying == Lying::Tray).then_some(tray),
        };
        (row, beside)
    }
}

fn any_treatments() -> impl Strategy<Value = Vec<TreatmentRow>> {
    prop::collection::btree_set(1_u16..=999, 1..6)
        .prop_flat_map(|numbers| numbers.into_iter().map(any_treatment).collect::<Vec<_>>())
        .prop_map(|rows| {
            let codes: Vec<TreatmentCode> = rows.iter().map(|(row, _)| row.code).collect();
            let beside = |(row, at): (TreatmentRow, Option<Index>)| {
                let beside = at.map(|at| *at.get(&codes)).filter(|code| *code != row.code);
                TreatmentRow { beside, ..row }
            };
            rows.into_iter().map(beside).collect()
        })
}

fn any_ingredients() -> impl Strategy<Value = Vec<(Index, Part, Item, f64, Measure)>> {
    let one = (
        any::<Index>(),
        select(Part::ALL.to_vec()),
        select(Item::all().collect::<Vec<_>>()),
        0.0_f64..=5000.0,
        select(Measure::ALL.to_vec()),
    );
    prop::collection::vec(one, 0..6)
}

prop_compose! {
    fn any_meter()(
        at in any::<Index>(), turn in prop::option::of(1_u32..=9999),
        minute in prop::option::of(0.0_f64..=10_000.0), percent in 0.0_f64..=100.0,
        celsius in prop::option::of(0.0_f64..=100.0), gas_ml in 1e-9_f64..=5000.0,
        air_ml in 0.0_f64..=5000.0,
    ) -> (Index, MeterRow) {
        let bag = "P1-02B-6".parse().unwrap();
        (at, MeterRow { bag, turn, minute, percent, celsius, gas_ml, air_ml })
    }
}

prop_compose! {
    /// Any rows that hang together.
    pub(crate) fn any_shared()(
        treatments in any_treatments(), ingredients in any_ingredients(),
        bags in prop::collection::btree_set(any_bag(), 0..6),
        made in prop::collection::vec((any::<Index>(), 1_u32..=999, 0.0_f64..=50.0, 400.0_f64..=1100.0), 6),
        readings in prop::collection::vec((any::<Index>(), 0_u32..=10_000, 0.0_f64..=1000.0), 0..20),
        aside in prop::collection::btree_map(0_usize..6, select(Rule::ALL.to_vec()), 0..4),
        meter in prop::collection::vec(any_meter(), 0..6),
    ) -> Shared {
        let bags: Vec<BagCode> = bags.into_iter().collect();
        let of_bag = |(code, (at, replicate, room_celsius, pressure_hpa)): (&BagCode, (Index, u32, f64, f64))| {
            BagRow { code: *code, treatment: at.get(&treatments).code, replicate, room_celsius, pressure_hpa }
        };
        let any_bag = |at: &Index| (!bags.is_empty()).then(|| *at.get(&bags));
        let mut readings: Vec<ReadingRow> = readings.iter().filter_map(|(at, minute, height_mm)| {
            Some(ReadingRow { bag: any_bag(at)?, minute: f64::from(*minute) / 7.0, height_mm: *height_mm })
        }).collect();
        readings.sort_by_key(|row| (row.bag, row.minute.to_bits()));
        readings.dedup_by_key(|row| (row.bag, row.minute.to_bits()));
        let set_aside = aside.into_iter().filter_map(|(at, rule)| Some(AsideRow { bag: *bags.get(at)?, rule }));
        let meter = meter.into_iter().filter_map(|(at, row)| Some(MeterRow { bag: any_bag(&at)?, ..row }));
        let ingredients = ingredients.into_iter().map(|(at, part, item, amount, measure)| {
            IngredientRow { treatment: at.get(&treatments).code, part, item, amount, measure }
        });
        let rows = Rows {
            ingredients: ingredients.collect(),
            bags: bags.iter().zip(made).map(of_bag).collect(),
            readings,
            set_aside: set_aside.collect(),
            meter: meter.collect(),
            treatments,
        };
        Shared::new(rows).unwrap()
    }
}
