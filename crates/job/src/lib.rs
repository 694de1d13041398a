//! The job file.

mod fault;
mod keys;
mod length;
mod letters;
mod limits;
mod nearest;
mod pitch;
mod read;
mod types;
mod words;

pub use fault::{Fault, Faults};
pub use keys::FORMAT;
pub use length::{LengthError, format_length, format_length_bare, parse_length};
pub use letters::{wall_index, wall_letter};
pub use limits::{LARGEST_FILE, LONGEST_TEXT, MOST_CORNERS};
pub use pitch::{PitchError, parse_pitch};
pub use read::{PlanChecker, read, read_with};
pub use types::{
    Eaves, Fascia, HipEdge, HipHead, HipLine, HipTimber, Job, LengthUnit, RafterTimber, RidgeTimber, RidgeTop, Section,
    Spread, TailCut, Timber, Verge, Wall,
};
