//! Where everything of a dormer lies, before any of it is built.
//!
//! Places are given along the axis of the main slope (`x`), level inwards from
//! its plate line (`y`) and in height (`z`), mm. The tops of the main rafters
//! are `base + upstand + tan(main) · y` high; those of the dormer's rafters lie
//! its own upstand above the plane through the outer arrises of its plates.

use crate::frame::heights::Heights;
use crate::openings::{Misfit, Slope, start_of};
use geometry::surface::{FaceId, Surface, WallId};
use geometry::{Angle, DVec2, DVec3, Plane};
use job::{Dormer, DormerKind, Job, Section, ValleyAs};

/// Boards under the valleys of dormers of jobs that do not say, mm (common
/// practice: the widest board that is easy to come by).
const LAY_BOARD: Section = Section { thickness: 25.0, depth: 225.0 };

/// Rafters of a dormer run past its plates by at most this much, mm, and by no
/// more than the eaves of the job (common practice).
const MOST_EAVES: f64 = 150.0;

/// Studs in front of a dormer are at least this long, mm: less is no wall.
const LEAST_FRONT: f64 = 200.0;

/// A lean-to dormer is flatter than its slope by at least this much, degrees:
/// at less the heads of its rafters are cut to a long feather.
const LEAST_FLATTER: f64 = 5.0;

/// The plan of a dormer.
#[derive(Clone, Debug)]
pub struct Layout {
    /// Its roof.
    pub kind: DormerKind,
    /// The wall it is measured from.
    pub wall: WallId,
    /// The face it stands on.
    pub face: FaceId,
    /// The slope of that face.
    pub slope: Slope,
    /// Outsides of its cheeks.
    pub x: [f64; 2],
    /// Outside of its front.
    pub front: f64,
    /// Top of its plates.
    pub plates: f64,
    /// Its pitch.
    pub tan: f64,
    /// Cosine of its pitch.
    pub cos: f64,
    /// Sine of its pitch.
    pub sin: f64,
    /// Plumb height of its rafters' tops above its pitch planes.
    pub upstand: f64,
    /// Overhang of its rafters past its plates.
    pub eaves: f64,
    /// Rafters.
    pub rafter: Section,
    /// Greatest centres of rafters.
    pub centres: f64,
    /// Plates: height and width, as the job's wall plates.
    pub plate: Section,
    /// Lay boards: thickness and width.
    pub board: Section,
    /// Ridge board.
    pub ridge: Section,
}

impl Layout {
    /// Lay a dormer out.
    ///
    /// # Errors
    /// When its sizes do not make one, wherever it stands in its slope.
    pub fn of(job: &Job, surface: &Surface, heights: &Heights, dormer: &Dormer) -> Result<Self, Misfit> {
        let face = surface.face_of_wall.get(dormer.wall).copied().flatten().ok_or(Misfit::NoSlope)?;
        let start = start_of(surface, dormer.wall).ok_or(Misfit::NoSlope)?;
        let sizes = [dormer.along, dormer.back, dormer.width, dormer.plate, dormer.pitch_deg];
        let pitched = dormer.pitch_deg > 0.0 && dormer.pitch_deg < 90.0;
        if !(sizes.iter().all(|v| v.is_finite()) && pitched && dormer.width > 0.0) {
            return Err(Misfit::NoSize);
        }
        if dormer.valley == ValleyAs::Rafter {
            return Err(Misfit::ValleyRafters);
        }
        let slope = Slope::new(surface.face(face).plane, heights.upstand);
        let timber = &job.timber;
        let pitch = Angle::deg(dormer.pitch_deg);
        let near = slope.axis.dot(start) + dormer.along;
        let layout = Self {
            kind: dormer.kind,
            wall: WallId(dormer.wall as u32),
            face,
            slope,
            x: [near, near + dormer.width],
            front: dormer.back,
            plates: slope.plane.base_height + dormer.plate,
            tan: pitch.tan(),
            cos: pitch.cos(),
            sin: pitch.sin(),
            upstand: (timber.rafter.size.depth - timber.rafter.birdsmouth) / pitch.cos(),
            eaves: job.eaves.overhang.min(MOST_EAVES),
            rafter: timber.rafter.size,
            centres: timber.rafter.centres,
            plate: timber.plate,
            board: timber.parts.lay_board.unwrap_or(LAY_BOARD),
            ridge: timber.ridge.size,
        };
        layout.check(dormer)?;
        Ok(layout)
    }

    fn check(&self, dormer: &Dormer) -> Result<(), Misfit> {
        let main = self.slope.plane.pitch_deg;
        if self.kind == DormerKind::LeanTo && dormer.pitch_deg > main - LEAST_FLATTER {
            return Err(Misfit::NotFlatter { most: main - LEAST_FLATTER });
        }
        // Two cheeks, and at least the room between two rafters.
        let least = 2.0 * self.plate.depth + 2.0 * self.rafter.thickness;
        if self.x[1] - self.x[0] < least {
            return Err(Misfit::Narrow { least });
        }
        if self.kind == DormerKind::Gable && self.ridge_reach()[0] < self.plates {
            return Err(Misfit::Flat);
        }
        let studs =
            self.plates - self.plate.thickness - self.over_main(self.front + self.plate.depth, self.plate.thickness);
        if studs < LEAST_FRONT {
            return Err(Misfit::PlateLow { higher: LEAST_FRONT - studs });
        }
        Ok(())
    }

    /// A point in the world.
    pub fn point(&self, x: f64, y: f64, z: f64) -> DVec3 {
        (self.slope.axis * x + self.slope.plane.inward * (self.slope.plane.offset + y)).extend(z)
    }

