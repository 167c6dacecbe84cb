//! Every screen, and the address that names it.

/// A screen and what it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Screen {
    /// The bench, or the first opening where nothing was written down yet.
    Bench,
    /// The first opening.
    First,
    /// A new job.
    NewJob,
    /// A guided job: its steps, clocks and counts.
    Job {
        /// The job.
        job: String,
    },
    /// A step of a guided job.
    Step {
        /// The job.
        job: String,
        /// The step; none for the one where work stopped.
        step: Option<String>,
    },
    /// The steps of a job's unit as the shop has them.
    OwnSteps {
        /// The job.
        job: String,
    },
    /// What is open, locked and stale in a guided job.
    OpenMap {
        /// The job.
        job: String,
    },
    /// Bags and ladder of a guided job.
    Ladder {
        /// The job.
        job: String,
    },
    /// Inspection of a guided job.
    Inspect {
        /// The job.
        job: String,
    },
    /// What was agreed with who may decide.
    Consent {
        /// The job.
        job: String,
    },
    /// The pack list of a job; without one, the tool drawer.
    Tools {
        /// The job.
        job: Option<String>,
    },
    /// Signing for the frozen packs of a job.
    Freeze {
        /// The job.
        job: String,
    },
    /// The bench checks of a job.
    Checks {
        /// The job.
        job: String,
    },
    /// A bench check: in a job, for a step of it, or alone.
    BenchCheck {
        /// The job; without one, nothing is kept.
        job: Option<String>,
        /// Which instrument.
        kind: String,
        /// The step it belongs to.
        step: Option<String>,
        /// The record of the step it was opened from, where that is the place it counts for.
        record: Option<String>,
    },
    /// What waits, on the screens of a job that show no clocks; no address leads here.
    Waits {
        /// The job.
        job: String,
    },
    /// The shop's board.
    Board,
    /// What the bench shows of a guided job; no address leads here.
    Card {
        /// The job.
        job: String,
    },
    /// The bench's next act in a guided job; no address leads here.
    Next {
        /// The job.
        job: String,
    },
    /// Set-up of a job.
    SetUp {
        /// The job.
        job: String,
    },
    /// Reading of a check.
    Reading {
        /// The job.
        job: String,
        /// The check.
        check: String,
    },
    /// What each pack of a job disturbs.
    Influence {
        /// The job.
        job: String,
    },
    /// Record of a job.
    Record {
        /// The job.
        job: String,
    },
    /// A unit sheet.
    Sheet {
        /// The sheet.
        sheet: String,
    },
    /// The shim tin.
    Tin,
    /// Settings and backup.
    Settings,
    /// A job that is looked for.
    Find,
    /// A job's tags, its place in the archive, and the room its photos take.
    Archive {
        /// The job.
        job: String,
    },
    /// A file that comes in.
    BringIn,
    /// A job on its way out as a file.
    SendJob {
        /// The job.
        job: String,
    },
    /// A unit sheet on its way out as a file or a code.
    SendSheet {
        /// The sheet.
        sheet: String,
    },
    /// The short guide, to print.
    ShortGuide,
    /// The help of a screen; no address leads here.
    Help {
        /// Which screen.
        of: Box<Screen>,
    },
    /// What stands in place of a screen that the shop's PIN guards; no address leads here.
    Locked {
        /// The job it is of, if it is of one.
        job: Option<String>,
    },
    /// The practice unit.
    Practice,
    /// Component states, for builders.
    States,
    /// Entries written for a test, for builders.
    Writing,
}

impl Screen {
    /// The job whose waits are told beside a screen that has no place for them.
    pub fn waiting_job(&self) -> Option<&str> {
        match self {
            Screen::SetUp { job }
            | Screen::Reading { job, .. }
            | Screen::Influence { job }
            | Screen::Checks { job }
            | Screen::BenchCheck { job: Some(job), .. }
            | Screen::Record { job } => Some(job),
            _ => None,
        }
    }

    /// The job it is about, if it is about one.
    pub fn job(&self) -> Option<&String> {
        match self {
            Screen::Job { job }
            | Screen::Step { job, .. }
            | Screen::OwnSteps { job }
            | Screen::OpenMap { job }
            | Screen::Ladder { job }
            | Screen::Inspect { job }
            | Screen::Consent { job }
            | Screen::Tools { job: Some(job) }
            | Screen::Freeze { job }
            | Screen::Checks { job }
            | Screen::BenchCheck { job: Some(job), .. }
            | Screen::Waits { job }
            | Screen::Card { job }
            | Screen::Next { job }
            | Screen::SetUp { job }
            | Screen::Reading { job, .. }
            | Screen::Influence { job }
            | Screen::Record { job }
            | Screen::Archive { job }
            | Screen::SendJob { job } => Some(job),
            Screen::Bench
            | Screen::First
            | Screen::NewJob
            | Screen::Tools { job: None }
            | Screen::BenchCheck { job: None, .. }
            | Screen::Board
            | Screen::Sheet { .. }
            | Screen::Tin
            | Screen::Settings
            | Screen::Find
            | Screen::BringIn
            | Screen::SendSheet { .. }
            | Screen::Practice
            | Screen::States
            | Screen::ShortGuide
            | Screen::Help { .. }
            | Screen::Locked { .. }
            | Screen::Writing => None,
        }
    }

    /// What stands in its place while the shop's PIN is not given: data goes out there, or leaves
    /// the device, or the owner's name and signature are to be seen. `None` for a screen that no PIN guards.
    pub fn locked(&self) -> Option<Screen> {
        match self {
            Screen::Consent { job }
            | Screen::Record { job }
            | Screen::Archive { job }
            | Screen::SendJob { job } => Some(Screen::Locked { job: Some(job.clone()) }),
            Screen::SendSheet { .. } => Some(Screen::Locked { job: None }),
            _ => None,
        }
    }

