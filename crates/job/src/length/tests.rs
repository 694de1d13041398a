use super::*;
use crate::LengthUnit::{FeetInches, Millimetres};
use proptest::prelude::*;

/// Sums of decimal fractions differ in their last bits from the same sum made
/// in another order, mm.
const ROUNDING: f64 = 1e-9;

#[track_caller]
fn reads(text: &str, mm: f64) {
    let read = parse_length(text).unwrap_or_else(|error| panic!("{text}: {error}"));
    assert!((read - mm).abs() < ROUNDING, "{text}: {read} is not {mm}");
}

#[test]
fn reads_metric() {
    reads("8400 mm", 8400.0);
    reads("8400mm", 8400.0);
    reads(" 8.4 m ", 8400.0);
    reads("84 cm", 840.0);
    reads("1 m 20 cm 5 mm", 1205.0);
    reads("-12.5 mm", -12.5);
    reads("−12.5 mm", -12.5);
    reads("3 metres", 3000.0);
    reads(".5 m", 500.0);
}

#[test]
fn reads_feet_and_inches() {
    // 27 × 304.8 + 6.5 × 25.4 = 8229.6 + 165.1.
    let mm = 8394.7;
    for text in [
        "27' 6 1/2\"",
        "27'-6 1/2\"",
        "27'6 1/2\"",
        "27 ft 6 1/2 in",
        "27 feet 6 1/2 inches",
        "27ft 6.5in",
        "27′ 6½″",
        "27’-6 ½”",
        "27' 6 1⁄2''",
        "330 1/2\"",
    ] {
        reads(text, mm);
    }
    reads("6 1/2\"", 165.1);
    reads("½\"", 12.7);
    reads("7/8 in", 22.225);
    reads("6⅛″", 155.575);
    reads("27'", 8229.6);
    reads("-27' 6 1/2\"", -8394.7);
}

#[test]
fn says_what_is_wrong() {
    let error = |text: &str| parse_length(text).expect_err(text);
    assert_eq!(error("  "), LengthError::Empty);
    assert_eq!(error("8400"), LengthError::NoUnit { number: "8400".into() });
    assert_eq!(error("27' 6"), LengthError::NoUnit { number: "6".into() });
    assert_eq!(error("6 7 in"), LengthError::NoUnit { number: "6".into() });
    assert_eq!(error("3 yards"), LengthError::UnknownUnit { unit: "yards".into() });
    assert_eq!(error("8,4 m"), LengthError::Comma);
    assert_eq!(error("mm"), LengthError::NumberMissing { found: "m".into() });
    assert_eq!(error("-"), LengthError::NumberMissing { found: "the end".into() });
    assert_eq!(error("1.2.3 m"), LengthError::NumberMissing { found: "1.2.3".into() });
    assert_eq!(error("1/0\""), LengthError::BadFraction { fraction: "1/0".into() });
    assert_eq!(error("6 3/2\""), LengthError::BadFraction { fraction: "6 3/2".into() });
    assert_eq!(error("1/2 mm"), LengthError::BadFraction { fraction: "1/2 mm".into() });
    assert_eq!(error("6\" 2'"), LengthError::UnitOrder { unit: "'".into() });
    assert_eq!(error("2' 300 mm"), LengthError::UnitOrder { unit: "mm".into() });
    assert_eq!(error("2' 12\""), LengthError::TooManyInches { inches: "12".into() });
    assert_eq!(error(&format!("{}m", "9".repeat(400))), LengthError::TooLarge);
}

#[test]
fn writes_both_units() {
    assert_eq!(format_length(8400.0, Millimetres), "8400 mm");
    assert_eq!(format_length(47.46, Millimetres), "47.5 mm");
    assert_eq!(format_length(-0.04, Millimetres), "0 mm");
    assert_eq!(format_length_bare(1234.5, Millimetres), "1234.5");
    assert_eq!(format_length(0.0, FeetInches), "0\"");
    assert_eq!(format_length(8394.7, FeetInches), "27' 6 1/2\"");
    assert_eq!(format_length(8229.6, FeetInches), "27' 0\"");
    assert_eq!(format_length(3.2, FeetInches), "1/8\"");
    assert_eq!(format_length(-165.1, FeetInches), "-6 1/2\"");
    // Rounds up to the next foot rather than to twelve inches.
    assert_eq!(format_length(609.5, FeetInches), "2' 0\"");
    assert_eq!(format_length(f64::NAN, FeetInches), "0\"");
}

proptest! {
    #[test]
    fn millimetres_come_back(mm in -1e7..1e7_f64) {
        let read = parse_length(&format_length(mm, Millimetres)).unwrap();
        prop_assert!((read - mm).abs() <= 0.05 + ROUNDING);
    }

    #[test]
    fn feet_and_inches_come_back_to_half_a_sixteenth(mm in -1e7..1e7_f64) {
        let read = parse_length(&format_length(mm, FeetInches)).unwrap();
        prop_assert!((read - mm).abs() <= MM_PER_INCH / 32.0 + ROUNDING);
    }

    #[test]
    fn what_is_written_is_settled(sixteenths in -2_000_000_i32..2_000_000) {
        let text = format_length(f64::from(sixteenths) * MM_PER_INCH / 16.0, FeetInches);
        prop_assert_eq!(format_length(parse_length(&text).unwrap(), FeetInches), text);
    }

    #[test]
    fn no_text_breaks_it(text in "\\PC*") {
        let _ = parse_length(&text);
    }

    #[test]
    fn no_text_of_its_own_signs_breaks_it(text in "[0-9'\"./ mcftin½″-]{0,20}") {
        if let Ok(mm) = parse_length(&text) {
            prop_assert!(mm.is_finite());
        }
    }
}
