//! Beams and plane frames.
