//! One line in: a case as JSON.

use std::collections::BTreeSet;

use gearing::case::{
    Arm, Case, Check, CheckKind, Driven, Gears, Member, Position, Shaft, StockLine, Trial,
};
use measure::Decimal;
use serde_json::Value;

use crate::field::{Field, FieldError};

/// Most shims in a pack where the line does not say.
const MAX_SHIMS: u32 = 4;
/// Shaft angle where the line does not say, degrees.
const SHAFT_ANGLE: Decimal = Decimal::from_parts(90, 0, 0, false, 0);

/// Reads a case.
///
/// # Errors
/// The first field that is missing or has another shape than expected.
pub fn read_case(line: &Value) -> Result<Case, FieldError> {
    let line = Field::top(line);
    line.only(&[
        "case",
        "gears",
        "arm",
        "positions",
        "checks",
        "stock",
        "max_shims_in_pack",
        "trials",
        "frozen",
    ])?;
    let gears = gears(&line.need("gears", "an object with the teeth and radius of the gears")?)?;
    let arm = arm(&line.need("arm", "an object with \"radius\" and \"on\"")?)?;
    // Trials name positions and checks, so these are known and distinct before trials are read.
    let positions = named(&line, "positions", "a list of shim positions")?
        .iter()
        .map(|field| position(field, &gears))
        .collect::<Result<Vec<_>, _>>()?;
    let checks = named(&line, "checks", "a list of checks with their bands")?
        .iter()
        .map(check)
        .collect::<Result<Vec<_>, _>>()?;
    let trials = line
        .need("trials", "a list of dry builds, at least one")?
        .list()?
        .iter()
        .map(|field| trial(field, &positions, &checks))
        .collect::<Result<Vec<_>, _>>()?;
    let stock = list(&line, "stock")?.iter().map(stock_line).collect::<Result<_, _>>()?;
    let max_shims = line.get("max_shims_in_pack")?.map_or(Ok(MAX_SHIMS), |field| field.whole())?;
    Ok(Case {
        gears,
        arm,
        positions,
        checks,
        stock,
        max_shims: usize::try_from(max_shims).unwrap_or(usize::MAX),
        trials,
        frozen: texts(&line, "frozen")?,
    })
}

fn gears(field: &Field) -> Result<Gears, FieldError> {
    field.only(&[
        "pinion_teeth",
        "pinion_pitch_radius",
        "driven",
        "normal_pressure_angle",
        "spiral_angle",
        "shaft_angle",
    ])?;
    let angle = |name: &str| field.get(name)?.map(|field| field.decimal()).transpose();
    let driven = named(field, "driven", "a list of driven gears")?;
    Ok(Gears {
        pinion_teeth: teeth(field, "pinion_teeth")?,
        pinion_pitch_radius: field
            .need("pinion_pitch_radius", "the pinion's mean pitch radius, mm")?
            .decimal()?,
        driven: driven.iter().map(driven_gear).collect::<Result<_, _>>()?,
        normal_pressure_angle: angle("normal_pressure_angle")?,
        spiral_angle: angle("spiral_angle")?,
        shaft_angle: angle("shaft_angle")?.unwrap_or(SHAFT_ANGLE),
    })
}

fn driven_gear(field: &Field) -> Result<Driven, FieldError> {
    field.only(&["id", "teeth"])?;
    Ok(Driven { id: id(field)?, teeth: teeth(field, "teeth")? })
}

fn teeth(field: &Field, name: &str) -> Result<u32, FieldError> {
    field.need(name, "a number of teeth")?.whole()
}

fn id(field: &Field) -> Result<String, FieldError> {
    Ok(field.need("id", "a name")?.text()?.to_owned())
}

fn arm(field: &Field) -> Result<Arm, FieldError> {
    field.only(&["radius", "on"])?;
    Ok(Arm {
        radius: field.need("radius", "the arm's radius, mm")?.decimal()?,
        on: shaft(&field.need("on", "\"pinion\" or a driven gear")?)?,
    })
}

fn shaft(field: &Field) -> Result<Shaft, FieldError> {
    Ok(match field.text()? {
        "pinion" => Shaft::Pinion,
        id => Shaft::Driven(id.to_owned()),
    })
}

fn position(field: &Field, gears: &Gears) -> Result<Position, FieldError> {
    field.only(&["id", "moves", "mesh_sign", "setting_sign", "family", "open_minutes", "after"])?;
    let moves = field.need("moves", "\"pinion\", a driven gear or another part")?.text()?;
    let sign = |name: &str| field.need(name, "-1, 0 or 1")?.sign();
    Ok(Position {
        id: id(field)?,
        moves: match moves {
            "pinion" => Member::Pinion,
            id if gears.driven.iter().any(|gear| gear.id == id) => Member::Driven(id.to_owned()),
            other => Member::Other(other.to_owned()),
        },
        mesh_sign: sign("mesh_sign")?,
        setting_sign: sign("setting_sign")?,
        family: field.need("family", "the kind of shim that fits")?.text()?.to_owned(),
        open_minutes: field.need("open_minutes", "minutes to open it")?.whole()?,
        after: texts(field, "after")?,
    })
}

