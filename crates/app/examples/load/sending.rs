//! Entries: as fast as devices can, and at a pace.

use crate::Fallible;
use crate::school::Device;
use barm_domain::record::Key;
use jiff::Timestamp;
use serde_json::{Value, json};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// Each part takes so long.
const PART: Duration = Duration::from_secs(15);
/// Entries a second of the paced part: far more than one school types.
const PACE: u64 = 200;

static NUMBER: AtomicU64 = AtomicU64::new(1);

/// Every device sends the next entry when the last is acknowledged.
pub(crate) fn as_fast_as_they_can(devices: &mut [Device]) -> Fallible<()> {
    let took = send_all(devices, None)?;
    let a_second = took.len() as f64 / PART.as_secs_f64();
    println!("as fast as they can: {a_second:.0} entries acknowledged a second");
    Ok(())
}

/// Each device has its own moments, spread evenly over the second.
pub(crate) fn at_a_pace(devices: &mut [Device]) -> Fallible<()> {
    let took = send_all(devices, Some(PACE))?;
    println!(
        "at {:.0} a second: half within {:.1} ms, 99 of 100 within {:.1} ms",
        took.len() as f64 / PART.as_secs_f64(),
        share(&took, 0.5),
        share(&took, 0.99)
    );
    Ok(())
}

/// The time within which this share of all came (ms).
pub(crate) fn share(took: &[Duration], share: f64) -> f64 {
    let mut took = took.to_vec();
    took.sort_unstable();
    let place = (share * took.len() as f64) as usize;
    let at = took.get(place.min(took.len().saturating_sub(1)));
    at.map_or(0.0, |took| took.as_secs_f64() * 1e3)
}

/// Lets every device send for a while; gives how long each acknowledgement took.
fn send_all(devices: &mut [Device], pace: Option<u64>) -> Fallible<Vec<Duration>> {
    let took = Mutex::new(Vec::new());
    let failed = AtomicBool::new(false);
    let start = Instant::now();
    let many = devices.len() as u64;
    thread::scope(|scope| {
        for (place, device) in (0..).zip(devices.iter_mut()) {
            let (took, failed) = (&took, &failed);
            scope.spawn(move || {
                let mut own = Vec::new();
                for turn in 0.. {
                    if let Some(pace) = pace {
                        let at = (turn * many + place) as f64 / pace as f64;
                        let left = Duration::from_secs_f64(at).saturating_sub(start.elapsed());
                        thread::sleep(left);
                    }
                    if start.elapsed() >= PART {
                        break;
                    }
                    let before = Instant::now();
                    if send(device).is_err() {
                        failed.store(true, Ordering::Relaxed);
                        break;
                    }
                    own.push(before.elapsed());
                }
                if let Ok(mut took) = took.lock() {
                    took.extend(own);
                }
            });
        }
    });
    if failed.into_inner() {
        return Err("an entry was not acknowledged".into());
    }
    Ok(took.into_inner().unwrap_or_default())
}

/// Of so many entries of a device one mends the height before it: more often than children do.
const MENDED: u64 = 8;

/// Sends a height, or a correction of the last one, and waits until it is acknowledged.
pub(crate) fn send(device: &mut Device) -> Fallible<()> {
    let turn = device.sent;
    // Between 4 and 30 mm, as bags are, and never twice the same in a row.
    let height_mm = 4.0 + 0.5 * (turn % 53) as f64;
    match device.last {
        Some(of) if turn % MENDED == MENDED - 1 => {
            write(
                device,
                &json!({ "what": "correction", "of": of.to_string(), "mm": height_mm }),
            )?;
        }
        _ => height(device, height_mm)?,
    }
    Ok(())
}

/// Sends a height.
pub(crate) fn height(device: &mut Device, height_mm: f64) -> Fallible<()> {
    let key = write(device, &json!({ "what": "reading", "mm": height_mm }))?;
    device.last = Some(key);
    Ok(())
}

/// Sends one entry about the device's bag and waits until it is acknowledged; gives its key.
fn write(device: &mut Device, what: &Value) -> Fallible<Key> {
    let number = NUMBER.fetch_add(1, Ordering::Relaxed);
    let at = Timestamp::now().as_millisecond();
    let key = Key::new(u64::try_from(at)?, u128::from(number));
    let mut entry = json!({
        "key": key.to_string(), "bag": device.bag.to_string(), "at": at, "offset": 0,
    });
    if let (Some(entry), Some(what)) = (entry.as_object_mut(), what.as_object()) {
        entry.extend(what.clone());
    }
    let body = json!({ "entries": [entry] }).to_string();
    let answer = device.line.script("/bench/entries", &body)?;
    device.sent += 1;
    let said: Value = serde_json::from_str(&answer.body)?;
    let saved = said["saved"].as_array().is_some_and(|all| *all == [json!(key.to_string())]);
    if answer.status == 200 && saved { Ok(key) } else { Err(answer.body.into()) }
}
