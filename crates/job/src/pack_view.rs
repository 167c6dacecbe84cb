//! What to do with each pack: keep it, or take out and put in.

use measure::Decimal;
use words::{say, t};

use crate::case::Bridge;
use crate::{
    CheckState, CheckView, Figure, FittedShim, Job, PackFit, Position, Sheet, Shown, Slot, Tin,
    figure, pack_spread,
};

/// What to do with one pack.
#[derive(Clone, Debug, PartialEq)]
pub struct PackView {
    /// Which.
    pub slot: Slot,
    /// Where it lies.
    pub position: Position,
    /// Keep it or change it.
    pub act: PackAct,
    /// A person said that it must stay as it is.
    pub held: bool,
    /// Thickness now; zero while it is not known.
    pub now: Decimal,
    /// Thickness advised: the same as now where it is kept.
    pub total: Decimal,
    /// What stands after "±" of that thickness: shims and the micrometer's zero.
    pub expanded: Decimal,
    /// The shims of the advised pack, thin ones inside.
    pub shims: Vec<ShimView>,
    /// Shims to take out.
    pub take_out: Vec<Decimal>,
    /// Shims to put in.
    pub put_in: Vec<Decimal>,
    /// "Take out 0.301 + 0.301. Put in 0.498 + 0.199, both in the tin."
    pub says: String,
    /// State of the check that it sets.
    pub state: CheckState,
}

/// Keep a pack or change it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PackAct {
    /// Leave it.
    Keep,
    /// Fit the advised one.
    Fit,
    /// It is not written down what lies there.
    Unknown,
}

/// A shim of an advised pack.
#[derive(Clone, Debug, PartialEq)]
pub struct ShimView {
    /// The shim, ready for [`crate::fit`].
    pub shim: FittedShim,
    /// Net thickness.
    pub net: Decimal,
    /// It lies in this pack now.
    pub in_case: bool,
    /// Which of its like this one is, and how many there are: "1 of 4"; "in the case".
    pub count: String,
}

/// Every pack of the unit, kept as it lies.
pub(crate) fn kept(job: &Job, sheet: &Sheet, tin: &Tin, checks: &[CheckView]) -> Vec<PackView> {
    let of_position = |position: Position| {
        let fit = job.pack(position.slot);
        let own = checks.iter().find(|view| Some(view.check) == position.slot.check());
        let now = fit.map(PackFit::total).unwrap_or_default();
        let shims = fit.map(|fit| fit.shims.clone()).unwrap_or_default();
        let act = if fit.is_some() { PackAct::Keep } else { PackAct::Unknown };
        PackView {
            slot: position.slot,
            position,
            act,
            held: job.held.contains(&position.slot),
            now,
            total: now,
            expanded: pack_spread(tin, &shims),
            shims: shims.into_iter().map(in_case).collect(),
            take_out: Vec::new(),
            put_in: Vec::new(),
            says: match act {
                PackAct::Unknown => t("Measure the pack that lies here.").to_owned(),
                PackAct::Keep | PackAct::Fit => String::new(),
            },
            state: own.map_or(CheckState::NoBand, |view| view.state.clone()),
        }
    };
    sheet.positions().into_iter().map(of_position).collect()
}

/// Turns a pack that is kept into the one advised, where they differ.
pub(crate) fn change(
    pack: &mut PackView,
    job: &Job,
    tin: &Tin,
    bridge: &Bridge,
    (opens, packs): (&[usize], &[Vec<Decimal>]),
    shown: Shown,
) {
    let Some(place) = bridge.place_of(pack.slot) else { return };
    let (true, Some(nets)) = (opens.contains(&place), packs.get(place)) else {
        return;
    };
    let lies = job.pack(pack.slot).map(|fit| fit.shims.clone()).unwrap_or_default();
    let (shims, left) = made_of(nets, lies, tin, pack.position.family);
    pack.shims = shims;
    pack.act = PackAct::Fit;
    pack.total = nets.iter().sum();
    let fitted: Vec<FittedShim> = pack.shims.iter().map(|shim| shim.shim.clone()).collect();
    pack.expanded = pack_spread(tin, &fitted);
    pack.take_out = left.iter().map(FittedShim::net).collect();
    pack.put_in = pack.shims.iter().filter(|shim| !shim.in_case).map(|shim| shim.net).collect();
    pack.says = change_says(&pack.take_out, &pack.put_in, shown);
}

/// The shims of a pack, from those that lie there and the tin, and what is left of the old ones.
pub(crate) fn made_of(
    nets: &[Decimal],
    lies: Vec<FittedShim>,
    tin: &Tin,
    family: &str,
) -> (Vec<ShimView>, Vec<FittedShim>) {
    let mut left = lies;
    let mut taken: Vec<(String, u32)> = Vec::new();
    let shim = |net: &Decimal| match left.iter().position(|shim| shim.net() == *net) {
        Some(index) => in_case(left.remove(index)),
        None => from_tin(tin, family, *net, &mut taken),
    };
    (nets.iter().map(shim).collect(), left)
}

fn in_case(shim: FittedShim) -> ShimView {
    ShimView { net: shim.net(), shim, in_case: true, count: t("in the case").to_owned() }
}

/// The next shim of that thickness from the tin; `taken` counts what this pack has had.
fn from_tin(tin: &Tin, family: &str, net: Decimal, taken: &mut Vec<(String, u32)>) -> ShimView {
    let had = |id: &str, taken: &[(String, u32)]| {
        taken.iter().find(|(shim, _)| shim == id).map_or(0, |(_, count)| *count)
    };
    let before: u32 =
        tin.offered(family, net).map(|shim| had(&shim.id, taken)).fold(0, u32::saturating_add);
    let shim = tin.offered(family, net).find(|shim| shim.left() > had(&shim.id, taken));
    let id = shim.map(|shim| shim.id.clone()).unwrap_or_default();
    match taken.iter_mut().find(|(shim, _)| *shim == id) {
        Some((_, count)) => *count += 1,
        None => taken.push((id.clone(), 1)),
    }
    ShimView {
        shim: FittedShim::FromTin { shim: id, net },
        net,
        in_case: false,
        count: say!("{number} of {there}", number = before + 1, there = tin.in_stock(family, net)),
    }
}

fn change_says(out: &[Decimal], put: &[Decimal], shown: Shown) -> String {
    let sum = |nets: &[Decimal]| {
        let each: Vec<String> = nets.iter().map(|net| figure(*net, Figure::Shim, shown)).collect();
        each.join(" + ")
    };
    let taken = (!out.is_empty()).then(|| say!("Take out {shims}.", shims = sum(out)));
    let added = match (put.len(), sum(put)) {
        (0, _) => None,
        (1, shims) => Some(say!("Put in {shims}, in the tin.")),
        (2, shims) => Some(say!("Put in {shims}, both in the tin.")),
        (_, shims) => Some(say!("Put in {shims}, all in the tin.")),
    };
    taken.into_iter().chain(added).collect::<Vec<_>>().join(" ")
}
