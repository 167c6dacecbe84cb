//! Every bench instrument with anything typed into any of its fields: an answer, or a sentence.

use job::Shown;
use job::instrument::{ALL, Instrument, Takes, Values};

const HOSTILE: [&str; 16] = [
    "",
    " ",
    "0",
    "-1",
    "0.000001",
    "1e9",
    "999999999999999",
    "99999999999999999999999999",
    "1.2.3",
    "1,5",
    "abc",
    "°",
    "5 kPa",
    "5 mm",
    "-273.16",
    "1\u{2212}2",
];

/// Every field with something a person could mean.
fn plain(instrument: &Instrument) -> Values {
    let text = |takes: Takes| match takes {
        Takes::Number(..) | Takes::Usual(..) => vec!["2".to_owned()],
        Takes::Numbers(.., places) | Takes::Times(places) | Takes::Acts(places) => {
            (0..places.len()).map(|at| format!("{at}.5")).collect()
        }
        Takes::One(words) | Takes::Cards(words) => vec![words[0].to_owned()],
        Takes::Unit(units) => vec![units[0].symbol().to_owned()],
        Takes::Words => vec!["214".to_owned()],
        Takes::Ticks => vec!["1.5 N·m".to_owned()],
        Takes::Fold => Vec::new(),
    };
    instrument.fields.iter().map(|asked| (asked.id.to_owned(), text(asked.takes))).collect()
}

fn look(instrument: &Instrument, values: &Values) {
    let kind = instrument.kind;
    match instrument.answer(values, Shown::default()) {
        Ok(answer) => {
            let lines = answer.says.iter().chain(&answer.cautions).chain(&answer.explained);
            assert!(lines.clone().all(|line| !line.trim().is_empty()), "{kind}: {answer:?}");
            for drawing in answer.picture.iter().chain(&answer.below).chain(&answer.band) {
                assert!(!drawing.label.is_empty(), "{kind}: a picture that nobody speaks");
                assert!(drawing.view.iter().all(|side| side.is_finite()), "{kind} {values:?}");
                let drawn = drawing.marks.iter().map(|mark| mark.path());
                assert!(drawn.into_iter().all(|path| !path.contains("NaN")), "{kind}");
            }
            assert!(!answer.short().is_empty(), "{kind}: nothing in short");
        }
        Err(why) => {
            let said = why.refused.iter().map(|refused| refused.says.as_str());
            for line in said.chain(why.wanted.iter().copied()) {
                let low = line.to_lowercase();
                assert!(!line.trim().is_empty(), "{kind} {values:?}");
                for word in ["invalid", "error", "sorry"] {
                    assert!(!low.contains(word), "{kind}: {line}");
                }
            }
            assert!(!why.refused.is_empty() || !why.wanted.is_empty(), "{kind} {values:?}: mute");
        }
    }
}

#[test]
fn anything_typed_gets_an_answer_or_a_sentence() {
    for instrument in ALL {
        let plain = plain(instrument);
        look(instrument, &plain);
        look(instrument, &Values::new());
        for asked in instrument.fields {
            for hostile in HOSTILE {
                for count in [1, plain[asked.id].len()] {
                    let mut values = plain.clone();
                    values.insert(asked.id.to_owned(), vec![hostile.to_owned(); count]);
                    look(instrument, &values);
                    // The same alone: what else is wanted is said.
                    let texts = vec![hostile.to_owned(); count];
                    look(instrument, &[(asked.id.to_owned(), texts)].into());
                }
            }
        }
    }
}

#[test]
fn what_is_kept_is_answered_alike() {
    for instrument in ALL {
        let plain = plain(instrument);
        let Ok(kept) = instrument.kept(&plain, Shown::default()) else { continue };
        let say = |values: &Values| instrument.answer(values, Shown::default());
        assert_eq!(say(&kept), say(&plain), "{}", instrument.kind);
    }
}
