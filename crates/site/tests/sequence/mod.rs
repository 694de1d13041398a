//! The order of work: on every example and on random roofs, and what its check must catch.

mod broken;
mod figures;
mod help;
mod roofs;
mod rows;
