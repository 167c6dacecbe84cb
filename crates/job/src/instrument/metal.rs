//! The metals of fits: what each is called, how it grows and how stiff it is.

use words::{key, say, t};
use workshop::fit::{BEARING_STEEL, BRONZE, CAST_ALUMINIUM, Expansion};
use workshop::press::{ALUMINIUM, Elastic, STEEL};

use super::{Given, Takes};

/// The metal whose growth is typed.
pub(super) const OWN: &str = key!("own");

/// The metals that grow as a book says, and one whose growth is typed.
pub(super) const GROWING: Takes =
    Takes::One(&[key!("aluminium"), key!("steel"), key!("bronze"), OWN]);
/// The metals that are as stiff as a book says.
pub(super) const STIFF: Takes = Takes::One(&["aluminium", "steel"]);

/// How the metal of a field grows; `own` is the field of a coefficient from elsewhere.
pub(super) fn expansion(given: &mut Given, id: &str, own: &'static str) -> Option<Expansion> {
    let read = given.reading(own);
    let metal = given.word(id)?;
    match (metal, read) {
        (OWN, Some(read)) => given.at(own, Expansion::read(&read)),
        (OWN, None) => {
            given.want_field(own);
            None
        }
        (metal, Some(_)) => {
            let says = say!(
                "Found a number here and {metal} chosen above. Choose own there, or empty this field.",
                metal = t(metal)
            );
            given.refuse(own, says);
            None
        }
        ("aluminium", None) => Some(CAST_ALUMINIUM),
        ("bronze", None) => Some(BRONZE),
        _ => Some(BEARING_STEEL),
    }
}

/// How stiff the metal of a field is.
pub(super) fn elastic(given: &mut Given, id: &str) -> Option<Elastic> {
    given.word(id).map(|metal| if metal == "steel" { STEEL } else { ALUMINIUM })
}
