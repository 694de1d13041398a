//! Properties of bricks with convex holes taken out of them: the solid is
//! closed, has the volume that is left, and every face lies in the plane that
//! its tag names.

use crate::common::plans::Dice;
use geometry::{Angle, Cell, ConvexPlan, DVec2, DVec3, Plane, Solid, carve};

/// Tag of faces between cells.
const INNER: u32 = u32::MAX;

/// First tag of the sides of holes; each hole has ten.
const HOLES: u32 = 100;

/// A frame of axes in space, so that nothing is parallel to the world's.
#[derive(Clone, Copy)]
struct Set {
    origin: DVec3,
    axes: [DVec3; 3],
}

impl Set {
    fn turned(dice: &mut Dice) -> Self {
        let x = DVec3::new(dice.between(-1.0, 1.0), dice.between(-1.0, 1.0), dice.between(-1.0, 1.0));
        let x = (x + DVec3::X * 2.0).normalize();
        let y = DVec3::Z.cross(x).normalize();
        let origin = DVec3::new(dice.between(-2e4, 2e4), dice.between(-2e4, 2e4), dice.between(0.0, 9e3));
        Self { origin, axes: [x, y, x.cross(y)] }
    }

    fn point(&self, p: DVec3) -> DVec3 {
        self.origin + self.axes[0] * p.x + self.axes[1] * p.y + self.axes[2] * p.z
    }

    /// The six planes of a box in these axes, with their tags from `first` on.
    fn block(&self, low: DVec3, high: DVec3, first: u32) -> Vec<(Plane, u32)> {
        let (low, high) = (self.point(low), self.point(high));
        let planes = self.axes.iter().flat_map(|a| [Plane::through(high, *a), Plane::through(low, -*a)]);
        planes.zip(first..).collect()
    }
}

/// A box as a cell: a big cube clipped by its planes.
fn cell_of(planes: &[(Plane, u32)], about: DVec3) -> Cell<u32> {
    let far = 1e5;
    let plan = ConvexPlan::strip(about.truncate(), DVec2::X, [-far, far], [-far, far], [INNER; 4]);
    let cube = Cell::prism(&plan, |_| about.z - far, |_| about.z + far, INNER, INNER);
    planes.iter().try_fold(cube, |c, (p, t)| c.clipped(*p, *t)).expect("the box is not empty")
}

/// What the planes leave of a cell, by clipping alone.
fn shared(cell: &Cell<u32>, holes: &[&Vec<(Plane, u32)>]) -> f64 {
    holes
        .iter()
        .flat_map(|h| h.iter())
        .try_fold(cell.clone(), |c, (p, t)| c.clipped(*p, *t))
        .map_or(0.0, |c| c.volume())
}

/// Volume of a cell outside all holes, by inclusion and exclusion.
fn outside(cell: &Cell<u32>, holes: &[Vec<(Plane, u32)>]) -> f64 {
    (0..1_u32 << holes.len())
        .map(|set| {
            let some: Vec<_> = holes.iter().enumerate().filter(|(k, _)| set >> k & 1 == 1).map(|(_, h)| h).collect();
            let sign = if some.len() % 2 == 0 { 1.0 } else { -1.0 };
            sign * shared(cell, &some)
        })
        .sum()
}

fn carved(cell: &Cell<u32>, holes: &[Vec<(Plane, u32)>]) -> (Vec<Cell<u32>>, Solid<u32>) {
    let cells = holes.iter().fold(vec![cell.clone()], |cells, hole| carve(&cells, hole, INNER));
    let solid = Solid::join(&cells, INNER);
    (cells, solid)
}

/// Corners less edges plus faces.
fn euler(solid: &Solid<u32>) -> i64 {
    let edges: usize = solid.faces.iter().map(|f| f.ring.len()).sum();
    solid.points.len() as i64 - edges as i64 / 2 + solid.faces.len() as i64
}

/// How often each edge is walked each way: at most `most` times, as often
/// forth as back.
fn assert_closed(solid: &Solid<u32>, most: usize, what: &str) {
    let mut edges: Vec<(u32, u32)> = Vec::new();
    for face in &solid.faces {
        let n = face.ring.len();
        edges.extend((0..n).map(|k| (face.ring[k], face.ring[(k + 1) % n])));
        for (k, a) in face.ring.iter().enumerate() {
            assert!(!face.ring[k + 1..].contains(a), "{what}: a face passes a point twice");
        }
    }
    for (a, b) in &edges {
        let forth = edges.iter().filter(|e| **e == (*a, *b)).count();
        let back = edges.iter().filter(|e| **e == (*b, *a)).count();
        assert!(forth == back && forth <= most, "{what}: an edge is walked {forth} and {back} times");
    }
    for a in &solid.faces {
        assert!(a.ring.len() >= 3, "{what}: a face of {} points", a.ring.len());
    }
}

