//! Who agreed or said no, judged a gate, or signed as the second person.

use pictures::drawing::Drawing;
use words::say;

use super::Look;
use crate::guide::{Consent, Mark, Refused};
use crate::guided::{Capture, all_agreed};

/// Something a person stands for.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RecordSigned {
    /// Who: a name, initials, "JO set, SA saw".
    pub who: String,
    /// To what.
    pub what: String,
    /// When.
    pub when: String,
    /// What else was agreed: label and words.
    pub terms: Vec<(&'static str, String)>,
    /// The signature, where one was drawn.
    pub drawn: Option<Drawing>,
}

/// In the order they did.
pub(super) fn of(look: &Look) -> Vec<RecordSigned> {
    let log = look.log;
    let mut signed: Vec<(Mark, RecordSigned)> = Vec::new();
    signed.extend(log.consents.iter().map(|consent| (consent.mark, agreed(consent))));
    signed.extend(log.refused.iter().map(|no| (no.mark, refused(no))));
    for (step, own) in &log.steps {
        let passed = own.passed.iter();
        signed.extend(passed.map(|(mark, by)| {
            let what = say!("Said yes to the gate of “{step}”", step = look.title(step));
            (*mark, RecordSigned { who: by.clone(), what, ..RecordSigned::default() })
        }));
    }
    for ((step, label), kept) in &log.captures {
        if let Capture::Text(_) = &kept.value
            && label.starts_with("second initials")
        {
            let what = say!("Initials: “{step}”", step = look.title(step));
            let own = RecordSigned { who: kept.value.words(), what, ..RecordSigned::default() };
            signed.push((kept.mark, own));
        }
    }
    signed.sort_by_key(|(mark, ..)| *mark);
    let dated =
        |(mark, own): (Mark, RecordSigned)| RecordSigned { when: look.when(mark.at), ..own };
    signed.into_iter().map(dated).collect()
}

fn agreed(consent: &Consent) -> RecordSigned {
    RecordSigned {
        who: consent.who(),
        what: say!("Agreed: {work}", work = all_agreed(consent.work(), ", ")),
        terms: consent.terms().into_iter().chain(consent.initials()).collect(),
        drawn: consent.signature(),
        ..RecordSigned::default()
    }
}

fn refused(no: &Refused) -> RecordSigned {
    RecordSigned {
        who: no.who(),
        what: say!("Said no to: {work}", work = all_agreed(&no.work, ", ")),
        terms: no.terms(),
        ..RecordSigned::default()
    }
}
