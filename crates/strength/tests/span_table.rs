//! Span tables. The laws hold for any figures; that the greatest span is used to 1 is the table's own promise, worked
//! with the same checks. No published table is compared here: those at hand are of another model (two or more spans).

use strength::span_table::{Asked, CENTRES, Carries, OnJoists, OnRafters, SECTIONS, SpanFault, SpanRow, SpanTable};
use strength::span_table::{span_table, used};

fn asked(carries: Carries) -> Asked {
    Asked { region: "uk".into(), class: "C24".into(), centres: CENTRES.to_vec(), carries }
}

fn rafters(snow_zone: u8, altitude: f64, pitch: f64) -> Asked {
    asked(Carries::Rafters(OnRafters { covering: 0.85, snow_zone, altitude, wind: 0.85, pitch }))
}

fn joists() -> Asked {
    asked(Carries::CeilingJoists(OnJoists { ceiling: 0.25, loft: 0.25 }))
}

fn row(table: &SpanTable, size: [f64; 2], centres: f64) -> &SpanRow {
    let found = table.rows.iter().find(|r| [r.thickness_mm, r.depth_mm] == size && r.centres_mm == centres);
    found.expect("every section at every centres")
}

#[test]
fn deeper_spans_further_and_wider_centres_less() {
    for asked in [rafters(3, 120.0, 40.0), joists()] {
        let table = span_table(&asked).unwrap();
        assert_eq!(table.rows.len(), SECTIONS.len() * CENTRES.len());
        for pair in SECTIONS.windows(2).filter(|p| p[0][0] == p[1][0]) {
            for centres in CENTRES {
                let [less, more] = [pair[0], pair[1]].map(|size| row(&table, size, centres).clear_span_mm);
                assert!(more > less, "{pair:?} at {centres}: {less} and {more}");
            }
        }
        for size in SECTIONS {
            let [a, b, c] = CENTRES.map(|centres| row(&table, size, centres).clear_span_mm);
            assert!(a > b && b > c, "{size:?}: {a}, {b}, {c}");
        }
    }
}

#[test]
fn the_greatest_span_is_used_to_the_full_and_no_further() {
    for asked in [rafters(3, 120.0, 40.0), rafters(5, 400.0, 25.0), joists()] {
        let table = span_table(&asked).unwrap();
        for row in &table.rows {
            let size = [row.thickness_mm, row.depth_mm];
            let at = |span: f64| used(&asked, size, row.centres_mm, span).unwrap();
            let full = at(row.clear_span_mm);
            assert!((full.ratio - 1.0).abs() < 1e-6 && full.name == row.governs, "{row:?}: {full:?}");
            assert!(at(row.clear_span_mm + 1.0).ratio > 1.0 && at(row.clear_span_mm - 50.0).ratio < 1.0, "{row:?}");
        }
    }
}

#[test]
fn more_snow_and_weaker_wood_never_span_further() {
    let spans = |asked: &Asked| span_table(asked).unwrap().rows.into_iter().map(|r| r.clear_span_mm);
    let weaker = Asked { class: "C16".into(), ..rafters(3, 120.0, 40.0) };
    for worse in [rafters(5, 120.0, 40.0), rafters(3, 500.0, 40.0), weaker] {
        for (a, b) in spans(&rafters(3, 120.0, 40.0)).zip(spans(&worse)) {
            assert!(b <= a + 1e-6, "{a} and {b}");
        }
    }
}

#[test]
fn a_joist_by_hand() {
    // 47 × 97 of C24 at 400 under a ceiling of 0.25 kN/m² with one person of 0.9 kN in the middle, its deflection worked
    // here from the formulas, with shear, not from a source: E 11000, G 690, k_def 0.8, limit span/250.
    let table = span_table(&joists()).unwrap();
    let row = row(&table, [47.0, 97.0], 400.0);
    let length = row.clear_span_mm + 100.0;
    let (area, inertia) = (47.0 * 97.0, 47.0 * 97.0_f64.powi(3) / 12.0);
    let q = 0.25e-3 * 400.0 + 420e-9 * 9.81 * area;
    let spread =
        5.0 * q * length.powi(4) / (384.0 * 11_000.0 * inertia) + 1.2 * q * length.powi(2) / (8.0 * 690.0 * area);
    let person = 900.0 * length.powi(3) / (48.0 * 11_000.0 * inertia) + 1.2 * 900.0 * length / (4.0 * 690.0 * area);
    let sag = spread * 1.8 + person;
    assert_eq!(row.governs, "deflection");
    assert!((sag / (length / 250.0) - 1.0).abs() < 1e-3, "{sag} over {length}");
}

#[test]
fn what_cannot_be_is_refused_in_words() {
    let fault = |asked: &Asked| span_table(asked).unwrap_err();
    assert!(matches!(fault(&Asked { class: "C99".into(), ..joists() }), SpanFault::Class(_)));
    assert!(matches!(fault(&Asked { region: "atlantis".into(), ..joists() }), SpanFault::Region(_)));
    for asked in [
        rafters(3, 120.0, f64::NAN),
        rafters(3, 120.0, 5.0),
        Asked { centres: vec![0.0], ..joists() },
        Asked { centres: vec![f64::NAN], ..joists() },
        asked(Carries::CeilingJoists(OnJoists { ceiling: -1.0, loft: 0.25 })),
    ] {
        assert!(matches!(fault(&asked), SpanFault::BadFigure { .. }), "{asked:?}");
    }
    assert!(matches!(fault(&rafters(9, 120.0, 40.0)), SpanFault::Actions(_)));
    assert!(!span_table(&rafters(5, 1100.0, 40.0)).unwrap().refused.is_empty(), "too high for the figures");
}
