//! The height of a ridge, by the pitches of the slopes that meet on it.

use super::Changes;
use super::slopes::{PitchKey, rounded, wall_number};
use crate::opening::Open;
use crate::overview::{Ridge, ridges};
use crate::refusal::Refusal;
use geometry::Angle;
use job::Job;
use job::written::Lengths;

/// A ridge that comes nearer than this to where its slopes start has no slopes, mm.
const LEAST_RISE: f64 = 1.0;

/// A pitch to be set.
struct Wanted {
    key: PitchKey,
    pitch_deg: f64,
}

/// Sets the height of a ridge, mm above the datum of the plates.
pub(super) fn set(open: &Open, id: &str, height: f64, lengths: Lengths) -> Result<Changes, Refusal> {
    let job = open.job.as_ref().map_err(Clone::clone)?;
    let solution = open.solution().map_err(Clone::clone)?;
    let ridge = ridges(solution).into_iter().find(|ridge| ridge.id == id).ok_or_else(|| {
        Refusal::new("no-such-ridge", format!("This roof has no ridge {id}"), "Take hold of one of its ridges")
    })?;
    let mut wanted = Vec::new();
    for letter in ridge.walls.into_iter().flatten() {
        wanted.push(slope(job, wall_number(job, letter)?, &ridge, height)?);
    }
    let shared = shared(job, open, &wanted);
    let steps = shared.as_ref().unwrap_or(&wanted).iter().map(|want| want.key.step(job, want.pitch_deg)).collect();
    Ok(Changes { steps, said: format!("Ridge {id}: {} high", lengths.write_with_unit(height)) })
}

/// The pitch that carries a wall's slope up to the height: its tangent grows
/// as the height above where the slope starts.
fn slope(job: &Job, number: usize, ridge: &Ridge<'_>, height: f64) -> Result<Wanted, Refusal> {
    let wall = &job.walls[number];
    let now = ridge.height();
    let plain = wall.plate + wall.half_hip.unwrap_or(0.0);
    let (key, start, pitch) = match wall.upper {
        Some(upper) if now > wall.plate + upper.from => {
            (PitchKey::WallUpper(number), wall.plate + upper.from, upper.pitch_deg)
        }
        _ => (PitchKey::Wall(number), plain, wall.pitch_deg),
    };
    let (old, new) = (now - start, height - start);
    // Written so that what is not a number fails too.
    if !(old >= LEAST_RISE && new >= LEAST_RISE && new.is_finite()) {
        return Err(Refusal::new(
            "ridge-too-low",
            format!("The slope of wall {} starts above that height", wall.letter),
            "Keep the ridge above the plates, and above where a second pitch starts",
        ));
    }
    let tan = Angle::deg(pitch).tan() * new / old;
    Ok(Wanted { key, pitch_deg: Angle::from_tan(tan).to_deg() })
}

/// The keys of the whole roof, where all slopes follow them and stay alike.
fn shared(job: &Job, open: &Open, wanted: &[Wanted]) -> Option<Vec<Wanted>> {
    let first = wanted.first()?;
    let key = first.key.shared(job, &open.said)?;
    let alike = |want: &Wanted| {
        want.key.shared(job, &open.said) == Some(key) && rounded(want.pitch_deg) == rounded(first.pitch_deg)
    };
    wanted.iter().all(alike).then(|| vec![Wanted { key, pitch_deg: first.pitch_deg }])
}
