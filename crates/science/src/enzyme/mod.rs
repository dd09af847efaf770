//! Enzymes a teacher can buy: what they cut, how fast, and how they take the heat.
//!
//! Every activity in this crate is in µmol of product per minute at [`heat::REFERENCE`] with
//! substrate in excess: glucose set free (glucoamylase), glucose units cut out of starch
//! (amylases), milk sugar or table sugar split (lactases, invertase). Labels speak other units:
//! see [`label`]. What is on sale: [`products`].

pub mod heat;
pub mod label;
pub mod products;
pub mod starch;
pub mod sugars;

pub use products::{PRODUCTS, Product};
