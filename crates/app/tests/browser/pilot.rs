//! A pilot that is typed on its page: part by part, with the forecast of the plan page narrower for
//! it, and the way back.

use crate::browser::Browser;
use crate::looks::{BEFORE, PASSPHRASE, Stage, Walk};
use crate::school::plan;
use crate::skip;
use barm_domain::bench::tools::TRAPPED_AIR;
use barm_domain::pilot::protocol;
use barm_science::card_height;
use serde_json::json;

/// Ends of the bands on the plan page, from the words beside its charts.
fn widths(walk: &Walk<'_>) -> Vec<f64> {
    walk.open(&format!("/i/{BEFORE}/plan"));
    walk.browser.until(
        "return document.querySelectorAll('#forecast .says p').length > 0
            && document.querySelector('#verdicts li') !== null;",
    );
    let all = walk.browser.run(
        "return [...document.querySelectorAll('#forecast .says p')].flatMap((one) =>
            [...one.textContent.matchAll(/mm \\(([−-]?\\d+) to ([−-]?\\d+)\\)/g)]
                .map(([, low, high]) => Number(high.replace('−', '-')) - Number(low.replace('−', '-'))));",
    );
    let all = all.as_array().expect("a list");
    all.iter().map(|width| width.as_f64().expect("a number")).collect()
}

#[test]
fn spoons_and_syringe_are_typed_and_the_forecast_knows_them() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a pilot that is typed", why),
    };
    let stage = Stage::new();
    let walk = stage.walk(&browser);
    walk.open("/teacher");
    walk.choose(PASSPHRASE);
    let before = widths(&walk);
    let pilot = format!("/i/{BEFORE}/pilot");
    let says = |what: &str| {
        let text = browser.text();
        assert!(text.contains(what), "“{what}” is not in {text}");
    };
    let value = |id: &str| {
        let script =
            "const [id, done] = arguments; done(document.getElementById(id)?.value ?? null);";
        browser.run_later(script, &json!(id))
    };

    // A slip of the pen is said at its field; what else was typed stays.
    walk.open(&pilot);
    says("Forecasts go by what is usual");
    for (at, mass) in ["3.1", "3.2 g", "heavy"].iter().enumerate() {
        walk.set(&format!("#spoon-{at}"), mass);
    }
    walk.set("#syringe-0", "5");
    walk.set("#yeast", "jar of March");
    walk.leave_by("button[value='save spoons']");
    says("Not saved");
    let fault = "return document.getElementById(document.getElementById('spoon-2')
        .getAttribute('aria-describedby')).innerText;";
    let fault = browser.run(fault);
    assert!(fault.as_str().is_some_and(|says| says.contains("heavy")), "{fault}");
    walk.set("#spoon-2", "3.0");
    walk.leave_by("button[value='save spoons']");
    says("Saved. Measured: weighed spoons.");
    assert_eq!(value("syringe-0"), "5", "not saved yet, and not lost");

    // The syringe, by itself.
    let own = plan();
    let syringe = protocol(&own).expect("a pilot").syringe.expect("a syringe");
    let (bag, card) = (&syringe.bag.bag, &syringe.card.card);
    let curve = card_height::prior(bag, card, syringe.water_ml).curve(0.0, 0.0, 1.0);
    for (at, air) in [0.0].iter().chain(&syringe.volumes_ml).enumerate() {
        assert_eq!(value(&format!("syringe-{at}-at")), format!("{air:.0}"));
        let height = 5.0 + curve.rise_mm(air + TRAPPED_AIR.value);
        walk.set(&format!("#syringe-{at}"), &format!("{height:.0} mm"));
    }
    walk.leave_by("button[value='save syringe']");
    says("By your pilot of yeast “jar of March”");
    // What it taught comes by itself, as pictures with words.
    browser.until(
        "const part = document.getElementById('learned');
         return part.querySelector('[data-working]') === null
            && part.querySelectorAll('figure svg').length >= 4;",
    );
    says("gas under a card");
    let after = widths(&walk);
    says("By your pilot of yeast “jar of March”");
    assert_eq!(before.len(), after.len());
    let wide: f64 = before.iter().sum();
    assert!(after.iter().sum::<f64>() < wide, "{before:?} {after:?}");

    // One step back takes the syringe out, and the oldest state is what is usual.
    walk.open(&pilot);
    walk.leave_by("#past > .bd > .btns button");
    says("Lots and sheet are as they were then.");
    assert_eq!(value("syringe-1"), "");
    assert_eq!(value("spoon-0"), "3.1");
    browser.run("document.querySelector('#past details').open = true;");
    walk.leave_by("#past details li:last-child button");
    says("Forecasts go by what is usual");
    assert_eq!(widths(&walk), before);
}
