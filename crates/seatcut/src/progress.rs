//! A sign of life on a terminal while work is long.

use std::io::{self, IsTerminal, Write};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::thread;
use std::time::{Duration, Instant};

/// Work shorter than this says nothing: a line that flashes past helps nobody.
const QUIET: Duration = Duration::from_millis(800);
/// How often the line is renewed.
const RENEW: Duration = Duration::from_secs(1);

/// Does the work; if it takes long and standard error is a terminal, a line
/// there says what is being done and for how long, and is wiped at the end.
pub fn during<T>(what: &str, work: impl FnOnce() -> T) -> T {
    if !io::stderr().is_terminal() {
        return work();
    }
    thread::scope(|scope| {
        let (done, waiting) = mpsc::channel::<()>();
        scope.spawn(move || show_until_done(what, &waiting));
        let result = work();
        drop(done);
        result
    })
}

fn show_until_done(what: &str, waiting: &mpsc::Receiver<()>) {
    let start = Instant::now();
    let mut pause = QUIET;
    let mut shown = false;
    // A terminal that cannot be written to is no reason to stop the work.
    while waiting.recv_timeout(pause) == Err(RecvTimeoutError::Timeout) {
        let _ = write!(io::stderr(), "\r{what} … {} s ", start.elapsed().as_secs());
        (pause, shown) = (RENEW, true);
    }
    if shown {
        let _ = write!(io::stderr(), "\r\x1b[K");
    }
}
