//! Writes the sheets for the site to look at: `site OUT_DIR JOB.toml`.

use std::error::Error;
use std::path::Path;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let usage = "say where to write and of which job: site OUT_DIR JOB.toml";
    let (out, path) = arguments.next().zip(arguments.next()).ok_or(usage)?;
    let job = job::read(&std::fs::read_to_string(path)?).map_err(|faults| format!("{faults:?}"))?;
    let solution = roof::solve(&job)?;
    let putting_up = site::sequence::putting_up(&job, &solution)?;
    let work = site::programme::Work::of(&job, &solution)?;
    let programme = site::programme::programme(&job, &solution, &work)?;
    let access = site::access::access(&job, &solution, &programme)?;
    let records = site::records::records(&job, &access, &programme);
    let density = site::lifts::Density::of(site::lifts::Lifting::of(&solution.region)?, "C24");
    let lifts = site::lifts::lifts(&solution, &density)?;
    let out = Path::new(&out);
    std::fs::create_dir_all(out)?;
    let papers = drawings::SitePapers {
        putting_up: Some(&putting_up),
        lifts: &lifts,
        programme: Some(&programme),
        access: Some(&access),
        records: Some(&records),
    };
    std::fs::write(out.join("site.pdf"), drawings::site_pdf(&solution, &papers)?)?;
    std::fs::write(out.join("p.json"), serde_json::to_string_pretty(&putting_up)?)?;
    std::fs::write(out.join("g.json"), serde_json::to_string_pretty(&programme)?)?;
    std::fs::write(out.join("a.json"), serde_json::to_string_pretty(&access)?)?;
    std::fs::write(out.join("r.json"), serde_json::to_string_pretty(&records)?)?;
    std::fs::write(out.join("l.json"), serde_json::to_string_pretty(&lifts)?)?;
    Ok(())
}
