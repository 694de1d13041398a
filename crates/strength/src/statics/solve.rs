//! Assembly, factoring and solving.

use super::bar_matrix::{BarMatrix, part_on_ends, point_on_ends, spread_on_ends};
use super::frame::{Bar, Frame, Hold, Lie, Load};
use super::{Answer, BarForces, Cases, FrameFault, balance, mechanism};
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

/// The least pivot of the stiffness matrix, scaled to a diagonal of 1, with which a frame counts as one that stands.
/// Of six hundred random frames the mechanisms had less than 1e-12 there and all others more than 1e-5; a straight
/// cantilever of sixty bars still stands. In between lie frames whose stiffnesses are too far apart, of which the check
/// of equilibrium then speaks.
pub const PIVOT_LEAST: f64 = 1e-11;

/// Forces left over at nodes by more than this share of the loads are solved for once more. Short bars between long ones
/// leave more over than [`super::BALANCE`] allows.
const REFINED: f64 = 1e-9;
/// At most so often.
const REFINEMENTS: usize = 4;

/// How one movement of a node is solved for.
#[derive(Clone, Copy, Debug)]
enum Freedom {
    /// Its place among the unknowns.
    Unknown(usize),
    /// Held by a support.
    Held,
    /// A turn that strains nothing, since every bar there is hinged: it stays 0.
    Idle,
}

/// Where the ends of a bar come among the movements of the nodes.
#[derive(Clone, Copy, Debug)]
struct Ends {
    /// Along, across and turn of the first node, then of the second.
    places: [Freedom; 6],
    /// The cosine and sine of the bar in the axes of its two nodes.
    turned: [[f64; 2]; 2],
}

/// A frame made ready: its stiffness factored once for any number of cases.
#[derive(Clone, Debug)]
pub struct Prepared<'a> {
    frame: &'a Frame,
    lies: Vec<Lie>,
    matrices: Vec<BarMatrix>,
    /// For each node, the unit vector of its first movement; the second is 90° anticlockwise from it.
    axes: Vec<[f64; 2]>,
    /// Three to a node.
    freedoms: Vec<Freedom>,
    /// One to a bar.
    ends: Vec<Ends>,
    /// 1/√K of the diagonal.
    scale: Vec<f64>,
    factor: Option<Cholesky<f64, Dyn>>,
}

impl Frame {
    /// Solve for some cases of load.
    ///
    /// # Errors
    /// As [`Frame::prepare`] and [`Prepared::solve`].
    pub fn solve(&self, cases: &[Vec<Load>]) -> Result<Cases, FrameFault> {
        self.prepare()?.solve(cases)
    }

    /// Assemble and factor the stiffness matrix.
    ///
    /// # Errors
    /// Parts that are not there, have no length or no stiffness; a mechanism.
    pub fn prepare(&self) -> Result<Prepared<'_>, FrameFault> {
        self.look_over()?;
        let lies: Vec<Lie> = (0..self.bars.len()).map(|bar| self.lie(bar)).collect();
        let matrices: Vec<BarMatrix> =
            self.bars.iter().zip(&lies).map(|(bar, lie)| BarMatrix::new(bar, *lie)).collect();
        let mut axes = vec![[1.0, 0.0]; self.nodes.len()];
        for support in &self.supports {
            let [x, y] = support.axis;
            let length = (x * x + y * y).sqrt();
            axes[support.node] = [x / length, y / length];
        }
        let (freedoms, unknowns) = self.freedoms();
        let end_of = |(bar, lie): (&Bar, &Lie)| {
            let (i, j) = (3 * bar.from, 3 * bar.to);
            let [c, s] = lie.along;
            let turned = [bar.from, bar.to].map(|node| {
                let [a, b] = axes[node];
                [c * a + s * b, s * a - c * b]
            });
            Ends { places: [i, i + 1, i + 2, j, j + 1, j + 2].map(|k| freedoms[k]), turned }
        };
        let ends = self.bars.iter().zip(&lies).map(end_of).collect();
        let mut prepared =
            Prepared { frame: self, lies, matrices, axes, freedoms, ends, scale: Vec::new(), factor: None };
        if unknowns > 0 {
            prepared.factorise(unknowns)?;
        }
        Ok(prepared)
    }

    /// Which movements are unknown, and how many.
    fn freedoms(&self) -> (Vec<Freedom>, usize) {
        let mut freedoms = vec![Freedom::Unknown(0); 3 * self.nodes.len()];
        for turn in freedoms.iter_mut().skip(2).step_by(3) {
            *turn = Freedom::Idle;
        }
        for bar in &self.bars {
            for (node, hinged) in [(bar.from, bar.hinge_from), (bar.to, bar.hinge_to)] {
                if !hinged {
                    freedoms[3 * node + 2] = Freedom::Unknown(0);
                }
            }
        }
        for support in &self.supports {
            for (k, hold) in [support.x, support.y, support.turn].into_iter().enumerate() {
                match hold {
                    Hold::Free => {}
                    Hold::Held => freedoms[3 * support.node + k] = Freedom::Held,
                    Hold::Spring(_) => freedoms[3 * support.node + k] = Freedom::Unknown(0),
                }
            }
        }
        let mut unknowns = 0;
        for freedom in &mut freedoms {
            if let Freedom::Unknown(place) = freedom {
                *place = unknowns;
                unknowns += 1;
            }
        }
        (freedoms, unknowns)
    }
}

