//! Sentences of a book with the steps by their titles.

use words::{key, say, t};

use crate::procedure::Plan;

/// A sentence in which steps stand by their ids, as books hold them, with their titles instead:
/// "Step b05 done." → "“Drain the oil” done."
pub fn titled(sentence: &str, plan: &Plan) -> String {
    let mut told = String::with_capacity(sentence.len());
    let mut words = sentence.split(' ').peekable();
    while let Some(word) = words.next() {
        if !told.is_empty() {
            told.push(' ');
        }
        let title = |word: &str| {
            let id = word.trim_end_matches([':', '.', ',']);
            let step = plan.step(id)?;
            let title = say!("“{title}”", title = step.title);
            Some(title + word.get(id.len()..).unwrap_or_default())
        };
        let is_step = |word: &str| {
            [key!("step"), t("step")].iter().any(|step| word.eq_ignore_ascii_case(step))
        };
        let next = if is_step(word) { words.peek() } else { None };
        if let Some(title) = next.and_then(|next| title(next)) {
            words.next();
            told.push_str(&title);
        } else {
            told.push_str(&title(word).unwrap_or_else(|| word.to_owned()));
        }
    }
    told
}
