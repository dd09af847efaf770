//! What holds for any list of entries.

use crate::day::{at, bag, key, known};
use barm_domain::record::{
    Audience, Entry, Face, Ledger, Lent, Made, Odd, Subject, Truth, What, Who, replay,
};
use proptest::prelude::*;
use std::collections::BTreeSet;

fn height() -> impl Strategy<Value = f64> {
    prop_oneof![
        9 => (0u32..60).prop_map(f64::from),
        1 => prop_oneof![Just(f64::NAN), Just(f64::INFINITY), Just(-0.0)],
    ]
}

fn planned() -> impl Strategy<Value = Option<u32>> {
    prop_oneof![Just(None), (1u32..4).prop_map(|n| Some(4 * n))]
}

fn audience() -> impl Strategy<Value = Audience> {
    prop_oneof![
        Just(Audience::Wall { period: "1".into() }),
        Just(Audience::Groups { period: "1".into() }),
        (0u32..3).prop_map(|group| Audience::Group { period: "1".into(), group }),
    ]
}

fn about_a_bag() -> impl Strategy<Value = What> {
    let rule = prop_oneof![Just("leak"), Just("mood")];
    let treatment = prop_oneof![Just(None), Just(Some("starch")), Just(Some("sand"))];
    prop_oneof![
        4 => height().prop_map(|height_mm| What::Zero { height_mm }),
        8 => (planned(), height())
            .prop_map(|(planned, height_mm)| What::Reading { planned, height_mm }),
        8 => (0u128..28, height())
            .prop_map(|(of, height_mm)| What::Correction { of: key(of), height_mm }),
        2 => (1u32..4).prop_map(|plan| What::Sealed { plan }),
        2 => height().prop_map(|percent| What::Meter { percent, turn: None }),
        2 => (0usize..6).prop_map(|n| What::Odd(Odd::ALL[n])),
        1 => (0u128..28).prop_map(|of| What::OddBack { of: key(of) }),
        1 => Just(What::Lost),
        1 => Just(What::Vented),
        2 => Just(What::TakenBack),
        2 => rule.prop_map(|rule| What::SetAside { rule: rule.into() }),
        1 => treatment.prop_map(|treatment| {
            What::SetRight(Truth { treatment: treatment.map(Into::into), group: None })
        }),
        1 => height().prop_map(|celsius| {
            What::Made(Made { water_celsius: Some(celsius), difference: None })
        }),
    ]
}

fn about_others() -> impl Strategy<Value = What> {
    let face = (0usize..6).prop_map(|n| Face::ALL[n]);
    prop_oneof![
        3 => height().prop_map(|mm| What::Guess { expects: vec![(bag(1, 1, 0), mm)], because: None }),
        1 => (0u32..5).prop_map(|students| What::Here { students }),
        1 => Just(What::StandIn(Lent::ClassData)),
        2 => Just(What::Began),
        2 => Just(What::Stopped),
        2 => Just(What::WentOn),
        1 => Just(What::Ended),
        1 => Just(What::TakenBack),
        1 => (0u32..30).prop_map(|minute| What::LastReading { minute }),
        1 => (height(), 1u32..3).prop_map(|(celsius, jug)| What::Jug { celsius, jug }),
        1 => (1u32..5, proptest::option::of(height()))
            .prop_map(|(turn, percent)| What::Blank { turn, percent }),
        1 => (1u32..4).prop_map(|version| What::PlanSaved { version }),
        2 => (face.clone(), audience()).prop_map(|(face, to)| What::Opened { face, to }),
        2 => (face, audience()).prop_map(|(face, to)| What::Closed { face, to }),
    ]
}

fn subject() -> impl Strategy<Value = Subject> {
    prop_oneof![
        1 => Just(Subject::Investigation),
        2 => Just(Subject::Period("1".into())),
        3 => (1u32..3).prop_map(|group| Subject::Group { period: "1".into(), group }),
        1 => Just(Subject::Bag(bag(9, 9, 0))),
    ]
}

/// Mostly what fits, with some nonsense.
fn subject_and_what() -> impl Strategy<Value = (Subject, What)> {
    let own = (1u8..3, 0usize..2).prop_map(|(group, nth)| Subject::Bag(bag(1, group, nth)));
    prop_oneof![
        8 => (own, about_a_bag()),
        4 => (subject(), about_others()),
        1 => (subject(), about_a_bag()),
    ]
}

