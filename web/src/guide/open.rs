//! A guided job, followed: its plan, what was done, and where every step stands.

use std::cell::RefCell;
use std::sync::Arc;

use job::guide::{ClockView, Course, GuideLog, Moment, clock_warning, clocks, filled, told};
use job::procedure::{NEWEST, Plan, Procedure, Scope};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::load;
use crate::code::Visit;
use crate::device::fetched::NotHere;
use crate::device::now::{device_id, use_now, utc_offset_minutes};
use crate::screens::frame::OpenJob;

/// A guided job.
#[derive(Clone, Copy)]
pub struct Guide {
    /// The job with its sheet and tin.
    pub of: OpenJob,
    now: ReadSignal<i64>,
    procedure: RwSignal<Result<Arc<Procedure>, Lacks>>,
    plan: Memo<Option<Arc<Plan>>>,
    standing: Memo<Option<Arc<(GuideLog, Course)>>>,
    clocks: Memo<Arc<Clocks>>,
}

/// What a guided job lacks before its steps can be shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lacks {
    /// The procedure is on its way.
    Coming,
    /// The procedure did not come.
    Procedure,
    /// Nobody said yet how much of the unit is done.
    Scope,
}

/// The waits of a job, and what is odd about the device's clock.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Clocks {
    /// In the order started.
    pub views: Vec<ClockView>,
    /// What to say where the device's clock was set back.
    pub warning: Option<String>,
}

thread_local! {
    static OPEN: RefCell<Vec<(String, Guide)>> = const { RefCell::new(Vec::new()) };
}

impl Guide {
    /// The job of that id. Its procedure is fetched, and its steps worked out, the first time; then
    /// they are followed for the rest of the visit, so that going from step to step waits for
    /// nothing.
    pub fn of(job: &str) -> Guide {
        let known = OPEN.with_borrow(|open| open.iter().find(|it| it.0 == job).map(|it| it.1));
        if let Some(guide) = known {
            if guide.procedure.with_untracked(Result::is_err) {
                guide.fetch();
            }
            return guide;
        }
        match use_context().and_then(|Visit(owner)| owner) {
            Some(owner) => {
                let guide = owner.with(|| Guide::anew(job));
                OPEN.with_borrow_mut(|open| open.push((job.to_owned(), guide)));
                guide
            }
            None => Guide::anew(job),
        }
    }

    fn anew(job: &str) -> Guide {
        let of = OpenJob::of(job);
        let now = use_now();
        let procedure: RwSignal<Result<Arc<Procedure>, Lacks>> = RwSignal::new(Err(Lacks::Coming));
        let plan = Memo::new(move |_| {
            let procedure = procedure.get().ok()?;
            let plan = of.look(|(job, sheet, _), _| {
                Some(Arc::new(Plan::of(&procedure, job.guide.scope?, &sheet.changes)))
            });
            plan.flatten()
        });
        let standing = Memo::new(move |_| {
            let (plan, moment) = (plan.get()?, moment(now.get()));
            of.look(|(job, sheet, _), shown| {
                let log = filled(job, &plan);
                let course = Course::of(&plan, &log, &told(job, sheet, shown), &moment);
                Arc::new((log, course))
            })
        });
        let clocks = Memo::new(move |_| {
            let moment = moment(now.get());
            let found = of.look(|(job, ..), _| Clocks {
                views: clocks(&job.guide, &moment),
                warning: clock_warning(&job.guide, &moment),
            });
            Arc::new(found.unwrap_or_default())
        });
        let guide = Guide { of, now, procedure, plan, standing, clocks };
        guide.fetch();
        guide
    }

    /// Fetches the procedure, or tries again.
    pub fn fetch(self) {
        let wanted = self.of.look_once(|(job, sheet, _), _| {
            job.guide.procedure.clone().unwrap_or_else(|| (sheet.layout.clone(), NEWEST))
        });
        let Some((layout, revision)) = wanted else { return };
        if let Some(kept) = load::kept(&layout, revision) {
            return self.procedure.set(Ok(kept));
        }
        spawn_local(async move {
            let come = load::procedure(&layout, revision).await;
            // The screen may have been left meanwhile.
            self.procedure.try_set(come.map_err(|NotHere| Lacks::Procedure));
        });
    }

    /// What is lacking before the steps can be shown; followed.
    pub fn lacks(self) -> Option<Lacks> {
        match self.procedure.with(|it| it.as_ref().err().copied()) {
            None => self.plan.with(Option::is_none).then_some(Lacks::Scope),
            lacks => lacks,
        }
    }

    /// Looks at the plan, what was done, and where every step stands; `None` while they are not
    /// there. Followed.
    pub fn look<T>(self, at: impl FnOnce(&Plan, &GuideLog, &Course) -> T) -> Option<T> {
        let (plan, standing) = (self.plan.get()?, self.standing.get()?);
        Some(at(&plan, &standing.0, &standing.1))
    }

    /// The same without following.
    pub fn look_once<T>(self, at: impl FnOnce(&Plan, &GuideLog, &Course) -> T) -> Option<T> {
        untrack(|| self.look(at))
    }

    /// The plan as it would be in another scope.
    pub fn plan_in(self, scope: Scope) -> Option<Plan> {
        let procedure = self.procedure.get().ok()?;
        self.of.look(|(_, sheet, _), _| Plan::of(&procedure, scope, &sheet.changes))
    }

    /// The address of one of its steps.
    pub fn at_step(self, step: &str) -> String {
        self.of.at(&format!("step/{step}"))
    }

    /// The procedure: layout and revision.
    pub fn pinned(self) -> Option<(String, u32)> {
        self.procedure
            .with_untracked(|it| it.as_ref().ok().map(|it| (it.layout.clone(), it.revision)))
    }

    /// The waits of the job; followed.
    pub fn clocks(self) -> Arc<Clocks> {
        self.clocks.get()
    }

    /// Now, here, on this device; followed.
    pub fn moment(self) -> Moment {
        moment(self.now.get())
    }
}

fn moment(now: i64) -> Moment {
    Moment { now, utc_offset: utc_offset_minutes(now), device: device_id() }
}
