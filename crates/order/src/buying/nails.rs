//! Nails, by the joints that they go into.

use super::figures::Figures;
use super::hangers::Hung;
use super::joints::Found;
use super::line::{Line, LineKind};
use super::straps::Straps;
use super::strength_says;
use job::Per;
use roof::rules::Standing;
use roof::solution::SpliceForm;
use std::collections::BTreeMap;
use strength::whole::Strength;

/// Weights of nails are rounded up to this, kg: loose nails are weighed out.
const WEIGHED_TO: f64 = 0.1;

/// Nails of a roof.
pub(super) struct Nails<'a> {
    figures: &'a Figures,
    /// By the words of the nails, what they go into, in the order of the rules.
    uses: BTreeMap<&'a str, Vec<NailUse>>,
}

/// What nails go into.
struct NailUse {
    what: String,
    places: u32,
    nails: u32,
    source: String,
    standing: Standing,
    /// The strength asked for this many in each.
    asked: Option<u32>,
}

impl<'a> Nails<'a> {
    pub(super) fn new(figures: &'a Figures) -> Self {
        Self { figures, uses: BTreeMap::new() }
    }

    /// Nails of joints and of splices without bolts.
    pub(super) fn joints(&mut self, found: &Found<'a>, strength: Option<&Strength>) {
        for rule in &self.figures.joints {
            let Some(nails) = &rule.nails else { continue };
            let asked = rule.checked.as_deref().and_then(|name| strength_says::count(strength, name));
            let asked = asked.filter(|asked| *asked > rule.count);
            let each = asked.unwrap_or(rule.count);
            let mine = found.joints.iter().filter(|joint| core::ptr::eq(joint.rule, rule));
            let counts: Vec<u32> = mine.map(|joint| joint.count(found.members, each)).collect();
            let standing = rule.standing.unwrap_or(Standing::CommonPractice);
            let warning = rule.checked.as_deref().map_or("", |name| strength_says::warning(strength, name));
            self.add(nails, &format!("{}{warning}", rule.what), &counts, &rule.source, standing, asked);
        }
        for (word, rule) in &self.figures.splices {
            let mine = found.dry_splices.iter().filter(|form| form_word(**form) == word);
            let counts: Vec<u32> = mine.map(|_| rule.count).collect();
            self.add(&rule.nails, &rule.what, &counts, &rule.source, rule.standing, None);
        }
    }

    /// Nails of straps into timber.
    pub(super) fn straps(&mut self, straps: &Straps) {
        let down = &self.figures.straps.down;
        let counts = vec![down.nailed.value as u32; straps.down as usize];
        self.add(&down.nails, "holding-down straps", &counts, &down.nailed.source, down.nailed.standing, None);
    }

    /// Nails of joist hangers.
    pub(super) fn hangers(&mut self, hung: &[Hung]) {
        let hangers = &self.figures.hangers;
        let counts = vec![hangers.nailed.value as u32; hung.iter().map(|h| h.count as usize).sum()];
        self.add(&hangers.nails, "joist hangers", &counts, &hangers.nailed.source, hangers.nailed.standing, None);
    }

    fn add(
        &mut self,
        nails: &'a str,
        what: &str,
        counts: &[u32],
        source: &str,
        standing: Standing,
        asked: Option<u32>,
    ) {
        let sum = counts.iter().fold(0_u32, |sum, count| sum.saturating_add(*count));
        if sum == 0 {
            return;
        }
        let places = u32::try_from(counts.len()).unwrap_or(u32::MAX);
        self.uses.entry(nails).or_default().push(NailUse {
            what: what.to_owned(),
            places,
            nails: sum,
            source: source.to_owned(),
            standing,
            asked,
        });
    }

    /// One line for each nail.
    pub(super) fn lines(&self) -> Vec<Line> {
        let known = self.uses.iter().filter_map(|(word, uses)| Some((word, uses, self.figures.nails.get(*word)?)));
        let mut all: Vec<(f64, Line)> = known
            .map(|(word, uses, nail)| {
                let nails: u32 = uses.iter().fold(0, |sum, u| sum.saturating_add(u.nails));
                let lost = &self.figures.lost_nails;
                let each = self.figures.nail_kg(nail);
                let exact = f64::from(nails) * (1.0 + lost.value) * each;
                let kg = (exact / WEIGHED_TO).ceil() * WEIGHED_TO;
                let words: Vec<String> = uses.iter().map(NailUse::words).collect();
                let line = Line {
                    item: (*word).to_owned(),
                    what: nail.what.clone(),
                    size: format!("{} × {} mm", nail.diameter, nail.length),
                    quantity: (kg * 10.0).round() / 10.0,
                    unit: Per::Kilogram,
                    kg: (kg * 10.0).round() / 10.0,
                    counted: format!(
                        "{}: {nails} nails and {:.0} % for lost ones, {:.0} to the kg",
                        words.join("; "),
                        lost.value * 100.0,
                        1.0 / each
                    ),
                    source: joined(uses.iter().map(|u| u.source.as_str())),
                    standing: joined(uses.iter().map(|u| u.standing.to_string()).collect::<Vec<_>>().iter()),
                    kind: LineKind::Allowance,
                };
                (nail.length * nail.diameter, line)
            })
            .collect();
        all.sort_by(|a, b| b.0.total_cmp(&a.0));
        all.into_iter().map(|(_, line)| line).collect()
    }
}

impl NailUse {
    fn words(&self) -> String {
        let Self { what, places, nails, .. } = self;
        let asked = self.asked.map_or(String::new(), |_| " as the strength asks".to_owned());
        if nails % places == 0 {
            format!("{what} {places} × {}{asked}", nails / places)
        } else {
            format!("{what} {nails} in {places}{asked}")
        }
    }
}

/// Which entry of the figures is for a splice without bolts.
fn form_word(form: SpliceForm) -> &'static str {
    match form {
        SpliceForm::HalfLap => "half-lap",
        SpliceForm::BoardSplay => "board-splay",
        SpliceForm::FishPlates | SpliceForm::Splayed | SpliceForm::Hooked => "scarf",
    }
}

/// Words without those that were said before.
pub(super) fn joined<S: AsRef<str>>(words: impl Iterator<Item = S>) -> String {
    let mut all: Vec<String> = Vec::new();
    for word in words {
        let word = word.as_ref();
        if !word.is_empty() && !all.iter().any(|known| known == word) {
            all.push(word.to_owned());
        }
    }
    all.join("; ")
}
