//! The period as a ruler: bell to bell, a tick a minute, the used part filled.

use crate::desk::room::hour::Hour;
use barm_domain::schedule::PhaseKind;
use maud::{Markup, html};

/// The words on it.
pub(super) struct Words {
    /// The whole in a sentence, for those who cannot see it.
    pub(super) says: String,
    /// Before the time of the last bell.
    pub(super) bell: String,
    /// What is done in a phase.
    pub(super) phase: Box<dyn Fn(PhaseKind) -> String>,
}

/// Ink and amber of the look; an SVG cannot name tokens in its attributes.
const INK: &str = "#17233B";
const CRUST: &str = "#B8660A";

/// A phase that takes less of the ruler than this has no room for its word on a phone.
const NARROW: f64 = 0.2;

/// The ruler, `by` times as large as on the desk.
pub(super) fn ruler(hour: &Hour, words: &Words, by: f64) -> Markup {
    let length = hour.length_min.max(1.0);
    let x = |minute: f64| format!("{:.2}%", 0.4 + 99.2 * (minute / length).clamp(0.0, 1.0));
    let f = |units: f64| format!("{:.1}", units * by);
    let now = hour.now_min.map(|now| now.clamp(0.0, length));
    let ticks = 0..=(length.min(480.0) as u32);
    html! {
        svg.pr height=(f(66.0)) role="img" aria-label=(words.says) {
            line x1=".4%" x2="99.6%" y1=(f(40.0)) y2=(f(40.0)) stroke=(INK) stroke-width=(f(2.0)) {}
            @for minute in ticks {
                @let (top, width) = match minute % 10 {
                    0 => (22.0, 1.6),
                    5 => (28.0, 1.6),
                    _ => (34.0, 0.9),
                };
                line x1=(x(f64::from(minute))) x2=(x(f64::from(minute))) y1=(f(40.0)) y2=(f(top))
                    stroke=(INK) stroke-width=(f(width)) {}
            }
            @for phase in &hour.phases {
                @let share = (phase.to_min - phase.from_min) / length;
                @if share > 0.0 {
                    text.wide[share < NARROW] x=(x((phase.from_min + phase.to_min) / 2.0))
                        y=(f(60.0)) text-anchor="middle" { ((words.phase)(phase.kind)) }
                    @if phase.from_min > 0.0 {
                        line x1=(x(phase.from_min)) x2=(x(phase.from_min)) y1=(f(40.0)) y2=(f(62.0))
                            stroke=(INK) stroke-width="1" {}
                    }
                }
            }
            text x=".4%" y=(f(14.0)) { (hour.starts) }
            text x="99.6%" y=(f(14.0)) text-anchor="end" { (words.bell) " " (hour.bell) }
            @if let Some(now) = now {
                rect x=".4%" y=(f(40.0)) height=(f(5.0)) fill=(CRUST)
                    width=(format!("{:.2}%", 99.2 * now / length)) {}
                svg x=(x(now)) overflow="visible" {
                    path fill=(CRUST)
                        d=(format!("M0 {}l{} {}h{}z", f(40.0), f(-7.0), f(-13.0), f(14.0))) {}
                }
                @if (0.06..0.9).contains(&(now / length)) {
                    text x=(x(now)) y=(f(21.0)) text-anchor="middle" font-weight="600" {
                        (hour.now_says)
                    }
                }
            }
            line x1="99.6%" x2="99.6%" y1=(f(18.0)) y2=(f(62.0)) stroke=(INK) stroke-width="1.4" {}
            svg x="99.6%" overflow="visible" {
                line x1=(f(4.0)) x2=(f(4.0)) y1=(f(18.0)) y2=(f(62.0)) stroke=(INK)
                    stroke-width="1.4" {}
            }
        }
    }
}
