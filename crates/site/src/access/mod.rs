//! Access to the roof: what stands round it, whether people and stacks are too heavy for it, ladders, edges, passers-by,
//! weather, and what is asked of who knows.
//!
//! Lengths in mm, weights in kg, loads in kN/m². Figures are data of a region. A figure from memory never makes a check
//! come out as within: the verdict is then to ask.

mod fault;
mod figures;
pub mod layout;
mod layout_gables;
mod loading;
pub mod rules;
mod sheet;
mod statement;

pub use fault::AccessFault;
pub use figures::{ladder, ladder_slope, throw, tower_height};
pub use loading::{
    BayCheck, GRAVITY, OnBay, Stack, bay_kn, check_bay, kilograms, kilonewtons, share_in_bay, whole_pieces,
};
pub use sheet::{Access, access};
pub use statement::{Basis, Blank, Named, Row, Section, Statement, Verdict};
