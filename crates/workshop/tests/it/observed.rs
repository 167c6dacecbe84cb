//! What is looked at more than calculated: seals, land, lube, tooth print, locker, corrosion.
//! Common practice, no source, unless a comment says otherwise.

use measure::{Decimal, Unit, Verdict};
use workshop::corrosion::{Anode, AnodeAdvice, Cell, anode, cell};
use workshop::land::{Land, examine as land};
use workshop::locker::{Joint, Metal as Thread, State};
use workshop::lube::{Drain, Fill, Meaning, Metal, PercentLimits, Water, drained};
use workshop::pattern::{Advice, Family, Height, Length, Print, Seen, read};
use workshop::seal::{Direction, LipCheck, Toward};
use workshop::{Caution, Limits, Reading};

use crate::{amount, exact, refused, sure};

#[test]
fn a_lip_follows_the_manual_then_the_photo() {
    let check = |as_found, manual, fitted| Direction { as_found, manual }.check(fitted);
    let (oil, water) = (Toward::Oil, Toward::Water);
    assert_eq!(check(None, None, oil), LipCheck::Unknown);
    assert_eq!(check(Some(oil), None, oil), LipCheck::AsRecorded);
    assert_eq!(check(Some(oil), None, water), LipCheck::Reversed);
    assert_eq!(check(Some(water), Some(oil), oil), LipCheck::RecordsDiffer);
    assert_eq!(check(Some(water), Some(oil), water), LipCheck::Reversed);
}

#[test]
fn a_track_is_never_above_its_land() {
    let mm = |text| sure(text, Unit::Millimetre);
    let worn =
        Land { sound: mm("30"), worn: mm("30.1"), nail_catches: false, limits: Limits::default() };
    refused(
        land(&worn),
        "Sound land: found 30 mm, expected more than the worn track, 30.1 mm; measure both again, or swap them.",
    );
}

fn fill(millilitres: &str) -> Fill {
    Fill {
        volume: sure(millilitres, Unit::Millilitre).within(7.0),
        rated: sure("22.5", Unit::UsFluidOunce),
        limits: PercentLimits { low: exact("95"), high: exact("105") },
        rested: amount("30", Unit::Minute),
        rest: amount("20", Unit::Minute),
    }
}

/// 22.5 US fl oz = 665.404415 mL (scipy.constants 1.17.1).
#[test]
fn a_fill_is_read_once_it_rests() {
    let meaning = |fill: &Fill| workshop::lube::examine(fill).unwrap().meaning;
    assert_eq!(meaning(&fill("665")), Meaning::AsRated);
    assert_eq!(meaning(&fill("560")), Meaning::AirPocketOrPlug);
    assert_eq!(meaning(&fill("760")), Meaning::LeftInOrOtherModel);
    assert_eq!(meaning(&fill("634")), Meaning::ReadAgain);
    let early = Fill { rested: amount("5", Unit::Minute), ..fill("665") };
    let answer = workshop::lube::examine(&early).unwrap();
    assert_eq!((answer.meaning, answer.left_to_rest), (Meaning::StillResting, Decimal::from(900)));
    let swapped = Fill { limits: PercentLimits { low: exact("105"), high: exact("95") }, ..early };
    refused(
        workshop::lube::examine(&swapped),
        "Fill limits: Low 105 is above high 95. Read the page again, or swap them.",
    );
}

#[test]
fn water_and_metal_stop_the_unit() {
    assert_eq!(drained(Water::None, Metal::Paste).0, Drain::Common);
    assert_eq!(drained(Water::FrothedAfterRun, Metal::None).0, Drain::LetStand);
    for water in [Water::Settled, Water::Milky] {
        let (what, cautions) = drained(water, Metal::None);
        assert_eq!(what, Drain::FindTheWay);
        assert!(cautions.contains(&Caution::DoNotRun));
    }
    assert_eq!(drained(Water::None, Metal::Chunks).0, Drain::Strip);
}

fn seen(drive: Height, coast: Height, along: [Length; 2]) -> Seen {
    let [first, second] = along;
    Seen {
        family: Family::Unknown,
        drive: Print { height: drive, length: first },
        coast: Print { height: coast, length: second },
        used: false,
    }
}

/// Height: public ring-and-pinion guidance, and an independent contact model (signs only): pinion out
/// raises the print on both flanks, pinion in lowers it, straight and spiral.
#[test]
fn only_the_height_advises() {
    const ALONG: [Length; 3] = [Length::Toe, Length::Middle, Length::Heel];
    for first in ALONG {
        for second in ALONG {
            let advice = |drive, coast| read(&seen(drive, coast, [first, second])).advice;
            assert_eq!(advice(Height::Tip, Height::Tip), Advice::PinionIn);
            assert_eq!(advice(Height::Root, Height::Root), Advice::PinionOut);
            assert_eq!(advice(Height::Tip, Height::Root), Advice::PrintAgain);
            // Never a move from toe or heel.
            let lengthwise = advice(Height::Middle, Height::Middle);
            assert!(
                matches!(lengthwise, Advice::Leave | Advice::LookAtTheShafts),
                "{lengthwise:?}"
            );
        }
    }
    let used = Seen { used: true, ..seen(Height::Tip, Height::Tip, [Length::Heel, Length::Toe]) };
    assert_eq!(read(&used).advice, Advice::AimForOldPrint);
    assert!(read(&used).cautions.contains(&Caution::UsedGears));
}

#[test]
fn locker_waits_for_its_label() {
    let joint = Joint {
        clean: true,
        metal: Thread::Passive,
        primed: false,
        full: amount("24", Unit::Hour),
        since: amount("30", Unit::Hour),
        joint: sure("20", Unit::Celsius),
        coldest: amount("15", Unit::Celsius),
    };
    let state = |joint: &Joint| workshop::locker::examine(joint).unwrap().0;
    assert!(joint.wants_primer() && !Joint { primed: true, ..joint }.wants_primer());
    assert_eq!(state(&joint), State::Cured);
    assert_eq!(state(&Joint { clean: false, ..joint }), State::Clean);
    assert_eq!(state(&Joint { joint: sure("5", Unit::Celsius), ..joint }), State::TooCold);
    refused(
        workshop::locker::examine(&Joint { full: amount("0", Unit::Hour), ..joint }),
        "Time to cure: found 0 h, expected more than zero; measure it again.",
    );
}

#[test]
fn anodes_and_the_cell() {
    let as_found = Anode { left: exact("80"), painted: false, loose: false };
    assert_eq!(anode(&Anode { painted: true, ..as_found }).unwrap(), AnodeAdvice::Replace);
    assert_eq!(anode(&Anode { loose: true, ..as_found }).unwrap(), AnodeAdvice::MakeContact);
    let read = |volts| Cell {
        volts: exact(volts),
        standard: 0.005,
        limits: [exact("-0.90"), exact("-1.05")],
    };
    let verdict = |volts| cell(&read(volts)).unwrap().judgement.verdict;
    assert_eq!(verdict("-0.97"), Verdict::InBand);
    assert_eq!(verdict("-0.80"), Verdict::Out);
    assert_eq!(verdict("-1.12"), Verdict::Out);
    assert_eq!(verdict("-0.903"), Verdict::NearLimit);
    refused(cell(&read("-12")), "Cell: found -12 V, expected -2 to 1 V; read it again.");
    assert_eq!(Reading::exact(Decimal::ONE, Unit::Hour).standard, 0.0);
}
