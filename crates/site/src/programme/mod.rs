//! The programme: hours, working days, weather, what waits for what, a range by chance, and the weeks of hire.
//!
//! Times are working days from the first morning; hours are those of one person. Hours and the share that weather takes
//! are data of a region, or the job's own, and are marked as estimates until they are the job's own.
//!
//! Not in it: deliveries, other trades, the drying of mortar, and who is on leave.

mod calendar;
mod chance;
mod durations;
mod fault;
mod hire;
mod labour;
mod network;
mod out;
mod phases;
mod quantities;
mod run;
mod words;
mod work;

pub use calendar::{Calendar, MOST_DAYS, civil};
pub use chance::{Chance, quantile, triangular};
pub use fault::ProgrammeFault;
pub use hire::{HireCase, Inspection, NotifyAt, Terms, case, inspections, weeks, with_loss};
pub use labour::{Labour, Per, Plain, Rate, ScaffoldHours, Weather, board_feet};
pub use network::{NO_FLOAT, NoEnd, Pace, Step, Times, forward, pass};
pub use out::{Activity, Bar, Estimate, Hire, Notice, Part, Programme, Spread, When};
pub use phases::{Gang, Phase};
pub use run::{ends_of, programme};
pub use work::{Quantity, Work};
