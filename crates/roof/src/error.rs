//! Why a job can't be framed.

use crate::openings::{Misfit, Place, advice};
use geometry::surface::SurfaceError;
use thiserror::Error;

/// A job that can't be built as asked. Each text says where and what to do.
#[non_exhaustive]
#[derive(Debug, Error)]
pub enum SolveError {
    /// The roof surface could not be made.
    #[error("{words}")]
    Surface {
        /// What, where and what to do, with walls by their letters.
        words: String,
        /// The same as the surface engine reports it.
        source: SurfaceError,
    },
    /// The eaves of a courtyard or of a re-entrant notch run into one another.
    #[error(
        "the overhang of wall {wall} is {overhang:.0} mm in plan, which closes the gap in front of it: \
         reduce `roof.eaves.overhang`, or the overhang of the walls facing it, until some daylight is left between them"
    )]
    OverhangCloses {
        /// Letter of the wall.
        wall: String,
        /// Its overhang, mm.
        overhang: f64,
    },
    /// The birdsmouth would cut through the rafter.
    #[error(
        "wall {wall}: with one upstand all round, the birdsmouth at {pitch:.1}° is {notch:.0} mm deep in a rafter of \
         {depth:.0} mm: use deeper rafters, a smaller `timber.rafter.birdsmouth`, or pitches nearer to one another"
    )]
    RafterTooSmall {
        /// Letter of the wall.
        wall: String,
        /// Its pitch, degrees.
        pitch: f64,
        /// Birdsmouth depth, mm.
        notch: f64,
        /// Rafter depth, mm.
        depth: f64,
    },
    /// A hip or valley is too shallow to reach its plate.
    #[error(
        "the {kind} at the corner of walls {walls} is {depth:.0} mm deep and hangs above the plate: \
         it needs at least {needed:.0} mm"
    )]
    HipTooShallow {
        /// `hip` or `valley`.
        kind: &'static str,
        /// The two walls.
        walls: String,
        /// Its depth, mm.
        depth: f64,
        /// The least depth, mm.
        needed: f64,
    },
    /// A long line runs so close beside another that no timber of its own fits.
    #[error(
        "the {kind} near ({x:.0}, {y:.0}), {length:.0} mm long, lies inside its neighbours: its line runs too close to \
         theirs to be framed. Make the pitches that meet there alike, or further from alike"
    )]
    Swallowed {
        /// What it is.
        kind: &'static str,
        /// Its length in plan, mm.
        length: f64,
        /// Where it starts, mm.
        x: f64,
        /// Where it starts, mm.
        y: f64,
    },
    /// The check of the finished frame found two timbers in one place.
    #[error(
        "this frame can't be trusted: {first} and {second} share {volume:.1} mm³ near ({x:.0}, {y:.0}); \
         change the centres or the start of the rafters there, and please report the job"
    )]
    Clash {
        /// Mark of one timber.
        first: String,
        /// Mark of the other.
        second: String,
        /// Shared volume, mm³.
        volume: f64,
        /// Where, mm.
        x: f64,
        /// Where, mm.
        y: f64,
    },
    /// The check of the finished frame found a contact that does not close.
    #[error(
        "this frame can't be trusted: {first} stands {gap:.3} mm off {second} near ({x:.0}, {y:.0}); please report the job"
    )]
    Gap {
        /// Mark of one timber.
        first: String,
        /// Mark of the other.
        second: String,
        /// The gap, mm.
        gap: f64,
        /// Where, mm.
        x: f64,
        /// Where, mm.
        y: f64,
    },
    /// The check of the finished frame found a solid that is not closed or has the wrong volume.
    #[error("this frame can't be trusted: the solid of {mark} is not sound ({what}); please report the job")]
    Solid {
        /// Mark of the timber.
        mark: String,
        /// What is wrong.
        what: String,
    },
    /// An opening cannot be trimmed where the job puts it.
    #[error("the {what} {name:?} on wall {wall} {misfit}{}", advice(misfit, nearest.as_ref()))]
    Opening {
        /// `roof window`, `chimney` …
        what: &'static str,
        /// Its name.
        name: String,
        /// Letter of its wall.
        wall: String,
        /// Why.
        misfit: Box<Misfit>,
        /// The nearest place where it can be built, if there is one.
        nearest: Option<Place>,
    },
    /// A purlin is asked for beyond its slope.
    #[error(
        "wall {wall}: `timber.purlin.up` asks for a purlin {up:.0} mm up the slope, but the slope is {longest:.0} mm \
         long: choose distances between 0 and {longest:.0} mm from the plate line"
    )]
    PurlinOutside {
        /// Letter of the wall.
        wall: String,
        /// The distance up the slope that the job asks for, mm.
        up: f64,
        /// Length of the slope, mm.
        longest: f64,
    },
    /// The stock is too short for the splices that a timber needs.
    #[error(
        "the {kind} near ({x:.0}, {y:.0}) is {length:.0} mm long and the stock {longest:.0} mm: a splice in it is \
         {splice:.0} mm long, and there is no place for one with wood enough on both sides, clear of other cuts. Raise \
         `timber.joint.longest`, set `timber.joint.bolted`, or choose another `timber.joint.kind`"
    )]
    NoSplice {
        /// What it is.
        kind: &'static str,
        /// Its length, mm.
        length: f64,
        /// The longest stock, mm.
        longest: f64,
        /// Length of the splice, mm.
        splice: f64,
        /// Where it starts, mm.
        x: f64,
        /// Where it starts, mm.
        y: f64,
    },
    /// Nothing was found wrong, yet there is no frame: a fault of the program.
    #[error("this roof could not be framed, and no reason was found: please report the job")]
    NoFrame,
    /// The job asks for more timbers than a roof can have.
    #[error("this roof needs about {count} rafters, more than {limit}: is `timber.rafter.centres` in the right unit?")]
    TooManyRafters {
        /// How many it would be.
        count: usize,
        /// The limit.
        limit: usize,
    },
}

impl SolveError {
    /// Short fixed name of what is wrong, for other programs.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Surface { .. } => "surface",
            Self::OverhangCloses { .. } => "overhang-closes",
            Self::RafterTooSmall { .. } => "rafter-too-small",
            Self::HipTooShallow { .. } => "hip-too-shallow",
            Self::Swallowed { .. } => "line-swallowed",
            Self::Clash { .. } => "frame-clash",
            Self::Gap { .. } => "frame-gap",
            Self::Solid { .. } => "frame-solid",
            Self::Opening { .. } => "opening-misfit",
            Self::PurlinOutside { .. } => "purlin-outside",
            Self::NoSplice { .. } => "no-splice",
            Self::NoFrame => "no-frame",
            Self::TooManyRafters { .. } => "too-many-rafters",
        }
    }
}
