//! Lines of equal reserve, by marching squares: through each square of four places with an arm, straight between its sides.

use kurbo::{Point, Rect};

use super::field::Field;

/// Pieces of the line of a reserve, in the area's own units.
pub(super) fn pieces(field: &Field, area: Rect, level: f64) -> Vec<[Point; 2]> {
    let mut pieces = Vec::new();
    for row in 0..field.rows.saturating_sub(1) {
        for column in 0..field.columns.saturating_sub(1) {
            let ring = [(column, row), (column + 1, row), (column + 1, row + 1), (column, row + 1)];
            let [Some(a), Some(b), Some(c), Some(d)] = ring.map(|(column, row)| field.reserve(column, row)) else {
                continue;
            };
            let values = [a, b, c, d];
            let mut crossings = Vec::with_capacity(4);
            for side in 0..4 {
                let (next, (from, to)) = ((side + 1) % 4, (values[side], values[(side + 1) % 4]));
                if (from < level) != (to < level) {
                    let [here, there] = [side, next].map(|end| field.place(area, ring[end].0, ring[end].1));
                    crossings.push(here.lerp(there, (level - from) / (to - from)));
                }
            }
            // Four crossings are a saddle: either pairing is right to first order.
            pieces.extend(crossings.chunks_exact(2).map(|pair| [pair[0], pair[1]]));
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    /// On a reserve that grows with the distance from a corner, every piece of a line lies on a circle about it.
    #[test]
    fn a_cone_has_circles() {
        let (columns, rows) = (41, 31);
        let mut field = Field::new(columns, rows);
        let at = |index: usize| ((index % columns) as f64 / 40.0, (index / columns) as f64 / 30.0);
        let reserves: Vec<f64> = (0..columns * rows).map(|index| f64::hypot(at(index).0, at(index).1)).collect();
        field.set(&reserves, &vec![0; columns * rows]);
        let pieces = pieces(&field, Rect::new(0.0, 0.0, 1.0, 1.0), 0.7);
        let length: f64 = pieces.iter().map(|[from, to]| (*to - *from).hypot()).sum();
        // A quarter of a circle of 0.7: 1.0996 long; chords over squares of a thirtieth are a little shorter.
        assert!((length / (0.7 * std::f64::consts::FRAC_PI_2) - 1.0).abs() < 1e-3, "{length}");
        for point in pieces.iter().flatten() {
            assert!((point.to_vec2().hypot() - 0.7).abs() < 1e-3, "{point:?}");
        }
    }
}
