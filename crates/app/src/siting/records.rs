//! The papers, worded: what is said, what is asked, and what people on site wrote in their place.

use super::words::{from, verdict, verdict_word};
use crate::views::{SitePaper, SiteRecords, SiteRow, SiteSection};
use crate::wording::Writing;
use job::Job;
use site::access::{Row, Section};
use site::records::{Paper, records};
use site::whole::Site;
use std::collections::BTreeMap;

/// Texts that people on site wrote, by the name of what they stand in place of.
type Written = BTreeMap<String, String>;

/// The papers. What is written on site stands beside what it replaces, so that it can be taken back.
pub(super) fn of(job: &Job, site: &Site, writing: &Writing) -> SiteRecords {
    let bare = Job { records: BTreeMap::new(), ..job.clone() };
    let plain = records(&bare, &site.access, &site.programme);
    let papers = [&plain.brief, &plain.access_record, &plain.risk_and_method];
    let papers: Vec<SitePaper> = papers.iter().map(|one| paper(one, &job.records, writing)).collect();
    // A question that two papers ask is one question.
    let mut asked: Vec<(&str, bool)> = papers
        .iter()
        .flat_map(|paper| &paper.sections)
        .flat_map(|section| &section.rows)
        .filter(|row| row.said.is_none())
        .map(|row| (row.name.as_str(), row.written.is_some()))
        .collect();
    asked.sort_unstable();
    asked.dedup();
    let answered = asked.iter().filter(|(_, written)| *written).count();
    SiteRecords {
        answered: format!("{answered} of {} questions answered", asked.len()),
        papers,
        unused: site.records.unused.clone(),
    }
}

fn paper(paper: &Paper, written: &Written, writing: &Writing) -> SitePaper {
    SitePaper {
        title: writing.say_first(&paper.title),
        cautions: paper.cautions.iter().map(|text| writing.sentence(text)).collect(),
        sections: paper.sections.iter().map(|one| section(one, written, writing)).collect(),
    }
}

/// A part of a paper, or of what is said of the access.
pub(super) fn section(section: &Section, written: &Written, writing: &Writing) -> SiteSection {
    SiteSection {
        heading: writing.say_first(&section.heading),
        rows: section.rows.iter().map(|one| row(one, written, writing)).collect(),
    }
}

fn row(row: &Row, written: &Written, writing: &Writing) -> SiteRow {
    let name = row.id().to_owned();
    let written = written.get(&name).cloned();
    match row {
        Row::Said(said) => SiteRow {
            name,
            said: Some(writing.say(&said.text)),
            question: String::new(),
            from: from(writing, &said.source, said.basis),
            verdict: said.verdict.map(verdict),
            word: said.verdict.map_or_else(String::new, |of| writing.say_first(verdict_word(of))),
            written,
        },
        Row::Blank(blank) => SiteRow {
            name,
            said: None,
            question: writing.say(&blank.question),
            from: writing.say(&format!("To be answered by: {}", blank.who)),
            verdict: None,
            word: String::new(),
            written,
        },
    }
}
