//! CRC-32, as zip files and PNG have it.

/// What four bits come to.
const OF_FOUR_BITS: [u32; 16] = {
    let mut table = [0; 16];
    let mut bits = 0;
    while bits < 16 {
        let mut sum = bits as u32;
        let mut bit = 0;
        while bit < 4 {
            sum = (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg());
            bit += 1;
        }
        table[bits] = sum;
        bits += 1;
    }
    table
};

/// The checksum of some bytes. Four bits at a time: a full cellar has millions of bytes to be checked at
/// the start, and the tables that make it faster still would be a twentieth of the whole page.
pub fn crc32(bytes: impl Iterator<Item = u8>) -> u32 {
    let four = |sum: u32| (sum >> 4) ^ OF_FOUR_BITS[(sum & 15) as usize];
    !bytes.fold(!0, |sum, byte| four(four(sum ^ u32::from(byte))))
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
