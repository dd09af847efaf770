//! Small pictures for pages, drawn in the look of the charts.

use super::room::run::RunBag;
use super::{Wording, say};
use barm_documents::chart::{BagChart, Frame, Look, Reading, Spark, mark as draw_mark};
use barm_documents::square::Square;

/// The mark of a treatment alone.
pub(crate) fn mark(look: Look, size: f64) -> String {
    draw_mark(look, size, &Frame::screen(size))
}

/// A bag's curve on its forecast; for the teacher only.
pub(crate) fn spark(w: Wording, bag: &RunBag, width: f64, doubtful: bool) -> String {
    let spark = Spark {
        rises: &bag.bag.rises,
        band: &bag.band,
        doubtful,
        to_min: bag.to_min,
        top_mm: bag.top_mm,
    };
    spark.svg(width, &says(w, bag))
}

/// The same large enough to read a height off; for the teacher only.
pub(crate) fn bag_curve(w: Wording, bag: &RunBag, width: f64) -> String {
    let readings: Vec<Reading> = bag
        .bag
        .rises
        .iter()
        .map(|&(minute, rise)| Reading { minute, rise, doubtful: false })
        .collect();
    let chart = BagChart {
        title: &says(w, bag),
        name: &bag.bag.name,
        look: bag.bag.look,
        readings: &readings,
        band: &bag.band,
        last_reading: bag.band.last().map_or(bag.to_min, |(minute, ..)| *minute),
    };
    chart.svg(&Frame::screen(width))
}

/// The same in words.
fn says(w: Wording, bag: &RunBag) -> String {
    let Some((minute, rise)) = bag.bag.rises.last().filter(|_| bag.bag.rises.len() > 1) else {
        return say!(w, "spark-none");
    };
    let near =
        bag.band.iter().min_by(|a, b| (a.0 - minute).abs().total_cmp(&(b.0 - minute).abs()));
    let (rise, minute) = (format!("{rise:.0}"), format!("{minute:.0}"));
    match near {
        Some((_, low, high)) => {
            let (low, high) = (format!("{low:.0}"), format!("{high:.0}"));
            say!(w, "spark-expected", mm = rise, minute = minute, low = low, high = high)
        }
        None => say!(w, "spark-rose", mm = rise, minute = minute),
    }
}

/// A QR code (ISO/IEC 18004) of an address, as large as its place; empty if it is too long for one.
pub(crate) fn qr(text: &str, title: &str) -> String {
    let Some(code) = Square::of(text) else { return String::new() };
    let (side, path) = (code.side(), code.path());
    let title: String = title.chars().filter(|c| !"<>&\"".contains(*c)).collect();
    format!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" class="qr" role="img" viewBox="0 0 {side} {side}" width="160" height="160"><title>{title}</title><rect width="{side}" height="{side}" fill="#FFFFFF"/><path d="{path}" fill="#000000"/></svg>"##
    )
}
