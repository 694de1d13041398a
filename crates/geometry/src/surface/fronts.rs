//! Fronts: how the line of every wall moves inwards as height grows.

use std::collections::BTreeMap;

use super::error::{ProfileFault, SurfaceError};
use super::types::{ProfileStep, RoofPlane, Slope, WallId, WallProfile};
use crate::plan::{FARTHEST, Line};
use crate::{Angle, DVec2};

/// Pitches that a slope may have, degrees: below 5 it is a flat roof, above
/// 80 it is a wall.
pub const PITCH_RANGE: core::ops::RangeInclusive<f64> = 5.0..=80.0;

/// Planes of one pitch and direction that lie closer than this in plan, mm,
/// are one plane. Lines that are meant to be one agree to the last few bits,
/// others are 1 mm apart; this is well between.
const SAME_PLANE: f64 = 0.01;

/// Number of a plane, sloping or upright. Two fronts with one plane join
/// when they meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct PlaneId(pub u32);

/// What a front does from one height up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step {
    /// Height from which it holds, mm.
    pub from: f64,
    /// Horizontal way per height: cot(pitch), 0 when upright.
    pub speed: f64,
    /// `inward · p` of the front at height `from`, mm.
    pub offset: f64,
    /// Pitch, degrees; `None` when upright.
    pub pitch: Option<f64>,
    /// Its plane.
    pub plane: PlaneId,
}

impl Step {
    /// `inward · p` of the front at height `z`, mm.
    pub fn at(&self, z: f64) -> f64 {
        self.offset + self.speed * (z - self.from)
    }

    /// Whether the front slopes, so that a face grows under it.
    pub fn slopes(&self) -> bool {
        self.pitch.is_some()
    }
}

/// A wall line with its steps, the first holding from the lowest plate.
#[derive(Clone, Debug)]
pub(super) struct Front {
    pub dir: DVec2,
    pub inward: DVec2,
    pub steps: Vec<Step>,
}

/// All fronts of a plan and the planes of their steps.
#[derive(Clone, Debug)]
pub(super) struct Fronts {
    pub fronts: Vec<Front>,
    /// For every plane, its face plane, or `None` when it is upright.
    pub planes: Vec<Option<RoofPlane>>,
    /// Height of the lowest plate, mm.
    pub base: f64,
    /// Heights above `base` where some front changes, rising, mm.
    pub changes: Vec<f64>,
}

/// Numbers the profiles so that equal ones have one number.
///
/// # Errors
/// The first profile that cannot be built.
pub(super) fn kinds(profiles: &[WallProfile]) -> Result<Vec<usize>, SurfaceError> {
    let mut seen = BTreeMap::new();
    let mut kinds = Vec::with_capacity(profiles.len());
    for (k, profile) in profiles.iter().enumerate() {
        let wall = WallId(u32::try_from(k).unwrap_or(u32::MAX));
        check(profile).map_err(|fault| SurfaceError::Profile { wall, fault })?;
        // Adding 0.0 makes the two zeros one.
        let mut key = vec![(profile.plate_height + 0.0).to_bits()];
        for step in &profile.steps {
            key.push((step.from_height.max(profile.plate_height) + 0.0).to_bits());
            key.push(match step.slope {
                Slope::Vertical => 0,
                Slope::Pitch(pitch) => pitch.to_bits(),
            });
        }
        let fresh = seen.len();
        kinds.push(*seen.entry(key).or_insert(fresh));
    }
    Ok(kinds)
}

fn check(profile: &WallProfile) -> Result<(), ProfileFault> {
    let sane = |h: f64| h.is_finite() && h.abs() <= FARTHEST;
    if profile.steps.is_empty() {
        return Err(ProfileFault::NoSteps);
    }
    if !sane(profile.plate_height) || !profile.steps.iter().all(|s| sane(s.from_height)) {
        return Err(ProfileFault::Height);
    }
    for step in &profile.steps {
        if let Slope::Pitch(pitch_deg) = step.slope
            && !PITCH_RANGE.contains(&pitch_deg)
        {
            return Err(ProfileFault::Pitch { pitch_deg });
        }
    }
    let falls = profile.steps.windows(2).find(|pair| !matches!(pair, [a, b] if b.from_height > a.from_height));
    match falls {
        Some([_, second]) => Err(ProfileFault::Order { from_height: second.from_height }),
        _ => Ok(()),
    }
}

