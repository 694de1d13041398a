//! The words are true: every sum of every working comes to the result beside
//! it, worked out here by another way of reading sums than the crate's own.

use crate::common;
use job::written::Lengths;
use working::why;

/// Works out a sum by two stacks, operators and values; angles in degrees.
fn worked_out(text: &str) -> f64 {
    let mut values: Vec<f64> = Vec::new();
    let mut waiting: Vec<String> = Vec::new();
    let rank = |op: &str| match op {
        "(" => 0,
        "+" | "−" => 1,
        "×" | "÷" => 2,
        _ => 3,
    };
    fn apply(op: &str, values: &mut Vec<f64>) {
        let right = values.pop().expect("a value");
        let value = match op {
            "+" => values.pop().expect("left") + right,
            "−" => values.pop().expect("left") - right,
            "×" => values.pop().expect("left") * right,
            "÷" => values.pop().expect("left") / right,
            "negative" => -right,
            "√" => right.sqrt(),
            "sin" => libm::sin(right.to_radians()),
            "cos" => libm::cos(right.to_radians()),
            "tan" => libm::tan(right.to_radians()),
            "asin" => libm::asin(right).to_degrees(),
            "atan" => libm::atan(right).to_degrees(),
            other => panic!("what is `{other}`?"),
        };
        values.push(value);
    }
    let spaced =
        text.replace('(', " ( ").replace(')', " ) ").replace('√', " √ ").replace('²', " ² ").replace('−', " − ");
    let mut value_before = false;
    for word in spaced.split_whitespace() {
        if let Ok(number) = word.trim_end_matches('°').parse::<f64>() {
            values.push(number);
            value_before = true;
        } else if word == "²" {
            let value = values.pop().expect("a value");
            values.push(value * value);
        } else if word == ")" {
            while let Some(op) = waiting.pop().filter(|op| op != "(") {
                apply(&op, &mut values);
            }
            value_before = true;
        } else if word == "(" {
            waiting.push(word.into());
            value_before = false;
        } else {
            let op = if word == "−" && !value_before { "negative" } else { word };
            let prefix = rank(op) == 3;
            while !prefix && waiting.last().is_some_and(|w| rank(w) >= rank(op)) {
                apply(&waiting.pop().expect("an operator"), &mut values);
            }
            waiting.push(op.into());
            value_before = false;
        }
    }
    while let Some(op) = waiting.pop() {
        apply(&op, &mut values);
    }
    assert_eq!(values.len(), 1, "{text}");
    values[0]
}

/// A result as shown: its value, and half of its last decimal.
fn shown(result: &str) -> (f64, f64) {
    let plain = result.replace('−', "-");
    let figure = plain.split(' ').next().expect("a figure").trim_end_matches('°');
    let unit_decimals = if result.ends_with("mm") || result.ends_with("in") {
        2
    } else if result.ends_with("m³") {
        5
    } else if result.contains('°') {
        4
    } else {
        6
    };
    (figure.parse().expect("a number"), 0.5 * libm::pow(10.0, -f64::from(unit_decimals)))
}

#[test]
fn every_sum_comes_to_what_is_written_beside_it() {
    let mut wrong = Vec::new();
    let mut sums = 0;
    for (name, job, solution) in common::examples() {
        for question in common::questions(&solution) {
            for lengths in [Lengths::Millimetres, Lengths::FeetInches] {
                let working = why(&job, &solution, &question, lengths, 360.0).expect("a working");
                for line in working.lines.iter().filter(|l| !l.sum.is_empty()) {
                    sums += 1;
                    let (value, half) = shown(&line.result);
                    let found = worked_out(&line.sum);
                    if (found - value).abs() > half * 1.000_001 {
                        wrong.push(format!("{name} {question}: {} = {} ({found})", line.sum, line.result));
                    }
                }
            }
        }
    }
    assert!(sums > 10_000, "only {sums} sums");
    assert!(wrong.is_empty(), "{} of {sums}\n{}", wrong.len(), wrong[..wrong.len().min(20)].join("\n"));
}
