//! Claims as they are typed.

use crate::class::Class;
use barm_domain::claim::{Claim, ClaimFault, MOST_CHARACTERS, Says, Typed};
use barm_domain::plan::Plan;

fn plan() -> Plan {
    Class::foods(&["1"], &["Maple syrup", "Oat flour"]).plan
}

const GOOD: Typed<'static> = Typed {
    question: "food",
    treatment: "maple syrup",
    says: "more",
    by: "1.3 cm",
    evidence: " Ours rose 14 mm. ",
    reasoning: "Yeast takes sugar.",
};

#[test]
fn a_claim_is_read_by_the_plan() {
    let claim = Claim::read(&plan(), &GOOD).unwrap();
    assert_eq!((claim.treatment.as_str(), claim.says), ("Maple syrup", Says::More));
    assert!((claim.by_mm.unwrap() - 13.0).abs() < 1e-9);
    assert_eq!(claim.evidence, "Ours rose 14 mm.");
    let none = Typed { by: " ", says: "no-readable-difference", ..GOOD };
    assert_eq!(Claim::read(&plan(), &none).unwrap().by_mm, None);
}

#[test]
fn all_that_is_wrong_comes_back_at_once() {
    let endless = "x".repeat(100_000);
    let typed = Typed {
        question: "food",
        treatment: "Maple sirup",
        says: "better",
        by: "lots",
        evidence: &endless,
        reasoning: "",
    };
    let faults = Claim::read(&plan(), &typed).unwrap_err();
    assert_eq!(faults.len(), 4, "{faults:?}");
    assert_eq!(faults[0], ClaimFault::TooLong { part: "evidence", characters: 100_000 });
    assert!(faults[0].to_string().contains(&MOST_CHARACTERS.to_string()));
    assert!(faults[1].to_string().contains("do you mean Maple syrup?"), "{}", faults[1]);
    assert_eq!(faults[2], ClaimFault::NoDirection);
    assert!(faults[3].to_string().contains("6 mm"));
    // The reference is compared with nothing.
    let itself = Typed { treatment: "No food", ..GOOD };
    assert!(matches!(
        Claim::read(&plan(), &itself).unwrap_err()[0],
        ClaimFault::NoTreatment { .. }
    ));
    let elsewhere = Typed { question: &endless, ..GOOD };
    let faults = Claim::read(&plan(), &elsewhere).unwrap_err();
    assert!(faults[0].to_string().len() < 120, "{}", faults[0]);
}

#[test]
fn sizes_that_cannot_be_are_refused() {
    for by in ["0 mm", "-3 mm", "400 mm", "1e308 mm", "nan mm", "6"] {
        let faults = Claim::read(&plan(), &Typed { by, ..GOOD }).unwrap_err();
        assert!(matches!(faults[..], [ClaimFault::NoLength { .. }]), "{by}: {faults:?}");
    }
    let nothing = Typed { says: "no-readable-difference", ..GOOD };
    assert_eq!(Claim::read(&plan(), &nothing).unwrap_err(), [ClaimFault::SizeOfNothing]);
}
