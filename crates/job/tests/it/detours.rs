//! The same unit where the main job does not go straight: other arms, turned signs, short tins,
//! readings that disagree. Expected numbers are worked out as in `main_job`.

use job::*;
use measure::{Mark, Unit};

use crate::bench::{TEN, dec, shown};
use crate::main_job::{read, ready};

#[test]
fn a_pack_alone_shows_its_slope() {
    let mut bench = read();
    let (.., tin) = bench.state();
    let shim = tin.rows("forward race").into_iter().find(|row| row.net == dec("0.30")).unwrap();
    let pack = vec![
        FittedShim::Measured(crate::bench::mm("0.40")),
        tin.shim(&shim.shim).unwrap().for_pack(),
    ];
    bench.fit(&[(Slot::B2, pack)]).unwrap();
    let setup = bench.setup();
    let stale: Vec<bool> =
        setup.checks.iter().map(|view| matches!(view.state, CheckState::Stale { .. })).collect();
    assert_eq!(stale, [false, true, false], "B2 touches forward lash only");
    // 0.150 mm more at B2 takes 0.9243 · 0.15 = 0.1387 off 0.5620.
    bench.read(Check::FORWARD, &["0.42", "0.43", "0.42", "0.42"]);
    let trials = &bench.setup().trials[1];
    // Seen (0.4225 − 0.561975)/0.15 = −0.93.
    assert_eq!(
        trials.says,
        "From 1 to 2: 0.93 mm lash per mm of shim. Expected 0.92. Sign agrees."
    );
}

#[test]
fn a_reading_that_disagrees_raises_the_alarm() {
    let mut bench = read();
    bench.fit_advice();
    bench.read(Check::Depth, &["0.66", "0.66", "0.66"]);
    // Predicted 0.3919 ± 0.034; as if B2 pushed the other way: 0.3919 + 2 · 0.1387.
    let texts = ["0.67", "0.67", "0.67", "0.67"];
    assert_eq!(bench.preview(Check::FORWARD, &texts).dock.words(), "Disagrees: see causes");
    bench.read(Check::FORWARD, &texts);
    bench.read(Check::REVERSE, &["0.64", "0.65", "0.64", "0.64"]);
    let setup = bench.setup();
    let alarm = setup.advice.alarm.unwrap();
    assert_eq!(alarm.check, Check::FORWARD);
    assert_eq!(
        alarm.says,
        "Leave the shims alone. Forward backlash reads 0.28 more than the packs explain. Check in \
         this order:"
    );
    assert!(alarm.causes[0].says.starts_with("B2 pushes the other way."), "{:?}", alarm.causes);
    assert_eq!(setup.next, NextAct::SeeCauses(Check::FORWARD));
    assert!(setup.checks[1].disagrees && !setup.checks[0].disagrees);
}

#[test]
fn on_another_arm_band_prediction_and_reading_move_together() {
    let mut bench = read();
    bench.fit_advice();
    // Predicted 0.3919 at 30 mm, so 0.2613 at 20 mm; the band 0.20 to 0.35 at 22 is 0.182 to 0.318.
    let (job, sheet, tin) = bench.state();
    let state = (&job, &sheet, &tin);
    let texts = ["0.26"; 4];
    let preview =
        preview(state, Check::FORWARD, &texts, Unit::Millimetre, Some("20.0"), Shown::default());
    let band = preview.band.unwrap();
    assert_eq!([shown(band.low(), 3), shown(band.high(), 3)], ["0.182", "0.318"]);
    assert_eq!(shown(preview.predicted.unwrap().mean, 4), "0.2613");
    assert_eq!(preview.dock, Dock::Keep { readings: 4 });
    bench.record(vec![(bench.job.id().clone(), preview.fact.unwrap())]).unwrap();
    let view = bench.check(Check::FORWARD);
    assert_eq!((view.arm, view.disagrees), (Some(dec("20.0")), false));
    assert_eq!(view.state, CheckState::InBand);
    // In the trials it is carried back to the sheet's arm: 0.26 · 30/20 = 0.39.
    let points = &bench.setup().trials[1].points;
    assert_eq!(shown(points[1].reading, 3), "0.390");
}

