//! The roof at a step, seen from above a corner: what stands is thin, what comes now is bold. Every timber is its middle
//! line, which is enough to see where it goes.

use crate::refusal::Refusal;
use crate::views::SitePictureAsk;
use crate::wording::Writing;
use geometry::Angle;
use picture::{Anchor, Ink, Part, Picture, Pt, Shape};
use roof::solution::{Member, Solution};
use site::sequence::{PuttingUp, Step};
use site::whole::Site;

/// The narrowest and the widest picture, px: a small phone, a tablet on the bench.
const WIDTHS: [f64; 2] = [280.0, 760.0];
/// Height of the picture against its width.
const HIGH: f64 = 0.72;
/// Kept free all round, px: names stand beside what they name.
const MARGIN: f64 = 26.0;
/// Height of type, px.
const TYPE: f64 = 15.0;
/// From which side of its corner the roof is looked at, degrees: not along any wall of an oblong plan.
const ROUND: f64 = 32.0;
/// How steeply it is looked down upon, degrees: that of an isometric drawing.
const DOWN: f64 = 35.26;
/// A quarter of a turn, degrees.
const QUARTER: f64 = 90.0;
/// Names are written beside no more timbers than this: more would hide one another.
const MOST_NAMES: usize = 4;
/// What a name stands beside the middle of its line, px.
const BESIDE: f64 = 5.0;

/// The picture of a step.
pub(super) fn of(
    solution: &Solution,
    site: &Site,
    writing: &Writing,
    ask: &SitePictureAsk,
) -> Result<Picture, Refusal> {
    let up = site.putting_up.as_ref();
    let step = up.and_then(|up| up.steps.iter().find(|step| step.number == ask.step));
    let (Some(up), Some(step)) = (up, step) else {
        return Err(Refusal::new(
            "no-such-step",
            format!("There is no step {}", ask.step),
            "Open the steps again: the roof may have changed since",
        ));
    };
    Ok(Drawing::of(solution, up, ask).drawn(step, writing))
}

/// How points of the roof come onto the sheet.
struct Sight {
    round: [f64; 2],
    down: [f64; 2],
    scale: f64,
    shift: Pt,
}

impl Sight {
    /// Right and down as seen, mm, before they are brought to the size of the sheet.
    fn seen(&self, [x, y, z]: [f64; 3]) -> Pt {
        let [cos, sin] = self.round;
        let [level, plumb] = self.down;
        let (right, away) = (x * cos + y * sin, y * cos - x * sin);
        [right, -away * plumb - z * level]
    }

    fn at(&self, point: [f64; 3]) -> Pt {
        let [x, y] = self.seen(point);
        [x * self.scale + self.shift[0], y * self.scale + self.shift[1]]
    }
}

struct Drawing<'a> {
    solution: &'a Solution,
    up: &'a PuttingUp,
    sight: Sight,
    size: Pt,
}

impl<'a> Drawing<'a> {
    fn of(solution: &'a Solution, up: &'a PuttingUp, ask: &SitePictureAsk) -> Self {
        let wanted = if ask.width.is_finite() { ask.width } else { WIDTHS[0] };
        let width = wanted.clamp(WIDTHS[0], WIDTHS[1]);
        let size = [width, (width * HIGH).round()];
        let turn = Angle::deg(ROUND + QUARTER * f64::from(ask.turn % 4));
        let down = Angle::deg(DOWN);
        let mut sight =
            Sight { round: [turn.cos(), turn.sin()], down: [down.cos(), down.sin()], scale: 1.0, shift: [0.0; 2] };
        let members = solution.members.iter().flat_map(|member| member.solid.points.iter().copied());
        let props = up.props.iter().flat_map(|prop| [prop.foot, prop.head]);
        let braces = up.braces.iter().flat_map(|brace| [brace.from, brace.to]);
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for point in members.chain(props).chain(braces) {
            for (k, seen) in sight.seen(point).into_iter().enumerate() {
                low[k] = low[k].min(seen);
                high[k] = high[k].max(seen);
            }
        }
        let room = size.map(|side| side - 2.0 * MARGIN);
        let wide = [high[0] - low[0], high[1] - low[1]];
        let scale = (room[0] / wide[0]).min(room[1] / wide[1]);
        if scale.is_finite() && scale > 0.0 {
            let free = |k: usize| (size[k] - wide[k] * scale) / 2.0 - low[k] * scale;
            sight.scale = scale;
            sight.shift = [free(0), free(1)];
        }
        Self { solution, up, sight, size }
    }

