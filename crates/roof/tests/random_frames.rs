//! Random roofs, framed: every one must pass its own check, and few may be
//! refused. The check itself is `roof::verify`, which shares no code with the
//! framing; an `Ok` is a frame with no shared wood and no open contact.

use crate::common::{Seed, random_job};

/// How many roofs; a wider run is `cargo run --release -p roof --example houses`.
const ROOFS: u64 = 400;

/// Refusals allowed among them: eaves that close a notch are refused with
/// reason, and about one roof in a thousand meets a joint that is refused
/// rather than drawn wrong.
const REFUSED: usize = 6;

#[test]
fn random_roofs_are_framed_or_refused_with_a_reason() {
    let mut refused = Vec::new();
    let mut timbers = 0;
    for seed in 1..=ROOFS {
        match roof::solve(&random_job(&mut Seed::new(seed))) {
            Ok(solution) => {
                timbers += solution.members.len();
                assert!(
                    solution.members.iter().all(|m| m.stock_length_mm.is_finite() && m.volume_m3 > 0.0),
                    "seed {seed}"
                );
            }
            Err(e) => {
                assert!(e.to_string().len() > 40, "seed {seed}: a refusal says what to do: {e}");
                refused.push((seed, e.to_string()));
            }
        }
    }
    assert!(refused.len() <= REFUSED, "{refused:#?}");
    assert!(timbers > 100 * 300, "only {timbers} timbers: the generator has gone quiet");
}
