//! What one student gets: the marks of the group, or the teacher's own word for this student.

use super::given::{Basis, Given};
use super::rubric::{LEVELS, Rubric};
use crate::grades::Score;
use crate::roster::Place;

/// The most characters of the teacher's words to one student (own rule: half a page).
pub const MOST_OWN_CHARACTERS: usize = 1000;

/// The teacher's own word for one student, in place of the marks of the group.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnMark {
    /// What the student gets.
    pub score: Score,
    /// The teacher's words; may be blank.
    pub words: String,
}

/// What a group has to show for a student of it.
#[derive(Debug, Clone, Copy, Default)]
pub struct GroupWork<'g> {
    /// What it is given, marked or half marked.
    pub given: Option<&'g Given>,
    /// Whether it handed in a claim.
    pub handed_in: bool,
}

/// What a student gets.
#[derive(Debug, Clone, PartialEq)]
pub struct Graded {
    /// The score.
    pub score: Score,
    /// The teacher's words to this student alone.
    pub words: String,
    /// Remarks on the group's work: name of the strand, words.
    pub remarks: Vec<(String, String)>,
    /// Whether it rests on the class's data.
    pub class_data: bool,
}

/// Why a student gets nothing yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Open {
    /// The group is not marked, or not in full.
    NotMarked,
    /// The teacher gave more points than the rubric has now.
    TooMany,
}

/// Why what was typed is no mark of a student.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum OwnFault {
    /// It is no number of points.
    #[error("“{typed}” is no mark; write 0 to {most}, “missing”, “excused” or nothing")]
    NoPoints {
        /// As it was typed.
        typed: String,
        /// Points that can be got.
        most: usize,
    },
    /// The words are too long.
    #[error(
        "words to a student may have {MOST_OWN_CHARACTERS} characters; these have {characters}"
    )]
    TooLong {
        /// How long they are.
        characters: usize,
    },
    /// There are words but no points.
    #[error(
        "words without a mark of its own are not kept; write points, “missing” or “excused” before them"
    )]
    OnlyWords,
}

impl OwnMark {
    /// Reads a mark as it is typed: points with a point or a comma, `missing`, `excused`; nothing if both are blank.
    ///
    /// # Errors
    /// [`OwnFault`] says what is wrong.
    pub fn read(rubric: &Rubric, typed: &str, words: &str) -> Result<Option<Self>, OwnFault> {
        let (typed, words) = (typed.trim(), words.trim());
        let characters = words.chars().count();
        if characters > MOST_OWN_CHARACTERS {
            return Err(OwnFault::TooLong { characters });
        }
        let score = match typed.to_lowercase().as_str() {
            "" if words.is_empty() => return Ok(None),
            "" => return Err(OwnFault::OnlyWords),
            "missing" => Score::Missing,
            "excused" => Score::Excused,
            number => {
                let most = points_of(rubric);
                let points = number.replace(',', ".").parse::<f64>().ok();
                let points = points.filter(|points| (0.0..=most as f64).contains(points));
                Score::Points(points.ok_or_else(|| {
                    let typed = typed.chars().take(40).collect();
                    OwnFault::NoPoints { typed, most }
                })?)
            }
        };
        Ok(Some(Self { score, words: words.to_owned() }))
    }

    /// The score as [`OwnMark::read`] reads it.
    pub fn typed(&self) -> String {
        match self.score {
            // Without a sign before 0.
            Score::Points(points) => (points + 0.0).to_string(),
            Score::Missing => "missing".to_owned(),
            Score::Excused => "excused".to_owned(),
        }
    }
}

/// Points that a rubric can give: the highest level of every strand.
pub const fn points_of(rubric: &Rubric) -> usize {
    LEVELS * rubric.strands.len()
}

/// What a student gets.
///
/// The teacher's own word for the student goes first. Whoever was away gets nothing of the group's: excused, unless the
/// teacher marked that student, and then on the class's data. Whoever was there gets the group's levels added up, once
/// all are given. Where nothing was handed in and nothing marked, and where there is no group, it is missing.
///
/// # Errors
/// [`Open`] if there is something to mark and it is not marked yet.
pub fn graded(
    rubric: &Rubric,
    place: Place,
    group: GroupWork<'_>,
    own: Option<&OwnMark>,
) -> Result<Graded, Open> {
    let bare =
        |score| Graded { score, words: String::new(), remarks: Vec::new(), class_data: false };
    if let Some(own) = own {
        if matches!(own.score, Score::Points(points) if points > points_of(rubric) as f64) {
            return Err(Open::TooMany);
        }
        let has_points = matches!(own.score, Score::Points(_));
        let group = group.given.filter(|_| has_points && !place.absent);
        return Ok(Graded {
            words: own.words.clone(),
            remarks: group.map(|given| remarks(rubric, given)).unwrap_or_default(),
            class_data: has_points
                && (place.absent || group.is_some_and(|given| given.basis == Basis::ClassData)),
            ..bare(own.score)
        });
    }
    if place.absent {
        return Ok(bare(Score::Excused));
    }
    let work = place.group.map(|_| group).unwrap_or_default();
    let begun = work.given.is_some_and(|given| !given.levels.is_empty());
    match work.given.and_then(|given| Some((given, given.sum(rubric)?))) {
        Some((given, (sum, _))) => Ok(Graded {
            remarks: remarks(rubric, given),
            class_data: given.basis == Basis::ClassData,
            ..bare(Score::Points(sum as f64))
        }),
        None if begun || work.handed_in => Err(Open::NotMarked),
        None => Ok(bare(Score::Missing)),
    }
}

