//! How far a part of the unit sheet is, and what follows from its teeth.

use measure::Decimal;

use crate::{Check, Field, Group, LeakStage, Sheet, ToDo};

/// How far a part of the sheet is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartState {
    /// Nothing is typed in it.
    Empty,
    /// A field that a check needs is still empty.
    Partly,
    /// A value is in doubt.
    Doubtful,
    /// All that is needed is typed.
    Typed,
}

impl Sheet {
    /// How far a part is.
    pub fn part(&self, group: Group) -> PartState {
        let to_do = self.to_do();
        let asks = |of: fn(&ToDo) -> Option<Field>| {
            to_do.iter().filter_map(of).any(|field| field.facts().group == group)
        };
        let is_begun = || LeakStage::ALL.iter().any(|stage| self.lacks_of_leak(*stage));
        if Field::of(group).all(|facts| self.value(facts.field).is_none()) {
            PartState::Empty
        } else if group == Group::Leak && is_begun() {
            PartState::Partly
        } else if asks(|to_do| if let ToDo::Check(field) = to_do { Some(*field) } else { None }) {
            PartState::Doubtful
        } else if asks(|to_do| if let ToDo::Type(field) = to_do { Some(*field) } else { None }) {
            PartState::Partly
        } else {
            PartState::Typed
        }
    }

    /// What to do next on the sheet: first what is in doubt, then what is missing.
    pub fn next_to_do(&self) -> Option<ToDo> {
        let to_do = self.to_do();
        let in_doubt = to_do.iter().find(|to_do| matches!(to_do, ToDo::Check(_)));
        in_doubt.or(to_do.first()).cloned()
    }

    /// Teeth of the gear of a backlash for each tooth of the pinion: turns of the driveshaft for
    /// one of the propshaft.
    pub fn ratio(&self, check: Check) -> Option<Decimal> {
        let Check::Lash(mesh) = check else { return None };
        let pinion = Decimal::from(self.count(Field::PinionTeeth)?);
        Decimal::from(self.count(Field::Teeth(mesh))?).checked_div(pinion)
    }
}

#[cfg(test)]
mod tests {
    use measure::Unit;

    use super::*;
    use crate::{Book, BookId, Fact, Mesh, Stamp, read_fields};

    fn sheet(typed: &[(Field, &str)]) -> Sheet {
        let stamp = Stamp { device: "d".to_owned(), at: 0, act: "a".to_owned() };
        let book = Book::new(BookId::Sheet("s".to_owned()));
        let opened = Fact::SheetOpened { name: "Invented".to_owned(), layout: "b".to_owned() };
        let entries = book.next(vec![opened], &stamp).unwrap();
        let mut book = book.with(entries);
        let typed: Vec<_> =
            typed.iter().map(|(field, text)| (*field, *text, Unit::Millimetre)).collect();
        let facts = read_fields(&Sheet::fold(&book), &typed).unwrap();
        let entries = book.next(facts, &Stamp { act: "b".to_owned(), ..stamp }).unwrap();
        book = book.with(entries);
        Sheet::fold(&book)
    }

    #[test]
    fn a_part_is_empty_then_partly_then_typed() {
        let depth = Group::Limits(Check::Depth);
        assert_eq!(sheet(&[]).part(depth), PartState::Empty);
        let partly = [(Field::Low(Check::Depth), "0.60"), (Field::High(Check::Depth), "0.66")];
        assert_eq!(sheet(&partly).part(depth), PartState::Partly);
        let typed = [partly[0], partly[1], (Field::DepthSide, "mesh")];
        assert_eq!(sheet(&typed).part(depth), PartState::Typed);
    }

    #[test]
    fn a_doubt_comes_first() {
        let sheet =
            sheet(&[(Field::Low(Check::REVERSE), "0.012"), (Field::High(Check::REVERSE), "0.024")]);
        assert_eq!(sheet.part(Group::Limits(Check::REVERSE)), PartState::Doubtful);
        assert_eq!(sheet.next_to_do(), Some(ToDo::Check(Field::Low(Check::REVERSE))));
    }

    #[test]
    fn a_value_in_doubt_may_stand() {
        let low = Field::Low(Check::REVERSE);
        let doubtful = sheet(&[(low, "0.012"), (Field::High(Check::REVERSE), "0.30")]);
        let stands = doubtful.stands(low).unwrap();
        let mut book = Book::new(BookId::Sheet("s".to_owned()));
        let opened = Fact::SheetOpened { name: "Invented".to_owned(), layout: "b".to_owned() };
        let typed = |text: &str| {
            read_fields(&Sheet::default(), &[(low, text, Unit::Millimetre)]).unwrap().remove(0)
        };
        let doubts = |facts: Vec<Fact>, book: &mut Book| {
            for fact in facts {
                let stamp = Stamp { device: "d".to_owned(), at: 0, act: "a".to_owned() };
                let entries = book.next(vec![fact], &stamp).unwrap();
                *book = book.clone().with(entries);
            }
            Sheet::fold(book).doubt(low).is_some()
        };
        assert!(doubts(vec![opened, typed("0.012")], &mut book));
        assert!(!doubts(vec![stands], &mut book));
        assert!(Sheet::fold(&book).stands(low).is_none());
        assert!(doubts(vec![typed("0.013")], &mut book));
        let back = Fact::FieldCleared { field: low };
        assert!(!doubts(vec![back], &mut book));
        assert!(doubts(vec![typed("0.012")], &mut book));
    }

    #[test]
    fn the_ratio_is_gear_over_pinion() {
        let sheet = sheet(&[(Field::PinionTeeth, "14"), (Field::Teeth(Mesh::Forward), "21")]);
        assert_eq!(sheet.ratio(Check::FORWARD), Some(Decimal::new(15, 1)));
        assert_eq!(sheet.ratio(Check::REVERSE), None);
    }
}
