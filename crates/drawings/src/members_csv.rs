//! A list of every timber for a spreadsheet.

use roof::solution::{Cut, Member, Solution};

use crate::PackError;

const HEAD: [&str; 29] = [
    "mark",
    "kind",
    "wall",
    "card",
    "mirror_of",
    "thickness_mm",
    "depth_mm",
    "true_length_mm",
    "cut_length_mm",
    "stock_length_mm",
    "pitch_deg",
    "birdsmouth_depth_mm",
    "birdsmouth_seat_mm",
    "birdsmouth_plumb_mm",
    "birdsmouth_upstand_mm",
    "drop_mm",
    "backing_left_deg",
    "backing_right_deg",
    "volume_m3",
    "foot_x_mm",
    "foot_y_mm",
    "foot_z_mm",
    "head_x_mm",
    "head_y_mm",
    "head_z_mm",
    "deductions",
    "cuts",
    "tape_marks",
    "cut_count",
];

/// The members as comma-separated values (RFC 4180, UTF-8), a head line and
/// one line a member in the solution's order. Lengths in mm whatever the job
/// shows, angles in degrees from square across, with a full stop as decimal
/// mark. Cuts, deductions and tape marks, of which a timber has several, are
/// written in one cell each, apart by `; `. A figure that is not a number is
/// left empty.
///
/// # Errors
/// [`PackError::List`] when the rows can't be written.
pub fn members_csv(solution: &Solution) -> Result<String, PackError> {
    let fault = |e: &dyn std::fmt::Display| PackError::List(e.to_string());
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    writer.write_record(HEAD).map_err(|e| fault(&e))?;
    for member in &solution.members {
        writer.write_record(row(member)).map_err(|e| fault(&e))?;
    }
    let bytes = writer.into_inner().map_err(|e| fault(&e))?;
    String::from_utf8(bytes).map_err(|e| fault(&e))
}

fn row(m: &Member) -> [String; HEAD.len()] {
    let mouth = m.birdsmouth;
    let maybe = |v: Option<f64>| v.map_or_else(String::new, figure);
    [
        words(&m.mark),
        m.kind.name().to_owned(),
        words(m.wall.as_deref().unwrap_or_default()),
        words(&m.count_as),
        words(m.mirror_of.as_deref().unwrap_or_default()),
        figure(m.size.thickness_mm),
        figure(m.size.depth_mm),
        figure(m.true_length_mm),
        figure(m.cut_length_mm),
        figure(m.stock_length_mm),
        figure(m.pitch_deg),
        maybe(mouth.map(|b| b.depth_mm)),
        maybe(mouth.map(|b| b.seat_mm)),
        maybe(mouth.map(|b| b.plumb_mm)),
        maybe(mouth.map(|b| b.upstand_mm)),
        maybe(m.drop_mm),
        maybe(m.backing_deg.map(|b| b[0])),
        maybe(m.backing_deg.map(|b| b[1])),
        if m.volume_m3.is_finite() { format!("{:.6}", m.volume_m3) } else { String::new() },
        figure(m.axis.from[0]),
        figure(m.axis.from[1]),
        figure(m.axis.from[2]),
        figure(m.axis.to[0]),
        figure(m.axis.to[1]),
        figure(m.axis.to[2]),
        join(&m.deductions, |d| format!("{} {} level {} along", d.why, figure(d.mm), figure(d.slope_mm))),
        join(&m.cuts, cut),
        join(&m.marks, |t| format!("{} left {} right {}", t.name, figure(t.left_mm), figure(t.right_mm))),
        m.cuts.len().to_string(),
    ]
}

fn cut(c: &Cut) -> String {
    format!(
        "{} face {} edge {} mitre {} tilt {}",
        c.name,
        figure(c.face_angle_deg),
        figure(c.edge_angle_deg),
        figure(c.saw.mitre_deg),
        figure(c.saw.tilt_deg)
    )
}

fn join<T>(items: &[T], write: impl Fn(&T) -> String) -> String {
    words(&items.iter().map(write).collect::<Vec<_>>().join("; "))
}

/// To a thousandth: finer than anything measured, and short.
pub fn figure(value: f64) -> String {
    if !value.is_finite() {
        return String::new();
    }
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// A spreadsheet takes a cell that begins with one of these signs for a
/// formula; a space before it keeps it words.
pub fn words(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@']) { format!(" {text}") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_short_and_never_nan() {
        assert_eq!(figure(47.0), "47");
        assert_eq!(figure(3393.9564), "3393.956");
        assert_eq!(figure(-0.0001), "0");
        assert_eq!(figure(f64::NAN), "");
    }

    #[test]
    fn words_are_never_a_formula() {
        assert_eq!(words("=1+1"), " =1+1");
        assert_eq!(words("A1"), "A1");
    }
}
