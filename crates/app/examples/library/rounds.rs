//! How long second rounds take to be weighed, from the teacher's tap until the page has them.

use crate::Fallible;
use crate::line::Line;
use crate::shelf::Shelf;
use std::time::{Duration, Instant};

/// Has another round proposed to a class in which nothing is clear, so that as much as can be is weighed; with what its
/// day teaches worked out before, and without.
pub(crate) fn measure(shelf: &Shelf, teacher: &mut Line) -> Fallible<()> {
    let path = format!("/i/{}/again", shelf.flat);
    for (by, says) in [
        ("clear-per-bag", "what the day teaches learned on the way"),
        ("clear-per-dollar", "what the day teaches known before"),
    ] {
        teacher.get(&path)?;
        let before = Instant::now();
        teacher.form(&path, &[("by", by)])?;
        let asked = format!("{path}?by={by}");
        let (mut heard, mut steps, mut weighing) = (0, String::new(), None);
        loop {
            let page = teacher.get(&asked)?.body;
            if page.contains("name=\"take\"") {
                break;
            }
            // How far it has come, in the words of the page.
            let told =
                page.split("<p>").find(|part| part.contains("second rounds are weighed"));
            let told = told.and_then(|part| part.split('<').next()).unwrap_or_default();
            if told != steps {
                weighing = weighing.or_else(|| Some(Instant::now()));
                told.clone_into(&mut steps);
                heard += 1;
            }
            if before.elapsed() > Duration::from_secs(300) {
                return Err("no proposals".into());
            }
            std::thread::sleep(Duration::from_millis(20));
        }
        let took = before.elapsed().as_secs_f64();
        let alone = weighing.map_or(0.0, |from| from.elapsed().as_secs_f64());
        println!(
            "second rounds, {says}: {took:.1} s, of it weighing {alone:.1} s; progress told {heard} times, last “{steps}”"
        );
    }
    Ok(())
}
