//! The plan of a sketch as far as it is known.

use super::course::{closed, crossing, gap, in_steps, lay, unit};
use super::reading::{self, Reading};
use crate::views::Sketch;
use geometry::DVec2;
use geometry::survey::{self, Adjusted, Measure, SurveyFault, TAPE_TOLERANCE, TURN_TOLERANCE_DEG};

/// A measured diagonal agrees with square corners when it differs by no more
/// than this many tolerances: its own and that of the walls it spans.
const AGREES_WITHIN: f64 = 2.0;

/// What misses is nothing below this, mm: half of what a tape reads.
pub(super) const NOTHING: f64 = 0.5;

/// The plan of a sketch.
pub(super) struct Plan {
    /// Corners as shown, mm: one for each wall of a closed plan, one more of an open one.
    pub(super) corners: Vec<DVec2>,
    /// The last wall comes back to the first corner.
    pub(super) closed: bool,
    /// The readings of the walls.
    pub(super) walls: Vec<Reading>,
    /// The readings of the diagonals.
    pub(super) diagonals: Vec<Reading>,
    /// The readings of inside angles, by the corner.
    pub(super) turns: Vec<Reading>,
    /// Length of each wall as shown, mm.
    pub(super) lengths: Vec<f64>,
    /// Direction of each wall as drawn.
    pub(super) units: Vec<DVec2>,
    /// By how much the walls miss each other with the directions as drawn, if
    /// that can be told; mm.
    pub(super) gap: Option<DVec2>,
    /// Two walls that cross.
    pub(super) crossing: Option<(usize, usize)>,
    /// What the tape may be out by, mm.
    pub(super) tolerance: f64,
    /// How the corners came about.
    pub(super) known: Known,
}

/// How far the corners are known.
pub(super) enum Known {
    /// Drawn; walls are open, not measured, or cross.
    Drawn,
    /// By walls and directions as drawn; with what a survey still lacks.
    Squared {
        /// Distances that would fix the plan by measurement alone.
        lacks: Vec<(usize, usize)>,
    },
    /// By measurement alone.
    Measured(Box<Adjusted>),
    /// All walls are measured, and give no plan.
    Not(Why),
}

/// Why measured walls give no plan.
pub(super) enum Why {
    /// The readings contradict each other, or say too little.
    Readings(SurveyFault),
    /// The walls miss each other by more than the tape may be out by.
    Gap {
        /// Distances that would fix the plan by measurement alone.
        lacks: Vec<(usize, usize)>,
    },
    /// A diagonal says that the corners are not as drawn.
    Diagonal {
        /// Which.
        number: usize,
        /// How much more it reads than it would, mm.
        more: f64,
        /// Distances that would fix the plan by measurement alone.
        lacks: Vec<(usize, usize)>,
    },
    /// Directions were drawn by eye.
    ByEye {
        /// A wall of which that is so.
        wall: usize,
        /// Distances that would fix the plan by measurement alone.
        lacks: Vec<(usize, usize)>,
    },
}

impl Plan {
    pub(super) fn of(sketch: &Sketch) -> Self {
        let walls: Vec<Reading> = sketch.walls.iter().map(|wall| reading::wall(&wall.tape)).collect();
        let diagonals: Vec<Reading> = sketch.diagonals.iter().map(|line| reading::diagonal(&line.tape)).collect();
        let turns: Vec<Reading> = sketch.walls.iter().map(|wall| reading::turn(&wall.turn)).collect();
        let units: Vec<DVec2> = sketch.walls.iter().map(|wall| unit(wall.heading_deg)).collect();
        let start = sketch.start.map(DVec2::from_array);
        let mut lengths: Vec<f64> =
            walls.iter().zip(&sketch.walls).map(|(read, wall)| read.good().unwrap_or(wall.drawn_mm)).collect();
        let mut missing = None;
        if sketch.closed {
            // Walls that are only drawn follow those that are measured.
            let give: Vec<f64> = walls
                .iter()
                .zip(&lengths)
                .map(|(read, mm)| if read.good().is_some() { 0.0 } else { mm * mm })
                .collect();
            lengths = closed(&units, &lengths, &give);
            missing = Some(gap(&units, &lengths));
            lengths = closed(&units, &lengths, &vec![1.0; lengths.len()]);
        }
        let mut corners = start.map(|start| lay(start, &units, &lengths)).unwrap_or_default();
        if sketch.closed {
            corners.pop();
        }
        let crossing = crossing(&corners, sketch.closed);
        let tolerance = sketch.tolerance_mm.unwrap_or(TAPE_TOLERANCE);
        let mut plan = Self {
            corners,
            closed: sketch.closed,
            walls,
            diagonals,
            turns,
            lengths,
            units,
            gap: missing,
            crossing,
            tolerance,
            known: Known::Drawn,
        };
        plan.know(sketch);
        plan
    }

