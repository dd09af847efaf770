//! The card on one bag, as it truly stands.

use super::world::LEAK_MM_MIN;

/// One bag with its card.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Card {
    /// Height when it was sealed (mm).
    pub(super) sealed_mm: f64,
    /// Rise at the last reading, if nothing goes wrong (mm).
    pub(super) rise_mm: f64,
    /// τ of its curve (min).
    pub(super) curve_min: f64,
    /// Minute of the last reading.
    pub(super) last_min: f64,
    /// Minutes that it had worked when its clock began.
    pub(super) before_min: f64,
    /// Minute from which its seal leaks.
    pub(super) leaks_from: Option<f64>,
    /// What the slant of the reader's eye adds to every height but the zero reading (mm).
    pub(super) slant_mm: f64,
}

impl Card {
    /// Height at a minute of its own clock (mm), as the eye sees it.
    pub(super) fn height_mm(&self, minute: f64) -> f64 {
        let rise =
            self.rise_mm * rise_share(self.curve_min, self.last_min, minute + self.before_min);
        let lost = self.leaks_from.map_or(0.0, |from| LEAK_MM_MIN * (minute - from).max(0.0));
        let slant = if minute > 0.0 { self.slant_mm } else { 0.0 };
        (self.sealed_mm + (rise - lost).max(0.0) + slant).max(1.0)
    }
}

/// Share of the rise at the last reading that is there at a minute (1).
pub(super) fn rise_share(curve_min: f64, last_min: f64, minute: f64) -> f64 {
    let share = |minute: f64| {
        let times = minute / curve_min;
        -libm::expm1(-times * times)
    };
    share(minute) / share(last_min).max(1e-9)
}

#[cfg(test)]
mod tests {
    use super::Card;

    #[test]
    fn a_card_rises_to_its_rise_and_falls_where_it_leaks() {
        let sound = Card {
            sealed_mm: 8.0,
            rise_mm: 20.0,
            curve_min: 14.0,
            last_min: 24.0,
            before_min: 0.0,
            leaks_from: None,
            slant_mm: 0.0,
        };
        assert!((sound.height_mm(0.0) - 8.0).abs() < 1e-12);
        assert!((sound.height_mm(24.0) - 28.0).abs() < 1e-12);
        let leaks = Card { leaks_from: Some(14.0), ..sound };
        assert!((sound.height_mm(24.0) - leaks.height_mm(24.0) - 9.0).abs() < 1e-12);
        let late = Card { before_min: 4.0, ..sound };
        assert!(late.height_mm(0.0) > 9.0 && late.height_mm(24.0) > 28.0);
    }
}
