//! What a timber rests on, read from where it touches and how the two lie.

use super::run::Run;
use super::{Carrying, is_rafter};
use geometry::{DVec2, DVec3};
use roof::solution::MemberKind;

/// A run that stops this near to a wall's line is built into the wall, mm.
const BUILT_IN: f64 = 160.0;

/// A timber lies on a bearing line when its underside is this near to the top of it, mm.
const LEVEL_WITH: f64 = 2.0;

/// The same place along a run, mm.
pub(super) const SAME_PLACE: f64 = 1.0;

/// What holds a timber up at a place.
#[derive(Clone, Debug, PartialEq)]
pub enum Under {
    /// A wall by its letter, through its plate or built in.
    Wall(String),
    /// A line of `[bearings]` by its name.
    Bearing(String),
    /// Another run, at a place along that run, mm.
    Run(usize, f64),
    /// A ridge board, at a place along it, mm: it passes the load to the pairs of rafters beside.
    Ridge(usize, f64),
}

/// A place where a run is held up.
#[derive(Clone, Debug)]
pub struct Rest {
    /// Along the run, mm from its foot.
    pub at: f64,
    /// By what.
    pub under: Under,
    /// What they share, mm², where it was found from solids.
    pub area: f64,
}

impl Carrying<'_> {
    /// Where a run rests, from its foot.
    #[must_use]
    pub fn rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        let mut rests = match me.kind {
            kind if is_rafter(kind) => self.rafter_rests(run),
            MemberKind::HipRafter | MemberKind::ValleyRafter => self.spine_rests(run),
            MemberKind::Purlin => {
                self.level_rests(run, true, &[MemberKind::Strut, MemberKind::HipRafter, MemberKind::ValleyRafter])
            }
            MemberKind::RidgeBoard => self.level_rests(run, true, &[]),
            MemberKind::Binder => {
                self.level_rests(run, false, &[MemberKind::Hanger, MemberKind::WallPlate, MemberKind::Trimmer])
            }
            MemberKind::CeilingJoist => self.joist_rests(run),
            MemberKind::Trimmer => self.trimmer_rests(run),
            MemberKind::Strut => self.strut_rests(run),
            MemberKind::Hanger => self.hanger_rests(run),
            _ => Vec::new(),
        };
        rests.sort_by(|a, b| a.at.total_cmp(&b.at));
        // Two finds at one place are one rest; the one with wood under it stands.
        rests.dedup_by(|next, kept| {
            let same = (next.at - kept.at).abs() < SAME_PLACE;
            if same && next.area > kept.area {
                core::mem::swap(next, kept);
            }
            same
        });
        rests
    }

    fn letter(&self, plate: usize) -> Under {
        Under::Wall(self.runs[plate].wall.clone().unwrap_or_default())
    }

    fn on(&self, other: usize, at: DVec3) -> Under {
        let run = &self.runs[other];
        let along = run.along_of(at);
        if run.kind != MemberKind::RidgeBoard {
            return Under::Run(other, along);
        }
        // The board of a lean-to is fixed to the wall behind it.
        let ends = [run.at(0.0).truncate(), run.at(run.length).truncate()];
        let behind =
            self.solution.plan.walls.iter().find(|w| ends.iter().all(|p| off_segment(*p, w.from, w.to) < BUILT_IN));
        behind.map_or(Under::Ridge(other, along), |w| Under::Wall(w.id.clone()))
    }

    fn rafter_rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        let [foot, head] = me.pitch_line;
        let mut rests = Vec::new();
        let out = self.stands_out(run);
        for contact in &self.contacts[run] {
            let along = me.along_of(contact.at);
            let end = if along < (foot + head) / 2.0 { foot } else { head };
            let at = match self.runs[contact.other].kind {
                MemberKind::WallPlate => {
                    rests.push(Rest { at: foot, under: self.letter(contact.other), area: contact.area });
                    continue;
                }
                MemberKind::Purlin => along,
                MemberKind::RidgeBoard | MemberKind::HipRafter | MemberKind::ValleyRafter | MemberKind::Trimmer
                    if contact.normal.dot(me.along).abs() > ENDWAYS =>
                {
                    end
                }
                // A rung of a ladder brings the wall of the gable to a rafter that stands out from it.
                MemberKind::GableLadder if out => {
                    if let Some(wall) = self.gable_beside(contact.at) {
                        rests.push(Rest { at: along, under: Under::Wall(wall), area: contact.area });
                    }
                    continue;
                }
                _ => continue,
            };
            rests.push(Rest { at, under: self.on(contact.other, contact.at), area: contact.area });
        }
        // The head at the very end of a ridge may only touch what else ends there.
        if !out
            && !rests.iter().any(|r| (r.at - head).abs() < SAME_PLACE)
            && let Some((ridge, at)) = self.ridge_near(me.at(head))
        {
            rests.push(Rest { at: head, under: self.on(ridge, self.runs[ridge].at(at)), area: 0.0 });
        }
        rests
    }

    /// Whether a rafter stands beyond a gable, where the ladder carries it.
    fn stands_out(&self, run: usize) -> bool {
        let middle = (self.runs[run].ends[0] + self.runs[run].ends[1]).truncate() / 2.0;
        let corners = &self.solution.plan.corners;
        let sides = corners.iter().zip(corners.iter().cycle().skip(1));
        // As many sides are crossed to the east of it as it takes to be inside: an odd number.
        let crossed = sides.filter(|(a, b)| {
            (a[1] > middle.y) != (b[1] > middle.y)
                && middle.x < a[0] + (middle.y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        });
        crossed.count() % 2 == 0
    }

    fn gable_beside(&self, at: DVec3) -> Option<String> {
        let off = |w: &roof::solution::WallOut| {
            let (a, b) = (DVec2::from_array(w.from), DVec2::from_array(w.to));
            (b - a).normalize_or_zero().perp_dot(at.truncate() - a).abs()
        };
        let gables = self.solution.plan.walls.iter().filter(|w| w.gable);
        gables.min_by(|a, b| off(a).total_cmp(&off(b))).map(|w| w.id.clone())
    }

    /// Hips and valleys: on the plates at the foot; at the head on a ridge, or on what stands where the ridge ends.
    fn spine_rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        let [foot, head] = me.pitch_line;
        let mut rests: Vec<Rest> = Vec::new();
        for contact in &self.contacts[run] {
            let along = me.along_of(contact.at);
            match self.runs[contact.other].kind {
                MemberKind::WallPlate => {
                    rests.push(Rest { at: foot, under: self.letter(contact.other), area: contact.area });
                }
                MemberKind::RidgeBoard if along > (foot + head) / 2.0 => {
                    rests.push(Rest { at: head, under: self.on(contact.other, contact.at), area: contact.area });
                }
                // A hip or valley that dies into the side of another rests on it; two whose ends meet only lean.
                MemberKind::HipRafter | MemberKind::ValleyRafter
                    if contact.normal.dot(me.along).abs() > ENDWAYS && !self.at_end(contact.other, contact.at) =>
                {
                    let at = if along < (foot + head) / 2.0 { foot } else { head };
                    rests.push(Rest { at, under: self.on(contact.other, contact.at), area: contact.area });
                }
                _ => {}
            }
        }
        if !rests.iter().any(|r| (r.at - head).abs() < SAME_PLACE)
            && let Some((ridge, at)) = self.ridge_near(me.at(head))
        {
            rests.push(Rest { at: head, under: Under::Ridge(ridge, at), area: 0.0 });
        }
        rests
    }

    /// Whether a place of a run is one of its ends.
    fn at_end(&self, run: usize, place: DVec3) -> bool {
        // Heads that meet lap over the thickness of one another.
        const END: f64 = 200.0;
        let [foot, head] = self.runs[run].pitch_line;
        let along = self.runs[run].along_of(place);
        along < foot + END || along > head - END
    }

    /// The ridge board whose end stands at a place.
    fn ridge_near(&self, place: DVec3) -> Option<(usize, f64)> {
        // A hip's head is cut against rafters that stand within their own thickness and the hip's from the ridge's end.
        const NEAR: f64 = 300.0;
        let ridges = self.runs.iter().enumerate().filter(|(_, r)| r.kind == MemberKind::RidgeBoard);
        let on = ridges.map(|(k, r)| {
            let along = r.along_of(place).clamp(0.0, r.length);
            (k, along, r.at(along).truncate().distance(place.truncate()))
        });
        on.filter(|(.., off)| *off < NEAR).min_by(|a, b| a.2.total_cmp(&b.2)).map(|(k, along, _)| (k, along))
    }

    /// Level timbers: on what is under or beside them, on walls of `[bearings]`, and built into gables if `in_gables`.
    fn level_rests(&self, run: usize, in_gables: bool, kinds: &[MemberKind]) -> Vec<Rest> {
        let me = &self.runs[run];
        let mut rests: Vec<Rest> = Vec::new();
        for contact in self.contacts[run].iter().filter(|c| kinds.contains(&self.runs[c.other].kind)) {
            let at = me.along_of(contact.at).clamp(0.0, me.length);
            let under = match self.runs[contact.other].kind {
                MemberKind::WallPlate => self.letter(contact.other),
                _ => self.on(contact.other, contact.at),
            };
            rests.push(Rest { at, under, area: contact.area });
        }
        if in_gables {
            rests.extend(self.in_gables(me));
        } else {
            rests.extend(self.over_bearings(me));
        }
        rests
    }

    fn joist_rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        let mut rests = self.level_rests(run, false, &[MemberKind::WallPlate]);
        for contact in &self.contacts[run] {
            let endways = contact.normal.dot(me.along).abs() > ENDWAYS;
            let other = &self.runs[contact.other];
            let held = match other.kind {
                MemberKind::Trimmer | MemberKind::CeilingJoist => endways,
                // A binder over the joists carries them when something else carries it.
                MemberKind::Binder => contact.normal.z > 0.0 && self.is_hung(contact.other),
                _ => false,
            };
            let at = me.along_of(contact.at).clamp(0.0, me.length);
            if held {
                rests.push(Rest { at, under: self.on(contact.other, contact.at), area: contact.area });
            } else if other.kind == MemberKind::AngleTie && endways {
                // A tie across a corner is short and lies on the plates: what comes on it is on the wall.
                rests.push(Rest { at, under: self.letter(contact.other), area: contact.area });
            }
        }
        rests
    }

    /// Whether a binder has at least two places of its own to hang from or stand on.
    fn is_hung(&self, binder: usize) -> bool {
        self.rests(binder).len() > 1
    }

    fn trimmer_rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        self.contacts[run]
            .iter()
            .filter(|c| c.normal.dot(me.along).abs() > ENDWAYS)
            .filter(|c| is_rafter(self.runs[c.other].kind) || self.runs[c.other].kind == MemberKind::CeilingJoist)
            .map(|c| Rest { at: me.along_of(c.at).clamp(0.0, me.length), under: self.on(c.other, c.at), area: c.area })
            .collect()
    }

    fn strut_rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        let foot = me.at(0.0).truncate();
        let off = |b: &job::BearingLine| off_segment(foot, b.from, b.to);
        let nearest = self.job.bearings.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
        nearest.map(|b| Rest { at: 0.0, under: Under::Bearing(b.name.clone()), area: 0.0 }).into_iter().collect()
    }

    /// A hanger hangs from the purlin or rafter that its upper end touches.
    fn hanger_rests(&self, run: usize) -> Vec<Rest> {
        let me = &self.runs[run];
        let upper = self.contacts[run].iter().filter(|c| {
            let kind = self.runs[c.other].kind;
            me.along_of(c.at) > me.length / 2.0 && (is_rafter(kind) || kind == MemberKind::Purlin)
        });
        let best = upper.max_by(|a, b| a.area.total_cmp(&b.area));
        best.map(|c| Rest { at: me.length, under: self.on(c.other, c.at), area: c.area }).into_iter().collect()
    }

    fn in_gables(&self, me: &Run) -> Vec<Rest> {
        let ends = [me.at(0.0).truncate(), me.at(me.length).truncate()];
        let gables = self.solution.plan.walls.iter().filter(|w| w.gable);
        gables
            .filter_map(|w| {
                let at = met(ends, [w.from, w.to], BUILT_IN)?;
                Some(Rest { at: (at * me.length).clamp(0.0, me.length), under: Under::Wall(w.id.clone()), area: 0.0 })
            })
            .collect()
    }

    fn over_bearings(&self, me: &Run) -> Vec<Rest> {
        let ends = [me.at(0.0).truncate(), me.at(me.length).truncate()];
        self.job
            .bearings
            .iter()
            .filter(|b| (me.origin.z - b.top).abs() < LEVEL_WITH)
            .filter_map(|b| {
                let at = met(ends, [b.from, b.to], 0.0)?;
                Some(Rest { at: at * me.length, under: Under::Bearing(b.name.clone()), area: 0.0 })
            })
            .collect()
    }
}

