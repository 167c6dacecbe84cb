//! How this person likes the screen: kept where it may be lost.

use job::Units;
use leptos::prelude::*;
use measure::Unit;

use crate::scratch;

/// Colours of the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// As the device has it.
    Auto,
    /// Light.
    Sun,
    /// Dark.
    Shed,
}

/// The decimal mark of the numbers shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decimals {
    /// As the device's language has it.
    Auto,
    /// 0.38
    Point,
    /// 0,38
    Comma,
}

/// What types the numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumberEntry {
    /// The app's own pad.
    Pad,
    /// The phone's keyboard.
    Phone,
}

/// Where the device stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stand {
    /// With one person.
    Own,
    /// In the shop, for everybody.
    Kiosk,
}

/// What language the screen speaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// The device’s, where the app has it.
    Device,
    /// English.
    English,
    /// Spanish.
    Spanish,
}

impl Language {
    /// The language chosen on this device, before there is a screen.
    pub fn kept_here() -> Language {
        Language::kept().unwrap_or(Language::Device)
    }

    /// Chooses it; it is spoken from the next start on.
    pub fn keep_here(self) {
        self.keep();
    }
}

/// A preference with its values and the words they are kept under.
trait Choice: Copy + PartialEq + Send + Sync + 'static {
    const KEY: &'static str;
    /// The first is what holds until the person chooses.
    const VALUES: &'static [(&'static str, Self)];

    fn kept() -> Option<Self> {
        let word = scratch::read(Self::KEY);
        let kept = Self::VALUES.iter().find(|(name, _)| Some(*name) == word.as_deref());
        kept.or(Self::VALUES.first()).map(|(_, value)| *value)
    }

    fn keep(self) {
        if let Some((name, _)) = Self::VALUES.iter().find(|(_, value)| *value == self) {
            scratch::write(Self::KEY, name);
        }
    }
}

impl Choice for Theme {
    const KEY: &'static str = "theme";
    const VALUES: &'static [(&'static str, Theme)] =
        &[("auto", Theme::Auto), ("sun", Theme::Sun), ("shed", Theme::Shed)];
}

impl Choice for Decimals {
    const KEY: &'static str = "decimals";
    const VALUES: &'static [(&'static str, Decimals)] =
        &[("auto", Decimals::Auto), ("point", Decimals::Point), ("comma", Decimals::Comma)];
}

impl Choice for NumberEntry {
    const KEY: &'static str = "entry";
    const VALUES: &'static [(&'static str, NumberEntry)] =
        &[("pad", NumberEntry::Pad), ("phone", NumberEntry::Phone)];
}

impl Choice for Language {
    const KEY: &'static str = "language";
    const VALUES: &'static [(&'static str, Language)] =
        &[("device", Language::Device), ("en", Language::English), ("es", Language::Spanish)];
}

impl Choice for Stand {
    const KEY: &'static str = "stand";
    const VALUES: &'static [(&'static str, Stand)] =
        &[("own", Stand::Own), ("kiosk", Stand::Kiosk)];
}

/// Where the units are kept, as [`Units`] is displayed.
const UNITS: &str = "unit";

/// The preferences, in context of every screen. Each setter keeps the choice at once.
#[derive(Clone, Copy)]
pub struct Prefs {
    theme: RwSignal<Theme>,
    /// As it is kept: the code that knows units comes after the first screen.
    units: RwSignal<String>,
    decimals: RwSignal<Decimals>,
    entry: RwSignal<NumberEntry>,
    stand: RwSignal<Stand>,
}

impl Prefs {
    /// Reads what was kept.
    pub fn kept() -> Prefs {
        Prefs {
            theme: RwSignal::new(Theme::kept().unwrap_or(Theme::Auto)),
            units: RwSignal::new(scratch::read(UNITS).unwrap_or_default()),
            decimals: RwSignal::new(Decimals::kept().unwrap_or(Decimals::Auto)),
            entry: RwSignal::new(NumberEntry::kept().unwrap_or(NumberEntry::Pad)),
            stand: RwSignal::new(Stand::kept().unwrap_or(Stand::Own)),
        }
    }

    /// Colours of the screen.
    pub fn theme(self) -> Theme {
        self.theme.get()
    }

    /// Units in which values are shown. What was typed keeps its own.
    pub fn units(self) -> Units {
        self.units.with(|text| Units::default().named(text))
    }

    /// The decimal mark of the numbers shown.
    pub fn decimals(self) -> Decimals {
        self.decimals.get()
    }

    /// What types the numbers.
    pub fn entry(self) -> NumberEntry {
        self.entry.get()
    }

    /// Where the device stands.
    pub fn stand(self) -> Stand {
        self.stand.get()
    }

    /// Chooses where the device stands.
    pub fn set_stand(self, stand: Stand) {
        stand.keep();
        self.stand.set(stand);
    }

    /// Chooses the colours.
    pub fn set_theme(self, theme: Theme) {
        theme.keep();
        self.theme.set(theme);
    }

    /// Chooses the unit that its quantity is shown in.
    pub fn set_unit(self, unit: Unit) {
        let units = untrack(|| self.units()).with(unit).to_string();
        scratch::write(UNITS, &units);
        self.units.set(units);
    }

    /// Chooses the decimal mark.
    pub fn set_decimals(self, decimals: Decimals) {
        decimals.keep();
        self.decimals.set(decimals);
    }

    /// Chooses what types the numbers.
    pub fn set_entry(self, entry: NumberEntry) {
        entry.keep();
        self.entry.set(entry);
    }
}

/// Whether this device is a shop's kiosk, before there is a screen.
pub fn is_kiosk() -> bool {
    Stand::kept() == Some(Stand::Kiosk)
}

/// The preferences from context.
pub fn use_prefs() -> Prefs {
    expect_context()
}
