//! The names of the instruments, apart from what they reckon: the history of a job is written
//! without their code, which comes to the device in a piece of its own.

/// Kind and title of each.
const TITLES: &[(&str, &str)] = &[
    ("leak", "Leak test"),
    ("runout", "Runout"),
    ("play", "End play"),
    ("drag", "Rolling torque"),
    ("torque", "Torque"),
    ("fit", "Heat or cold"),
    ("press", "Press fit"),
    ("lube", "Lube"),
    ("oring", words::key!("O-ring")),
    ("seal", "Lip seal"),
    ("pattern", "Tooth print"),
    ("locker", "Thread-locker"),
    ("land", "Seal land"),
    ("anode", "Anodes and corrosion"),
];

/// The title of a kind; an unknown kind stands for itself.
pub(crate) fn titled(kind: &str) -> String {
    let known = TITLES.iter().find(|title| title.0 == kind);
    known.map_or_else(|| crate::guided::capitalised(kind), |title| words::t(title.1).to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::instrument::ALL;

    #[test]
    fn every_instrument_has_its_title_here() {
        let titles: Vec<_> = ALL.iter().map(|it| (it.kind, it.title)).collect();
        assert_eq!(titles, TITLES);
        assert_eq!(titled("endoscope"), "Endoscope");
    }
}
