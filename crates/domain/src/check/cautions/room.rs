//! Room, crowd, duty and who is in charge (S19, S21, S22, S26, S28).

use super::choices::Choices;
use super::heat::HANDLING_LIMIT_C;
use super::rule::{CautionRule, Said};
use super::wording::list;
use crate::amount::show::both_degrees;
use crate::bench;
use crate::finding::Field;
use crate::plan::{Circumstance, Lies, Plan, Recipe, Variable};

pub(super) const SLIPS: CautionRule = CautionRule {
    code: "S19",
    hazard: "slips on a wet floor",
    trigger: "two periods or more share a day, so that one follows another",
    source: "general practice, no source",
    local: true,
    look: slips,
};

fn slips(choices: &Choices<'_>) -> Option<Said> {
    let plan = choices.plan;
    let follows = plan.periods.iter().enumerate().skip(1).find(|(p, period)| {
        choices.any_bag() && plan.periods[..*p].iter().any(|before| before.day == period.day)
    });
    let (p, _) = follows?;
    let message = "Water spilled by one class can make the next class slip and fall.";
    let fix = "Keep a spill kit at each bench, and a mat and a mop at hand. One person in each group \
               carries water. Look at the floor before the next class comes in.";
    Some(Said::new(message, fix).at(Field(format!("period[{p}].start"))))
}

/// Most students in one laboratory class.
const MOST_STUDENTS: u32 = 24;
/// Room for each person in a combined classroom and laboratory (sq ft).
const ROOM_SQ_FT: u32 = 60;

pub(super) const CROWDING: CautionRule = CautionRule {
    code: "S21",
    hazard: "crowding",
    trigger: "a period has more than 24 students",
    source: "US science teachers' association (NSTA) Safety Advisory Board, Overcrowding in the \
             Instructional Space (2014, revised 2020): 24 students, 60 sq ft each in a combined \
             room or 50 sq ft in a laboratory",
    local: true,
    look: crowding,
};

fn crowding(choices: &Choices<'_>) -> Option<Said> {
    let periods = choices.plan.periods.iter().enumerate();
    let (p, fullest) = periods
        .filter(|(_, period)| period.students > MOST_STUDENTS)
        .max_by_key(|(p, period)| (period.students, std::cmp::Reverse(*p)))?;
    let students = fullest.students;
    let area = students * ROOM_SQ_FT;
    let message = format!(
        "With {students} students, class {} is crowded, and people get hurt more.",
        fullest.name
    );
    let fix = format!(
        "Ask for a second adult. Give everyone a role, let two students at a time fetch things, and \
         start the groups in turn. {students} students need {area} sq ft ({:.0} m²) of room.",
        f64::from(area) * 0.092_903_04
    );
    Some(Said::new(message, fix).at(Field(format!("period[{p}].students"))))
}

pub(super) const DUTY: CautionRule = CautionRule {
    code: "S22",
    hazard: "duty of the employer",
    trigger: "any bag is made",
    source: "29 CFR 1910.1450 and 29 CFR 1910.1200; they cover employees, and students by good \
             practice",
    local: true,
    look: duty,
};

fn duty(choices: &Choices<'_>) -> Option<Said> {
    choices.any_bag().then(|| {
        let mut names: Vec<&str> =
            choices.enzymes.iter().map(|enzyme| enzyme.product.name).collect();
        names.dedup();
        let sheets = if names.is_empty() {
            String::new()
        } else {
            format!(" and the safety data sheet of {}", list(&names))
        };
        Said::new(
            "The school has to keep this work safe, and not the teacher alone.",
            format!("Before the day, read the school's chemical hygiene plan{sheets}."),
        )
    })
}

/// A bag this long and this wide can cover a face (mm): warning labels in US states begin at an
/// opening of 5 in, from memory.
const FACE_MM: f64 = 125.0;

pub(super) const BAG_OVER_FACE: CautionRule = CautionRule {
    code: "S26",
    hazard: "plastic bag over a face",
    trigger: "a bag is larger than 125 mm both ways, the grade is 5 or below, or the plan says that \
              young children are in the room",
    source: "common practice, no source; size from warning labels in US states, from memory",
    local: true,
    look: bag_over_face,
};

fn bag_over_face(choices: &Choices<'_>) -> Option<Said> {
    let large = choices.made.iter().find(|made| {
        let bag = &made.recipe.bag.bag;
        bag.width_mm > FACE_MM && bag.height_mm > FACE_MM
    });
    let young = || {
        let grade = choices.plan.grade <= 5;
        let period = choices.plan.periods.iter().position(|p| p.grade.is_some_and(|g| g <= 5));
        let field = period.map(|p| format!("period[{p}].grade"));
        field.or_else(|| grade.then(|| "grade".to_owned())).map(Field)
    };
    let guests = || choices.circumstance(Circumstance::YoungChildren);
    if !choices.any_bag() {
        return None;
    }
    let at = large.map(|made| made.at(Variable::Bag)).or_else(young).or_else(guests)?;
    let message = "A plastic bag over the face can stop a person, most of all a small child, from breathing.";
    let fix = "Count the bags out and count them back in. Keep them from small children.";
    Some(Said::new(message, fix).at(at))
}

pub(super) const SUBSTITUTE: CautionRule = CautionRule {
    code: "S28",
    hazard: "a substitute in charge",
    trigger: "the plan says that a substitute teaches",
    source: "own rule, after the teacher's duty of care as the US science teachers' association \
             (NSTA) describes it",
    local: true,
    look: substitute,
};

fn substitute(choices: &Choices<'_>) -> Option<Said> {
    let plan = choices.plan;
    let at = choices.circumstance(Circumstance::Substitute)?;
    let hottest = choices.made.iter().map(|made| made.recipe.water_celsius).fold(0.0, f64::max);
    let kettle = plan.equipment.kettles.is_some_and(|count| count > 0);
    let mut drop = Vec::new();
    if hottest > HANDLING_LIMIT_C || kettle {
        drop.push(format!("water above {}", both_degrees(HANDLING_LIMIT_C)));
    }
    if choices.enzymes.iter().any(|enzyme| enzyme.product.dust) {
        drop.push("enzyme powder".to_owned());
    }
    if plan.equipment.meters.is_some_and(|count| count > 0) {
        drop.push("the breath meter".to_owned());
    }
    let fix = if drop.is_empty() {
        "This plan has no very hot water, no enzyme powder and no breath meter: keep it so, and \
         leave a written page."
            .to_owned()
    } else {
        format!("On such a day, leave out {}, and leave a written page.", list(&drop))
    };
    Some(Said::new("A substitute does not know this room and this work as you do.", fix).at(at))
}

/// Treatments that a substitute does not make: with water or a tray above 43 °C, which nobody handles
/// without care, or with enzyme as powder or tablet in the bag.
pub fn not_by_a_substitute(plan: &Plan) -> Vec<&str> {
    let left_out = |recipe: &Recipe| {
        let hot = recipe.water_celsius > HANDLING_LIMIT_C
            || matches!(recipe.lies, Lies::WarmTray(celsius) if celsius > HANDLING_LIMIT_C);
        let dry = || {
            let (Some(id), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) else {
                return false;
            };
            bench::enzyme(id, amount).is_ok_and(|shelf| shelf.product.dust && !shelf.is_stock)
        };
        hot || dry()
    };
    let treatments = plan.treatments().map(|(_, treatment)| treatment);
    treatments
        .filter(|treatment| left_out(&plan.recipe(treatment)))
        .map(|treatment| treatment.name.as_str())
        .collect()
}
