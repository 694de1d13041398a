//! Sheets of strength and span tables: laid out cleanly, and worded as they must be.

use roof::solution::MemberKind;
use strength::span_table::{Asked, Carries, OnJoists, OnRafters, SpanTable, span_table};
use strength::whole::{
    Assumed, CheckUse, CombinationOut, FigureOut, JointUse, Left, MemberUse, PairFeet, Refused, Strength,
    StructuralSize, Totals, Verdict, WallLoad,
};
use strength::working::Line;

use crate::fixture::hipped;
use crate::layout_checks::faults_of;
use crate::page::{Block, frame, framed};
use crate::sheet::{Item, Sheet};
use crate::strength_sheets::sheet;
use crate::strength_sheets::spans;
use crate::{Papers, StrengthPapers, pack, pack_with, span_sheets, spans_csv};

/// Strength of no real roof: it only has to be good enough to lay sheets out. `words` come behind every text.
fn made(words: &str, matters: usize) -> Strength {
    let text = |start: &str| format!("{start}{words}");
    let member = |mark: &str, kind, used: f64, verdict| MemberUse {
        mark: text(mark),
        lengths: vec![text(mark)],
        kind,
        size: StructuralSize { thickness_mm: 47.0, depth_mm: 150.0 },
        left: Left { used, verdict },
        checks: vec![CheckUse {
            name: text("bearing at an angle to the grain"),
            clause: text("EN 1995-1-1 6.2.2 (6.16)"),
            used,
            combination: Some(0),
            at_mm: 20.0,
        }],
        would_pass: (verdict == Verdict::Over).then_some(StructuralSize { thickness_mm: 75.0, depth_mm: 220.0 }),
        place: [0.0; 3],
    };
    let mut members = vec![
        member("Hip-1", MemberKind::HipRafter, f64::INFINITY, Verdict::Over),
        member("Hip-2", MemberKind::HipRafter, 1.2, Verdict::Over),
        member("A7", MemberKind::CommonRafter, 0.95, Verdict::Near),
        member("J1", MemberKind::JackRafter, 0.4, Verdict::Within),
    ];
    let kinds = [MemberKind::Purlin, MemberKind::Strut, MemberKind::Collar, MemberKind::CeilingJoist];
    members.extend(kinds.into_iter().map(|kind| member("T-12", kind, 0.3, Verdict::Within)));
    let joint = |used: Option<f64>, verdict| JointUse {
        name: text("rafter foot to ceiling joist"),
        marks: vec![text("A7"), text("Joist-3")],
        force_n: 123_456.0,
        used,
        verdict,
        clause: text("EN 1995-1-1 8.3.1"),
        takes: text("5 nails 4.0 × 100; room for 16"),
        fixings: Some(5),
        remark: text("through the rafter into the joist"),
        working: Vec::new(),
    };
    let wall = |name: &str, uplift: f64, straps: Option<u32>| WallLoad {
        name: text(name),
        permanent_kn: 1234.5,
        most_kn: 2345.6,
        uplift_kn: uplift,
        length_m: 8.4,
        straps,
        straps_apart_mm: straps.map(|_| 1200.0),
    };
    let pair = |spread: Option<f64>, tied: bool| PairFeet {
        rafters: [text("A7"), text("C7")],
        collar: Some(text("Collar-1")),
        tied,
        spread_mm: spread,
        tie_n: 12_345.0,
        collar_free_n: -12_345.0,
        thrust_n: 12_345.0,
        collar_held_n: 12_345.0,
    };
    Strength {
        editions: vec![text("EN 338:2016")],
        assumed: Assumed {
            class: "C24".into(),
            service: 2,
            feet: "free".into(),
            ridge: "board".into(),
            sharing: true,
            from_memory: 40,
        },
        loads: (0..12)
            .map(|k| FigureOut {
                what: text(&format!("load number {k} g_k")),
                how: text("0.15 + (0.1 × 3 + 0.05) + (120 − 100)/525"),
                value: 0.538,
                unit: "kN/m²".into(),
                from: text("EN 1991-1-3 UK NA"),
            })
            .collect(),
        combinations: vec![CombinationOut {
            name: text("own weight and snow on the right slope only"),
            duration: "short-term".into(),
            kmod: 0.9,
        }],
        members,
        joints: vec![joint(Some(1.3), Some(Verdict::Over)), joint(None, None), joint(Some(0.5), Some(Verdict::Within))],
        feet: (0..9).map(|k| pair((k > 0).then_some(f64::from(k)), k % 2 == 0)).collect(),
        walls: vec![wall("A", 0.0, None), wall("B", 12.0, Some(8)), wall("passage-north", 3.0, None)],
        refused: (0..matters)
            .map(|k| Refused {
                code: "hip-long".into(),
                text: text(&format!("Needs an engineer: matter {}.", k / 3)),
                place: text(&format!("Hip-{k}")),
            })
            .collect(),
        cautions: vec![text("A check of timbers and joints, not of the building.")],
        totals: Totals::default(),
    }
}

fn working(words: &str) -> Vec<Line> {
    let line = |k: usize| Line {
        what: format!("bending strength f_m,d {k}{words}"),
        how: format!("24 × 0.9 / 1.3{words}"),
        value: if k == 3 { f64::INFINITY } else { 16.62 },
        unit: "N/mm²".into(),
        from: format!("EN 1995-1-1 2.4.1 (2.14){words}"),
    };
    (0..30).map(line).collect()
}

