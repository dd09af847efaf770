//! Which prompts a shape of data calls for.

use crate::class;
use crate::class::Class;
use barm_domain::discussion::{Prompt, odd_bags, prompts};
use barm_domain::outlook::{Look, Treated, forecast};
use barm_domain::plan::{Plan, SetAsideRule};

fn of(class: &Class) -> Vec<Prompt> {
    let result = class.result();
    prompts(&class.plan, &result, &result.bags, &[])
}

/// The kinds of prompts in their order.
fn kinds(prompts: &[Prompt]) -> Vec<String> {
    let kind = |one: &Prompt| one.key().split('/').next().unwrap_or_default().to_owned();
    prompts.iter().map(kind).collect()
}

#[test]
fn a_clear_class_is_asked_what_made_the_difference() {
    let class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let all = of(&class);
    assert_eq!(kinds(&all), ["see", "clear", "spread", "control", "claim", "next"]);
    assert_eq!(all[0], Prompt::See { bags: 8, minute: 24.0 });
    let Prompt::Clear { treatment, reference, difference_mm } = &all[1] else {
        panic!("{all:?}")
    };
    assert_eq!((treatment.as_str(), reference.as_str()), ("Sugar", "No food"));
    // By hand: means of 14 and 0.75 mm.
    assert!((difference_mm.value - 13.25).abs() < 1e-9, "{difference_mm:?}");
    // By hand: sugar from 13 to 15 mm is the wider of the two.
    let spread =
        Prompt::Spread { treatment: "Sugar".into(), between_mm: (13.0, 15.0), bags: 4 };
    assert!(all.contains(&spread), "{all:?}");
    let control = Prompt::Control { reference: "No food".into(), mean_mm: 0.75 };
    assert!(all.contains(&control), "{all:?}");
}

#[test]
fn bags_that_overlap_are_asked_what_it_would_take() {
    let class = class([14.0, 2.0, 9.0, 6.0], [6.0, 12.0, 1.0, 10.0]);
    let all = of(&class);
    let open = all.iter().find(|one| matches!(one, Prompt::Overlapping { .. }));
    let Some(Prompt::Overlapping { difference_mm, bags, .. }) = open else { panic!("{all:?}") };
    assert_eq!(*bags, (4, 4));
    assert!(difference_mm.low < 0.0 && difference_mm.high > 0.0, "{difference_mm:?}");
    assert!(!kinds(&all).contains(&"clear".to_owned()));
}

/// A flat class is asked what went wrong, and not what it claims.
#[test]
fn a_flat_class_has_nothing_to_claim() {
    let class = class([1.0, 0.0, 2.0, 1.0], [1.0, 1.0, 0.0, 2.0]);
    let all = of(&class);
    assert!(all.contains(&Prompt::Flat { highest_mm: 2.0, readable_mm: 3.0 }), "{all:?}");
    let kinds = kinds(&all);
    for none in ["claim", "clear", "overlapping", "odd"] {
        assert!(!kinds.contains(&none.to_owned()), "{none}: {kinds:?}");
    }
}

#[test]
fn nothing_read_leaves_only_what_comes_next() {
    let class = Class::foods(&["1"], &["Sugar"]);
    assert_eq!(of(&class), [Prompt::Next]);
}

/// One bag of four far off is odd; of two, neither is; and a bag within reach of the others is none.
#[test]
fn an_odd_bag_lies_further_off_than_the_others_differ() {
    for (sugar, odd) in [
        ([14.0, 13.0, 15.0, 4.0], Some(4.0)),
        ([14.0, 13.0, 15.0, 24.0], Some(24.0)),
        // 2 mm below others that differ by 2 mm, and 2.5 mm: less than can be read.
        ([14.0, 13.0, 15.0, 11.0], None),
        ([14.0, 13.0, 15.0, 10.5], None),
    ] {
        let class = class(sugar, [1.0, 0.0, 1.0, 1.0]);
        let result = class.result();
        let found = odd_bags(&result.bags, class.plan.readable_mm);
        assert_eq!(found.first().map(|one| one.rise_mm), odd, "{sugar:?}");
        if let Some(one) = found.first() {
            assert_eq!((one.others_mm, one.period.as_str()), ((13.0, 15.0), "4"));
            // Its own period is asked about it, another is not.
            let of = |period: &str| {
                let own = result.of_period(&class.plan, period);
                kinds(&prompts(&class.plan, &own, &result.bags, &[]))
            };
            assert!(of("4").contains(&"odd".to_owned()));
            assert!(!of("1").contains(&"odd".to_owned()));
        }
    }
    let few = Class::foods(&["1"], &["Sugar"]);
    let mut few = few;
    few.grow("Sugar", "1", 14.0);
    few.grow("Sugar", "1", 2.0);
    assert!(odd_bags(&few.result().bags, 3.0).is_empty());
}

fn forecasts(plan: &Plan) -> Vec<Treated> {
    let look = Look { draws: 32, ..Look::default() };
    plan.treatments().map(|(_, one)| forecast(plan, one, look).expect("a forecast")).collect()
}

/// Sugar is foretold to rise more; bags that clearly say less are asked which of the two to believe.
#[test]
fn a_clear_difference_against_the_forecast_is_reversed() {
    for (sugar, none, reversed) in [
        ([1.0, 0.0, 1.0, 1.0], [14.0, 13.0, 15.0, 14.0], true),
        ([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0], false),
    ] {
        let class = class(sugar, none);
        let forecasts = forecasts(&class.plan);
        let result = class.result();
        let all = prompts(&class.plan, &result, &result.bags, &forecasts);
        let found = all.iter().find_map(|one| match one {
            Prompt::Reversed { foretold_mm, found_mm, .. } => Some((*foretold_mm, *found_mm)),
            _ => None,
        });
        assert_eq!(found.is_some(), reversed, "{all:?}");
        if let Some((foretold, found)) = found {
            assert!(foretold > 0.0 && found.high < 0.0, "{foretold} {found:?}");
        }
    }
}

#[test]
fn bags_that_are_set_aside_are_named_with_their_rule() {
    let mut class = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let rule = SetAsideRule { id: "leak".into(), says: "The bag leaked.".into() };
    class.plan.set_aside_rules = vec![rule];
    let code = class.plan.bags[0].code.clone();
    class.put_aside(&code, "leak");
    let aside = Prompt::SetAside { bags: vec![(code, "leak".into())] };
    assert!(of(&class).contains(&aside));
}

/// Keys stay as they are while numbers move, and no two prompts of a class share one.
#[test]
fn prompts_are_known_again() {
    let before = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    let after = class([16.0, 15.0, 15.0, 14.0], [1.0, 0.0, 2.0, 1.0]);
    let keys = |class: &Class| of(class).iter().map(Prompt::key).collect::<Vec<_>>();
    assert_eq!(keys(&before), keys(&after));
    let mut once = keys(&before);
    once.sort();
    once.dedup();
    assert_eq!(once.len(), keys(&before).len());
}
