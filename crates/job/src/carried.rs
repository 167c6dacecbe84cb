//! A number that was typed, in the unit of whoever reads it.

use measure::{Amount, Decimal, Typed, Unit, round, show};

use crate::Shown;

/// More places than this nothing is shown with.
const MOST_PLACES: u32 = 6;
/// At least so many steps of the last digit shown make one of the last digit typed, so that numbers
/// that were typed apart are still told apart.
const FINER: Decimal = Decimal::from_parts(5, 0, 0, false, 0);

/// An amount in another unit, with the digits that carry over: 0.005 in are 0.127 mm, 95 N·m are
/// 70.1 lbf·ft. `None` where that is a unit of another quantity.
pub(crate) fn carried(amount: Amount, into: Unit) -> Option<Amount> {
    if amount.unit == into {
        return Some(amount);
    }
    let step = Decimal::new(1, amount.value.scale());
    let [here, next] = [amount.value, amount.value + step]
        .map(|value| Amount { value, ..amount }.to(into).map(|it| it.value));
    let (value, mut step) = (here?, (next? - here?).abs());
    let mut places = 0;
    while step < FINER && places < MOST_PLACES {
        step *= Decimal::TEN;
        places += 1;
    }
    Some(Amount { value: round(value, places), unit: into })
}

/// Numbers as they were typed and, where the reader has another unit for them, in that one as well:
/// "95 95 N·m = 70.1 70.1 lbf·ft". `typed`: as they stand in one line.
pub(crate) fn both(typed: String, values: &[Typed], shown: Shown) -> String {
    let Some(into) = values.first().map(|first| shown.units.of(first.unit())) else { return typed };
    let text = |value: &Typed| {
        let amount = carried(value.amount(), into)?;
        Some(show(amount.value, amount.value.scale(), shown.mark))
    };
    let texts: Option<Vec<String>> = values.iter().map(text).collect();
    match texts {
        Some(texts) if values.iter().any(|value| value.unit() != into) => {
            format!("{typed} = {} {into}", texts.join(" "))
        }
        _ => typed,
    }
}

#[cfg(test)]
mod tests {
    use measure::{Mark, Sign};

    use super::*;
    use crate::Units;

    #[test]
    fn a_number_carries_over_with_its_digits() {
        // 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N, 1 psi = 6.894757 kPa, 0 °C = 32 °F
        // (NIST SP 811, appendix B.8, from memory); the rounding is ours.
        for (typed, into, expected) in [
            ("0.005 in", Unit::Millimetre, "0.127 mm"),
            ("0.13 mm", Unit::Inch, "0.00512 in"),
            ("95 N·m", Unit::PoundForceFoot, "70.1 lbf·ft"),
            ("7 kPa", Unit::PoundPerSquareInch, "1.02 psi"),
            ("20 °C", Unit::Fahrenheit, "68.0 °F"),
            ("-2.5 °C", Unit::Fahrenheit, "27.50 °F"),
            ("0,30 mm", Unit::Millimetre, "0.30 mm"),
        ] {
            let typed = Typed::parse(typed, into, Sign::Any).unwrap();
            let amount = carried(typed.amount(), into).unwrap();
            let text = measure::show_amount(amount, amount.value.scale(), Mark::Point);
            assert_eq!(text, expected);
        }
        let metre = Amount { value: Decimal::ONE, unit: Unit::Millimetre };
        assert_eq!(carried(metre, Unit::Kilopascal), None);
    }

    #[test]
    fn what_was_typed_stays_beside_it() {
        let typed = |texts: &[&str], unit| -> Vec<Typed> {
            texts.iter().map(|text| Typed::parse(text, unit, Sign::Any).unwrap()).collect()
        };
        let told = |texts: &[&str], unit: Unit, reads: Unit| {
            let units = Units::default().with(reads);
            let shown = Shown { units, mark: Mark::Comma, utc_offset: 0 };
            both("as typed".to_owned(), &typed(texts, unit), shown)
        };
        let (newton, foot) = (Unit::NewtonMetre, Unit::PoundForceFoot);
        assert_eq!(told(&["95", "96"], newton, newton), "as typed");
        assert_eq!(told(&["95", "96"], newton, foot), "as typed = 70,1 70,8 lbf·ft");
        assert_eq!(told(&["70.5", "96 N·m"], foot, foot), "as typed = 70,5 70,8 lbf·ft");
        assert_eq!(told(&["60"], Unit::Minute, foot), "as typed");
        assert_eq!(told(&[], newton, foot), "as typed");
    }
}
