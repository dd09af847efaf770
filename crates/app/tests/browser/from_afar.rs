//! What a teacher reads on the run page while she stands two metres from her screen.

use crate::browser::Browser;
use crate::looks::{DURING, PASSPHRASE, Stage};
use crate::skip;
use serde_json::json;

/// How far away (mm).
const DISTANCE_MM: f64 = 2000.0;

/// Letters that eyes of half the usual sharpness (6/12, 20/40) read: 10 minutes of arc high, twice
/// the 5 minutes of the letters of a chart at 6/6 (ISO 8596 from memory).
const MINUTES_OF_ARC: f64 = 10.0;

/// Screens: width in CSS pixels and in mm. A notebook of 15.6 inches, 16 : 9, is 345 mm wide; a
/// desk screen of 24 inches is 531 mm (geometry). A smaller screen wants the browser's zoom.
const SCREENS: [(u32, f64); 2] = [(1366, 345.0), (1920, 531.0)];

/// The height of a capital as it is drawn (px), of the first thing that a selector finds.
fn capital_px(browser: &Browser, selector: &str) -> f64 {
    let script = format!(
        "const own = getComputedStyle(document.querySelector({}));
         const pen = document.createElement('canvas').getContext('2d');
         pen.font = `${{own.fontWeight}} ${{own.fontSize}} ${{own.fontFamily}}`;
         return pen.measureText('H').actualBoundingBoxAscent;",
        json!(selector)
    );
    browser.run(&script).as_f64().expect("a height")
}

#[test]
fn codes_of_due_bags_and_the_clock_are_read_from_two_metres() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("letters from two metres", why),
    };
    let stage = Stage::new();
    let walk = stage.walk(&browser);
    walk.open("/teacher");
    walk.choose(PASSPHRASE);
    walk.until_it_holds(&format!("/i/{DURING}/run/4"), ".duet .bag");
    browser.run("return document.fonts.ready.then(() => true);");
    let wanted_mm = DISTANCE_MM * (MINUTES_OF_ARC / 60.0).to_radians().tan();
    for (width, screen_mm) in SCREENS {
        browser.size(width, 768);
        for selector in [".duet .bag", ".bellclock"] {
            let mm = capital_px(&browser, selector) * screen_mm / f64::from(width);
            assert!(
                mm >= wanted_mm,
                "{selector} at {width}: {mm:.1} mm, not {wanted_mm:.1} mm"
            );
        }
    }
}
