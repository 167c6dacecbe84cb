//! Layout (e): single reduction, preloaded taper pairs on both shafts.

use super::{Build, Choose, Layout, Position, Slot, Step};

pub(super) static LAYOUT: Layout = Layout {
    id: "e",
    name: "Single reduction, preloaded taper pairs on both shafts",
    meshes: &["main"],
    settings: &["pinion pair", "propshaft"],
    order: &[
        Step { slot: Some("E2"), check: "pinion preload", step: "e31", note: None },
        Step {
            slot: Some("E1"),
            check: "depth",
            step: "e32",
            note: Some("E1 behind a race: change E2 by the same amount and prove preload again"),
        },
        Step {
            slot: Some("E3"),
            check: "backlash and preload together",
            step: "e34",
            note: Some("gear IN by x: plus x at E3, minus x at E4"),
        },
        Step {
            slot: Some("E4"),
            check: "backlash and preload together",
            step: "e34",
            note: Some("preload up by y: half y on each side"),
        },
        Step { slot: None, check: "pattern, where asked", step: "e35", note: None },
        Step { slot: None, check: "freeze", step: "e36", note: None },
    ],
    slots: &[
        Slot {
            id: "E1",
            members: &["E1", "E1b"],
            choose: Choose::One,
            may_be_absent: false,
            ask: "Does the depth pack lie behind a race, or under the cartridge flange?",
        },
        Slot {
            id: "E2",
            members: &["E2"],
            choose: Choose::One,
            may_be_absent: false,
            ask: "Is the part between the pinion cones a solid spacer, a spacer with \
                shims, or a crush sleeve?",
        },
        Slot {
            id: "E3",
            members: &["E3"],
            choose: Choose::One,
            may_be_absent: false,
            ask: "Which end holds the race behind the gear: nose or carrier?",
        },
        Slot {
            id: "E4",
            members: &["E4"],
            choose: Choose::One,
            may_be_absent: false,
            ask: "Which end holds the race on the face side of the gear: nose or carrier?",
        },
    ],
    positions: POSITIONS,
};

