//! How much of the unit is done: chosen first, changed with a reason.

use job::procedure::{Plan, Scope};
use job::{BookId, Fact, Guided};
use leptos::prelude::*;
use words::{say, t};

use super::super::Guide;
use super::super::acting::Acting;
use crate::draft::{Draft, use_draft};
use crate::guide::consent;
use crate::parts::{Choice, TextField, live, press, words};

/// The scope that is being chosen.
#[derive(Clone, Copy)]
pub struct Choosing {
    pub guide: Guide,
    pub acting: Acting,
    /// Its name in files; empty until one is tapped.
    scope: Draft,
    reason: Draft,
    /// It is being changed.
    open: RwSignal<bool>,
}

impl Choosing {
    /// Nothing but what was left half chosen.
    pub fn of(guide: Guide) -> Choosing {
        let at = format!("job/{}/scope", guide.of.id());
        Choosing {
            guide,
            acting: Acting::here(),
            scope: use_draft(&at, "scope"),
            reason: use_draft(&at, "reason"),
            open: RwSignal::new(false),
        }
    }

    /// The scope tapped.
    pub fn chosen(self) -> Option<Scope> {
        Scope::named(&self.scope.text())
    }

    /// Writes the scope down; the first one pins the procedure too.
    pub fn keep(self) {
        let Some(scope) = untrack(|| self.chosen()) else { return };
        let reason = self.reason.text_untracked().trim().to_owned();
        let pinned = self.guide.of.look_once(|(job, ..), _| job.guide.procedure.is_some());
        let book = || BookId::Job(self.guide.of.id());
        let mut facts: Vec<(BookId, Fact)> = Vec::new();
        if let Some((layout, revision)) = self.guide.pinned().filter(|_| pinned == Some(false)) {
            facts.push((book(), Guided::ProcedurePinned { layout, revision }.into()));
        }
        facts.push((book(), Guided::ScopeChosen { scope, reason }.into()));
        let then = move || {
            self.scope.clear();
            self.reason.clear();
            self.open.try_set(false);
        };
        self.acting.record(facts, Vec::new(), Box::new(then));
    }
}

/// Before the first step.
pub fn first(choosing: Choosing) -> AnyView {
    view! {
        <div class="head">
            <h1>{t("How much of it is done?")}</h1>
            <p>{t("The steps follow from the scope. It can be widened later; what is done stays done.")}</p>
        </div>
        <div class="sheet">
            <h2 class="vh">{t("Scope")}</h2>
            {live(move || scopes(choosing))}
            {choosing.acting.says()}
        </div>
    }
    .into_any()
}

/// The scope as it is, and the way to another.
pub fn change(choosing: Choosing) -> AnyView {
    let scope = Memo::new(move |_| choosing.guide.look(|plan, _, _| plan.scope));
    let name = words(move || scope.get().map(Scope::words).unwrap_or_default().to_owned());
    let rule = words(move || scope.get().map(Scope::rule).unwrap_or_default().to_owned());
    let turn = press(Callback::new(move |()| choosing.open.update(|open| *open = !*open)));
    let form = live(move || match choosing.open.get() {
        false => ().into_any(),
        true => form(choosing),
    });
    let label = words(move || {
        let label = if choosing.open.get() { t("Keep the scope") } else { t("Change the scope") };
        label.to_owned()
    });
    view! {
        <div class="sheet">
            <h2>{t("Scope")}</h2>
            <p>
                <b>{name}</b>
                <br/>
                <span class="dim">{rule}</span>
            </p>
            <button class="btn btn--plain btn--wide" type="button" on:click=turn>
                {label}
            </button>
            {consent::row(choosing.guide)}
            <a class="btn btn--plain btn--wide" href=choosing.guide.of.at("steps")>
                {t("Steps of this unit")}
            </a>
            {form}
            {choosing.acting.says()}
        </div>
    }
    .into_any()
}

fn form(choosing: Choosing) -> AnyView {
    let keep = press(Callback::new(move |()| choosing.keep()));
    let words = words(move || match choosing.chosen() {
        Some(scope) => say!("Change to {}", scope.words().to_lowercase()),
        None => t("Choose another scope").to_owned(),
    });
    view! {
        {live(move || scopes(choosing))}
        <TextField
            id="scope-reason"
            label=t("Why it changes")
            value=choosing.reason
            placeholder=t("forward gear pitted")
        />
        <button class="btn btn--wide" type="button" on:click=keep>
            {words}
        </button>
    }
    .into_any()
}

fn scopes(choosing: Choosing) -> AnyView {
    let choices = Scope::ALL.into_iter().map(|scope| one(choosing, scope));
    choices.collect_view().into_any()
}

fn one(choosing: Choosing, scope: Scope) -> AnyView {
    let chosen = Signal::derive(move || choosing.chosen() == Some(scope));
    let choose = Callback::new(move |()| choosing.scope.set(scope.name()));
    let note = words(move || {
        let size = choosing.guide.plan_in(scope).map(|plan| size(&plan)).unwrap_or_default();
        format!("{} {size}", scope.rule())
    });
    view! {
        <Choice group="scope" title=scope.words().to_owned() note chosen on_choose=choose/>
    }
    .into_any()
}

/// "49 steps, about 11 h."
fn size(plan: &Plan) -> String {
    let hours = plan.minutes().div_ceil(60);
    say!("{} steps, about {hours} h of labour.", plan.steps.len())
}
