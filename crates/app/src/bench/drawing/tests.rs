//! Every piece of the fullest examples at three widths: nothing stands on
//! anything else, and nothing leaves the picture.

use super::*;
use crate::views::Dialect;
use job::written::Lengths;
use picture::Shape;

/// A text's box: left, right, top, bottom; px.
fn boxes(picture: &Picture) -> Vec<([f64; 4], &str, f64)> {
    picture
        .parts
        .iter()
        .filter_map(|part| match &part.shape {
            Shape::Text { at, size, anchor, text, .. } => {
                let wide = text_width(text, *size);
                let left = match anchor {
                    Anchor::Start => at[0],
                    Anchor::Middle => at[0] - wide / 2.0,
                    Anchor::End => at[0] - wide,
                };
                Some(([left, left + wide, at[1] - size * 0.8, at[1] + size * 0.2], text.as_str(), *size))
            }
            _ => None,
        })
        .collect()
}

fn points(picture: &Picture) -> Vec<[f64; 2]> {
    picture
        .parts
        .iter()
        .flat_map(|part| match &part.shape {
            Shape::Line { points } | Shape::Area { points } => points.clone(),
            Shape::Dot { at, .. } => vec![*at],
            _ => Vec::new(),
        })
        .collect()
}

fn faults(picture: &Picture) -> Vec<String> {
    let mut faults = Vec::new();
    let boxes = boxes(picture);
    for (k, ([l, r, t, b], text, size)) in boxes.iter().enumerate() {
        if *l < -0.5 || *r > picture.width + 0.5 || *t < -0.5 || *b > picture.height + 0.5 {
            faults.push(format!("`{text}` leaves the picture: {l} {r} {t} {b}"));
        }
        if *size < if text.contains(|c: char| c.is_ascii_digit()) { 24.0 } else { 15.0 } {
            faults.push(format!("`{text}` is too small"));
        }
        for ([l2, r2, t2, b2], other, _) in boxes.iter().skip(k + 1) {
            if l.max(*l2) < r.min(*r2) && t.max(*t2) < b.min(*b2) {
                faults.push(format!("`{text}` on `{other}`"));
            }
        }
    }
    for [x, y] in points(picture) {
        if !(x >= -0.5 && x <= picture.width + 0.5 && y >= -0.5 && y <= picture.height + 0.5) {
            faults.push(format!("a point at {x}, {y}"));
        }
    }
    faults
}

#[test]
fn no_text_stands_on_another_or_leaves_the_picture() {
    for example in ["boathouse", "whole-house"] {
        let solution = crate::bench::tests::example(example).1;
        for piece in &solution.pieces {
            let member = solution.members.iter().find(|m| m.mark == piece.mark).unwrap();
            for width in [320.0, 360.0, 600.0, 900.0] {
                for lengths in [Lengths::Millimetres, Lengths::FeetInches] {
                    let writing = Writing { lengths, dialect: Dialect::Uk };
                    let picture = picture(&writing, member, width);
                    assert!(picture.parts.len() > 10, "{} is drawn", piece.mark);
                    let faults = faults(&picture);
                    assert!(faults.is_empty(), "{example} {} at {width}: {}", piece.mark, faults.join("; "));
                }
            }
        }
    }
}

#[test]
fn every_step_can_be_pointed_at() {
    let solution = crate::bench::tests::example("whole-house").1;
    let writing = Writing { lengths: Lengths::Millimetres, dialect: Dialect::Uk };
    for piece in &solution.pieces {
        let member = solution.members.iter().find(|m| m.mark == piece.mark).unwrap();
        let picture = picture(&writing, member, 360.0);
        for k in 0..sets(member).len() {
            let named = picture.parts.iter().filter(|part| part.name.as_deref() == Some(&name(k))).count();
            assert!(named > 0, "{} {}", piece.mark, name(k));
        }
    }
}

#[test]
fn what_is_no_timber_makes_an_empty_picture() {
    let (_, solution) = crate::bench::tests::example("lean-to");
    let mut member = solution.members[0].clone();
    member.bench.points.clear();
    member.marks.clear();
    let writing = Writing { lengths: Lengths::Millimetres, dialect: Dialect::Uk };
    assert!(picture(&writing, &member, f64::NAN).parts.is_empty());
}
