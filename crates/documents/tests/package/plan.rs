//! From a plan and a day's readings to a package and back.

use barm_documents::package::{About, read, write};
use barm_documents::plan_text;
use barm_documents::readings::{self, ReadingsFile};
use barm_domain::plan::Plan;
use barm_domain::shared::{Rule, Shared};

/// The plan and the readings of the demo's invented school.
pub(crate) const PLAN: &[u8] = include_bytes!("../../../app/src/demo/plan.toml");
const READINGS: &[u8] = include_bytes!("../../../app/src/demo/readings.csv");

/// The demo as it is shared, with its plan and what was read of its day.
pub(crate) fn demo() -> (Plan, ReadingsFile, Shared) {
    let plan = plan_text::read(PLAN).plan.expect("the demo plan is sound");
    let day = readings::read(READINGS, &plan);
    let shared = Shared::of(&plan, &day.readings, &day.set_aside, &day.meter);
    let shared = shared.expect("it can be shared");
    (plan, day, shared)
}

/// The package of the demo.
pub(crate) fn package() -> Vec<u8> {
    write(&demo().2, &About { made_up: true, grade: Some(8), ..About::default() })
}

#[test]
fn the_demo_is_shared_without_a_word_of_its_own() {
    let (plan, day, shared) = demo();
    let rows = shared.rows();
    assert_eq!(rows.bags.len(), plan.bags.len());
    assert_eq!(rows.treatments.len(), plan.treatments().count());
    assert!(rows.readings.len() > 100, "{}", rows.readings.len());
    assert!(rows.set_aside.iter().all(|row| row.rule != Rule::Other));
    assert!(!rows.set_aside.is_empty() && !rows.ingredients.is_empty());
    let about = About { made_up: plan.invented, ..About::default() };
    let zip = write(&shared, &about);
    let opened = read(&zip).unwrap();
    assert_eq!((&opened.shared, opened.made_up), (&shared, true));
    // Nothing of what people wrote is in it.
    let all: String = crate::files(&zip)
        .into_values()
        .map(|bytes| String::from_utf8(bytes).unwrap())
        .collect();
    let own = [&plan.title, &plan.big_question].into_iter();
    let own = own.chain(plan.school.iter()).chain(plan.questions.iter().map(|one| &one.asks));
    for words in own.chain(plan.set_aside_rules.iter().map(|rule| &rule.says)) {
        assert!(!all.contains(words.as_str()), "{words}");
    }
    for date in plan.days.iter().map(|day| day.date.to_string()) {
        assert!(!all.contains(&date), "{date}");
    }
    for event in day.readings.iter().filter_map(|reading| reading.event.as_ref()) {
        assert!(!all.contains(&format!(",{event}")), "{event}");
    }
}
