//! Key figures of a solution in plain lines for a terminal.

use std::fmt::Write as _;

use roof::solution::{Member, Notice, NoticeLevel, PatternPiece, Solution};

use crate::lengths::Show;

/// The figures of a whole job: roof, pattern pieces, notices.
pub fn summary(solution: &Solution) -> String {
    let show = Show::of(solution);
    let totals = &solution.totals;
    let mut text = format!("{}\n\n", solution.title);
    line(&mut text, "Walls", &walls(solution, show));
    line(&mut text, "Plan area", &format!("{:.2} m²", totals.plan_area_m2));
    line(&mut text, "Slope area", &format!("{:.2} m²", totals.slope_area_m2));
    line(
        &mut text,
        "Rise",
        &format!("{} from the plates to the pitch lines at the ridge", show.length(totals.rise_mm)),
    );
    line(&mut text, "Upstand", &format!("{} plumb above the plates", show.length(totals.upstand_mm)));
    line(
        &mut text,
        "Timbers",
        &format!("{} in {} pattern pieces, {:.3} m³", totals.members, totals.pieces, totals.timber_m3),
    );
    text.push('\n');
    text.push_str(&pieces(solution, show));
    text.push_str(&notices(solution));
    text
}

/// The figures of one pattern piece: lengths, deductions, cuts.
pub fn piece(solution: &Solution, member: &Member) -> String {
    let show = Show::of(solution);
    let mut text = format!("{}\n\n", solution.title);
    line(&mut text, "Size", &show.size(member.size));
    line(&mut text, "Pitch", &degrees(member.pitch_deg));
    line(
        &mut text,
        "True length",
        &format!("{} on the pitch line, plate line to centre", show.length(member.true_length_mm)),
    );
    for deduction in &member.deductions {
        line(
            &mut text,
            "  less",
            &format!("{} along the pitch line, {}", show.length(deduction.slope_mm), deduction.why),
        );
    }
    line(&mut text, "Cut length", &format!("{} long point to long point", show.length(member.cut_length_mm)));
    line(&mut text, "Stock", &show.length(member.stock_length_mm));
    if let Some(notch) = member.birdsmouth {
        let sizes = [notch.depth_mm, notch.seat_mm, notch.plumb_mm, notch.upstand_mm].map(|mm| show.length(mm));
        let [depth, seat, plumb, upstand] = sizes;
        line(&mut text, "Birdsmouth", &format!("{depth} deep, seat {seat}, heel {plumb}, {upstand} left above"));
    }
    if let Some([left, right]) = member.backing_deg {
        line(&mut text, "Backing", &format!("{} left, {} right, from square across", degrees(left), degrees(right)));
    }
    if let Some(drop) = member.drop_mm {
        line(&mut text, "Drop", &format!("{} plumb", show.length(drop)));
    }
    text.push_str("\nCuts, angles from square across\n");
    for cut in &member.cuts {
        let _ = writeln!(
            text,
            "  {:<26} face {:>7}   edge {:>7}   saw mitre {:>7} tilt {:>7}",
            cut.name,
            degrees(cut.face_angle_deg),
            degrees(cut.edge_angle_deg),
            degrees(cut.saw.mitre_deg),
            degrees(cut.saw.tilt_deg)
        );
    }
    text.push_str(&notices(solution));
    text
}

/// The notices, the gravest first; nothing when there are none.
pub fn notices(solution: &Solution) -> String {
    let mut sorted: Vec<&Notice> = solution.notices.iter().collect();
    sorted.sort_by_key(|notice| notice.level);
    let mut text = String::new();
    for notice in sorted {
        let level = match notice.level {
            NoticeLevel::Stop => "STOP",
            NoticeLevel::Warn => "LOOK",
            NoticeLevel::Note => "note",
        };
        let _ = writeln!(text, "{level}  {}: {}", notice.place, notice.text);
    }
    if text.is_empty() { text } else { format!("\n{text}") }
}

fn line(text: &mut String, name: &str, figure: &str) {
    let _ = writeln!(text, "{name:<12} {figure}");
}

fn degrees(angle: f64) -> String {
    format!("{angle:.1}°")
}

fn walls(solution: &Solution, show: Show) -> String {
    let one = |wall: &roof::solution::WallOut| {
        let slope = wall.pitch_deg.map_or_else(|| "gable".to_owned(), degrees);
        format!("{} {} {slope}", wall.id, show.length(wall.length_mm))
    };
    solution.plan.walls.iter().map(one).collect::<Vec<_>>().join(", ")
}

fn pieces(solution: &Solution, show: Show) -> String {
    let mut text = format!(
        "{:<8} {:<15} {:>4}  {:<11} {:>12} {:>12}\n",
        "Mark", "Timber", "No.", "Size", "True length", "Cut length"
    );
    for piece in &solution.pieces {
        if let Some(member) = pattern(solution, piece) {
            let _ = writeln!(
                text,
                "{:<8} {:<15} {:>4}  {:<11} {:>12} {:>12}",
                piece.mark,
                piece.kind.name(),
                piece.count,
                show.size(member.size),
                show.length(member.true_length_mm),
                show.length(member.cut_length_mm)
            );
        }
    }
    text
}

/// The member whose figures stand for a pattern piece.
pub fn pattern<'a>(solution: &'a Solution, piece: &PatternPiece) -> Option<&'a Member> {
    solution.members.iter().find(|member| member.mark == piece.mark)
}
