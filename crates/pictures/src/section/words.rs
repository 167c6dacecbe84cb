//! What a section says: the sentence that is spoken, and the words at the arrow.

use gearing::layout::{LAYOUTS, Position};
use words::{say, t};

use super::Section;

/// From one line of words to the next.
pub const LEADING: f64 = 20.0;

/// The most letters that stand on a line under the picture.
const LINE: usize = 26;

/// Words broken into lines.
pub fn lines(words: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        match lines.last_mut().filter(|line| letters(line) + letters(word) < LINE) {
            Some(line) => {
                line.push(' ');
                line.push_str(word);
            }
            None => lines.push(word.to_owned()),
        }
    }
    lines
}

fn letters(text: &str) -> usize {
    text.chars().count()
}

impl Section {
    /// What the sketch says.
    pub(super) fn spoken(&self) -> String {
        if let Some(label) = &self.label {
            return label.clone();
        }
        let start = t(self.plan.start);
        let chosen = self.chosen.and_then(|at| self.plan.places.get(at));
        let Some(position) = chosen.and_then(|place| position(place.id)) else {
            let ids: Vec<_> = self.places().map(|place| place.id).collect();
            return say!("{start} The packs {} where they lie.", ids.join(", "));
        };
        let sentence = sentence(position, self.turned);
        if self.note.is_empty() {
            return format!("{start} {sentence}");
        }
        let drawn = match self.change {
            change if change > 0.0 => t("Drawn with a thicker pack"),
            change if change < 0.0 => t("Drawn with a thinner pack"),
            _ => t("The arrow shows"),
        };
        format!("{start} {sentence} {drawn}: {}.", self.note)
    }
}

fn position(id: &str) -> Option<&'static Position> {
    LAYOUTS.into_iter().find_map(|layout| layout.position(id))
}

/// Where a pack lies and what a thicker one does.
fn sentence(position: &Position, turned: bool) -> String {
    let (id, [still, shoved]) = (position.id, position.between.map(t));
    let (thicker, sign) = match turned {
        false => (position.thicker, position.mesh_sign),
        true => (position.thinner, -position.mesh_sign),
    };
    let thicker = t(thicker);
    match sign {
        1 => say!("{id} lies between {still} and {shoved}. Thicker: {thicker}, into the mesh."),
        -1 => say!("{id} lies between {still} and {shoved}. Thicker: {thicker}, out of the mesh."),
        _ => say!("{id} lies between {still} and {shoved}. Thicker: {thicker}."),
    }
}
