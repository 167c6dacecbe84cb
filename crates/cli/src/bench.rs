//! The bench checks as JSON lines: one object in, one answer out.

mod answer;
mod convert;
mod read;

use gearing::rolling::{self, Turned, Unlearnt};
use measure::{Amount, Decimal, Unit, real};
use serde_json::{Value, json};
use workshop::drag::{Drag, Effort, Seals, When};
use workshop::fit::{self, BEARING_STEEL, CAST_ALUMINIUM, Expansion, Part};
use workshop::leak::{Entry, Reference, Stage};
use workshop::oring::{Groove, Ring};
use workshop::press::{ALUMINIUM, Elastic, Press, STEEL};
use workshop::runout::Turn;
use workshop::torque::{OffsetTool, Threads};
use workshop::{Limits, Reading, drag, leak, oring, press, runout, torque};

use crate::field::Field;
use answer::{answered, figure, judged};
use read::{Fault, limits, one_of, quantity};

/// What `shimwright bench --help` says.
pub const BENCH_HELP: &str = "\
shimwright bench [FILE]: the bench checks, one JSON object a line in, one out

A quantity is a text as it is typed, \"0.38 mm\" or \"15 inHg\"; its standard
uncertainty is half of its last digit as a rectangle, or as given in
{\"read\": \"0.38 mm\", \"u\": \"0.005\"}. Each line has \"bench\" and

  leak    stage (low, working, vacuum), first and later (each at, gauge, case,
          barometer), volume
  runout  readings (each angle, reading), limit
  torque  torque, and where there is an offset head wrench, head, angle
  drag    pull, drum, cord, low, high
  heat    diameter, interference, clearance, room, material (aluminium, steel)
  warm    diameter, interference, rise (a plain number, K): a steel race in
          aluminium
  press   interference (on the diameter), bore, meeting, outside, length,
          friction, inner and outer (steel, aluminium)
  rolling builds, oldest first (each tightening: packs times setting signs,
          and torque), low, high: what they show for the next; at least two
  ring    section, inside, bottom, depth, width
  convert amount, into: the symbol of a unit of the same quantity

The answer has figures with their unit and standard uncertainty \"u\", a verdict
where there is a limit, cautions, and how it was reckoned. The unit's own
manual and local rules win.
";

/// Answers one line of bench checks.
///
/// ```
/// let line = r#"{"bench":"torque","torque":"80 N·m","wrench":"400 mm","head":"50 mm","angle":"0 °"}"#;
/// // 71.1 N·m: US Army TM 9-254 and a public worked example.
/// let answer = shimwright_cli::bench(line);
/// assert!(answer["figures"]["set"]["value"].as_str().unwrap().starts_with("71.111"));
/// ```
pub fn bench(line: &str) -> Value {
    let value = match crate::parse(line) {
        Ok(value) => value,
        Err(sentence) => return unnamed(sentence),
    };
    let name = value.get("bench").cloned().unwrap_or(Value::Null);
    match examine(&Field::top(&value)) {
        Ok(answer) => answer,
        Err(fault) => json!({ "bench": name, "error": fault.to_string() }),
    }
}

/// Refuses a line whose bench cannot be read.
pub fn unnamed(error: String) -> Value {
    json!({ "bench": Value::Null, "error": error })
}

fn examine(line: &Field) -> Result<Value, Fault> {
    type Instrument = fn(&Field) -> Result<Value, Fault>;
    const INSTRUMENTS: [(&str, Instrument); 10] = [
        ("leak", leak_line),
        ("runout", runout_line),
        ("torque", torque_line),
        ("drag", drag_line),
        ("heat", heat_line),
        ("warm", warm_line),
        ("press", press_line),
        ("ring", ring_line),
        ("rolling", rolling_line),
        ("convert", convert::convert_line),
    ];
    let bench = line.need("bench", "the name of a bench check")?;
    let instrument = one_of(&bench, &INSTRUMENTS)?;
    instrument(line)
}

fn leak_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "stage", "first", "later", "volume"])?;
    let stages = [("low", Stage::Low), ("working", Stage::Working), ("vacuum", Stage::Vacuum)];
    let stage = one_of(&line.need("stage", "low, working or vacuum")?, &stages)?;
    let entry = |name| -> Result<Entry, Fault> {
        let field = line.need(name, "an object with at, gauge, case and barometer")?;
        field.only(&["at", "gauge", "case", "barometer"])?;
        Ok(Entry {
            at: quantity(&field, "at", Unit::Second)?.amount,
            gauge: quantity(&field, "gauge", Unit::Kilopascal)?,
            case: quantity(&field, "case", Unit::Celsius)?,
            barometer: quantity(&field, "barometer", Unit::Kilopascal)?,
        })
    };
    let (first, later) = (entry("first")?, entry("later")?);
    let volume = quantity(line, "volume", Unit::Litre)?;
    let rate = leak::rate(stage, &volume, &first, &later)?;
    let figures = json!({
        "lost": figure(&leak::drop(stage, &first, &later)?),
        "corrected": figure(&leak::corrected(stage, &first, &later)?),
        "rate": figure(&rate),
        "moles": figure(&leak::molar_flow(stage, &volume, &first, &later)?),
        "flow_as_it_is": figure(&leak::standard_flow(&rate, &first.case, Reference::AsItIs)?),
        "flow_at_0_celsius": figure(&leak::standard_flow(&rate, &first.case, Reference::ZeroCelsius)?),
    });
    Ok(answered("leak", figures, None, &[workshop::Caution::StoredPressure], None))
}

