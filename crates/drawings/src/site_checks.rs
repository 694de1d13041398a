//! Checks of the sheets for the site.
