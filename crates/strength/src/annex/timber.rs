//! Figures for members of timber.
