//! What the app asks of the core. A [`Desk`] holds one open job; every call
//! takes plain data and gives plain data, already worded and in the units that
//! the user wants, so that a screen only has to show it.
//!
//! Pure like the crates below it: no files, clock, threads, storage or screen.
//! Keeping what was edited, and undoing it, is the business of whoever holds
//! the desk: every reply that changes the job carries its whole new text.

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
mod siting;
pub mod views;
mod why;
pub mod wording;

#[cfg(feature = "bindings")]
pub use bindings::bindings;
pub use desk::Desk;
pub use papers::for_papers;
pub use refusal::{FaultLine, Refusal};
pub use scene::Buffers;