fn runout_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "readings", "limit"])?;
    let readings = line.need("readings", "a list of readings, each angle and reading")?;
    let readings = readings
        .list()?
        .iter()
        .map(|field| {
            field.only(&["angle", "reading"])?;
            let angle: Amount = quantity(field, "angle", Unit::Degree)?.amount;
            Ok((angle, quantity(field, "reading", Unit::Millimetre)?))
        })
        .collect::<Result<Vec<_>, Fault>>()?;
    let limits = limits(line, "no low limit", "limit", Unit::Millimetre)?;
    let found = runout::examine(&Turn { readings, closing: None, limits })?;
    let figures = json!({
        "total": figure(&found.total),
        "mean": figure(&found.mean),
        "off_centre": figure(&found.off_centre),
        "high_spot": found.high_spot.as_ref().map(figure),
        "two_lobes": found.two_lobes.as_ref().map(figure),
    });
    Ok(answered(
        "runout",
        figures,
        judged(found.judgement),
        &found.cautions,
        Some(&found.explanation),
    ))
}

fn torque_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "torque", "wrench", "head", "angle"])?;
    let tool = match line.get("wrench")? {
        None => None,
        Some(_) => Some(OffsetTool {
            wrench: quantity(line, "wrench", Unit::Millimetre)?,
            head: quantity(line, "head", Unit::Millimetre)?,
            angle: quantity(line, "angle", Unit::Degree)?,
        }),
    };
    let stage = [quantity(line, "torque", Unit::NewtonMetre)?];
    let found = torque::examine(&stage, tool.as_ref(), Threads::Dry, Threads::Dry)?;
    let figures = json!({ "set": found.set.first().map(figure) });
    Ok(answered("torque", figures, None, &found.cautions, Some(&found.explanation)))
}

fn drag_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "pull", "drum", "cord", "low", "high"])?;
    let effort = Effort::Cord {
        pull: quantity(line, "pull", Unit::Newton)?,
        drum: quantity(line, "drum", Unit::Millimetre)?,
        cord: quantity(line, "cord", Unit::Millimetre)?,
    };
    let limits = limits(line, "low", "high", Unit::NewtonMetre)?;
    let found = drag::examine(&Drag { effort, when: When::Running, seals: Seals::Out, limits })?;
    let figures = json!({ "torque": figure(&found.read) });
    Ok(answered(
        "drag",
        figures,
        judged(found.judgement),
        &found.cautions,
        Some(&found.explanation),
    ))
}

fn rolling_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "builds", "low", "high"])?;
    let builds = line.need("builds", "a list of builds, each tightening and torque")?;
    let number = |field: &Field, name: &str, unit: Unit| -> Result<(f64, f64), Fault> {
        let Reading { amount, standard } = quantity(field, name, unit)?;
        let value = amount.to(unit).unwrap_or(amount).value;
        // The uncertainty is in the unit it was typed in; one such unit is so many of the other.
        let scale = Amount { value: Decimal::ONE, unit: amount.unit }
            .to(unit)
            .map_or(1.0, |one| real::from_decimal(one.value));
        Ok((real::from_decimal(value), standard * scale))
    };
    let read = |field: &Field| -> Result<Turned, Fault> {
        field.only(&["tightening", "torque"])?;
        let (torque, sigma) = number(field, "torque", Unit::NewtonMetre)?;
        let (tightening, _) = number(field, "tightening", Unit::Millimetre)?;
        Ok(Turned { tightening, torque, sigma })
    };
    let list = builds.list()?.iter().map(read).collect::<Result<Vec<_>, Fault>>()?;
    let limit = |name| Ok::<_, Fault>(number(line, name, Unit::NewtonMetre)?.0);
    let learnt = match rolling::learn(&list, limit("low")?, limit("high")?) {
        Ok(learnt) => learnt,
        Err(Unlearnt::OneSetting) => Err(builds.says(
            "found one setting, expected two builds at least 0.02 mm apart; no formula predicts it"
                .to_owned(),
        ))?,
        Err(Unlearnt::NoRise) => Err(builds.says(
            "found no torque that rises as the bearings are set tighter, expected one; read again"
                .to_owned(),
        ))?,
    };
    let value = |(value, sigma): (f64, f64), unit: &str| json!({ "value": real::to_decimal(value, 9), "unit": unit, "u": real::to_decimal(sigma, 9) });
    let figures = json!({
        "tighter": value(learnt.tighter, "mm"),
        "slope": value(learnt.slope, "N·m/mm"),
        "as_far_as_seen": learnt.is_cut,
    });
    Ok(answered("rolling", figures, None, &[], None))
}

