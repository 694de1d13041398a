//! Figures for loads.
