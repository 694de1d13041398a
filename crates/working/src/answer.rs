//! From a question to its answer: the figure that the card shows, a working
//! that arrives at it, and the picture.

use crate::WhyError;
use crate::chain::{Basis, Chain, Shown, Unit};
use crate::ground::Ground;
use crate::measured;
use crate::pictures;
use crate::question::{Figure, Question};
use crate::told::Told;
use crate::words::{Line, Working};
use crate::{birdsmouth, cuts, ends, hips, lengths, roofs};
use job::Job;
use job::written::{self, Lengths};
use roof::solution::{Member, MemberKind, Solution};

/// A working must arrive within this of the figure on the card, mm: a tenth of
/// the half millimetre that a card shows.
pub const LENGTH_AGREES: f64 = 0.05;

/// The same for angles, degrees: a tenth of the tenth that a card shows.
pub const ANGLE_AGREES: f64 = 0.01;

/// The same for volumes, m³: the last figure that a card shows.
pub const VOLUME_AGREES: f64 = 0.000_05;

/// A working with what stands behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The working.
    pub working: Working,
    /// What it rests on.
    pub basis: Basis,
    /// What its last sum comes to, mm, degrees or m³.
    pub comes_to: f64,
    /// The figure of the solution, mm, degrees or m³.
    pub figure: f64,
}

/// A figure of the solution, and what it is called.
pub(crate) struct Asked {
    pub title: String,
    pub value: f64,
    pub unit: Unit,
}

impl Asked {
    fn length(title: String, value: f64) -> Self {
        Self { title, value, unit: Unit::Millimetres }
    }

    fn angle(title: String, value: f64) -> Self {
        Self { title, value, unit: Unit::Degrees }
    }

    /// As the card shows it.
    fn written(&self, lengths: Lengths) -> String {
        match self.unit {
            Unit::Millimetres => lengths.write_with_unit(self.value),
            Unit::Degrees => written::degrees(self.value),
            Unit::CubicMetres => format!("{} m³", written::fixed(self.value, 3)),
            Unit::Ratio => Shown::new(self.value, Unit::Ratio).result(),
        }
    }

    fn agrees(&self, value: f64) -> bool {
        let within = match self.unit {
            Unit::Millimetres => LENGTH_AGREES,
            Unit::Degrees => ANGLE_AGREES,
            Unit::CubicMetres | Unit::Ratio => VOLUME_AGREES,
        };
        (value - self.value).abs() <= within
    }
}

/// The answer to a question, with a picture of this width, px.
///
/// # Errors
/// When the job has no such figure.
pub fn answer(
    job: &Job,
    solution: &Solution,
    question: &Question,
    lengths: Lengths,
    width: f64,
) -> Result<Answer, WhyError> {
    let unknown = || WhyError::NoFigure(question.to_string());
    let ground = Ground::new(job, solution);
    let member = ground.member(&question.of);
    let asked = asked(&ground, member, question).ok_or_else(unknown)?;
    let told = told(&ground, member, question)
        .filter(|t| asked.agrees(t.chain.value))
        .or_else(|| measured::tell(member, question, &asked))
        .ok_or_else(unknown)?;
    let picture = pictures::of(&ground, member, question, &asked.written(lengths), lengths, width);
    let (comes_to, basis) = (told.chain.value, told.chain.basis);
    let value = asked.written(lengths);
    let working = Working {
        title: asked.title.clone(),
        idea: told.idea,
        picture,
        lines: finished(told.chain, &asked, &value, lengths, question),
        by_hand: told.by_hand,
        rule: told.rule,
        value,
    };
    Ok(Answer { working, basis, comes_to, figure: asked.value })
}

/// The lines, with the last as the card writes it.
fn finished(chain: Chain, asked: &Asked, value: &str, lengths: Lengths, question: &Question) -> Vec<Line> {
    let own = question.to_string();
    let last = Shown::new(chain.value, asked.unit);
    let mut lines = chain.lines;
    for line in &mut lines {
        // No figure is its own reason.
        if line.why.as_ref() == Some(&own) {
            line.why = None;
        }
    }
    if asked.unit == Unit::Millimetres && lengths == Lengths::FeetInches {
        let inches = Shown::new(last.value / 25.4, Unit::Millimetres);
        lines.push(Line {
            words: "In inches".into(),
            sum: format!("{last} ÷ 25.4"),
            result: format!("{} in", inches.result().trim_end_matches(" mm")),
            why: None,
        });
    }
    if lines.last().is_none_or(|l| l.result != value) {
        let words = match (asked.unit, lengths) {
            (Unit::Millimetres, Lengths::Millimetres) => "To the nearest half millimetre",
            (Unit::Millimetres, Lengths::FeetInches) => "To the nearest sixteenth of an inch",
            (Unit::Degrees, _) => "To the nearest tenth of a degree",
            _ => "Rounded",
        };
        lines.push(Line { words: words.into(), sum: String::new(), result: value.to_owned(), why: None });
    }
    lines
}

