use super::super::fixtures::close;
use super::{golden_section, vertex};

#[test]
fn a_parabola_s_vertex_is_found() {
    // 5 − 2(x − ¼)² at −1, 0, 1.
    let at = |x: f64| 5.0 - 2.0 * (x - 0.25) * (x - 0.25);
    let (shift, value) = vertex(at(-1.0), at(0.0), at(1.0)).expect("a crest");
    close(shift, 0.25, 1e-12);
    close(value, 5.0, 1e-12);
    assert_eq!(vertex(1.0, 0.5, 0.2), None);
    assert_eq!(vertex(0.2, 0.5, 1.0), None);
    assert_eq!(vertex(1.0, 0.5, 1.0), None);
    assert_eq!(vertex(2.0, 2.0, 2.0), Some((0.0, 2.0)));
    // Level to one side the crest is half-way there.
    assert_eq!(vertex(2.0, 2.0, 1.0).map(|(shift, _)| shift), Some(-0.5));
    assert_eq!(vertex(1.0, 2.0, 2.0).map(|(shift, _)| shift), Some(0.5));
}

#[test]
fn golden_sections_close_in() {
    for at in [0.3, 0.41, 0.7, 0.89] {
        let (place, value) = golden_section(0.2, 0.9, 40, |x| 2.0 + (x - at) * (x - at) * (1.0 + x));
        close(place, at, 1e-6);
        close(value, 2.0, 1e-12);
        // Each round leaves 0.618 of the bracket: ten leave 0.7·0.618¹⁰, and the better point is at most that far off.
        let (rough, told) = golden_section(0.2, 0.9, 10, |x| (x - at).abs());
        assert!((rough - at).abs() < 0.7 * 0.618_f64.powi(10));
        assert_eq!(told, (rough - at).abs());
    }
}
