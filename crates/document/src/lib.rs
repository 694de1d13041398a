//! Everything that is worked out from a job: its roof, strength, order and what goes on at the site. As the one document
//! of `solve --json`, and as what the papers are made from; the terminal, the app and the check of WebAssembly all take
//! it from here.

use drawings::{Papers, StrengthPapers};
use job::Job;
use order::stock::UnknownRegion;
use order::whole::Order;
use roof::solution::Solution;
use serde::{Deserialize, Serialize};
use site::whole::{Site, SiteFault};
use strength::whole::{CheckFault, Checks, Strength};
use strength::working::Line;

/// What papers are made from.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Document {
    /// The solved job.
    pub solution: Solution,
    /// Its strength, when the job asks for it and it could be worked out.
    pub strength: Option<StrengthPart>,
    /// What to buy, and how to cut it.
    pub order: Option<Order>,
    /// Putting it up.
    pub site: Option<Site>,
}

/// Strength for papers.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct StrengthPart {
    /// The results.
    pub strength: Strength,
    /// The working of the timber that is used most.
    pub working: Vec<Line>,
}

/// Why a part of the document is not there.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Missing {
    /// Of the strength; also when the job does not ask for it.
    pub strength: Option<CheckFault>,
    /// Of the order.
    pub order: Option<UnknownRegion>,
    /// Of the site.
    pub site: Option<SiteFault>,
}

impl Document {
    /// Works out everything from a job and its solved roof.
    #[must_use]
    pub fn of(job: &Job, solution: Solution) -> (Self, Missing) {
        let mut missing = Missing::default();
        let strength = kept(strength::whole::check(job, &solution), &mut missing.strength).map(part);
        let order = order::whole::order(job, &solution, strength.as_ref().map(|s| &s.strength));
        let order = kept(order, &mut missing.order);
        let site = kept(site::whole::site(job, &solution), &mut missing.site);
        (Self { solution, strength, order, site }, missing)
    }

    /// What sheets are drawn from.
    #[must_use]
    pub fn papers(&self) -> Papers<'_> {
        let strength = self.strength.as_ref();
        Papers {
            strength: strength.map(|s| StrengthPapers { strength: &s.strength, working: &s.working }),
            order: self.order.as_ref(),
            site: self.site.as_ref(),
        }
    }

    /// The document of `solve --json`, with a line end.
    ///
    /// # Errors
    /// What the writer of JSON says.
    pub fn json(&self) -> Result<String, serde_json::Error> {
        let strength = self.strength.as_ref().map(|s| &s.strength);
        let all = All { solution: &self.solution, strength, order: self.order.as_ref(), site: self.site.as_ref() };
        Ok(serde_json::to_string_pretty(&all)? + "\n")
    }
}

/// The strength with the working of the timber that is used most.
#[must_use]
pub fn part(checks: Checks) -> StrengthPart {
    let most = checks.strength.members.first();
    let working = most.and_then(|m| checks.working(&m.mark, None)).unwrap_or_default();
    StrengthPart { strength: checks.strength, working }
}

fn kept<T, E>(found: Result<T, E>, why_not: &mut Option<E>) -> Option<T> {
    match found {
        Ok(found) => Some(found),
        Err(why) => {
            *why_not = Some(why);
            None
        }
    }
}

/// Everything side by side.
#[derive(Serialize)]
struct All<'a> {
    #[serde(flatten)]
    solution: &'a Solution,
    #[serde(skip_serializing_if = "Option::is_none")]
    strength: Option<&'a Strength>,
    #[serde(skip_serializing_if = "Option::is_none")]
    order: Option<&'a Order>,
    #[serde(skip_serializing_if = "Option::is_none")]
    site: Option<&'a Site>,
}
