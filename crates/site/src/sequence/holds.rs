//! What is checked before going on, with the figure to find and by how much it may be out.

use super::graph::{Graph, wall_line};
use super::order::bracing::plate_level;
use super::rules::Rules;
use super::types::{Hold, PuttingUp, Standing, Step};
use geometry::DVec2;
use roof::solution::MemberKind;
use strength::annex::Figure;

/// Plans with more corners than this get the diagonals from their first corners only: a sheet has one page.
const MOST_CORNERS: usize = 8;
/// Most diagonals of a plan on the sheet.
const MOST_DIAGONALS: usize = 12;

/// Adds the holds of a sheet to the steps that they follow.
pub fn add(graph: &Graph<'_>, rules: &Rules, sheet: &mut PuttingUp) {
    let mut all: Vec<Hold> = Vec::new();
    let kind_of = |mark: &String| graph.timbers.iter().find(|t| t.mark() == mark).map(|t| t.kind());
    let mut seen_plates = false;
    for step in &mut sheet.steps {
        let has = |step: &Step, kind: MemberKind| step.members.iter().any(|m| kind_of(m) == Some(kind));
        let mut now: Vec<Hold> = Vec::new();
        if step.members.is_empty() {
            now.extend(walls(graph, rules));
        } else if !seen_plates && has(step, MemberKind::WallPlate) {
            seen_plates = true;
            now.push(plain("plates level all round and straight to a line", "plates", &rules.tolerance.level_mm));
            now.push(look("bed set and holding-down straps on before anything stands on the plates", "plates"));
            now.extend(diagonals(graph, rules));
        }
        if has(step, MemberKind::RidgeBoard) {
            now.extend(ridges(graph, rules, step));
        }
        if has(step, MemberKind::HipRafter) {
            for mark in step.members.iter().filter(|m| kind_of(m) == Some(MemberKind::HipRafter)) {
                now.push(plain("hip straight along a string", mark, &rules.tolerance.hip_line_mm));
            }
        }
        if has(step, MemberKind::ValleyRafter) {
            now.push(plain(
                "valley in the plane of both slopes, by straight-edge",
                "valleys",
                &rules.tolerance.straight_mm,
            ));
        }
        let fills = has(step, MemberKind::CommonRafter) && step.props_set.is_empty();
        if fills {
            now.push(plain(
                "ridge straight by eye line, every few pairs; tails to a line",
                "ridge",
                &rules.tolerance.straight_mm,
            ));
        }
        if fills && graph.timbers.iter().any(|t| t.kind() == MemberKind::CeilingJoist) {
            now.push(look("every rafter foot nailed to its ceiling joist, as many as the strength asks for", "joists"));
        }
        if has(step, MemberKind::JackRafter) {
            now.push(plain("hip still straight along its string", "hips", &rules.tolerance.hip_line_mm));
        }
        if has(step, MemberKind::Collar) || fills && !has(step, MemberKind::JackRafter) {
            now.push(plain(
                "span at the plates as at the first: no spread before any load",
                "plates",
                &rules.tolerance.spread_mm,
            ));
        }
        if has(step, MemberKind::Trimmer) {
            now.extend(openings(graph, rules, step));
        }
        for mut hold in now {
            hold.number = u32::try_from(all.len() + 1).unwrap_or(u32::MAX);
            step.holds.push(hold.number);
            all.push(hold);
        }
    }
    sheet.holds = all;
}

fn hold(what: &str, at: &str, figure_mm: Option<f64>, tolerance: &Figure, per_metre: bool) -> Hold {
    Hold {
        number: 0,
        what: what.to_owned(),
        at: at.to_owned(),
        figure_mm,
        tolerance: Some(tolerance.value),
        per_metre,
        standing: tolerance.standing.into(),
    }
}

/// What is looked at and has no size.
fn look(what: &str, at: &str) -> Hold {
    Hold {
        number: 0,
        what: what.to_owned(),
        at: at.to_owned(),
        figure_mm: None,
        tolerance: None,
        per_metre: false,
        standing: Standing::CommonPractice,
    }
}

fn plain(what: &str, at: &str, tolerance: &Figure) -> Hold {
    hold(what, at, None, tolerance, false)
}

