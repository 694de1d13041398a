//! Prices as a plain list, and into the text of a job.
//!
//! * [`read_csv`]: from a list that was typed, or that came from a merchant and was given our columns;
//! * [`write_csv`]: the prices of a job as such a list;
//! * [`put_into`]: a list into the text of a job, which keeps all else and its comments.
//!
//! # The list
//!
//! A table as text: a line of column names, then a line for each price. Columns in any order, parted by commas,
//! semicolons or tabs; between the latter two, figures may have a decimal comma.
//!
//! | column | what it says |
//! | --- | --- |
//! | `what` | `timber`, `clean-timber` (kept for hips and valleys), or the word of an item, e.g. `nails-100x4` |
//! | `thickness_mm`, `depth_mm` | section of timber |
//! | `length_mm` | length of timber; none when any length is sold by the metre |
//! | `class` | strength class of timber; none when it is not sold by one |
//! | `price` | more than nothing |
//! | `per` | what it is a price of: `each`, `hundred`, `thousand`, `m`, `m2`, `m3`, `kg`, `roll` |
//! | `dated` | when it was asked, e.g. `2026-11-02`, or nothing |
//!
//! `what`, `price` and `per` must be there. One timber goes by the metre or by its lengths, as in a job.

mod cell;
mod columns;
mod date;
mod fault;
mod nearest;
mod put;
mod read;
mod row;
mod said_twice;
mod write;

pub use date::is_date;
pub use fault::{PriceListFault, PriceListFaults};
pub use put::{PutFault, put_into};
pub use read::{LARGEST_LIST, MOST_ROWS, read_csv};
pub use row::{PriceRow, TimberRow};
pub use write::write_csv;