    /// Unit vector along the axis of the slope.
    pub fn axis(&self) -> DVec3 {
        self.slope.axis.extend(0.0)
    }

    /// Unit vector level inwards.
    pub fn inward(&self) -> DVec3 {
        self.slope.plane.inward.extend(0.0)
    }

    /// Unit vector level from the outside of a cheek inwards: the near cheek
    /// is side 0.
    pub fn cheek_inward(&self, side: usize) -> DVec3 {
        if side == 0 { self.axis() } else { -self.axis() }
    }

    /// The place `inside` mm inwards from the outside of a cheek.
    pub fn in_cheek(&self, side: usize, inside: f64) -> f64 {
        if side == 0 { self.x[0] + inside } else { self.x[1] - inside }
    }

    /// The middle between the cheeks.
    pub fn middle(&self) -> f64 {
        (self.x[0] + self.x[1]) / 2.0
    }

    /// Half the width over the cheeks.
    pub fn half_width(&self) -> f64 {
        (self.x[1] - self.x[0]) / 2.0
    }

    /// Height of the tops of the main rafters at `y`, and of what lies `thick`
    /// mm thick on them.
    pub fn over_main(&self, y: f64, thick: f64) -> f64 {
        let plane = &self.slope.plane;
        plane.base_height + self.slope.upstand + thick / self.slope.cos + plane.tan_pitch * y
    }

    /// Where something `thick` mm thick on the main rafters reaches a height.
    fn reaches(&self, z: f64, thick: f64) -> f64 {
        (z - self.over_main(0.0, thick)) / self.slope.plane.tan_pitch
    }

    /// The tops of the main rafters, raised square by `thick` mm, facing up.
    pub fn on_main(&self, thick: f64) -> Plane {
        let normal = self.slope.normal();
        Plane::through(self.slope.point(0.0, 0.0) + normal * thick, normal)
    }

    /// Where the dormer's plates run out on the main rafters: their top edge.
    pub fn plates_end(&self) -> f64 {
        self.reaches(self.plates, 0.0)
    }

    /// Where the tops of the dormer's rafters meet the lay boards, `inside` mm
    /// in from the outside of a cheek (gable dormers).
    pub fn valley(&self, inside: f64) -> f64 {
        self.reaches(self.plates + self.upstand + self.tan * inside, self.board.thickness)
    }

    /// How far in from the outside of a cheek the valley lies at `y`.
    pub fn valley_inside(&self, y: f64) -> f64 {
        (self.over_main(y, self.board.thickness) - self.plates - self.upstand) / self.tan
    }

    /// Underside and top of the ridge of a gable dormer: not below the plates,
    /// but always as deep as the cuts of the rafters.
    pub fn ridge_reach(&self) -> [f64; 2] {
        let top = self.plates + self.upstand + self.tan * (self.half_width() - self.ridge.thickness / 2.0);
        let depth = self.ridge.depth.min(top - self.plates).max((self.rafter.depth / self.cos).ceil());
        [top - depth, top]
    }

    /// Where the tops of a lean-to's rafters meet its lay board.
    pub fn tip(&self) -> f64 {
        let level = self.plates + self.upstand - self.tan * self.front;
        (level - self.over_main(0.0, self.board.thickness)) / (self.slope.plane.tan_pitch - self.tan)
    }

    /// Where the undersides of a lean-to's rafters meet the tops of the main
    /// rafters.
    fn under_tip(&self) -> f64 {
        let level = self.plates + self.upstand - self.rafter.depth / self.cos - self.tan * self.front;
        (level - self.over_main(0.0, 0.0)) / (self.slope.plane.tan_pitch - self.tan)
    }

    /// Lower edge of the sole plate of the front on the main rafters, up the
    /// slope: its top outer arris lies under the outside of the front.
    pub fn sole(&self) -> f64 {
        (self.front + self.plate.thickness * self.slope.sin) / self.slope.cos
    }

    /// Upper edge of a lean-to's lay board, up the slope: its top upper arris
    /// lies where the rafters' tops meet it.
    pub fn board_top(&self) -> f64 {
        (self.tip() + self.board.thickness * self.slope.sin) / self.slope.cos
    }

    /// The hole in the main rafters: along the axis, and up the slope. It
    /// lies between the inner sides of the cheeks, from the sole plate up to
    /// where the dormer's roof comes down on the main rafters.
    pub fn hole(&self) -> [[f64; 2]; 2] {
        let low = self.sole() + self.plate.depth;
        let high = match self.kind {
            DormerKind::Gable => self.plates_end() / self.slope.cos,
            DormerKind::LeanTo => (self.board_top() - self.board.depth).min(self.under_tip() / self.slope.cos),
        };
        [[self.x[0] + self.plate.depth, self.x[1] - self.plate.depth], [low, high]]
    }

    /// What the dormer covers, in plan along the axis and inwards, anticlockwise.
    pub fn cover(&self) -> Vec<DVec2> {
        let [a, b] = self.x;
        let past = self.board.thickness * self.slope.sin;
        let mut out = vec![DVec2::new(a, self.front), DVec2::new(b, self.front)];
        match self.kind {
            DormerKind::Gable => {
                let (cheek, apex) = (self.valley(0.0) + past, self.valley(self.half_width()) + past);
                out.extend([DVec2::new(b, cheek), DVec2::new(self.middle(), apex), DVec2::new(a, cheek)]);
            }
            DormerKind::LeanTo => {
                let top = self.tip() + past;
                out.extend([DVec2::new(b, top), DVec2::new(a, top)]);
            }
        }
        out
    }
}
