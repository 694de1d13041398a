//! Workings of figures that the sizes of the plan do not lead to: read off the
//! finished solid, and said so.

use crate::answer::Asked;
use crate::chain::{Chain, Unit};
use crate::question::{Figure, Question};
use crate::told::{Told, rule};
use roof::solution::Member;

/// What to say before what was read.
const IDEA: &str = "More than one thing shapes this timber here, so the figure is measured on the finished timber \
                    as it was worked out in the round.";

/// The figure, read off the solid.
pub(crate) fn tell(m: Option<&Member>, q: &Question, asked: &Asked) -> Option<Told> {
    let mut chain = Chain::new();
    match (q.figure, m) {
        (Figure::Stock, Some(m)) => {
            let [near, far] = reach(m.bench.points.iter().map(|p| p[0]))?;
            difference(&mut chain, [near, far], "to its nearest point", "to its farthest point", "Between square ends");
        }
        (Figure::CutLength, Some(m)) => {
            let [near, far] = top(m)?;
            difference(
                &mut chain,
                [near, far],
                "from the foot end to the nearest point of its top",
                "from the foot end to the farthest point of its top",
                "Long point to long point along the top",
            );
        }
        _ => {
            chain.read_off(&lower_first(&asked.title), asked.value, asked.unit);
        }
    }
    Some(Told::new(chain, IDEA, rule::SOLID))
}

fn lower_first(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |c| c.to_lowercase().collect::<String>() + chars.as_str())
}

fn difference(chain: &mut Chain, [near, far]: [f64; 2], to_near: &str, to_far: &str, words: &str) {
    let near = chain.read_off(to_near, near, Unit::Millimetres);
    let far = chain.read_off(to_far, far, Unit::Millimetres);
    chain.length(words, format!("{far} − {near}"));
}

/// Nearest and farthest point of the top of a timber from its foot end, mm.
pub(crate) fn top(m: &Member) -> Option<[f64; 2]> {
    let on_top = m.solid.faces.iter().zip(&m.solid.names).filter(|(_, n)| *n == "top" || n.starts_with("backing"));
    reach(on_top.flat_map(|(ring, _)| ring.iter().filter_map(|i| m.bench.points.get(*i as usize)).map(|p| p[0])))
}

fn reach(values: impl Iterator<Item = f64>) -> Option<[f64; 2]> {
    let [low, high] = values.fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], v| [l.min(v), h.max(v)]);
    (low <= high).then_some([low, high])
}
