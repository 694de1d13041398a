//! Programmes for comparison with general libraries: of a job file, and random networks, one JSON a line.
//!
//! `cargo run -p site --example programme_for_oracle -- examples/whole-house.toml 200`

use serde_json::json;
use site::programme::{Calendar, Chance, Labour, Pace, Step, Work, ends_of, pass, programme};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let file = arguments.next().unwrap_or_else(|| "examples/whole-house.toml".to_owned());
    let networks: u64 = arguments.next().map_or(Ok(100), |count| count.parse())?;
    let mut job = job::read(std::fs::read_to_string(file)?)?;
    job.programme.start = job::Day::parse("2027-03-01");
    let solution = roof::solve(&job)?;
    let work = Work::of(&job, &solution)?;
    let answer = programme(&job, &solution, &work)?;
    let loss = job.programme.weather_loss.unwrap_or(Labour::of(&job.region)?.weather.loss);
    let calendar = Calendar::new(&job.programme, &loss)?;
    let days: Vec<f64> = calendar.loss().iter().copied().take(400).collect();
    let ends = ends_of(&job, &work)?;
    let access = site::access::access(&job, &solution, &answer)?;
    let records = site::records::records(&job, &access, &answer);
    println!(
        "{}",
        json!({ "programme": answer, "loss": days, "ends": ends, "ics": ics(&job, &answer)?, "records": records, "bay": access.bay })
    );
    for seed in 0..networks {
        println!("{}", network(seed));
    }
    Ok(())
}

fn ics(job: &job::Job, programme: &site::programme::Programme) -> Result<String, Box<dyn std::error::Error>> {
    Ok(site::records::calendar(job, programme)?)
}

/// A random network with its times, without weather.
fn network(seed: u64) -> serde_json::Value {
    let mut chance = Chance::new(seed);
    let count = 2 + (chance.share() * 30.0) as usize;
    let mut steps: Vec<Step> = Vec::new();
    for number in 0..count {
        let after = (0..number).filter(|_| chance.share() < 0.25).collect();
        let net = (chance.share() * 40.0).round() / 8.0;
        steps.push(Step { net, exposed: false, after });
    }
    let times = pass(&steps, &Pace::new(vec![1.0; 400]));
    let Ok(times) = times else { return json!({}) };
    let nets: Vec<f64> = steps.iter().map(|step| step.net).collect();
    let after: Vec<&Vec<usize>> = steps.iter().map(|step| &step.after).collect();
    json!({ "net": nets, "after": after, "start": times.start, "float": times.float, "end": times.end })
}
