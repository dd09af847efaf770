//! Checks of the science against what others have published.

mod laws;
