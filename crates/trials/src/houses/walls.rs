//! What the walls of a house do above their plates.

use super::outlines::Outline;
use crate::Seed;
use core::fmt::Write as _;
use geometry::Angle;

/// What one wall says for itself.
#[derive(Clone, Default)]
pub(super) struct Own {
    pub(super) gable: bool,
    pub(super) half_hip: Option<f64>,
    pub(super) pitch: Option<f64>,
    pub(super) plate: Option<f64>,
}

pub(super) struct Walls {
    pub(super) pitch: f64,
    pub(super) own: Vec<Own>,
    pub(super) overhang: f64,
    pub(super) fixed: bool,
    pub(super) tail: &'static str,
    pub(super) verge: f64,
    pub(super) inset: f64,
}

impl Walls {
    pub(super) fn plain(count: usize, pitch: f64) -> Self {
        let own = vec![Own::default(); count];
        Self { pitch, own, overhang: 300.0, fixed: false, tail: "plumb", verge: 200.0, inset: 0.0 }
    }

    /// The eaves and verges that a house has whatever its plan.
    pub(super) fn edges(&mut self, seed: &mut Seed) {
        self.overhang = seed.of([0.0, 150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 450.0]);
        self.tail = seed.of(["plumb", "plumb", "square", "level"]);
        self.verge = seed.of([0.0, 50.0, 100.0, 150.0, 200.0, 300.0]);
        self.inset = seed.of([0.0, 0.0, 0.0, 50.0]);
    }

    pub(super) fn text(&self) -> String {
        let fascia = if self.fixed { "fixed" } else { "level" };
        let mut text = format!(
            "[roof]\npitch = {}\nverge = {{ overhang = {}, inset = {} }}\n\
             eaves = {{ overhang = {}, fascia = \"{fascia}\", tail = \"{}\", depth = 100 }}\n\n[roof.walls]\n",
            self.pitch, self.verge, self.inset, self.overhang, self.tail
        );
        for (k, own) in self.own.iter().enumerate() {
            let mut keys = Vec::new();
            if own.gable {
                keys.push("gable = true".to_owned());
            }
            let numbers = [("half_hip", own.half_hip), ("pitch", own.pitch), ("plate", own.plate)];
            keys.extend(numbers.iter().filter_map(|(key, value)| value.map(|value| format!("{key} = {value}"))));
            if !keys.is_empty() {
                let _ = writeln!(text, "{} = {{ {} }}", job::wall_letter(k), keys.join(", "));
            }
        }
        text.push('\n');
        text
    }
}

pub(super) fn ordinary(seed: &mut Seed, outline: &Outline, pitch: f64) -> Walls {
    let mut walls = Walls::plain(outline.corners.len(), pitch);
    walls.edges(seed);
    let gables = seed.below(4);
    for (k, width) in &outline.ends {
        let Some(own) = walls.own.get_mut(*k) else { continue };
        match (gables, seed.below(8)) {
            // Gables at every end, at some, or none.
            (0, _) | (1, 0..4) => own.gable = true,
            (2, 0) => {
                let rise = width / 2.0 * Angle::deg(pitch).tan();
                let part = seed.between(0.35, 0.75);
                own.half_hip = Some((rise * part / 50.0).round() * 50.0).filter(|height| *height >= 300.0);
            }
            _ => {}
        }
    }
    if seed.once_in(6) {
        let second = (pitch + seed.of([-7.5, -5.0, -2.5, 2.5, 5.0, 7.5, 10.0])).clamp(20.0, 60.0);
        for own in walls.own.iter_mut().filter(|own| !own.gable) {
            if seed.once_in(3) {
                own.pitch = Some(second);
            }
        }
    }
    if seed.once_in(6) && !outline.wings.is_empty() {
        let wing = seed.below(outline.wings.len() as u64) as usize;
        let plate = seed.stepped(-400.0, 400.0, 50.0);
        for k in outline.wings.get(wing).into_iter().flatten() {
            if let Some(own) = walls.own.get_mut(*k)
                && plate != 0.0
            {
                own.plate = Some(plate);
            }
        }
        walls.fixed = true;
    } else if seed.once_in(25) {
        let k = seed.below(walls.own.len() as u64) as usize;
        if let Some(own) = walls.own.get_mut(k) {
            own.plate = Some(seed.of([-400.0, -300.0, -200.0, -100.0, 100.0, 200.0, 300.0]));
        }
        walls.fixed = true;
    }
    walls
}
