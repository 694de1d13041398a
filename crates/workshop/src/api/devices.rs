//! The paired devices, for whoever sits at the workshop's machine.

use super::take;
use crate::door::Door;
use crate::refusal::Refusal;
use crate::store::{Device, StoreError};
use axum::Json;
use axum::extract::rejection::PathRejection;
use axum::extract::{Path, State};
use axum::http::StatusCode;

pub(super) async fn devices(State(door): State<Door>) -> Result<Json<Vec<Device>>, Refusal> {
    take::read(&door, |reader| reader.devices()).await.map(Json)
}

pub(super) async fn forget(
    State(door): State<Door>,
    path: Result<Path<i64>, PathRejection>,
) -> Result<StatusCode, Refusal> {
    let Path(device) = path.map_err(|_| Refusal::not_found())?;
    if !door.inside.store.forget(device).await? {
        return Err(Refusal::not_found());
    }
    renew(&door).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// From here on, only the tokens that the store knows let in.
pub(super) async fn renew(door: &Door) -> Result<(), Refusal> {
    let inside = door.inside.clone();
    let done = tokio::task::spawn_blocking(move || inside.renew_tokens()).await;
    Ok(done.map_err(|_| StoreError::Stopped)??)
}
