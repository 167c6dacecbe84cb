//! The shop's PIN: giving it, and setting, changing and taking it away.

mod forgotten;
mod giving;
mod locked;
mod setting;

pub use giving::Giving;
pub use locked::locked;
pub use setting::ShopPin;

use leptos::prelude::*;

use crate::parts::{Field, Says};

/// A field for a PIN; what is typed is kept nowhere.
fn field(
    id: &'static str,
    label: &'static str,
    typed: RwSignal<String>,
    says: Signal<Option<Says>>,
) -> AnyView {
    view! { <Field id label value=typed says secret=true/> }.into_any()
}
