//! A flat table of foods: what is in them, and what a teaspoon of them weighs.
//!
//! Grams per 100 g from the USDA National Nutrient Database for Standard Reference, Release 28
//! (2015), which is in the public domain, unless the row says otherwise. Where USDA has no single
//! sugars or no starch, they are worked out from its totals or recalled, and marked so. Acids and the
//! pH at which foods hold them (US FDA, Approximate pH of Foods and Food Products) are recalled
//! throughout; what milk and flour buffer goes by their protein.

use super::Allergen::{Milk, Soy, Wheat};
use super::Food;
use super::FoodKind::{Flakes, Liquid, Mash, Packet, Pieces, Powder, Syrup, Yeast};
use super::row::{DAMAGED_FLOUR, DAMAGED_STARCH, NONE, STEAMED, food};
use crate::fact::Status::{Derived, Memory, Sourced};
use crate::setup::{Acids, Composition};

const fn starch(total: f64, cooked: f64) -> Composition {
    Composition { raw_starch: total * (1.0 - cooked), cooked_starch: total * cooked, ..NONE }
}

/// Starch of a flour, part of it damaged by the mill.
const fn flour(total: f64) -> Composition {
    starch(total, DAMAGED_FLOUR.value)
}

/// Purified starch, a little of it damaged.
const fn milled(total: f64) -> Composition {
    starch(total, DAMAGED_STARCH.value)
}

/// Starch of something steamed but not cooked through.
const fn steamed(total: f64) -> Composition {
    starch(total, STEAMED.value)
}

const fn raw(total: f64) -> Composition {
    starch(total, 0.0)
}

const fn cooked(total: f64) -> Composition {
    starch(total, 1.0)
}

