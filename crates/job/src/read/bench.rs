//! Reads how timber is cut on the bench.

use super::group::Group;
use super::reader::Reader;
use crate::Bench;

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> Bench {
    let group = reader.group(root, "bench");
    Bench { alike_within: reader.needed(&group, "alike_within").value }
}
