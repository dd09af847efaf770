//! What a group may put on record: things it did, about itself and its own bags.
//!
//! The bench page's own handler looks too; this stands where nobody can pass by.

use barm_domain::record::{Entry, Known, Subject, What, Who};

/// Whether the one who says so may say this.
pub(super) fn may_enter(entry: &Entry, known: &Known) -> bool {
    let Who::Group { period, group } = &entry.who else { return true };
    match &entry.subject {
        Subject::Bag(code) => {
            let home = known.bags.get(code);
            let own = home.is_some_and(|home| home.period == **period && home.group == *group);
            own && matches!(
                entry.what,
                What::Made(_)
                    | What::Sealed { .. }
                    | What::Zero { .. }
                    | What::Reading { .. }
                    | What::Correction { .. }
                    | What::Meter { .. }
                    | What::Odd(_)
                    | What::OddBack { .. }
                    | What::Vented
                    | What::Lost
            )
        }
        Subject::Group { period: of, group: number } => {
            let own = **of == **period && number == group;
            own && matches!(entry.what, What::Guess { .. } | What::Here { .. })
        }
        Subject::Period(_) | Subject::Investigation => false,
    }
}
