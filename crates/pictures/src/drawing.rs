//! A picture as plain data: marks in the inks of the style sheet, and the sentence that says the same.

/// A point of a picture, x to the right and y down.
pub type Point = (f64, f64);

/// A picture: what is seen, and what is spoken.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// Left, top, width and height of what is shown.
    pub view: [f64; 4],
    /// Width on the screen in px where the picture must not grow with its column.
    pub width: Option<f64>,
    /// The spoken sentence; empty where the words beside the picture already say it.
    pub label: String,
    /// From the back to the front.
    pub marks: Vec<Mark>,
}

/// One mark of a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Class of the style sheet that inks it.
    pub ink: &'static str,
    /// What it is.
    pub shape: Shape,
}

/// The shape of a mark.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A closed outline.
    Outline(Vec<Point>),
    /// Open lines, each its own stroke.
    Lines(Vec<Vec<Point>>),
    /// A circle: centre and radius.
    Circle(Point, f64),
    /// An outline with curves, in SVG path data.
    Curve(&'static str),
    /// Words.
    Text(Point, Anchor, String),
}

/// Where a text hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It starts there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

impl Anchor {
    /// As SVG names it.
    pub fn name(self) -> &'static str {
        match self {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        }
    }
}

/// A closed outline.
pub fn outline(ink: &'static str, points: &[Point]) -> Mark {
    Mark { ink, shape: Shape::Outline(points.to_vec()) }
}

/// A rectangle from its left top corner.
pub fn rect(ink: &'static str, x: f64, y: f64, width: f64, height: f64) -> Mark {
    outline(ink, &[(x, y), (x + width, y), (x + width, y + height), (x, y + height)])
}

/// One open line.
pub fn line(ink: &'static str, points: &[Point]) -> Mark {
    lines(ink, &[points])
}

/// Several open lines in one ink.
pub fn lines(ink: &'static str, strokes: &[&[Point]]) -> Mark {
    Mark { ink, shape: Shape::Lines(strokes.iter().map(|stroke| stroke.to_vec()).collect()) }
}

/// A circle.
pub fn circle(ink: &'static str, centre: Point, radius: f64) -> Mark {
    Mark { ink, shape: Shape::Circle(centre, radius) }
}

/// A diamond that stands on its point.
pub fn diamond(ink: &'static str, (x, y): Point, size: f64) -> Mark {
    outline(ink, &[(x, y - size), (x + size, y), (x, y + size), (x - size, y)])
}

/// An outline with curves.
pub fn curve(ink: &'static str, data: &'static str) -> Mark {
    Mark { ink, shape: Shape::Curve(data) }
}

/// Words.
pub fn text(ink: &'static str, at: Point, anchor: Anchor, words: impl Into<String>) -> Mark {
    Mark { ink, shape: Shape::Text(at, anchor, words.into()) }
}

impl Mark {
    /// The same mark with each of its points put elsewhere; curves stay.
    pub fn placed(mut self, to: impl Fn(Point) -> Point) -> Mark {
        match &mut self.shape {
            Shape::Outline(points) => points.iter_mut().for_each(|point| *point = to(*point)),
            Shape::Lines(strokes) => {
                strokes.iter_mut().flatten().for_each(|point| *point = to(*point));
            }
            Shape::Circle(point, _) | Shape::Text(point, ..) => *point = to(*point),
            Shape::Curve(_) => {}
        }
        self
    }

    /// SVG path data; empty for words.
    pub fn path(&self) -> String {
        match &self.shape {
            Shape::Outline(points) => stroke(points) + "Z",
            Shape::Lines(strokes) => strokes.iter().map(|points| stroke(points)).collect(),
            Shape::Circle((x, y), radius) => {
                let (left, radius, over) =
                    (number(x - radius), number(*radius), number(2.0 * radius));
                format!(
                    "M{left} {}a{radius} {radius} 0 1 0 {over} 0a{radius} {radius} 0 1 0 -{over} 0Z",
                    number(*y)
                )
            }
            Shape::Curve(data) => (*data).to_owned(),
            Shape::Text(..) => String::new(),
        }
    }
}

/// Every mark put elsewhere.
pub fn placed(marks: Vec<Mark>, to: impl Fn(Point) -> Point) -> Vec<Mark> {
    marks.into_iter().map(|mark| mark.placed(&to)).collect()
}

/// Every mark moved by `dx` to the right and `dy` down.
pub fn moved(marks: Vec<Mark>, dx: f64, dy: f64) -> Vec<Mark> {
    placed(marks, |(x, y)| (x + dx, y + dy))
}

/// Every mark turned so that what pointed right points up.
pub fn upright(marks: Vec<Mark>) -> Vec<Mark> {
    placed(marks, |(x, y)| (y, -x))
}

/// Every mark seen in a mirror: left becomes right.
pub fn flipped(marks: Vec<Mark>) -> Vec<Mark> {
    placed(marks, |(x, y)| (-x, y))
}

/// A number of hundredths, written without the machinery for floating point.
pub fn number(value: f64) -> String {
    let hundredths = (value * 100.0).round() as i64;
    let sign = if hundredths < 0 { "-" } else { "" };
    let (whole, rest) = (hundredths.abs() / 100, hundredths.abs() % 100);
    match rest {
        0 => format!("{sign}{whole}"),
        _ => format!("{sign}{whole}.{rest:02}"),
    }
}

/// The four numbers of a view box.
pub fn view_box(view: [f64; 4]) -> String {
    view.map(number).join(" ")
}

fn stroke(points: &[Point]) -> String {
    points
        .iter()
        .enumerate()
        .map(|(index, (x, y))| {
            let pen = if index == 0 { "M" } else { "L" };
            format!("{pen}{} {}", number(*x), number(*y))
        })
        .collect()
}

#[cfg(test)]
mod tests {

    use super::*;

    #[test]
    fn numbers_are_written_in_hundredths() {
        let written = [0.0, 1.0, -1.5, 0.05, -0.05, 12.346, -0.001].map(number);
        assert_eq!(written, ["0", "1", "-1.50", "0.05", "-0.05", "12.35", "0"]);
    }

    #[test]
    fn a_lying_shaft_stands_up_with_its_right_end_on_top() {
        let mark = upright(vec![line("k-axis", &[(58.0, 0.0), (160.0, 2.0)])]).remove(0);
        assert_eq!(mark.path(), "M0 -58L2 -160");
    }

    #[test]
    fn an_outline_is_closed_and_strokes_are_not() {
        assert_eq!(rect("k-steel", 1.0, 2.0, 3.0, 4.0).path(), "M1 2L4 2L4 6L1 6Z");
        assert_eq!(
            lines("c-ax", &[&[(0.0, 0.0), (1.0, 0.0)], &[(0.0, 1.0)]]).path(),
            "M0 0L1 0M0 1"
        );
    }
}
