//! `seatcut spans`: a span table made on the spot, with no job file.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use drawings::written_span;
use strength::actions;
use strength::annex::loads::Loads;
use strength::span_table::{Asked, CENTRES, Carries, OnJoists, OnRafters, Purpose, SpanTable, span_table};
use strength::working::Working;

use crate::failure::Failure;
use crate::{lengths, writing};

/// Region whose codes are used.
const REGION: &str = "uk";
/// Ceiling of plasterboard with insulation, and a loft for repairs only, kN/m²: as job files have them.
const CEILING: f64 = 0.25;

/// Which timbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Timbers {
    /// Rafters between plate and purlin or ridge beam
    Rafters,
    /// Ceiling joists of a loft that is not lived in
    Joists,
    /// Both
    Both,
}

/// A span table made on the spot.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut spans --for joists --class C16
  seatcut spans --class C24 --pitch 40 --covering plain-tile --snow-zone 3 --altitude 120 --wind 0.85
  seatcut spans --class C24 --centres 400 --pitch 40 --covering-weight 0.9 --snow-zone 3 --altitude 120 \\
      --wind 0.85 -o spans.pdf --csv spans.csv
It is a member check only, of one span. Building control and a structural engineer decide.")]
pub struct Spans {
    /// Strength class stamped on the timber, such as C16 or C24
    #[arg(long)]
    class: String,
    /// Which timbers
    #[arg(long = "for", value_enum, default_value = "both")]
    timbers: Timbers,
    /// Centres, with commas between; when left out, 400, 450 and 600
    #[arg(long, value_delimiter = ',', value_parser = lengths::measure, value_name = "LENGTH")]
    centres: Vec<f64>,
    /// Pitch of the rafters from level, in degrees or as a rise in a run
    #[arg(long, value_parser = lengths::pitch, value_name = "PITCH")]
    pitch: Option<f64>,
    /// Covering by its name, such as plain-tile or slate
    #[arg(long, value_name = "NAME", conflicts_with = "covering_weight")]
    covering: Option<String>,
    /// What the covering weighs on the slope, kN/m²
    #[arg(long, value_name = "WEIGHT")]
    covering_weight: Option<f64>,
    /// Battens, underlay and lining on the slope, kN/m²
    #[arg(long, value_name = "WEIGHT", default_value_t = 0.1)]
    under_covering: f64,
    /// Zone on the snow map, 1 to 5
    #[arg(long, value_name = "ZONE")]
    snow_zone: Option<u8>,
    /// Height above the sea, m
    #[arg(long, value_name = "METRES", allow_negative_numbers = true)]
    altitude: Option<f64>,
    /// Peak wind pressure at the ridge, kN/m², from whoever answers for the site
    #[arg(long, value_name = "PRESSURE")]
    wind: Option<f64>,
    /// Ceiling and insulation on the joists, kN/m²
    #[arg(long, value_name = "WEIGHT", default_value_t = CEILING)]
    ceiling: f64,
    /// What is put in the loft, kN/m²
    #[arg(long, value_name = "WEIGHT", default_value_t = CEILING)]
    loft: f64,
    /// Also write the table for a spreadsheet
    #[arg(long, value_name = "FILE")]
    csv: Option<PathBuf>,
    /// Also write it as a PDF to print
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Print the tables as one JSON document
    #[arg(long)]
    json: bool,
}

impl Spans {
    /// Runs the command.
    pub fn run(self) -> Result<(), Failure> {
        let mut tables = Vec::new();
        if self.timbers != Timbers::Joists {
            tables.push(self.table(Carries::Rafters(self.on_rafters()?))?);
        }
        if self.timbers != Timbers::Rafters {
            tables.push(self.table(Carries::CeilingJoists(OnJoists { ceiling: self.ceiling, loft: self.loft }))?);
        }
        let unmade = |why: drawings::PackError| Failure::NotBuilt(format!("the span table: {why}"));
        let pdf = self.output.as_ref().map(|_| drawings::span_sheets(&tables)).transpose().map_err(unmade)?;
        let csv = self.csv.as_ref().map(|_| drawings::spans_csv(&tables)).transpose().map_err(unmade)?;
        let mut files: Vec<(&Path, &[u8])> = Vec::new();
        if let (Some(place), Some(pdf)) = (&self.output, &pdf) {
            files.push((place, pdf));
        }
        if let (Some(place), Some(csv)) = (&self.csv, &csv) {
            files.push((place, csv.as_bytes()));
        }
        writing::write_files(&files)?;
        let text = if self.json {
            serde_json::to_string_pretty(&tables)
                .map_err(|why| Failure::NotBuilt(format!("the tables can't be put into JSON: {why}")))?
                + "\n"
        } else {
            tables.iter().map(print).collect::<Vec<_>>().join("\n")
        };
        writing::print(text.as_bytes())
    }

