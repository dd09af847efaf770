//! What hangs in the gallery, in the order of a class's days.

/// The heading of the gallery.
pub(crate) const TITLE: &str = "Gallery";

/// What stands under it.
pub(crate) const SAYS: &str = "Every page shows our invented school; names, groups and readings are made up. \
    Written by `cargo run --example gallery` (see `crates/app/examples/gallery`).";

/// A picture and what it shows.
pub(crate) struct Shown {
    /// The heading it stands under.
    pub(crate) head: &'static str,
    /// The name of the file in the gallery.
    pub(crate) name: &'static str,
    /// The name of the picture that the tests take.
    pub(crate) from: &'static str,
    /// What one sees.
    pub(crate) says: &'static str,
    /// No more than this is shown of a long page (pixels).
    pub(crate) most_high: u32,
}

const fn page(
    head: &'static str,
    name: &'static str,
    from: &'static str,
    says: &'static str,
) -> Shown {
    Shown { head, name, from, says, most_high: 1_800 }
}

const BEFORE: &str = "Before the day";
const DURING: &str = "On the day";
const CLASS: &str = "What the class sees";
const AFTER: &str = "Afterwards";

/// All of it.
pub(crate) const SHOWN: &[Shown] = &[
    page(
        BEFORE,
        "first-start",
        "shelf-with-nothing-on-it-at-1366",
        "The empty shelf: three ways to begin.",
    ),
    page(
        BEFORE,
        "ready-plans",
        "ready-plans-at-1366",
        "Ready plans, from confirmation to open.",
    ),
    page(
        BEFORE,
        "six-questions",
        "six-questions-at-1366",
        "Six questions fit a plan to the school.",
    ),
    page(BEFORE, "plan", "plan-at-1366", "The plan with what will show before the bell."),
    page(
        BEFORE,
        "planning-group",
        "plan-together-with-questions-at-360",
        "A group plans on a phone: it is asked, and never told.",
    ),
    page(
        BEFORE,
        "approve",
        "approve-at-1366",
        "The queue of proposals, the ones with a fault first.",
    ),
    page(
        BEFORE,
        "pilot",
        "pilot-at-1366",
        "A pilot of 40 minutes: what to do, and where to type what was read.",
    ),
    page(BEFORE, "prepare", "prepare-at-1366", "What to buy, mix and lay out."),
    page(BEFORE, "rehearse", "rehearse-at-1366", "A rehearsal with simulated groups."),
    page(DURING, "codes", "codes-at-1366", "How the groups come in."),
    page(
        DURING,
        "run",
        "run-at-1366",
        "The run page: clock to the bell, what needs you, who reads now, who is next.",
    ),
    page(
        DURING,
        "run-call",
        "run-with-a-call-to-the-class-at-1366",
        "A call to the whole class.",
    ),
    page(DURING, "bag", "a-bag-at-1366", "One bag, with everything on record of it."),
    page(
        DURING,
        "walk-round",
        "walk-round-at-768",
        "The walk-round page on the teacher’s tablet.",
    ),
    page(DURING, "enter", "a-full-data-sheet-at-1366", "A data sheet typed from paper."),
    page(CLASS, "join", "join-at-360", "Coming in with two codes."),
    page(
        CLASS,
        "bench",
        "bench-at-360",
        "The bench page of a group: which bag, how high, when next.",
    ),
    page(CLASS, "bench-es", "bench--es-at-360", "The bench page in Spanish."),
    page(
        CLASS,
        "bench-question",
        "bench-with-a-question-at-360",
        "A height that looks odd is asked about, never corrected.",
    ),
    page(CLASS, "wall", "wall-at-1366", "The wall page for the projector."),
    page(
        CLASS,
        "wall-curves",
        "wall-with-curves--es-at-1366",
        "The wall page in Spanish with the curves opened.",
    ),
    page(CLASS, "aide", "aide-at-768", "An aide’s list of ticks."),
    page(AFTER, "results", "results-at-1366", "What the class found, and what it cannot tell."),
    page(
        AFTER,
        "every-bag",
        "every-bag-at-1366",
        "Every bag as a dot, as a curve and as a row.",
    ),
    page(
        AFTER,
        "talk",
        "a-question-on-the-wall-at-1366",
        "Questions that a class’s own bags call for, one at a time on its wall.",
    ),
    page(
        AFTER,
        "wall-question",
        "wall-with-a-question-at-1366",
        "The wall with a question beside the curves.",
    ),
    page(
        AFTER,
        "claims",
        "claims-at-1366",
        "What groups claim, beside what the data say of it.",
    ),
    page(
        AFTER,
        "marks",
        "a-group-to-mark-at-1366",
        "Marking by keyboard: what was handed in beside the rubric.",
    ),
    page(
        AFTER,
        "students",
        "students-in-groups-at-1366",
        "A school’s roster in groups: who gets what, and a mark of their own.",
    ),
    page(
        AFTER,
        "standards",
        "standards-at-1366",
        "Which standard is shown by what groups handed in: no product, no tick.",
    ),
    page(
        AFTER,
        "another-round",
        "another-round-with-proposals-at-1366",
        "What a class could make next, the most telling first.",
    ),
    page(
        AFTER,
        "colleague",
        "a-colleague-s-package-that-is-looked-at-at-1366",
        "A colleague’s data package, looked at before anything is kept.",
    ),
    page(
        AFTER,
        "years",
        "classes-and-years-together-at-1366",
        "The same question over classes and years.",
    ),
    page(
        AFTER,
        "kept",
        "what-is-kept-about-whom-at-1366",
        "Everything that is kept about people, on one page.",
    ),
    page(AFTER, "names", "names-and-notes-at-1366", "Names and notes, deleted in one action."),
    page(AFTER, "backups", "backups-at-1366", "Backups, each opened once to be sure of it."),
];