fn sheets(words: &str, matters: usize) -> Vec<Sheet> {
    let (strength, lines) = (made(words, matters), working(words));
    let papers = StrengthPapers { strength: &strength, working: &lines };
    let solution = hipped();
    frame(sheet::pages(&solution, &papers), &solution)
}

fn words_on(sheet: &Sheet) -> String {
    let texts =
        sheet.items.iter().filter_map(|item| if let Item::Text(t) = item { Some(t.text.as_str()) } else { None });
    texts.collect::<Vec<_>>().join("\n")
}

#[test]
fn sheets_of_strength_are_laid_out_cleanly() {
    let long = " which is a very long text that somebody wrote at length, withaverylongwordwithoutanyspaceinitatall";
    for (words, matters) in [("", 0), ("", 4), ("", 200), (long, 4), (long, 90)] {
        let faults = faults_of(&sheets(words, matters));
        assert!(
            faults.is_empty(),
            "{matters} matters: {} faults\n{}",
            faults.len(),
            faults[..faults.len().min(12)].join("\n")
        );
    }
}

#[test]
fn every_sheet_has_its_cautions_and_the_engineer_comes_first() {
    let sheets = sheets("", 4);
    for sheet in &sheets {
        let words = words_on(sheet).replace('\n', " ");
        assert!(words.contains("Member check only") && words.contains("structural engineer decide"), "{words}");
        assert!(!words.to_lowercase().contains("safe"), "{words}");
    }
    let first = words_on(&sheets[0]);
    let places = ["Needs an engineer", "OVER: 2 × hip rafter", "What was assumed", "Timbers"].map(|t| first.find(t));
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?} in\n{first}");
    // The same matter is told once, with all its marks.
    assert_eq!(first.matches("matter 0.").count(), 1);
    assert!(first.contains("Hip-0–Hip-2"), "{first}");
}

#[test]
fn what_is_over_has_its_word_its_bar_and_what_would_pass() {
    let sheets = sheets("", 0);
    let all: String = sheets.iter().map(words_on).collect::<Vec<_>>().join("\n");
    for wanted in
        ["OVER", "NEAR", "none left", "130 %", "75 × 220", "not known", "cannot stand", "8, no more than 1200 mm apart"]
    {
        assert!(all.contains(wanted), "no {wanted} in\n{all}");
    }
    let bars = sheets.iter().flat_map(|s| &s.items).filter(|i| matches!(i, Item::Path { fill: Some(0), .. })).count();
    assert_eq!(bars, 2, "one kind of timber and one of joint");
}

#[test]
fn a_pack_without_strength_is_as_it_was() {
    let solution = hipped();
    assert_eq!(pack(&solution).unwrap(), pack_with(&solution, &Papers::default()).unwrap());
    let (strength, lines) = (made("", 2), working(""));
    let strength = Some(StrengthPapers { strength: &strength, working: &lines });
    let papers = Papers { strength, ..Papers::default() };
    assert!(pack_with(&solution, &papers).unwrap().len() > pack(&solution).unwrap().len());
}

fn tables(centres: &[f64]) -> Vec<SpanTable> {
    let rafters = OnRafters { covering: 0.85, snow_zone: 3, altitude: 1100.0, wind: 0.85, pitch: 40.0 };
    let joists = OnJoists { ceiling: 0.25, loft: 0.25 };
    let asked = |carries| Asked { region: "uk".into(), class: "C24".into(), centres: centres.to_vec(), carries };
    [Carries::Rafters(rafters), Carries::CeilingJoists(joists)].map(|c| span_table(&asked(c)).unwrap()).to_vec()
}

#[test]
fn span_tables_are_laid_out_cleanly() {
    let block = Block { title: "Span tables", date: None, revision: None, rounding: "Clear spans" };
    for centres in [vec![400.0], vec![400.0, 450.0, 600.0], vec![300.0, 350.0, 400.0, 450.0, 500.0, 600.0, 610.0]] {
        let tables = tables(&centres);
        let sheets = framed(spans::pages(&tables), &block);
        let faults = faults_of(&sheets);
        assert!(faults.is_empty(), "{centres:?}: {faults:?}");
        for sheet in &sheets {
            let words = words_on(sheet);
            assert!(words.contains("Member check only") && !words.to_lowercase().contains("safe"), "{words}");
        }
        assert!(span_sheets(&tables).unwrap().starts_with(b"%PDF-1.7"));
    }
}

#[test]
fn the_list_of_spans_reads_back() {
    let tables = tables(&[400.0, 600.0]);
    let text = spans_csv(&tables).unwrap();
    let rows: Vec<csv::StringRecord> =
        csv::Reader::from_reader(text.as_bytes()).records().map(Result::unwrap).collect();
    let all: Vec<_> = tables.iter().flat_map(|t| &t.rows).collect();
    assert_eq!(rows.len(), all.len());
    for (row, span) in rows.iter().zip(all) {
        let written: f64 = row[5].parse().unwrap();
        assert!(written <= span.clear_span_mm && written > span.clear_span_mm - 1.0, "{row:?}");
    }
}
