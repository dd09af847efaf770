//! What a class has to talk about: prompts by the shape of its data, ideas, and what is inside its bags.

#[expect(dead_code, reason = "results are tested elsewhere")]
#[path = "../result/class.rs"]
mod class;
mod ideas;
mod inside;
mod prompts;

use barm_domain::plan::Difference;
use class::Class;

pub(crate) const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

/// In each period a group makes one bag of each; rises at minute 24 (mm).
pub(crate) fn class(sugar: [f64; 4], none: [f64; 4]) -> Class {
    let mut class = Class::foods(&PERIODS, &["Sugar"]);
    let bare = Difference { food: Some(None), ..Difference::default() };
    class.plan.controls[0].treatment.difference = bare;
    class.plan.questions[0].treatments[0].difference =
        barm_domain::testing::food("white sugar", "1 g");
    for (at, period) in PERIODS.into_iter().enumerate() {
        for (treatment, rise) in [("Sugar", sugar[at]), ("No food", none[at])] {
            let code = class.add_by(treatment, period, 1);
            class.read(&code, &[(0.0, 0.0), (12.0, rise / 2.0), (24.0, rise)]);
        }
    }
    class
}
