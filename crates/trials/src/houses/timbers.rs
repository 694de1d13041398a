//! The timber of a house: sections that go together.

use crate::Seed;

pub(super) struct Frame {
    pub(super) rafter: [f64; 2],
    pub(super) centres: f64,
    spread: &'static str,
    hip: [f64; 2],
    edge: &'static str,
    head: &'static str,
    line: &'static str,
    valley: [f64; 2],
    valley_edge: &'static str,
    ridge: [f64; 2],
    top: &'static str,
    pub(super) plate: [f64; 2],
}

pub(super) fn frame(seed: &mut Seed) -> Frame {
    let depth = seed.of([125.0, 150.0, 150.0, 175.0, 200.0, 225.0]);
    let thick = seed.of([47.0, 47.0, 50.0]);
    let hip = [seed.of([47.0, 50.0, 63.0, 75.0, 100.0]), depth + seed.of([50.0, 75.0, 100.0])];
    let valley = if seed.once_in(2) { hip } else { [seed.of([47.0, 50.0, 75.0]), depth + seed.of([50.0, 75.0])] };
    Frame {
        rafter: [thick, depth],
        centres: seed.of([400.0, 400.0, 450.0, 600.0]),
        spread: seed.of(["from-start", "from-start", "from-end", "equal"]),
        hip,
        edge: seed.of(["backed", "dropped"]),
        head: seed.of(["crown", "crown", "ridge"]),
        line: seed.of(["centred", "centred", "centred", "centred", "set-over"]),
        valley,
        valley_edge: seed.of(["dropped", "dropped", "backed"]),
        ridge: [seed.of([25.0, 32.0, 38.0, 47.0]), depth + seed.of([50.0, 75.0, 100.0])],
        top: seed.of(["arrises", "arrises", "centre"]),
        plate: seed.of([[75.0, 100.0], [75.0, 100.0], [50.0, 100.0], [100.0, 150.0]]),
    }
}

impl Frame {
    pub(super) fn text(&self) -> String {
        format!(
            "[timber]\nrafter = {{ size = {:?}, centres = {}, spread = \"{}\" }}\n\
             hip = {{ size = {:?}, edge = \"{}\", head = \"{}\", line = \"{}\" }}\n\
             valley = {{ size = {:?}, edge = \"{}\" }}\nridge = {{ size = {:?}, top = \"{}\" }}\n\
             plate = {{ size = {:?} }}\n",
            self.rafter,
            self.centres,
            self.spread,
            self.hip,
            self.edge,
            self.head,
            self.line,
            self.valley,
            self.valley_edge,
            self.ridge,
            self.top,
            self.plate
        )
    }
}