/// Every food of the table, kind by kind.
pub(super) const ROWS: &[Food] = &[
    // Sugars and syrups.
    food!(sugar_white, "white sugar", Powder;
        also ["sugar", "table sugar", "granulated sugar", "cane sugar", "sucrose"];
        usda "19335", "Sugars, granulated";
        spoon 4.2, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Sourced;
        content_sd 0.005;
        { water: 0.02, sucrose: 99.8, salt: 0.003, ..NONE }),
    food!(sugar_brown_packed, "brown sugar, packed", Powder;
        also ["brown sugar"];
        usda "19334", "Sugars, brown";
        spoon 4.6, Sourced, "USDA 1 tsp packed";
        status Sourced, Derived, Sourced;
        content_sd 0.02;
        { water: 1.34, sucrose: 94.56, glucose: 1.35, fructose: 1.11, salt: 0.071, acids: Acids::citric(0.001).at(5.5), ..NONE }),
    food!(sugar_brown_loose, "brown sugar, loose", Powder;
        also ["brown sugar, unpacked"];
        usda "19334", "Sugars, brown";
        spoon 3.0, Sourced, "USDA 1 tsp unpacked";
        status Sourced, Derived, Sourced;
        content_sd 0.02;
        { water: 1.34, sucrose: 94.56, glucose: 1.35, fructose: 1.11, salt: 0.071, acids: Acids::citric(0.001).at(5.5), ..NONE }),
    food!(sugar_powdered, "powdered sugar", Powder;
        also ["confectioners sugar", "icing sugar"];
        usda "19336", "Sugars, powdered";
        spoon 2.5, Sourced, "USDA 1 tsp";
        grain Corn;
        status Sourced, Sourced, Derived;
        content_sd 0.02;
        { water: 0.23, sucrose: 97.81, salt: 0.005, ..milled(1.26) }),
    food!(fructose_powder, "fructose powder", Powder;
        also ["fructose", "fruit sugar"];
        usda "43216", "Sweeteners, tabletop, fructose, dry, powder";
        spoon 4.2, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Memory;
        content_sd 0.02;
        { water: 0.0, fructose: 99.9, salt: 0.031, ..NONE }),
    food!(dextrose_monohydrate, "dextrose", Powder;
        also ["glucose", "glucose powder", "dextrose powder", "dextrose monohydrate"];
        spoon 3.3, Memory, "from memory: 3.0-3.6 g";
        status Memory, Memory, Memory;
        content_sd 0.02;
        { water: 9.1, glucose: 90.9, ..NONE }),
    food!(maltodextrin, "maltodextrin", Powder;
        spoon 1.9, Memory, "from memory: 1.5-2.5 g";
        status Memory, Memory, Memory;
        content_sd 0.06;
        { water: 5.0, dextrin: 90.0, maltose: 4.0, glucose: 1.0, ..NONE }),
    food!(honey, "honey", Syrup;
        usda "19296", "Honey";
        spoon 7.0, Sourced, "USDA 1 tbsp 21 g /3";
        status Sourced, Derived, Sourced;
        content_sd 0.05;
        { water: 17.1, maltose: 1.44, sucrose: 0.89, galactose: 3.1, glucose: 35.75, fructose: 40.94, salt: 0.01, acids: Acids::lactic(0.003).at(3.9), ..NONE }),
    food!(corn_syrup_light, "light corn syrup", Syrup;
        also ["corn syrup"];
        usda "19350", "Syrups, corn, light";
        spoon 7.33, Sourced, "USDA 1 tbsp 22 g /3";
        status Sourced, Memory, Memory;
        content_sd 0.15;
        { water: 22.81, dextrin: 51.0, maltose: 10.8, glucose: 15.0, salt: 0.158, ..NONE }),
    food!(corn_syrup_dark, "dark corn syrup", Syrup;
        usda "19349", "Syrups, corn, dark";
        spoon 6.67, Sourced, "USDA 1 tbsp 20 g /3";
        status Sourced, Memory, Memory;
        content_sd 0.15;
        { water: 22.01, dextrin: 51.5, maltose: 10.9, glucose: 15.2, salt: 0.394, ..NONE }),
    food!(hfcs, "high-fructose corn syrup", Syrup;
        also ["HFCS"];
        usda "19351", "Syrups, corn, high-fructose";
        spoon 6.33, Sourced, "USDA 1 tbsp 19 g /3";
        status Sourced, Derived, Memory;
        content_sd 0.05;
        { water: 24.0, maltose: 2.0, glucose: 38.0, fructose: 35.0, salt: 0.005, ..NONE }),
    food!(malt_syrup, "malt syrup", Syrup;
        also ["barley malt syrup", "malt extract"];
        usda "19352", "Syrups, malt";
        spoon 7.0, Sourced, "USDA 1 tbsp 21 g /3";
        status Sourced, Memory, Memory;
        content_sd 0.15;
        { water: 21.1, dextrin: 14.0, maltose: 45.0, sucrose: 1.5, glucose: 10.0, fructose: 1.0, salt: 0.089, ..NONE }),
    food!(maple_syrup, "maple syrup", Syrup;
        also ["pure maple syrup"];
        usda "19353", "Syrups, maple";
        spoon 6.67, Sourced, "USDA 1 tbsp 20 g /3";
        status Sourced, Derived, Sourced;
        content_sd 0.04;
        { water: 32.39, sucrose: 58.32, glucose: 1.6, fructose: 0.52, salt: 0.031, acids: Acids::malic(0.001).at(5.2), ..NONE }),
    food!(molasses, "molasses", Syrup;
        also ["treacle"];
        usda "19304", "Molasses";
        spoon 6.67, Sourced, "USDA 1 tbsp 20 g /3";
        status Sourced, Derived, Sourced;
        content_sd 0.12;
        { water: 21.87, sucrose: 29.4, glucose: 11.92, fructose: 12.79, salt: 0.094, acids: Acids::citric(0.012).at(5.2), ..NONE }),
    food!(agave_syrup, "agave syrup", Syrup;
        also ["agave nectar"];
        usda "19912", "Sweetener, syrup, agave";
        spoon 6.9, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Sourced;
        content_sd 0.05;
        { water: 22.94, glucose: 12.43, fructose: 55.6, salt: 0.01, ..NONE }),
    // Flours and starches.
    food!(corn_starch, "corn starch", Powder;
        also ["cornstarch"];
        usda "20027", "Cornstarch";
        spoon 2.67, Sourced, "USDA 1 cup 128 g /48";
        grain Corn;
        status Sourced, Derived, Derived;
        content_sd 0.03;
        { water: 8.32, salt: 0.023, ..milled(90.4) }),
    food!(cornmeal_degermed, "cornmeal, degermed", Powder;
        also ["cornmeal", "yellow cornmeal"];
        usda "20022", "Cornmeal, degermed, enriched, yellow";
        spoon 3.27, Sourced, "USDA 1 cup 157 g /48";
        grain Corn;
        status Sourced, Sourced, Sourced;
        content_sd 0.04;
        { water: 11.18, maltose: 0.19, sucrose: 0.68, glucose: 0.56, fructose: 0.17, salt: 0.018, ..flour(73.3) }),
    food!(cornmeal_whole, "cornmeal, whole-grain", Powder;
        also ["whole cornmeal"];
        usda "20020", "Cornmeal, whole-grain, yellow";
        spoon 2.54, Sourced, "USDA 1 cup 122 g /48";
        grain Corn;
        status Sourced, Derived, Derived;
        content_sd 0.06;
        { water: 10.26, sucrose: 0.64, salt: 0.089, ..flour(69.0) }),
    food!(corn_flour_whole, "corn flour, whole-grain", Powder;
        also ["corn flour"];
        usda "20016", "Corn flour, whole-grain, yellow";
        spoon 2.44, Sourced, "USDA 1 cup 117 g /48";
        grain Corn;
        status Sourced, Derived, Derived;
        content_sd 0.06;
        { water: 10.91, sucrose: 0.64, salt: 0.013, ..flour(68.9) }),
    food!(wheat_flour_white, "white wheat flour", Powder;
        also ["flour", "white flour", "wheat flour", "all-purpose flour", "plain flour"];
        usda "20081", "Wheat flour, white, all-purpose, enriched, bleached";
        spoon 2.6, Sourced, "USDA 1 cup 125 g /48";
        grain Wheat;
        status Sourced, Derived, Derived;
        content_sd 0.04;
        allergens [Wheat];
        { water: 11.92, sucrose: 0.27, salt: 0.005, ..flour(73.3) }),
    food!(wheat_flour_whole, "whole wheat flour", Powder;
        also ["whole-grain wheat flour"];
        usda "20080", "Wheat flour, whole-grain";
        spoon 2.5, Sourced, "USDA 1 cup 120 g /48";
        grain Wheat;
        status Sourced, Sourced, Sourced;
        content_sd 0.04;
        allergens [Wheat];
        { water: 10.74, sucrose: 0.36, fructose: 0.05, salt: 0.005, ..flour(57.77) }),
    food!(oat_flour, "oat flour", Powder;
        also ["ground oats"];
        usda "20132", "Oat flour, partially debranned";
        spoon 2.17, Sourced, "USDA 1 cup 104 g /48";
        grain Oat;
        status Sourced, Derived, Sourced;
        content_sd 0.06;
        traces [Wheat];
        { water: 8.55, sucrose: 0.5, glucose: 0.1, salt: 0.048, ..flour(58.4) }),
    food!(rolled_oats, "rolled oats", Flakes;
        also ["oats", "quick oats", "old-fashioned oats"];
        usda "08120", "Cereals, oats, regular and quick, not fortified, dry";
        spoon 1.69, Sourced, "USDA 1 cup 81 g /48";
        grain Oat;
        status Sourced, Sourced, Sourced;
        content_sd 0.04;
        traces [Wheat];
        { water: 10.84, sucrose: 0.99, salt: 0.015, ..steamed(57.92) }),
    food!(cooked_oats, "cooked oats", Mash;
        also ["oatmeal", "cooked oatmeal", "porridge"];
        usda "08121", "Cereals, oats, regular and quick, unenriched, cooked with water (includes boiling and microwaving), without salt";
        spoon 4.87, Sourced, "USDA 1 tbsp 14.6 g /3";
        status Sourced, Sourced, Sourced;
        content_sd 0.08;
        traces [Wheat];
        { water: 83.61, sucrose: 0.25, galactose: 0.02, salt: 0.01, ..cooked(11.6) }),
    food!(barley_malt_flour, "barley malt flour", Powder;
        also ["malt flour", "malted barley flour"];
        usda "20131", "Barley malt flour";
        spoon 3.38, Sourced, "USDA 1 cup 162 g /48";
        grain Barley;
        status Sourced, Derived, Derived;
        content_sd 0.08;
        traces [Wheat];
        { water: 8.21, sucrose: 0.8, salt: 0.028, ..flour(70.4) }),
    food!(rice_flour, "rice flour", Powder;
        also ["white rice flour"];
        usda "20061", "Rice flour, white, unenriched";
        spoon 3.29, Sourced, "USDA 1 cup 158 g /48";
        grain Rice;
        status Sourced, Derived, Derived;
        content_sd 0.04;
        { water: 11.89, sucrose: 0.12, ..flour(77.6) }),
    food!(tapioca_pearl, "tapioca pearls", Pieces;
        also ["tapioca"];
        usda "20068", "Tapioca, pearl, dry";
        spoon 3.17, Sourced, "USDA 1 cup 152 g /48";
        grain Tapioca;
        status Sourced, Derived, Derived;
        content_sd 0.05;
        { water: 10.99, sucrose: 3.35, salt: 0.003, ..steamed(84.4) }),
    food!(potato_flakes, "potato flakes", Flakes;
        also ["instant mashed potatoes", "instant potatoes", "mashed potato flakes"];
        usda "11378", "Potatoes, mashed, dehydrated, flakes without milk, dry form";
        spoon 1.25, Sourced, "USDA 1 cup 60 g /48";
        status Sourced, Sourced, Sourced;
        content_sd 0.05;
        { water: 6.58, maltose: 0.5, sucrose: 0.99, glucose: 0.89, fructose: 0.98, salt: 0.196, ..cooked(70.6) }),
    food!(potato_flour, "potato flour", Powder;
        usda "11413", "Potato flour";
        spoon 3.33, Sourced, "USDA 1 cup 160 g /48";
        grain Potato;
        status Sourced, Derived, Derived;
        content_sd 0.06;
        { water: 6.52, sucrose: 3.52, salt: 0.14, ..cooked(73.7) }),
    // Milk.
    food!(chickpea_flour, "chickpea flour", Powder;
        also ["garbanzo flour", "gram flour", "besan"];
        spoon 1.9, Memory, "1 cup 92 g / 48, from memory";
        grain Pulse;
        status Memory, Memory, Memory;
        content_sd 0.1;
        { water: 10.0, galactosides: 3.0, sucrose: 3.0, glucose: 0.2, salt: 0.15, ..flour(40.0) }),
    food!(soy_flour_defatted, "soy flour, defatted", Powder;
        also ["soy flour", "soya flour"];
        spoon 2.1, Memory, "1 cup 100 g / 48, from memory";
        grain Pulse;
        status Memory, Memory, Memory;
        content_sd 0.15;
        allergens [Soy];
        { water: 7.0, galactosides: 6.0, sucrose: 8.0, salt: 0.05, ..raw(1.0) }),
    food!(milk_powder_nonfat, "nonfat dry milk", Powder;
        also ["dry milk", "milk powder", "powdered milk", "skim milk powder", "nonfat milk powder", "regular nonfat dry milk"];
        usda "01091", "Milk, dry, nonfat, regular, without added vitamin A and vitamin D";
        spoon 2.5, Sourced, "USDA 1 cup 120 g /48";
        status Sourced, Derived, Derived;
        content_sd 0.03;
        allergens [Milk];
        { water: 3.16, lactose: 51.98, salt: 1.36, ..NONE }),
    food!(milk_powder_instant, "instant nonfat dry milk", Flakes;
        also ["instant dry milk", "instant milk powder"];
        usda "01092", "Milk, dry, nonfat, instant, with added vitamin A and vitamin D";
        spoon 1.42, Sourced, "USDA 1 cup 68 g /48";
        status Sourced, Derived, Derived;
        content_sd 0.03;
        allergens [Milk];
        { water: 3.96, lactose: 52.19, salt: 1.396, ..NONE }),
    food!(milk_skim, "skim milk", Liquid;
        also ["milk", "nonfat milk", "fat-free milk"];
        usda "01151", "Milk, nonfat, fluid, without added vitamin A and vitamin D (fat free or skim)";
        spoon 5.1, Sourced, "USDA 1 cup 245 g /48";
        status Sourced, Derived, Sourced;
        content_sd 0.03;
        allergens [Milk];
        { water: 90.84, lactose: 5.09, salt: 0.107, ..NONE }),
    // Fruit and roots.
    food!(apple_juice, "apple juice", Liquid;
        usda "09016", "Apple juice, canned or bottled, unsweetened, without added ascorbic acid";
        spoon 5.17, Sourced, "USDA 1 cup 248 g /48";
        status Sourced, Derived, Sourced;
        content_sd 0.06;
        { water: 88.24, sucrose: 1.26, glucose: 2.63, fructose: 5.73, salt: 0.01, acids: Acids::malic(0.007).at(3.6), ..NONE }),
    food!(grape_juice, "grape juice", Liquid;
        usda "09135", "Grape juice, canned or bottled, unsweetened, without added ascorbic acid";
        spoon 5.27, Sourced, "USDA 1 cup 253 g /48";
        status Sourced, Derived, Sourced;
        content_sd 0.06;
        { water: 84.51, sucrose: 0.04, glucose: 6.81, fructose: 7.36, salt: 0.013, acids: Acids::malic(0.009).at(3.3), ..NONE }),
    food!(applesauce, "applesauce", Mash;
        also ["apple sauce", "unsweetened applesauce"];
        usda "09019", "Applesauce, canned, unsweetened, without added ascorbic acid (includes USDA commodity)";
        spoon 5.08, Sourced, "USDA 1 cup 244 g /48";
        status Sourced, Sourced, Sourced;
        content_sd 0.08;
        { water: 88.22, maltose: 0.07, sucrose: 1.13, glucose: 2.3, fructose: 5.88, salt: 0.005, acids: Acids::malic(0.006).at(3.5), ..NONE }),
    food!(banana, "mashed banana", Mash;
        also ["banana", "ripe banana"];
        usda "09040", "Bananas, raw";
        spoon 4.69, Sourced, "USDA 1 cup mashed 225 g /48";
        status Sourced, Sourced, Sourced;
        content_sd 0.2;
        { water: 74.91, maltose: 0.01, sucrose: 2.39, glucose: 4.98, fructose: 4.85, salt: 0.003, acids: Acids::malic(0.0045).at(4.9), ..raw(5.38) }),
    food!(raisins, "raisins", Pieces;
        also ["chopped raisins"];
        usda "09298", "Raisins, seedless";
        spoon 3.02, Sourced, "USDA 1 cup not packed 145 g /48";
        status Sourced, Sourced, Sourced;
        content_sd 0.06;
        { water: 15.43, sucrose: 0.45, glucose: 27.75, fructose: 29.68, salt: 0.028, acids: Acids::malic(0.025).at(3.9), ..raw(2.7) }),
    food!(sweet_potato_raw, "raw sweet potato", Pieces;
        also ["sweet potato", "grated sweet potato"];
        usda "11507", "Sweet potato, raw, unprepared";
        spoon 2.77, Sourced, "USDA 1 cup cubes 133 g /48 (grated: expect about 2.3-2.8)";
        status Sourced, Sourced, Sourced;
        content_sd 0.15;
        { water: 77.28, sucrose: 2.52, glucose: 0.96, fructose: 0.7, salt: 0.14, ..raw(12.65) }),
    food!(sweet_potato_boiled, "boiled sweet potato", Mash;
        also ["mashed sweet potato", "cooked sweet potato"];
        usda "11510", "Sweet potato, cooked, boiled, without skin";
        spoon 6.83, Sourced, "USDA 1 cup mashed 328 g /48";
        status Sourced, Sourced, Sourced;
        content_sd 0.15;
        { water: 80.13, maltose: 3.34, sucrose: 1.43, glucose: 0.54, fructose: 0.43, salt: 0.069, ..cooked(5.22) }),
    food!(sweet_potato_baked, "baked sweet potato", Mash;
        usda "11508", "Sweet potato, cooked, baked in skin, flesh, without salt";
        spoon 4.17, Sourced, "USDA 1 cup 200 g /48";
        status Sourced, Sourced, Sourced;
        content_sd 0.15;
        { water: 75.78, maltose: 3.12, sucrose: 2.28, glucose: 0.57, fructose: 0.5, salt: 0.092, ..cooked(7.05) }),
    // Sweeteners that are not sugar.
    food!(sucralose_packet, "sucralose packet", Packet;
        also ["sucralose", "sucralose sweetener"];
        usda "19868", "Sweeteners, tabletop, sucralose, packets";
        piece 1.0;
        status Sourced, Sourced, Derived;
        content_sd 0.08;
        { water: 8.83, dextrin: 9.64, glucose: 80.3, ..NONE }),
    food!(aspartame_packet, "aspartame packet", Packet;
        also ["aspartame", "aspartame sweetener"];
        usda "19337", "Sweeteners, tabletop, aspartame, packets";
        spoon 3.5, Sourced, "USDA 1 tsp";
        piece 1.0;
        status Sourced, Sourced, Derived;
        content_sd 0.08;
        { water: 8.75, dextrin: 8.36, glucose: 80.7, ..NONE }),
    food!(saccharin_packet, "saccharin packet", Packet;
        also ["saccharin", "saccharin sweetener"];
        usda "43158", "Sweeteners, tabletop, saccharin (sodium saccharin)";
        piece 1.0;
        status Sourced, Sourced, Derived;
        content_sd 0.08;
        { water: 8.75, dextrin: 3.91, glucose: 85.2, salt: 1.088, ..NONE }),
    food!(granulated_substitute_brown, "brown sugar substitute, granulated", Powder;
        also ["granulated sweetener", "granulated sugar substitute"];
        usda "19909", "Sweeteners, sugar substitute, granulated, brown";
        spoon 0.5, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Sourced;
        content_sd 0.2;
        { water: 9.14, dextrin: 80.1, maltose: 2.94, glucose: 1.09, salt: 1.454, ..NONE }),
    food!(stevia_powder, "stevia powder", Powder;
        also ["stevia"];
        usda "19918", "Sweetener, herbal extract powder from Stevia leaf";
        piece 1.0;
        status Sourced, Derived, Sourced;
        content_sd 0.0;
        { water: 0.0, ..NONE }),
    food!(erythritol, "erythritol", Powder;
        spoon 4.0, Memory, "from memory: 3.6-4.3 g";
        status Memory, Memory, Memory;
        content_sd 0.0;
        { water: 0.2, ..NONE }),
    // What else a bag may get.
    food!(salt, "table salt", Powder;
        also ["salt", "sodium chloride"];
        usda "02047", "Salt, table";
        spoon 6.0, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Sourced;
        content_sd 0.0;
        { water: 0.2, salt: 98.528, ..NONE }),
    food!(baking_soda, "baking soda", Powder;
        also ["sodium bicarbonate", "bicarbonate of soda"];
        usda "18372", "Leavening agents, baking soda";
        spoon 4.6, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Sourced;
        content_sd 0.0;
        { water: 0.2, bicarbonate: 1.188, ..NONE }),
    food!(vinegar, "white vinegar", Liquid;
        also ["vinegar", "distilled vinegar"];
        usda "02053", "Vinegar, distilled";
        spoon 5.0, Sourced, "USDA 1 tsp";
        status Sourced, Derived, Sourced;
        content_sd 0.0;
        { water: 94.78, salt: 0.005, acids: Acids::acetic(0.0833), ..NONE }),
    food!(yeast_ady, "active dry yeast", Yeast;
        usda "18375", "Leavening agents, yeast, baker's, active dry";
        spoon 3.11, Derived, "packet of 7 g is 2 1/4 tsp; USDA says 4.0 g for active dry";
        piece 7.0;
        status Sourced, Derived, Sourced;
        content_sd 0.0;
        { water: 5.08, salt: 0.13, ..NONE }),
    food!(yeast_instant, "instant yeast", Yeast;
        also ["instant dry yeast"];
        spoon 3.11, Derived, "packet of 7 g is 2 1/4 tsp";
        piece 7.0;
        status Memory, Memory, Memory;
        content_sd 0.0;
        { water: 5.0, ..NONE }),
    food!(yeast_compressed, "compressed yeast", Yeast;
        also ["fresh yeast", "cake yeast"];
        usda "18374", "Leavening agents, yeast, baker's, compressed";
        piece 17.0;
        status Sourced, Derived, Sourced;
        content_sd 0.0;
        { water: 69.0, salt: 0.076, ..NONE }),
];
