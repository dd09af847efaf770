//! Enzymes a teacher can buy: what they cut, how fast, and how they take the heat.
//!
//! Every activity in this crate is in µmol of product per minute at [`heat::REFERENCE`] with
//! substrate in excess: glucose set free (glucoamylase), glucose units cut out of starch
//! (amylases), milk sugar, table sugar or raffinose split (lactases, invertase, alpha-galactosidase).
//! Labels speak other units: see [`label`]. What is on sale: [`shelf`].

pub mod acidity;
mod arrhenius;
pub mod gelatinization;
pub mod heat;
pub mod label;
pub mod malt;
pub mod products;
pub mod shelf;
pub mod starch;
pub mod stock;
pub mod sugars;

pub use products::Product;
pub use shelf::PRODUCTS;
