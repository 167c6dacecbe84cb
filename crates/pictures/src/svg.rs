//! A drawing as SVG text, for what is read without the app.

use crate::drawing::{Drawing, Mark, Shape, number, view_box};

/// The hatches the pictures are filled with; stands once on a page.
pub const HATCHES: &str = include_str!("hatches.svg");

/// Rules for the inks of the marks. The page names the colours.
pub const INKS: &str = include_str!("inks.css");

/// Text as it may stand in HTML or XML, between tags or in quotes. Letters that no such text can
/// hold become the replacement character.
pub fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            '\n' | '\t' => safe.push(letter),
            _ if letter.is_control() => safe.push('\u{fffd}'),
            _ => safe.push(letter),
        }
    }
    safe
}

/// The drawing, with its spoken sentence; `class` of its frame may be empty.
pub fn svg(drawing: &Drawing, class: &str) -> String {
    let mut text = String::from("<svg");
    if !class.is_empty() {
        text.push_str(&format!(" class=\"{}\"", escaped(class)));
    }
    text.push_str(&format!(" viewBox=\"{}\"", view_box(drawing.view)));
    if let Some(width) = drawing.width {
        text.push_str(&format!(" width=\"{}\"", number(width)));
    }
    text.push_str(&match drawing.label.is_empty() {
        true => " aria-hidden=\"true\">".to_owned(),
        false => format!(" role=\"img\" aria-label=\"{}\">", escaped(&drawing.label)),
    });
    text + &marks(drawing) + "</svg>"
}

/// What stands inside the frame of a drawing.
pub fn marks(drawing: &Drawing) -> String {
    drawing.marks.iter().map(mark).collect()
}

fn mark(mark: &Mark) -> String {
    match &mark.shape {
        Shape::Text((x, y), anchor, words) => format!(
            "<text class=\"{}\" x=\"{}\" y=\"{}\" text-anchor=\"{}\">{}</text>",
            mark.ink,
            number(*x),
            number(*y),
            anchor.name(),
            escaped(words)
        ),
        _ => format!("<path class=\"{}\" d=\"{}\"/>", mark.ink, mark.path()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Anchor, line, text};

    #[test]
    fn a_drawing_is_written_with_its_sentence() {
        let drawing = Drawing {
            view: [0.0, 0.0, 10.0, 5.5],
            width: None,
            label: "Lash <0.3> & \"more\"".to_owned(),
            marks: vec![
                line("c-ax", &[(0.0, 0.0), (1.0, 0.0)]),
                text("c-t", (1.0, 2.0), Anchor::Middle, "</text><script>"),
            ],
        };
        assert_eq!(
            svg(&drawing, "sk"),
            "<svg class=\"sk\" viewBox=\"0 0 10 5.50\" role=\"img\" \
             aria-label=\"Lash &lt;0.3&gt; &amp; &quot;more&quot;\">\
             <path class=\"c-ax\" d=\"M0 0L1 0\"/>\
             <text class=\"c-t\" x=\"1\" y=\"2\" text-anchor=\"middle\">\
             &lt;/text&gt;&lt;script&gt;</text></svg>"
        );
        let silent = svg(&Drawing::default(), "");
        assert_eq!(silent, "<svg viewBox=\"0 0 0 0\" aria-hidden=\"true\"></svg>");
    }

    #[test]
    fn letters_that_end_a_text_early_are_replaced() {
        assert_eq!(escaped("a\u{0}b\u{1b}c\n"), "a\u{fffd}b\u{fffd}c\n");
    }
}
