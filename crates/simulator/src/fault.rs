//! What goes wrong in a dry build.

/// What is not as the mechanic believes; positions by their place in the case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// A thicker pack moves the member the other way.
    WrongSign {
        /// The position.
        position: usize,
    },
    /// A shim of the new pack is not as thick as it is marked.
    Mislabelled {
        /// The position.
        position: usize,
        /// True thickness less the marked one, mm.
        thicker: f64,
    },
    /// A race not seated, or dirt: acts as extra pack.
    Unseated {
        /// The position.
        position: usize,
        /// The extra pack, mm.
        extra: f64,
    },
    /// The packs of two positions are swapped.
    Swapped {
        /// One position.
        first: usize,
        /// The other.
        second: usize,
    },
}

impl Fault {
    /// Turns the changes that are believed into those that are really in. `totals` are the packs of
    /// this build and `found` those of the first, mm.
    pub(crate) fn disturb(self, change: &mut [f64], totals: &[f64], found: &[f64]) {
        let mut add = |position: usize, extra: f64| {
            if let Some(change) = change.get_mut(position) {
                *change += extra;
            }
        };
        let at = |list: &[f64], position: usize| list.get(position).copied().unwrap_or(0.0);
        match self {
            Fault::WrongSign { position } => {
                add(position, -2.0 * (at(totals, position) - at(found, position)));
            }
            Fault::Mislabelled { position, thicker: extra }
            | Fault::Unseated { position, extra } => {
                add(position, extra);
            }
            Fault::Swapped { first, second } => {
                add(first, at(totals, second) - at(totals, first));
                add(second, at(totals, first) - at(totals, second));
            }
        }
    }
}