/// Every face lies in the plane that its tag names and faces the right way.
fn assert_tags(solid: &Solid<u32>, brick: &[(Plane, u32)], holes: &[Vec<(Plane, u32)>], what: &str) {
    for face in &solid.faces {
        let own = brick.iter().find(|(_, t)| *t == face.tag).map(|(p, _)| *p);
        let cut = holes.iter().flatten().find(|(_, t)| *t == face.tag).map(|(p, _)| p.flipped());
        let plane = own.or(cut).unwrap_or_else(|| panic!("{what}: nobody's tag {}", face.tag));
        let at = |k: usize| solid.points[face.ring[k % face.ring.len()] as usize];
        let area = (0..face.ring.len()).map(|k| at(k).cross(at(k + 1))).fold(DVec3::ZERO, |a, b| a + b);
        assert!(area.dot(plane.normal) > 0.0, "{what}: face {} is inside out", face.tag);
        for k in 0..face.ring.len() {
            assert!(plane.distance(at(k)).abs() < 1e-5, "{what}: face {} leaves its plane", face.tag);
        }
    }
}

fn assert_volume(solid: &Solid<u32>, cells: &[Cell<u32>], expected: f64, what: &str) {
    let parts: f64 = cells.iter().map(Cell::volume).sum();
    assert!((solid.volume() - expected).abs() < 1e-2, "{what}: {} mm³, not {expected}", solid.volume());
    assert!((parts - expected).abs() < 1e-2, "{what}: parts of {parts} mm³, not {expected}");
}

/// A box or a wedge-like hole in axes of its own, somewhere in the brick.
fn random_hole(dice: &mut Dice, set: &Set, size: DVec3, first: u32) -> Vec<(Plane, u32)> {
    let own = Set::turned(dice);
    let at = set.point(DVec3::new(dice.between(0.0, size.x), dice.between(0.0, size.y), dice.between(0.0, size.z)));
    let frame = if dice.chance(0.5) { Set { origin: at, ..own } } else { Set { origin: at, ..*set } };
    let reach = DVec3::new(dice.between(10.0, 200.0), dice.between(5.0, 80.0), dice.between(5.0, 250.0));
    let mut planes = frame.block(-reach, reach, first);
    if dice.chance(0.4) {
        let n = (own.axes[0] + own.axes[2] * dice.between(-1.0, 1.0)).normalize();
        planes.push((Plane::through(at + own.axes[1] * 3.0, n), first + 6));
    }
    planes
}

#[test]
fn random_holes_leave_closed_solids_of_the_right_volume() {
    for seed in 0..600 {
        let dice = &mut Dice::new(seed * 977 + 5);
        let set = Set::turned(dice);
        let size = DVec3::new(dice.between(400.0, 5000.0), dice.between(30.0, 100.0), dice.between(60.0, 250.0));
        let brick = set.block(DVec3::ZERO, size, 0);
        let cell = cell_of(&brick, set.origin);
        let count = dice.whole(1, 3) as u32;
        let mut holes: Vec<_> = (0..count).map(|k| random_hole(dice, &set, size, HOLES + 10 * k)).collect();
        let what = format!("seed {seed}");
        let (cells, solid) = carved(&cell, &holes);
        assert_closed(&solid, 1, &what);
        assert_tags(&solid, &brick, &holes, &what);
        assert_volume(&solid, &cells, outside(&cell, &holes), &what);
        // The order of the saw cuts does not change the shape.
        holes.reverse();
        let (_, again) = carved(&cell, &holes);
        assert_eq!(euler(&solid), euler(&again), "{what}");
        assert!((solid.volume() - again.volume()).abs() < 1e-2, "{what}");
    }
}

/// Holes whose sides lie on a grid, so that they end at one another's faces and
/// at those of the brick. What is left is counted cube by cube.
#[test]
fn holes_on_a_grid_leave_every_bared_face() {
    let step = 20.0;
    let cubes = [12_usize, 3, 6];
    for seed in 0..600 {
        let dice = &mut Dice::new(seed * 31 + 2);
        let set = Set::turned(dice);
        let size = DVec3::new(cubes[0] as f64, cubes[1] as f64, cubes[2] as f64) * step;
        let brick = set.block(DVec3::ZERO, size, 0);
        let cell = cell_of(&brick, set.origin);
        let spans: Vec<[[usize; 2]; 3]> = (0..dice.whole(1, 3))
            .map(|_| {
                cubes.map(|n| {
                    let from = dice.whole(0, n - 1);
                    [from, dice.whole(from + 1, n)]
                })
            })
            .collect();
        let corner = |s: &[[usize; 2]; 3], end: usize| DVec3::from_array(s.map(|x| x[end] as f64 * step));
        let holes: Vec<_> =
            spans.iter().zip(0..).map(|(s, k)| set.block(corner(s, 0), corner(s, 1), HOLES + 10 * k)).collect();
        let solid_at = |at: [i64; 3]| {
            let within = at.iter().zip(cubes).all(|(x, n)| (0..n as i64).contains(x));
            let gone = |s: &[[usize; 2]; 3]| at.iter().zip(s).all(|(x, [a, b])| (*a as i64..*b as i64).contains(x));
            within && !spans.iter().any(gone)
        };
        let mut count = 0;
        let mut bare = 0;
        for x in 0..cubes[0] as i64 {
            for y in 0..cubes[1] as i64 {
                for z in 0..cubes[2] as i64 {
                    if solid_at([x, y, z]) {
                        count += 1;
                        let beside =
                            [[x - 1, y, z], [x + 1, y, z], [x, y - 1, z], [x, y + 1, z], [x, y, z - 1], [x, y, z + 1]];
                        bare += beside.into_iter().filter(|at| !solid_at(*at)).count();
                    }
                }
            }
        }
        let what = format!("seed {seed}");
        let (cells, solid) = carved(&cell, &holes);
        if count == 0 {
            assert!(cells.is_empty(), "{what}");
            continue;
        }
        assert_closed(&solid, 2, &what);
        assert_tags(&solid, &brick, &holes, &what);
        assert_volume(&solid, &cells, f64::from(count) * step * step * step, &what);
        let area: f64 = solid
            .faces
            .iter()
            .map(|f| {
                let at = |k: usize| solid.points[f.ring[k % f.ring.len()] as usize] - set.origin;
                (0..f.ring.len()).map(|k| at(k).cross(at(k + 1))).fold(DVec3::ZERO, |a, b| a + b).length() / 2.0
            })
            .sum();
        assert!((area - bare as f64 * step * step).abs() < 1e-2, "{what}: {area} mm² bare, not {bare} squares");
    }
}

