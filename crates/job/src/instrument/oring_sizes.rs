//! Ring sizes of the published series: one by its number, or those that fit a groove.

use measure::{Decimal, Unit, show};
use words::{say, t};
use workshop::as568::{Size, Standing, for_groove, size};
use workshop::oring::{Groove, Ring, examine};
use workshop::{Basis, Caution, Explanation, Reading};

use super::shown::Writing;
use super::{Answer, Given, Table, TableRow, answered};

/// Sections of the series, 0.001 in.
const SECTIONS: [i64; 5] = [70, 103, 139, 210, 275];
/// Sizes shown at most.
const MOST: usize = 8;

/// The size of the number typed; `Some(None)` where none is.
pub(super) fn known(given: &mut Given) -> Option<Option<Size>> {
    let Some(text) = given.word("dash") else { return Some(None) };
    let digits = text.rsplit('-').next().unwrap_or_default().trim();
    let found = digits.parse().ok().and_then(size);
    if found.is_none() {
        given.refuse(
            "dash",
            say!(
                "No size {text} in this table, which has those such as 214. Look at the bag again, or type section and inside diameter."
            ),
        );
        return None;
    }
    Some(found)
}

/// "-214: 24.99 × 3.53 mm. Two public lists agree."
pub(super) fn named(size: &Size, writing: &Writing) -> String {
    format!("{}. {}", dimensions(size, writing), standing(size.standing))
}

/// The sizes that fit, least stretch first; of one section, or of any that common practice squeezes.
pub(super) fn sizes(
    given: &mut Given,
    section: Option<Reading>,
    groove: &Groove,
    writing: &Writing,
) -> Option<Answer> {
    let asked = section.map_or_else(
        || {
            let of = |at: &i64| Reading::exact(Decimal::new(*at, 3), Unit::Inch);
            SECTIONS.iter().map(of).collect()
        },
        |section| vec![section],
    );
    let mut rows = Vec::new();
    let mut disagree = false;
    for one in asked {
        for size in given.at("bottom", for_groove(&one, &groove.bottom))? {
            let ring = Ring { section: size.section(), inside: size.inside() };
            let Ok(found) = examine(&ring, groove) else { continue };
            if !found.inside_practice && section.is_none() {
                continue;
            }
            disagree |= size.standing == Standing::SourcesDisagree;
            let percent = |value| format!("{} %", show(value, 1, writing.mark));
            let row = TableRow {
                name: dimensions(&size, writing),
                note: standing(size.standing).to_owned(),
                cells: [percent(found.squeeze.value), percent(found.stretch.value)],
            };
            rows.push((found.stretch.value, row));
        }
    }
    rows.sort_by_key(|row| row.0);
    rows.truncate(MOST);
    let rows: Vec<TableRow> = rows.into_iter().map(|row| row.1).collect();
    let says = if rows.is_empty() {
        t(
            "No size of this table fits: stretched by 0 to 5 %, squeezed by 10 to 40 %. Measure the groove again, or type section and inside diameter of the ring.",
        )
    } else {
        t(
            "Sizes that fit, stretched by 0 to 5 %: common practice, no source. Type the number you choose, or what you measure on the new ring.",
        )
    };
    let why = Explanation {
        formula: "inside = nominal in 1/16 in less a fixed amount for its section; s = (d − ID)/ID up to 5 %",
        given: Vec::new(),
        basis: Basis::Published(
            "SAE AS568 by a rule that agrees with public lists; sections and tolerances read in two, which numbers exist from memory",
        ),
    };
    let cautions: &[Caution] = if disagree { &[Caution::SourcesDisagree] } else { &[] };
    let table = Table { heads: [t("Ring"), t("Squeeze"), t("Stretch")], rows };
    Some(Answer {
        says: vec![says.to_owned()],
        table: (!table.rows.is_empty()).then_some(table),
        ..answered(cautions, &why, writing)
    })
}

/// "-214: 24.99 × 3.53 mm", inside diameter and section.
fn dimensions(size: &Size, writing: &Writing) -> String {
    let unit = writing.into(Unit::Millimetre).unwrap_or(Unit::Millimetre);
    let places = if unit == Unit::Inch { 3 } else { 2 };
    let in_unit = |reading: Reading| {
        let amount = reading.amount.to(unit).unwrap_or(reading.amount);
        show(amount.value, places, writing.mark)
    };
    let (inside, section) = (in_unit(size.inside()), in_unit(size.section()));
    let dash = size.dash;
    let zeros = if dash < 100 { "0" } else { "" };
    format!("-{zeros}{dash}: {inside} × {section} {unit}")
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::TwoSources => t("Two public lists agree."),
        Standing::Rule => t("By rule: measure it before you order."),
        Standing::SourcesDisagree => t("Lists differ: measure it before you order."),
    }
}
