//! The rubric that is offered first, in own words: a plan's and a measurement's strands beside claim, evidence and
//! reasoning (K. L. McNeill, J. S. Krajcik (2012), *Supporting Grade 5-8 Students in Constructing Explanations in
//! Science*; practices 3, 4 and 7 of the US Next Generation Science Standards; from memory).

use super::rubric::LEVELS;

/// What the levels are called.
pub(super) const LEVEL_NAMES: [&str; LEVELS] =
    ["beginning", "developing", "meeting", "going further"];

/// Id, name and what the levels look like.
pub(super) const STRANDS: [(&str, &str, [&str; LEVELS]); 8] = [
    (
        "question",
        "Question",
        [
            "no testable question",
            "question names a change or a measurement but not both",
            "question names the one thing changed and the one thing measured",
            "also gives a reasoned prediction with a size or shape",
        ],
    ),
    (
        "plan",
        "Plan",
        [
            "more than one thing changes, or no comparison",
            "one thing changes; what stays the same is not listed, or no repeats",
            "one thing changes, at least three things kept the same, a control and at least 2 bags each",
            "also says how a known nuisance (time, place, person) is spread or kept even",
        ],
    ),
    (
        "data",
        "Data",
        [
            "readings missing or no units",
            "most readings, some late or unit slips not noted",
            "complete table with units, times and notes of anything odd",
            "also gives the reading uncertainty and says which bag is doubtful and why",
        ],
    ),
    (
        "analysis",
        "Analysis",
        [
            "no graph or summary",
            "graph or mean present with a fault",
            "right graph, mean and spread for each treatment",
            "also compares the gap with the spread",
        ],
    ),
    (
        "claim",
        "Claim",
        [
            "no answer, or one the data contradict",
            "answers part of the question",
            "answers the question as asked",
            "also limits the claim to what was tested",
        ],
    ),
    (
        "evidence",
        "Evidence",
        [
            "none or off the point",
            "one number or a vague look",
            "at least two numbers from the table with units",
            "also weighs class data or the doubtful reading",
        ],
    ),
    (
        "reasoning",
        "Reasoning",
        [
            "none",
            "names an idea without linking it",
            "links yeast, food and gas to the result",
            "also rules out another explanation",
        ],
    ),
    (
        "team_safety",
        "Team and safety",
        [
            "unsafe or off task",
            "reminded more than once",
            "safe, shared, tidy",
            "helps others keep the routine",
        ],
    ),
];