/// A joist 1000 × 60 × 200 in axes that are not the world's.
fn joist() -> (Set, Vec<(Plane, u32)>, Cell<u32>) {
    let x = DVec3::new(Angle::deg(40.0).cos(), Angle::deg(40.0).sin(), 0.0);
    let set = Set { origin: DVec3::new(1234.5, -987.6, 2400.0), axes: [x, DVec3::Z.cross(x), DVec3::Z] };
    let brick = set.block(DVec3::ZERO, DVec3::new(1000.0, 60.0, 200.0), 0);
    let cell = cell_of(&brick, set.origin);
    (set, brick, cell)
}

fn joist_with(boxes: &[[[f64; 2]; 3]]) -> Solid<u32> {
    let (set, brick, cell) = joist();
    let holes: Vec<_> = boxes
        .iter()
        .zip(0..)
        .map(|(b, k)| {
            let at = |end: usize| DVec3::from_array(b.map(|x| x[end]));
            set.block(at(0), at(1), HOLES + 10 * k)
        })
        .collect();
    let (cells, solid) = carved(&cell, &holes);
    assert_closed(&solid, 1, "joist");
    assert_tags(&solid, &brick, &holes, "joist");
    assert_volume(&solid, &cells, outside(&cell, &holes), "joist");
    solid
}

#[test]
fn a_blind_mortise_leaves_its_side_in_two_faces() {
    let solid = joist_with(&[[[400.0, 500.0], [-1.0, 30.0], [70.0, 130.0]]]);
    assert_eq!(euler(&solid), 2);
    // Eight corners, eight of the mortise, and the ends of the line that parts
    // the side around it. Side 3 is the one at y = 0; the five others and five
    // of the mortise are whole.
    assert_eq!(solid.points.len(), 18);
    assert_eq!(solid.faces.iter().filter(|f| f.tag == 3).count(), 2);
    assert_eq!(solid.faces.len(), 12);
}

#[test]
fn every_hole_right_through_is_a_handle() {
    let hole = |x: f64| [[x, x + 60.0], [-1.0, 61.0], [70.0, 130.0]];
    for count in 1..=3 {
        let holes: Vec<_> = (0..count).map(|k| hole(200.0 + 250.0 * f64::from(k))).collect();
        assert_eq!(euler(&joist_with(&holes)), 2 - 2 * i64::from(count));
    }
}

#[test]
fn two_notches_of_one_level_leave_whole_faces() {
    // Seats of one level: the second is cut where the first has split the joist.
    let seat = |x: f64| [[x, x + 75.0], [-1.0, 61.0], [-1.0, 40.0]];
    let solid = joist_with(&[seat(200.0), seat(600.0)]);
    assert_eq!(euler(&solid), 2);
    assert_eq!(solid.points.len(), 8 + 16);
    assert_eq!(solid.faces.len(), 6 + 3 + 3 + 2);
}

#[test]
fn a_lap_at_the_end_is_twelve_points() {
    let solid = joist_with(&[[[900.0, 1001.0], [-1.0, 61.0], [100.0, 201.0]]]);
    assert_eq!(euler(&solid), 2);
    assert_eq!(solid.points.len(), 12);
    assert_eq!(solid.faces.len(), 8);
}

#[test]
fn a_second_hole_that_starts_at_the_first_is_one_with_it() {
    // Side by side: the partition between them is gone, not left as a skin.
    let solid =
        joist_with(&[[[300.0, 400.0], [-1.0, 61.0], [100.0, 201.0]], [[400.0, 500.0], [-1.0, 61.0], [100.0, 201.0]]]);
    assert_eq!(euler(&solid), 2);
    assert!((solid.volume() - (12e6 - 200.0 * 60.0 * 100.0)).abs() < 1e-2);
}
