//! The app that was put into this binary when it was built.

use std::borrow::Cow;

use rust_embed::RustEmbed;

use crate::failure::Failure;

/// What the build of the app left.
#[derive(RustEmbed)]
#[folder = "../../web/dist"]
#[allow_missing = true]
struct Dist;

/// The page of the app, and the one that holds all of it.
const PAGE: &str = "index.html";
const ONE_FILE: &str = "one-file.html";

/// The example that is on the shelf at first.
pub const FIRST_JOB: &str = include_str!("../../../examples/boathouse.toml");

fn missing() -> Failure {
    Failure::NotBuilt("this build has no app in it: run `make run`".to_owned())
}

/// A file of the app: its path and what is in it.
pub type AppFile = (String, Cow<'static, [u8]>);

/// Every file of the app.
pub fn files() -> Result<Vec<AppFile>, Failure> {
    Dist::get(PAGE).ok_or_else(missing)?;
    Ok(Dist::iter().filter_map(|path| Some((path.to_string(), Dist::get(&path)?.data))).collect())
}

/// The page that holds the whole app, without a job.
pub fn page_template() -> Result<String, Failure> {
    let page = Dist::get(ONE_FILE).ok_or_else(missing)?;
    String::from_utf8(page.data.into_owned()).map_err(|_| missing())
}