#[test]
fn an_arm_on_the_propshaft_with_two_gears_of_different_teeth() {
    let mut bench = read();
    bench.type_fields(&[(Field::ArmShaft, "propshaft")]);
    assert_eq!(bench.setup().advice.status, AdviceStatus::Fit, "equal teeth turn it alike");
    bench.type_fields(&[(Field::Teeth(Mesh::Reverse), "24")]);
    let setup = bench.setup();
    assert_eq!(setup.advice.status, AdviceStatus::MoveArm);
    assert_eq!(
        setup.advice.says,
        "The arm is on the propshaft and the gears have different teeth. Put the arm on the \
         driveshaft."
    );
    assert_eq!(setup.next, NextAct::MoveArm);
}

#[test]
fn a_sign_that_a_person_turned_turns_words_and_advice() {
    let mut bench = read();
    let reason = "pack lies in front of the gear".to_owned();
    let fact = Fact::SignOverridden { position: "B2".into(), reason };
    bench.record(vec![(bench.sheet.id().clone(), fact)]).unwrap();
    let (job, sheet, tin) = bench.state();
    let says = what_if((&job, &sheet, &tin), Slot::B2, dec("0.10"), Shown::default()).says;
    assert_eq!(says, "gear forward 0.100, lash grows 0.09");
    let pack = bench.setup().advice.packs.into_iter().find(|pack| pack.slot == Slot::B2).unwrap();
    assert!(pack.total < pack.now, "forward lash is above its band, so the pack must be thinner");
}

#[test]
fn what_no_shim_cures_is_read_again() {
    let mut bench = read();
    bench.fit_advice();
    bench.read(Check::Depth, &["0.66", "0.66", "0.66"]);
    // Mean 0.385 in band, one place under 0.2727.
    bench.read(Check::FORWARD, &["0.26", "0.42", "0.43", "0.43"]);
    bench.read(Check::REVERSE, &["0.64", "0.65", "0.64", "0.64"]);
    let setup = bench.setup();
    assert_eq!(setup.checks[1].state, CheckState::TightSpot);
    assert_eq!(setup.next, NextAct::ReadAgain(Check::FORWARD));
    assert_eq!(setup.advice.status, AdviceStatus::ReadFirst);
    assert_eq!(
        setup.checks[1].says,
        "The tightest place is below the band: look for runout or a cocked race."
    );
    let (job, sheet, _) = bench.state();
    assert_eq!(next_act(&job, &sheet, Shown::default()), setup.next);
    let draft = record(&job, &sheet, None, Shown::default()).draft;
    assert_eq!(draft, ["Forward backlash has a tight spot."]);
}

#[test]
fn near_a_limit_it_is_read_again_and_then_kept() {
    let mut bench = read();
    bench.fit_advice();
    // u = 0.0033 for three alike to 0.01: 0.676667 is 1.0 u from 0.68.
    let near = ["0.68", "0.67", "0.68"];
    assert_eq!(bench.preview(Check::Depth, &near).dock, Dock::NearReadAgain);
    bench.read(Check::Depth, &near);
    assert_eq!(bench.check(Check::Depth).state, CheckState::NearLimit);
    assert_eq!(bench.preview(Check::Depth, &near).dock, Dock::KeepAndSee, "once is enough");
}

#[test]
fn thicknesses_finer_than_a_micrometer_do_not_stop_the_advice() {
    let mut bench = read();
    let (job, ..) = bench.state();
    let found = pack_preview(
        &job,
        Slot::B1,
        &["0.01968 in", "0.00391 in"],
        Unit::Millimetre,
        Shown::default(),
    );
    bench.record(vec![found.fact.unwrap()]).unwrap();
    // 0.01968 in = 0.499872 mm and 0.00391 in = 0.099314 mm, each to five places.
    let (job, ..) = bench.state();
    assert_eq!(job.pack(Slot::B1).unwrap().total(), dec("0.59918"));
    assert_eq!(bench.setup().advice.status, AdviceStatus::Fit);
}

