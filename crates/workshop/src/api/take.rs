//! Taking what a request says: strictly, and with words where it is refused.

use crate::door::Door;
use crate::refusal::Refusal;
use crate::store::{Reader, StoreError};
use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::http::StatusCode;

/// Digits of an id: 128 bits in hexadecimal.
const ID_DIGITS: usize = 32;
/// Longest name of a device, characters.
const LONGEST_NAME: usize = 64;

/// An id as devices make them.
pub(super) fn id(text: &str) -> Result<&str, Refusal> {
    let plain = |byte: u8| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte);
    let fits = text.len() == ID_DIGITS && text.bytes().all(plain);
    if fits { Ok(text) } else { Err(Refusal::bad("The name of the job or of the save is not 32 hexadecimal digits")) }
}

/// What a device calls itself, without anything that a terminal would obey.
pub(super) fn name(text: &str) -> String {
    let plain: String = text.chars().filter(|c| !c.is_control()).take(LONGEST_NAME).collect();
    let plain = plain.trim();
    if plain.is_empty() { "A device".to_owned() } else { plain.to_owned() }
}

/// The body, as JSON of the right shape.
pub(super) fn body<T>(json: Result<Json<T>, JsonRejection>) -> Result<T, Refusal> {
    json.map(|Json(body)| body).map_err(|error| match error.status() {
        StatusCode::PAYLOAD_TOO_LARGE => too_large(),
        _ => Refusal::bad("The app and the workshop do not understand each other"),
    })
}

pub(super) fn too_large() -> Refusal {
    Refusal::new(
        StatusCode::PAYLOAD_TOO_LARGE,
        "too-large",
        "This is longer than a job file can be",
        "Take out what does not belong to the job",
    )
}

/// Reads from the store where it may block.
pub(super) async fn read<T: Send + 'static>(
    door: &Door,
    read: impl FnOnce(&Reader<'_>) -> Result<T, StoreError> + Send + 'static,
) -> Result<T, Refusal> {
    let inside = door.inside.clone();
    let done = tokio::task::spawn_blocking(move || inside.store.read(read)).await;
    Ok(done.map_err(|_| StoreError::Stopped)??)
}
