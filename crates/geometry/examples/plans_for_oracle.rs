//! Prints solved random plans as JSON lines for `scripts/oracle_surface.py`,
//! which compares them with an outside library.
//!
//! Plans where the two are not defined alike are left out: parallel fronts
//! that met at unequal pitch, gables beside re-entrant corners, and profiles
//! with more than one step.
//!
//! `cargo run --release -p geometry --example plans_for_oracle -- COUNT SEED [CORNERS]`
//!
//! With CORNERS, ragged rings of that many corners at one pitch instead of houses.

#[path = "../tests/common/plans.rs"]
mod plans;

use std::time::Instant;

use geometry::surface::{Slope, Surface, SurfaceWarning, WallProfile, solve};
use serde_json::json;

fn main() {
    let mut arguments = std::env::args().skip(1).map(|a| a.parse::<u64>().unwrap_or_default());
    let (count, seed) = (arguments.next().unwrap_or(100), arguments.next().unwrap_or(1));
    let corners = arguments.next().map(|n| n as usize);
    let (mut printed, mut number) = (0, 0u64);
    while printed < count {
        let mut dice = plans::Dice::new(seed.wrapping_add(number.wrapping_mul(1_000_003)));
        let plan = match corners {
            None => plans::house(&mut dice),
            Some(n) => {
                let loops = vec![plans::ragged_ring(&mut dice, n)];
                plans::Plan { kind: "ragged ring", loops, walls: vec![WallProfile::slope(0.0, 45.0); n] }
            }
        };
        number += 1;
        let Some(pitches) = pitches(&plan.walls) else { continue };
        let before = Instant::now();
        let Ok(roof) = solve(&plan.loops, &plan.walls) else { continue };
        let milliseconds = before.elapsed().as_secs_f64() * 1e3;
        if comparable(&roof) {
            printed += 1;
            let name = format!("{} {} of seed {seed}", plan.kind, number - 1);
            println!("{}", line(&name, &roof, &pitches, milliseconds));
        }
    }
}

/// One pitch for each wall, 90 for a gable; `None` when there is more to a
/// profile than that.
fn pitches(walls: &[WallProfile]) -> Option<Vec<f64>> {
    let pitch = |wall: &WallProfile| match wall.steps.as_slice() {
        [step] if wall.plate_height == 0.0 => Some(match step.slope {
            Slope::Vertical => 90.0,
            Slope::Pitch(pitch) => pitch,
        }),
        _ => None,
    };
    walls.iter().map(pitch).collect()
}

fn comparable(roof: &Surface) -> bool {
    roof.warnings.iter().all(|w| matches!(w, SurfaceWarning::Regularised { .. }))
}

fn line(name: &str, roof: &Surface, pitches: &[f64], milliseconds: f64) -> serde_json::Value {
    let loops: Vec<Vec<[f64; 2]>> = roof.loops.iter().map(|r| r.iter().map(|p| p.to_array()).collect()).collect();
    let nodes: Vec<[f64; 3]> = roof.nodes.iter().map(|n| n.to_array()).collect();
    let faces: Vec<Vec<u32>> = roof.faces.iter().map(|f| f.outline.iter().map(|n| n.0).collect()).collect();
    // z = a x + b y + c of each face.
    let planes: Vec<[f64; 3]> = roof
        .faces
        .iter()
        .map(|f| {
            let up = f.plane.inward * f.plane.tan_pitch;
            [up.x, up.y, f.plane.height_at(geometry::DVec2::ZERO)]
        })
        .collect();
    json!({
        "name": name, "loops": loops, "pitches": pitches, "nodes": nodes, "faces": faces, "planes": planes,
        "milliseconds": milliseconds,
    })
}
