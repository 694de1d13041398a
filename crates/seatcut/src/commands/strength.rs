//! `seatcut strength`: how far the timbers and joints of a job are used.

use clap::Args;
use serde::Serialize;
use strength::whole::{Checks, MemberUse};
use strength::working::Line;

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::strong::{self, HOW_TO_ASK, Outcome};
use crate::{solving, writing};

/// How far timbers and joints are used.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut strength house.toml
  seatcut strength house.toml A7
  seatcut strength house.toml A7 --check deflection
It checks timbers and joints, not the building. Building control and a structural engineer decide.")]
pub struct Strength {
    /// The job file, or - for standard input; it needs its loads written
    job: String,
    /// The mark of a timber: all its checks, and the working line by line
    mark: Option<String>,
    /// Show the working of this check and not of the governing one
    #[arg(long, value_name = "NAME", requires = "mark")]
    check: Option<String>,
    /// Print the results as one JSON document
    #[arg(long)]
    json: bool,
}

/// A timber with the working of a check, for programs.
#[derive(Serialize)]
struct Worked<'a> {
    #[serde(flatten)]
    member: &'a MemberUse,
    check: &'a str,
    working: &'a [Line],
}

impl Strength {
    /// Runs the command. What is over is a result and no fault.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile::read(&self.job)?;
        let (job, solution) = solving::solve(&file)?;
        solving::refuse_stopped(&solution)?;
        let checks = match Outcome::of(&job, &solution) {
            Outcome::Checked(checks) => checks,
            Outcome::NotAsked => return Err(Failure::BadInput(format!("{}: {}", file.name, HOW_TO_ASK.trim_end()))),
            Outcome::CannotTell(fault) => {
                return Err(Failure::NotBuilt(format!("{}: strength could not be worked out: {fault}", file.name)));
            }
        };
        let strength = &checks.strength;
        let text = match &self.mark {
            Some(mark) => self.one(&checks, mark)?,
            None if self.json => json(strength)?,
            None => strong::report(&solution.title, strength),
        };
        writing::print(text.as_bytes())
    }

    fn one(&self, checks: &Checks, mark: &str) -> Result<String, Failure> {
        let strength = &checks.strength;
        let member = strength.members.iter().find(|m| m.mark == mark || m.lengths.iter().any(|l| l == mark));
        let member = member.ok_or_else(|| {
            Failure::BadInput(format!(
                "no timber that carries is marked `{mark}`: `seatcut solve` lists the marks; boards, noggins and wall \
                 plates are not checked"
            ))
        })?;
        let names = || member.checks.iter().map(|c| c.name.as_str());
        let check = match &self.check {
            None => names().next().unwrap_or_default(),
            Some(asked) => names().find(|name| name.eq_ignore_ascii_case(asked)).ok_or_else(|| {
                let all: Vec<&str> = names().collect();
                Failure::BadInput(format!("{mark} has no check `{asked}`; it has: {}", all.join(", ")))
            })?,
        };
        let working = checks.working(mark, Some(check)).unwrap_or_default();
        if self.json {
            return json(&Worked { member, check, working: &working });
        }
        Ok(strong::timber(strength, member, check, &working))
    }
}

fn json(what: &impl Serialize) -> Result<String, Failure> {
    match serde_json::to_string_pretty(what) {
        Ok(text) => Ok(text + "\n"),
        Err(why) => Err(Failure::NotBuilt(format!("the results can't be put into JSON: {why}"))),
    }
}
