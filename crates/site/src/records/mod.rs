//! The papers of access: what a scaffold designer asks for, an access record, a sheet of risks and method, and a calendar
//! file of inspections.
//!
//! They are filled from the job. What only people on site know is a blank, and any statement can be put in other words by
//! the job (`record.NAME.text`). They are not a design, a certificate or an assessment: who is competent makes these.

mod calendar;
mod fault;
mod out;
mod papers;
mod risks;

pub use calendar::calendar;
pub use fault::RecordsFault;
pub use out::{Paper, Records};
pub use papers::records;
