//! A seeded sample of what `make fuzz` does at length: the same entry points,
//! quick enough for every run of the tests.

use std::path::Path;

/// Spoilt copies of each example job.
const SPOILT_PER_JOB: usize = 400;
/// Runs of bytes that were never a job.
const RUNS_OF_BYTES: usize = 400;

/// A small congruential generator, so that every run tries the same inputs.
/// Multiplier and increment are those that Knuth gives for MMIX (The Art of
/// Computer Programming, vol. 2, 3rd edition, table 1 of section 3.3.4).
struct Seeded(u64);

impl Seeded {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 33
    }

    fn below(&mut self, n: usize) -> usize {
        (self.next() as usize) % n.max(1)
    }

    fn bytes(&mut self, longest: usize) -> Vec<u8> {
        (0..self.below(longest)).map(|_| self.next() as u8).collect()
    }
}

fn example_jobs() -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut jobs = vec![job::defaults_toml().as_bytes().to_vec()];
    for entry in std::fs::read_dir(folder).expect("the examples are in the repository") {
        let path = entry.expect("the folder can be listed").path();
        if path.extension().is_some_and(|extension| extension == "toml") {
            jobs.push(std::fs::read(path).expect("an example can be read"));
        }
    }
    jobs
}

#[test]
fn spoilt_jobs_are_read_or_refused() {
    let mut seeded = Seeded(1);
    for job in example_jobs() {
        trials::job_text(&job);
        for _ in 0..SPOILT_PER_JOB {
            let mut spoilt = job.clone();
            for _ in 0..=seeded.below(6) {
                let at = seeded.below(spoilt.len());
                match seeded.below(4) {
                    0 => spoilt.truncate(at),
                    1 => spoilt.insert(at, seeded.next() as u8),
                    2 => drop(spoilt.drain(at..(at + seeded.below(20)).min(spoilt.len()))),
                    _ => spoilt.extend_from_within(at..(at + seeded.below(60)).min(spoilt.len())),
                }
            }
            trials::job_text(&spoilt);
        }
    }
}

#[test]
fn bytes_that_were_never_a_job_are_refused() {
    let mut seeded = Seeded(2);
    for _ in 0..RUNS_OF_BYTES {
        let bytes = seeded.bytes(300);
        trials::job_text(&bytes);
        assert!(job::read(&bytes).is_err(), "these bytes became a job: {bytes:?}");
    }
}

/// Plans of wings of many lengths side by side.
const RANGES_OF_WINGS: usize = 600;
/// Plans of corners thrown at random.
const RUNS_OF_CORNERS: usize = 2000;

/// A plan as the bytes of `trials::plan`.
fn plan_bytes(corners: &[(i16, i16, u8)]) -> Vec<u8> {
    let bytes = |(x, y, pitch): &(i16, i16, u8)| {
        let ([x0, x1], [y0, y1]) = (x.to_le_bytes(), y.to_le_bytes());
        [x0, x1, y0, y1, *pitch]
    };
    corners.iter().flat_map(bytes).collect()
}

/// Wings side by side along the x axis, each as long as it likes: a simple
/// plan with re-entrant corners, its places on a coarse grid so that events
/// fall together, or slightly off it so that they nearly do.
fn wings(seeded: &mut Seeded) -> Vec<(i16, i16, u8)> {
    let (grid, off_grid) = (500, seeded.below(3) == 0);
    let one_pitch = seeded.below(2) == 0;
    let mut skyline = vec![(0, 0)];
    let mut x = 0;
    let mut tops: Vec<(i16, i16)> = Vec::new();
    for _ in 0..1 + seeded.below(6) {
        let top = grid * (4 + seeded.below(20) as i16) + if off_grid { seeded.below(5) as i16 } else { 0 };
        let breadth = grid * (4 + seeded.below(5) as i16);
        // Two wings of one length are one wing.
        match tops.last_mut() {
            Some((end, last)) if *last == top => *end = x + breadth,
            _ => tops.push((x + breadth, top)),
        }
        x += breadth;
    }
    skyline.push((x, 0));
    for k in (0..tops.len()).rev() {
        let start = if k == 0 { 0 } else { tops[k - 1].0 };
        skyline.extend([(tops[k].0, tops[k].1), (start, tops[k].1)]);
    }
    let mut pitch = || if one_pitch { 110 } else { seeded.below(256) as u8 };
    skyline.into_iter().map(|(x, y)| (x, y, pitch())).collect()
}

#[test]
fn plans_of_wings_have_roofs_that_check() {
    let mut seeded = Seeded(3);
    let roofs = (0..RANGES_OF_WINGS).filter(|_| trials::plan(&plan_bytes(&wings(&mut seeded)))).count();
    assert!(roofs * 2 > RANGES_OF_WINGS, "only {roofs} of {RANGES_OF_WINGS} plans had a roof");
}

#[test]
fn corners_thrown_at_random_are_roofed_or_refused() {
    let mut seeded = Seeded(4);
    let longest = trials::CORNER_BYTES * 8;
    let roofs = (0..RUNS_OF_CORNERS).filter(|_| trials::plan(&seeded.bytes(longest))).count();
    assert!(roofs > 0, "no plan at all had a roof");
}
