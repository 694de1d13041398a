//! The three papers, filled from the job.

use super::out::{Paper, Records};
use super::risks::{hazards, method};
use crate::access::{Access, Basis, Blank, Row, Section, Statement};
use crate::programme::Programme;
use job::Job;
use std::collections::BTreeSet;

/// Where a text is from that a job puts in place of a statement.
const ON_SITE: &str = "written on site, in the job";

/// The papers of a job. Texts of the job (`record.NAME.text`) stand in place of statements and blanks of that name.
#[must_use]
pub fn records(job: &Job, access: &Access, programme: &Programme) -> Records {
    let mut used = BTreeSet::new();
    let mut paper = |title: &str, sections: Vec<Section>, more: &[&str]| {
        let cautions = more.iter().map(|text| (*text).to_owned()).chain(access.cautions.iter().cloned());
        Paper {
            title: title.to_owned(),
            job: job.title.clone(),
            date: job.date.clone(),
            revision: job.revision.clone(),
            sections: sections.into_iter().map(|section| written(job, section, &mut used)).collect(),
            cautions: cautions.collect(),
        }
    };
    let brief = paper("What the scaffold designer asks", brief(job, access), &[]);
    let access_record = paper("Access record", record(access), &[]);
    let risk_and_method = paper(
        "Risks and method",
        vec![hazards(access), method(programme), people()],
        &[
            "A sheet does not make work go well: it is read out, put right by those who do the work, and changed when the work changes.",
        ],
    );
    let known: BTreeSet<&str> = [&brief, &access_record, &risk_and_method]
        .iter()
        .flat_map(|paper| &paper.sections)
        .flat_map(|section| &section.rows)
        .map(Row::id)
        .collect();
    let unused = job.records.iter().filter(|(name, _)| !used.contains(*name)).map(|(name, text)| {
        let near = job::nearest(name, known.iter().copied());
        let near = near.map_or_else(String::new, |near| format!(" (did you mean `{near}`?)"));
        format!("[record.{name}]{near}: {text}")
    });
    let unused = unused.collect();
    Records { brief, access_record, risk_and_method, unused }
}

/// A part with the texts of the job in their places.
fn written(job: &Job, section: Section, used: &mut BTreeSet<String>) -> Section {
    let row = |row: Row| match job.records.get(row.id()) {
        Some(text) => {
            used.insert(row.id().to_owned());
            Row::Said(Statement::new(row.id(), text, ON_SITE, Basis::Site))
        }
        None => row,
    };
    Section { heading: section.heading, rows: section.rows.into_iter().map(row).collect() }
}

fn of<'a>(access: &'a Access, names: &'a [&str]) -> impl Iterator<Item = Row> + 'a {
    names.iter().filter_map(|name| access.row(name).cloned())
}

fn blank(id: &str, question: &str, who: &str) -> Row {
    Row::Blank(Blank::new(id, question, who))
}

/// What a scaffold designer asks for: place, how long, what for, height and length, boarded lifts, the greatest load and
/// most people, the way up, sheeting and guards, passers-by, ground, the building.
fn brief(job: &Job, access: &Access) -> Vec<Section> {
    const CLIENT: &str = "client";
    const SITE: &str = "who is in charge of the site";
    let mut what = vec![
        blank("brief-address", "Where is it: address, way in, where may a lorry stand?", CLIENT),
        Row::Said(Statement::new(
            "brief-use",
            "For cutting and pitching a roof by hand, its covering, lead and gutters: carpenters, then roofers.",
            "the job",
            Basis::Job,
        )),
    ];
    what.extend(of(access, &["access-kind", "access-hire", "access-hire-late", "access-hire-wet"]));
    let mut size: Vec<Row> = of(
        access,
        &[
            "access-plate-height",
            "access-length",
            "access-lifts",
            "access-courtyard",
            "access-platform",
            "access-gap",
            "access-rails",
            "access-ties",
        ],
    )
    .collect();
    size.push(blank("brief-boarded-lifts", "Which lifts are boarded, besides the working lift?", SITE));
    let mut load: Vec<Row> = of(
        access,
        &[
            "access-class",
            "access-class-part",
            "access-people",
            "access-bay",
            "access-patch",
            "access-lifts-loaded",
            "access-load-factor",
        ],
    )
    .collect();
    load.push(blank("brief-heaviest", "What else is put on it: bricks, mortar, a hoist, a chute?", SITE));
    let sheeted = if job.access.sheeted { "It is sheeted, or under a roof of its own." } else { "It is not sheeted." };
    let mut around: Vec<Row> = of(access, &["access-way-up", "access-ladder"]).collect();
    around.push(Row::Said(Statement::new("brief-sheeting", sheeted, "`access.sheeted` of the job", Basis::Job)));
    around.extend(of(
        access,
        &[
            "access-passers-by",
            "access-fence",
            "access-pavement",
            "access-covered-way",
            "access-ground",
            "access-sole-boards",
            "access-overhead",
        ],
    ));
    around.push(blank(
        "brief-building",
        "What is the building of, how old, what may not be drilled or loaded: canopies, glass, balconies, neighbours' walls?",
        CLIENT,
    ));
    let sections = [
        ("What is wanted, and for how long", what),
        ("Height, length and lifts", size),
        ("Loads and people", load),
        ("Way up, ground and passers-by", around),
    ];
    sections.into_iter().map(|(heading, rows)| Section::new(heading, rows)).collect()
}

/// What stands, with blanks for what is handed over and inspected.
fn record(access: &Access) -> Vec<Section> {
    const SITE: &str = "who is in charge of the site";
    let mut sections = access.sections.clone();
    sections.push(Section::new(
        "Handover and inspection",
        vec![
            blank(
                "record-handover",
                "Handover certificate: number, date, class, lifts, by whom?",
                "scaffold contractor",
            ),
            blank("record-inspected", "Inspected: date and time, by whom, what was found, what was done?", "inspector"),
            blank("record-changes", "Changed, damaged or closed: when, what, who was told?", SITE),
            blank("record-wind", "Wind and weather that stopped the work: when, what was measured?", SITE),
            blank("record-off-hire", "Notice that ended the hire: when, to whom?", SITE),
        ],
    ));
    sections
}

fn people() -> Section {
    const SITE: &str = "who is in charge of the site";
    Section::new(
        "People",
        vec![
            blank("method-in-charge", "Who is in charge on the roof, and who when that person is away?", SITE),
            blank(
                "method-trained",
                "Who may use saws, nail guns, hoists and slings, and who has read this sheet?",
                SITE,
            ),
            blank(
                "method-first-aid",
                "First aid, fire point, nearest emergency department, where is the signal for a phone?",
                SITE,
            ),
            blank("method-neighbours", "Who else works below or beside, and what was agreed with them?", SITE),
        ],
    )
}
