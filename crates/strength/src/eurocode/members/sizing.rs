//! Which timber is enough.

use super::{Section, Use};

/// The section of least area, and of those the least deep, whose worst use passes. `worst` is only asked for sections
/// that could still be smaller than the best found, so that a list in order of area costs one check beyond the answer.
pub fn smallest_that_passes(sections: &[Section], mut worst: impl FnMut(Section) -> Use) -> Option<(Section, Use)> {
    let mut best: Option<(Section, Use)> = None;
    for &section in sections {
        let smaller = best.is_none_or(|(found, _)| {
            section.area() < found.area() || (section.area() == found.area() && section.depth < found.depth)
        });
        if smaller {
            let found = worst(section);
            if found.passes() {
                best = Some((section, found));
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::{Section, Use, smallest_that_passes};

    #[test]
    fn the_least_area_that_passes() {
        let list = [(47.0, 200.0), (47.0, 150.0), (75.0, 150.0), (47.0, 100.0)].map(|(b, h)| Section::new(b, h));
        let need = |area: f64| move |s: Section| Use::of(area / s.area(), "", "");
        let least = smallest_that_passes(&list, need(6000.0)).expect("some pass");
        assert_eq!(least.0, list[1]);
        assert!(smallest_that_passes(&list, need(12_000.0)).is_none());
        assert!(smallest_that_passes(&list, |_| Use::of(f64::NAN, "", "")).is_none());
    }
}
