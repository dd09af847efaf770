//! Wet gas, the film, and what a balance shows.

use super::{Picture, axis, drawn, line};
use barm_science::air::pressure_at;
use barm_science::gas::wet_volume_ml;
use barm_science::permeation::mol_per_m2_s;
use barm_science::units::{Celsius, Pascal};
use barm_science::water::{density_kg_per_m3, vapour_pressure};
use barm_science::weighing::{air_kg_per_m3, shown_g};

pub(super) fn pictures() -> Vec<Picture> {
    vec![altitude(), vapour(), density(), wet_gas(), film(), balance()]
}

/// Pressure by altitude beside rows of the U.S. Standard Atmosphere 1976 (kPa; from memory).
fn altitude() -> Picture {
    const LISTED: [(f64, f64); 4] =
        [(0.0, 101.325), (1000.0, 89.876), (2000.0, 79.501), (3000.0, 70.121)];
    let law = |metres: f64| pressure_at(metres).map_or(f64::NAN, |pressure| 1e-3 * pressure.0);
    drawn(
        "air-pressure",
        "Pressure of the air by altitude",
        axis("altitude", "m", 0.0, 4000.0),
        axis("pressure", "kPa", 60.0, 105.0),
        &[line(1, "air", (0.0, 4000.0), law).beside(LISTED.to_vec())],
    )
}

/// Density of water beside handbook rows (kg/m³; from memory).
fn density() -> Picture {
    const LISTED: [(f64, f64); 4] =
        [(10.0, 999.7), (25.0, 997.05), (40.0, 992.2), (60.0, 983.2)];
    drawn(
        "water-density",
        "Density of water",
        axis("temperature", "°C", 0.0, 80.0),
        axis("density", "kg/m³", 970.0, 1000.0),
        &[line(1, "water", (0.0, 80.0), |t| density_kg_per_m3(Celsius(t)))
            .beside(LISTED.to_vec())],
    )
}

/// Vapour pressure of water beside rows of the IAPWS release on saturation (kPa; from memory).
fn vapour() -> Picture {
    const LISTED: [(f64, f64); 6] = [
        (10.0, 1.228),
        (20.0, 2.339),
        (30.0, 4.247),
        (40.0, 7.385),
        (50.0, 12.35),
        (60.0, 19.95),
    ];
    let law = |celsius: f64| 1e-3 * vapour_pressure(Celsius(celsius)).0;
    drawn(
        "vapour-pressure",
        "Vapour pressure of water",
        axis("temperature", "°C", 0.0, 60.0),
        axis("vapour pressure", "kPa", 0.0, 20.0),
        &[line(1, "water", (0.0, 60.0), law).beside(LISTED.to_vec())],
    )
}

fn wet_gas() -> Picture {
    let at = |look, name, kilopascal: f64| {
        line(look, name, (0.0, 60.0), move |celsius| {
            wet_volume_ml(1e-3, Celsius(celsius), Pascal(1e3 * kilopascal))
        })
    };
    drawn(
        "wet-gas",
        "Room that 1 mmol of carbon dioxide takes with its steam",
        axis("temperature", "°C", 0.0, 60.0),
        axis("wet gas of 1 mmol", "mL", 20.0, 60.0),
        &[at(1, "sea level", 101.325), at(2, "1400 m", 85.6), at(3, "2500 m", 74.7)],
    )
}

fn film() -> Picture {
    let through = |look, name, microns| {
        line(look, name, (0.0, 40.0), move |celsius| {
            // One sandwich bag's face, gas of sea level, an hour.
            let flow = mol_per_m2_s(Celsius(celsius), Pascal(98_000.0), microns);
            flow * 0.165 * 0.149 * 3600.0 * 24_450.0
        })
    };
    drawn(
        "film",
        "Carbon dioxide through one face of a sandwich bag",
        axis("temperature", "°C", 0.0, 40.0),
        axis("lost in an hour", "mL", 0.0, 50.0),
        &[through(1, "thin film, 30 µm", 30.0), through(2, "freezer film, 60 µm", 60.0)],
    )
}

fn balance() -> Picture {
    let seems = |look, name, kilopascal: f64| {
        let air = air_kg_per_m3(Celsius(22.0), Pascal(1e3 * kilopascal), 0.4);
        line(look, name, (0.0, 500.0), move |gas_ml| {
            1e3 * (shown_g(60.0, 60.0, air) - shown_g(60.0, 60.0 + gas_ml, air))
        })
    };
    drawn(
        "balance",
        "How much lighter a closed bag seems as it swells",
        axis("gas in the bag", "mL", 0.0, 500.0),
        axis("seems lighter by", "mg", 0.0, 600.0),
        &[seems(1, "sea level", 101.325), seems(2, "1400 m", 85.6)],
    )
}
