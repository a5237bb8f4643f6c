//! Inks, line widths and line types, and how a line is cut into its dashes.

use kurbo::Point;

/// What a line or text is drawn in; [`super::view::Palette`] gives the colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// The ground.
    Paper,
    /// Outlines, dimensions, text.
    Plain,
    /// Grid lines and what stands behind.
    Faint,
    /// Demand while opening.
    Opening,
    /// Demand while closing.
    Closing,
    /// What the operator can give.
    Limit,
    /// The position looked at.
    Cursor,
    /// The leaf.
    Leaf,
    /// A third colour: what is held back, and a hatching of the map.
    Third,
    /// A fourth colour: what holds at a stand, and a hatching of the map.
    Fourth,
    /// The ground with this much of the cursor's colour in it, of 255.
    Tint(u8),
}

/// Line widths, 1:2 (ISO 128-2, 5.1: narrow and wide lines, from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// 1 px: dimensions, centre lines, grid, other positions.
    Thin,
    /// 2 px: outlines and curves.
    Thick,
}

/// Line types after ISO 128-2, table 1 (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dash {
    /// 01, continuous.
    Solid,
    /// 02, dashed.
    Dashed,
    /// 04, long-dash dotted: centre lines, paths of motion.
    Chain,
    /// 05, long-dash double-dotted: other positions of parts that move.
    DoubleChain,
    /// 07, dotted.
    Dotted,
    /// 03, dashed and spaced.
    Spaced,
}

impl Dash {
    /// Lengths drawn and left out in turn, px, for a line `width` px wide; empty for a continuous line.
    ///
    /// ISO 128-2 asks for dashes of 12, gaps of 3, long dashes of 24 and dots of 0.5 line widths. On a screen the dots are as long
    /// as the line is wide, or they would vanish; dashes and long dashes are shortened by a half, as short lines may have them.
    pub fn pattern(self, width: f64) -> Vec<f64> {
        let lengths: &[f64] = match self {
            Dash::Solid => &[],
            Dash::Dashed => &[5.0, 3.0],
            Dash::Chain => &[12.0, 3.0, 1.5, 3.0],
            Dash::DoubleChain => &[12.0, 3.0, 1.5, 3.0, 1.5, 3.0],
            Dash::Dotted => &[1.5, 3.0],
            Dash::Spaced => &[5.0, 9.0],
        };
        lengths.iter().map(|length| length * width).collect()
    }
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Its ink.
    pub ink: Ink,
    /// Its width.
    pub weight: Weight,
    /// Its type.
    pub dash: Dash,
}

impl Pen {
    /// A thin line.
    pub const fn thin(ink: Ink, dash: Dash) -> Pen {
        Pen { ink, weight: Weight::Thin, dash }
    }

    /// A thick line.
    pub const fn thick(ink: Ink, dash: Dash) -> Pen {
        Pen { ink, weight: Weight::Thick, dash }
    }
}

/// Cuts a line through points into its dashes; `pattern` as [`Dash::pattern`] gives it, not empty.
///
/// kurbo cuts paths too, but brings the arc lengths of its cubics along: 4 kB for the page to load.
pub fn dashes(points: &[Point], pattern: &[f64]) -> Vec<Vec<Point>> {
    let mut pieces = Vec::new();
    let (mut part, mut left) = (0, pattern[0]);
    let mut piece: Vec<Point> = points.first().copied().into_iter().collect();
    for ends in points.windows(2) {
        let length = (ends[1] - ends[0]).hypot();
        let mut done = 0.0;
        // As many parts of the pattern as end on this stretch.
        while length - done > left {
            done += left;
            let at = ends[0].lerp(ends[1], done / length);
            part = (part + 1) % pattern.len();
            left = pattern[part];
            if part % 2 == 0 {
                piece = vec![at];
            } else {
                piece.push(at);
                pieces.push(std::mem::take(&mut piece));
            }
        }
        left -= length - done;
        if part % 2 == 0 {
            piece.push(ends[1]);
        }
    }
    if piece.len() > 1 {
        pieces.push(piece);
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(points: &[Point]) -> f64 {
        points.windows(2).map(|ends| (ends[1] - ends[0]).hypot()).sum()
    }

    /// A bent line of 7 + 13 px under dashes of 5 and gaps of 3: drawn 0–5, 8–13, 16–20; the second dash goes round the corner.
    #[test]
    fn dashes_go_round_corners() {
        let bent = [Point::new(0.0, 0.0), Point::new(10.0, 0.0), Point::new(10.0, 10.0)];
        let pieces = dashes(&bent, &[5.0, 3.0]);
        assert_eq!(pieces.len(), 3);
        assert_eq!(pieces[1], [Point::new(8.0, 0.0), Point::new(10.0, 0.0), Point::new(10.0, 3.0)]);
        assert_eq!(pieces.iter().map(|piece| length(piece)).collect::<Vec<_>>(), [5.0, 5.0, 4.0]);
    }

    /// kurbo's own cutter is the other opinion.
    #[test]
    fn dashes_agree_with_kurbo() {
        let points: Vec<_> =
            (0..60).map(|step| Point::new(f64::from(step) * 1.7, (f64::from(step) * 0.3).sin() * 20.0)).collect();
        for dash in [Dash::Dashed, Dash::Chain, Dash::DoubleChain] {
            let pattern = dash.pattern(1.5);
            let path = kurbo::BezPath::from_vec(
                points
                    .iter()
                    .enumerate()
                    .map(|(i, p)| if i == 0 { kurbo::PathEl::MoveTo(*p) } else { kurbo::PathEl::LineTo(*p) })
                    .collect(),
            );
            let kurbos: kurbo::BezPath = kurbo::dash(path.into_iter(), 0.0, &pattern).collect();
            let starts =
                |element: &kurbo::PathEl| if let kurbo::PathEl::MoveTo(at) = element { Some(*at) } else { None };
            let mut kurbos: Vec<_> = kurbos.elements().iter().filter_map(starts).collect();
            // kurbo gives the first dash last, in case a closed path joins it to the end.
            kurbos.sort_by(|a, b| a.x.total_cmp(&b.x));
            let ours = dashes(&points, &pattern);
            assert_eq!(ours.len(), kurbos.len());
            for (our, their) in ours.iter().zip(kurbos) {
                assert!((our[0] - their).hypot() < 1e-6, "{:?} {their:?}", our[0]);
            }
        }
    }

    #[test]
    fn nothing_to_cut() {
        assert!(dashes(&[], &[5.0, 3.0]).is_empty());
        assert!(dashes(&[Point::ZERO], &[5.0, 3.0]).is_empty());
        let still = [Point::ZERO, Point::ZERO];
        assert!(dashes(&still, &[5.0, 3.0]).iter().all(|piece| length(piece) == 0.0));
    }
}
