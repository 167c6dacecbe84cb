//! End play, preload and what heat does to them. Own arithmetic on the formulae; their idea is that of
//! D. Novak, "Setting Techniques for Tapered Roller Bearings".

use measure::{Decimal, Unit, Verdict};
use workshop::fit::{BEARING_STEEL, CAST_ALUMINIUM};
use workshop::setting::{Answer, Mounting, PushPull, Row, end_play, pack, warmed};
use workshop::{Limits, Reading};

use crate::{amount, assert_close, assert_figure, exact, refused, sure};

fn mm(text: &str) -> Reading {
    sure(text, Unit::Millimetre)
}

#[test]
fn end_play_is_the_mean_difference() {
    let reading = |pushed, pulled| PushPull {
        pushed: mm(pushed).within(0.003),
        pulled: mm(pulled).within(0.003),
    };
    let readings = [reading("0.02", "0.12"), reading("0.02", "0.13"), reading("0.01", "0.12")];
    let limits =
        Limits::between(amount("0.05", Unit::Millimetre), amount("0.15", Unit::Millimetre));
    let Answer { figure: play, judgement: judged, .. } = end_play(&readings, &limits).unwrap();
    assert_figure(&play, 0.32 / 3.0, 1e-9);
    // √(0.003²·2 + s²/3), s = 0.005774 of 0.10 0.11 0.11, by hand.
    assert_close(play.standard(), (1.8e-5f64 + 1e-4 / 3.0 / 3.0).sqrt(), 1e-9);
    assert_eq!(judged.unwrap().verdict, Verdict::InBand);
    refused(end_play(&[], &limits), "Push and pull: found 0, expected 1 to 99; read that many.");
}

/// t = t₀ + p·(E₀ + P): a 1.00 pack with 0.20 of play, 0.05 of preload wanted.
#[test]
fn the_sign_is_the_positions() {
    let found = |sign| pack(&mm("1.00"), &mm("0.20"), &mm("-0.05"), sign);
    assert_eq!(found(1).unwrap().figure.value, exact("1.25"));
    assert_eq!(found(-1).unwrap().figure.value, exact("0.75"));
    refused(found(0), "Setting sign: found 0, expected -1 to 1; read it again.");
    refused(
        pack(&mm("1"), &mm("0"), &mm("-0.05"), 1),
        "End play: found 0 mm, expected more than zero; measure it again.",
    );
}

/// Aluminium 21.5e-6, steel 12.0e-6, 60 K: the axial part of L = 90 mm is 0.0513 mm, the radial part of
/// a 62 mm cup of 14° is 0.07087 mm.
#[test]
fn heat_moves_a_setting() {
    let materials = [&CAST_ALUMINIUM, &BEARING_STEEL];
    let rise = Decimal::from(60);
    let row = Row { cup: mm("62"), half_angle: sure("14", Unit::Degree) };
    let moved = |rows: &[Row], spread, mounting| {
        warmed(rows, &mm(spread), mounting, materials, rise).unwrap().figure
    };
    assert_figure(&moved(&[], "90", Mounting::LongerLoosens), 0.0513, 1e-9);
    assert_figure(&moved(&[], "90", Mounting::LongerTightens), -0.0513, 1e-9);
    assert_figure(&moved(&[row], "0", Mounting::LongerLoosens), 0.07087, 5e-6);
    assert_figure(
        &moved(&[row, row], "90", Mounting::LongerTightens),
        2.0 * 0.07087 - 0.0513,
        1e-5,
    );
    assert!(moved(&[row], "0", Mounting::LongerLoosens).standard() > 0.0);
    let flat = Row { half_angle: sure("90", Unit::Degree), ..row };
    refused(
        warmed(&[flat], &mm("0"), Mounting::LongerLoosens, materials, rise),
        "Cup half-angle: found 90 °, expected 0 to 90 °; read it again.",
    );
}
