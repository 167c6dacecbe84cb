//! Torque wrench with an offset head: US Army TM 9-254, torque wrench section, figure 46; 80 N·m, 40 cm,
//! 5 cm → 71.1 is a public worked example, the other angles were run from the same formula.

use measure::{Decimal, Unit};
use workshop::torque::{OffsetTool, Threads, at_fastener, break_out, examine, torque_and_angle};
use workshop::{Caution, Reading};

use crate::{assert_close, assert_figure, exact, refused, sure};

fn tool(wrench: &str, head: &str, angle: &str) -> OffsetTool {
    OffsetTool {
        wrench: sure(wrench, Unit::Millimetre),
        head: sure(head, Unit::Millimetre),
        angle: sure(angle, Unit::Degree),
    }
}

fn newton_metre(text: &str) -> Reading {
    sure(text, Unit::NewtonMetre)
}

#[test]
fn worked_angles() {
    let cases = [
        ("80", "400", "50", "0", 71.1111),
        ("80", "400", "50", "45", 73.5032),
        ("80", "400", "50", "90", 80.0),
        ("80", "400", "50", "135", 87.7567),
        ("80", "400", "50", "180", 91.4286),
        ("100", "180", "60", "0", 75.0),
    ];
    for (torque, wrench, head, angle, expected) in cases {
        let tool = tool(wrench, head, angle);
        let found =
            examine(&[newton_metre(torque)], Some(&tool), Threads::Dry, Threads::Dry).unwrap();
        assert_figure(&found.set[0], expected, 1e-4);
        let back = Reading::exact(found.set[0].value, Unit::NewtonMetre);
        let at = at_fastener(&back, Some(&tool)).unwrap();
        assert_close(measure::real::from_decimal(at.value), torque.parse().unwrap(), 1e-9);
    }
    // T 100, L 400, E 60: 87.0 at 0°, 90.4 at 45°, 100 at 90°, 117.6 at 180° (own arithmetic).
    for (angle, expected) in [("0", 87.0), ("45", 90.4), ("90", 100.0), ("180", 117.6)] {
        let tool = tool("400", "60", angle);
        let found =
            examine(&[newton_metre("100")], Some(&tool), Threads::Dry, Threads::Dry).unwrap();
        assert_figure(&found.set[0], expected, 0.05);
    }
}

/// 60, 120, 200 N·m with 400 and 60 mm at 45°: 54, 108.5, 181 on the wrench (own arithmetic).
#[test]
fn stages_in_order() {
    let stages = ["60", "120", "200"].map(newton_metre);
    let found =
        examine(&stages, Some(&tool("400", "60", "45")), Threads::Dry, Threads::Oil).unwrap();
    let shown: Vec<_> = found.set.iter().map(|set| measure::round(set.value, 1)).collect();
    assert_eq!(shown, [exact("54.2"), exact("108.5"), exact("180.8")]);
    assert!(found.cautions.contains(&Caution::ThreadsDiffer));
    refused(
        examine(&["60", "60"].map(newton_metre), None, Threads::Dry, Threads::Dry),
        "Stage: found 60 N·m, expected more than the stage before it, 60 N·m; write the stages in rising order.",
    );
    refused(
        examine(&[], None, Threads::Dry, Threads::Dry),
        "Stages: found 0, expected 1 to 9; read that many.",
    );
}

#[test]
fn without_a_tool_nothing_changes() {
    let found =
        examine(&[sure("25", Unit::PoundForceFoot)], None, Threads::Oil, Threads::Oil).unwrap();
    // 25 lbf·ft = 33.895449 N·m (scipy.constants 1.17.1).
    assert_figure(&found.set[0], 33.895449, 1e-6);
    assert_eq!(found.cautions, [Caution::WrenchSlips]);
}

/// 5 mm of doubt in L = 400 with E = 60 straight ahead: 100·60·5/460² = 0.1418 N·m, by hand.
#[test]
fn doubt_in_the_lever_is_doubt_in_the_setting() {
    let mut tool = tool("400", "60", "0");
    tool.wrench = tool.wrench.within(5.0);
    let found = examine(&[newton_metre("100")], Some(&tool), Threads::Dry, Threads::Dry).unwrap();
    assert_close(found.set[0].standard(), 0.1418, 1e-4);
}

#[test]
fn no_lever_is_refused() {
    let lever = |wrench, head, angle| {
        examine(&[newton_metre("80")], Some(&tool(wrench, head, angle)), Threads::Dry, Threads::Dry)
    };
    refused(
        lever("60", "60", "180"),
        "Lever: found L + E·cos a = 0 mm, expected more than zero; turn the head forward or take a longer wrench.",
    );
    refused(
        lever("50", "60", "180"),
        "Lever: found L + E·cos a = -10 mm, expected more than zero; turn the head forward or take a longer wrench.",
    );
    refused(
        lever("400", "60", "200"),
        "Head angle: found 200 °, expected 0 to 180 °; read it again.",
    );
}

#[test]
fn snug_then_degrees() {
    let degrees = |text| sure(text, Unit::Degree);
    let turn = torque_and_angle(&newton_metre("40"), &[degrees("40"), degrees("40")]).unwrap();
    assert_eq!((turn.total, turn.marks), (Decimal::from(80), vec![exact("40"), exact("80")]));
    assert_eq!(turn.caution, Caution::AngleNeedsSnug);
    refused(
        torque_and_angle(&newton_metre("0"), &[degrees("40")]),
        "Snug torque: found 0 N·m, expected more than zero; measure it again.",
    );
    assert_figure(&break_out(&newton_metre("90"), &newton_metre("120")).unwrap(), 75.0, 1e-9);
}
