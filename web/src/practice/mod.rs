//! The practice unit: hidden faults, virtual gauges, a decision, and then the reason why.

mod deciding;
mod found;
mod lesson;
mod start;
mod told;

use std::sync::Arc;
use words::{say, t};

use job::{Figure, Shown, figure};
use leptos::prelude::*;
use measure::Decimal;
use practice::{ROUNDS, Round, Told};

use crate::address::Screen;
use crate::page;
use crate::parts::{Act, Back, Dock, Glyph, Icon, Plate, live};
use crate::scratch;
use crate::screens::frame::UnitSwitch;
use crate::shown::use_shown;
use lesson::{Decided, Lesson};

/// What is being typed as the reason.
const BECAUSE: &str = "practice.because";

/// The practice unit as the screen follows it.
#[derive(Clone, Copy)]
struct Unit {
    lesson: RwSignal<Option<Lesson>>,
    round: Memo<Option<Arc<Round>>>,
    chosen: RwSignal<Option<usize>>,
    because: RwSignal<String>,
    shown: Memo<Shown>,
}

impl Unit {
    fn here() -> Unit {
        let lesson = RwSignal::new(Lesson::left());
        let which = Memo::new(move |_| lesson.with(|it| it.as_ref().map(|it| it.at)));
        let round = Memo::new_with_compare(
            move |_| {
                let at = which.get()?;
                lesson.with_untracked(|it| it.as_ref()?.round(at)).map(Arc::new)
            },
            |_, _| true,
        );
        Unit {
            lesson,
            round,
            chosen: RwSignal::new(None),
            because: RwSignal::new(scratch::read(BECAUSE).unwrap_or_default()),
            shown: use_shown(),
        }
    }

    /// Changes the lesson and keeps it.
    fn go(self, change: impl FnOnce(&mut Lesson)) {
        self.lesson.update(|lesson| {
            if let Some(lesson) = lesson {
                change(lesson);
                lesson.keep();
            }
        });
    }

    fn begin(self, wanted: Option<usize>) {
        self.lesson.set(Some(Lesson::begin(wanted)));
        self.chosen.set(None);
        self.go(|_| ());
        page::lead_to("next");
    }

    fn type_because(self, text: String) {
        scratch::write(BECAUSE, &text);
        self.because.set(text);
    }

    fn decide(self) {
        let Some(decision) = self.chosen.get_untracked() else { return };
        let because = self.because.get_untracked();
        self.go(|lesson| lesson.decided.push(Decided { decision, because }));
        self.type_because(String::new());
        page::lead_to("told");
    }

    fn next(self) {
        self.chosen.set(None);
        self.go(|lesson| lesson.at += 1);
        page::lead_to("next");
    }

    /// What was decided in the open round; followed.
    fn decided(self) -> Option<Decided> {
        self.lesson.with(|lesson| lesson.as_ref().and_then(|it| it.decided.get(it.at).cloned()))
    }

    /// What is told of the decision in the open round; followed.
    fn told(self) -> Option<Told> {
        let decided = self.decided()?;
        self.round.with(|round| Some(round.as_ref()?.told(decided.decision, &self.length())))
    }

    /// How lengths are shown; followed.
    fn length(self) -> impl Fn(Decimal) -> String {
        let shown = self.shown.get();
        move |mm| figure(mm, Figure::Reading, shown)
    }
}

/// The practice unit.
pub fn screen(_: Screen) -> AnyView {
    let unit = Unit::here();
    page::title(Signal::stored(t("Practice").to_owned()));
    let inside = live(move || match unit.lesson.with(|it| it.as_ref().map(Lesson::is_over)) {
        None => start::sheet(unit),
        Some(true) => found::over(unit),
        Some(false) => at_work(unit),
    });
    view! {
        <Plate title=t("Practice unit") subtitle=t("Demo unit 14/21, invented")>
            <UnitSwitch/>
        </Plate>
        <aside class="practice" aria-label=t("Practice")>
            <Icon glyph=Glyph::Cap/>
            {t("Practice. Nothing here reaches a real job.")}
        </aside>
        <main class="main" id="main" tabindex="-1">
            {inside}
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
            {live(move || act(unit))}
        </Dock>
    }
    .into_any()
}

fn at_work(unit: Unit) -> AnyView {
    view! {
        <div class="cols">
            <section class="col">
                {live(move || deciding::readings(unit))}
                {live(move || match unit.told() {
                    None => deciding::decisions(unit),
                    Some(told) => told::sheet(unit, &told),
                })}
            </section>
            <section class="col">
                {live(move || match unit.told() {
                    None => deciding::because(unit),
                    Some(told) => told::reasons(&told),
                })}
                {live(move || found::sheet(unit))}
            </section>
        </div>
    }
    .into_any()
}

/// The one next act.
fn act(unit: Unit) -> AnyView {
    match unit.lesson.with(|it| it.as_ref().map(Lesson::is_over)) {
        None => view! { <Act words=say!("Start: {ROUNDS} hidden faults") on_press=Callback::new(move |()| unit.begin(None))/> }.into_any(),
        Some(true) => view! { <Act words=t("Start another") on_press=Callback::new(move |()| unit.begin(None))/> }.into_any(),
        Some(false) => match (unit.told(), unit.chosen.get()) {
            (Some(told), _) => {
                let words = if told.is_right { t("Next fault").to_owned() } else { told.act };
                view! { <Act words on_press=Callback::new(move |()| unit.next())/> }.into_any()
            }
            (None, None) => view! { <Act words=t("Choose one first") waits=true/> }.into_any(),
            (None, Some(_)) => {
                let words = say!("Decide: {}", deciding::title(unit).to_lowercase());
                view! { <Act words on_press=Callback::new(move |()| unit.decide())/> }.into_any()
            }
        },
    }
}
