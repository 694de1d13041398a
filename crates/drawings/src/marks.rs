//! Lists of marks, runs of them drawn together: `A1–A4, B2`.

/// The marks in their order, runs of three and more numbers as first–last.
pub fn ranges(marks: &[String]) -> String {
    let mut out: Vec<String> = Vec::new();
    let mut run: Vec<&String> = Vec::new();
    for mark in marks {
        let follows = match (run.last().map(|m| split(m)), split(mark)) {
            (Some((Some(last), head)), (Some(number), this)) => head == this && last.checked_add(1) == Some(number),
            _ => false,
        };
        if !follows {
            write_run(&mut out, &run);
            run.clear();
        }
        run.push(mark);
    }
    write_run(&mut out, &run);
    out.join(", ")
}

fn write_run(out: &mut Vec<String>, run: &[&String]) {
    match run {
        [first, _, .., last] => out.push(format!("{first}–{last}")),
        _ => out.extend(run.iter().map(ToString::to_string)),
    }
}

/// The number a mark ends with, and what comes before it.
fn split(mark: &str) -> (Option<u64>, &str) {
    let head = mark.trim_end_matches(|c: char| c.is_ascii_digit());
    let digits = &mark[head.len()..];
    // A leading nought makes another mark: A01 does not follow A0.
    let plain = !digits.starts_with('0') || digits.len() == 1;
    (digits.parse().ok().filter(|_| plain), head)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(marks: &[&str]) -> String {
        ranges(&marks.iter().map(ToString::to_string).collect::<Vec<_>>())
    }

    #[test]
    fn runs_of_three_and_more_are_drawn_together() {
        assert_eq!(of(&["A1", "A2", "A3", "A4", "B2"]), "A1–A4, B2");
        assert_eq!(of(&["A1", "A2", "B3"]), "A1, A2, B3");
        assert_eq!(of(&["A9", "A10", "A11"]), "A9–A11");
        assert_eq!(of(&["ridge", "A01", "A2", ""]), "ridge, A01, A2, ");
        assert_eq!(of(&[]), "");
    }
}
