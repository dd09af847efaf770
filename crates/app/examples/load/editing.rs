//! How soon the plan page's forecast follows the last key: the line of what is being edited, its
//! band, and all treatments.

use crate::Fallible;
use crate::line::Line;
use crate::sending::share;
use serde_json::json;
use std::time::{Duration, Instant};

/// Keys that are tried. Each brings an amount that was not tried before.
const KEYS: u32 = 25;
/// What is waited for, in order, with its goal (ms).
const STEPS: [(&str, f64); 3] = [("line", 100.0), ("band", 400.0), ("all", 1000.0)];

/// Measures it on the invented plan, whose page the teacher has open.
pub(crate) fn measure(teacher: &mut Line) -> Fallible<()> {
    let text = include_str!("../../src/demo/plan.toml");
    for (what, field) in [
        ("an amount of one treatment", "question[0].treatment[1].food_amount"),
        ("an amount of all treatments", "base.food_amount"),
    ] {
        let mut took: [Vec<Duration>; 3] = Default::default();
        for key in 0..KEYS {
            let amount = format!("{:.3} g", 0.601 + f64::from(key) / 100.0);
            let mut asked = json!({
                "number": key, "focus": field, "text": text, "fields": [[field, amount]],
            });
            let pressed = Instant::now();
            for ((step, _), took) in STEPS.iter().zip(&mut took) {
                asked["step"] = json!(step);
                let answer = teacher.script("/i/1/plan/forecast", &asked.to_string())?;
                if answer.status != 200 || !answer.body.contains("<svg") {
                    return Err(format!("no forecast: {}", answer.body).into());
                }
                took.push(pressed.elapsed());
            }
        }
        println!("plan page, after a key in {what}:");
        for ((step, goal), took) in STEPS.iter().zip(&took) {
            println!(
                "  {step}: half within {:.0} ms, 99 of 100 within {:.0} ms (goal {goal:.0} ms)",
                share(took, 0.5),
                share(took, 0.99)
            );
        }
    }
    Ok(())
}
