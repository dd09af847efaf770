//! Reads materials and equipment.

use super::mistake::Wrong;
use super::notes::Notes;
use super::section::Section;
use super::words::nothing;
use barm_domain::amount::{Amount, dollars};
use barm_domain::cupboard::Cupboard;
use barm_domain::plan::{Equipment, Material};

pub(super) fn materials(
    top: &mut Section<'_>,
    cupboard: &Cupboard<'_>,
    notes: &mut Notes<'_>,
) -> Vec<Material> {
    let amount = |text: &str| Amount::parse(text).map_err(Wrong::from);
    let mut materials = Vec::new();
    for mut section in top.tables(notes, "material", "material") {
        materials.push(Material {
            item: section
                .need(notes, "item", "\"yeast\"", |text| {
                    cupboard.material(text).map_err(Wrong::from)
                })
                .unwrap_or_default(),
            pack: section.need(notes, "pack", "\"113 g\"", amount).unwrap_or_else(nothing),
            price: section
                .read(notes, "price", "\"$5.49\"", |text| dollars(text).map_err(Wrong::from)),
            in_stock: section.read(notes, "in_stock", "\"0 g\"", amount),
        });
        section.finish(notes);
    }
    materials
}

pub(super) fn equipment(top: &mut Section<'_>, notes: &mut Notes<'_>) -> Equipment {
    let Some(mut section) = top.table(notes, "equipment") else { return Equipment::default() };
    let mut count = |key| section.count(notes, key, 0..=9999);
    let equipment = Equipment {
        thermometers: count("thermometers"),
        meters: count("meters"),
        rulers: count("rulers"),
        kettles: count("kettles"),
        balances: count("balances"),
        goggles: count("goggles"),
    };
    section.finish(notes);
    equipment
}
