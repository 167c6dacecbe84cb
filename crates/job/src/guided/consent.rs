//! What was agreed before work goes on, and the signature under it.

use words::{key, t};

use crate::json::{Json, Keys};

/// How an answer was given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Answered {
    /// In person, on this device.
    #[default]
    Here,
    /// In a call.
    Phone,
    /// In writing.
    Message,
}

const WAYS: [(Answered, &str, &str); 3] = [
    (Answered::Here, "here", key!("here")),
    (Answered::Phone, "phone", "by phone"),
    (Answered::Message, "message", "by message"),
];

impl Answered {
    /// Every way, in the order they are offered.
    pub const ALL: [Answered; 3] = [Answered::Here, Answered::Phone, Answered::Message];

    pub(super) fn word(self) -> &'static str {
        WAYS.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    /// As it stands in a sentence: "by phone".
    pub fn words(self) -> &'static str {
        WAYS.iter().find(|row| row.0 == self).map_or("", |row| t(row.2))
    }

    pub(super) fn named(word: &str) -> Option<Answered> {
        WAYS.iter().find(|row| row.1 == word).map(|row| row.0)
    }
}

/// What somebody agreed to, in words; prices and sums as they were typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Agreement {
    /// The step that asked; may be empty.
    pub step: String,
    /// Who may decide.
    pub by: String,
    /// How the answer came.
    pub how: Answered,
    /// The work agreed, one line each.
    pub work: Vec<String>,
    /// The work offered and not wanted.
    pub declined: Vec<String>,
    /// The price quoted; may be empty.
    pub price: String,
    /// The sum at which work stops until somebody was asked.
    pub limit: String,
    /// What else stops it.
    pub stops: Vec<String>,
    /// What is not covered; may be empty.
    pub excluded: String,
    /// Initials of who signed, or of who took the answer; may be empty.
    pub initials: String,
    /// What was drawn on the screen; may be empty.
    pub drawn: Signature,
}

impl Agreement {
    pub(super) fn written(&self) -> Vec<(&'static str, Json)> {
        vec![
            ("step", Json::text(&self.step)),
            ("by", Json::text(&self.by)),
            ("how", Json::text(self.how.word())),
            ("work", Json::texts(&self.work)),
            ("declined", Json::texts(&self.declined)),
            ("price", Json::text(&self.price)),
            ("limit", Json::text(&self.limit)),
            ("stops", Json::texts(&self.stops)),
            ("excluded", Json::text(&self.excluded)),
            ("initials", Json::text(&self.initials)),
            ("drawn", self.drawn.to_json()),
        ]
    }

    pub(super) fn read(keys: &mut Keys) -> Option<Agreement> {
        Some(Agreement {
            step: keys.text("step")?,
            by: keys.text("by")?,
            how: Answered::named(&keys.text("how")?)?,
            work: keys.texts("work")?,
            declined: keys.texts("declined")?,
            price: keys.text("price")?,
            limit: keys.text("limit")?,
            stops: keys.texts("stops")?,
            excluded: keys.text("excluded")?,
            initials: keys.text("initials")?,
            drawn: Signature::from_json(keys.take("drawn")?)?,
        })
    }
}

/// A signature: strokes of points, x to the right and y down, in thousandths of the pad's width.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Signature {
    strokes: Vec<Vec<(u16, u16)>>,
}

impl Signature {
    /// The width of the pad.
    pub const WIDTH: u16 = 1000;
    /// Its height.
    pub const HEIGHT: u16 = 300;
    /// The most points that are kept: some 12 kB of an entry.
    pub const MOST: usize = 1500;
    /// A point nearer to the one before it than this is left out.
    const STEP: u16 = 6;
    /// Fewer points than this are a dot or a slip of the hand.
    const LEAST: usize = 8;

    /// The strokes.
    pub fn strokes(&self) -> &[Vec<(u16, u16)>] {
        &self.strokes
    }

    /// Whether nothing is drawn.
    pub fn is_empty(&self) -> bool {
        self.strokes.is_empty()
    }

    /// Whether it is more than a dot.
    pub fn is_drawn(&self) -> bool {
        self.points() >= Self::LEAST
    }

    /// Whether it takes no more points.
    pub fn is_full(&self) -> bool {
        self.points() >= Self::MOST
    }

    fn points(&self) -> usize {
        self.strokes.iter().map(Vec::len).sum()
    }

    /// The pen is put down, `x` and `y` from the pad's left top corner, on a pad of that `width`,
    /// all in one unit.
    pub fn down(&mut self, x: i32, y: i32, width: i32) {
        if !self.is_full() {
            self.strokes.push(vec![on_pad(x, y, width)]);
        }
    }