fn check(field: &Field) -> Result<Check, FieldError> {
    let limit = |name: &str| field.need(name, "a limit of the band, mm")?.decimal();
    let optional = |name: &str| field.get(name)?.map(|field| field.decimal()).transpose();
    Ok(Check {
        id: id(field)?,
        kind: kind(field)?,
        low: limit("low")?,
        high: limit("high")?,
        aim: optional("aim")?,
        sigma: optional("sigma")?,
    })
}

fn kind(field: &Field) -> Result<CheckKind, FieldError> {
    const KINDS: &str = "\"depth_gap\", \"backlash\" or \"end_play\"";
    let kind = field.need("kind", KINDS)?;
    let only =
        |own: &[&str]| field.only(&[&["id", "kind", "low", "high", "aim", "sigma"], own].concat());
    match kind.text()? {
        "depth_gap" => {
            only(&["gauge_side"])?;
            let side = field.get("gauge_side")?;
            let from_behind = match side.as_ref().map(Field::text).transpose()? {
                None | Some("front") => false,
                Some("behind") => true,
                Some(_) => {
                    return side.unwrap_or(kind).refuse("\"front\" or \"behind\"");
                }
            };
            Ok(CheckKind::DepthGap { from_behind })
        }
        "backlash" => {
            only(&["mesh", "band_radius", "band_on"])?;
            let mesh = field.need("mesh", "the driven gear of this mesh")?.text()?.to_owned();
            Ok(CheckKind::Backlash { mesh, band_at: band_at(field)? })
        }
        "end_play" => {
            only(&["positions"])?;
            field.need("positions", "a list of the positions that change it")?;
            Ok(CheckKind::EndPlay { positions: texts(field, "positions")? })
        }
        _ => kind.refuse(KINDS),
    }
}

/// Radius and shaft the band holds at; one without the other is no place.
fn band_at(field: &Field) -> Result<Option<Arm>, FieldError> {
    if field.get("band_radius")?.is_none() && field.get("band_on")?.is_none() {
        return Ok(None);
    }
    let radius = field.need("band_radius", "the radius at which the band holds, mm")?.decimal()?;
    let on =
        shaft(&field.need("band_on", "the shaft of that radius: \"pinion\" or a driven gear")?)?;
    Ok(Some(Arm { radius, on }))
}

fn stock_line(field: &Field) -> Result<StockLine, FieldError> {
    field.only(&["family", "thickness", "count"])?;
    Ok(StockLine {
        family: field.need("family", "the kind of shim")?.text()?.to_owned(),
        thickness: field.need("thickness", "a thickness, mm")?.decimal()?,
        count: field.need("count", "how many there are")?.whole()?,
    })
}

fn trial(field: &Field, positions: &[Position], checks: &[Check]) -> Result<Trial, FieldError> {
    field.only(&["packs", "readings"])?;
    let packs = field.need("packs", "an object with a pack for each position")?;
    let readings = field.need("readings", "an object with a series for each check read")?;
    packs.only(&positions.iter().map(|position| position.id.as_str()).collect::<Vec<_>>())?;
    readings.only(&checks.iter().map(|check| check.id.as_str()).collect::<Vec<_>>())?;
    let pack = |position: &Position| {
        decimals(&packs.need(&position.id, "a list of shims, mm; [] for none")?)
    };
    let series =
        |check: &Check| readings.get(&check.id)?.map_or(Ok(Vec::new()), |field| decimals(&field));
    Ok(Trial {
        packs: positions.iter().map(pack).collect::<Result<_, _>>()?,
        readings: checks.iter().map(series).collect::<Result<_, _>>()?,
    })
}

/// The items of a list that is not empty, each with an id of its own.
fn named<'a>(field: &Field<'a>, name: &str, expected: &str) -> Result<Vec<Field<'a>>, FieldError> {
    let list = field.need(name, expected)?;
    let items = list.list()?;
    if items.is_empty() {
        return list.refuse(expected);
    }
    let mut seen = BTreeSet::new();
    for item in &items {
        let id = item.need("id", "a name")?;
        if !seen.insert(id.text()?) {
            return id.refuse("an id that no other has; rename one");
        }
    }
    Ok(items)
}

fn list<'a>(field: &Field<'a>, name: &str) -> Result<Vec<Field<'a>>, FieldError> {
    field.get(name)?.map_or(Ok(Vec::new()), |field| field.list())
}

fn texts(field: &Field, name: &str) -> Result<Vec<String>, FieldError> {
    list(field, name)?.iter().map(|item| Ok(item.text()?.to_owned())).collect()
}

fn decimals(field: &Field) -> Result<Vec<Decimal>, FieldError> {
    field.list()?.iter().map(Field::decimal).collect()
}