fn remarks(rubric: &Rubric, given: &Given) -> Vec<(String, String)> {
    let of = |strand: &super::Strand| {
        Some((strand.name.clone(), given.remarks.get(&strand.id)?.clone()))
    };
    rubric.strands.iter().filter_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::{GroupWork, Open, OwnFault, OwnMark, graded, points_of};
    use crate::grades::Score;
    use crate::marks::{Basis, Given, Rubric};
    use crate::roster::Place;

    fn marked(level: u8) -> Given {
        let rubric = Rubric::default();
        let mut given = Given::default();
        for strand in &rubric.strands {
            given.mark(&rubric, &strand.id, Some(level)).unwrap();
        }
        given.remark(&rubric, "data", "Fine table").unwrap();
        given.remark(&rubric, "question", "Clear").unwrap();
        given
    }

    const THERE: Place = Place { group: Some(1), absent: false };
    const AWAY: Place = Place { group: Some(1), absent: true };

    fn of(
        place: Place,
        given: Option<&Given>,
        handed_in: bool,
        own: Option<&OwnMark>,
    ) -> Result<Score, Open> {
        graded(&Rubric::default(), place, GroupWork { given, handed_in }, own)
            .map(|one| one.score)
    }

    #[test]
    fn the_group_s_levels_are_added_up_and_its_remarks_go_along() {
        // 8 strands at level 3 of 4.
        let given = marked(3);
        let got = graded(
            &Rubric::default(),
            THERE,
            GroupWork { given: Some(&given), handed_in: true },
            None,
        )
        .unwrap();
        assert_eq!((got.score, got.class_data), (Score::Points(24.0), false));
        assert_eq!(points_of(&Rubric::default()), 32);
        let said = [("Question", "Clear"), ("Data", "Fine table")];
        assert_eq!(got.remarks, said.map(|(name, words)| (name.to_owned(), words.to_owned())));
        let given = Given { basis: Basis::ClassData, ..given };
        let work = GroupWork { given: Some(&given), handed_in: true };
        assert!(graded(&Rubric::default(), THERE, work, None).unwrap().class_data);
    }

    #[test]
    fn whoever_was_away_is_excused_unless_marked_alone() {
        let given = marked(4);
        assert_eq!(of(AWAY, Some(&given), true, None), Ok(Score::Excused));
        let own =
            OwnMark { score: Score::Points(20.0), words: "From the class’s table".into() };
        let work = GroupWork { given: Some(&given), handed_in: true };
        let got = graded(&Rubric::default(), AWAY, work, Some(&own)).unwrap();
        assert_eq!((got.score, got.class_data), (Score::Points(20.0), true));
        // The group's remarks are about work that this student had no part in.
        assert!(got.remarks.is_empty() && got.words == own.words);
    }

    #[test]
    fn what_is_not_marked_yet_is_no_zero() {
        let rubric = Rubric::default();
        let mut half = Given::default();
        half.mark(&rubric, "data", Some(2)).unwrap();
        assert_eq!(of(THERE, Some(&half), false, None), Err(Open::NotMarked));
        assert_eq!(of(THERE, None, true, None), Err(Open::NotMarked));
        assert_eq!(of(THERE, None, false, None), Ok(Score::Missing));
        // A level 0 says that nothing was handed in, and that was marked.
        assert_eq!(of(THERE, Some(&marked(0)), false, None), Ok(Score::Points(0.0)));
    }

    #[test]
    fn without_a_group_nothing_of_a_group_is_given() {
        let given = marked(4);
        assert_eq!(of(Place::default(), Some(&given), true, None), Ok(Score::Missing));
        let own = OwnMark { score: Score::Points(7.5), words: String::new() };
        assert_eq!(of(Place::default(), None, false, Some(&own)), Ok(Score::Points(7.5)));
    }

    #[test]
    fn the_teacher_s_own_word_goes_first() {
        let given = marked(2);
        for score in [Score::Points(31.0), Score::Missing, Score::Excused] {
            let own = OwnMark { score, words: String::new() };
            assert_eq!(of(THERE, Some(&given), true, Some(&own)), Ok(score));
        }
        // A rubric that lost strands since has fewer points to give.
        let mut fewer = Rubric::default();
        fewer.strands.truncate(2);
        let own = OwnMark { score: Score::Points(9.0), words: String::new() };
        let got = graded(&fewer, THERE, GroupWork::default(), Some(&own));
        assert_eq!(got, Err(Open::TooMany));
    }

    #[test]
    fn a_mark_is_read_as_it_is_typed_or_refused() {
        let rubric = Rubric::default();
        let read = |typed: &str, words: &str| OwnMark::read(&rubric, typed, words);
        for (typed, score) in [
            (" 28 ", Score::Points(28.0)),
            ("28,5", Score::Points(28.5)),
            ("0", Score::Points(0.0)),
            ("-0", Score::Points(0.0)),
            ("32", Score::Points(32.0)),
            ("Missing", Score::Missing),
            ("EXCUSED", Score::Excused),
        ] {
            let own = read(typed, " well done ").unwrap().unwrap();
            assert_eq!((own.score, own.words.as_str()), (score, "well done"), "{typed}");
            assert_eq!(read(&own.typed(), "well done").unwrap().unwrap(), own);
        }
        assert_eq!(read(" ", " "), Ok(None));
        for typed in ["32.5", "-1", "NaN", "inf", "1e9", "ten", "12 of 32"] {
            let refused = read(typed, "").unwrap_err();
            assert!(
                matches!(refused, OwnFault::NoPoints { most: 32, .. }),
                "{typed}: {refused}"
            );
        }
        assert_eq!(read("", "only words"), Err(OwnFault::OnlyWords));
        let long = "x".repeat(1001);
        assert_eq!(read("3", &long), Err(OwnFault::TooLong { characters: 1001 }));
    }
}
