//! Members: EN 1995-1-1 sections 6 and 7.
