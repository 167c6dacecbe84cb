//! What must hold for every input.

use measure::{Amount, Decimal, Mark, Series, Sign, Typed, Unit, judge, outlier, round, show};
use proptest::prelude::*;

/// Every number that can be typed: up to 12 digits, up to 12 of them decimals.
fn typeable() -> impl Strategy<Value = Decimal> {
    (-999_999_999_999..=999_999_999_999i64, 0..=11u32)
        .prop_map(|(mantissa, scale)| Decimal::new(mantissa, scale))
}

fn mark() -> impl Strategy<Value = Mark> {
    prop_oneof![Just(Mark::Point), Just(Mark::Comma)]
}

proptest! {
    #[test]
    fn what_is_shown_can_be_typed(value in typeable(), mark in mark()) {
        let shown = show(value, value.scale(), mark);
        let typed = Typed::parse(&shown, Unit::Millimetre, Sign::Any);
        let digits = shown.chars().filter(char::is_ascii_digit).count();
        prop_assume!(digits <= 12);
        prop_assert_eq!(typed.unwrap().amount().value, value);
    }

    #[test]
    fn inches_come_back_exactly(value in typeable()) {
        let inches = Amount { value, unit: Unit::Inch };
        let back = inches.to(Unit::Millimetre).and_then(|there| there.to(Unit::Inch));
        prop_assert_eq!(back, Some(inches));
    }

    /// 1 mm has no exact decimal in inches; what is lost lies below the sixteenth decimal.
    #[test]
    fn millimetres_come_back(value in typeable()) {
        let there = Amount { value, unit: Unit::Millimetre }.to(Unit::Inch).unwrap();
        let back = there.to(Unit::Millimetre).unwrap();
        prop_assert_eq!(round(back.value, 14), round(value, 14));
    }

    #[test]
    fn the_last_digit_is_the_step(value in typeable()) {
        let shown = show(value, value.scale(), Mark::Point);
        if let Ok(typed) = Typed::parse(&shown, Unit::Inch, Sign::Any) {
            prop_assert_eq!(typed.step().value, Decimal::new(1, value.scale()));
        }
    }

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>(), sign in prop_oneof![
        Just(Sign::Any), Just(Sign::NotNegative), Just(Sign::Positive)
    ]) {
        let read = Typed::parse(&text, Unit::Millimetre, sign).is_ok();
        prop_assert!(!read || text.contains(|c: char| c.is_ascii_digit()));
    }

    /// Text of the characters that entries are made of, where the grammar has its corners.
    #[test]
    fn text_like_an_entry_is_read_or_refused(text in "[-−+0-9., \t\u{a0}_'/eE°\"a-zµ·()²]{0,16}") {
        match Typed::parse(&text, Unit::PoundForceInch, Sign::Any) {
            Ok(typed) => {
                let again = Typed::parse(&typed.to_string(), Unit::NewtonMetre, Sign::Any);
                prop_assert_eq!(again, Ok(typed));
            }
            Err(refusal) => {
                let sentence = refusal.to_string().to_lowercase();
                prop_assert!(sentence.ends_with('.'));
                for word in ["invalid", "error", "sorry"] {
                    prop_assert!(!sentence.contains(word) || text.to_lowercase().contains(word));
                }
            }
        }
    }

    #[test]
    fn typed_survives_its_file(value in typeable(), mark in mark()) {
        let shown = show(value, value.scale(), mark);
        if let Ok(typed) = Typed::parse(&shown, Unit::PoundForceInch, Sign::Any) {
            let written = serde_json::to_string(&typed).unwrap();
            prop_assert_eq!(serde_json::from_str::<Typed>(&written).unwrap(), typed);
        }
    }

    #[test]
    fn a_series_is_between_its_ends(values in prop::collection::vec(typeable(), 1..30)) {
        let series = Series::new(values).unwrap();
        prop_assert!(series.min() <= series.mean() && series.mean() <= series.max());
        if let Some(hint) = outlier::hint(&series, Decimal::ZERO) {
            prop_assert!(hint.index < series.values().len());
        }
    }

    #[test]
    fn a_verdict_is_always_a_probability(
        y in typeable(), low in typeable(), width in 1..1_000_000i64, u in 0.0..1e6f64
    ) {
        let band = measure::Band::new(low, low + Decimal::new(width, 3)).unwrap();
        let judged = judge(y, u, &band);
        prop_assert!((0.0..=1.0).contains(&judged.probability));
    }
}
