//! Putting the solution document together.

mod beds;
pub mod firring;
mod marks;
mod notices;
mod surface_out;
mod survey;

pub use marks::{Marks, Numbering, evened, of_timbers as marks_of};

use crate::figures;
use crate::frame::Frame;
use crate::frame::timber::{Timber, TimberId};
use crate::pieces;
use crate::setting_out;
use crate::shape::Shape;
use crate::solution::{FORMAT, Member, Notice, Solution, Totals};
use crate::verify::Bearings;
use geometry::surface::Surface;
use job::{Job, LengthUnit};

/// The document of a checked frame.
pub fn of(
    job: &Job,
    surface: &Surface,
    frame: &Frame,
    shapes: &[Option<Shape>],
    marks: &Marks,
    bearings: &Bearings,
    remarks: Vec<Notice>,
) -> Solution {
    let timbers = &frame.timbers;
    let (ids, mut members): (Vec<TimberId>, Vec<Member>) = marks
        .order
        .iter()
        .filter_map(|k| {
            let shape = shapes[*k].as_ref()?;
            let mut member = figures::of_timber(timbers, *k, shape, &marks.names, &bearings.touches[*k]);
            member.wall.clone_from(&marks.walls[*k]);
            Some((TimberId(*k as u32), member))
        })
        .unzip();
    let pieces = pieces::group(&mut members, job.bench.alike_within);
    let refs: Vec<(TimberId, &Timber, &Member)> =
        ids.iter().zip(&members).map(|(id, m)| (*id, &timbers[id.index()], m)).collect();
    let setting_out = setting_out::strips(job, surface, &refs);
    let faces = surface_out::faces(job, surface);
    let lines = surface_out::lines(job, surface);
    let totals = Totals {
        plan_area_m2: surface_out::plan_area(surface) / 1e6,
        slope_area_m2: faces.iter().map(|f| f.slope_area_m2).sum(),
        rise_mm: surface.nodes.iter().map(|n| n.z).fold(0.0, f64::max),
        upstand_mm: frame.heights.upstand,
        members: members.len() as u32,
        pieces: pieces.len() as u32,
        timber_m3: members.iter().map(|m| m.volume_m3).sum(),
        hangers: 0,
    };
    let notices = notices::of(job, surface, frame, bearings, &refs, remarks);
    Solution {
        format: FORMAT,
        title: job.title.clone(),
        date: job.date.clone(),
        revision: job.revision.clone(),
        region: job.region.clone(),
        show: match job.show {
            LengthUnit::Millimetres => "mm".into(),
            LengthUnit::FeetInches => "feet-inches".into(),
        },
        plan: surface_out::plan(job, surface, &frame.heights),
        faces,
        lines,
        members,
        pieces,
        setting_out,
        gables: Vec::new(),
        openings: Vec::new(),
        totals,
        notices,
    }
}
