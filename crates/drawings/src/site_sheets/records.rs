//! The papers of access, risks and method: statements with their sources, questions with lines to write on, signatures.

use site::records::{Paper, Records};

use crate::flow::Flow;
use crate::page::Page;
use crate::site_sheets::parts::{WORDS, boxed, paragraph, part, signatures};
use crate::site_sheets::statements::section;

/// On every paper.
pub const CAUTION: &str = "Filled in from the job, to be put right by who knows the site: no design, certificate or assessment. \
                           Local rules, the scaffold designer and the principal contractor decide.";

/// All papers.
pub fn pages(records: &Records) -> Vec<Page> {
    let mut pages = paper(
        &records.brief,
        &["client or who is in charge of the site: name, signature, date", "scaffold designer: name, signature, date"],
        &[],
    );
    pages.extend(paper(
        &records.access_record,
        &[
            "scaffold contractor: name, signature, date",
            "inspected by: name, signature, date",
            "who is in charge of the site: name, signature, date",
        ],
        &[],
    ));
    let unused: Vec<String> = records.unused.clone();
    pages.extend(paper(
        &records.risk_and_method,
        &[
            "written by: name, signature, date",
            "read out to the gang by: name, signature, date",
            "who is in charge of the site: name, signature, date",
        ],
        &unused,
    ));
    pages
}

fn paper(paper: &Paper, who: &[&str], unused: &[String]) -> Vec<Page> {
    let mut flow = Flow::named(&paper.title, CAUTION);
    boxed(&mut flow, "Before it is used", &paper.cautions);
    for one in &paper.sections {
        section(&mut flow, one);
    }
    if !unused.is_empty() {
        part(&mut flow, "Texts of the job that no paper has a place for");
        paragraph(&mut flow, WORDS, &unused.join(", "));
    }
    part(&mut flow, "Signed");
    signatures(&mut flow, who);
    flow.finish()
}
