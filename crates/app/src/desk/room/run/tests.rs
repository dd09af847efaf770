//! Views and pages from records made by hand.
