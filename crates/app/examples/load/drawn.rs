//! How soon a height stands drawn on the teacher's run page in a browser: from the moment at which
//! a device sends it until the frame after the one that shows it begins.

use crate::Fallible;
use crate::browser::Browser;
use crate::school::Device;
use crate::sending::{height, share};
use crate::server::{PASSPHRASE, Server};
use serde_json::{Value, json};
use std::thread;
use std::time::{Duration, SystemTime, UNIX_EPOCH};

/// Heights that are watched, each other than all that the page shows otherwise.
const WATCHED: u32 = 200;
/// Between two of them.
const APART: Duration = Duration::from_millis(400);

/// Notes when each of the heights that are waited for first stands in the page, once it is drawn.
const WATCH: &str = "
    window.drawn = {};
    window.waits = [];
    new MutationObserver(() => {
        const text = document.body.innerText;
        for (const mm of window.waits.filter((mm) => !(mm in window.drawn) && text.includes(`${mm} mm`))) {
            window.drawn[mm] = null;
            requestAnimationFrame(() => requestAnimationFrame(() => { window.drawn[mm] = Date.now(); }));
        }
    }).observe(document.body, { childList: true, subtree: true, characterData: true });";

/// Measures it.
pub(crate) fn measure(server: &Server, devices: &mut [Device]) -> Fallible<()> {
    let profile = tempfile::tempdir()?;
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => {
            println!("run page in a browser: left out, {why}");
            return Ok(());
        }
    };
    let at = |path: &str| format!("http://localhost:{}{path}", server.port);
    browser.open(&at("/teacher"));
    browser
        .run(&format!("document.getElementById('passphrase').value = {};", json!(PASSPHRASE)));
    browser.click("form[action='/teacher'] button");
    browser.until("return location.pathname === '/shelf';");
    browser.open(&at("/i/1/run/1"));
    browser.until("return document.querySelector('.bagname') !== null;");
    browser.run(WATCH);
    let many = devices.len() / 5;
    let mut sent = Vec::new();
    for turn in 0..WATCHED {
        // Tenths that no other height has: neither whole nor a half.
        let tenths = [1, 2, 3, 4, 6, 7, 8, 9][turn as usize % 8];
        let says = format!("{}.{tenths}", 5 + turn / 8);
        browser.run(&format!("window.waits.push('{says}');"));
        let before = now_ms()?;
        height(&mut devices[turn as usize % many], says.parse()?)?;
        sent.push((says, before));
        thread::sleep(APART);
    }
    thread::sleep(Duration::from_secs(2));
    let drawn: Value = browser.run("return window.drawn;");
    let took: Vec<Duration> = sent
        .iter()
        .filter_map(|(says, before)| {
            let ms = drawn[says].as_f64()? - before;
            Some(Duration::from_secs_f64(ms.max(0.0) / 1e3))
        })
        .collect();
    println!(
        "run page drawn in a browser after an entry, {} entries, {} not shown: half within {:.0} ms, 99 of 100 within {:.0} ms",
        took.len(),
        sent.len() - took.len(),
        share(&took, 0.5),
        share(&took, 0.99)
    );
    Ok(())
}

/// The time as the browser on the same computer tells it (ms).
fn now_ms() -> Fallible<f64> {
    Ok(SystemTime::now().duration_since(UNIX_EPOCH)?.as_secs_f64() * 1e3)
}
