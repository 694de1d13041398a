//! A picture of the frame, seen from afar over its south-west corner.

use roof::solution::{Member, Solution};

use crate::facets::{Facet, facets};
use crate::layout::Room;
use crate::painting::far_to_near;
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
pub struct Painted {
    /// Corners as they are looked at, mm, `y` up.
    pub points: Vec<Pt>,
    /// Whether the edge from each corner to the next is a line.
    pub drawn: Vec<bool>,
    /// The cosine between the face and the light.
    pub light: f64,
    /// Mark of its timber.
    pub mark: String,
}

/// How the frame is looked at.
pub struct Look {
    eye: V3,
    light: V3,
    right: V3,
    up: V3,
}

impl Look {
    /// From over the south-west corner.
    pub fn south_west() -> Option<Self> {
        let (eye, light) = (unit(EYE)?, unit(LIGHT)?);
        let right = unit(cross([0.0, 0.0, 1.0], eye))?;
        Some(Self { eye, light, right, up: cross(eye, right) })
    }

    /// Where a point lies as it is looked at, mm, `y` up.
    pub fn flat(&self, p: V3) -> Pt {
        [dot(p, self.right), dot(p, self.up)]
    }

    /// The faces of all timbers that are seen, from far to near. Any of them may be left out.
    pub fn paint(&self, solution: &Solution) -> Vec<Painted> {
        // Faces that look away are hidden by the rest of their own solid.
        const EDGE_ON: f64 = 1e-6;
        let of = |m: &Member| {
            let named = |f: Facet| Facet { name: m.mark.clone(), ..f };
            facets(&m.solid, &m.solid.points).into_iter().map(named).collect::<Vec<_>>()
        };
        let seen: Vec<Facet> =
            solution.members.iter().flat_map(of).filter(|f| dot(f.normal, self.eye) > EDGE_ON).collect();
        far_to_near(seen, self.eye)
            .into_iter()
            .map(|f| Painted {
                points: f.points.iter().map(|&p| self.flat(p)).collect(),
                drawn: f.drawn,
                light: dot(f.normal, self.light),
                mark: f.name,
            })
            .collect()
    }
}

/// What is looked at, fitted into a room.
#[derive(Clone, Copy)]
pub struct Fit {
    middle: Pt,
    at: Pt,
    size: f64,
}

impl Fit {
    /// As large as fits, in the middle of the room; `None` when there is nothing to fit.
    pub fn of(points: impl Iterator<Item = Pt> + Clone, room: Room) -> Option<Self> {
        let span = |axis: usize| {
            let each = points.clone().map(|p| p[axis]);
            each.fold((f64::INFINITY, f64::NEG_INFINITY), |m, v| (m.0.min(v), m.1.max(v)))
        };
        let ((left, right), (low, high)) = (span(0), span(1));
        let size = ((right - left) / room.w).max((high - low) / room.h);
        let at = [room.x + room.w / 2.0, room.y + room.h / 2.0];
        let middle = [(left + right) / 2.0, (low + high) / 2.0];
        (size.is_finite() && size > 0.0).then_some(Self { middle, at, size })
    }

    /// Where a point that is looked at comes on the sheet.
    pub fn place(&self, p: Pt) -> Pt {
        [self.at[0] + (p[0] - self.middle[0]) / self.size, self.at[1] - (p[1] - self.middle[1]) / self.size]
    }
}

/// Draws all timbers into a room on a sheet, centred, as large as fits.
pub fn draw(sheet: &mut Sheet, solution: &Solution, room: Room) {
    let Some(look) = Look::south_west() else { return };
    let faces = look.paint(solution);
    let Some(fit) = Fit::of(faces.iter().flat_map(|f| f.points.iter().copied()), room) else { return };
    let words = format!("The frame in three dimensions: {} timbers.", solution.members.len());
    sheet.part(Role::Figure(words), |sheet| {
        for face in &faces {
            let points: Vec<Pt> = face.points.iter().map(|&p| fit.place(p)).collect();
            outline(sheet, points, &face.drawn, grey(face.light), Pen::black(OUTLINE));
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

/// The grey of a face by the cosine between it and the light.
fn grey(cosine: f64) -> u8 {
    let step = ((cosine + 1.0) / 2.0 * GREYS.len() as f64).max(0.0) as usize;
    GREYS[step.min(GREYS.len() - 1)]
}
