//! Distributions that tests and intervals need, to nearly the digits of a double.
//!
//! Every function is defined for every argument of its stated range and gives NaN outside it;
//! callers in this crate check before they call.

pub mod beta;
mod corrected;
pub mod detection;
pub mod fisher;
pub mod gamma;
mod lattice;
pub mod multivariate_t;
pub mod noncentral_chi_square;
pub mod noncentral_fisher;
pub mod noncentral_student;
pub mod normal;
mod normal_table;
mod poisson_mixture;
mod product_form;
mod quadrature;
mod root;
mod sampled;
mod spread_table;
pub mod student;
pub mod studentized_range;
pub mod two_normals;
pub mod two_students;

pub(super) use quadrature::Rule;
pub(super) use root::rising_root;
