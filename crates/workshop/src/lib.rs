//! The workshop: serves the app from one machine, keeps its jobs, and lets
//! paired devices on the local network use both.
//!
//! Two **doors** lead in. The door on this machine answers at `localhost`
//! without asking. The door to the network is there only when it is asked for;
//! it speaks TLS with a certificate of the workshop's own authority, and lets
//! in who shows the token of a pairing. A small page on a port beside it, over
//! plain HTTP, tells a phone how to trust that authority, and does nothing else.
//!
//! `docs/workshop.md` describes the protocol and what it protects from.

mod address;
mod api;
mod assets;
mod certificates;
mod clock;
mod door;
mod guard;
mod headers;
mod listen;
mod pages;
mod pairing;
mod random;
mod refusal;
mod said;
mod server;
pub mod store;

pub use address::AddressError;
pub use assets::Assets;
pub use certificates::{Authority, CertificateError};
pub use said::{NetworkSaid, Said};
pub use server::{Options, Running, ServeError, serve, start};
