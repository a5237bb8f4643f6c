//! The check at the end of a packed document.

/// CRC-16 with polynomial 0x1021, start 0xFFFF, not reflected, not inverted. The catalogue of parametrised CRC algorithms lists
/// it as CRC-16/IBM-3740, with the check value 0x29B1 for the text `123456789`.
pub fn crc16(bytes: &[u8]) -> u16 {
    bytes.iter().fold(0xFFFF, |sum, &byte| {
        (0..8).fold(sum ^ (u16::from(byte) << 8), |sum, _| (sum << 1) ^ if sum & 0x8000 != 0 { 0x1021 } else { 0 })
    })
}

#[cfg(test)]
mod tests {
    #[test]
    fn crc16_has_the_check_value_of_the_catalogue() {
        assert_eq!(super::crc16(b"123456789"), 0x29B1);
    }
}
