//! Writes a pack to look at: `pack OUT_DIR [JOB.toml | SOLUTION.json]`. Without a
//! job it takes the hipped roof that the tests use.

#[path = "../tests/fixture/mod.rs"]
mod fixture;

use std::error::Error;
use std::path::Path;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let out = arguments.next().ok_or("say where to write: pack OUT_DIR [JOB.toml | SOLUTION.json]")?;
    let solution = match arguments.next() {
        Some(path) if path.ends_with(".toml") => {
            let job = job::read(&std::fs::read_to_string(path)?).map_err(|faults| format!("{faults:?}"))?;
            roof::solve(&job)?
        }
        Some(path) => serde_json::from_slice(&std::fs::read(path)?)?,
        None => fixture::hipped(),
    };
    let out = Path::new(&out);
    std::fs::create_dir_all(out)?;
    std::fs::write(out.join("pack.pdf"), drawings::pack(&solution)?)?;
    std::fs::write(out.join("members.csv"), drawings::members_csv(&solution)?)?;
    std::fs::write(out.join("plan.svg"), drawings::plan_svg(&solution))?;
    std::fs::write(out.join("frame.svg"), drawings::frame_svg(&solution))?;
    Ok(())
}
