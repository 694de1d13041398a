//! Figures for joints.
