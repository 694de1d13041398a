//! Checks to the National Design Specification for wood (allowable stress).
