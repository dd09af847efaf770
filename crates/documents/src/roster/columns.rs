//! The files that grades go into, and their columns in order.

use super::Version;

/// Heads of `categories.csv`.
pub(super) fn categories(version: Version) -> Vec<&'static str> {
    let heads = ["sourcedId", "status", "dateLastModified", "title"];
    heads.into_iter().chain((version == Version::V1_2).then_some("weight")).collect()
}

/// Heads of `lineItems.csv`: the pieces of work.
pub(super) const fn line_items(version: Version) -> &'static [&'static str] {
    match version {
        Version::V1_1 => &[
            "sourcedId",
            "status",
            "dateLastModified",
            "title",
            "description",
            "assignDate",
            "dueDate",
            "classSourcedId",
            "categorySourcedId",
            "gradingPeriodSourcedId",
            "resultValueMin",
            "resultValueMax",
        ],
        Version::V1_2 => &[
            "sourcedId",
            "status",
            "dateLastModified",
            "title",
            "description",
            "assignDate",
            "dueDate",
            "classSourcedId",
            "categorySourcedId",
            "academicSessionSourcedId",
            "resultValueMin",
            "resultValueMax",
            "schoolSourcedId",
        ],
    }
}

/// Heads of `results.csv`: the grades.
pub(super) fn results(version: Version) -> Vec<&'static str> {
    let old = [
        "sourcedId",
        "status",
        "dateLastModified",
        "lineItemSourcedId",
        "studentSourcedId",
        "scoreStatus",
        "score",
        "scoreDate",
        "comment",
    ];
    let new = ["textScore", "classSourcedId", "inProgress", "incomplete", "late", "missing"];
    let new = new.into_iter().filter(|_| version == Version::V1_2);
    old.into_iter().chain(new).collect()
}

/// Names of all files that a manifest of that version speaks of, without their endings.
pub(super) const fn files(version: Version) -> &'static [&'static str] {
    match version {
        Version::V1_1 => &[
            "academicSessions",
            "categories",
            "classes",
            "classResources",
            "courses",
            "courseResources",
            "demographics",
            "enrollments",
            "lineItems",
            "orgs",
            "resources",
            "results",
            "users",
        ],
        Version::V1_2 => &[
            "academicSessions",
            "categories",
            "classes",
            "classResources",
            "courses",
            "courseResources",
            "demographics",
            "enrollments",
            "lineItemLearningObjectiveIds",
            "lineItems",
            "lineItemScoreScales",
            "orgs",
            "resources",
            "resultLearningObjectiveIds",
            "results",
            "resultScoreScales",
            "roles",
            "scoreScales",
            "userProfiles",
            "userResources",
            "users",
        ],
    }
}
