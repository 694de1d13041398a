//! The order itself: turn after turn, each timber as soon as what it stands on is fixed.

use super::super::fault::SequenceFault;
use super::super::graph::Graph;
use super::super::rules::Rules;
use super::super::types::Stands;
use super::rank::{Rank, Turn, ranks};
use super::sorting;
use super::standing::{Stand, Temporary, hangs, held, held_as_one, lies, stand};
use super::systems::{Systems, systems};
use roof::solution::MemberKind;
use std::collections::{BTreeMap, BTreeSet};
use strength::carrying::is_rafter;

/// A step before it is put in words.
#[derive(Debug)]
pub struct Draft {
    /// Its turn.
    pub rank: Rank,
    /// Whether timbers were stood on props or braces.
    pub stood: bool,
    /// Timbers in the order of fixing.
    pub members: Vec<usize>,
    /// Names of props set.
    pub props: Vec<String>,
    /// Names of braces fixed.
    pub braces: Vec<String>,
    /// What each timber stands on.
    pub stands: Vec<Stands>,
}

/// The order of work of a roof.
#[derive(Debug)]
pub struct Schedule {
    /// Steps.
    pub drafts: Vec<Draft>,
    /// Props and braces.
    pub temporary: Temporary,
    /// Parts of the roof.
    pub systems: Systems,
    /// Timbers of several lengths, each from its foot, that are spliced on the deck and lifted as one.
    pub as_one: Vec<Vec<usize>>,
}

/// Lengths that are spliced on the deck and lifted as one: those of rafters, hips, valleys and joists.
fn lifted_as_one(graph: &Graph<'_>, systems: &Systems) -> Vec<Vec<usize>> {
    let whole = |k: usize| {
        let kind = graph.timbers[k].kind();
        is_rafter(kind) || matches!(kind, MemberKind::HipRafter | MemberKind::ValleyRafter | MemberKind::CeilingJoist)
    };
    let mut chains: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for k in (0..graph.timbers.len()).filter(|k| whole(*k)) {
        chains.entry(systems.chain[k]).or_default().push(k);
    }
    let mut of = vec![Vec::new(); graph.timbers.len()];
    for mut parts in chains.into_values().filter(|parts| parts.len() > 1) {
        let along = graph.timbers[parts[0]].along;
        parts.sort_by(|a, b| along.dot(graph.timbers[*a].origin).total_cmp(&along.dot(graph.timbers[*b].origin)));
        for k in &parts {
            of[*k] = parts.clone();
        }
    }
    of
}

struct Work<'g, 'a> {
    graph: &'g Graph<'a>,
    rules: &'g Rules,
    systems: Systems,
    ranks: Vec<Rank>,
    /// For each timber, the lengths that are lifted as one with it; empty for one length.
    as_one: Vec<Vec<usize>>,
    fixed: Vec<bool>,
    temporary: Temporary,
    drafts: Vec<Draft>,
}

/// Put the timbers of a roof in order.
///
/// # Errors
/// When a timber has nothing to stand on in any order.
pub fn schedule(graph: &Graph<'_>, rules: &Rules) -> Result<Schedule, SequenceFault> {
    let systems = systems(graph);
    let mut ranks = ranks(graph, &systems);
    let as_one = lifted_as_one(graph, &systems);
    for parts in as_one.iter().filter(|parts| !parts.is_empty()) {
        if let Some(last) = parts.iter().map(|k| ranks[*k]).max() {
            parts.iter().for_each(|k| ranks[*k] = last);
        }
    }
    let fixed = vec![false; graph.timbers.len()];
    let mut work =
        Work { graph, rules, systems, ranks, as_one, fixed, temporary: Temporary::default(), drafts: Vec::new() };
    for part in 0..=work.systems.count {
        work.before_parts();
        work.part(part);
    }
    work.rest()?;
    let mut as_one = work.as_one;
    as_one.retain(|parts| !parts.is_empty());
    as_one.sort_unstable();
    as_one.dedup();
    Ok(Schedule { drafts: work.drafts, temporary: work.temporary, systems: work.systems, as_one })
}

