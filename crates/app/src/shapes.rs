//! The shapes that a new job can have, and new jobs.

use crate::refusal::Refusal;
use crate::views::{LengthStyle, NewJob, Settings, ShapeChoice, ShapeSize};
use crate::wording::capital;
use job::shapes::{ShapeError, ShapeInfo};
use job::{JointRules, LengthUnit};
use picture::{Ink, Part, Picture, Pt, Shape};
use roof::solution::{LineKind, Solution};

/// Side of the picture of a shape, px.
const SIDE: f64 = 100.0;
/// Left free round the plan in the picture, px.
const MARGIN: f64 = 8.0;
/// Only the surface is drawn, so rafters stand as far apart as they may, mm.
const FEW_RAFTERS: f64 = 2000.0;

/// Every shape.
pub(crate) fn choices(settings: Settings) -> Vec<ShapeChoice> {
    job::shapes::shapes().iter().map(|shape| choice(shape, settings)).collect()
}

fn unit(settings: Settings) -> LengthUnit {
    match settings.lengths {
        LengthStyle::FeetInches => LengthUnit::FeetInches,
        LengthStyle::AsJob | LengthStyle::Mm => LengthUnit::Millimetres,
    }
}

fn choice(shape: &ShapeInfo, settings: Settings) -> ShapeChoice {
    let sizes = shape.parameters.iter().map(|size| ShapeSize {
        name: size.name.to_owned(),
        meaning: size.meaning.to_owned(),
        value: job::format_length_bare(size.default_mm, unit(settings)),
    });
    ShapeChoice {
        name: shape.name.to_owned(),
        description: shape.description.to_owned(),
        sizes: sizes.collect(),
        gables: shape.gables,
        picture: picture_of(shape),
    }
}

/// The plan of a shape with the lines of its roof.
fn picture_of(shape: &ShapeInfo) -> Picture {
    let mut picture = Picture { width: SIDE, height: SIDE, spoken: shape.description.to_owned(), parts: Vec::new() };
    let text = job::shapes::new_job(shape.name, shape.name, &[], false).ok();
    if let Some(mut job) = text.and_then(|text| job::read(text).ok()) {
        job.timber.joint = JointRules::NONE_NEEDED;
        job.timber.rafter.centres = FEW_RAFTERS;
        if let Ok(solution) = roof::solve(&job) {
            picture.parts = parts(&solution);
        }
    }
    picture
}

fn parts(solution: &Solution) -> Vec<Part> {
    let rings = || core::iter::once(&solution.plan.corners).chain(&solution.plan.holes);
    let points = || rings().flatten();
    let least = |k: usize| points().map(|p| p[k]).fold(f64::INFINITY, f64::min);
    let most = |k: usize| points().map(|p| p[k]).fold(f64::NEG_INFINITY, f64::max);
    let (low, high) = ([least(0), least(1)], [most(0), most(1)]);
    let wide = (high[0] - low[0]).max(high[1] - low[1]);
    if wide.is_nan() || wide <= 0.0 {
        return Vec::new();
    }
    let scale = (SIDE - 2.0 * MARGIN) / wide;
    let put = |x: f64, y: f64| -> Pt {
        [SIDE / 2.0 + (x - (low[0] + high[0]) / 2.0) * scale, SIDE / 2.0 - (y - (low[1] + high[1]) / 2.0) * scale]
    };
    let ring = |ring: &Vec<[f64; 2]>| ring.iter().map(|p| put(p[0], p[1])).collect::<Vec<Pt>>();
    let mut out = Vec::new();
    for (k, corners) in rings().enumerate() {
        let ink = if k == 0 { Ink::Wood } else { Ink::Ground };
        out.push(Part { ink, name: None, shape: Shape::Area { points: ring(corners) } });
    }
    let inner = solution.lines.iter().filter(|line| !matches!(line.kind, LineKind::Eaves | LineKind::Verge));
    for line in inner {
        let points = vec![put(line.from[0], line.from[1]), put(line.to[0], line.to[1])];
        out.push(Part { ink: Ink::Centre, name: None, shape: Shape::Line { points } });
    }
    for corners in rings() {
        let mut points = ring(corners);
        points.extend(points.first().copied());
        out.push(Part { ink: Ink::Edge, name: None, shape: Shape::Line { points } });
    }
    out
}

/// The text of a new job.
pub(crate) fn new_job(settings: Settings, ask: &NewJob) -> Result<String, Refusal> {
    let mut sizes = Vec::with_capacity(ask.sizes.len());
    for size in &ask.sizes {
        sizes.push((size.name.as_str(), length(&size.name, &size.value)?));
    }
    let text = job::shapes::new_job(&ask.shape, &ask.title, &sizes, ask.gables).map_err(|error| refused(&error))?;
    if unit(settings) == LengthUnit::Millimetres {
        return Ok(text);
    }
    job::edit::set(&text, "units", "feet-inches").map_err(|error| crate::edits::refused(&error))
}

/// A length as typed; a plain number is mm.
fn length(name: &str, typed: &str) -> Result<f64, Refusal> {
    let typed = typed.trim();
    if let Some(mm) = typed.parse::<f64>().ok().filter(|mm| mm.is_finite()) {
        return Ok(mm);
    }
    job::parse_length(typed).map_err(|error| {
        Refusal::new(
            "bad-length",
            format!("{}: {error}", capital(name)),
            "Write mm such as 8400, or a unit such as 8.4 m",
        )
    })
}

fn refused(error: &ShapeError) -> Refusal {
    match error {
        ShapeError::Faults(faults) => Refusal::of_faults(faults),
        other => Refusal::new("shape", capital(&other.to_string()), "Change the size or the shape that is named"),
    }
}
