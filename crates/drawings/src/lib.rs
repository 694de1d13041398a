//! Sheets and lists.