    fn drawn(&self, step: &Step, writing: &Writing) -> Picture {
        let mut parts = self.walls();
        let before = || self.up.steps.iter().filter(|other| other.number < step.number);
        let stands: Vec<&str> = before().flat_map(|other| other.members.iter().map(String::as_str)).collect();
        for member in self.solution.members.iter().filter(|member| stands.contains(&member.mark.as_str())) {
            parts.push(self.line(Ink::Edge, &member.mark, axis(member)));
        }
        // What was set before and is still there; what is taken out in this step is drawn as hidden.
        for (name, ends) in self.bars() {
            let set = before().any(|other| sets(other, name));
            let gone = before().any(|other| takes_out(other, name));
            if set && !gone {
                let ink = if takes_out(step, name) { Ink::Hidden } else { Ink::Centre };
                parts.push(self.line(ink, name, ends));
            }
        }
        let mut names: Vec<(&str, Pt)> = Vec::new();
        let now: Vec<&Member> =
            self.solution.members.iter().filter(|member| step.members.contains(&member.mark)).collect();
        for member in &now {
            let ends = axis(member);
            parts.push(self.line(Ink::Chosen, &member.mark, ends));
            if now.len() <= MOST_NAMES {
                names.push((&member.mark, self.middle(ends)));
            }
        }
        for (name, ends) in self.bars().filter(|(name, _)| sets(step, name)) {
            parts.push(self.line(Ink::Chosen, name, ends));
            names.push((name, self.middle(ends)));
        }
        for (name, [x, y]) in names {
            let at = [x + BESIDE, y - BESIDE];
            parts.push(Part {
                ink: Ink::Chosen,
                name: Some(name.to_owned()),
                shape: Shape::Text { at, size: TYPE, anchor: Anchor::Start, turn_deg: 0.0, text: name.to_owned() },
            });
        }
        let spoken = format!(
            "The roof at step {}: {} timbers stand, {} come now, drawn bold",
            step.number,
            stands.len(),
            now.len()
        );
        Picture { width: self.size[0], height: self.size[1], spoken: writing.say(&spoken), parts }
    }

    /// The plate lines, so that there is something to see before anything stands.
    fn walls(&self) -> Vec<Part> {
        let plan = &self.solution.plan;
        let line = |wall: &roof::solution::WallOut| {
            let up = |[x, y]: [f64; 2]| self.sight.at([x, y, 0.0]);
            Part { ink: Ink::Faint, name: None, shape: Shape::Line { points: vec![up(wall.from), up(wall.to)] } }
        };
        plan.walls.iter().map(line).collect()
    }

    /// Props, braces and bracing that stays, by name.
    fn bars(&self) -> impl Iterator<Item = (&'a str, [[f64; 3]; 2])> {
        let props = self.up.props.iter().map(|one| (one.name.as_str(), [one.foot, one.head]));
        let braces = self.up.braces.iter().map(|one| (one.name.as_str(), [one.to, one.from]));
        let permanent = self.up.permanent.iter().map(|one| (one.name.as_str(), [one.from, one.to]));
        props.chain(braces).chain(permanent)
    }

    fn line(&self, ink: Ink, name: &str, ends: [[f64; 3]; 2]) -> Part {
        let points = ends.map(|end| self.sight.at(end)).to_vec();
        Part { ink, name: Some(name.to_owned()), shape: Shape::Line { points } }
    }

    fn middle(&self, [a, b]: [[f64; 3]; 2]) -> Pt {
        self.sight.at(core::array::from_fn(|k| (a[k] + b[k]) / 2.0))
    }
}

fn sets(step: &Step, name: &str) -> bool {
    [&step.props_set, &step.braces_set, &step.permanent_set].iter().any(|names| names.iter().any(|one| one == name))
}

fn takes_out(step: &Step, name: &str) -> bool {
    [&step.props_out, &step.braces_out].iter().any(|names| names.iter().any(|one| one == name))
}

/// The middle line of a timber, from foot to head.
fn axis(member: &Member) -> [[f64; 3]; 2] {
    let bench = &member.bench;
    let ends = |k: usize| {
        let all = bench.points.iter().map(|point| point[k]);
        let (least, most) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, m), v| (l.min(v), m.max(v)));
        if least <= most { (least, most) } else { (0.0, 0.0) }
    };
    let ((foot, head), (under, back)) = (ends(0), ends(1));
    let up = (under + back) / 2.0;
    [foot, head].map(|along| core::array::from_fn(|k| bench.origin[k] + along * bench.along[k] + up * bench.up[k]))
}
