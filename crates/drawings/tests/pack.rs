//! The pack and lists as their reader gets them.

use crate::fixture::hipped;
use drawings::{PackError, frame_svg, members_csv, pack, piece_card, plan_svg};

fn count(bytes: &[u8], needle: &[u8]) -> usize {
    bytes.windows(needle.len()).filter(|w| *w == needle).count()
}

#[test]
fn the_same_roof_gives_the_same_bytes() {
    let solution = hipped();
    let first = pack(&solution).unwrap();
    assert_eq!(first, pack(&solution).unwrap());
    assert!(first.starts_with(b"%PDF-1.7"));
    // No clock in it.
    assert_eq!(count(&first, b"/CreationDate"), 0);
    assert_eq!(plan_svg(&solution), plan_svg(&solution));
}

#[test]
fn pages_are_a4_on_their_side_and_fonts_are_embedded() {
    let bytes = pack(&hipped()).unwrap();
    let pages = count(&bytes, b"/Type/Page/") + count(&bytes, b"/Type /Page\n");
    assert!(pages >= 15, "{pages}");
    // 297 mm by 210 mm in points.
    let boxes = count(&bytes, b"[0 0 841.8898 595.2756]");
    assert!(boxes >= pages, "{boxes} boxes, {pages} pages");
    // Both faces as subsets, with the tables that make their text selectable.
    assert_eq!(count(&bytes, b"/FontFile2"), 2);
    assert_eq!(count(&bytes, b"/ToUnicode"), 2);
    assert!(count(&bytes, b"+DejaVuSans-Bold") > 0);
    assert!(bytes.len() < 3_000_000, "{}", bytes.len());
}

#[test]
fn a_card_is_found_by_the_mark_of_any_timber_cut_from_it() {
    let solution = hipped();
    let own = piece_card(&solution, "A7").unwrap();
    assert_eq!(own, piece_card(&solution, "C45").unwrap());
    assert!(own.len() < pack(&solution).unwrap().len());
    assert_eq!(piece_card(&solution, "Z99"), Err(PackError::NoPiece("Z99".into())));
}

#[test]
fn the_list_reads_back() {
    let solution = hipped();
    let text = members_csv(&solution).unwrap();
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let column = |name: &str| head.iter().position(|h| h == name).unwrap();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), solution.members.len());
    for (row, member) in rows.iter().zip(&solution.members) {
        assert_eq!(&row[column("mark")], member.mark);
        assert_eq!(row[column("cut_count")].parse(), Ok(member.cuts.len()));
        let length: f64 = row[column("true_length_mm")].parse().unwrap();
        // Written to a thousandth.
        assert!((length - member.true_length_mm).abs() <= 0.0005);
        assert_eq!(row[column("cuts")].matches("face").count(), member.cuts.len());
    }
}

#[test]
fn names_with_commas_and_quotes_stay_in_their_cell() {
    let mut solution = hipped();
    solution.members[0].mark = "P1, \"front\"\nplate".into();
    let text = members_csv(&solution).unwrap();
    let row = csv::Reader::from_reader(text.as_bytes()).records().next().unwrap().unwrap();
    assert_eq!(&row[0], "P1, \"front\"\nplate");
}

#[test]
fn pictures_are_whole_xml() {
    let mut solution = hipped();
    solution.title = "Tom & <Co> \"yard\"".into();
    for svg in [plan_svg(&solution), frame_svg(&solution)] {
        assert!(svg.starts_with("<svg xmlns=") && svg.ends_with("</svg>\n"));
        assert!(svg.contains("Tom &amp; &lt;Co&gt; &quot;yard&quot;"));
        assert_eq!(svg.matches("<g").count(), svg.matches("</g>").count());
        assert!(!svg.contains("NaN") && !svg.contains("inf"));
        assert!(svg.len() < 1_000_000, "{}", svg.len());
    }
}
