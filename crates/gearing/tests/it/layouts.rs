//! The layouts against the reviewed position data in `tests/domain/positions.json` (common
//! practice; signs from the swelling test).

use gearing::layout::{Build, Choose, LAYOUTS, Layout, Position, Slot, Step};
use serde_json::{Map, Value, json};

fn data() -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/domain/positions.json");
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// An object of the fields that are there.
fn object(fields: &[(&str, Value)]) -> Value {
    let there = fields.iter().filter(|(_, value)| !value.is_null());
    let fields: Map<String, Value> =
        there.map(|(name, value)| ((*name).to_owned(), value.clone())).collect();
    Value::Object(fields)
}

fn layout(layout: &Layout) -> Value {
    json!({
        "id": layout.id, "name": layout.name, "meshes": layout.meshes,
        "settings": layout.settings, "order": layout.order.iter().map(step).collect::<Vec<_>>(),
    })
}

fn step(step: &Step) -> Value {
    let mut value = object(&[
        ("check", json!(step.check)),
        ("step", json!(step.step)),
        ("note", json!(step.note)),
    ]);
    value["slot"] = json!(step.slot);
    value
}

fn slot(layout: &Layout, slot: &Slot) -> Value {
    let choose = match slot.choose {
        Choose::One => "one",
        Choose::Any => "any",
    };
    json!({
        "id": slot.id, "layout": layout.id, "members": slot.members, "choose": choose,
        "may_be_absent": slot.may_be_absent, "ask": slot.ask,
    })
}

fn position(layout: &Layout, position: &Position) -> Value {
    let mesh_way = match position.mesh_sign {
        1 => "IN",
        -1 => "OUT",
        _ => "none",
    };
    let setting_way = match position.setting_sign {
        1 => "tighter",
        -1 => "looser",
        _ => "none",
    };
    let builds: Vec<Value> = position.builds.iter().map(build).collect();
    object(&[
        ("id", json!(position.id)),
        ("layout", json!(layout.id)),
        ("slot", json!(position.slot)),
        ("between", json!(position.between)),
        ("moves", json!(position.moves)),
        ("thicker", json!(position.thicker)),
        ("thinner", json!(position.thinner)),
        ("mesh_way", json!(mesh_way)),
        ("mesh_sign", json!(position.mesh_sign)),
        ("setting_way", json!(setting_way)),
        ("setting_sign", json!(position.setting_sign)),
        ("controls", json!(position.controls)),
        ("meshes", json!(position.meshes)),
        ("settings", json!(position.settings)),
        ("rereads", json!(position.rereads)),
        ("swelling", json!(position.swelling)),
        ("height_sign", json!(position.height_sign)),
        ("family", json!(position.family)),
        ("open_minutes", json!(position.open_minutes)),
        ("after", json!(position.after)),
        ("alone_minutes", json!(position.alone_minutes)),
        ("open_how", json!(position.open_how)),
        ("cases", if builds.is_empty() { Value::Null } else { json!(builds) }),
        ("note", json!(position.note)),
    ])
}

fn build(build: &Build) -> Value {
    object(&[
        ("when", json!(build.when)),
        ("mesh_sign", json!(build.mesh_sign)),
        ("setting_sign", json!(build.setting_sign)),
        ("thicker", json!(build.thicker)),
        ("controls", json!(build.controls)),
        ("meshes", json!(build.meshes)),
        ("settings", json!(build.settings)),
        ("rereads", json!(build.rereads)),
        ("note", json!(build.note)),
    ])
}

#[test]
fn every_field_of_every_position() {
    let data = data();
    let layouts: Vec<Value> = LAYOUTS.iter().map(|one| layout(one)).collect();
    assert_eq!(json!(layouts), data["layouts"]);
    let mut slots = Vec::new();
    let mut positions = Vec::new();
    for layout in LAYOUTS {
        slots.extend(layout.slots.iter().map(|one| slot(layout, one)));
        positions.extend(layout.positions.iter().map(|one| position(layout, one)));
    }
    let by_id = |list: &[Value]| {
        let mut list = list.to_vec();
        list.sort_by_key(|one| one["id"].as_str().unwrap().to_owned());
        list
    };
    assert_eq!(by_id(&slots), by_id(data["slots"].as_array().unwrap()));
    for (found, expected) in
        by_id(&positions).iter().zip(by_id(data["positions"].as_array().unwrap()))
    {
        assert_eq!(*found, expected);
    }
    assert_eq!((slots.len(), positions.len()), (22, 37));
}

#[test]
fn everything_that_is_named_exists() {
    for layout in LAYOUTS {
        for slot in layout.slots {
            for member in slot.members {
                assert_eq!(layout.position(member).unwrap().slot, slot.id);
            }
        }
        for step in layout.order {
            assert!(step.slot.is_none_or(|slot| layout.slot(slot).is_some()));
        }
        for position in layout.positions {
            assert!(layout.slot(position.slot).unwrap().members.contains(&position.id));
            assert!(position.after.iter().all(|id| layout.position(id).is_some()));
            assert!(position.meshes.iter().all(|mesh| layout.meshes.contains(mesh)));
            assert!(position.settings.iter().all(|one| layout.settings.contains(one)));
            assert_eq!(position.mesh_sign == 0, position.meshes.is_empty(), "{}", position.id);
            assert_eq!(position.setting_sign == 0, position.settings.is_empty(), "{}", position.id);
            assert!(position.open_minutes <= position.alone_minutes);
        }
        assert_eq!(Layout::find(layout.id), Some(layout));
    }
    assert_eq!(Layout::find("f"), None);
}

/// The swelling sentence says the way that the signs say.
#[test]
fn the_sentence_agrees_with_the_signs() {
    for position in LAYOUTS.iter().flat_map(|layout| layout.positions) {
        let says = |words: &[&str]| words.iter().any(|word| position.swelling.contains(word));
        assert_eq!(position.mesh_sign == 1, says(&[" IN to", " IN,", " IN:"]), "{}", position.id);
        assert_eq!(
            position.mesh_sign == -1,
            says(&[" OUT of", " OUT,", " OUT:"]),
            "{}",
            position.id
        );
        match position.setting_sign {
            1 => assert!(
                says(&["tighten", "less end play", "squeezed", "tighter"]),
                "{}",
                position.id
            ),
            -1 => assert!(says(&["loosen", "looser", "more end play"]), "{}", position.id),
            _ => {}
        }
    }
}
