//! The bag model: against what others have seen, against itself, and against another solver.

mod acidity;
mod any_bag;
mod bench;
mod convergence;
mod enzyme_units;
mod enzymes;
mod forecasts;
mod heat;
mod identities;
mod learned;
mod moving;
mod nearness;
mod off_center;
mod other_solver;
mod raffinose;
mod refusals;
mod shares;
#[path = "../statistics/size.rs"]
mod size;
mod starch;
mod validity;
mod yeast;
mod yeast_sugars;
mod yeast_temperature;
