//! A workshop without the app, for the checks that end it in the middle of
//! saves: `bare FOLDER PORT`.

use std::error::Error;
use std::{borrow::Cow, env};

fn main() -> Result<(), Box<dyn Error>> {
    let mut words = env::args().skip(1);
    let (Some(folder), Some(port)) = (words.next(), words.next()) else { return Err("bare FOLDER PORT".into()) };
    let first_job = include_str!("../../../examples/whole-house.toml").to_owned();
    let options = workshop::Options { data: folder.into(), port: port.parse()?, network: None, first_job };
    let assets = std::iter::empty::<(String, Cow<'static, [u8]>)>().collect();
    Ok(workshop::serve(options, assets, Box::new(|said| println!("{said}")))?)
}
