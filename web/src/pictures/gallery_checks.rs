//! The pictures of the bench checks, for the builders' page. The numbers are invented.

use pictures::fit::{State, draw};
use pictures::left_over::LeftOver;
use pictures::offset_tool::OffsetTool;
use pictures::turn::Turn;

use super::drawing::Drawing;

/// The offset head at five angles and one long head, the turn after it, a race cold and warm, and what
/// is left of a turn.
pub fn checks() -> Vec<Drawing> {
    let tool = |head: f64, angle: f64| {
        let words =
            ["400 mm".to_owned(), format!("{} mm", head as u32), format!("{}°", angle as u32)];
        OffsetTool { wrench: 400.0, head, angle, words }.draw()
    };
    let state = |when: &str, gap, size: &str| State { when: when.into(), gap, size: size.into() };
    let states = [
        state("20 °C", -0.04, "0.040 mm"),
        state("90 °C", 0.068, "0.068 mm"),
        state("80 °C", -0.002, "0.002 mm"),
    ];
    let bars = [0.004, -0.004, 0.001, 0.002, -0.004, 0.003, -0.001, -0.001];
    let hours = ["12 h", "1:30", "3 h", "4:30", "6 h", "7:30", "9 h", "10:30"];
    let bars = bars.into_iter().zip(hours).enumerate();
    let bars = bars.map(|(at, (left, hour))| (45.0 * at as f64, left, hour.to_owned())).collect();
    let mut all: Vec<Drawing> =
        [0.0, 45.0, 90.0, 135.0, 180.0].into_iter().map(|angle| tool(60.0, angle)).collect();
    all.extend([
        tool(380.0, 120.0),
        Turn { marks: vec![40.0, 80.0] }.draw(),
        draw(&states),
        LeftOver { bars, most: "0.004 mm".to_owned() }.draw(),
    ]);
    all
}
