//! What the app asks of the core. A [`Desk`] holds one open job; every call
//! takes plain data and gives plain data, already worded and in the units that
//! the user wants, so that a screen only has to show it.
//!
//! Pure like the crates below it: no files, clock, threads, storage or screen.
//! Keeping what was edited, and undoing it, is the business of whoever holds
//! the desk: every reply that changes the job carries its whole new text.
//!
//! A [`SideDesk`] answers the same and more: what to buy and how to cut it, how
//! the roof is put up, and what its papers are made from. Whoever holds a
//! [`Desk`] only carries none of that.

pub mod bench;
#[cfg(feature = "bindings")]
mod bindings;
mod calls;
mod checks;
mod desk;
mod edits;
mod entries;
pub mod measure;
mod opening;
mod ordering;
mod overview;
mod papers;
mod refusal;
mod scene;
mod shapes;
mod side_desk;
mod siting;
pub mod views;
mod why;
pub mod wording;

#[cfg(feature = "bindings")]
pub use bindings::bindings;
pub use desk::Desk;
pub use refusal::{FaultLine, Refusal};
pub use scene::Buffers;
pub use side_desk::SideDesk;
