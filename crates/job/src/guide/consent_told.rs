//! What was agreed or refused, as it is told again: on the screen and on the record.

use pictures::drawing::Drawing;
use pictures::signature::signature;
use words::{say, t};

use super::consent::{Consent, Refused};
use crate::apart;
use crate::guided::{Agreement, Answered, Signature, all_agreed, without_stop};

/// A label and what stands beside it.
type Term = (&'static str, String);

impl Consent {
    /// Who agreed, and how where that was not here: "M. Lind, owner, by phone".
    pub fn who(&self) -> String {
        who(&self.by, self.signed.as_ref().map(|signed| signed.how).unwrap_or_default())
    }

    /// Who agreed how and when: "M. Lind, owner, by phone, 12 May 11:04". `now` and `utc_offset` as
    /// for [`apart`].
    pub fn heading(&self, now: i64, utc_offset: i32) -> String {
        format!("{}, {}", self.who(), apart(self.mark.at, now, utc_offset))
    }

    /// The work agreed, one line each.
    pub fn work(&self) -> &[String] {
        self.signed.as_ref().map_or(std::slice::from_ref(&self.what), |signed| &signed.work)
    }

    /// What was agreed beside the work: price, limit, stop rules, what is not covered, what was not
    /// wanted.
    pub fn terms(&self) -> Vec<Term> {
        let or_none = |text: &str| match text.trim() {
            "" => t("not said").to_owned(),
            text => text.to_owned(),
        };
        let limit = (t("Limit"), or_none(&self.limit));
        let Some(signed) = &self.signed else { return vec![limit] };
        let Agreement { price, stops, excluded, declined, .. } = signed.as_ref();
        let mut terms = vec![
            (t("Price"), or_none(price)),
            limit,
            (t("Stop and call"), or_none(&all_agreed(stops, "; "))),
            (t("Not covered"), or_none(t(excluded))),
        ];
        if !declined.is_empty() {
            terms.push((t("Not wanted"), all_agreed(declined, "; ")));
        }
        terms
    }

    /// Whose initials stand for it; `None` where none do.
    pub fn initials(&self) -> Option<Term> {
        let signed = self.signed.as_ref()?;
        initials(signed.how, &signed.initials)
    }

    /// The signature as it was drawn, with its spoken sentence; `None` where nothing was.
    pub fn signature(&self) -> Option<Drawing> {
        let drawn = &self.signed.as_ref()?.drawn;
        let pad = (Signature::WIDTH, Signature::HEIGHT);
        let picture =
            || signature(drawn.strokes(), pad, say!("Signature of {name}.", name = self.by));
        (!drawn.is_empty()).then(picture)
    }
}

impl Refused {
    /// Who said no, and how where that was not here.
    pub fn who(&self) -> String {
        who(&self.by, self.how)
    }

    /// Who said no to what, how, when and why, in a sentence or two. `now` and `utc_offset` as for
    /// [`apart`].
    pub fn says(&self, now: i64, utc_offset: i32) -> String {
        let (by, how, work) = (&self.by, self.how.words(), all_agreed(&self.work, ", "));
        let time = apart(self.mark.at, now, utc_offset);
        match without_stop(&self.reason) {
            "" => say!("{by} said no {how}, {time}: {work}."),
            reason => say!("{by} said no {how}, {time}: {work}. Why: {reason}."),
        }
    }

    /// Why, where a reason was given, and whose initials stand for it, where any do.
    pub fn terms(&self) -> Vec<Term> {
        let why = (!self.reason.is_empty()).then(|| (t("Why"), self.reason.clone()));
        why.into_iter().chain(initials(self.how, &self.initials)).collect()
    }
}

fn who(by: &str, how: Answered) -> String {
    match how {
        Answered::Here => by.to_owned(),
        how => format!("{by}, {}", how.words()),
    }
}

fn initials(how: Answered, initials: &str) -> Option<Term> {
    let label = if how == Answered::Here { t("Initials") } else { t("Answer taken by") };
    (!initials.is_empty()).then(|| (label, initials.to_owned()))
}
