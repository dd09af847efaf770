//! From a comparison to one of five words.

use crate::bags::bag;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::compare::{BagValue, Compared, How, compare};
use barm_science::statistics::verdict::{Code, Direction, Reason, Verdict, verdict};

/// Rises of the reference and of the treatment, each bag by a group of its own, in one period.
fn judge(reference: &[f64], treatment: &[f64]) -> Verdict {
    let side = |which: usize, values: &[f64]| -> Vec<BagValue> {
        let numbered = values.iter().enumerate();
        numbered.map(|(i, &v)| bag(which, 0, 10 * which + i, v)).collect()
    };
    let both = [side(0, reference), side(1, treatment)].concat();
    verdict(&compare(&both, &Compared::Reference(0), &How::read_with(0.7)).contrasts[0], 3.0)
}

#[test]
fn each_word_has_its_bags() {
    let cases: [(&[f64], &[f64], Code); 8] = [
        (&[10.0, 12.0, 11.0, 13.0], &[20.0, 22.0, 21.0, 19.0], Code::Clear),
        (&[20.0, 22.0, 21.0, 19.0], &[10.0, 12.0, 11.0, 13.0], Code::Clear),
        (&[10.0, 14.0, 12.0], &[15.0, 18.0, 13.0], Code::Leaning),
        (&[10.0, 18.0], &[12.0, 19.0], Code::Unclear),
        (&[0.0, 1.0, 0.0], &[1.0, 1.0, 2.5], Code::NoRise),
        (&[10.0], &[20.0], Code::NotComparable),
        // Clear as numbers go, but nobody could see it on two bags.
        (&[10.0, 10.0, 10.0, 10.0, 10.0], &[12.0, 12.0, 12.0, 12.0, 12.0], Code::Leaning),
        // One bag, however far off.
        (&[10.0, 11.0, 12.0, 11.0, 10.0], &[60.0], Code::Leaning),
    ];
    for (reference, treatment, code) in cases {
        let ours = judge(reference, treatment);
        assert_eq!(ours.code, code, "{reference:?} {treatment:?}: {:?}", ours.reason);
        let words = ours.reason.to_string();
        assert!(
            words.len() > 20 && !words.contains("NaN") && !words.contains("inf"),
            "{words}"
        );
        let named = matches!(code, Code::Clear | Code::Leaning);
        assert_eq!(ours.direction.is_some(), named);
    }
    assert_eq!(judge(&[20.0, 21.0], &[1.0, 2.0]).direction, Some(Direction::Less));
    assert_eq!(judge(&[1.0, 2.0], &[20.0, 21.0]).direction, Some(Direction::More));
}

#[test]
fn the_reason_names_what_stood_in_the_way_of_clear() {
    let small = judge(&[10.0; 6], &[12.0; 6]);
    assert!(matches!(small.reason, Reason::SmallerThanReadable { .. }));
    let single = judge(&[10.0, 11.0, 12.0, 11.0, 10.0], &[60.0]);
    assert_eq!(single.reason, Reason::OneBag { n: 1, n_reference: 5 });
    let mut list: Vec<BagValue> = (0..4).map(|i| bag(0, 0, i, 10.0 + i as f64)).collect();
    list.extend((0..4).map(|i| bag(1, 0, 9, 40.0 + i as f64)));
    let tied = verdict(
        &compare(&list, &Compared::Reference(0), &How::read_with(0.7)).contrasts[0],
        3.0,
    );
    assert_eq!(tied.code, Code::Leaning);
    assert_eq!(tied.reason, Reason::OneGroup { group: 9, treatment: 1 });
}

/// Three bags a side that differ by 2 mm (standard deviation): Student's t with 4 degrees of freedom is 2.776 at
/// 5 % and 2.999 at 4 % (two-sided; the former NIST/SEMATECH e-Handbook 1.3.6.7.2, the latter from memory).
#[test]
fn what_only_just_leaves_0_out_is_no_clear_difference_where_part_of_the_level_is_kept() {
    let judged = |used: f64, apart: f64| {
        let side = |which: usize, mean: f64| {
            (0..3).map(move |i| bag(which, 0, 10 * which + i, mean + 2.0 * (i as f64 - 1.0)))
        };
        let bags: Vec<BagValue> = side(0, 10.0).chain(side(1, 10.0 + apart)).collect();
        let how = How { used, ..How::read_with(0.7) };
        verdict(&compare(&bags, &Compared::Reference(0), &how).contrasts[0], 3.0)
    };
    let se = 2.0 * (2.0_f64 / 3.0).sqrt();
    for (t, whole, most_of_it) in [
        (2.74, Code::Leaning, Code::Leaning),
        (2.80, Code::Clear, Code::Leaning),
        (2.97, Code::Clear, Code::Leaning),
        (3.03, Code::Clear, Code::Clear),
    ] {
        assert_eq!(judged(1.0, t * se).code, whole, "{t}");
        assert_eq!(judged(0.8, t * se).code, most_of_it, "{t}");
    }
    assert!(matches!(judged(0.8, 2.9 * se).reason, Reason::OnlyJust { low, .. } if low > 0.0));
    assert!(matches!(judged(0.8, 2.7 * se).reason, Reason::OnlyAlone { .. }));
}

/// Four fifths of 5 % are 4 %: the word is that of the stricter level, whatever the bags.
#[test]
fn the_word_of_a_class_is_that_of_the_stricter_level() {
    let mut chance = Chance::from_seed(96);
    let mut just = 0;
    for _ in 0..300 {
        let treatments = 2 + chance.below(3);
        let apart = 10.0 * chance.uniform();
        let bags: Vec<BagValue> = (0..treatments * 6)
            .map(|at| {
                let (which, group) = (at % treatments, at / treatments);
                let value = 15.0 + apart * which as f64 + 3.0 * chance.normal();
                bag(which, group / 3, group, value.max(0.0))
            })
            .collect();
        let of = |how: &How| compare(&bags, &Compared::Reference(0), how).contrasts;
        let class = How::of_a_class(0.7);
        let strict = How { used: 1.0, ..class.at(class.level * class.used) };
        for (ours, theirs) in of(&class).iter().zip(&of(&strict)) {
            let (ours, theirs) = (verdict(ours, 3.0), verdict(theirs, 3.0));
            assert_eq!(
                ours.code == Code::Clear,
                theirs.code == Code::Clear,
                "{ours:?} {theirs:?}"
            );
            just += usize::from(matches!(ours.reason, Reason::OnlyJust { .. }));
        }
    }
    assert!(just > 0, "none was only just beyond chance");
}

#[test]
fn a_difference_of_just_what_is_readable_counts_whatever_rounding_leaves_of_it() {
    // What a least-squares fit leaves of 3 mm.
    let reference: Vec<f64> = (1..=6).map(|i| f64::from(i % 3) / 3.0).collect();
    let treatment: Vec<f64> =
        reference.iter().map(|rise| rise + 2.999_999_999_999_996).collect();
    let judged = judge(&reference, &treatment);
    assert_eq!(judged.code, Code::Clear, "{judged:?}");
}

#[test]
fn codes_have_the_words_that_files_use() {
    let words = [
        (Code::Clear, "clear"),
        (Code::Leaning, "leaning"),
        (Code::Unclear, "unclear"),
        (Code::NoRise, "no-rise"),
        (Code::NotComparable, "not-comparable"),
    ];
    for (code, word) in words {
        assert_eq!(code.word(), word);
    }
}
