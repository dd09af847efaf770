//! Barm: one teacher, one yeast-bag investigation, one program.

fn main() {}
