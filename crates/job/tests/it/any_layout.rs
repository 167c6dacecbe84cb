//! Whatever is typed on a sheet of any layout, nothing panics and every field keeps its name.

use job::*;
use proptest::prelude::*;

use crate::bench::{Bench, mm};
use crate::unit;

const LAYOUTS: [&str; 5] = ["a", "b", "c", "d", "e"];

/// Every slot and every check of a sheet, in its order.
fn parts(bench: &Bench) -> (Vec<Slot>, Vec<Check>, Vec<Field>) {
    let (_, sheet, _) = bench.state();
    let fields = sheet.fields().map(|facts| facts.field).collect();
    (sheet.slots().to_vec(), sheet.limits(), fields)
}

/// One act, chosen by numbers; many are refused, which is part of the test.
fn play(bench: &mut Bench, (kind, at, number): (u8, usize, i32)) {
    let (slots, checks, fields) = parts(bench);
    let (slot, check) = (slots[at % slots.len()], checks[at % checks.len()]);
    let (sheet, job) = (bench.sheet.id().clone(), bench.job.id().clone());
    let hundredths = |number: i32| {
        format!(
            "{}{}.{:02}",
            if number < 0 { "-" } else { "" },
            number.abs() / 100,
            number.abs() % 100
        )
    };
    let text = hundredths(number);
    let acts = match kind {
        0 | 1 => {
            let field = fields[at % fields.len()];
            let texts = [text.as_str(), "14", "driveshaft", "mesh"];
            let (_, state, _) = bench.state();
            let read = |text| type_in(&state, field, text, measure::Unit::Millimetre).ok();
            let facts = texts.into_iter().find_map(read).unwrap_or_default();
            facts.into_iter().map(|fact| (sheet.clone(), fact)).collect()
        }
        2 => {
            let positions: Vec<Option<String>> = slot
                .positions()
                .map(|position| Some(position.id.to_owned()))
                .chain([None])
                .collect();
            let position = positions[number.unsigned_abs() as usize % positions.len()].clone();
            vec![(sheet, Fact::VariantChosen { slot, position })]
        }
        3 => {
            let position = slot.positions().next().unwrap().id.to_owned();
            let build = Some(number.unsigned_abs() % 3).filter(|build| *build < 2);
            vec![(sheet, Fact::BuildChosen { position, build })]
        }
        4 | 5 => {
            let shims = vec![FittedShim::Measured(mm(&text))];
            let as_found = number % 3 != 0;
            vec![(job, Fact::PackFitted { slot, shims, as_found })]
        }
        6 => vec![(job, Fact::PackHeld { slot, held: number > 0 })],
        7 => vec![(job, Fact::PartsChanged { slot, marks: Vec::new() })],
        _ => {
            let preview = bench.preview(check, &[text.as_str(); 4][..check.stops().len()]);
            preview.fact.into_iter().map(|fact| (job.clone(), fact)).collect()
        }
    };
    drop(bench.record(acts));
}

/// A unit with all that its checks need, so that acts reach the engine.
fn ready(layout: &str) -> Bench {
    let mut bench = unit::bench(layout, &[], &[]);
    let (slots, checks, fields) = parts(&bench);
    for field in fields {
        let text = match field {
            Field::PinionTeeth => "14",
            Field::Teeth(_) => "21",
            Field::PinionRadius | Field::ArmRadius | Field::Radius(_) => "30",
            Field::ArmShaft | Field::Shaft(_) => "driveshaft",
            Field::DepthSide => "mesh",
            Field::Low(_) => "0.20",
            Field::High(_) => "0.40",
            _ => continue,
        };
        bench.type_fields(&[(field, text)]);
    }
    let (state, ..) = bench.state();
    let found = slots.iter().map(|slot| record_found(&state, *slot, unit::pack(&["0.50"])));
    bench.record(found.collect()).unwrap();
    for check in checks {
        bench.read(check, &["0.45"; 4][..check.stops().len()]);
    }
    bench
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..Default::default() })]

    #[test]
    fn no_sheet_makes_a_screen_fall(
        layout in 0usize..5,
        acts in prop::collection::vec((0u8..10, 0usize..40, -120i32..180), 1..14),
    ) {
        let mut bench = ready(LAYOUTS[layout]);
        for act in acts {
            play(&mut bench, act);
            let (job, sheet, tin) = bench.state();
            let all = (&job, &sheet, &tin);
            let shown = Shown::default();
            let told = bench.setup();
            prop_assert_eq!(told.advice.packs.len(), sheet.positions().len());
            prop_assert!(told.advice.status != AdviceStatus::CannotSay, "{:?}", told.advice.says);
            let view = influence_view(all, shown);
            prop_assert_eq!(view.rows.len(), sheet.positions().len());
            why(&told, all, shown);
            record(&job, &sheet, None, shown);
            bench_card(&job, &sheet, bench.at, shown);
            for slot in sheet.slots() {
                what_if(all, *slot, view.thicker, shown);
            }
        }
    }
}

#[test]
fn the_fields_of_layout_b_keep_their_names() {
    let told: Vec<String> = Sheet::default()
        .fields()
        .map(|facts| format!("{} | {} | {}", facts.id, facts.label(), facts.name()))
        .collect();
    let names = include_str!("fields_b.txt");
    assert_eq!(told, names.lines().collect::<Vec<_>>());
}

#[test]
fn every_layout_has_its_own_fields_and_no_others() {
    let fields = |layout: &str| {
        let (.., fields) = parts(&unit::bench(layout, &[], &[]));
        fields
    };
    let teeth = |layout: &str| {
        let is_teeth = |field: &Field| matches!(field, Field::Teeth(_));
        fields(layout).into_iter().filter(is_teeth).collect::<Vec<_>>()
    };
    assert_eq!(teeth("a"), [Field::Teeth(Mesh::Main)]);
    assert_eq!(teeth("c"), [Field::Teeth(Mesh::Front), Field::Teeth(Mesh::Rear)]);
    assert_eq!(teeth("d"), [Field::Teeth(Mesh::Lower), Field::Teeth(Mesh::Upper)]);
    assert!(fields("e").contains(&Field::Low(Check::Setting(Bearings::PinionPair))));
    assert!(!fields("b").contains(&Field::Low(Check::Torque)));
}