fn who() -> impl Strategy<Value = Who> {
    prop_oneof![
        4 => (1u32..3).prop_map(|group| Who::Group { period: "1".into(), group }),
        2 => Just(Who::Teacher),
        1 => Just(Who::Aide),
        1 => Just(Who::Import),
        1 => Just(Who::Program),
    ]
}

fn an_entry() -> impl Strategy<Value = Entry> {
    // Few keys and few times, so that they meet.
    (0u128..28, subject_and_what(), 0i64..60, 0i64..60, who()).prop_map(
        |(number, (subject, what), measured, arrived, who)| Entry {
            key: key(number),
            subject,
            what,
            measured: at(60 * measured),
            arrived: at(60 * arrived),
            who,
        },
    )
}

fn a_record() -> impl Strategy<Value = Vec<Entry>> {
    prop::collection::vec(an_entry(), 0..28)
}

fn two_orders() -> impl Strategy<Value = (Vec<Entry>, Vec<Entry>)> {
    a_record().prop_flat_map(|entries| (Just(entries.clone()), Just(entries).prop_shuffle()))
}

fn cases() -> ProptestConfig {
    let cases = crate::size::counts(64, 256, 2048);
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

proptest! {
    #![proptest_config(cases())]

    /// Any order in which entries arrive, in any number of parcels, gives the same state.
    #[test]
    fn order_of_arrival_does_not_matter((one, other) in two_orders(), split in 0usize..40) {
        let expected = replay(&known(), &one);
        prop_assert_eq!(&replay(&known(), &other), &expected);
        let split = split.min(other.len());
        let mut ledger = Ledger::of(known(), other[..split].to_vec());
        for entry in &other[split..] {
            ledger.add(entry.clone());
        }
        prop_assert_eq!(ledger.standing(), &expected);
    }

    /// After every single entry the ledger stands where a full replay stands.
    #[test]
    fn a_ledger_is_a_replay(entries in a_record()) {
        let mut ledger = Ledger::new(known());
        for (at, entry) in entries.iter().enumerate() {
            let fresh = entries[..at].iter().all(|other| other.key != entry.key);
            prop_assert_eq!(ledger.add(entry.clone()), fresh);
            prop_assert_eq!(ledger.standing(), &replay(&known(), &entries[..=at]));
        }
    }

    /// Sending everything again changes nothing.
    #[test]
    fn sent_again_counts_once(entries in a_record(), later in 0i64..1000) {
        let again = entries.iter().map(|entry| {
            let arrived = at(4000 + later);
            Entry { arrived, ..entry.clone() }
        });
        let twice: Vec<Entry> = entries.iter().cloned().chain(again).collect();
        prop_assert_eq!(replay(&known(), &twice), replay(&known(), &entries));
    }

    /// Every height either counts, is history, or is listed with a reason; none vanishes.
    #[test]
    fn no_height_vanishes(mut entries in a_record()) {
        // Two entries with one key are one entry.
        let mut keys = BTreeSet::new();
        entries.retain(|entry| keys.insert(entry.key));
        let standing = replay(&known(), &entries);
        let listed: BTreeSet<_> = standing.refused.iter().map(|(key, _)| *key).collect();
        let mut seen = BTreeSet::new();
        for bag in standing.bags.values() {
            let heights = bag.zero.iter().chain(&bag.other_zeros).chain(&bag.readings);
            for height in heights {
                prop_assert!(height.height_mm.is_finite());
                prop_assert!(!listed.contains(&height.key));
                prop_assert!(seen.insert(height.key));
                seen.extend(height.mended.iter().map(|mended| mended.by));
            }
            prop_assert!(bag.zero.is_some() || bag.readings.is_empty());
            if let Some(lost) = bag.lost {
                prop_assert!(bag.readings.iter().all(|reading| reading.measured <= lost));
            }
        }
        for entry in &entries {
            let height = matches!(
                entry.what,
                What::Zero { .. } | What::Reading { .. } | What::Correction { .. }
            );
            if height {
                prop_assert!(seen.contains(&entry.key) || listed.contains(&entry.key));
            }
        }
    }
}
