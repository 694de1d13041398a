//! Events in order of height.

use core::cmp::{Ordering, Reverse};
use std::collections::BinaryHeap;

/// What may happen next to a segment or to the corner where it starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Event {
    /// The segment has no length left.
    Collapse(usize),
    /// The corner at the start of the first segment runs into the second.
    Split(usize, usize),
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Entry {
    z: f64,
    event: Event,
}

impl Eq for Entry {}

impl PartialOrd for Entry {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Entry {
    fn cmp(&self, other: &Self) -> Ordering {
        self.z.total_cmp(&other.z).then(self.event.cmp(&other.event))
    }
}

/// A queue whose entries may be out of date; whoever takes one out checks.
#[derive(Clone, Debug, Default)]
pub(super) struct Queue {
    heap: BinaryHeap<Reverse<Entry>>,
}

impl Queue {
    pub fn clear(&mut self) {
        self.heap.clear();
    }

    pub fn push_collapse(&mut self, z: f64, segment: usize) {
        self.heap.push(Reverse(Entry { z, event: Event::Collapse(segment) }));
    }

    pub fn push_split(&mut self, z: f64, corner: usize, target: usize) {
        self.heap.push(Reverse(Entry { z, event: Event::Split(corner, target) }));
    }

    /// The lowest entry that is not above `z`.
    pub fn pop_up_to(&mut self, z: f64) -> Option<(f64, Event)> {
        let Reverse(first) = self.heap.peek()?;
        if first.z > z {
            return None;
        }
        self.heap.pop().map(|Reverse(entry)| (entry.z, entry.event))
    }
}
