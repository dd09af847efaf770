//! The teacher's bench, and the bells where nobody else rings them.

use super::Floor;
use super::line::Line;
use crate::desk::doors::key;
use barm_domain::rehearsal::{Device, Does};
use std::sync::atomic::Ordering;
use std::thread;

/// Signs in, rings the first bell if it is asked to, reads the bags of the teacher's bench, and
/// closes the period at its end if it is asked to.
pub(super) fn work(floor: &Floor<'_>, device: Option<&Device>) {
    let stage = floor.stage;
    let mut line = Line::to(floor.drive.port);
    let signed_in = floor.insist(|| {
        line.get("/teacher").ok()?;
        let sent = [("passphrase", stage.passphrase.as_str())];
        (line.form("/teacher", &sent).ok()?.status == 303).then_some(())
    });
    if signed_in.is_none() {
        return;
    }
    let page = stage.run_page();
    if floor.drive.alone && floor.period_s().is_none() {
        // Groups come in before the bell.
        thread::sleep(5 * super::TICK);
        act(floor, &mut line, &page, &[("do", "begin")]);
    }
    for step in device.map(|device| device.steps.as_slice()).unwrap_or_default() {
        if !floor.until(f64::from(step.at_s)) {
            return;
        }
        let bag = step.bag.map(|bag| bag.to_string()).unwrap_or_default();
        floor.sent.fetch_add(1, Ordering::Relaxed);
        let done = match step.does {
            Does::Zero(mm) | Does::Reading(_, mm) => {
                let mm = mm.to_string();
                act(floor, &mut line, &page, &[("do", "write"), ("bag", &bag), ("mm", &mm)])
            }
            Does::Vented => act(floor, &mut line, &page, &[("do", &format!("vented {bag}"))]),
            // The zero reading seals it; the teacher guesses nothing.
            Does::Sealed | Does::Guess(_) | Does::Odd(_) => true,
        };
        if done {
            floor.saved.fetch_add(1, Ordering::Relaxed);
        }
    }
    if floor.drive.alone {
        let end = stage.room.read(|scene| {
            scene.plan.period(&stage.script.period).map(|period| 60.0 * period.length_min)
        });
        let all_done = || floor.at_work.load(Ordering::Relaxed) == 0;
        if floor.until(end.unwrap_or(0.0))
            && floor.insist(|| all_done().then_some(())).is_some()
        {
            act(floor, &mut line, &page, &[("do", "end")]);
        }
    }
}

/// Presses a button of the run page.
fn act(floor: &Floor<'_>, line: &mut Line, page: &str, fields: &[(&str, &str)]) -> bool {
    // The same key however often it is sent, so that it counts once.
    let Ok(key) = key(floor.stage.clock.now()) else { return false };
    let key = key.to_string();
    let mut sent = fields.to_vec();
    sent.push(("key", &key));
    let status = floor.insist(|| {
        line.get(page).ok()?;
        line.form(page, &sent).ok().map(|answer| answer.status)
    });
    status == Some(303)
}
