//! Which stock section would pass under the same loads.

use super::timbers::{Checked, Found, Rules, check};
use crate::eurocode::members::{Section, smallest_that_passes};

/// Sections that merchants keep, mm: common practice in the United Kingdom, no source.
pub const STOCK: [[f64; 2]; 20] = [
    [47.0, 97.0],
    [47.0, 122.0],
    [47.0, 147.0],
    [47.0, 170.0],
    [47.0, 195.0],
    [47.0, 220.0],
    [63.0, 147.0],
    [63.0, 170.0],
    [63.0, 195.0],
    [63.0, 220.0],
    [75.0, 147.0],
    [75.0, 170.0],
    [75.0, 195.0],
    [75.0, 220.0],
    [75.0, 250.0],
    [75.0, 300.0],
    [100.0, 220.0],
    [100.0, 250.0],
    [100.0, 300.0],
    [150.0, 300.0],
];

/// The least stock section, by its area, with which all checks of a timber pass under the forces that it has now.
#[must_use]
pub fn would_pass(rules: &Rules<'_>, timber: &Checked<'_>) -> Option<Section> {
    let mut sections: Vec<Section> = STOCK.iter().map(|[b, h]| Section::new(*b, *h)).collect();
    sections.sort_by(|a, b| a.area().total_cmp(&b.area()));
    let now = timber.section;
    let worst = |section: Section| {
        // A birdsmouth takes the same share of a deeper rafter; deflection goes down with the stiffness.
        let birdsmouth = timber.birdsmouth.map(|[depth, seat]| [depth * section.depth / now.depth, seat]);
        let softer = now.i_y() / section.i_y();
        let spans: Vec<_> = timber
            .spans
            .iter()
            .map(|span| {
                let mut span = span.clone();
                span.stations.iter_mut().flat_map(|s| &mut s.moved).for_each(|moved| *moved *= softer);
                span
            })
            .collect();
        let new = Checked { section, birdsmouth, spans: &spans, ..*timber };
        check(rules, &new).into_iter().map(|f: Found| f.used).reduce(|a, b| a.or_worse(b))
    };
    let nothing = crate::eurocode::members::Use::of(0.0, "", "");
    smallest_that_passes(&sections, |section| worst(section).unwrap_or(nothing)).map(|(section, _)| section)
}
