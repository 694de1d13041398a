//! Two versions of a job that grew from one.
