//! How much the tests draw: `BARM_TEST_SIZE` is `quick`, `ci` (also when unset) or `long`.

/// The count for the size asked for.
pub(crate) fn counts<T>(quick: T, ci: T, long: T) -> T {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => quick,
        Ok("long") => long,
        _ => ci,
    }
}
