//! Texts of pictures keep apart and inside, and are large enough to read.

use crate::common;
use job::written::Lengths;
use picture::{Anchor, Shape};
use working::why;

/// Least type of words and of figures, px.
const LEAST: f64 = 16.0;

/// Mean width of a letter over its size: of a sans serif face.
const LETTER: f64 = 0.6;

/// Left, top, right and bottom of a text.
fn extent(shape: &Shape) -> Option<[f64; 4]> {
    let Shape::Text { at, size, anchor, text, .. } = shape else { return None };
    assert!(*size >= LEAST, "`{text}` is too small");
    let width = text.chars().map(|c| if c == 'm' { 0.98 } else { LETTER }).sum::<f64>() * size;
    let left = match anchor {
        Anchor::Start => at[0],
        Anchor::Middle => at[0] - width / 2.0,
        Anchor::End => at[0] - width,
    };
    Some([left, at[1] - size * 0.75, left + width, at[1] + size * 0.22])
}

#[test]
fn texts_neither_overlap_nor_leave_the_picture() {
    let mut wrong = Vec::new();
    let examples = common::examples();
    for (name, job, solution) in examples.iter().filter(|(n, ..)| n == "boathouse" || n == "whole-house") {
        for question in common::questions(solution) {
            for width in [300.0, 360.0, 700.0] {
                let picture = why(job, solution, &question, Lengths::Millimetres, width).expect("a working").picture;
                assert!(!picture.spoken.is_empty() && picture.width == width, "{question}");
                let texts: Vec<[f64; 4]> = picture.parts.iter().filter_map(|p| extent(&p.shape)).collect();
                assert!(!texts.is_empty(), "{question}: nothing is written");
                for (i, a) in texts.iter().enumerate() {
                    if a[0] < 0.0 || a[1] < 0.0 || a[2] > width || a[3] > picture.height {
                        wrong.push(format!("{name} {question} at {width}: a text leaves the picture: {a:?}"));
                    }
                    for b in &texts[i + 1..] {
                        if a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3] {
                            wrong.push(format!("{name} {question} at {width}: {a:?} runs into {b:?}"));
                        }
                    }
                }
                for part in &picture.parts {
                    let points = match &part.shape {
                        Shape::Line { points } | Shape::Area { points } => points,
                        _ => continue,
                    };
                    let out =
                        |p: &[f64; 2]| p[0] < -0.5 || p[1] < -0.5 || p[0] > width + 0.5 || p[1] > picture.height + 0.5;
                    if points.iter().any(out) {
                        wrong.push(format!("{name} {question} at {width}: a line leaves the picture: {points:?}"));
                    }
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}\n{}", wrong.len(), wrong[..wrong.len().min(20)].join("\n"));
}
