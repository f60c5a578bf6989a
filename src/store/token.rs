//! The identity of one revision: 64 random bits, drawn by whoever asks for the save.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// 64 bits that no other revision has; written as 16 lower-case hexadecimal digits.
///
/// Drawn at the edge, so that everything below is the same for the same inputs. A token must never
/// be used twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Token(u64);

/// A text that is no token.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoToken;

impl fmt::Display for NoToken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a token is written with 16 digits of 0-9 and a-f")
    }
}

impl std::error::Error for NoToken {}

impl Token {
    /// From eight random bytes.
    #[must_use]
    pub fn from_random(random: [u8; 8]) -> Self {
        Self(u64::from_be_bytes(random))
    }
}

impl fmt::Display for Token {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl FromStr for Token {
    type Err = NoToken;
    /// One spelling only: a key is found again by its text.
    fn from_str(text: &str) -> Result<Self, NoToken> {
        let plain =
            text.len() == 16 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        if !plain {
            return Err(NoToken);
        }
        u64::from_str_radix(text, 16).map(Self).map_err(|_| NoToken)
    }
}

impl TryFrom<String> for Token {
    type Error = NoToken;
    fn try_from(text: String) -> Result<Self, NoToken> {
        text.parse()
    }
}

impl From<Token> for String {
    fn from(token: Token) -> String {
        token.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_back_what_it_writes() {
        let token = Token::from_random([0, 1, 2, 3, 4, 5, 0xfe, 0xff]);
        assert_eq!(token.to_string(), "000102030405feff");
        assert_eq!("000102030405feff".parse(), Ok(token));
    }

    #[test]
    fn takes_one_spelling_only() {
        for text in
            ["", "000102030405FEFF", "+00102030405feff", "102030405feff", "000102030405feff0"]
        {
            assert_eq!(text.parse::<Token>(), Err(NoToken), "{text}");
        }
    }
}