    /// Finds out how far the corners are known, and puts measured ones in.
    fn know(&mut self, sketch: &Sketch) {
        let Some(survey) = self.survey(sketch) else { return };
        self.known = match survey::adjust(&survey) {
            Ok(adjusted) => {
                self.lay_measured(&adjusted);
                Known::Measured(Box::new(adjusted))
            }
            Err(SurveyFault::UnderMeasured { next }) => self.square(sketch, next),
            Err(fault) => Known::Not(Why::Readings(fault)),
        };
        if self.crossing.is_some() && !matches!(self.known, Known::Measured(_)) {
            self.known = Known::Drawn;
        }
    }

    /// The readings as a survey, once every wall is measured and nothing is typed wrongly.
    fn survey(&self, sketch: &Sketch) -> Option<survey::Survey> {
        let wrong = |list: &[Reading]| list.iter().any(|read| read.fault().is_some());
        if !self.closed || wrong(&self.diagonals) || wrong(&self.turns) {
            return None;
        }
        let sides: Option<Vec<f64>> = self.walls.iter().map(Reading::good).collect();
        let diagonals = sketch.diagonals.iter().zip(&self.diagonals).filter_map(|(line, read)| {
            Some(survey::Diagonal { from: line.from as usize, to: line.to as usize, length: read.good()? })
        });
        let turns = self.turns.iter().enumerate();
        Some(survey::Survey {
            sides: sides?,
            diagonals: diagonals.collect(),
            turns: turns.filter_map(|(corner, read)| Some(survey::Turn { corner, inside_deg: read.good()? })).collect(),
            tolerance: self.tolerance,
            turn_tolerance_deg: TURN_TOLERANCE_DEG,
            inward: Some(self.inward()),
        })
    }

    /// The corners that point into the building, as drawn.
    pub(super) fn inward(&self) -> Vec<usize> {
        let count = self.units.len().max(1);
        let before = |k: usize| self.units.get((k + count - 1) % count);
        let turns_right = |k: usize, unit: &DVec2| before(k).is_some_and(|before| before.perp_dot(*unit) < -NO_TURN);
        self.units.iter().enumerate().filter(|(k, unit)| turns_right(*k, unit)).map(|(k, _)| k).collect()
    }

    /// What directions as drawn are good for, where a survey lacks distances.
    fn square(&self, sketch: &Sketch, lacks: Vec<(usize, usize)>) -> Known {
        let base = sketch.walls.first().map_or(0.0, |wall| wall.heading_deg);
        let by_eye = |wall: &crate::views::SketchWall| !wall.known && !in_steps(wall.heading_deg, base, HALF_SQUARE);
        if let Some(wall) = sketch.walls.iter().position(by_eye) {
            return Known::Not(Why::ByEye { wall, lacks });
        }
        if self.gap.is_some_and(|gap| gap.length() > self.tolerance * self.walls.len() as f64) {
            return Known::Not(Why::Gap { lacks });
        }
        for (number, (line, read)) in sketch.diagonals.iter().zip(&self.diagonals).enumerate() {
            let drawn = self.distance(line.from as usize, line.to as usize);
            if let (Some(read), Some(drawn)) = (read.good(), drawn)
                && (read - drawn).abs() > AGREES_WITHIN * self.tolerance
            {
                return Known::Not(Why::Diagonal { number, more: read - drawn, lacks });
            }
        }
        Known::Squared { lacks }
    }

    /// How far two corners are apart as shown, mm.
    pub(super) fn distance(&self, from: usize, to: usize) -> Option<f64> {
        Some(self.corners.get(from)?.distance(*self.corners.get(to)?))
    }

    /// Puts the corners of a survey where the drawn ones lie: corner 1 on
    /// corner 1, and wall A along wall A.
    fn lay_measured(&mut self, adjusted: &Adjusted) {
        let (Some(start), Some(along)) = (self.corners.first().copied(), self.units.first().copied()) else { return };
        self.corners = adjusted.corners.iter().map(|at| start + along.rotate(*at)).collect();
        self.crossing = None;
        for reading in &adjusted.readings {
            if let Measure::Side(side) = reading.what
                && let Some(length) = self.lengths.get_mut(side)
            {
                *length = reading.adjusted;
            }
        }
    }

    /// How much more the plan reads than a wall or a diagonal, mm; `None`
    /// while that is not known.
    pub(super) fn moved(&self, what: Measure) -> Option<f64> {
        match &self.known {
            Known::Measured(adjusted) => adjusted.readings.iter().find(|read| read.what == what).map(|r| r.residual),
            Known::Squared { .. } => match what {
                Measure::Side(side) => Some(self.lengths.get(side)? - self.walls.get(side)?.good()?),
                Measure::Diagonal(..) | Measure::Turn(_) => None,
            },
            Known::Drawn | Known::Not(_) => None,
        }
    }
}

/// The step of directions that are taken as given, degrees: square or half of it.
pub(super) const HALF_SQUARE: f64 = 45.0;

/// Walls turn when the sine of their turn is greater than this: a hundredth
/// of a degree.
const NO_TURN: f64 = 1.7e-4;
