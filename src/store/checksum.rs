//! CRC-32, as zip files and PNG have it.

/// The checksum of some bytes. Bit by bit: a record has a few hundred of them, and the tables that
/// make it faster would be a twentieth of the whole page.
pub fn crc32(bytes: impl Iterator<Item = u8>) -> u32 {
    !bytes.fold(!0, |sum, byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| {
            (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg())
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_published_check_value_and_with_another_maker() {
        assert_eq!(crc32("123456789".bytes()), 0xCBF4_3926);
        for text in ["", "a", "fermentside 1 12", "\u{1F37A} 1,050"] {
            assert_eq!(crc32(text.bytes()), crc32fast::hash(text.as_bytes()), "{text}");
        }
    }
}
