//! The workshop over real sockets.

mod backups;
mod client;
mod doors;
mod migrations;
mod pairing;
mod saving;
mod trust;
