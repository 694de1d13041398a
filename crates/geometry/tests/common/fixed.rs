//! The fixed plans of `reference/surface_checks.json`.

use geometry::DVec2;
use geometry::surface::{ProfileStep, Slope, WallProfile};
use serde_json::Value;

/// A plan with its published check values.
pub struct FixedPlan {
    pub name: String,
    pub loops: Vec<Vec<DVec2>>,
    pub walls: Vec<WallProfile>,
    pub expected: Value,
}

/// All plans of the file.
pub fn plans() -> Vec<FixedPlan> {
    let text = include_str!("../../../../reference/surface_checks.json");
    let all: Value = serde_json::from_str(text).expect("surface_checks.json is JSON");
    all["plans"].as_array().expect("a list of plans").iter().map(plan).collect()
}

fn number(v: &Value) -> f64 {
    v.as_f64().expect("a number")
}

fn plan(v: &Value) -> FixedPlan {
    let ring = |r: &Value| -> Vec<DVec2> {
        let corners = r.as_array().expect("a loop").iter();
        corners.map(|c| DVec2::new(number(&c[0]), number(&c[1]))).collect()
    };
    let loops: Vec<Vec<DVec2>> = v["loops_mm"].as_array().expect("loops").iter().map(ring).collect();
    let slope = |pitch: f64| if pitch == 90.0 { Slope::Vertical } else { Slope::Pitch(pitch) };
    let mut walls = Vec::new();
    for (r, ring) in loops.iter().enumerate() {
        for k in 0..ring.len() {
            let key = format!("{r}.{k}");
            let plate = v["plate_height_m_by_edge"].get(&key).map_or(0.0, |h| number(h) * 1000.0);
            let steps = match v["profile_by_edge"].get(&key) {
                // Vertical below the first start height; heights in metres.
                Some(steps) => {
                    let steps = steps.as_array().expect("steps").iter();
                    let mut all: Vec<ProfileStep> = steps
                        .map(|s| ProfileStep { from_height: number(&s[0]) * 1000.0, slope: slope(number(&s[1])) })
                        .collect();
                    if all[0].from_height > plate {
                        all.insert(0, ProfileStep { from_height: plate, slope: Slope::Vertical });
                    }
                    all
                }
                None => {
                    let pitch = v["pitch_by_edge"].get(&key).unwrap_or(&v["default_pitch"]);
                    vec![ProfileStep { from_height: plate, slope: slope(number(pitch)) }]
                }
            };
            walls.push(WallProfile { plate_height: plate, steps });
        }
    }
    FixedPlan { name: v["name"].as_str().expect("a name").to_owned(), loops, walls, expected: v.clone() }
}
