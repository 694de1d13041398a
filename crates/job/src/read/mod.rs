//! Reads a job file: text in, checked job or every fault out.

mod bearings;
mod bench;
mod cross;
mod done;
mod dormers;
mod group;
mod header;
mod names;
mod number;
mod openings;
mod order;
mod parts;
mod plan;
mod plan_words;
mod reader;
mod roof;
mod setting_out;
mod site;
mod strength;
mod survey;
mod survey_words;
mod text;
mod timber;
mod values;
mod walls;

use crate::fault::Faults;
use crate::{Job, LengthUnit};
use cross::OverThePlan;
use geometry::{DVec2, PlanFault};
use reader::Reader;

/// Checks the loops of a plan: the outer plates, then the courtyards; mm.
pub type PlanChecker<'c> = dyn Fn(&[Vec<DVec2>]) -> Vec<PlanFault> + 'c;

/// Reads a job file and checks everything in it.
///
/// ```
/// let job = job::read(r#"
/// format = 1
/// title = "Boathouse workshop"
/// [plan]
/// corners = [[0, 0], ["8.4 m", 0], ["8.4 m", 5200], [0, 5200]]
/// [roof]
/// pitch = 40
/// "#)?;
/// assert_eq!(job.loops[0][1], [8400.0, 0.0]);
/// assert_eq!(job.walls[3].letter, "D");
/// # Ok::<(), job::Faults>(())
/// ```
///
/// # Errors
/// Every fault of the file, in the order of the text. Faults that only follow
/// from others are left out.
pub fn read(text: impl AsRef<[u8]>) -> Result<Job, Faults> {
    read_with(text, &geometry::plan::check)
}

/// As [`read`], with a plan checker of the caller's.
///
/// # Errors
/// As [`read`].
pub fn read_with(text: impl AsRef<[u8]>, checker: &PlanChecker<'_>) -> Result<Job, Faults> {
    let text = text::check(text.as_ref())?;
    let document = text::parse(text)?;
    let mut reader = Reader::new(text);
    let root = reader.root(&document);
    let header = header::read(&mut reader, &root);
    let plan = plan::read(&mut reader, &root);
    let roof = roof::read(&mut reader, &root, &plan);
    let timber = timber::read(&mut reader, &root);
    let openings = openings::read(&mut reader, &root, &roof.walls);
    let dormers = dormers::read(&mut reader, &root, &roof.walls);
    let bearings = bearings::read(&mut reader, &root);
    let bench = bench::read(&mut reader, &root);
    let carried = strength::carried(&mut reader, &root);
    let strong = strength::strong(&mut reader, &root);
    let order = order::read(&mut reader, &root);
    let programme = site::programme(&mut reader, &root);
    let access = site::access(&mut reader, &root);
    let records = site::records(&mut reader, &root);
    let done = done::read(&mut reader, &root);
    parts::struts_stand(&mut reader, &root);
    let over = OverThePlan { walls: &roof.walls, timber: &timber, openings: &openings, dormers: &dormers };
    cross::check(&mut reader, &plan, &over, checker);
    setting_out::bearing(&mut reader, &plan, &timber);
    reader.finish()?;
    let (loops, setting_out) = setting_out::of(&plan, &roof, timber.timber.plate);
    Ok(Job {
        title: header.title,
        date: header.date,
        revision: header.revision,
        region: header.region,
        show: header.show,
        loops,
        setting_out,
        survey: plan.survey,
        walls: roof.walls,
        pitch_deg: roof.pitch_deg,
        eaves: roof.eaves,
        verge: roof.verge,
        timber: timber.timber,
        openings: openings.into_iter().map(|read| read.opening).collect(),
        dormers: dormers.into_iter().map(|read| read.dormer).collect(),
        bearings,
        bench,
        carried,
        strong,
        ordering: order.ordering,
        stock: order.stock,
        yard: order.yard,
        prices: order.prices,
        covering: order.covering,
        programme,
        access,
        records,
        done,
    })
}

/// What the head of the file says.
struct Header {
    title: String,
    date: Option<String>,
    revision: Option<String>,
    region: String,
    show: LengthUnit,
}
