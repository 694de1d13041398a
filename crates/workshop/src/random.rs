//! Random bits from the system.

use std::fmt::Write as _;

/// 128 random bits as 32 hexadecimal digits. None when the system has none to give.
pub(crate) fn hex_128() -> Option<String> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes).ok()?;
    Some(hex(&bytes))
}

/// A code of as many digits, every one as likely.
pub(crate) fn digits(count: usize) -> Option<String> {
    /// The largest multiple of ten in a byte: bytes from here on would favour some digits.
    const FAIR: u8 = 250;
    let mut code = String::with_capacity(count);
    while code.len() < count {
        let mut byte = [0];
        getrandom::fill(&mut byte).ok()?;
        let [byte] = byte;
        if byte < FAIR {
            code.push(char::from(b'0' + byte % 10));
        }
    }
    Some(code)
}

/// Bytes as hexadecimal digits.
pub(crate) fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        // Writing to a text cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_digits_and_tokens_are_hexadecimal() {
        let code = digits(8).unwrap();
        assert!(code.len() == 8 && code.bytes().all(|byte| byte.is_ascii_digit()));
        let (one, other) = (hex_128().unwrap(), hex_128().unwrap());
        assert!(one.len() == 32 && one.bytes().all(|byte| byte.is_ascii_hexdigit()) && one != other);
        assert_eq!(hex(&[0, 171, 255]), "00abff");
    }
}
