//! Writes the papers of an order to look at: `order OUT_DIR JOB.toml`, or without a job those of the order that the
//! tests use.

#[path = "../tests/fixture/mod.rs"]
mod fixture;
#[path = "../tests/order_fixture/mod.rs"]
mod order_fixture;

use std::error::Error;
use std::path::Path;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let out = arguments.next().ok_or("say where to write: order OUT_DIR [JOB.toml]")?;
    let (solution, order) = match arguments.next() {
        Some(path) => {
            let job = job::read(&std::fs::read_to_string(path)?).map_err(|faults| format!("{faults:?}"))?;
            let solution = roof::solve(&job)?;
            let order = order::whole::order(&job, &solution, None)?;
            (solution, order)
        }
        None => (fixture::hipped(), order_fixture::made("")),
    };
    let out = Path::new(&out);
    std::fs::create_dir_all(out)?;
    std::fs::write(out.join("order.pdf"), drawings::order_pdf(&solution, &order)?)?;
    std::fs::write(out.join("labels.pdf"), drawings::labels_pdf(&solution, &order)?)?;
    std::fs::write(out.join("order.xlsx"), drawings::order_xlsx(&solution, &order)?)?;
    std::fs::write(out.join("order.csv"), drawings::order_csv(&order)?)?;
    Ok(())
}
