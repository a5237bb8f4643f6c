//! Widths of text where no font can be asked: SVG is laid out before anyone knows which font will show it.

/// Advance widths of the characters from space to `~`, in hundredths of the font size, rounded up: those of DejaVu Sans, among the
/// widest of the common system fonts, so that a label keeps its box in narrower ones too.
#[rustfmt::skip]
const ASCII: [u8; 95] = [
    32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 54,
    100, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79, 61, 79, 70, 64, 62, 74, 69, 99, 69, 62, 69, 40, 34, 40, 84, 50,
    50, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98, 64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84,
];

/// Width of a text in parts of the font size.
pub fn width_em(text: &str) -> f64 {
    text.chars().map(|character| f64::from(hundredths(character)) / 100.0).sum()
}

fn hundredths(character: char) -> u8 {
    match character {
        ' '..='~' => ASCII[character as usize - ' ' as usize],
        '\u{a0}' | '·' => 32,
        '°' | '–' => 50,
        '²' | '³' => 41,
        '\u{2212}' => 84,
        'à'..='ÿ' => 64,
        'À'..='ß' => 79,
        // Anything else may be a full-width sign.
        _ => 100,
    }
}
