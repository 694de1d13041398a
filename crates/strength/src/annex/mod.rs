//! Figures of the codes of a region, as data.
