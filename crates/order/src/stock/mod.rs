//! Which timber can be had: the lengths usual in a region, what the job says of its merchant, and the offcuts in the
//! yard, for each section and class that the roof needs.

mod groups;
mod offers;
mod region;

pub use groups::{Group, bench_points, groups};
pub use offers::{Offer, Offers, offers};
pub(crate) use offers::{class_fits, yard_fits};
pub use region::{Region, UnknownRegion};

/// Sections that differ by less are one section, mm: less than planing takes.
pub const SAME_SECTION: f64 = 0.6;

/// Whether two sections, each thickness then depth, are one.
#[must_use]
pub fn same_section(a: [f64; 2], b: [f64; 2]) -> bool {
    let sorted = |s: [f64; 2]| if s[0] <= s[1] { s } else { [s[1], s[0]] };
    let (a, b) = (sorted(a), sorted(b));
    (a[0] - b[0]).abs() < SAME_SECTION && (a[1] - b[1]).abs() < SAME_SECTION
}
