//! Sums that keep the digits that a plain sum would lose.

/// Sum of numbers (their unit), as good as if made in twice the precision and rounded once.
///
/// # Source
/// Knuth's two-sum (*The Art of Computer Programming* 2, section 4.2.2) with the errors summed
/// along: Ogita, Rump & Oishi (2005), *SIAM J. Sci. Comput.* 26, 1955–1988, algorithm Sum2.
pub fn total(numbers: impl IntoIterator<Item = f64>) -> f64 {
    let (mut sum, mut lost) = (0.0_f64, 0.0_f64);
    for x in numbers {
        let next = sum + x;
        let taken = next - sum;
        lost += (sum - (next - taken)) + (x - taken);
        sum = next;
    }
    sum + lost
}
