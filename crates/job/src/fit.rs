//! Fitting a pack: one fact in the job, and what that takes from and gives back to the tin.

use crate::{BookId, Counted, Fact, FittedShim, Job, Sheet, Slot, Tin, demo};

/// The facts of fitting packs, for the job and for the tin.
///
/// Record them in one transaction. Shims that stay in their pack are not counted; shims that come
/// out go into the tin, those never measured for it as new ones. `new_name` gives names for them
/// that were never used before.
pub fn fit(
    job: &Job,
    sheet: &Sheet,
    tin: &Tin,
    packs: &[(Slot, Vec<FittedShim>)],
    mut new_name: impl FnMut() -> String,
) -> Vec<(BookId, Fact)> {
    let book = BookId::Job(job.id.clone());
    let mut name = || match sheet.is_invented() {
        true => demo::invented(&new_name()),
        false => new_name(),
    };
    let mut facts = Vec::new();
    for (slot, shims) in packs {
        let mut out = job.pack(*slot).map(|fit| fit.shims.clone()).unwrap_or_default();
        let mut put = Vec::new();
        for shim in shims {
            match out.iter().position(|other| other == shim) {
                Some(index) => drop(out.remove(index)),
                None => put.push(shim),
            }
        }
        let family = sheet.position(*slot).map(|position| position.family).unwrap_or_default();
        facts.extend(out.iter().filter_map(|shim| back(job, tin, family, shim, &mut name)));
        facts.extend(put.into_iter().filter_map(|shim| taken(job, shim)));
        let shims = shims.clone();
        facts.push((book.clone(), Fact::PackFitted { slot: *slot, shims, as_found: false }));
    }
    facts
}

/// The fact of a pack as it was found: nothing comes from the tin.
pub fn record_found(job: &Job, slot: Slot, shims: Vec<FittedShim>) -> (BookId, Fact) {
    (BookId::Job(job.id.clone()), Fact::PackFitted { slot, shims, as_found: true })
}

fn taken(job: &Job, shim: &FittedShim) -> Option<(BookId, Fact)> {
    let FittedShim::FromTin { shim, .. } = shim else { return None };
    let why = Counted::Taken { job: job.id.clone() };
    Some((BookId::Tin, Fact::ShimsCounted { shim: shim.clone(), change: -1, why }))
}

fn back(
    job: &Job,
    tin: &Tin,
    family: &str,
    shim: &FittedShim,
    new_name: &mut impl FnMut() -> String,
) -> Option<(BookId, Fact)> {
    let fact = match shim {
        FittedShim::FromTin { shim, .. } if tin.shim(shim).is_some() => {
            let why = Counted::PutBack { job: job.id.clone() };
            Fact::ShimsCounted { shim: shim.clone(), change: 1, why }
        }
        FittedShim::FromTin { .. } => return None,
        FittedShim::Measured(net) => Fact::ShimCameOut {
            shim: new_name(),
            family: family.to_owned(),
            net: net.clone(),
            job: job.id.clone(),
        },
    };
    Some((BookId::Tin, fact))
}
