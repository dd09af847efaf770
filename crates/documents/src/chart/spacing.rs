//! Where labels stand: which are told together, and how all of them keep apart.

/// So many lines that end within two lines of type are told under one head.
const MANY: usize = 4;

/// Ends of lines by place in the list, from the top: each alone, or with the others that end within two lines of
/// type and less than a line from the next, if they are many. `ends` grow downward.
pub(super) fn together(ends: &[f64], line: f64) -> Vec<Vec<usize>> {
    let mut order: Vec<usize> = (0..ends.len()).collect();
    order.sort_by(|a, b| ends[*b].total_cmp(&ends[*a]));
    let mut blocks = Vec::new();
    let mut rest = &order[..];
    while let Some(&lowest) = rest.first() {
        let near = |two: &&[usize]| {
            ends[two[0]] - ends[two[1]] < line && ends[lowest] - ends[two[1]] <= 2.0 * line
        };
        let count = 1 + rest.windows(2).take_while(near).count();
        let count = if count < MANY { 1 } else { count };
        let (block, after) = rest.split_at(count);
        blocks.push(block.iter().rev().copied().collect());
        rest = after;
    }
    blocks.reverse();
    blocks
}

/// Middles for blocks of these heights that would like to stand at `wanted`, which does not fall: in their order,
/// none over another, none above `from`; below `to` only if there is no room otherwise.
///
/// What is left of each wish after the blocks before it have been stacked may not fall either, so the nearest such
/// row is wanted (isotonic regression by pooling neighbours: M. Ayer and others, Ann. Math. Stat. 26, 641 (1955),
/// from memory).
pub(super) fn apart(wanted: &[f64], needs: &[f64], from: f64, to: f64) -> Vec<f64> {
    let mut high = 0.0;
    let mut stacked = Vec::new();
    for need in needs {
        stacked.push(high + need / 2.0);
        high += need;
    }
    let mut pools: Vec<(f64, usize)> = Vec::new();
    let mean = |(sum, count): (f64, usize)| sum / count as f64;
    for (wanted, at) in wanted.iter().zip(&stacked) {
        let mut pool = (wanted - at, 1);
        while let Some(&before) = pools.last().filter(|before| mean(**before) > mean(pool)) {
            pools.pop();
            pool = (before.0 + pool.0, before.1 + pool.1);
        }
        pools.push(pool);
    }
    let most = (to - high).max(from);
    let shifts = pools
        .iter()
        .flat_map(|pool| std::iter::repeat_n(mean(*pool).clamp(from, most), pool.1));
    shifts.zip(stacked).map(|(shift, at)| shift + at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn many_lines_that_end_together_have_one_head_and_few_have_their_own() {
        // Six flat kinds, two in the middle that are close, one far above; a line is 12 high.
        let ends = [100.0, 101.0, 20.0, 99.0, 60.0, 103.0, 66.0, 97.0, 104.0];
        let blocks = together(&ends, 12.0);
        assert_eq!(blocks, [vec![2], vec![4], vec![6], vec![7, 3, 0, 1, 5, 8]]);
        assert_eq!(together(&[1.0, 2.0, 3.0], 12.0), [[0], [1], [2]]);
        assert!(together(&[], 12.0).is_empty());
    }

    proptest! {
        #[test]
        fn labels_keep_apart_and_in_order(
            mut wanted in prop::collection::vec(0.0..200.0, 1..14),
            tall in 0usize..14,
        ) {
            wanted.sort_by(f64::total_cmp);
            let needs: Vec<f64> =
                (0..wanted.len()).map(|at| if at == tall { 40.0 } else { 10.0 }).collect();
            let places = apart(&wanted, &needs, 10.0, 200.0);
            let edges = |at: usize| (places[at] - needs[at] / 2.0, places[at] + needs[at] / 2.0);
            prop_assert!(edges(0).0 >= 10.0 - 1e-6, "{:?}", places);
            prop_assert!(edges(places.len() - 1).1 <= 200.0 + 1e-6, "{:?}", places);
            for at in 1..places.len() {
                prop_assert!(edges(at).0 >= edges(at - 1).1 - 1e-6, "{:?}", places);
            }
        }

        #[test]
        fn a_label_with_room_stands_where_it_wants(wanted in 20.0..180.0) {
            prop_assert!((apart(&[wanted], &[20.0], 10.0, 190.0)[0] - wanted).abs() < 1e-9);
        }
    }
}