static POSITIONS: &[Position] = &[
    Position {
        id: "E1",
        slot: "E1",
        between: [
            "housing shoulder, on the side away from the gear",
            "inner pinion race, on the gear's side of it",
        ],
        moves: "pinion",
        thicker: "pinion toward the gear",
        thinner: "pinion away from the gear",
        mesh_sign: 1,
        setting_sign: 1,
        controls: &["depth"],
        meshes: &["main"],
        settings: &["pinion pair"],
        rereads: &["depth", "pinion preload", "backlash", "total rolling torque"],
        swelling: "Picture the pack growing. The shoulder behind the race stands still, so the \
            race, its cone and the pinion go toward the gear, IN: the depth gap closes, \
            lash falls. The pair's two races go apart against fixed cones: tighter.",
        height_sign: 1,
        family: "pinion race",
        open_minutes: 20,
        after: &["E2", "E4"],
        alone_minutes: 70,
        open_how: "Ring, carrier and propshaft out, pinion pair out and stripped, race pulled \
            hot and seated again",
        builds: &[Build {
            when: "the cones are not held at a fixed distance: a crush sleeve is set \
                    afresh after every change",
            mesh_sign: 1,
            setting_sign: 0,
            thicker: None,
            controls: None,
            meshes: None,
            settings: Some(&[]),
            rereads: Some(&["depth", "backlash", "total rolling torque"]),
            note: None,
        }],
        note: Some(
            "Solid spacer: change E1 by x and E2 by plus x to keep preload. Gear behind \
            the pinion: read E3 for E4 in what comes apart first.",
        ),
    },
    Position {
        id: "E1b",
        slot: "E1",
        between: ["case face", "flange of the pinion cartridge, outside it"],
        moves: "pinion",
        thicker: "pinion away from the gear",
        thinner: "pinion toward the gear",
        mesh_sign: -1,
        setting_sign: 0,
        controls: &["depth"],
        meshes: &["main"],
        settings: &[],
        rereads: &["depth", "backlash"],
        swelling: "Picture the pack growing. The case stands still, so the flange, the \
            cartridge and the pinion go outward, OUT of the gear: the depth gap opens, \
            lash grows. The pair inside the cartridge does not notice.",
        height_sign: -1,
        family: "cartridge flange",
        open_minutes: 15,
        after: &["E4"],
        alone_minutes: 40,
        open_how: "Propshaft out where the pinion cannot pass it; cartridge unbolted and lifted",
        builds: &[],
        note: Some(
            "Gear behind the pinion: read E3 for E4 in what comes apart first. Where the \
            cartridge lifts past the gear nothing comes apart first.",
        ),
    },
    Position {
        id: "E2",
        slot: "E2",
        between: ["inner pinion cone", "outer pinion cone"],
        moves: "pinion cones",
        thicker: "cones apart",
        thinner: "cones together",
        mesh_sign: 0,
        setting_sign: -1,
        controls: &["preload"],
        meshes: &[],
        settings: &["pinion pair"],
        rereads: &["pinion preload", "depth", "backlash"],
        swelling: "Picture the spacer growing. The nut can no longer pull the two cones so \
            close together over their races: looser. The pinion stays on its inner race.",
        height_sign: -1,
        family: "pinion spacer",
        open_minutes: 20,
        after: &["E1b", "E4"],
        alone_minutes: 60,
        open_how: "Propshaft out, pinion unit out, nut off, outer cone drawn",
        builds: &[],
        note: Some(
            "Under preload the pinion creeps IN by about half the change when the spacer \
            grows: that is why preload comes before depth.",
        ),
    },
    Position {
        id: "E3",
        slot: "E3",
        between: ["case or carrier shoulder", "race behind the driven gear"],
        moves: "driven gear",
        thicker: "gear IN",
        thinner: "gear OUT",
        mesh_sign: 1,
        setting_sign: 1,
        controls: &["backlash", "preload"],
        meshes: &["main"],
        settings: &["propshaft"],
        rereads: &["backlash", "total rolling torque"],
        swelling: "Picture the pack growing. The shoulder stands still, so the race behind the \
            gear pushes cone and gear toward the pinion, IN: lash falls. The other race \
            holds from the face side: tighter.",
        height_sign: 1,
        family: "gear race, back side",
        open_minutes: 25,
        after: &["E4"],
        alone_minutes: 50,
        open_how: "Ring, carrier and propshaft out, race pulled hot and seated again",
        builds: &[],
        note: Some(
            "With end play and the gear lying on this race, as the mesh pushes it: full \
            effect. Under preload about half, the rest goes into preload. Gear behind \
            the pinion: this pack is at the carrier end and opens first, at E4's cost.",
        ),
    },
    Position {
        id: "E4",
        slot: "E4",
        between: ["case or carrier shoulder", "race on the face side of the driven gear"],
        moves: "driven gear",
        thicker: "gear OUT",
        thinner: "gear IN",
        mesh_sign: -1,
        setting_sign: 1,
        controls: &["backlash", "preload"],
        meshes: &["main"],
        settings: &["propshaft"],
        rereads: &["backlash", "total rolling torque"],
        swelling: "Picture the pack growing. The shoulder stands still, so the race on the face \
            side pushes cone and gear away from the pinion, OUT: lash grows. The other \
            race holds from behind: tighter.",
        height_sign: 1,
        family: "gear race, face side",
        open_minutes: 25,
        after: &[],
        alone_minutes: 25,
        open_how: "Ring and carrier out, race drawn out of the carrier and seated again",
        builds: &[],
        note: Some(
            "With end play and the gear lying on the race behind it: moves no mesh, only \
            the play. Under preload about half, the rest goes into preload. Gear behind \
            the pinion: ahead thrust can seat the shaft on this race, so write which \
            race it lay on; this pack is then at the nose and costs what E3 costs.",
        ),
    },
];
