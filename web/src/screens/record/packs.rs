//! The packs as found and as left in the case, and where each lies.

use job::{Figure, Record, RecordPack, Shown, figure};
use leptos::prelude::*;
use measure::Decimal;

use crate::parts::Tag;
use crate::pictures::Picture;
use crate::pictures::section::Section;

/// Both tables beside the section sketch.
pub fn packs(told: &Record, shown: Shown) -> AnyView {
    let section = Section::of(told.packs.iter().map(|pack| pack.position.id));
    let left = |pack: &RecordPack| row(pack, &pack.left, pack.total, shown);
    let found = |pack: &RecordPack| row(pack, &pack.found, pack.found_total, shown);
    view! {
        <div class="two two--pack">
            <div>
                <h2>{format!("Packs left in the case, {}", shown.unit)}</h2>
                {table(told.packs.iter().map(left).collect())}
                <h2>{format!("Packs as found, {}", shown.unit)}</h2>
                {table(told.packs.iter().map(found).collect())}
            </div>
            <Picture drawing=section.draw() class="sk"/>
        </div>
    }
    .into_any()
}

fn table(rows: Vec<AnyView>) -> AnyView {
    view! {
        <table class="tbl">
            <thead>
                <tr>
                    <th scope="col">"Pack"</th>
                    <th scope="col">"Shims, as measured"</th>
                    <th scope="col" class="n">"Together"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}

fn row(pack: &RecordPack, shims: &[Decimal], total: Decimal, shown: Shown) -> AnyView {
    let thickness = |value: &Decimal| figure(*value, Figure::Shim, shown);
    let (shims, total) = match shims {
        [] => ("not written down".to_owned(), String::new()),
        _ => {
            let each: Vec<String> = shims.iter().map(thickness).collect();
            (each.join(" + "), thickness(&total))
        }
    };
    view! {
        <tr>
            <td>
                <Tag words=pack.position.id/>
            </td>
            <td>{shims}</td>
            <td class="n">{total}</td>
        </tr>
    }
    .into_any()
}
