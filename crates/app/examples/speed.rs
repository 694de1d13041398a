//! How long the desk takes natively, to compare with WebAssembly: `speed JOB…` prints, for each job, the least
//! milliseconds of solving it, of opening it and of a nudge of its pitch, as JSON. See `scripts/wasm_speed.mjs`.

use app::Desk;
use std::time::Instant;

/// Each is done so often; the least is what the machine can do undisturbed.
const ROUNDS: usize = 30;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    for path in std::env::args().skip(1) {
        let text = std::fs::read_to_string(&path)?;
        let pitch = job::read(&text)?.pitch_deg;
        let open = serde_json::json!({ "text": text }).to_string();
        let mut desk = Desk::default();
        let job = job::read(&text)?;
        let solved = least(|_| roof::solve(&job).map(drop).map_err(|error| error.to_string()))?;
        let opened = least(|_| desk.call("open", &open).map(drop).map_err(|refusal| refusal.what))?;
        let nudged = least(|round| {
            let pitch = pitch + round as f64 / 100.0;
            let takes = serde_json::json!({ "do": "pitch", "wall": null, "pitch_deg": pitch }).to_string();
            desk.call("nudge", &takes).map(drop).map_err(|refusal| refusal.what)
        })?;
        println!("{}", serde_json::json!({ "job": path, "solve": solved, "open": opened, "nudge": nudged }));
    }
    Ok(())
}

/// The least milliseconds of all rounds.
fn least(mut task: impl FnMut(usize) -> Result<(), String>) -> Result<f64, String> {
    let mut least = f64::INFINITY;
    for round in 0..ROUNDS {
        let start = Instant::now();
        task(round)?;
        least = least.min(start.elapsed().as_secs_f64() * 1000.0);
    }
    Ok(least)
}
