//! New job files from a shape and a few sizes.

mod forms;
mod list;
mod outline;
#[cfg(test)]
mod tests;
mod text;

use crate::fault::Faults;
use crate::limits::PLACE;
use crate::nearest::nearest;
use crate::read::read;
use outline::Outline;
use thiserror::Error;

/// A size that a shape takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parameter {
    /// Its name.
    pub name: &'static str,
    /// What it is when nothing is said, mm.
    pub default_mm: f64,
    /// What it measures, a phrase.
    pub meaning: &'static str,
}

/// A shape that a new job can have.
pub struct ShapeInfo {
    /// Its name.
    pub name: &'static str,
    /// What it is, in one line.
    pub description: &'static str,
    /// Its sizes, in order.
    pub parameters: &'static [Parameter],
    /// Whether it has ends that may be gables or hips.
    pub gables: bool,
    outline: fn(&[f64]) -> Result<Outline, ShapeError>,
}

/// Why a new job was refused. Each text says what to do instead.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ShapeError {
    /// No shape of this name.
    #[error("there is no shape `{name}`{}; the shapes are {known}", nearest.as_ref().map_or_else(String::new, |near| format!(" (did you mean `{near}`?)")))]
    UnknownShape {
        /// The name as given.
        name: String,
        /// The name that was probably meant.
        nearest: Option<String>,
        /// All names.
        known: String,
    },
    /// No size of this name.
    #[error("`{shape}` has no size `{name}`; its sizes are {known}")]
    UnknownParameter {
        /// The shape.
        shape: &'static str,
        /// The name as given.
        name: String,
        /// All names.
        known: String,
    },
    /// A size that is no length of a wall.
    #[error("`{parameter}` is {mm} mm; write a length above zero and below a kilometre")]
    BadSize {
        /// The size.
        parameter: &'static str,
        /// As given, mm.
        mm: f64,
    },
    /// A part that is as large as what it is part of.
    #[error(
        "`{parameter}` is {mm} mm, but must be below {limit} mm to fit the `{because}`; make one smaller or the other greater"
    )]
    TooLarge {
        /// The size.
        parameter: &'static str,
        /// As given, mm.
        mm: f64,
        /// What it must be below, mm.
        limit: f64,
        /// The size that limits it.
        because: &'static str,
    },
    /// A shape without ends for gables.
    #[error(
        "`{shape}` has no ends that may be gables or hips; leave the gables out, and set them wall by wall afterwards"
    )]
    NoGables {
        /// The shape.
        shape: &'static str,
    },
    /// The file that was made has faults: from the title, or sizes too small.
    #[error("these sizes or this title make no good job. {0}")]
    Faults(Faults),
}

/// Every shape.
#[must_use]
pub fn shapes() -> &'static [ShapeInfo] {
    list::SHAPES
}

/// The text of a new job of a shape, commented, ready to be saved and edited.
///
/// Sizes are in mm, by the names of the shape's parameters; those not given
/// have their defaults. With `gables`, the ends of the shape are gables.
///
/// ```
/// let text = job::shapes::new_job("L", "Garden room", &[("length", 10_000.0)], true)?;
/// let job = job::read(&text)?;
/// assert_eq!(job.loops[0][1], [10_000.0, 0.0]);
/// assert!(job.walls[1].gable && job.walls[4].gable);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the shape or a size is not known, sizes do not fit each other, or the
/// title does not fit a sheet.
pub fn new_job(shape: &str, title: &str, sizes: &[(&str, f64)], gables: bool) -> Result<String, ShapeError> {
    let shape = find(shape)?;
    if gables && !shape.gables {
        return Err(ShapeError::NoGables { shape: shape.name });
    }
    let mut all: Vec<f64> = shape.parameters.iter().map(|parameter| parameter.default_mm).collect();
    for (name, mm) in sizes {
        let place = shape.parameters.iter().position(|parameter| parameter.name == *name);
        let unknown = || ShapeError::UnknownParameter {
            shape: shape.name,
            name: (*name).to_owned(),
            known: names(shape.parameters.iter().map(|parameter| parameter.name)),
        };
        *place.and_then(|place| all.get_mut(place)).ok_or_else(unknown)? = *mm;
    }
    for (parameter, mm) in shape.parameters.iter().zip(&all) {
        // Written so that what is not a number fails too.
        if !(*mm > 0.0 && *mm < PLACE.most) {
            return Err(ShapeError::BadSize { parameter: parameter.name, mm: *mm });
        }
    }
    let outline = (shape.outline)(&all)?;
    let text = text::write(shape, title, &all, &outline, gables);
    match read(&text) {
        Ok(_) => Ok(text),
        Err(faults) => Err(ShapeError::Faults(faults)),
    }
}

/// The shape of a name, in capitals or not.
fn find(name: &str) -> Result<&'static ShapeInfo, ShapeError> {
    shapes().iter().find(|shape| shape.name.eq_ignore_ascii_case(name)).ok_or_else(|| ShapeError::UnknownShape {
        name: name.to_owned(),
        nearest: nearest(name, shapes().iter().map(|shape| shape.name)).map(str::to_owned),
        known: names(shapes().iter().map(|shape| shape.name)),
    })
}

fn names<'a>(names: impl Iterator<Item = &'a str>) -> String {
    names.collect::<Vec<_>>().join(", ")
}