    /// The pen moves on.
    pub fn to(&mut self, x: i32, y: i32, width: i32) {
        let (full, point) = (self.is_full(), on_pad(x, y, width));
        let Some(stroke) = self.strokes.last_mut().filter(|_| !full) else { return };
        let near = |last: &(u16, u16)| {
            last.0.abs_diff(point.0) < Self::STEP && last.1.abs_diff(point.1) < Self::STEP
        };
        if !stroke.last().is_some_and(near) {
            stroke.push(point);
        }
    }

    /// As a text: "12,30 14,32;50,60".
    pub fn text(&self) -> String {
        let stroke = |points: &Vec<(u16, u16)>| {
            let points: Vec<String> = points.iter().map(|(x, y)| format!("{x},{y}")).collect();
            points.join(" ")
        };
        self.strokes.iter().map(stroke).collect::<Vec<_>>().join(";")
    }

    /// Reads [`Signature::text`]; what cannot be read is nothing drawn.
    pub fn of(text: &str) -> Signature {
        let point = |text: &str| {
            let (x, y) = text.split_once(',')?;
            Some((x.parse().ok()?, y.parse().ok()?))
        };
        let stroke = |text: &str| text.split(' ').map(point).collect::<Option<Vec<_>>>();
        let strokes: Option<Vec<_>> = text.split(';').map(stroke).collect();
        Signature { strokes: strokes.unwrap_or_default() }
    }

    /// Whether it lies on the pad and is no larger than one is kept.
    pub(super) fn fits(&self) -> bool {
        let lies = |(x, y): &(u16, u16)| *x <= Self::WIDTH && *y <= Self::HEIGHT;
        self.points() <= Self::MOST
            && self.strokes.iter().all(|stroke| !stroke.is_empty() && stroke.iter().all(lies))
    }

    fn to_json(&self) -> Json {
        let stroke = |points: &Vec<(u16, u16)>| {
            let numbers = points.iter().flat_map(|(x, y)| [*x, *y]);
            Json::List(numbers.map(|number| Json::number(u32::from(number))).collect())
        };
        Json::List(self.strokes.iter().map(stroke).collect())
    }

    fn from_json(json: Json) -> Option<Signature> {
        let small = |number: Json| u16::try_from(number.into_count()?).ok();
        let stroke = |list: Json| {
            let numbers = list.into_list(small)?;
            let pair = |pair: &[u16]| Some((*pair.first()?, *pair.get(1)?));
            numbers.chunks(2).map(pair).collect::<Option<Vec<_>>>()
        };
        Some(Signature { strokes: json.into_list(stroke)? })
    }
}

fn on_pad(x: i32, y: i32, width: i32) -> (u16, u16) {
    let place = |at: i32, most: u16| {
        let place = i64::from(at) * i64::from(Signature::WIDTH) / i64::from(width.max(1));
        u16::try_from(place.clamp(0, i64::from(most))).unwrap_or_default()
    };
    (place(x, Signature::WIDTH), place(y, Signature::HEIGHT))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pen_draws_in_thousandths_of_the_pad_and_leaves_near_points_out() {
        let mut drawn = Signature::default();
        drawn.down(0, 10, 250);
        for (x, y) in [(1, 10), (25, 20), (400, -5)] {
            drawn.to(x, y, 250);
        }
        // A tap is a stroke of one point; the pen beside the pad draws along its edge.
        drawn.down(125, 75, 250);
        assert_eq!(drawn.text(), "0,40 100,80 1000,0;500,300");
        assert_eq!(Signature::of(&drawn.text()), drawn);
        assert!(drawn.fits() && !drawn.is_drawn() && !drawn.is_full());
        for text in ["", "1,2 3", "x,y", "1,2;;3,4", "-1,2"] {
            assert!(Signature::of(text).is_empty(), "{text}");
        }
    }

    #[test]
    fn a_signature_ends_where_it_is_full() {
        let mut drawn = Signature::default();
        drawn.down(0, 0, 1000);
        for at in 0..4000 {
            drawn.to(at * 10 % 1000, at / 100 * 10, 1000);
        }
        drawn.down(0, 0, 1000);
        assert_eq!((drawn.strokes().len(), drawn.points()), (1, Signature::MOST));
        assert!(drawn.is_drawn() && drawn.is_full() && drawn.fits());
        let beside = Signature { strokes: vec![vec![(10, 301)]] };
        assert!(!beside.fits());
    }
}