impl Prepared<'_> {
    fn factorise(&mut self, unknowns: usize) -> Result<(), FrameFault> {
        let mut k = DMatrix::<f64>::zeros(unknowns, unknowns);
        for (bar, matrix) in self.matrices.iter().enumerate() {
            let turned = self.ends[bar].turned;
            let mut block = matrix.k;
            for line in &mut block {
                *line = out_of_bar(*line, turned);
            }
            for column in 0..6 {
                let side = out_of_bar(block.map(|line| line[column]), turned);
                for (line, v) in block.iter_mut().zip(side) {
                    line[column] = v;
                }
            }
            let places = self.ends[bar].places;
            for (line, row) in block.iter().zip(places) {
                let Freedom::Unknown(i) = row else { continue };
                for (v, column) in line.iter().zip(places) {
                    if let Freedom::Unknown(j) = column {
                        k[(i, j)] += v;
                    }
                }
            }
        }
        for support in &self.frame.supports {
            for (way, hold) in [support.x, support.y, support.turn].into_iter().enumerate() {
                if let (Hold::Spring(spring), Freedom::Unknown(i)) = (hold, self.freedoms[3 * support.node + way]) {
                    k[(i, i)] += spring;
                }
            }
        }
        self.scale = (0..unknowns).map(|i| 1.0 / k[(i, i)].sqrt()).collect();
        if let Some(loose) = self.scale.iter().position(|s| !s.is_finite()) {
            return Err(self.mechanism_of(|i| f64::from(u8::from(i == loose))));
        }
        for j in 0..unknowns {
            for i in 0..unknowns {
                k[(i, j)] *= self.scale[i] * self.scale[j];
            }
        }
        let stands =
            |factor: &Cholesky<f64, Dyn>| factor.l_dirty().diagonal().iter().all(|pivot| pivot * pivot > PIVOT_LEAST);
        match Cholesky::new(k.clone()).filter(stands) {
            Some(factor) => self.factor = Some(factor),
            None => {
                let loosest = mechanism::loosest(k);
                return Err(self.mechanism_of(|i| loosest.get(i).map_or(0.0, |v| v * self.scale[i])));
            }
        }
        Ok(())
    }

    /// The fault that names the node which moves most, given the movement of each unknown.
    fn mechanism_of(&self, movement: impl Fn(usize) -> f64) -> FrameFault {
        let of = |freedom: Freedom| if let Freedom::Unknown(i) = freedom { movement(i) } else { 0.0 };
        let moved: Vec<[f64; 3]> = (0..self.frame.nodes.len())
            .map(|node| self.out_of_node(node, [0, 1, 2].map(|way| of(self.freedoms[3 * node + way]))))
            .collect();
        mechanism::fault(&moved, self.frame.size())
    }

    /// Solve for some cases of load.
    ///
    /// # Errors
    /// A load off the frame or not finite; forces out of balance by more than [`super::BALANCE`] of the loads.
    pub fn solve(&self, cases: &[Vec<Load>]) -> Result<Cases, FrameFault> {
        let mut known = DMatrix::<f64>::zeros(self.scale.len(), cases.len());
        let mut answers = Vec::with_capacity(cases.len());
        for (case, loads) in cases.iter().enumerate() {
            self.frame.look_over_loads(loads)?;
            let (bars, held) = self.held_ends(loads);
            for (bar, ends) in held.iter().enumerate() {
                for (v, place) in out_of_bar(*ends, self.ends[bar].turned).into_iter().zip(self.ends[bar].places) {
                    if let Freedom::Unknown(i) = place {
                        known[(i, case)] += v;
                    }
                }
            }
            for load in loads {
                if let Load::Node { node, fx, fy, m } = *load {
                    let [a, b] = self.axes[node];
                    for (way, v) in [a * fx + b * fy, a * fy - b * fx, m].into_iter().enumerate() {
                        match self.freedoms[3 * node + way] {
                            Freedom::Unknown(i) => known[(i, case)] += v,
                            Freedom::Idle if v != 0.0 => return Err(mechanism::turning(node)),
                            Freedom::Idle | Freedom::Held => {}
                        }
                    }
                }
            }
            answers.push((bars, held));
        }
        for mut column in known.column_iter_mut() {
            column.iter_mut().zip(&self.scale).for_each(|(v, s)| *v *= s);
        }
        if let Some(factor) = &self.factor {
            factor.solve_mut(&mut known);
        }
        let size = self.frame.size();
        let mut out = Vec::with_capacity(cases.len());
        for (case, (bars, held)) in answers.into_iter().enumerate() {
            let mut answer = Answer { nodes: Vec::new(), reactions: Vec::new(), bars };
            let good = REFINED * balance::loaded(&cases[case], &self.lies, size);
            for round in 0..=REFINEMENTS {
                let left = self.fill(&mut answer, &held, known.column(case).as_slice(), &cases[case]);
                let most = left
                    .iter()
                    .enumerate()
                    .fold(0.0f64, |most, (k, v)| most.max(if k % 3 == 2 { v.abs() / size } else { v.abs() }));
                let Some(factor) = self.factor.as_ref().filter(|_| round < REFINEMENTS && most > good) else { break };
                let mut more = DVector::zeros(self.scale.len());
                for (freedom, v) in self.freedoms.iter().zip(left) {
                    if let Freedom::Unknown(i) = *freedom {
                        more[i] = v * self.scale[i];
                    }
                }
                factor.solve_mut(&mut more);
                known.column_mut(case).zip_apply(&more, |v, m| *v += m);
            }
            balance::check(self.frame, &self.lies, &cases[case], &answer, case)?;
            out.push(answer);
        }
        Ok(Cases { answers: out })
    }

    /// The loads of each bar in its own directions, and what they put on its ends when these are held.
    fn held_ends(&self, loads: &[Load]) -> (Vec<BarForces>, Vec<[f64; 6]>) {
        let mut bars: Vec<BarForces> =
            self.frame.bars.iter().zip(&self.lies).map(|(bar, lie)| BarForces::idle(bar, *lie)).collect();
        let mut held = vec![[0.0; 6]; bars.len()];
        for load in loads {
            let (bar, ends) = match *load {
                Load::Node { .. } => continue,
                Load::Spread { bar, fx, fy } => {
                    let lie = self.lies[bar];
                    let (start, end) = (lie.into_bar([fx[0], fy[0]]), lie.into_bar([fx[1], fy[1]]));
                    bars[bar].add_spread([0.0, lie.length], start, end);
                    (bar, spread_on_ends(lie.length, [start[0], end[0]], [start[1], end[1]]))
                }
                Load::Part { bar, from_mm, to_mm, fx, fy } => {
                    let lie = self.lies[bar];
                    let (start, end) = (lie.into_bar([fx[0], fy[0]]), lie.into_bar([fx[1], fy[1]]));
                    bars[bar].add_spread([from_mm, to_mm], start, end);
                    (bar, part_on_ends(lie.length, [from_mm, to_mm], start, end))
                }
                Load::At { bar, at_mm, fx, fy } => {
                    let lie = self.lies[bar];
                    let force = lie.into_bar([fx, fy]);
                    bars[bar].add_point(at_mm, force);
                    (bar, point_on_ends(lie.length, at_mm, force))
                }
            };
            for (v, e) in held[bar].iter_mut().zip(ends) {
                *v += e;
            }
        }
        for (ends, matrix) in held.iter_mut().zip(&self.matrices) {
            *ends = matrix.through_hinges(*ends);
        }
        (bars, held)
    }

    /// Fill in movements, end forces and reactions of one case from its scaled unknowns. Gives back, for each movement,
    /// the force that is left over there.
    fn fill(&self, answer: &mut Answer, held: &[[f64; 6]], known: &[f64], loads: &[Load]) -> Vec<f64> {
        let moved = |freedom: Freedom| match freedom {
            Freedom::Unknown(i) => known[i] * self.scale[i],
            Freedom::Held | Freedom::Idle => 0.0,
        };
        // What the bars and loads ask of each node, in the frame's directions.
        let mut asked = vec![[0.0; 3]; self.frame.nodes.len()];
        for (bar, forces) in answer.bars.iter_mut().enumerate() {
            let movement = into_bar(self.ends[bar].places.map(moved), self.ends[bar].turned);
            let mut ends = self.matrices[bar].k.map(|line| line.iter().zip(movement).map(|(k, u)| k * u).sum::<f64>());
            for (v, h) in ends.iter_mut().zip(held[bar]) {
                *v -= h;
            }
            forces.set_ends(ends, movement);
            let part = &self.frame.bars[bar];
            for (node, end) in [(part.from, &ends[..3]), (part.to, &ends[3..])] {
                let [x, y] = self.lies[bar].out_of_bar([end[0], end[1]]);
                for (v, e) in asked[node].iter_mut().zip([x, y, end[2]]) {
                    *v += e;
                }
            }
        }
        for load in loads {
            if let Load::Node { node, fx, fy, m } = *load {
                for (v, e) in asked[node].iter_mut().zip([fx, fy, m]) {
                    *v -= e;
                }
            }
        }
        // Into the axes of the nodes; less what the supports give, this is what is left over.
        let mut left = Vec::with_capacity(self.freedoms.len());
        for (&[a, b], [x, y, m]) in self.axes.iter().zip(asked) {
            left.extend([-a * x - b * y, b * x - a * y, -m]);
        }
        answer.reactions.clear();
        for support in &self.frame.supports {
            let first = 3 * support.node;
            let mut given = [0.0; 3];
            for (way, hold) in [support.x, support.y, support.turn].into_iter().enumerate() {
                given[way] = match hold {
                    Hold::Free => 0.0,
                    Hold::Held => -left[first + way],
                    Hold::Spring(k) => -k * moved(self.freedoms[first + way]),
                };
                left[first + way] += given[way];
            }
            answer.reactions.push(self.out_of_node(support.node, given));
        }
        answer.nodes.clear();
        answer.nodes.extend(
            (0..self.axes.len())
                .map(|node| self.out_of_node(node, [0, 1, 2].map(|way| moved(self.freedoms[3 * node + way])))),
        );
        left
    }

    /// From the axes of a node into the frame's directions.
    fn out_of_node(&self, node: usize, [u, v, turn]: [f64; 3]) -> [f64; 3] {
        let [a, b] = self.axes[node];
        [a * u - b * v, b * u + a * v, turn]
    }
}

/// Forces at the ends of a bar, from its axes into those of its nodes.
fn out_of_bar(v: [f64; 6], [[c, s], [d, t]]: [[f64; 2]; 2]) -> [f64; 6] {
    [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2], d * v[3] - t * v[4], t * v[3] + d * v[4], v[5]]
}

/// Movements of the ends of a bar, from the axes of its nodes into its own.
fn into_bar(v: [f64; 6], [[c, s], [d, t]]: [[f64; 2]; 2]) -> [f64; 6] {
    [c * v[0] + s * v[1], c * v[1] - s * v[0], v[2], d * v[3] + t * v[4], d * v[4] - t * v[3], v[5]]
}