impl Fronts {
    /// Sets the fronts of all lines going. `profile_of_kind` gives a profile
    /// of each kind that [`kinds`] numbered.
    pub fn new(lines: &[Line], profile_of_kind: &[&WallProfile]) -> Self {
        let base = profile_of_kind.iter().map(|p| p.plate_height).fold(f64::INFINITY, f64::min);
        let mut fronts: Vec<Front> = lines
            .iter()
            .map(|line| {
                let steps = profile_of_kind.get(line.kind).map(|p| steps(p, line.offset, base)).unwrap_or_default();
                Front { dir: line.dir, inward: line.inward, steps }
            })
            .collect();
        let planes = number_planes(&mut fronts);
        let mut changes: Vec<f64> =
            fronts.iter().flat_map(|f| f.steps.iter().map(|s| s.from)).filter(|&z| z > base).collect();
        changes.sort_by(f64::total_cmp);
        changes.dedup();
        Self { fronts, planes, base, changes }
    }
}

/// The steps of one profile in force from the lowest plate up. Below its own
/// plate a wall stands upright; steps that change nothing are left out.
fn steps(profile: &WallProfile, offset: f64, base: f64) -> Vec<Step> {
    let plate = profile.plate_height;
    let below = ProfileStep { from_height: base, slope: Slope::Vertical };
    let first = profile.steps.iter().rposition(|s| s.from_height <= plate).unwrap_or(0);
    let own = profile.steps.iter().skip(first).map(|s| ProfileStep { from_height: s.from_height.max(plate), ..*s });
    let mut steps: Vec<Step> = Vec::with_capacity(profile.steps.len() + 1);
    for step in core::iter::once(below).chain(own) {
        let (pitch, speed) = match step.slope {
            Slope::Vertical => (None, 0.0),
            Slope::Pitch(pitch) => (Some(pitch), 1.0 / Angle::deg(pitch).tan()),
        };
        let offset = steps.last().map_or(offset, |last| last.at(step.from_height));
        match steps.last_mut() {
            Some(last) if last.pitch == pitch => {}
            Some(last) if last.from >= step.from_height => *last = Step { pitch, speed, ..*last },
            _ => steps.push(Step { from: step.from_height, speed, offset, pitch, plane: PlaneId(0) }),
        }
    }
    steps
}

/// Gives every step its plane: equal direction, equal pitch and one place. A
/// plane is described by the lowest of its lines.
fn number_planes(fronts: &mut [Front]) -> Vec<Option<RoofPlane>> {
    let mut all: Vec<(usize, usize)> =
        fronts.iter().enumerate().flat_map(|(f, front)| (0..front.steps.len()).map(move |s| (f, s))).collect();
    let key = |&(f, s): &(usize, usize)| {
        let (dir, step) = (fronts[f].dir, &fronts[f].steps[s]);
        // Adding 0.0 makes the two zeros one.
        [dir.x + 0.0, dir.y + 0.0, step.pitch.unwrap_or(90.0), step.at(0.0)]
    };
    let order = |a: &[f64; 4], b: &[f64; 4]| {
        a.iter().zip(b).map(|(x, y)| x.total_cmp(y)).find(|o| o.is_ne()).unwrap_or(core::cmp::Ordering::Equal)
    };
    all.sort_by(|a, b| order(&key(a), &key(b)).then(a.cmp(b)));
    let keys: Vec<[f64; 4]> = all.iter().map(key).collect();
    let mut planes: Vec<Option<RoofPlane>> = Vec::new();
    let mut first = None::<[f64; 4]>;
    for (&(f, s), key) in all.iter().zip(&keys) {
        let same = first.is_some_and(|g| g[..3] == key[..3] && key[3] - g[3] < SAME_PLANE);
        let front = &mut fronts[f];
        if let (true, Some(Some(RoofPlane { offset, base_height, .. }))) = (same, planes.last_mut())
            && front.steps[s].from < *base_height
        {
            (*offset, *base_height) = (front.steps[s].offset, front.steps[s].from);
        }
        if !same {
            first = Some(*key);
            planes.push(front.steps[s].pitch.map(|pitch_deg| RoofPlane {
                inward: front.inward,
                offset: front.steps[s].offset,
                base_height: front.steps[s].from,
                pitch_deg,
                tan_pitch: Angle::deg(pitch_deg).tan(),
            }));
        }
        front.steps[s].plane = PlaneId(u32::try_from(planes.len() - 1).unwrap_or(u32::MAX));
    }
    planes
}
