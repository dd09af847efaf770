//! The laws of the science as pictures, each computed by the very code that forecasts a bag.
//!
//! They stand in the pages of `docs/science`; `BARM_RENEW=1 cargo test --test laws` draws them anew.

mod bag;
mod cut;
mod eaten;
mod enzyme;
mod gas;
mod label;
mod liquid;
mod meter;
mod yeast;

use crate::chart::{Axis, Frame, LawChart, LawLine, Look};

/// One picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// The name of its file, without an ending.
    pub file: &'static str,
    /// The picture as SVG.
    pub svg: String,
}

/// Width of a picture (CSS pixels).
const WIDTH: f64 = 760.0;

/// All pictures, in the order of the pages that show them.
pub fn pictures() -> Vec<Picture> {
    let all = [
        gas::pictures(),
        liquid::pictures(),
        bag::pictures(),
        label::pictures(),
        yeast::pictures(),
        eaten::pictures(),
        enzyme::pictures(),
        cut::pictures(),
        meter::pictures(),
    ];
    all.into_iter().flatten().collect()
}

fn axis<'a>(name: &'a str, unit: &'a str, from: f64, to: f64) -> Axis<'a> {
    Axis { name, unit, from, to }
}

fn drawn(
    file: &'static str,
    title: &str,
    across: Axis<'_>,
    up: Axis<'_>,
    lines: &[LawLine],
) -> Picture {
    let chart = LawChart { title, across, up, lines };
    Picture { file, svg: chart.svg(&Frame::screen(WIDTH)) }
}

/// A law over `from` to `to`, as one line.
fn line(look: u8, name: &str, (from, to): (f64, f64), law: impl Fn(f64) -> f64) -> LawLine {
    const STEPS: u32 = 120;
    let step = (to - from) / f64::from(STEPS);
    let computed = (0..=STEPS).map(|k| from + f64::from(k) * step).map(|x| (x, law(x)));
    LawLine {
        look: Look(look),
        name: name.to_owned(),
        computed: computed.collect(),
        measured: Vec::new(),
    }
}

impl LawLine {
    /// With what others measured or list of it.
    fn beside(mut self, measured: Vec<(f64, f64)>) -> Self {
        self.measured = measured;
        self
    }
}
