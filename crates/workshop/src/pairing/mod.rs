//! Pairing a device by a code that the workshop's machine shows.
//!
//! A code has eight digits, works once and for ten minutes. Five wrong tries
//! end it, and the next one waits: whoever guesses gets some ten tries a minute
//! at a hundred million codes, however many devices they try from.

mod tokens;

use crate::random;
use std::time::{Duration, Instant};
use subtle::ConstantTimeEq;
pub(crate) use tokens::{COOKIE, Tokens, hash, token_of};

/// Digits of a code.
const DIGITS: usize = 8;
/// How long a code holds.
pub(crate) const HOLDS: Duration = Duration::from_secs(600);
/// Wrong tries that end a code.
const TRIES: u32 = 5;
/// Least time between two tries, from whichever device.
const BETWEEN: Duration = Duration::from_millis(500);
/// How long nothing is tried after a code was ended by wrong tries.
const REST: Duration = Duration::from_secs(30);

/// What a try came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Tried {
    /// The code is right, and used up.
    Right,
    /// The code is wrong.
    Wrong,
    /// That was one wrong try too many: there is a new code.
    Ended,
    /// The code was too old: there is a new one.
    Expired,
    /// Too soon after the last try. How long to wait.
    TooSoon(Duration),
    /// The system gives no random bits for a code.
    NoCode,
}

/// The code that holds.
#[derive(Debug)]
struct Code {
    digits: String,
    made: Instant,
    wrong: u32,
}

/// The one code of a workshop at a time.
#[derive(Debug, Default)]
pub(crate) struct Pairing {
    code: Option<Code>,
    next_try: Option<Instant>,
}

impl Pairing {
    /// The code and how long it holds, a new one if the last is too old.
    pub(crate) fn code(&mut self, now: Instant) -> Option<(String, Duration)> {
        let fresh = self.code.as_ref().is_some_and(|code| now.duration_since(code.made) < HOLDS);
        if !fresh {
            self.code = random::digits(DIGITS).map(|digits| Code { digits, made: now, wrong: 0 });
        }
        let code = self.code.as_ref()?;
        Some((code.digits.clone(), HOLDS.saturating_sub(now.duration_since(code.made))))
    }

    /// Tries a code. Blanks and dashes do not matter.
    pub(crate) fn try_code(&mut self, given: &str, now: Instant) -> Tried {
        if let Some(next) = self.next_try
            && now < next
        {
            return Tried::TooSoon(next - now);
        }
        self.next_try = Some(now + BETWEEN);
        let Some(code) = &mut self.code else {
            return if self.code(now).is_some() { Tried::Expired } else { Tried::NoCode };
        };
        if now.duration_since(code.made) >= HOLDS {
            self.code = None;
            return if self.code(now).is_some() { Tried::Expired } else { Tried::NoCode };
        }
        let given: String = given.chars().filter(|c| !c.is_whitespace() && *c != '-').take(DIGITS + 1).collect();
        if bool::from(given.as_bytes().ct_eq(code.digits.as_bytes())) {
            self.code = None;
            return Tried::Right;
        }
        code.wrong += 1;
        if code.wrong < TRIES {
            return Tried::Wrong;
        }
        self.code = None;
        self.next_try = Some(now + REST);
        Tried::Ended
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wrong(code: &str) -> String {
        code.chars().map(|digit| if digit == '9' { '0' } else { '9' }).collect()
    }

    #[test]
    fn a_code_works_once() {
        let (mut pairing, start) = (Pairing::default(), Instant::now());
        let (code, holds) = pairing.code(start).unwrap();
        assert_eq!((code.len(), holds), (DIGITS, HOLDS));
        let spaced = format!(" {}-{} ", &code[..4], &code[4..]);
        assert_eq!(pairing.try_code(&spaced, start), Tried::Right);
        assert_eq!(pairing.try_code(&code, start + BETWEEN), Tried::Expired);
        assert_ne!(pairing.code(start + BETWEEN).unwrap().0, code);
    }

    #[test]
    fn a_code_expires() {
        let (mut pairing, start) = (Pairing::default(), Instant::now());
        let (code, _) = pairing.code(start).unwrap();
        let late = start + HOLDS;
        assert_eq!(pairing.try_code(&code, late), Tried::Expired);
        let (new, holds) = pairing.code(late).unwrap();
        assert_eq!(holds, HOLDS);
        assert_eq!(pairing.try_code(&new, late + BETWEEN), Tried::Right);
    }

    #[test]
    fn guessing_is_slow_and_ends_the_code() {
        let (mut pairing, mut now) = (Pairing::default(), Instant::now());
        let (code, _) = pairing.code(now).unwrap();
        let wrong = wrong(&code);
        for n in 1..TRIES {
            assert_eq!(pairing.try_code(&wrong, now), Tried::Wrong, "try {n}");
            assert_eq!(pairing.try_code(&code, now), Tried::TooSoon(BETWEEN));
            now += BETWEEN;
        }
        assert_eq!(pairing.try_code(&wrong, now), Tried::Ended);
        assert_eq!(pairing.try_code(&code, now + BETWEEN), Tried::TooSoon(REST - BETWEEN));
        // The old code is gone for good.
        now += REST;
        assert_ne!(pairing.code(now).unwrap().0, code);
        assert_eq!(pairing.try_code(&code, now), Tried::Wrong);
        // Codes that are too long or empty are just wrong.
        assert_eq!(pairing.try_code("", now + BETWEEN), Tried::Wrong);
        assert_eq!(pairing.try_code(&"1".repeat(9), now + BETWEEN * 2), Tried::Wrong);
    }
}
