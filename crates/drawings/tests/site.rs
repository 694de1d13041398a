//! The sheets for the site as their reader gets them.

use crate::fixture::hipped;
use drawings::{SitePapers, site_pdf};

fn count(bytes: &[u8], needle: &[u8]) -> usize {
    bytes.windows(needle.len()).filter(|w| *w == needle).count()
}

#[test]
fn the_same_site_gives_the_same_bytes() {
    let path = format!("{}/../../examples/boathouse.toml", env!("CARGO_MANIFEST_DIR"));
    let job = job::read(std::fs::read_to_string(path).unwrap()).unwrap();
    let solution = roof::solve(&job).unwrap();
    let putting_up = site::sequence::putting_up(&job, &solution).unwrap();
    let work = site::programme::Work::of(&job, &solution).unwrap();
    let programme = site::programme::programme(&job, &solution, &work).unwrap();
    let access = site::access::access(&job, &solution, &programme).unwrap();
    let records = site::records::records(&job, &access, &programme);
    let papers = SitePapers {
        putting_up: Some(&putting_up),
        programme: Some(&programme),
        access: Some(&access),
        records: Some(&records),
        ..SitePapers::default()
    };
    let first = site_pdf(&solution, &papers).unwrap();
    assert_eq!(first, site_pdf(&solution, &papers).unwrap());
    assert!(first.starts_with(b"%PDF-1.7"));
    // No clock in it.
    assert_eq!(count(&first, b"/CreationDate"), 0);
    assert!(count(&first, b"[0 0 841.8898 595.2756]") > 30);
    assert!(first.len() < 6_000_000, "{}", first.len());
}

#[test]
fn without_steps_there_are_still_the_other_sheets() {
    let (solution, nothing) = (hipped(), SitePapers::default());
    // A document without pages is one all the same.
    assert!(site_pdf(&solution, &nothing).is_ok());
}
