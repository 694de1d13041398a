//! Devices that were paired. Their tokens are known only by hash.

use super::{Reader, StoreError};
use crate::clock::now_ms;
use rusqlite::{Connection, params};
use serde::Serialize;

/// A paired device.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Device {
    /// Its number.
    pub id: i64,
    /// What it called itself.
    pub name: String,
    /// When it was paired, ms since 1970.
    pub paired: i64,
}

pub(super) fn add(connection: &Connection, hash: &[u8; 32], name: &str) -> Result<(), StoreError> {
    connection.execute("INSERT INTO devices (hash, name, at_ms) VALUES (?1, ?2, ?3)", params![hash, name, now_ms()])?;
    Ok(())
}

pub(super) fn forget(connection: &Connection, device: i64) -> Result<bool, StoreError> {
    Ok(connection.execute("DELETE FROM devices WHERE id = ?1", [device])? > 0)
}

impl Reader<'_> {
    /// The paired devices, the newest first.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn devices(&self) -> Result<Vec<Device>, StoreError> {
        let mut statement = self.0.prepare("SELECT id, name, at_ms FROM devices ORDER BY id DESC")?;
        let rows =
            statement.query_map([], |row| Ok(Device { id: row.get(0)?, name: row.get(1)?, paired: row.get(2)? }))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The hashes of all tokens.
    ///
    /// # Errors
    /// When the store can't be read.
    pub fn hashes(&self) -> Result<Vec<[u8; 32]>, StoreError> {
        let mut statement = self.0.prepare("SELECT hash FROM devices")?;
        let rows = statement.query_map([], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}