    /// The screen of a path; the bench where the path names none.
    pub fn of(path: &str) -> Screen {
        let owned = str::to_owned;
        let parts: Vec<&str> = path.split('/').filter(|part| !part.is_empty()).collect();
        match parts.as_slice() {
            ["find"] => Screen::Find,
            ["first"] => Screen::First,
            ["new-job"] => Screen::NewJob,
            ["job", job] => Screen::Job { job: owned(job) },
            ["job", job, "step"] => Screen::Step { job: owned(job), step: None },
            ["job", job, "step", step] => Screen::Step { job: owned(job), step: Some(owned(step)) },
            ["job", job, "steps"] => Screen::OwnSteps { job: owned(job) },
            ["job", job, "map"] => Screen::OpenMap { job: owned(job) },
            ["job", job, "ladder"] => Screen::Ladder { job: owned(job) },
            ["job", job, "inspect"] => Screen::Inspect { job: owned(job) },
            ["job", job, "consent"] => Screen::Consent { job: owned(job) },
            ["job", job, "tools"] => Screen::Tools { job: Some(owned(job)) },
            ["job", job, "check"] => Screen::Checks { job: owned(job) },
            ["job", job, "check", kind, rest @ ..] => Screen::BenchCheck {
                job: Some(owned(job)),
                kind: owned(kind),
                step: rest.first().copied().map(owned),
                record: rest.get(1).copied().and_then(decoded),
            },
            ["check", kind] => {
                Screen::BenchCheck { job: None, kind: owned(kind), step: None, record: None }
            }
            ["job", job, "freeze"] => Screen::Freeze { job: owned(job) },
            ["board"] => Screen::Board,
            ["tools"] => Screen::Tools { job: None },
            ["job", job, "setup"] => Screen::SetUp { job: owned(job) },
            ["job", job, "read", check] => Screen::Reading { job: owned(job), check: owned(check) },
            ["job", job, "influence"] => Screen::Influence { job: owned(job) },
            ["job", job, "record"] => Screen::Record { job: owned(job) },
            ["job", job, "archive"] => Screen::Archive { job: owned(job) },
            ["job", job, "send"] => Screen::SendJob { job: owned(job) },
            ["sheet", sheet, "send"] => Screen::SendSheet { sheet: owned(sheet) },
            ["bring-in"] => Screen::BringIn,
            ["sheet", sheet] => Screen::Sheet { sheet: owned(sheet) },
            ["tin"] => Screen::Tin,
            ["settings"] => Screen::Settings,
            ["practice"] => Screen::Practice,
            ["guide"] => Screen::ShortGuide,
            ["states"] => Screen::States,
            ["states", "writing"] => Screen::Writing,
            _ => Screen::Bench,
        }
    }
}

/// A part of a path in its own letters; `None` where no browser could have written it.
fn decoded(part: &str) -> Option<String> {
    js_sys::decode_uri_component(part).ok().map(String::from)
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::*;

    #[test]
    fn paths_name_screens() {
        let job = || "27".to_owned();
        let reading = Screen::Reading { job: job(), check: "lash-forward".to_owned() };
        assert_eq!(Screen::of("/job/27/read/lash-forward"), reading);
        assert_eq!(Screen::of("/job/27/setup"), Screen::SetUp { job: job() });
        assert_eq!(Screen::of("/tin/"), Screen::Tin);
        assert_eq!(Screen::of("/job/27"), Screen::Job { job: job() });
        let step = |step: Option<&str>| Screen::Step { job: job(), step: step.map(str::to_owned) };
        assert_eq!(Screen::of("/job/27/step/b04"), step(Some("b04")));
        assert_eq!(Screen::of("/job/27/step"), step(None));
        let check = |job: Option<String>, step: Option<&str>| Screen::BenchCheck {
            job,
            kind: "leak".to_owned(),
            step: step.map(str::to_owned),
            record: None,
        };
        assert_eq!(Screen::of("/job/27/check/leak/b42"), check(Some(job()), Some("b42")));
        let Screen::BenchCheck { record, .. } = Screen::of("/job/27/check/leak/b42/low%20stage%2C")
        else {
            panic!("another screen")
        };
        assert_eq!(record.as_deref(), Some("low stage,"));
        assert_eq!(Screen::of("/job/27/check/leak"), check(Some(job()), None));
        assert_eq!(Screen::of("/check/leak"), check(None, None));
        assert_eq!(Screen::of("/job/27/check"), Screen::Checks { job: job() });
        assert_eq!(Screen::of("/tools"), Screen::Tools { job: None });
        assert_eq!(Screen::of("/guide"), Screen::ShortGuide);
        for path in ["/", "", "/job", "/job/27/read", "/elsewhere"] {
            assert_eq!(Screen::of(path), Screen::Bench, "{path}");
        }
    }

    #[test]
    fn the_pin_guards_what_goes_out_and_who_agreed() {
        let job = || Some(Screen::Locked { job: Some("27".to_owned()) });
        for path in ["/job/27/record", "/job/27/consent", "/job/27/send"] {
            assert_eq!(Screen::of(path).locked(), job(), "{path}");
        }
        let sheet = Screen::of("/sheet/14/send").locked();
        assert_eq!(sheet, Some(Screen::Locked { job: None }));
        for path in ["/", "/job/27", "/job/27/setup", "/sheet/14", "/tin", "/board", "/settings"] {
            assert_eq!(Screen::of(path).locked(), None, "{path}");
        }
    }
}
