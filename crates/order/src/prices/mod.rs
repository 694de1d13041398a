//! Prices from and to a plain list (CSV), and into the text of a job.
mod date;
pub use date::is_date;
