//! Jobs: the shelf, their texts, saving.

use super::take;
use crate::door::Door;
use crate::refusal::Refusal;
use crate::store::{Answer, HistoryRow, JobText, Save, Shelf};
use axum::Json;
use axum::extract::rejection::{JsonRejection, PathRejection, QueryRejection};
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use merge::Clash;
use serde::{Deserialize, Serialize};

/// A save, as the app sends it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SaveBody {
    base: i64,
    text: String,
    device: String,
    save: String,
}

/// What is kept now.
#[derive(Debug, Serialize)]
struct KeptBody {
    revision: i64,
    text: String,
}

/// Why nothing was merged.
#[derive(Debug, Serialize)]
struct ApartBody {
    revision: i64,
    theirs: String,
    /// Everything that does not clash, merged; what clashes is as theirs.
    merged: Option<String>,
    /// The paths of the figures that clash.
    merged_without: Vec<String>,
    clashes: Vec<Clash>,
}

/// Which revision is to be taken off, and by whom.
#[derive(Debug, Deserialize)]
pub(super) struct TakeOff {
    revision: i64,
    #[serde(default)]
    device: String,
}

pub(super) async fn shelf(State(door): State<Door>) -> Result<Json<Shelf>, Refusal> {
    take::read(&door, |reader| reader.shelf()).await.map(Json)
}

fn one(found: Option<JobText>) -> Result<Response, Refusal> {
    let text = found.ok_or_else(Refusal::not_found)?;
    let status = if text.gone { StatusCode::GONE } else { StatusCode::OK };
    Ok((status, Json(text)).into_response())
}

fn job_id(path: Result<Path<String>, PathRejection>) -> Result<String, Refusal> {
    let Path(id) = path.map_err(|_| Refusal::not_found())?;
    take::id(&id).map(str::to_owned)
}

pub(super) async fn job(
    State(door): State<Door>,
    path: Result<Path<String>, PathRejection>,
) -> Result<Response, Refusal> {
    let id = job_id(path)?;
    one(take::read(&door, move |reader| reader.job(&id)).await?)
}

pub(super) async fn history(
    State(door): State<Door>,
    path: Result<Path<String>, PathRejection>,
) -> Result<Json<Vec<HistoryRow>>, Refusal> {
    let id = job_id(path)?;
    let rows = take::read(&door, move |reader| reader.history(&id)).await?;
    if rows.is_empty() { Err(Refusal::not_found()) } else { Ok(Json(rows)) }
}

pub(super) async fn text(
    State(door): State<Door>,
    path: Result<Path<(String, i64)>, PathRejection>,
) -> Result<Response, Refusal> {
    let Path((id, revision)) = path.map_err(|_| Refusal::not_found())?;
    let id = take::id(&id)?.to_owned();
    one(take::read(&door, move |reader| reader.text(&id, revision)).await?)
}

pub(super) async fn save(
    State(door): State<Door>,
    path: Result<Path<String>, PathRejection>,
    body: Result<Json<SaveBody>, JsonRejection>,
) -> Result<Response, Refusal> {
    let (job, body) = (job_id(path)?, take::body(body)?);
    take::id(&body.save)?;
    if body.text.len() > job::LARGEST_FILE {
        return Err(take::too_large());
    }
    if body.text.is_empty() || body.text.contains('\0') {
        return Err(Refusal::bad("What was sent is no text of a job"));
    }
    let device = take::name(&body.device);
    let save = Save { job, base: body.base, text: body.text, device, save: body.save };
    Ok(answer(door.inside.store.save(save).await?))
}

pub(super) async fn take_off(
    State(door): State<Door>,
    path: Result<Path<String>, PathRejection>,
    query: Result<Query<TakeOff>, QueryRejection>,
) -> Result<Response, Refusal> {
    let job = job_id(path)?;
    let Query(asked) = query.map_err(|_| Refusal::bad("The request does not say which revision is meant"))?;
    let device = take::name(&asked.device);
    let taken = door.inside.store.take_off(job, asked.revision, device).await?;
    Ok(match taken.ok_or_else(Refusal::not_found)? {
        // Here it is what was asked for.
        Answer::Off { revision } => Json(JobText { revision, text: String::new(), gone: true }).into_response(),
        other => answer(other),
    })
}

fn answer(answer: Answer) -> Response {
    match answer {
        Answer::Kept { revision, text } => Json(KeptBody { revision, text }).into_response(),
        Answer::Off { revision } => {
            (StatusCode::GONE, Json(JobText { revision, text: String::new(), gone: true })).into_response()
        }
        Answer::Apart { revision, theirs, apart } => {
            let merged_without = apart.clashes.iter().map(|clash| clash.path.clone()).collect();
            let body = ApartBody { revision, theirs, merged: apart.text, merged_without, clashes: apart.clashes };
            (StatusCode::CONFLICT, Json(body)).into_response()
        }
    }
}
