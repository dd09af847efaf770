//! How many MADs make a gap stand out.

/// Gap over the larger MAD (1) that, in a question of `gaps` gaps between sets of `bags` values of
/// `groups` groups each, without any true difference, one or more of them reach at most 1 time in 20;
/// `None` for a single bag, and for one group's bags: nothing tells how much groups differ then.
///
/// Between the numbers in the table the next smaller ones count, groups before bags, and the next larger
/// number of gaps, which asks for more. Beyond ten gaps those of ten count.
///
/// # Accuracy
/// Within 1 %. Derived: each gap is given its share of 1 in 20 (Bonferroni). For two bags solved from
/// E\[erf(|Z|/m)²\] = 0.05/gaps with Z standard normal; for more, that percentile of 4 million (of several
/// bags a group, 2 million) simulated pairs of normal sets. The tests repeat both. Bags are taken to spread
/// normally, equally on both sides, shared out evenly among groups; groups to differ among themselves as
/// much as the bags of one group do (judgement), and no group to have made bags of both sides, which would
/// make gaps of chance smaller.
pub fn needed_multiple(bags: usize, groups: usize, gaps: usize) -> Option<f64> {
    let column = GAPS.iter().position(|&most| gaps <= most).unwrap_or(GAPS.len() - 1);
    if groups >= bags {
        let fits = |row: &&(usize, [f64; 6])| row.0 <= bags;
        return EACH_ITS_GROUP.iter().rev().find(fits).map(|row| row.1[column]);
    }
    let fits = |row: &&(usize, usize, [f64; 6])| row.1 <= groups && row.0 <= bags;
    let fitting = SEVERAL_A_GROUP.iter().filter(fits);
    fitting.max_by_key(|row| (row.1, row.0)).map(|row| row.2[column])
}

/// Gaps of a question, one column of the tables each.
const GAPS: [usize; 6] = [1, 2, 3, 4, 6, 10];

/// Bags, and the multiples where a group each made them.
const EACH_ITS_GROUP: [(usize, [f64; 6]); 14] = [
    (2, [4.847, 6.996, 8.626, 9.993, 12.280, 15.895]),
    (3, [2.575, 3.250, 3.685, 4.014, 4.518, 5.212]),
    (4, [1.980, 2.414, 2.680, 2.876, 3.162, 3.543]),
    (5, [1.674, 2.008, 2.207, 2.349, 2.555, 2.827]),
    (6, [1.482, 1.760, 1.923, 2.039, 2.204, 2.413]),
    (7, [1.345, 1.589, 1.729, 1.829, 1.971, 2.149]),
    (8, [1.241, 1.457, 1.583, 1.671, 1.794, 1.950]),
    (9, [1.159, 1.359, 1.473, 1.552, 1.663, 1.801]),
    (10, [1.090, 1.273, 1.377, 1.451, 1.552, 1.677]),
    (11, [1.034, 1.206, 1.303, 1.371, 1.466, 1.582]),
    (12, [0.986, 1.148, 1.239, 1.303, 1.390, 1.499]),
    (15, [0.875, 1.014, 1.092, 1.146, 1.221, 1.314]),
    (20, [0.752, 0.869, 0.934, 0.979, 1.041, 1.116]),
    (30, [0.612, 0.705, 0.756, 0.790, 0.838, 0.897]),
];

/// Bags, groups that made them, and the multiples.
const SEVERAL_A_GROUP: [(usize, usize, [f64; 6]); 33] = [
    (3, 2, [3.320, 4.198, 4.772, 5.214, 5.884, 6.811]),
    (4, 2, [2.756, 3.380, 3.769, 4.053, 4.470, 5.023]),
    (4, 3, [2.324, 2.833, 3.149, 3.380, 3.714, 4.157]),
    (5, 2, [2.588, 3.129, 3.447, 3.679, 4.011, 4.438]),
    (5, 3, [2.123, 2.556, 2.813, 3.001, 3.262, 3.610]),
    (5, 4, [1.886, 2.262, 2.487, 2.648, 2.880, 3.183]),
    (6, 2, [2.426, 2.910, 3.194, 3.399, 3.688, 4.069]),
    (6, 3, [1.950, 2.332, 2.559, 2.722, 2.954, 3.250]),
    (6, 4, [1.782, 2.121, 2.322, 2.462, 2.665, 2.926]),
    (7, 2, [2.365, 2.817, 3.084, 3.273, 3.537, 3.875]),
    (7, 3, [1.905, 2.265, 2.475, 2.627, 2.837, 3.111]),
    (7, 4, [1.684, 1.999, 2.178, 2.306, 2.491, 2.725]),
    (7, 6, [1.453, 1.716, 1.868, 1.975, 2.127, 2.321]),
    (8, 2, [2.288, 2.720, 2.965, 3.138, 3.385, 3.695]),
    (8, 3, [1.845, 2.187, 2.384, 2.525, 2.722, 2.967]),
    (8, 4, [1.590, 1.881, 2.048, 2.166, 2.336, 2.548]),
    (8, 6, [1.411, 1.662, 1.805, 1.906, 2.048, 2.225]),
    (10, 2, [2.211, 2.615, 2.846, 3.008, 3.233, 3.513]),
    (10, 3, [1.766, 2.081, 2.262, 2.390, 2.570, 2.791]),
    (10, 4, [1.543, 1.815, 1.969, 2.078, 2.233, 2.421]),
    (10, 6, [1.324, 1.552, 1.683, 1.773, 1.899, 2.056]),
    (10, 8, [1.206, 1.411, 1.528, 1.608, 1.721, 1.860]),
    (12, 2, [2.163, 2.549, 2.770, 2.921, 3.136, 3.395]),
    (12, 3, [1.705, 2.006, 2.178, 2.295, 2.464, 2.674]),
    (12, 4, [1.474, 1.731, 1.876, 1.978, 2.119, 2.297]),
    (12, 6, [1.239, 1.449, 1.568, 1.651, 1.768, 1.912]),
    (12, 8, [1.155, 1.347, 1.456, 1.532, 1.637, 1.765]),
    (20, 2, [2.071, 2.426, 2.627, 2.767, 2.958, 3.193]),
    (20, 3, [1.620, 1.895, 2.049, 2.155, 2.301, 2.483]),
    (20, 4, [1.384, 1.614, 1.742, 1.832, 1.957, 2.113]),
    (20, 6, [1.153, 1.339, 1.445, 1.518, 1.619, 1.739]),
    (20, 8, [1.030, 1.192, 1.284, 1.346, 1.433, 1.542]),
    (20, 12, [0.898, 1.040, 1.118, 1.173, 1.248, 1.339]),
];
