//! How many people a step wants, by the figures for lifting, and what goes up in one with what is spliced to it.

use super::graph::Graph;
use super::types::Joined;
use crate::lifts::{Density, Hands, Lift, Lifting, carried, lifts, overhead};

/// Timbers longer than this want two people whatever they weigh, mm (see regions/uk/lifting.toml).
const ALONE_LONGEST: f64 = 3600.0;

/// Who lifts a step.
#[derive(Debug, Default)]
pub struct Team {
    /// People at least.
    pub people: u32,
    /// Marks of what wants a hoist, or a lift in stages.
    pub hoist: Vec<String>,
    /// What is spliced first and lifted as one.
    pub as_one: Vec<Joined>,
}

/// The figures for lifting of a roof: of each timber, none when its region keeps no such figures.
pub struct Lifted<'a> {
    graph: &'a Graph<'a>,
    rules: Option<&'static Lifting>,
    each: Vec<Lift>,
}

impl<'a> Lifted<'a> {
    /// Of the timbers of a roof.
    pub fn of(graph: &'a Graph<'a>) -> Self {
        let rules = Lifting::of(&graph.solution.region).ok();
        let each = rules.and_then(|rules| {
            let density = Density::of(rules, graph.job.strong.class.name());
            lifts(graph.solution, &density).ok()
        });
        Self { graph, rules, each: each.unwrap_or_default() }
    }

    /// Who lifts these timbers. `stood`: one of them is held on props while it is braced, with others when it is a ridge.
    pub fn team(&self, members: &[usize], stood: bool, as_one: &[Vec<usize>]) -> Team {
        let timber = |k: &usize| self.graph.timbers.get(*k);
        let long = members.iter().filter_map(timber).any(|t| t.length > ALONE_LONGEST);
        let mut team = Team { people: 1, ..Team::default() };
        // A ridge with its first pair wants three, a long timber two, whatever they weigh.
        if stood && members.len() > 1 {
            team.people = 3;
        } else if stood || long {
            team.people = 2;
        }
        let chains: Vec<&Vec<usize>> =
            as_one.iter().filter(|parts| parts.iter().all(|k| members.contains(k))).collect();
        for k in members.iter().filter(|k| !chains.iter().any(|parts| parts.contains(k))) {
            let lift = timber(k).and_then(|t| self.each.iter().find(|lift| lift.mark == t.mark()));
            let Some(lift) = lift else { continue };
            team.lifts(&lift.mark, lift.carried, lift.above_shoulder.then_some(lift.overhead));
        }
        for parts in chains {
            let lifts: Vec<&Lift> = parts
                .iter()
                .filter_map(timber)
                .filter_map(|t| self.each.iter().find(|lift| lift.mark == t.mark()))
                .collect();
            let (Some(rules), Some(first)) = (self.rules, lifts.first()) else { continue };
            let kg: f64 = lifts.iter().map(|lift| lift.damp_kg).sum();
            let length: f64 = lifts.iter().map(|lift| lift.length_mm).sum();
            let above = lifts.iter().any(|lift| lift.above_shoulder);
            team.lifts(&first.mark, carried(rules, kg, length), above.then(|| overhead(rules, kg, length)));
            team.as_one.push(Joined { marks: lifts.iter().map(|lift| lift.mark.clone()).collect(), damp_kg: kg });
        }
        team
    }
}

impl Team {
    /// Takes one lift in. What is too much overhead is lifted in stages, as the lifts say, by those who carry it.
    fn lifts(&mut self, mark: &str, carried: Hands, overhead: Option<Hands>) {
        match carried {
            Hands::People(people) => self.people = self.people.max(people),
            Hands::Aid => self.hoist.push(mark.to_owned()),
        }
        if let Some(Hands::People(people)) = overhead {
            self.people = self.people.max(people);
        }
    }
}
