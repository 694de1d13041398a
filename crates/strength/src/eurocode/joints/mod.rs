//! Joints: EN 1995-1-1 section 8.
