//! A check as it was asked: run once to see how far the timber is used, and run again with its lines written when
//! somebody wants to see the working. Both are the same code with the same figures.

use crate::annex::timber::{Duration, ServiceClass, Timber};
use crate::eurocode::members::{
    Contact, Design, Edge, Finish, Forces, Lengths, Notch, Section, Span as SpanKind, Use, Variable, at_notch,
    at_section, bearing, bearing_at_angle, column, deflection, lateral_torsional, movement, shear, shear_at_notch,
};
use crate::eurocode::wood::Wood;
use crate::working::Working;
use geometry::Angle;

/// The wood of a check, and what it stands in.
#[derive(Clone, Copy, Debug)]
pub struct Stuff {
    /// Strength class.
    pub wood: &'static Wood,
    /// Factors of the region.
    pub timber: &'static Timber,
    /// How damp it becomes.
    pub service: ServiceClass,
}

/// What is asked of a timber at a place.
#[derive(Clone, Copy, Debug)]
pub enum Ask {
    /// Bending with axial force.
    Section {
        /// What acts.
        forces: Forces,
    },
    /// The same while it is pressed along.
    Column {
        /// Between the points where it cannot move aside.
        lengths: Lengths,
        /// What acts.
        forces: Forces,
    },
    /// Twisting aside.
    Lateral {
        /// How its edge in compression is held.
        edge: Edge,
        /// What acts.
        forces: Forces,
        /// Between the points where it cannot move sideways, mm.
        sideways: f64,
    },
    /// What a birdsmouth leaves.
    Net {
        /// Depth left, mm.
        left: f64,
        /// What acts.
        forces: Forces,
    },
    /// Shear, N.
    Shear {
        /// The force.
        force: f64,
    },
    /// Shear beside a birdsmouth.
    NotchShear {
        /// The notch.
        notch: Notch,
        /// The force, N.
        force: f64,
    },
    /// Pressure across the grain.
    Bearing {
        /// Where.
        contact: Contact,
        /// N.
        force: f64,
    },
    /// Pressure of an end or a seat at an angle to the grain.
    AngleBearing {
        /// Degrees.
        to_grain: f64,
        /// mm².
        area: f64,
        /// N.
        force: f64,
    },
    /// Deflection.
    Sag {
        /// The span.
        span: SpanKind,
        /// What hangs under it.
        finish: Finish,
        /// Under permanent load, mm.
        permanent: f64,
        /// Under the others.
        variable: [Variable; 3],
    },
}

impl Ask {
    /// Run the check.
    #[must_use]
    pub fn run(&self, stuff: &Stuff, duration: Duration, shared: bool, section: Section, w: &mut Working) -> Use {
        let design = Design { wood: stuff.wood, timber: stuff.timber, service: stuff.service, duration, shared };
        match *self {
            Self::Section { forces } => at_section(&design, section, forces, w),
            Self::Column { lengths, forces } => column(&design, section, lengths, forces, w),
            Self::Lateral { edge, forces, sideways } => lateral_torsional(&design, section, edge, sideways, forces, w),
            Self::Net { left, forces } => at_notch(&design, section, left, forces, w),
            Self::Shear { force } => shear(&design, section, force, w),
            Self::NotchShear { notch, force } => shear_at_notch(&design, section, &notch, force, w),
            Self::Bearing { contact, force } => bearing(&design, section.depth, &contact, force, w),
            Self::AngleBearing { to_grain, area, force } => {
                bearing_at_angle(&design, Angle::deg(to_grain), area, force, w)
            }
            Self::Sag { span, finish, permanent, variable } => {
                let moved = movement(&design, permanent, &variable, w);
                deflection(stuff.timber, span, finish, moved.last, w)
            }
        }
    }
}
