//! Span tables made on the spot: how far rafters and ceiling joists of stock sections may span, by the same checks that
//! a whole roof gets.
//!
//! The model is one span on two supports that hold it up straight, so that nothing pushes outwards. The bending in the
//! middle is taken together with the compression at the foot, which is more than comes together at any one place. One
//! person stands in the middle. A rafter has a birdsmouth; a joist lies on its plate. What pushes or pulls along a
//! timber because it is one of a pair (a tie, a collar, feet that spread) is not in a span table: a whole roof is
//! checked for that.

mod checks;

use crate::actions::ActionsFault;
use crate::annex::loads::LoadsFault;
use crate::annex::timber::{UnknownClass, UnknownRegion};
use crate::eurocode::members::{Section, Use};
use crate::working::{Line, Working};
use checks::{CENTRES_TAKEN, Desk, FARTHEST, SERVICE, greatest, within, worst};
use serde::{Deserialize, Serialize};

/// Stock sections of rafters and joists, thickness and depth in mm: common practice in the United Kingdom, no source.
pub const SECTIONS: [[f64; 2]; 11] = [
    [47.0, 97.0],
    [47.0, 122.0],
    [47.0, 147.0],
    [47.0, 170.0],
    [47.0, 195.0],
    [47.0, 220.0],
    [75.0, 122.0],
    [75.0, 147.0],
    [75.0, 170.0],
    [75.0, 195.0],
    [75.0, 220.0],
];
/// Centres of a table when none are asked for, mm.
pub const CENTRES: [f64; 3] = [400.0, 450.0, 600.0];
/// A span beyond this in plan is for an engineer, mm: the limit of the simple model, engineering judgement.
pub const MOST_SPAN: f64 = 5000.0;

/// What a table is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// Rafters between plate and purlin or ridge beam.
    Rafters,
    /// Ceiling joists of a loft that is not lived in.
    CeilingJoists,
}

/// What a rafter carries: loads on areas, kN/m².
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OnRafters {
    /// Covering with battens, underlay and lining, on the slope.
    pub covering: f64,
    /// Zone on the snow map.
    pub snow_zone: u8,
    /// Height above the sea, m.
    pub altitude: f64,
    /// Peak wind pressure.
    pub wind: f64,
    /// Degrees.
    pub pitch: f64,
}

/// What a ceiling joist carries, kN/m².
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OnJoists {
    /// Ceiling and insulation, for good.
    pub ceiling: f64,
    /// What is put in the loft.
    pub loft: f64,
}

/// What is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// Region, as jobs name it.
    pub region: String,
    /// Strength class.
    pub class: String,
    /// Centres, mm.
    pub centres: Vec<f64>,
    /// Rafters or joists with what they carry.
    pub carries: Carries,
}

/// Rafters or joists with what they carry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Carries {
    /// Rafters.
    Rafters(OnRafters),
    /// Ceiling joists.
    CeilingJoists(OnJoists),
}

/// A table.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SpanTable {
    /// What it is for.
    pub purpose: Purpose,
    /// Strength class.
    pub class: String,
    /// Service class.
    pub service: u8,
    /// What it carries.
    pub carries: Carries,
    /// Editions of the codes whose figures were used.
    pub editions: Vec<String>,
    /// Loads, with their sources.
    pub loads: Vec<Line>,
    /// What of the place is for an engineer.
    pub refused: Vec<String>,
    /// A row for each section and centres.
    pub rows: Vec<SpanRow>,
}

/// The span of a section at some centres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SpanRow {
    /// mm.
    pub thickness_mm: f64,
    /// mm.
    pub depth_mm: f64,
    /// mm.
    pub centres_mm: f64,
    /// Greatest clear span on plan, between the faces of the bearings, mm, not rounded; 0 when none passes.
    pub clear_span_mm: f64,
    /// The check that governs.
    pub governs: String,
    /// Its clause.
    pub clause: String,
}

/// Why there is no table.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SpanFault {
    /// No codes are kept for the region.
    #[error(transparent)]
    Region(#[from] UnknownRegion),
    /// The strength class is not in the region's edition.
    #[error(transparent)]
    Class(#[from] UnknownClass),
    /// Figures for loads.
    #[error(transparent)]
    Loads(#[from] LoadsFault),
    /// Loads that the figures do not cover.
    #[error(transparent)]
    Actions(#[from] ActionsFault),
    /// Centres or a load that are none.
    #[error("{what} of {value} cannot be: give a figure from {least} to {most}")]
    BadFigure {
        /// Which figure.
        what: &'static str,
        /// Its value.
        value: f64,
        /// The least that is taken.
        least: f64,
        /// The most.
        most: f64,
    },
}

/// How far a timber over a clear span (mm on plan) is used by the check that governs; infinite for a size of nothing.
///
/// # Errors
/// What the region's figures do not cover.
pub fn used(asked: &Asked, [thickness, depth]: [f64; 2], centres: f64, clear: f64) -> Result<Use, SpanFault> {
    let desk = Desk::of(asked, &mut Working::off())?;
    within("centres", centres, CENTRES_TAKEN)?;
    within("a span", clear, [0.0, FARTHEST])?;
    Ok(worst(&desk, Section::new(thickness, depth), centres, clear))
}

/// A span table of all [`SECTIONS`].
///
/// # Errors
/// What the region's figures do not cover, and figures that are none.
pub fn span_table(asked: &Asked) -> Result<SpanTable, SpanFault> {
    let mut working = Working::on();
    let desk = Desk::of(asked, &mut working)?;
    for centres in &asked.centres {
        within("centres", *centres, CENTRES_TAKEN)?;
    }
    let mut rows = Vec::with_capacity(SECTIONS.len() * asked.centres.len());
    for [thickness, depth] in SECTIONS {
        for centres in &asked.centres {
            let (span, governs) = greatest(&desk, Section::new(thickness, depth), *centres);
            rows.push(SpanRow {
                thickness_mm: thickness,
                depth_mm: depth,
                centres_mm: *centres,
                clear_span_mm: span,
                governs: governs.name.to_owned(),
                clause: governs.clause.to_owned(),
            });
        }
    }
    Ok(SpanTable {
        purpose: if desk.rafter { Purpose::Rafters } else { Purpose::CeilingJoists },
        class: desk.wood.class.clone(),
        service: SERVICE.number(),
        carries: asked.carries.clone(),
        editions: vec![
            desk.loads.edition.clone(),
            desk.timber.factors.edition.clone(),
            desk.timber.classes.edition.clone(),
        ],
        loads: working.lines(),
        refused: desk.refused,
        rows,
    })
}
