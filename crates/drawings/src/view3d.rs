//! A picture of the frame, seen from afar over its south-west corner.

use roof::solution::Solution;

use crate::facets::{Facet, facets};
use crate::layout::Room;
use crate::order::far_to_near;
use crate::sheet::{Pen, Pt, Role, Sheet};
use crate::vec3::{V3, cross, dot, unit};

/// From the roof towards the eye: mostly from the south, some from the west,
/// and high enough that the rafters of the near slope stand apart.
const EYE: V3 = [-0.46, -0.74, 0.62];
/// From the roof towards the light, over the eye's left shoulder.
const LIGHT: V3 = [-0.75, -0.25, 0.75];
/// Greys from turned away to full light; few, so that print shows them apart.
const GREYS: [u8; 4] = [150, 186, 218, 246];
/// Outlines, mm.
const OUTLINE: f64 = 0.09;

/// A face as it lies on the picture.
struct Painted {
    points: Vec<Pt>,
    drawn: Vec<bool>,
    grey: u8,
}

/// Draws all timbers into a room on a sheet, centred, as large as fits.
pub fn draw(sheet: &mut Sheet, solution: &Solution, room: Room) {
    let faces = paint(solution);
    let points = || faces.iter().flat_map(|f| f.points.iter());
    let span = |axis: usize| {
        points().map(|p| p[axis]).fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
    };
    let ((left, right), (low, high)) = (span(0), span(1));
    let size = ((right - left) / room.w).max((high - low) / room.h);
    if !size.is_finite() || size <= 0.0 {
        return;
    }
    let place = |p: Pt| {
        [
            room.x + room.w / 2.0 + (p[0] - (left + right) / 2.0) / size,
            room.y + room.h / 2.0 - (p[1] - (low + high) / 2.0) / size,
        ]
    };
    let words = format!("The frame in three dimensions: {} timbers.", solution.members.len());
    sheet.part(Role::Figure(words), |sheet| {
        for face in &faces {
            let points: Vec<Pt> = face.points.iter().map(|&p| place(p)).collect();
            outline(sheet, points, &face.drawn, face.grey, Pen::black(OUTLINE));
        }
    });
}

/// Fills a face and draws those of its edges that are lines.
pub fn outline(sheet: &mut Sheet, points: Vec<Pt>, drawn: &[bool], grey: u8, pen: Pen) {
    if drawn.iter().all(|&d| d) {
        sheet.path(points, true, Some(grey), Some(pen));
        return;
    }
    let edges: Vec<(Pt, Pt)> = points
        .iter()
        .zip(points.iter().cycle().skip(1))
        .zip(drawn)
        .filter(|(_, drawn)| **drawn)
        .map(|((&a, &b), _)| (a, b))
        .collect();
    sheet.path(points, true, Some(grey), None);
    for (a, b) in edges {
        sheet.line(a, b, pen);
    }
}

fn paint(solution: &Solution) -> Vec<Painted> {
    let (Some(eye), Some(light)) = (unit(EYE), unit(LIGHT)) else { return Vec::new() };
    let Some(right) = unit(cross([0.0, 0.0, 1.0], eye)) else { return Vec::new() };
    let up = cross(eye, right);
    // Faces that look away are hidden by the rest of their own solid.
    const EDGE_ON: f64 = 1e-6;
    let seen: Vec<Facet> = solution
        .members
        .iter()
        .flat_map(|m| facets(&m.solid, &m.solid.points))
        .filter(|f| dot(f.normal, eye) > EDGE_ON)
        .collect();
    far_to_near(seen, eye)
        .into_iter()
        .map(|f| Painted {
            points: f.points.iter().map(|&p| [dot(p, right), dot(p, up)]).collect(),
            drawn: f.drawn,
            grey: grey(dot(f.normal, light)),
        })
        .collect()
}

/// The grey of a face by the cosine between it and the light.
fn grey(cosine: f64) -> u8 {
    let step = ((cosine + 1.0) / 2.0 * GREYS.len() as f64).max(0.0) as usize;
    GREYS[step.min(GREYS.len() - 1)]
}
