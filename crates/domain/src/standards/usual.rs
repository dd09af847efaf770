//! The standards that a class practical with yeast can show, and those that it cannot.
//!
//! Sources: Next Generation Science Standards (NGSS Lead States, 2013) with Appendices F and G; Common Core State Standards
//! (NGA Center and CCSSO, 2010). Gists are our own words. Which product shows what is our own judgement, no rule of those who
//! wrote the standards.

use super::{Product, Set, Standard};
use Product::{Analysis, Evidence, FairTest, Readings, Reasoning, Review};
use Set::{Concept, Expectation, Literacy, Mathematics, Practice};

const fn seen(
    set: Set,
    code: &'static str,
    gist: &'static str,
    products: &'static [Product],
) -> Standard {
    Standard { set, code, gist, products, from_memory: false }
}

const fn recalled(
    set: Set,
    code: &'static str,
    gist: &'static str,
    products: &'static [Product],
) -> Standard {
    Standard { set, code, gist, products, from_memory: true }
}

/// Standards that a product of a group can show.
pub const STANDARDS: [Standard; 23] = [
    seen(
        Expectation,
        "MS-LS1-7",
        "say how food is taken apart and put together anew in a living thing, and gives energy or matter to grow",
        &[Reasoning],
    ),
    seen(
        Expectation,
        "MS-PS1-2",
        "decide from what can be seen before and after whether a chemical reaction took place",
        &[Evidence],
    ),
    recalled(
        Practice,
        "SEP1",
        "turn a curiosity into one question that a test can answer, with what is changed and what is measured",
        &[FairTest],
    ),
    recalled(
        Practice,
        "SEP3",
        "plan a test with its variables and controls and how many data it needs; carry it out",
        &[FairTest, Readings],
    ),
    recalled(
        Practice,
        "SEP4",
        "put data into graphs and summaries; find likeness, difference and sources of error",
        &[Analysis],
    ),
    recalled(Practice, "SEP5", "use rates, ratios and units on what was measured", &[Analysis]),
    recalled(
        Practice,
        "SEP6",
        "explain what happened with evidence and a principle of science",
        &[Reasoning],
    ),
    recalled(
        Practice,
        "SEP7",
        "back a claim with evidence, and weigh the claims of others",
        &[Evidence, Review],
    ),
    recalled(
        Practice,
        "SEP8",
        "report what was found in words, tables or graphs",
        &[Evidence, Analysis],
    ),
    recalled(
        Concept,
        "CCC1",
        "find a pattern in data, such as the shape of a rise",
        &[Analysis],
    ),
    recalled(
        Concept,
        "CCC2",
        "tell cause from effect by changing one thing alone",
        &[FairTest, Reasoning],
    ),
    recalled(Concept, "CCC5", "follow matter and energy through a system", &[Reasoning]),
    recalled(Mathematics, "6.SP.A.1", "ask a question whose answers vary", &[FairTest]),
    recalled(
        Mathematics,
        "6.SP.A.3",
        "sum up numbers by one for their center and one for their spread",
        &[Analysis],
    ),
    recalled(
        Mathematics,
        "6.SP.B.4",
        "show numbers as a dot plot, histogram or box plot",
        &[Analysis],
    ),
    seen(
        Mathematics,
        "6.SP.B.5",
        "say how many numbers there are, what was measured and how, their center and spread, and what stands out",
        &[Analysis],
    ),
    recalled(
        Mathematics,
        "7.SP.A.2",
        "see how much samples of the same kind differ by chance",
        &[Analysis],
    ),
    seen(
        Mathematics,
        "7.SP.B.3",
        "compare two sets of numbers by the gap of their centers, in multiples of their spread",
        &[Analysis],
    ),
    recalled(
        Mathematics,
        "7.SP.B.4",
        "use centers and spreads to say how two kinds compare",
        &[Analysis, Evidence],
    ),
    seen(
        Mathematics,
        "8.SP.A.1",
        "draw one measured thing against another and say what pattern shows",
        &[Analysis],
    ),
    recalled(
        Mathematics,
        "8.SP.A.3",
        "say what slope and start of a line mean for what was measured",
        &[Analysis],
    ),
    recalled(
        Literacy,
        "RST.6-8.3",
        "follow a procedure of many steps exactly when measuring",
        &[Readings],
    ),
    recalled(
        Literacy,
        "WHST.6-8.1",
        "argue for a claim with reasons and evidence",
        &[Evidence],
    ),
];

/// Standards that come up beside such a practical and that no product here shows, with the reason.
pub const fn without_product() -> [(&'static str, &'static str); 6] {
    [
        ("MS-LS1-6", "photosynthesis is a partner topic; no bag here makes food"),
        (
            "MS-LS1-1",
            "that yeast is one cell each is told, and seen under a microscope at most",
        ),
        ("SEP2", "a drawing of what happens in the bag is made on paper, and is not kept here"),
        (
            "MS-PS1-5",
            "needs the sealed bag on a scale before and after, which is not kept here",
        ),
        (
            "MS-PS3-4",
            "warm water cools beside the test; no group plans or measures it as a test",
        ),
        (
            "MS-ETS1-4",
            "a second round is the teacher's plan; no design of a group is kept here",
        ),
    ]
}
