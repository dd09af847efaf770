//! Progress of long work, on a terminal only.

use crate::desk::Progress;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use std::sync::Mutex;
use std::time::{Duration, Instant};

/// Work shorter than this shows nothing: a line that flashes by only startles.
const QUIET: Duration = Duration::from_millis(500);

/// A line on the error stream that says what is being done and how far it is.
///
/// On anything but a terminal it stays silent, so that a log holds answers only.
pub(super) struct Line {
    bar: ProgressBar,
    began: Mutex<Option<Instant>>,
}

impl Line {
    pub(super) fn new() -> Self {
        let bar = ProgressBar::with_draw_target(None, ProgressDrawTarget::hidden());
        let style = ProgressStyle::with_template("  {msg} {pos} of {len}");
        if let Ok(style) = style {
            bar.set_style(style);
        }
        Self { bar, began: Mutex::new(None) }
    }
}

impl Progress for Line {
    fn step(&self, doing: &'static str, done: usize, of: usize) {
        let Ok(mut began) = self.began.lock() else { return };
        let since = *began.get_or_insert_with(Instant::now);
        if since.elapsed() < QUIET {
            return;
        }
        if self.bar.is_hidden() {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        self.bar.set_length(of as u64);
        self.bar.set_position(done as u64);
        self.bar.set_message(doing);
    }
}

impl Drop for Line {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
