//! Works out a sum as it is written in a working, so that what is shown and
//! what is found cannot differ.

use geometry::Angle;

/// What a written sum comes to: `2600 ÷ cos 40°`. Angles are degrees, going in
/// and coming out. `None` for what is no sum.
pub(crate) fn value(text: &str) -> Option<f64> {
    let mut reader = Reader { rest: text };
    let value = reader.terms()?;
    reader.skip();
    (reader.rest.is_empty() && value.is_finite()).then_some(value)
}

/// A function of one figure.
type Function = fn(f64) -> f64;

/// Functions that a sum may use, longest name first where one begins another.
const FUNCTIONS: &[(&str, Function)] = &[
    ("asin", |v| Angle::from_sin(v).to_deg()),
    ("acos", |v| Angle::from_cos(v).to_deg()),
    ("atan", |v| Angle::from_tan(v).to_deg()),
    ("sin", |v| Angle::deg(v).sin()),
    ("cos", |v| Angle::deg(v).cos()),
    ("tan", |v| Angle::deg(v).tan()),
    ("√", f64::sqrt),
    ("−", |v| -v),
];

struct Reader<'a> {
    rest: &'a str,
}

impl Reader<'_> {
    fn skip(&mut self) {
        self.rest = self.rest.trim_start();
    }

    fn take(&mut self, word: &str) -> bool {
        self.skip();
        self.rest.strip_prefix(word).map(|rest| self.rest = rest).is_some()
    }

    fn terms(&mut self) -> Option<f64> {
        let mut sum = self.factors()?;
        loop {
            if self.take("+") {
                sum += self.factors()?;
            } else if self.take("−") {
                sum -= self.factors()?;
            } else {
                return Some(sum);
            }
        }
    }

    fn factors(&mut self) -> Option<f64> {
        let mut product = self.one()?;
        loop {
            if self.take("×") {
                product *= self.one()?;
            } else if self.take("÷") {
                product /= self.one()?;
            } else {
                return Some(product);
            }
        }
    }

    fn one(&mut self) -> Option<f64> {
        for (name, function) in FUNCTIONS {
            if self.take(name) {
                return Some(function(self.one()?));
            }
        }
        let value = if self.take("(") {
            let inner = self.terms()?;
            if !self.take(")") {
                return None;
            }
            inner
        } else {
            self.number()?
        };
        Some(if self.take("²") { value * value } else { value })
    }

    fn number(&mut self) -> Option<f64> {
        self.skip();
        let end = self.rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(self.rest.len());
        let (digits, rest) = self.rest.split_at(end);
        let value = digits.parse().ok()?;
        self.rest = rest.strip_prefix('°').unwrap_or(rest);
        Some(value)
    }
}

#[cfg(test)]
mod tests {
    use super::value;

    #[test]
    fn sums_come_to_what_they_say() {
        // First principles: a 3-4-5 triangle, sin 30° = ½, tan 45° = 1.
        for (text, expected) in [
            ("√(3² + 4²)", 5.0),
            ("2600 × sin 30°", 1300.0),
            ("10 − 2 × 3 + 1", 5.0),
            ("atan(1)", 45.0),
            ("atan(tan 20° ÷ cos 0°)", 20.0),
            ("100 ÷ (2 × tan 45°)", 50.0),
            ("(−12.5) + 2", -10.5),
            ("180° − 2 × 45°", 90.0),
        ] {
            assert!(value(text).is_some_and(|v| (v - expected).abs() < 1e-9), "{text}: {:?}", value(text));
        }
    }

    #[test]
    fn what_is_no_sum_is_none() {
        for text in ["", "2 +", "(2", "2 ÷ 0", "two", "√(2 − 3)"] {
            assert_eq!(value(text), None, "{text}");
        }
    }
}
