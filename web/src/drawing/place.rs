//! A place for every label: never over another, never outside the frame, off the lines where it can.

use kurbo::{Line, Point, Rect, Size};

use super::pen::Ink;
use super::surface::Surface;

/// Where labels may stand and what is in the way.
pub struct Places {
    frame: Rect,
    labels: Vec<Rect>,
    lines: Vec<(Line, f64)>,
}

/// Room kept between two labels, px.
const GAP: f64 = 3.0;

impl Places {
    /// An empty frame.
    pub fn new(frame: Rect) -> Places {
        Places { frame, labels: Vec::new(), lines: Vec::new() }
    }

    /// Lines that a label had better not cover; `cost` per px covered.
    pub fn avoid(&mut self, points: &[Point], cost: f64) {
        self.lines.extend(points.windows(2).map(|ends| (Line::new(ends[0], ends[1]), cost)));
    }

    /// Room that is taken.
    pub fn take(&mut self, area: Rect) {
        self.labels.push(area);
    }

    /// Whether a box is inside the frame and free of labels.
    pub fn is_free(&self, area: Rect) -> bool {
        let inside = self.frame.union(area) == self.frame;
        inside && !self.labels.iter().any(|label| overlaps(label.inflate(GAP, 0.0), area))
    }

    /// Takes the best free box of `candidates`; earlier ones are preferred. `None` when there is no room for any.
    pub fn best(&mut self, candidates: &[Rect]) -> Option<Rect> {
        let mut best: Option<(f64, Rect)> = None;
        for (rank, &area) in candidates.iter().enumerate() {
            if !self.is_free(area) {
                continue;
            }
            let cost = self.lines_covered(area) + rank as f64 * 1.5;
            if best.is_none_or(|(least, _)| cost < least) {
                best = Some((cost, area));
            }
        }
        let (_, area) = best?;
        self.take(area);
        Some(area)
    }

    fn lines_covered(&self, area: Rect) -> f64 {
        self.lines.iter().map(|(line, cost)| cost * length_inside(*line, area)).sum()
    }
}

fn overlaps(a: Rect, b: Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

/// Length of the part of a line inside a box (Liang and Barsky's clipping).
fn length_inside(line: Line, area: Rect) -> f64 {
    // Most lines are far from the box: seen before anything is divided.
    let apart = |p: f64, q: f64, least: f64, most: f64| p.max(q) < least || p.min(q) > most;
    if apart(line.p0.x, line.p1.x, area.x0, area.x1) || apart(line.p0.y, line.p1.y, area.y0, area.y1) {
        return 0.0;
    }
    let along = line.p1 - line.p0;
    let mut span = (0.0_f64, 1.0_f64);
    for (start, step, least, most) in [(line.p0.x, along.x, area.x0, area.x1), (line.p0.y, along.y, area.y0, area.y1)] {
        if step == 0.0 {
            if start < least || start > most {
                return 0.0;
            }
            continue;
        }
        let (a, b) = ((least - start) / step, (most - start) / step);
        span = (span.0.max(a.min(b)), span.1.min(a.max(b)));
    }
    let part = span.1 - span.0;
    if part > 0.0 { part * along.hypot() } else { 0.0 }
}

/// A box of `size` centred on a point.
pub fn centred(at: Point, size: Size) -> Rect {
    Rect::from_center_size(at, size)
}

/// Boxes around a point, nearest first: to the right and left, above and below, then the corners, then the same further out.
pub fn around(at: Point, size: Size, distance: f64) -> Vec<Rect> {
    let mut boxes = Vec::new();
    for ring in [1.0, 2.2, 3.6, 5.2] {
        let x = size.width / 2.0 + distance * ring;
        let y = size.height / 2.0 + distance * ring;
        for (dx, dy) in [(x, 0.0), (-x, 0.0), (0.0, -y), (0.0, y), (x, -y), (-x, -y), (x, y), (-x, y)] {
            boxes.push(centred(at + kurbo::Vec2::new(dx, dy), size));
        }
    }
    boxes
}

/// A name beside a line; whether there was room.
pub fn beside(surface: &mut Surface<'_>, places: &mut Places, points: &[Point], text: &str, ink: Ink) -> bool {
    let size = surface.text_box(text);
    let mut boxes = Vec::new();
    for part in [0.72, 0.28, 0.5, 0.88, 0.12, 0.62, 0.38] {
        let at = points[(part * (points.len() - 1) as f64) as usize];
        boxes.extend_from_slice(&around(at, size, 8.0)[..16]);
    }
    let area = places.best(&boxes);
    if let Some(area) = area {
        surface.text(text, area, ink);
    }
    area.is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_keep_apart_and_inside() {
        let mut places = Places::new(Rect::new(0.0, 0.0, 100.0, 60.0));
        let size = Size::new(30.0, 12.0);
        let mut taken = Vec::new();
        while let Some(area) = places.best(&around(Point::new(50.0, 30.0), size, 6.0)) {
            assert!(area.x0 >= 0.0 && area.x1 <= 100.0 && area.y0 >= 0.0 && area.y1 <= 60.0);
            assert!(!taken.iter().any(|other| overlaps(*other, area)));
            taken.push(area);
        }
        assert!(taken.len() >= 4);
    }

    #[test]
    fn a_line_is_left_free_when_there_is_room() {
        let mut places = Places::new(Rect::new(0.0, 0.0, 200.0, 200.0));
        places.avoid(&[Point::new(0.0, 100.0), Point::new(200.0, 100.0)], 1.0);
        let area = places.best(&around(Point::new(100.0, 100.0), Size::new(40.0, 14.0), 6.0)).unwrap();
        assert!(area.y1 <= 100.0 || area.y0 >= 100.0);
    }

    #[test]
    fn clipping_measures_what_is_inside() {
        let area = Rect::new(0.0, 0.0, 10.0, 10.0);
        assert_eq!(length_inside(Line::new((-5.0, 5.0), (20.0, 5.0)), area), 10.0);
        assert_eq!(length_inside(Line::new((-5.0, 15.0), (20.0, 15.0)), area), 0.0);
        assert_eq!(length_inside(Line::new((2.0, 2.0), (2.0, 4.0)), area), 2.0);
    }
}
