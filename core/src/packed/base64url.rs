//! Bytes as text of a link: RFC 4648, section 5, without padding.

use alloc::{string::String, vec::Vec};

const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

pub fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 4 / 3 + 2);
    for three in bytes.chunks(3) {
        let bits = three.iter().fold(0u32, |bits, &byte| (bits << 8) | u32::from(byte)) << (8 * (3 - three.len()));
        for place in 0..=three.len() {
            text.push(char::from(ALPHABET[(bits >> (18 - 6 * place)) as usize & 63]));
        }
    }
    text
}

/// `None` where the text is not what [`encode`] writes: another character, an impossible length, bits left over.
pub fn decode(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    let (mut bits, mut count) = (0u32, 0);
    for character in text.bytes() {
        let six = match character {
            b'A'..=b'Z' => character - b'A',
            b'a'..=b'z' => character - b'a' + 26,
            b'0'..=b'9' => character - b'0' + 52,
            b'-' => 62,
            b'_' => 63,
            _ => return None,
        };
        bits = (bits << 6) | u32::from(six);
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push((bits >> count) as u8);
            bits &= (1 << count) - 1;
        }
    }
    (bits == 0 && count < 6).then_some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4648, section 10, with the padding taken away; and the two characters of the alphabet for addresses.
    #[test]
    fn base64url_gives_the_vectors_of_the_rfc() {
        let vectors = [("", ""), ("f", "Zg"), ("fo", "Zm8"), ("foo", "Zm9v"), ("foob", "Zm9vYg"), ("fooba", "Zm9vYmE")];
        for (plain, text) in vectors {
            assert_eq!(encode(plain.as_bytes()), text);
            assert_eq!(decode(text).as_deref(), Some(plain.as_bytes()));
        }
        assert_eq!(encode(&[0xFB, 0xFF]), "-_8");
        for wrong in ["Z", "Zh", "Zg==", "Z+", "Zm9 v", "Zm9ä"] {
            assert_eq!(decode(wrong), None, "{wrong}");
        }
    }
}