impl Work<'_, '_> {
    fn unfixed(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.fixed.len()).filter(|k| !self.fixed[*k])
    }

    /// Whether a timber lies on what is fixed, by itself or as one with the lengths spliced to it.
    fn ready(&self, k: usize) -> bool {
        held(self.graph, k, &self.fixed) || {
            let parts = &self.as_one[k];
            parts.iter().all(|p| !self.fixed[*p]) && held_as_one(self.graph, parts, &self.fixed)
        }
    }

    /// Plates, ties and joists, as far as they hold.
    fn before_parts(&mut self) {
        while let Some(rank) = self.next_ready(|r| r.stage == 0) {
            self.fix_all(rank);
        }
    }

    /// One part of the roof: what is held goes on in its turn; when nothing is, the next timber is stood on props.
    fn part(&mut self, part: usize) {
        let mine = |r: Rank| r.stage == 1 && r.part == part;
        loop {
            if self.frame_of_dormer(part) {
                continue;
            }
            let spine = self.next_spine(part);
            let ready = self.next_ready(mine);
            match (spine, ready) {
                (Some(k), Some(rank)) if rank.turn >= Turn::Spine => self.stand(k),
                (_, Some(rank)) => self.fix_all(rank),
                (Some(k), None) => self.stand(k),
                (None, None) => match self.next_on_props(|r| mine(r) && r.turn < Turn::Purlins) {
                    Some(k) => self.stand(k),
                    None => break,
                },
            }
        }
    }

    /// Everything that is left, in its turn; the last resort is a prop under whatever is next.
    fn rest(&mut self) -> Result<(), SequenceFault> {
        loop {
            if let Some(rank) = self.next_ready(|_| true) {
                self.fix_all(rank);
            } else if (0..=self.systems.count).any(|part| self.frame_of_dormer(part)) {
                continue;
            } else if let Some(k) = self.next_stub() {
                let rank = self.ranks[k];
                let stands = vec![self.stands(k, &[])];
                self.fixed[k] = true;
                self.join(Draft {
                    rank,
                    stood: false,
                    members: vec![k],
                    props: Vec::new(),
                    braces: Vec::new(),
                    stands,
                });
            } else if let Some(k) = self.next_on_props(|_| true) {
                self.stand(k);
            } else {
                break;
            }
        }
        let Some(k) = self.unfixed().min_by_key(|k| self.ranks[*k]) else { return Ok(()) };
        let t = &self.graph.timbers[k];
        Err(SequenceFault::CannotStand {
            mark: t.mark().to_owned(),
            kind: t.kind().name().to_owned(),
            left: self.unfixed().count(),
        })
    }

    /// A short timber that hangs on its nails until the boards are on.
    fn next_stub(&self) -> Option<usize> {
        let stubs = self.unfixed().filter(|k| hangs(self.graph, *k, &self.fixed));
        stubs.min_by_key(|k| (self.ranks[*k], *k))
    }

    /// Adds a step, or its timbers to the last step when that is of the same turn and needs no props either.
    fn join(&mut self, draft: Draft) {
        match self.drafts.last_mut() {
            Some(last) if !last.stood && !draft.stood && last.rank.turn == draft.rank.turn => {
                last.members.extend(draft.members);
                last.stands.extend(draft.stands);
            }
            _ => self.drafts.push(draft),
        }
    }

    /// The lowest rank of which a timber is held.
    fn next_ready(&self, which: impl Fn(Rank) -> bool) -> Option<Rank> {
        let ready = self.unfixed().filter(|k| which(self.ranks[*k]) && self.ready(*k));
        ready.map(|k| self.ranks[k]).min()
    }

    /// The next length of a ridge or break: the first length, or one whose length before stands.
    fn next_spine(&self, part: usize) -> Option<usize> {
        let waits = |k: usize| self.graph.timbers[k].before.is_some_and(|b| !self.fixed[b]);
        let rank = |k: &usize| self.ranks[*k];
        let spines = self.unfixed().filter(|k| {
            let r = rank(k);
            r.part == part && r.turn == Turn::Spine && !waits(*k) && long(self.graph, *k)
        });
        spines.min_by_key(|k| (self.systems.chain[*k], *k))
    }

    /// The next timber that may stand on props: the one that is held most.
    fn next_on_props(&self, which: impl Fn(Rank) -> bool) -> Option<usize> {
        let waits = |k: usize| self.graph.timbers[k].before.is_some_and(|b| !self.fixed[b]);
        let some = self.unfixed().filter(|k| which(self.ranks[*k]) && !waits(*k) && long(self.graph, *k));
        some.min_by_key(|k| {
            let none = self.graph.held_at(*k, &self.fixed).is_empty();
            (none, self.ranks[*k], self.systems.chain[*k], *k)
        })
    }

    /// All of a rank that are held, and those of it that these hold in turn, as one step.
    fn fix_all(&mut self, rank: Rank) {
        let mut members = Vec::new();
        let mut stands = Vec::new();
        loop {
            let of_rank = self.unfixed().filter(|k| self.ranks[*k] == rank);
            let mut now: Vec<usize> = of_rank.filter(|k| self.ready(*k)).collect();
            if now.is_empty() {
                break;
            }
            sorting::sort(self.graph, &self.systems, rank.turn, &mut now);
            for k in now {
                let parts = if self.as_one[k].is_empty() || held(self.graph, k, &self.fixed) {
                    vec![k]
                } else {
                    self.as_one[k].clone()
                };
                for k in parts {
                    // Lengths after the first are in the step with it.
                    if !self.fixed[k] {
                        let one = self.stands(k, &[]);
                        stands.push(one);
                        self.fixed[k] = true;
                        members.push(k);
                    }
                }
            }
        }
        self.join(Draft { rank, stood: false, members, props: Vec::new(), braces: Vec::new(), stands });
        self.plate_splices();
    }

    /// Fish plates and wedges of the splices that a step made go on in that step.
    fn plate_splices(&mut self) {
        let small = |k: usize| matches!(self.graph.timbers[k].kind(), MemberKind::FishPlate | MemberKind::Wedge);
        let joined = |k: usize| {
            let on = self.graph.timbers[k].contacts.iter().filter(|c| !small(c.other));
            let (done, all) = on.fold((0, 0), |(d, n), c| (d + usize::from(self.fixed[c.other]), n + 1));
            done == all && all > 0
        };
        let now: Vec<usize> =
            self.unfixed().filter(|k| small(*k) && joined(*k) && held(self.graph, *k, &self.fixed)).collect();
        for k in now {
            let stands = self.stands(k, &[]);
            self.fixed[k] = true;
            if let Some(last) = self.drafts.last_mut() {
                last.members.push(k);
                last.stands.push(stands);
            }
        }
    }

    fn stands(&self, k: usize, props: &[String]) -> Stands {
        let mut on = self.graph.rests_on(k, &self.fixed);
        on.extend(props.iter().cloned());
        Stands { mark: self.graph.timbers[k].mark().to_owned(), on }
    }

    fn stand(&mut self, k: usize) {
        let rank = self.ranks[k];
        let Stand { members, props, braces } =
            stand(self.graph, self.rules, &self.fixed, k, rank.turn, &mut self.temporary);
        let mut stands = Vec::new();
        for m in &members {
            stands.push(self.stands(*m, if *m == k { &props } else { &[] }));
            self.fixed[*m] = true;
        }
        self.drafts.push(Draft { rank, stood: true, members, props, braces, stands });
        self.plate_splices();
    }

    /// Studs and plates of a dormer: they only stand together, braced.
    fn frame_of_dormer(&mut self, part: usize) -> bool {
        let frame: Vec<usize> = self
            .unfixed()
            .filter(|k| self.ranks[*k].turn == Turn::DormerFrame && self.ranks[*k].part == part)
            .collect();
        let mut with = self.fixed.clone();
        let mut members: Vec<usize> = Vec::new();
        // Sole plates that are held, then uprights on what is fixed, then plates on the uprights.
        for turn in [MemberKind::SolePlate, MemberKind::Stud, MemberKind::WallPlate] {
            for k in frame.iter().copied().filter(|k| self.graph.timbers[*k].kind() == turn) {
                let spots = self.graph.held_at(k, &with);
                let low = spots.first().is_some_and(|s| *s < self.graph.timbers[k].balance);
                if if turn == MemberKind::Stud { low } else { lies(self.graph, k, &spots) } {
                    with[k] = true;
                    members.push(k);
                }
            }
        }
        // An upright that no plate holds at its head waits for what will.
        members.retain(|k| {
            let stud = self.graph.timbers[*k].kind() == MemberKind::Stud;
            !stud || lies(self.graph, *k, &self.graph.held_at(*k, &with))
        });
        if members.is_empty() {
            return false;
        }
        let plates: BTreeSet<usize> =
            members.iter().copied().filter(|k| self.graph.timbers[*k].kind() == MemberKind::WallPlate).collect();
        let mut stands = Vec::new();
        let mut braces = Vec::new();
        let mut firm = self.fixed.clone();
        for k in &members {
            let before = self.fixed.clone();
            stands
                .push(Stands { mark: self.graph.timbers[*k].mark().to_owned(), on: self.graph.rests_on(*k, &before) });
            self.fixed[*k] = true;
            if plates.contains(k) {
                let set = super::standing::brace_plate(self.graph, self.rules, &firm, *k, &mut self.temporary);
                braces.extend(set);
                firm[*k] = true;
            }
        }
        let rank = Rank { stage: 1, part, turn: Turn::DormerFrame };
        let stood = !braces.is_empty();
        self.join(Draft { rank, stood, members, props: Vec::new(), braces, stands });
        true
    }
}

/// Whether a timber is long enough to be stood on props; shorter ones are held in the hand and nailed.
fn long(graph: &Graph<'_>, k: usize) -> bool {
    const LEAST: f64 = 400.0;
    graph.timbers.get(k).is_some_and(|t| {
        t.length >= LEAST
            && !matches!(t.kind(), MemberKind::FishPlate | MemberKind::Wedge | MemberKind::Noggin | MemberKind::Stud)
    })
}