fn walls(graph: &Graph<'_>, rules: &Rules) -> Vec<Hold> {
    let walls = graph.solution.plan.walls.iter();
    walls
        .map(|w| {
            hold(
                "length of the wall on its outer edge",
                &format!("wall {}", w.id),
                Some(w.length_mm),
                &rules.tolerance.wall_length_mm,
                false,
            )
        })
        .collect()
}

/// Diagonals between corners, which go by the wall that starts there; the walls themselves are no diagonals.
fn diagonals(graph: &Graph<'_>, rules: &Rules) -> Vec<Hold> {
    let Some(ring) = graph.job.loops.first() else { return Vec::new() };
    let n = ring.len();
    let letter = |k: usize| graph.job.walls.get(k).map_or(String::new(), |w| w.letter.clone());
    let mut out = Vec::new();
    for a in 0..n {
        for b in a + 2..n {
            if (a == 0 && b == n - 1) || (n > MOST_CORNERS && a > 1) || out.len() >= MOST_DIAGONALS {
                continue;
            }
            let (Some(p), Some(q)) = (ring.get(a), ring.get(b)) else { continue };
            let length = DVec2::from_array(*p).distance(DVec2::from_array(*q));
            let at = format!("corners {} and {}", letter(a), letter(b));
            out.push(hold("diagonal across the plates", &at, Some(length), &rules.tolerance.diagonal_mm, false));
        }
    }
    out
}

fn ridges(graph: &Graph<'_>, rules: &Rules, step: &Step) -> Vec<Hold> {
    let mut out = Vec::new();
    for t in graph
        .timbers
        .iter()
        .filter(|t| t.kind() == MemberKind::RidgeBoard && step.members.iter().any(|m| m == t.mark()))
    {
        for (end, s) in [("foot end", 0.0), ("head end", t.length)] {
            let p = t.under(s);
            let height = p.z - plate_level(graph, p.truncate());
            let at = format!("{}, {end}", t.mark());
            out.push(hold(
                "underside of the ridge over the plates",
                &at,
                Some(height),
                &rules.tolerance.ridge_height_mm,
                false,
            ));
            if let Some((wall, square_in)) = over_mark(graph, p.truncate()) {
                // Over a verge the end of a ridge stands outside its wall.
                let side = if square_in < 0.0 { "square out" } else { "square in" };
                out.push(hold(
                    &format!("end of the ridge plumb over its mark: from the outer edge of wall {wall}, {side}"),
                    &at,
                    Some(square_in.abs()),
                    &rules.tolerance.over_marks_mm,
                    false,
                ));
            }
        }
        out.push(plain("ridge level from end to end", t.mark(), &rules.tolerance.level_mm));
        out.push(hold("first pairs plumb", t.mark(), None, &rules.tolerance.plumb_mm_in_m, true));
    }
    out
}

/// The nearest wall that a square from a place falls on, and how far square in from its outer edge the place is, mm:
/// less than nothing outside it.
fn over_mark(graph: &Graph<'_>, p: DVec2) -> Option<(String, f64)> {
    let walls = graph.job.walls.iter().enumerate().filter_map(|(k, w)| {
        let [a, b] = wall_line(graph.job, k)?;
        let along = (b - a).normalize_or_zero();
        let falls_on = (0.0..=a.distance(b)).contains(&along.dot(p - a));
        falls_on.then(|| (w.letter.clone(), along.perp_dot(p - a)))
    });
    walls.min_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
}

fn openings(graph: &Graph<'_>, rules: &Rules, step: &Step) -> Vec<Hold> {
    let mut out = Vec::new();
    for o in graph.solution.openings.iter().filter(|o| o.trimmers.iter().any(|t| step.members.contains(t))) {
        let [a, b, c, _] = o.outline.map(geometry::DVec3::from_array);
        for (what, mm) in [
            ("clear width of the opening", a.distance(b)),
            ("clear height of the opening", b.distance(c)),
            ("diagonal of the opening", a.distance(c)),
        ] {
            out.push(hold(what, &o.name, Some(mm), &rules.tolerance.opening_mm, false));
        }
    }
    out
}
