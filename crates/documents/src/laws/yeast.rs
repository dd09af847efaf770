//! Yeast: warmth, waking, and what hinders it.

use super::{Picture, axis, drawn, line};
use barm_science::setup::{YeastDose, YeastKind};
use barm_science::units::Celsius;
use barm_science::yeast::hindrance::{
    ETHANOL_MOST, HALF_OSMOTIC, ethanol_factor, osmotic_factor, ph_factor,
};
use barm_science::yeast::loss::{SLOW_LOSS, slow_loss_per_min};
use barm_science::yeast::storage::left_by_storage;
use barm_science::yeast::temperature::{TABLE, response};
use barm_science::yeast::waking::{
    D60, DEATH_Z, left_by_cold_wetting, tenfold_kill_min, wake_min,
};

pub(super) fn pictures() -> Vec<Picture> {
    vec![
        warmth(),
        wearing_out(),
        dying(),
        waking(),
        cold(),
        storage(),
        osmotic(),
        ethanol(),
        acid(),
    ]
}

fn warmth() -> Picture {
    let listed = TABLE.iter().map(|(celsius, fact)| (*celsius, fact.value)).collect();
    drawn(
        "yeast-warmth",
        "Pace of yeast against its pace at 30 °C",
        axis("temperature", "°C", 0.0, 60.0),
        axis("pace over that at 30 °C", "1", 0.0, 2.0),
        &[
            line(2, "at once", (0.0, 60.0), |t| response(Celsius(t))),
            line(1, "over 30 min", (0.0, 60.0), over_half_an_hour).beside(listed),
        ],
    )
}

/// The mean of half an hour of yeast that is awake and wears out.
fn over_half_an_hour(celsius: f64) -> f64 {
    let warm = Celsius(celsius);
    let lost: f64 = 30.0 * slow_loss_per_min(warm, SLOW_LOSS.value);
    let mean = if lost > 1e-9 { -(-lost).exp_m1() / lost } else { 1.0 };
    response(warm) * mean
}

fn wearing_out() -> Picture {
    let left = |look, name, minutes: f64| {
        line(look, name, (20.0, 50.0), move |celsius| {
            let lost: f64 = slow_loss_per_min(Celsius(celsius), SLOW_LOSS.value) * minutes;
            100.0 * (-lost).exp()
        })
    };
    drawn(
        "yeast-wears-out",
        "Yeast still at work after half an hour and after two hours of warmth",
        axis("temperature", "°C", 20.0, 50.0),
        axis("still at work", "%", 0.0, 100.0),
        &[left(1, "30 minutes", 30.0), left(2, "2 hours", 120.0)],
    )
}

fn dying() -> Picture {
    let left = |look, name, minutes: f64| {
        line(look, name, (40.0, 60.0), move |celsius| {
            let tenfold = tenfold_kill_min(Celsius(celsius), D60.value, DEATH_Z.value);
            100.0 * 10.0_f64.powf(-minutes / tenfold)
        })
    };
    drawn(
        "yeast-dies",
        "Yeast that survives a stay in hot water",
        axis("temperature", "°C", 40.0, 60.0),
        axis("alive", "%", 0.0, 100.0),
        &[left(1, "1 minute", 1.0), left(2, "5 minutes", 5.0), left(3, "30 minutes", 30.0)],
    )
}

fn cold() -> Picture {
    let of = |look, name, kind| {
        line(look, name, (0.0, 40.0), move |celsius| {
            100.0 * left_by_cold_wetting(Celsius(celsius), kind)
        })
    };
    drawn(
        "yeast-cold",
        "What cold water leaves of dried yeast",
        axis("temperature at wetting", "°C", 0.0, 40.0),
        axis("left for good", "%", 0.0, 100.0),
        &[of(1, "active dry", YeastKind::ActiveDry), of(2, "instant", YeastKind::Instant)],
    )
}

fn waking() -> Picture {
    let of = |look, name, kind| {
        line(look, name, (0.0, 50.0), move |celsius| wake_min(Celsius(celsius), kind))
    };
    drawn(
        "yeast-wakes",
        "Minutes in which two thirds of dried yeast wake up",
        axis("temperature", "°C", 0.0, 50.0),
        axis("time constant of waking", "min", 0.0, 60.0),
        &[of(1, "active dry", YeastKind::ActiveDry), of(2, "instant", YeastKind::Instant)],
    )
}

fn storage() -> Picture {
    let kept = |look, name, stored_celsius, opened| {
        line(look, name, (0.0, 25.0), move |age_months| {
            let fresh = YeastDose::fresh(YeastKind::ActiveDry, 1.0, 0.0);
            100.0
                * left_by_storage(
                    &YeastDose { age_months, stored_celsius, opened, ..fresh },
                    1.0,
                )
        })
    };
    drawn(
        "yeast-stored",
        "Activity that dried yeast keeps",
        axis("months stored", "1", 0.0, 25.0),
        axis("activity kept", "%", 0.0, 100.0),
        &[
            kept(1, "closed, 5 °C", 5.0, false),
            kept(2, "closed, 20 °C", 20.0, false),
            kept(3, "open, 5 °C", 5.0, true),
            kept(4, "open, 20 °C", 20.0, true),
        ],
    )
}

fn osmotic() -> Picture {
    drawn(
        "yeast-sugar-presses",
        "Pace of yeast against all that is dissolved",
        axis("dissolved", "osmol/L", 0.0, 3.0),
        axis("pace over that in water", "1", 0.0, 1.0),
        &[line(1, "pace", (0.0, 3.0), |osmol| osmotic_factor(osmol, HALF_OSMOTIC.value))],
    )
}

fn ethanol() -> Picture {
    drawn(
        "yeast-ethanol",
        "Pace of yeast against ethanol",
        axis("ethanol", "g/L", 0.0, 100.0),
        axis("pace over that without", "1", 0.0, 1.0),
        &[line(1, "pace", (0.0, 100.0), |grams| ethanol_factor(grams, ETHANOL_MOST.value))],
    )
}

fn acid() -> Picture {
    drawn(
        "yeast-acidity",
        "Pace of yeast against acidity",
        axis("pH", "1", 3.0, 9.0),
        axis("pace over the best", "1", 0.0, 1.0),
        &[line(1, "pace", (3.0, 9.0), ph_factor)],
    )
}
