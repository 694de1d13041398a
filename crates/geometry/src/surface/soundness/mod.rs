//! tmp
use super::types::{Surface, WallProfile};
/// tmp
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("x")]
pub struct CheckFailure;
/// tmp
/// # Errors
/// tmp
pub fn check(_s: &Surface, _w: &[WallProfile]) -> Result<(), Vec<CheckFailure>> {
    Ok(())
}
