//! What a group claims, and what the data say of it.

#[expect(dead_code, reason = "results are tested elsewhere")]
#[path = "../result/class.rs"]
mod class;
mod facts;
mod lengths;
mod made;
mod peers;
