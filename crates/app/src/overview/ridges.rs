//! Ridges by a name that holds while the roof keeps its form.

use roof::solution::{FaceOut, LineKind, LineOut, Solution};

/// A ridge between two slopes.
pub(crate) struct Ridge<'a> {
    /// `A-C`, and with a number where several ridges lie between the same two walls: `A-C-2`.
    pub(crate) id: String,
    /// Its line on the pitch planes.
    pub(crate) line: &'a LineOut,
    /// The walls of the slopes on its two sides.
    pub(crate) walls: [&'a [String]; 2],
}

impl Ridge<'_> {
    /// Height above the datum of the plates, mm.
    pub(crate) fn height(&self) -> f64 {
        self.line.from[2]
    }
}

/// The ridges of a roof.
pub(crate) fn ridges(solution: &Solution) -> Vec<Ridge<'_>> {
    let number = |id: &str| solution.plan.walls.iter().position(|wall| wall.id == *id);
    let mut found: Vec<([usize; 2], &LineOut, [&FaceOut; 2])> = Vec::new();
    for line in solution.lines.iter().filter(|line| line.kind == LineKind::Ridge) {
        let [one, other] = line.faces.as_slice() else { continue };
        let face = |id: &String| solution.faces.iter().find(|face| face.id == *id);
        if let (Some(a), Some(b), Some(one), Some(other)) = (number(one), number(other), face(one), face(other)) {
            let in_order = if a <= b { ([a, b], line, [one, other]) } else { ([b, a], line, [other, one]) };
            found.push(in_order);
        }
    }
    // Several between the same walls are counted along the first of them.
    found.sort_by(|a, b| {
        let along = |walls: [usize; 2], line: &LineOut| {
            let wall = solution.plan.walls.get(walls[0]);
            wall.map_or(0.0, |w| {
                let middle = [0, 1].map(|k| (line.from[k] + line.to[k]) / 2.0 - w.from[k]);
                middle[0] * (w.to[0] - w.from[0]) + middle[1] * (w.to[1] - w.from[1])
            })
        };
        a.0.cmp(&b.0).then(along(a.0, a.1).total_cmp(&along(b.0, b.1)))
    });
    let mut out: Vec<Ridge<'_>> = Vec::with_capacity(found.len());
    let mut same = 0;
    for (n, (walls, line, faces)) in found.iter().enumerate() {
        same = if n > 0 && found[n - 1].0 == *walls { same + 1 } else { 1 };
        let base = format!("{}-{}", faces[0].id, faces[1].id);
        let id = if same == 1 { base } else { format!("{base}-{same}") };
        out.push(Ridge { id, line, walls: [&faces[0].walls, &faces[1].walls] });
    }
    out
}
