//! `seatcut card`: one rafter or hip from span, pitch and size, with no job file.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use job::{LengthUnit, Section, format_length};
use roof::solution::{Member, MemberKind, Solution};

use crate::failure::Failure;
use crate::reading::JobFile;
use crate::{figures, lengths, solving, writing};

/// Which timber.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Timber {
    /// A common rafter
    Rafter,
    /// A hip rafter, square in plan, both pitches alike
    Hip,
}

/// One rafter or hip.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  seatcut card rafter --span 5200 --pitch 40 --size 47x150
  seatcut card hip --span '5.2 m' --pitch 40 --size 47x150 --hip-size 47x200 -o hip.pdf")]
pub struct Card {
    /// Which timber
    timber: Timber,
    /// Span over the wall plates, outside to outside, in mm or with a unit
    #[arg(long, value_parser = lengths::measure, allow_negative_numbers = true, value_name = "LENGTH")]
    span: f64,
    /// Pitch of the roof from level, in degrees or as a rise in a run
    #[arg(long, value_parser = lengths::pitch, allow_negative_numbers = true, value_name = "PITCH")]
    pitch: f64,
    /// Rafter size, thickness x depth
    #[arg(long, value_parser = lengths::section, value_name = "SIZE")]
    size: Section,
    /// Hip size, thickness x depth; when left out, as job files have it
    #[arg(long, value_parser = lengths::section, value_name = "SIZE")]
    hip_size: Option<Section>,
    /// Ridge size, thickness x depth; when left out, as job files have it
    #[arg(long, value_parser = lengths::section, value_name = "SIZE")]
    ridge_size: Option<Section>,
    /// Overhang in plan from the plate line to the rafter ends
    #[arg(long, value_parser = lengths::length, allow_negative_numbers = true, value_name = "LENGTH")]
    overhang: Option<f64>,
    /// Also write the card as a PDF
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
}

impl Card {
    /// Runs the command: a small rectangular roof is solved, and one timber of it shown.
    pub fn run(self) -> Result<(), Failure> {
        let file = JobFile { name: "this card".to_owned(), bytes: self.job_text().into_bytes() };
        let mut job = job::read(&file.bytes).map_err(|faults| {
            // The text is ours, so its lines mean nothing to the reader; the sizes do.
            let each: Vec<String> =
                faults.iter().map(|fault| format!("{}. {}. {}.", fault.what, fault.why, fault.remedy)).collect();
            Failure::BadInput(format!("no roof can be made from these sizes:\n  {}", each.join("\n  ")))
        })?;
        // The plates and ridge of this roof are nobody's: only the one timber counts, in one length.
        job.timber.joint = job::JointRules::NONE_NEEDED;
        let solution = solving::solve_job(&job)?;
        solving::refuse_stopped(&solution)?;
        let kind = match self.timber {
            Timber::Rafter => MemberKind::CommonRafter,
            Timber::Hip => MemberKind::HipRafter,
        };
        let member = pattern_of(&solution, kind)?;
        let text = figures::piece(&solution, member);
        if let Some(place) = &self.output {
            let card = drawings::piece_card(&solution, &member.mark)
                .map_err(|why| Failure::NotBuilt(format!("the card can't be drawn: {why}")))?;
            writing::write_files(&[(place, &card)])?;
        }
        writing::print(text.as_bytes())
    }

    /// A job of one rectangle: gables at both ends for a rafter, hipped all
    /// round for a hip, and twice as long as wide so that it has a ridge.
    /// Numbers are written with `{:?}`, which TOML reads whatever their size.
    fn job_text(&self) -> String {
        let size = |name: &str, section: Section| {
            format!("{name} = {{ size = [{:?}, {:?}] }}\n", section.thickness, section.depth)
        };
        let (name, gables) = match self.timber {
            Timber::Rafter => ("Common rafter", "[roof.walls]\nB = { gable = true }\nD = { gable = true }\n"),
            Timber::Hip => ("Hip rafter", ""),
        };
        let span = format_length(self.span, LengthUnit::Millimetres);
        let title = format!("{name}, span {span}, pitch {:.1}°", self.pitch);
        let (pitch, span, length) = (self.pitch, self.span, self.span * 2.0);
        let mut text = format!("format = 1\ntitle = \"{title}\"\n");
        text += &format!("[plan]\ncorners = [[0, 0], [{length:?}, 0], [{length:?}, {span:?}], [0, {span:?}]]\n");
        text += &format!("[roof]\npitch = {pitch:?}\n");
        if let Some(overhang) = self.overhang {
            text += &format!("eaves = {{ overhang = {overhang:?} }}\n");
        }
        text += gables;
        text += "[timber]\n";
        text += &size("rafter", self.size);
        for (name, section) in [("hip", self.hip_size), ("ridge", self.ridge_size)] {
            text += &section.map_or_else(String::new, |section| size(name, section));
        }
        text
    }
}

fn pattern_of(solution: &Solution, kind: MemberKind) -> Result<&Member, Failure> {
    let piece = solution.pieces.iter().find(|piece| piece.kind == kind);
    let none = || Failure::NotBuilt(format!("this roof has no {}: give a larger span", kind.name()));
    piece.and_then(|piece| figures::pattern(solution, piece)).ok_or_else(none)
}
