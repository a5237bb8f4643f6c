//! Reads the drawings back: what is written where, and every point of every line.

/// A drawing, in px.
pub struct Drawing {
    pub width: f64,
    pub height: f64,
    pub texts: Vec<Text>,
    pub points: Vec<(f64, f64)>,
    lines: Vec<(String, Vec<(f64, f64)>)>,
}

/// A text and the box it takes.
#[derive(Debug)]
pub struct Text {
    pub text: String,
    left: f64,
    right: f64,
    baseline: f64,
    size: f64,
}

/// Least width of a character, in font sizes: narrower than any digit of a common font, so that a text that overlaps here overlaps in
/// any font. (Digits of Arial and Helvetica are 0.556, of Segoe UI 0.539; thin letters are less.)
const NARROW: f64 = 0.42;

impl Drawing {
    /// From an SVG document.
    pub fn read(svg: &str) -> Drawing {
        let head = svg.split_once('>').expect("a tag").0;
        let (width, height) = (number(head, "width"), number(head, "height"));
        let view_box: Vec<f64> = attribute(head, "viewBox").expect("a view box").split(' ').map(parse).collect();
        let fine = view_box[2] / width;
        assert!((view_box[3] / height - fine).abs() < 1e-9, "one scale for both axes");
        let mut drawing = Drawing { width, height, texts: Vec::new(), points: Vec::new(), lines: Vec::new() };
        for tag in svg.split('<').skip(2) {
            let (inside, after) = tag.split_once('>').unwrap_or((tag, ""));
            if let Some(points) = attribute(inside, "points") {
                let points: Vec<_> = points.split_whitespace().map(|pair| point(pair, fine)).collect();
                let ink = attribute(inside, "stroke").or(attribute(inside, "fill")).unwrap_or_default();
                drawing.points.extend(&points);
                drawing.lines.push((ink.to_lowercase(), points));
            } else if inside.starts_with("text") {
                let size = number(inside, "font-size") / fine;
                // What stands for a mark of a foot or an inch is one character to the reader.
                let text = after.trim_matches('\n').replace("&quot;", "\"").replace("&apos;", "'");
                let left = number(inside, "x") / fine;
                assert_eq!(attribute(inside, "text-anchor").as_deref(), Some("start"));
                assert_eq!(attribute(inside, "dy").as_deref(), Some("0.5ex"));
                assert!(!inside.contains("transform"), "text is never turned or mirrored: {text}");
                let right = left + NARROW * size * text.chars().count() as f64;
                // Half an x-height is about a quarter of the size.
                drawing.texts.push(Text {
                    text,
                    left,
                    right,
                    baseline: number(inside, "y") / fine + 0.26 * size,
                    size,
                });
            }
        }
        drawing
    }

    /// Whether a text lies inside the sheet.
    pub fn holds(&self, text: &Text) -> bool {
        text.left >= 0.0 && text.right <= self.width && text.top() >= 0.0 && text.baseline <= self.height
    }

    /// Points of the lines in an ink, in the order drawn.
    pub fn points_in(&self, ink: &str) -> Vec<(f64, f64)> {
        self.lines_in(ink).flatten().copied().collect()
    }

    /// All lines.
    pub fn lines(&self) -> impl Iterator<Item = &Vec<(f64, f64)>> {
        self.lines.iter().map(|(_, points)| points)
    }

    /// The lines in an ink.
    pub fn lines_in<'a>(&'a self, ink: &'a str) -> impl Iterator<Item = &'a Vec<(f64, f64)>> {
        self.lines.iter().filter(move |(found, _)| found == ink).map(|(_, points)| points)
    }
}

impl Text {
    fn top(&self) -> f64 {
        self.baseline - 0.72 * self.size
    }

    /// Middle of its width, as narrow as it may be.
    pub fn middle_x(&self) -> f64 {
        (self.left + self.right) / 2.0
    }

    /// Middle of its digits.
    pub fn middle_y(&self) -> f64 {
        (self.top() + self.baseline) / 2.0
    }

    pub fn overlaps(&self, other: &Text) -> bool {
        self.left < other.right && other.left < self.right && self.top() < other.baseline && other.top() < self.baseline
    }
}

/// Writes a drawing to the folder of `PINTLE_DRAWINGS`, if there is one.
pub fn keep(label: &str, svg: &str) {
    if let Some(folder) = std::env::var_os("PINTLE_DRAWINGS") {
        let path = std::path::Path::new(&folder).join(format!("{label}.svg"));
        std::fs::write(path, svg).expect("the folder can be written");
    }
}

fn attribute(tag: &str, name: &str) -> Option<String> {
    let rest = tag.split_once(&format!(" {name}=\""))?.1;
    Some(rest.split_once('"')?.0.to_string())
}

fn number(tag: &str, name: &str) -> f64 {
    parse(&attribute(tag, name).unwrap_or_else(|| panic!("{name} in {tag}")))
}

fn parse(text: &str) -> f64 {
    let value: f64 = text.parse().unwrap_or_else(|_| panic!("a number: {text}"));
    assert!(value.is_finite());
    value
}

fn point(pair: &str, fine: f64) -> (f64, f64) {
    let (x, y) = pair.split_once(',').expect("a pair");
    (parse(x) / fine, parse(y) / fine)
}
