//! Thread-locker: what it was put on, and how long until it holds.

use measure::{Decimal, Sign, Unit, show};
use words::{key, say, t};
use workshop::locker::{Joint, Metal, State, examine};
use workshop::{Basis, Caution, Explanation};

use super::{Answer, Given, Headline, Instrument, Takes, answered, asked, optional};

const TIME: Takes = Takes::Number(Unit::Hour, Sign::Positive);
const WARMTH: Takes = Takes::Number(Unit::Celsius, Sign::Any);
const STEEL: &str = "steel or brass";

/// A fastener with thread-locker on it.
pub(super) const LOCKER: Instrument = Instrument {
    kind: "locker",
    title: "Thread-locker",
    purpose: "Whether a locked thread has cured, by the time on the label of the compound.",
    cautions: &[Caution::Chemicals],
    fields: &[
        optional("compound", "Compound, as on its label", Takes::Words),
        asked("clean", "Threads degreased and dry", Takes::One(&[key!("yes"), key!("no")])),
        asked(
            "metal",
            "Metal of the threads",
            Takes::One(&[STEEL, "stainless, plated or aluminium"]),
        ),
        asked("primed", "Primer", Takes::One(&[key!("none"), key!("used")])),
        asked("full", "Full cure, from the label", TIME),
        asked("coldest", "Coldest the label gives that time for", WARMTH),
        asked("since", "Time since it was tightened", Takes::Number(Unit::Hour, Sign::NotNegative)),
        asked("joint", "Temperature of the joint", WARMTH),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("full");
    let (clean, metal, primed) = (given.word("clean"), given.word("metal"), given.word("primed"));
    let times = (given.amount("full"), given.amount("since"));
    let warmth = (given.reading("joint"), given.amount("coldest"));
    let joint = Joint {
        clean: clean? == "yes",
        metal: if metal? == STEEL { Metal::Active } else { Metal::Passive },
        primed: primed? == "used",
        full: times.0?,
        since: times.1?,
        joint: warmth.0?,
        coldest: warmth.1?,
    };
    let (state, left, cautions) = given.at("full", examine(&joint))?;
    let hours = show(left / Decimal::from(3600), 1, writing.mark);
    let mut says = vec![match state {
        State::Clean => {
            t("Take it apart, degrease, start over: on oil it does not hold.").to_owned()
        }
        State::TooCold => {
            t("Colder than the label's time is for. Warm the joint, or ask the label how long it takes in the cold.")
                .to_owned()
        }
        State::Curing => say!("Still curing: {hours} h to go by the label. Do not load it."),
        State::Cured => t("The time on the label has passed: cured.").to_owned(),
    }];
    if joint.wants_primer() {
        says.push(
            t("Slow metal and no primer: common practice primes it or waits longer.").to_owned(),
        );
    }
    says.push(t("Common practice, no source: handling after about 10 min, full after about 24 h at room temperature. The strong kind lets go at 230 to 315 °C, above what case and seals stand: heat the fastener with an iron tip.").to_owned());
    let why = Explanation {
        formula: "left = time on the label − time since",
        given: Vec::new(),
        basis: Basis::Derived("the label's own time, for the temperature it is given for"),
    };
    Some(Answer {
        says,
        headline: Some(Headline {
            title: t("To go"),
            number: hours,
            unit: "h".to_owned(),
            note: String::new(),
        }),
        blind: Some(
            t("A clock does not show whether the compound reached every thread.").to_owned(),
        ),
        ..answered(cautions, &why, &writing)
    })
}
