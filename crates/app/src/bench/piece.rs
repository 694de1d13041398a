//! A short mark of what a timber is cut to, so that a change of the roof after
//! cutting shows.

use roof::solution::Member;

/// Lengths that differ less are cut alike, mm: a pencil line.
const LENGTH_STEP: f64 = 0.5;
/// Angles that differ less are cut alike, degrees: a bevel set by eye.
const ANGLE_STEP: f64 = 0.1;
/// Added before rounding, in steps: a figure that falls in the middle of two
/// steps must not change sides with its last bits.
const OFF_THE_MIDDLE: f64 = 1e-4;
/// Start and factor of the 32-bit Fowler–Noll–Vo hash (variant 1a).
const HASH_START: u32 = 0x811c_9dc5;
const HASH_FACTOR: u32 = 0x0100_0193;

/// A mark of eight digits for what the timber is cut to: section, lengths,
/// angles of its cuts and its marks on the tape. Where it lies in the roof does
/// not matter.
pub fn piece_mark(member: &Member) -> String {
    let mut hash = Hash(HASH_START);
    hash.text(member.kind.name());
    for mm in [member.size.thickness_mm, member.size.depth_mm, member.cut_length_mm] {
        hash.step(mm, LENGTH_STEP);
    }
    for cut in &member.cuts {
        hash.text(&cut.name);
        hash.step(cut.face_angle_deg, ANGLE_STEP);
        hash.step(cut.edge_angle_deg, ANGLE_STEP);
    }
    for mark in &member.marks {
        hash.text(&mark.name);
        for mm in [mark.left_mm, mark.right_mm] {
            hash.step(mm, LENGTH_STEP);
        }
    }
    if let Some(mouth) = member.birdsmouth {
        hash.step(mouth.depth_mm, LENGTH_STEP);
    }
    for deg in member.backing_deg.into_iter().flatten() {
        hash.step(deg, ANGLE_STEP);
    }
    for bolt in member.splices.iter().flat_map(|splice| &splice.bolts) {
        for mm in [bolt.along_mm, bolt.up_mm, bolt.diameter_mm] {
            hash.step(mm, LENGTH_STEP);
        }
    }
    format!("{:08x}", hash.0)
}

struct Hash(u32);

impl Hash {
    fn text(&mut self, text: &str) {
        // The end of a text counts, so that two never run into one.
        for byte in text.bytes().chain([0]) {
            self.0 = (self.0 ^ u32::from(byte)).wrapping_mul(HASH_FACTOR);
        }
    }

    fn step(&mut self, value: f64, step: f64) {
        self.text(&format!("{:.0}", (value / step + OFF_THE_MIDDLE).round() + 0.0));
    }
}
