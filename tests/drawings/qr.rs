//! The QR code, read back from its drawing by somebody else's reader.

use pintle_web::drawing::{QrPath, qr};

/// Pixels a module is painted with.
const SCALE: usize = 3;

/// The dark modules of the path: every piece is `Mx yhNv1h-Nz`.
fn modules(code: &QrPath) -> Vec<Vec<bool>> {
    let side = code.side as usize;
    let mut rows = vec![vec![false; side]; side];
    for piece in code.path.split('M').skip(1) {
        let (corner, rest) = piece.split_once('h').expect("a run");
        let (x, y) = corner.split_once(' ').expect("a corner");
        let (run, back) = rest.split_once("v1h-").expect("one module high");
        assert_eq!(format!("{run}z"), back, "the run is closed");
        let [x, y, run] = [x, y, run].map(|number| number.parse::<usize>().expect("a whole number"));
        rows[y][x..x + run].fill(true);
    }
    rows
}

fn read(code: &QrPath) -> String {
    let rows = modules(code);
    let side = code.side as usize * SCALE;
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(
            side,
            side,
            |x, y| {
                if rows[y / SCALE][x / SCALE] { 0 } else { 255 }
            },
        );
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1, "one code is seen");
    grids[0].decode().expect("it can be read").1
}

#[test]
fn a_reader_finds_the_text() {
    let link = include_str!("../fixtures/links/us-units.link").trim();
    for text in
        ["https://pintle.example/", "Portón Ñ ½", link, include_str!("../fixtures/links/every-block.link").trim()]
    {
        let code = qr(text).expect("it fits");
        assert_eq!(read(&code), text);
    }
}

/// ISO/IEC 18004: 21 modules and 4 more for each version, and a quiet zone of 4 modules all around.
#[test]
fn has_the_standards_size_and_quiet_zone() {
    let code = qr("https://pintle.example/").expect("it fits");
    assert_eq!((code.side - 8 - 21) % 4, 0);
    let rows = modules(&code);
    let last = rows.len() - 4;
    let quiet = |place: usize| !(4..last).contains(&place);
    for (y, row) in rows.iter().enumerate() {
        for (x, dark) in row.iter().enumerate() {
            assert!(!dark || !(quiet(x) || quiet(y)), "{x} {y}");
        }
    }
    assert!(rows[4][4..11].iter().all(|dark| *dark) && !rows[5][5], "a finder in the corner");
}

/// The greatest code holds 2,331 bytes at this level (ISO/IEC 18004, table 7).
#[test]
fn a_text_too_long_for_any_code_has_none() {
    assert!(qr(&"é".repeat(1165)).is_some());
    assert!(qr(&"é".repeat(1166)).is_none());
}
