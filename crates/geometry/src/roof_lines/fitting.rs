//! Moving corners as little as some relations take: least squares under
//! constraints, solved again as directions turn (Lagrange; Gauss-Newton on the
//! directions).

use super::relations::{Family, Heading, Walls, unit};
use super::{Plates, Relation};
use crate::DVec2;
use nalgebra::linalg::Cholesky;
use nalgebra::{DMatrix, DVector};

/// Most rounds: directions turn by thousandths, so each round gains some
/// three digits.
const MOST_ROUNDS: usize = 25;

/// Relations that miss by less than this hold, mm: a hundredth of what corners
/// are set out to.
const HOLDS: f64 = 1e-5;

/// Part of the mean diagonal that keeps the equations solvable where one
/// relation follows from others; what it leaves is taken up by the next round.
const EASED: f64 = 1e-9;

/// How freely a direction turns: the far end of the longest wall by this many
/// times the variance of a corner, far more than any plan needs.
const TURNS_FREELY: f64 = 100.0;

/// Times that what easing the equations left over is solved for again.
const REFINED: usize = 3;

/// Corners fitted to relations.
pub(super) struct Fitted {
    pub corners: Vec<DVec2>,
    /// For every relation, how hard it pulls, in standard deviations.
    pub strain: Vec<f64>,
    /// Whether all relations hold.
    pub holds: bool,
}

/// One relation as an equation that is to be nought, mm.
struct Row {
    /// Corner, and the change for each mm east and north.
    corners: Vec<(usize, DVec2)>,
    /// Family, and the change for each radian.
    turn: Option<(usize, f64)>,
    value: f64,
}

/// What is being fitted.
pub(super) struct Problem<'a> {
    pub plates: &'a Plates<'a>,
    pub walls: &'a Walls,
    pub headings: &'a [Option<Heading>],
    pub families: &'a [Family],
    /// For every family, whether its direction is held.
    pub held: &'a [bool],
    pub relations: &'a [Relation],
}

impl Problem<'_> {
    /// Moves the corners.
    pub fn fit(&self) -> Fitted {
        let count = self.walls.count();
        let mut corners = self.walls.corners.clone();
        let mut angles: Vec<f64> = self.families.iter().map(|f| f.angle).collect();
        let mut strain = vec![0.0; self.relations.len()];
        let mut holds = self.relations.is_empty();
        for _ in 0..MOST_ROUNDS {
            let rows: Vec<Row> = self.relations.iter().map(|r| self.row(*r, &corners, &angles)).collect();
            holds = rows.iter().all(|row| row.value.abs() < HOLDS);
            if holds {
                break;
            }
            let width = 2 * count + angles.len();
            let (mut matrix, mut wanted) = (DMatrix::zeros(rows.len(), width), DVector::zeros(rows.len()));
            for (k, row) in rows.iter().enumerate() {
                // Towards the corners as measured first, then onto the relation.
                let mut back = 0.0;
                for (corner, change) in &row.corners {
                    matrix[(k, 2 * corner)] += change.x;
                    matrix[(k, 2 * corner + 1)] += change.y;
                    back += change.dot(self.walls.corners[*corner] - corners[*corner]);
                }
                if let Some((family, change)) = row.turn {
                    matrix[(k, 2 * count + family)] = change;
                }
                wanted[k] = row.value + back;
            }
            let longest = (0..count).map(|k| self.walls.length(k)).fold(1.0, f64::max);
            let freedom = DVector::from_fn(width, |k, _| self.freedom(k, longest));
            let mut weighted = matrix.clone();
            for k in 0..width {
                weighted.column_mut(k).scale_mut(freedom[k]);
            }
            let mut normal = &weighted * matrix.transpose();
            let exact = normal.clone();
            let eased = EASED * normal.trace() / normal.nrows() as f64;
            for k in 0..rows.len() {
                normal[(k, k)] += eased;
            }
            let Some(factor) = Cholesky::new(normal) else { break };
            let mut pull = factor.solve(&wanted);
            for _ in 0..REFINED {
                let left = &wanted - &exact * &pull;
                pull += factor.solve(&left);
            }
            let step = weighted.transpose() * &pull;
            for (k, corner) in corners.iter_mut().enumerate() {
                *corner = self.walls.corners[k] - DVec2::new(step[2 * k], step[2 * k + 1]);
            }
            for (k, angle) in angles.iter_mut().enumerate() {
                *angle -= step[2 * count + k];
            }
            for (k, strain) in strain.iter_mut().enumerate() {
                *strain = pull[k].abs() * exact[(k, k)].sqrt();
            }
        }
        Fitted { corners, strain, holds }
    }

    /// How freely an unknown moves: the variance of a corner, mm², or of a
    /// direction in a plan whose longest wall is so long, radians².
    fn freedom(&self, unknown: usize, longest: f64) -> f64 {
        let count = self.walls.count();
        if unknown >= 2 * count {
            return if self.held[unknown - 2 * count] { 0.0 } else { TURNS_FREELY / (longest * longest) };
        }
        let deviation = self.plates.deviations.and_then(|d| d.get(unknown / 2)).copied().unwrap_or(1.0);
        deviation * deviation
    }

    fn row(&self, relation: Relation, corners: &[DVec2], angles: &[f64]) -> Row {
        let along = |wall: usize| {
            let heading = self.headings[wall].unwrap_or(Heading { family: 0, quarters: 0 });
            (heading.family, heading.along(unit(angles[heading.family])))
        };
        let next = |wall: usize| self.walls.next[wall];
        match relation {
            Relation::Squared { wall, .. } => {
                let (family, dir) = along(wall);
                let way = corners[next(wall)] - corners[wall];
                let square = dir.perp();
                Row {
                    corners: vec![(next(wall), square), (wall, -square)],
                    turn: Some((family, -dir.dot(way))),
                    value: square.dot(way),
                }
            }
            Relation::InLine(a, b) => {
                let (family, dir) = along(a);
                let way = corners[b] - corners[a];
                let square = dir.perp();
                Row {
                    corners: vec![(b, square), (a, -square)],
                    turn: Some((family, -dir.dot(way))),
                    value: square.dot(way),
                }
            }
            Relation::Equal(a, b) => {
                let (da, db) = (along(a).1, along(b).1);
                let (wa, wb) = (corners[next(a)] - corners[a], corners[next(b)] - corners[b]);
                Row {
                    corners: vec![(next(a), da), (a, -da), (next(b), -db), (b, db)],
                    turn: None,
                    value: da.dot(wa) - db.dot(wb),
                }
            }
        }
    }
}
