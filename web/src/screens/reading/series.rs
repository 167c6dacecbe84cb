//! The series as it stands in the slots.

use job::{Check, Preview, preview};
use leptos::prelude::*;
use measure::Unit;
use words::{say, t};

use crate::parts::{Message, Says, Slot};
use crate::screens::entries::Entries;
use crate::screens::frame::OpenJob;
use crate::screens::told::told;

/// A series that is being typed.
#[derive(Clone, Copy)]
pub struct Series {
    pub of: OpenJob,
    pub check: Check,
    entries: Entries,
    preview: Memo<Option<Preview>>,
    /// Why the series was not kept.
    pub refused: RwSignal<Option<String>>,
}

impl Series {
    /// The series of a check, with what was left half typed.
    pub fn of(of: OpenJob, check: Check) -> Series {
        let place = format!("job/{}/read/{}", of.id(), check.id());
        let entries = Entries::at(&place, check.stops()).like(check.unit());
        let refused = RwSignal::new(None);
        let preview = Memo::new(move |_| {
            let texts = entries.texts();
            let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
            let unit = entries.unit();
            of.look(|books, shown| preview(books, check, &texts, unit, None, shown))
        });
        Series { of, check, entries, preview, refused }
    }

    /// Looks at what the core makes of it.
    pub fn look<T>(self, at: impl FnOnce(&Preview) -> T) -> Option<T> {
        self.preview.with(|preview| preview.as_ref().map(at))
    }

    /// The unit the slots are typed in, and whether they must say so.
    pub fn unit(self) -> (Unit, bool) {
        (self.entries.unit(), self.entries.is_unit_told())
    }

    /// The slots, for the screen.
    pub fn slots(self) -> Vec<Slot> {
        let (unit, is_told) = self.unit();
        let spoken = match unit {
            Unit::Inch => t("inches"),
            Unit::NewtonMetre => t("newton metres"),
            Unit::PoundForceInch => t("pound-force inches"),
            Unit::PoundForceFoot => t("pound-force feet"),
            _ => t("millimetres"),
        };
        let slot = |(at, stop): (usize, &&'static str)| {
            let label = t(stop);
            Slot {
                id: id(at),
                place: if is_told { format!("{label} {unit}") } else { label.to_owned() },
                spoken: say!("Reading at {label}, {spoken}"),
                value: self.entries.text(at),
                says: Signal::derive(move || self.says(at)),
                unit: Signal::derive(move || Some(self.entries.unit())),
            }
        };
        self.check.stops().iter().enumerate().map(slot).collect()
    }

    /// Empties the slots, once they are stored.
    pub fn clear(self) {
        (0..self.check.stops().len()).for_each(|at| self.entries.clear(at));
    }

    fn says(self, at: usize) -> Option<Says> {
        self.look(|preview| told(&preview.stops.get(at)?.typing))?
    }
}

/// The id of a slot in the page.
pub fn id(at: usize) -> String {
    format!("slot-{at}")
}

/// What is said about the series as a whole: a reading that stands apart, or why it was not kept.
#[component]
pub fn Said(series: Series) -> impl IntoView {
    let says = Signal::derive(move || {
        let refused = series.refused.get().map(Says::Refused);
        refused.or_else(|| series.look(|preview| preview.apart.clone())?.map(Says::Doubt))
    });
    view! { <Message id="series-says" says/> }
}