/// A face whose normal is nearer to a timber's length than this (as a cosine) is one of its ends.
const ENDWAYS: f64 = 0.3;

/// How far a point is from a segment in plan, mm.
fn off_segment(p: DVec2, from: [f64; 2], to: [f64; 2]) -> f64 {
    let (a, b) = (DVec2::from_array(from), DVec2::from_array(to));
    let length2 = (b - a).length_squared();
    let t = if length2 > 0.0 { ((p - a).dot(b - a) / length2).clamp(0.0, 1.0) } else { 0.0 };
    p.distance(a + (b - a) * t)
}

/// Where a segment meets another in plan, as a share of the first, when it does or stops within `reach` of it, mm.
fn met(ends: [DVec2; 2], line: [[f64; 2]; 2], reach: f64) -> Option<f64> {
    let [a, b] = ends;
    let (p, q) = (DVec2::from_array(line[0]), DVec2::from_array(line[1]));
    let (d, e) = (b - a, q - p);
    let turn = d.perp_dot(e);
    // Lines nearer to parallel than a degree or two do not cross.
    if turn.abs() < 0.03 * d.length() * e.length() {
        return None;
    }
    let t = (p - a).perp_dot(e) / turn;
    let u = (p - a).perp_dot(d) / turn;
    let (slack_t, slack_u) = (reach / d.length(), SAME_PLACE / e.length());
    ((-slack_t..=1.0 + slack_t).contains(&t) && (-slack_u..=1.0 + slack_u).contains(&u)).then_some(t)
}
