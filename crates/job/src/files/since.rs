//! How long ago the last backup was, and what has been written since.

use words::{say, t};

use crate::clock;

/// What is said of the last backup.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SinceBackup {
    /// "Last backup 3 days ago."
    pub when: String,
    /// "61 entries since."
    pub since: String,
    /// There is something that no backup holds.
    pub due: bool,
}

/// What is said of the last backup: when it was made and how many entries it held, of `entries`.
pub fn since_backup(last: Option<(i64, usize)>, entries: usize, now: i64) -> SinceBackup {
    let (when, held) = match last {
        Some((at, held)) => (say!("Last backup {}.", clock::ago(at, now)), held),
        None => (t("No backup known.").to_owned(), 0),
    };
    let since = match entries.saturating_sub(held) {
        0 => t("Nothing written since.").to_owned(),
        1 => t("1 entry since.").to_owned(),
        count => say!("{count} entries since."),
    };
    SinceBackup { when, since, due: entries > held }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_tells_what_no_backup_holds() {
        let day = 86_400_000;
        let told = since_backup(Some((0, 100)), 161, 3 * day);
        assert_eq!(
            (told.when.as_str(), told.since.as_str(), told.due),
            ("Last backup 3 days ago.", "61 entries since.", true)
        );
        assert!(!since_backup(Some((0, 100)), 100, day).due);
        assert_eq!(since_backup(None, 1, day).since, "1 entry since.");
        assert!(!since_backup(None, 0, day).due);
    }
}
