//! Sheets about strength, and span tables.

#[cfg(test)]
mod checks;
pub mod sheet;
pub mod spans;
pub mod words;
