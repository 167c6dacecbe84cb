//! Shims to scale: the stack of a pack, the ring of a tin's row, the comb of what a tin can make.

use words::{say, t};

use super::drawing::{Anchor, Drawing, Mark, circle, line, rect, text};
use super::scale::{Scale, around, held};

/// A shim of a stack.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shim {
    /// Thickness, mm: the strip is drawn to scale.
    pub thickness: f64,
    /// The thickness in words: "0.498".
    pub words: String,
    /// What stands at the end: "1 of 4".
    pub count: String,
}

/// Width of a stack on the screen.
const STACK: f64 = 210.0;
/// The least height of a strip that its words fit in.
const STRIP: f64 = 30.0;
/// Height of a strip for a millimetre.
const HEIGHT: f64 = 84.0;

/// A pack as strips of brass, one above the other, the thicker the taller.
pub fn stack(shims: &[Shim]) -> Drawing {
    let mut marks = Vec::new();
    let mut top = 0.5;
    for shim in shims {
        let height = (shim.thickness * HEIGHT).max(STRIP);
        let base = top + height / 2.0 + 6.0;
        marks.push(rect("k-shim", 0.5, top, STACK - 1.0, height));
        marks.push(text("k-brass", (12.0, base), Anchor::Start, &*shim.words));
        marks.push(text("k-brass k-brass--count", (STACK - 12.0, base), Anchor::End, &*shim.count));
        top += height + 2.0;
    }
    let named: Vec<String> = shims
        .iter()
        .map(|shim| match shim.count.is_empty() {
            true => shim.words.clone(),
            false => format!("{}, {}", shim.words, shim.count),
        })
        .collect();
    let label = match named.is_empty() {
        true => t("No shim in the pack").to_owned(),
        false => say!("Pack of {}", named.join("; ")),
    };
    Drawing { view: [0.0, 0.0, STACK, (top - 1.5).max(1.0)], width: Some(STACK), label, marks }
}

/// A shim from above: the thicker, the broader its ring; an empty ring where none is left. It says
/// nothing, the row beside it does.
pub fn ring(thickness: f64, left: u32) -> Drawing {
    let centre = (21.0, 21.0);
    let marks = match left {
        0 => vec![circle("k-none", centre, 19.5)],
        _ => {
            let width = held(thickness * 22.0 + 2.0, 2.0, 17.0);
            vec![circle("k-shim", centre, 19.5), circle("k-hole", centre, 19.5 - width)]
        }
    };
    Drawing { view: [0.0, 0.0, 42.0, 42.0], width: Some(42.0), label: String::new(), marks }
}

/// What a tin can make at one position.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Comb {
    /// The position: "B2".
    pub name: String,
    /// Every pack total that can be built.
    pub packs: Vec<f64>,
    /// The pack that is wanted.
    pub wanted: Option<f64>,
    /// The least and the most that is shown; all packs where absent.
    pub range: Option<(f64, f64)>,
}

impl Comb {
    /// The drawing; `show` writes a thickness, `unit` stands at the end of the axis.
    pub fn draw(&self, unit: &str, show: impl Fn(f64) -> String) -> Drawing {
        let all = self.packs.iter().chain(&self.wanted).copied();
        let (from, to) = self.range.unwrap_or_else(|| around(all));
        let from = from.max(0.0);
        let scale = Scale { from, to, start: 10.0, end: 320.0 };
        let shown = self.packs.iter().filter(|pack| scale.place(**pack).beyond == 0);
        let mut marks = vec![line("c-ax", &[(8.0, 44.0), (322.0, 44.0)])];
        marks.extend(shown.map(|pack| tooth("c-pack", scale.at(*pack), 20.0, 44.0)));
        if let Some(wanted) = self.wanted {
            let at = scale.place(wanted).at;
            let words = say!("wanted {pack}", pack = show(wanted));
            let (x, anchor) =
                if at > 180.0 { (at - 10.0, Anchor::End) } else { (at + 10.0, Anchor::Start) };
            marks.push(tooth("c-want", at, 2.0, 50.0));
            marks.push(text("k-note", (x, 15.0), anchor, words));
        }
        marks.push(text("c-t", (8.0, 66.0), Anchor::Start, show(from)));
        marks.push(text("c-t", (322.0, 66.0), Anchor::End, format!("{} {unit}", show(to))));
        Drawing {
            view: [0.0, 0.0, 330.0, 74.0],
            width: None,
            label: self.spoken(unit, &show),
            marks,
        }
    }

    fn spoken(&self, unit: &str, show: &impl Fn(f64) -> String) -> String {
        let count = self.packs.len();
        let least = self.packs.iter().copied().reduce(f64::min);
        let most = self.packs.iter().copied().reduce(f64::max);
        let made = match (least, most) {
            (Some(least), Some(most)) => say!(
                "{} can make {count} packs from {} to {} {unit}",
                self.name,
                show(least),
                show(most)
            ),
            _ => say!("{} can make no pack from this tin", self.name),
        };
        let off = |pack: &f64, wanted: f64| (pack - wanted).abs();
        let nearest = |wanted: f64| {
            self.packs
                .iter()
                .copied()
                .min_by(|one, other| off(one, wanted).total_cmp(&off(other, wanted)))
        };
        match self.wanted {
            Some(wanted) => match nearest(wanted) {
                Some(pack) => say!("{made}; wanted {}, nearest {}", show(wanted), show(pack)),
                None => say!("{made}; wanted {}", show(wanted)),
            },
            None => made,
        }
    }
}

fn tooth(ink: &'static str, x: f64, top: f64, bottom: f64) -> Mark {
    line(ink, &[(x, top), (x, bottom)])
}
