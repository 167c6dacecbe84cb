//! Who agreed, judged a gate, or signed as the second person.

use super::Look;
use crate::guide::Mark;
use crate::guided::Capture;

/// Something a person stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordSigned {
    /// Who: a name, initials, "JO set, SA saw".
    pub who: String,
    /// To what.
    pub what: String,
    /// When.
    pub when: String,
}

/// In the order they did.
pub(super) fn of(look: &Look) -> Vec<RecordSigned> {
    let mut signed: Vec<(Mark, String, String)> = Vec::new();
    for consent in &look.log.consents {
        let what = match consent.limit.trim() {
            "" => format!("Agreed: {}", consent.what),
            limit => format!("Agreed: {}, up to {limit}", consent.what),
        };
        signed.push((consent.mark, consent.by.clone(), what));
    }
    for (step, own) in &look.log.steps {
        let passed = own.passed.iter();
        signed.extend(passed.map(|(mark, by)| {
            (*mark, by.clone(), format!("Said yes to the gate of “{}”", look.title(step)))
        }));
    }
    for ((step, label), kept) in &look.log.captures {
        if let Capture::Text(words) = &kept.value
            && label.starts_with("second initials")
        {
            signed.push((kept.mark, words.clone(), format!("Initials: “{}”", look.title(step))));
        }
    }
    signed.sort_by_key(|(mark, ..)| *mark);
    let one = |(mark, who, what): (Mark, String, String)| RecordSigned {
        who,
        what,
        when: look.when(mark.at),
    };
    signed.into_iter().map(one).collect()
}
