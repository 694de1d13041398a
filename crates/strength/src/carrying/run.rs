//! Timbers as they act: lengths that are spliced together are one run.

use geometry::DVec3;
use roof::solution::{CutPlace, Member, MemberKind, SpliceForm};
use std::collections::BTreeMap;

/// A splice within a run.
#[derive(Clone, Copy, Debug)]
pub struct Joined {
    /// Where its middle is, mm from the foot of the run.
    pub at: f64,
    /// Its length, mm.
    pub length: f64,
    /// How it is made.
    pub form: SpliceForm,
    /// Bolts through it.
    pub bolts: usize,
    /// Diameter of the bolts, mm; 0 without.
    pub diameter: f64,
}

impl Joined {
    /// Whether it passes bending on. A scarf without bolts or plates is a hinge.
    #[must_use]
    pub const fn stiff(&self) -> bool {
        self.bolts > 0
    }
}

/// A run of timber.
#[derive(Clone, Debug)]
pub struct Run {
    /// Its mark; of several lengths, the mark that they share.
    pub mark: String,
    /// Kind.
    pub kind: MemberKind,
    /// Letter of the wall whose face it lies in.
    pub wall: Option<String>,
    /// Its lengths by their numbers in the solution, from the foot.
    pub parts: Vec<usize>,
    /// On the underside, square below its footmost point, mm.
    pub origin: DVec3,
    /// Along it, from foot to head.
    pub along: DVec3,
    /// Up its depth.
    pub up: DVec3,
    /// Across its thickness, to the left.
    pub across: DVec3,
    /// Its length, mm.
    pub length: f64,
    /// Thickness, mm.
    pub thickness: f64,
    /// Depth, mm.
    pub depth: f64,
    /// Its pitch line: plate line and centre of the ridge, mm from the foot. Other timbers: their ends.
    pub pitch_line: [f64; 2],
    /// The ends of its pitch line, mm.
    pub ends: [DVec3; 2],
    /// Its splices, from the foot.
    pub splices: Vec<Joined>,
    /// Net volume, m³.
    pub volume: f64,
}

impl Run {
    /// How far along the run a point lies, mm from its foot.
    #[must_use]
    pub fn along_of(&self, point: DVec3) -> f64 {
        self.along.dot(point - self.origin)
    }

    /// The point of its pitch line, or of its middle, at a distance along it.
    #[must_use]
    pub fn at(&self, along: f64) -> DVec3 {
        self.origin + self.along * along + self.up * (self.depth / 2.0)
    }
}

/// The runs of a roof, in the order of their first lengths, and the run of each member (`None` for fish plates, wedges
/// and whatever carries nothing).
#[must_use]
pub fn runs(members: &[Member]) -> (Vec<Run>, Vec<Option<usize>>) {
    let by_mark: BTreeMap<&str, usize> = members.iter().enumerate().map(|(k, m)| (m.mark.as_str(), k)).collect();
    let mut of_member = vec![None; members.len()];
    let mut runs = Vec::new();
    for (k, member) in members.iter().enumerate() {
        let apart = matches!(member.kind, MemberKind::FishPlate | MemberKind::Wedge);
        let first = !member.splices.iter().any(|s| s.at == CutPlace::Foot);
        if apart || !first {
            continue;
        }
        let mut parts = vec![k];
        // No run has more lengths than there are timbers.
        while parts.len() < members.len()
            && let Some(next) = next_of(members, *parts.last().unwrap_or(&k), &by_mark)
            && !parts.contains(&next)
        {
            parts.push(next);
        }
        for part in &parts {
            of_member[*part] = Some(runs.len());
        }
        runs.push(run(members, parts));
    }
    (runs, of_member)
}

fn next_of(members: &[Member], k: usize, by_mark: &BTreeMap<&str, usize>) -> Option<usize> {
    let splice = members.get(k)?.splices.iter().find(|s| s.at == CutPlace::Head)?;
    by_mark.get(splice.mate.as_str()).copied()
}

fn run(members: &[Member], parts: Vec<usize>) -> Run {
    let first = &members[parts[0]];
    let bench = &first.bench;
    let (origin, along) = (DVec3::from_array(bench.origin), DVec3::from_array(bench.along));
    let reach =
        |m: &Member| m.solid.points.iter().map(|p| along.dot(DVec3::from_array(*p) - origin)).fold(0.0, f64::max);
    let length = parts.iter().map(|k| reach(&members[*k])).fold(0.0, f64::max);
    let on = |p: [f64; 3]| along.dot(DVec3::from_array(p) - origin);
    let last = &members[*parts.last().unwrap_or(&parts[0])];
    let splices = parts
        .iter()
        .filter_map(|k| {
            let member = &members[*k];
            let splice = member.splices.iter().find(|s| s.at == CutPlace::Head)?;
            let start = on(member.bench.origin) + splice.from_mm;
            let diameter = splice.bolts.first().map_or(0.0, |b| b.diameter_mm);
            Some(Joined {
                at: start + splice.length_mm / 2.0,
                length: splice.length_mm,
                form: splice.kind,
                bolts: splice.bolts.len(),
                diameter,
            })
        })
        .collect();
    let mark = if parts.len() > 1 {
        first.mark.strip_suffix(|c: char| c.is_ascii_lowercase()).unwrap_or(&first.mark)
    } else {
        &first.mark
    };
    Run {
        mark: mark.to_owned(),
        kind: first.kind,
        wall: first.wall.clone(),
        origin,
        along,
        up: DVec3::from_array(bench.up),
        across: DVec3::from_array(bench.across),
        length,
        thickness: first.size.thickness_mm,
        depth: first.size.depth_mm,
        pitch_line: [on(first.axis.from), on(last.axis.to)],
        ends: [DVec3::from_array(first.axis.from), DVec3::from_array(last.axis.to)],
        splices,
        volume: parts.iter().map(|k| members[*k].volume_m3).sum(),
        parts,
    }
}