    fn table(&self, carries: Carries) -> Result<SpanTable, Failure> {
        let mut centres = if self.centres.is_empty() { CENTRES.to_vec() } else { self.centres.clone() };
        centres.sort_by(f64::total_cmp);
        centres.dedup();
        if centres.len() > drawings::MOST_CENTRES {
            let most = drawings::MOST_CENTRES;
            return Err(Failure::BadInput(format!("a sheet has room for {most} centres: ask for fewer at a time")));
        }
        let asked = Asked { region: REGION.to_owned(), class: self.class.clone(), centres, carries };
        span_table(&asked).map_err(|fault| Failure::BadInput(format!("no span table: {fault}")))
    }

    fn on_rafters(&self) -> Result<OnRafters, Failure> {
        let missing = |name: &str| {
            Failure::BadInput(format!("rafters need --{name}; or ask for ceiling joists alone with --for joists"))
        };
        let covering = match (&self.covering, self.covering_weight) {
            (_, Some(weight)) => weight,
            (Some(name), None) => {
                let fault = |why: String| Failure::BadInput(format!("no span table: {why}"));
                let loads = Loads::of(REGION).map_err(|why| fault(why.to_string()))?;
                actions::layers(loads, &[name], &mut Working::off()).map_err(|why| fault(why.to_string()))?
            }
            (None, None) => return Err(missing("covering or --covering-weight")),
        };
        Ok(OnRafters {
            covering: covering + self.under_covering,
            snow_zone: self.snow_zone.ok_or_else(|| missing("snow-zone"))?,
            altitude: self.altitude.ok_or_else(|| missing("altitude"))?,
            wind: self.wind.ok_or_else(|| missing("wind"))?,
            pitch: self.pitch.ok_or_else(|| missing("pitch"))?,
        })
    }
}

fn print(table: &SpanTable) -> String {
    let of = match table.purpose {
        Purpose::Rafters => "Rafters",
        Purpose::CeilingJoists => "Ceiling joists",
    };
    let mut text = format!("{of} of {}, clear span on plan in m; member check only\n", table.class);
    for line in &table.loads {
        let unit = if line.unit.is_empty() { String::new() } else { format!(" {}", line.unit) };
        let _ = writeln!(text, "  {}: {:.2}{unit}", line.what, line.value);
    }
    let mut centres: Vec<f64> = table.rows.iter().map(|r| r.centres_mm).collect();
    centres.sort_by(f64::total_cmp);
    centres.dedup();
    let _ = write!(text, "\n{:<12}", "Size");
    for at in &centres {
        let _ = write!(text, "{:>12}", format!("at {at:.0}"));
    }
    text.push_str("   governs\n");
    for rows in table.rows.chunks(centres.len().max(1)) {
        let Some(first) = rows.first() else { continue };
        let _ = write!(text, "{:<12}", format!("{:.0} x {:.0}", first.thickness_mm, first.depth_mm));
        for row in rows {
            let _ = write!(text, "{:>12}", written_span(row.clear_span_mm));
        }
        let mut names: Vec<&str> = rows.iter().map(|r| r.governs.as_str()).collect();
        names.dedup();
        let _ = writeln!(text, "   {}", names.join(", "));
    }
    text.push('\n');
    for matter in &table.refused {
        let _ = writeln!(text, "ENGINEER  {matter}");
    }
    let _ = writeln!(text, "note  Editions: {}.", table.editions.join("; "));
    text.push_str(
        "note  One span on two supports that hold it up; not the building, its walls, ties, bracing or straps. Over 5 m \
         in plan a timber is for an engineer. Building control and a structural engineer decide.\n",
    );
    text
}