#[test]
fn a_shim_without_a_unit_takes_the_one_its_pack_names() {
    let bench = read();
    let (job, ..) = bench.state();
    let total = |texts: &[&str]| {
        let found = pack_preview(&job, Slot::B1, texts, Unit::Millimetre, Shown::default());
        (found.total.normalize(), found.fact.is_some())
    };
    // 1 in = 25.4 mm exactly.
    assert_eq!(total(&["0.50", "0.10"]), (dec("0.6"), true));
    assert_eq!(total(&["0.020", " 0.010 in"]), (dec("0.762"), true));
    assert_eq!(total(&["0.020 in ", " 0.010"]), (dec("0.762"), true));
    // Two are named: digits alone mean what they mean on the bench.
    assert_eq!(total(&["0.010 in", "0.5 mm", "0.1"]), (dec("0.854"), true));
}

#[test]
fn the_tin_that_cannot_do_it_says_what_to_buy() {
    let mut bench = read();
    let shims: Vec<String> = bench.state().2.shims().map(|shim| shim.id.clone()).collect();
    let lost = |shim: String| {
        let fact = Fact::ShimsCounted { shim, change: -1, why: Counted::Lost };
        (BookId::Tin, fact)
    };
    bench.record(shims.into_iter().map(lost).collect()).unwrap();
    let setup = bench.setup();
    assert_eq!(setup.advice.status, AdviceStatus::StockShort);
    assert_eq!(setup.advice.headline, "The tin cannot do it");
    assert!(setup.advice.buy.iter().all(|says| says.starts_with("Buy or borrow 1 of 0.")));
    assert!(
        setup.advice.buy.iter().any(|says| says.ends_with(" mm for B1.")),
        "{:?}",
        setup.advice.buy
    );
    assert_eq!(setup.next, NextAct::FillTin);
}

#[test]
fn in_inches_with_a_comma_everything_is_said_in_inches() {
    let bench = read();
    let (job, sheet, tin) = bench.state();
    let inches =
        Shown { units: Units::default().with(Unit::Inch), mark: Mark::Comma, utc_offset: 0 };
    let setup = setup(&job, &sheet, &tin, inches);
    // 0.10 mm = 0.0039 in, 0.151 mm = 0.0059 in.
    assert_eq!(setup.advice.packs[0].says, "Take out 0,0039. Put in 0,0059, in the tin.");
    let texts = ["0,0150"; 4];
    let preview = preview((&job, &sheet, &tin), Check::FORWARD, &texts, Unit::Inch, None, inches);
    assert_eq!(preview.judged.unwrap().mean, dec("0.3810"));
}

#[test]
fn end_play_waits_for_reverse_and_spares_the_other_packs() {
    let mut bench = read();
    bench.type_fields(&[
        (Field::Low(Check::END_PLAY), "0.10"),
        (Field::High(Check::END_PLAY), "0.30"),
    ]);
    assert_eq!(bench.setup().advice.headline, "Packs first");
    let (job, ..) = bench.state();
    let washer = pack_preview(&job, Slot::B4, &["1.10"], Unit::Millimetre, Shown::default());
    bench.record(vec![washer.fact.unwrap()]).unwrap();
    // Reverse is in band, so end play is open.
    assert_eq!(bench.check(Check::END_PLAY).state, CheckState::Open);
    assert_eq!(bench.setup().advice.headline, "Read end play first");
    bench.read(Check::END_PLAY, &["0.20", "0.21", "0.20"]);
    assert_eq!(bench.check(Check::END_PLAY).state, CheckState::InBand);
    bench.fit_advice();
    assert_eq!(bench.check(Check::END_PLAY).state, CheckState::InBand, "B1 to B3 do not touch it");
}

#[test]
fn end_play_is_locked_while_reverse_is_not_in_band() {
    let mut bench = ready();
    bench.type_fields(&[
        (Field::Low(Check::END_PLAY), "0.10"),
        (Field::High(Check::END_PLAY), "0.30"),
    ]);
    assert_eq!(
        bench.check(Check::END_PLAY).state,
        CheckState::Locked { opens: "Opens when reverse is in band.".into() }
    );
}

#[test]
fn prints_when_it_was_opened() {
    let (job, sheet, _) = ready().state();
    assert!(job.opened_at > TEN);
    assert_eq!(record(&job, &sheet, None, Shown::default()).opened, "12 May 2026");
}
