//! Which timbers touch which, as far as cuts, splices and setting out tell.

use roof::solution::Solution;
use std::collections::HashMap;

/// The marks of the neighbours of each timber, in the order of the lists.
pub(super) fn of(solution: &Solution) -> Vec<Vec<String>> {
    let members = &solution.members;
    let number: HashMap<&str, usize> = members.iter().enumerate().map(|(n, m)| (m.mark.as_str(), n)).collect();
    let mut touching: Vec<Vec<usize>> = vec![Vec::new(); members.len()];
    let mut join = |a: &str, b: &str| {
        if let (Some(&a), Some(&b)) = (number.get(a), number.get(b))
            && a != b
        {
            touching[a].push(b);
            touching[b].push(a);
        }
    };
    for member in members {
        for against in member.cuts.iter().filter_map(|cut| cut.against.as_deref()) {
            join(&member.mark, against);
        }
        for splice in &member.splices {
            join(&member.mark, &splice.mate);
        }
    }
    for strip in &solution.setting_out {
        for station in &strip.stations {
            join(&strip.mark, &station.mark);
        }
    }
    let in_order = |mut list: Vec<usize>| {
        list.sort_unstable();
        list.dedup();
        list.into_iter().map(|n| members[n].mark.clone()).collect()
    };
    touching.into_iter().map(in_order).collect()
}
