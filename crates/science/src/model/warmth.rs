//! What a bag's temperature alone decides, in every bag alike, read from a table of the laws.

use super::enzyme::Enzyme;
use super::state::{ENZYME_ORDER, ENZYME_PLACES, ENZYMES};
use crate::carbon_dioxide::mol_per_kg_pa;
use crate::enzyme::heat::heat;
use crate::permeation::mol_per_m2_s;
use crate::setup::{EnzymeKind, YeastKind};
use crate::temperature_table::TemperatureTable;
use crate::units::{Celsius, Pascal};
use crate::water::vapour_pressure;
use crate::yeast::loss::slow_loss_per_min;
use crate::yeast::temperature::response;
use crate::yeast::waking::wake_min;
use std::sync::LazyLock;

/// Laws at one temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Warmth {
    /// The temperature (°C).
    pub(super) celsius: Celsius,
    /// [`wake_min`] of active dry yeast (min).
    pub(super) wake_min: f64,
    /// [`slow_loss_per_min`] over its value at 40 °C (1).
    pub(super) slow_loss: f64,
    /// Rate of invertase over that at its reference temperature (1).
    pub(super) invertase: f64,
    /// [`mol_per_kg_pa`], the solubility of carbon dioxide (mol/(kg·Pa)).
    pub(super) mol_per_kg_pa: f64,
    /// [`mol_per_m2_s`] through a micrometre of film at a pascal (mol·µm/(m²·s·Pa)).
    pub(super) through_film: f64,
    /// [`vapour_pressure`] (Pa).
    pub(super) steam: Pascal,
}

static EVERYWHERE: LazyLock<TemperatureTable<6>> = LazyLock::new(|| {
    TemperatureTable::of(|celsius| {
        [
            wake_min(celsius, YeastKind::ActiveDry),
            slow_loss_per_min(celsius, 1.0),
            heat(EnzymeKind::Invertase).rate(celsius),
            mol_per_kg_pa(celsius),
            mol_per_m2_s(celsius, Pascal(1.0), 1.0),
            vapour_pressure(celsius).0,
        ]
    })
});

static RESPONSE: LazyLock<TemperatureTable<1>> =
    LazyLock::new(|| TemperatureTable::of(|celsius| [response(celsius)]));

/// Rate and loss of each kind of enzyme.
static HEAT: LazyLock<[TemperatureTable<2>; ENZYME_PLACES]> = LazyLock::new(|| {
    ENZYME_ORDER.map(|kind| {
        let heat = heat(kind);
        TemperatureTable::of(|celsius| [heat.rate(celsius), heat.loss(celsius)])
    })
});

impl Warmth {
    pub(super) fn of(celsius: Celsius) -> Self {
        let [wake_min, slow_loss, invertase, mol_per_kg_pa, through_film, steam] =
            EVERYWHERE.at(celsius);
        Self {
            celsius,
            wake_min,
            slow_loss,
            invertase,
            mol_per_kg_pa,
            through_film,
            steam: Pascal(steam),
        }
    }
}

/// [`response`] (1).
pub(super) fn response_at(celsius: Celsius) -> f64 {
    RESPONSE.at(celsius)[0]
}

impl Enzyme {
    /// Its rate over that at the reference temperature (1), and what it loses (1/min).
    pub(super) fn warmed(&self, celsius: Celsius) -> [f64; 2] {
        HEAT[self.place - ENZYMES].at(celsius)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Greatest relative difference between tables and laws, read between and on the pieces' ends.
    fn furthest(table: impl Fn(Celsius) -> f64, law: impl Fn(Celsius) -> f64) -> f64 {
        let places = (0..=20_000).map(|i| Celsius(0.005 * f64::from(i)));
        places.map(|celsius| (table(celsius) / law(celsius) - 1.0).abs()).fold(0.0, f64::max)
    }

    /// A tenth of the tightest tolerance at which a bag is followed anywhere. The laws' own rounding,
    /// of a difference of two reciprocal temperatures, is a tenth of this.
    const SAME: f64 = 1e-12;

    #[test]
    fn tables_give_what_the_laws_give() {
        let all = [
            furthest(|t| Warmth::of(t).wake_min, |t| wake_min(t, YeastKind::ActiveDry)),
            furthest(|t| Warmth::of(t).slow_loss, |t| slow_loss_per_min(t, 1.0)),
            furthest(|t| Warmth::of(t).invertase, |t| heat(EnzymeKind::Invertase).rate(t)),
            furthest(|t| Warmth::of(t).mol_per_kg_pa, mol_per_kg_pa),
            furthest(|t| Warmth::of(t).through_film, |t| mol_per_m2_s(t, Pascal(1.0), 1.0)),
            furthest(|t| Warmth::of(t).steam.0, |t| vapour_pressure(t).0),
            furthest(response_at, response),
        ];
        assert!(all.iter().all(|off| *off < SAME), "{all:?}");
    }

    #[test]
    fn tables_of_enzymes_give_what_their_laws_give() {
        for kind in ENZYME_ORDER {
            let (enzyme, heat) = (Enzyme::new(kind, None), heat(kind));
            let rate = furthest(|t| enzyme.warmed(t)[0], |t| heat.rate(t));
            let loss = furthest(|t| enzyme.warmed(t)[1], |t| heat.loss(t));
            assert!(rate < SAME && loss < SAME, "{kind:?}: {rate:e}, {loss:e}");
        }
    }

    #[test]
    fn outside_of_liquid_water_the_ends_hold() {
        for (outside, end) in [(-5.0, 0.0), (130.0, 100.0)] {
            let (outside, end) = (Warmth::of(Celsius(outside)), Warmth::of(Celsius(end)));
            assert!((outside.steam.0 - end.steam.0).abs() < f64::MIN_POSITIVE);
        }
        assert!(Warmth::of(Celsius(f64::NAN)).steam.0.is_nan());
    }
}