fn heat_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "diameter", "interference", "clearance", "room", "material"])?;
    let materials: [(&str, (Expansion, Part)); 2] =
        [("aluminium", (CAST_ALUMINIUM, Part::Case)), ("steel", (BEARING_STEEL, Part::Ring))];
    let (material, part) = one_of(&line.need("material", "aluminium or steel")?, &materials)?;
    let found = fit::heat(&fit::Drop {
        diameter: quantity(line, "diameter", Unit::Millimetre)?,
        interference: quantity(line, "interference", Unit::Millimetre)?,
        clearance: quantity(line, "clearance", Unit::Millimetre)?,
        room: quantity(line, "room", Unit::Celsius)?,
        material,
        part,
        limits: Limits::default(),
        thermometer: None,
    })?;
    let figures = json!({ "change": figure(&found.change), "reach": figure(&found.reach) });
    Ok(answered("heat", figures, None, &found.cautions, Some(&found.explanation)))
}

fn warm_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "diameter", "interference", "rise"])?;
    let warm = fit::when_warm(
        &quantity(line, "interference", Unit::Millimetre)?,
        &quantity(line, "diameter", Unit::Millimetre)?,
        &CAST_ALUMINIUM,
        &BEARING_STEEL,
        plain(line, "rise")?,
    )?;
    let figures = json!({ "left": figure(&warm.left) });
    Ok(answered("warm", figures, None, warm.caution.as_slice(), Some(&warm.explanation)))
}

fn press_line(line: &Field) -> Result<Value, Fault> {
    line.only(&[
        "bench",
        "interference",
        "bore",
        "meeting",
        "outside",
        "length",
        "friction",
        "inner",
        "outer",
    ])?;
    let length = |name| quantity(line, name, Unit::Millimetre);
    let metal = |name| -> Result<Elastic, Fault> {
        one_of(
            &line.need(name, "steel or aluminium")?,
            &[("steel", STEEL), ("aluminium", ALUMINIUM)],
        )
    };
    let found = press::examine(&Press {
        interference: length("interference")?,
        bore: length("bore")?,
        meeting: length("meeting")?,
        outside: length("outside")?,
        length: length("length")?,
        friction: plain(line, "friction")?,
        inner: metal("inner")?,
        outer: metal("outer")?,
    })?;
    let figures = json!({
        "pressure": figure(&found.pressure),
        "hub_stress": figure(&found.hub_stress),
        "force": figure(&found.force),
        "slip_torque": figure(&found.slip_torque),
    });
    Ok(answered("press", figures, None, found.cautions, Some(&found.explanation)))
}

fn ring_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "section", "inside", "bottom", "depth", "width"])?;
    let length = |name| quantity(line, name, Unit::Millimetre);
    let width: Option<Reading> = line.get("width")?.map(|_| length("width")).transpose()?;
    let ring = Ring { section: length("section")?, inside: length("inside")? };
    let groove = Groove { bottom: length("bottom")?, depth: length("depth")?, width };
    let found = oring::examine(&ring, &groove)?;
    let figures = json!({
        "stretch": figure(&found.stretch),
        "section": figure(&found.stretched_section),
        "squeeze": figure(&found.squeeze),
        "fill": found.fill.as_ref().map(figure),
    });
    Ok(answered("ring", figures, None, &found.cautions, Some(&found.explanation)))
}

fn plain(line: &Field, name: &str) -> Result<Decimal, Fault> {
    Ok(line.need(name, "a plain number in quotes")?.decimal()?)
}