/// The figure that is asked about.
fn asked(ground: &Ground<'_>, member: Option<&Member>, q: &Question) -> Option<Asked> {
    let Some(m) = member.filter(|_| !of_roof(q)) else { return asked_of_roof(ground, q) };
    let name = format!("{} {}", m.kind.name(), m.mark);
    let cut = || m.cuts.get(q.number);
    let of_cut = |what: &str| cut().map(|c| format!("{what}: {} of {name}", c.name));
    let mouth = |what: &str| format!("{what} of the birdsmouth of {name}");
    Some(match q.figure {
        Figure::TrueLength => Asked::length(format!("True length of {name}"), m.true_length_mm),
        Figure::CutLength => Asked::length(format!("Cut length of {name}"), m.cut_length_mm),
        Figure::Stock => Asked::length(format!("Stock for {name}"), m.stock_length_mm),
        Figure::Pitch => Asked::angle(format!("Pitch of {name}"), m.pitch_deg),
        Figure::Face => Asked::angle(of_cut("Angle on the wide side")?, cut()?.face_angle_deg),
        Figure::Edge => Asked::angle(of_cut("Angle on the top edge")?, cut()?.edge_angle_deg),
        Figure::Mitre => Asked::angle(of_cut("Mitre scale of the saw")?, cut()?.saw.mitre_deg),
        Figure::Tilt => Asked::angle(of_cut("Tilt of the blade")?, cut()?.saw.tilt_deg),
        Figure::Seat => Asked::length(mouth("Seat"), m.birdsmouth?.seat_mm),
        Figure::Heel => Asked::length(mouth("Plumb cut"), m.birdsmouth?.plumb_mm),
        Figure::Notch => Asked::length(mouth("Depth"), m.birdsmouth?.depth_mm),
        Figure::Upstand => Asked::length(format!("Height of {name} above the plate"), m.birdsmouth?.upstand_mm),
        Figure::Backing => {
            let side = if q.number == 0 { "left" } else { "right" };
            Asked::angle(format!("Backing of {name} on its {side}"), *m.backing_deg?.get(q.number)?)
        }
        Figure::Drop => Asked::length(format!("Drop of {name}"), m.drop_mm?),
        Figure::Less => {
            let less = m.deductions.get(q.number)?;
            Asked::length(format!("Off the true length of {name}: {}", less.why), less.mm)
        }
        Figure::Tape => {
            let mark = m.marks.get(q.number)?;
            Asked::length(format!("Tape to the {} of {name}", mark.name), mark.left_mm)
        }
        _ => return None,
    })
}

fn told(ground: &Ground<'_>, member: Option<&Member>, q: &Question) -> Option<Told> {
    let Some(m) = member.filter(|_| !of_roof(q)) else { return roofs::tell(ground, q) };
    match q.figure {
        Figure::TrueLength => Some(lengths::tell_true_length(ground, m)),
        Figure::Pitch => Some(lengths::tell_pitch(ground, m)),
        Figure::Less => Some(lengths::tell_less(ground, m, m.deductions.get(q.number)?)),
        Figure::Face => cuts::face(ground, m, q.number),
        Figure::Edge => cuts::edge(ground, m, q.number),
        Figure::Mitre => cuts::mitre(ground, m, q.number),
        Figure::Tilt => cuts::tilt(ground, m, q.number),
        Figure::Seat | Figure::Heel | Figure::Notch | Figure::Upstand => birdsmouth::tell(ground, m, q.figure),
        Figure::CutLength | Figure::Stock | Figure::Tape => ends::tell(ground, m, q),
        Figure::Backing => hips::backing(ground, m, q.number),
        Figure::Drop => hips::drop(ground, m),
        _ => None,
    }
}

/// Figures of the roof even where they are asked of a timber.
fn of_roof(q: &Question) -> bool {
    matches!(q.figure, Figure::Ridge)
}

fn asked_of_roof(ground: &Ground<'_>, q: &Question) -> Option<Asked> {
    let (totals, plan) = (&ground.solution.totals, &ground.solution.plan);
    let wall = || plan.walls.iter().find(|w| w.id == q.of);
    Some(match q.figure {
        Figure::Rise => Asked::length("Height of the roof above the plates".into(), totals.rise_mm),
        Figure::Ridge => {
            let ridge = ground.member(&q.of).filter(|m| m.kind == MemberKind::RidgeBoard)?;
            Asked::length(format!("Height of ridge board {}, on the pitch planes", ridge.mark), ridge.axis.from[2])
        }
        Figure::WallPitch => Asked::angle(format!("Pitch of wall {}", q.of), wall()?.pitch_deg?),
        Figure::Overhang => Asked::length(format!("Overhang of wall {}", q.of), wall()?.overhang_mm),
        Figure::Closing => Asked::length("Closing error of the plan".into(), plan.closing_error_mm),
        Figure::Upstand if q.of.is_empty() => {
            Asked::length("Height of all rafters above their plates".into(), totals.upstand_mm)
        }
        Figure::Volume => {
            Asked { title: "Volume of all timber".into(), value: totals.timber_m3, unit: Unit::CubicMetres }
        }
        _ => return None,
    })
}
