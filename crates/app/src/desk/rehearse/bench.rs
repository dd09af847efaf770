//! One group's device.

use super::Floor;
use super::line::Line;
use super::typed::entry;
use crate::desk::doors::PeriodCodes;
use barm_domain::record::Key;
use barm_domain::rehearsal::{Device, Step};
use serde_json::{Value, json};
use std::sync::atomic::Ordering;

/// Clocks of school devices differ by up to so much (ms); own estimate, no source.
const SKEW_MS: i64 = 90_000;

/// Joins with its codes, then types what the script says when it says so.
pub(super) fn work(floor: &Floor<'_>, codes: &PeriodCodes, device: &Device) {
    join_and_type(floor, codes, device);
    floor.at_work.fetch_sub(1, Ordering::Relaxed);
}

fn join_and_type(floor: &Floor<'_>, codes: &PeriodCodes, device: &Device) {
    let own = codes.groups.iter().find(|(group, _)| *group == device.group);
    let Some((_, own)) = own else { return };
    let mut line = Line::to(floor.drive.port);
    let joined = floor.insist(|| {
        line.get("/join").ok()?;
        let sent = [("period", codes.period.as_str()), ("group", own.as_str())];
        let answer = line.form("/join", &sent).ok()?;
        (answer.status == 303).then_some(())
    });
    if joined.is_none() || line.get("/bench").is_err() {
        return;
    }
    let plan = floor.stage.room.read(|scene| scene.version);
    for step in &device.steps {
        if !floor.until(f64::from(step.at_s)) {
            return;
        }
        send(floor, &mut line, device, step, plan);
    }
}

fn send(floor: &Floor<'_>, line: &mut Line, device: &Device, step: &Step, plan: u32) {
    let skew = skew_ms(floor.stage.seed, device.group);
    let at = floor.stage.clock.now().as_millisecond() - skew;
    let key = Key::new(u64::try_from(at).unwrap_or_default(), step.random).to_string();
    let entry = entry(&key, at, skew, step, plan);
    let body = json!({ "entries": [entry] }).to_string();
    floor.sent.fetch_add(1, Ordering::Relaxed);
    let told = floor.insist(|| {
        let answer = line.script("/bench/entries", &body).ok()?;
        // Anything else is a device that was put out: it stops, as its page does.
        Some((answer.status == 200).then_some(answer.body))
    });
    let said: Value =
        told.flatten().and_then(|body| serde_json::from_str(&body).ok()).unwrap_or_default();
    let names = |list: &str| {
        said[list].as_array().is_some_and(|keys| keys.iter().any(|one| one == key.as_str()))
    };
    if names("saved") {
        floor.saved.fetch_add(1, Ordering::Relaxed);
    } else if names("refused") {
        floor.refused.fetch_add(1, Ordering::Relaxed);
    }
}

/// How far the program's clock is ahead of the device's.
fn skew_ms(seed: u64, group: u32) -> i64 {
    let mixed = (seed ^ u64::from(group)).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 40;
    i64::try_from(mixed).unwrap_or_default() % (2 * SKEW_MS) - SKEW_MS
}
