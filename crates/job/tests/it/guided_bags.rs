//! Bags and ladder, the sign-off of the packs, and the van as it is loaded.

use job::guide::*;
use job::procedure::Scope;
use job::*;

use crate::bench::Bench;
use crate::guided::*;
use crate::procedures;

fn rungs(hand: &Hand) -> Ladder {
    ladder(&hand.plan(), &hand.log())
}

#[test]
fn a_part_gets_the_next_number_a_bag_and_can_be_put_right() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b10");
    let at_first = rungs(&hand);
    let next = &at_first.rungs[at_first.next_off().unwrap()];
    assert_eq!((next.part.as_str(), next.shown, next.number), ("shift-coupling", 9, None));
    assert_eq!(at_first.places(next), ["bag 2", "bag 1"], "another step, another bag");
    hand.write(bag(&hand.log(), "b10", "shift-coupling", " bag 2 ", "pin aft", None).unwrap());
    let own = bag(&hand.log(), "b10", "Heat shield", "tray", "", Some("p".into())).unwrap();
    hand.write(own);
    let then = rungs(&hand);
    let own = &then.rungs[9];
    assert_eq!((own.shown, own.name.as_str(), &own.back_in), (10, "Heat shield", &None));
    assert_eq!(then.places(&then.rungs[10])[0], "bag 3");
    let twice = bag(&hand.log(), "b10", "heat shield", "tray", "", None).unwrap_err().to_string();
    assert_eq!(twice, "Heat shield is number 10 already. Change its place there.");

    // Its number and its photo stay when it is put right.
    assert_eq!(then.missing, ["9 shift coupling: no photo."]);
    hand.write(put_right(&then.rungs[8], "bag 4", "pin to the nose", Some("q".into())).unwrap());
    hand.write(put_right(&then.rungs[9], "bag 4", "", None).unwrap());
    let put = rungs(&hand);
    assert_eq!((put.out, put.missing.len()), (10, 0));
    assert_eq!(put.rungs[8].faced(), Some("pin to the nose"));
    assert_eq!(Rung { facing: NOT_SURE.into(), ..put.rungs[8].clone() }.faced(), None);
    assert_eq!(put.rungs[9].photo.as_deref(), Some("p"));
    assert_eq!(put_right(&put.rungs[10], "bag 1", "", None), None, "it is not out");
}

#[test]
fn packs_are_rungs_and_the_last_off_goes_on_first() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b18");
    hand.capture("b18", "B1 as found", pack(&["0.50", "0.10"]));
    let found = rungs(&hand);
    let b1 = found.rungs.iter().find(|rung| rung.part == "B1-pack").unwrap();
    assert_eq!((b1.name.as_str(), b1.pack.as_deref()), ("B1 pack", Some("B1")));
    assert_eq!((b1.step.as_str(), b1.back_in.as_deref()), ("b18", Some("b37")));
    assert_eq!(found.places(b1), ["B1"], "a pack goes to its tag");

    hand.work_to("b21");
    let out = rungs(&hand);
    assert!(out.rungs[out.next_off().unwrap()].part.ends_with("-cone"), "only in the set-up");
    let counts = counts(&hand.plan(), &hand.log());
    assert_eq!(out.to_strip(&counts), Vec::<String>::new());
    let to_close = out.to_close(&counts);
    assert!(to_close[0].ends_with(": not in."), "{to_close:?}");
    assert!(to_close.iter().any(|says| says.ends_with(": not counted in.")), "{to_close:?}");
    let last = &out.rungs[out.next_on().unwrap()];
    assert_eq!(last.number, Some(out.next_number - 1));
    hand.write(Guided::PartFitted { number: out.next_number - 1 });
    let fitted = rungs(&hand);
    assert_eq!(fitted.next_on(), Some(out.next_on().unwrap() - 1));
    assert_eq!(fitted.to_close(&counts).len(), to_close.len() - 1);
}

#[test]
fn packs_are_frozen_by_two_people_or_by_one_who_says_so() {
    let mut bench = Bench::demo();
    let plan = procedures::plan("b", Scope::GearSet);
    let look = |bench: &Bench| {
        let (job, sheet, _) = bench.state();
        freeze(&job, &sheet, &plan, Shown::default()).unwrap()
    };
    let early = look(&bench);
    assert_eq!((early.step.as_str(), early.title.as_str()), ("b35", "Freeze packs"));
    let not_yet = early.sign("JO", Some("SA"), 1).unwrap_err().to_string();
    assert!(not_yet.starts_with("Not yet. "), "{not_yet}");

    bench.fit_advice();
    bench.read(Check::Depth, &["0.65"; 4]);
    bench.read(Check::FORWARD, &["0.31", "0.32", "0.31", "0.32"]);
    bench.read(Check::REVERSE, &["0.44"; 4]);
    let ready = look(&bench);
    assert_eq!(ready.missing, Vec::<String>::new());
    let b2 = ready.packs.iter().find(|pack| pack.tag == "B2").unwrap();
    assert_eq!(b2.state, CheckState::InBand);
    assert!(b2.words.contains(" · forward lash 0."), "{}", b2.words);
    let says = |set: &str, seen| ready.sign(set, seen, 1).unwrap_err().to_string();
    let twice = "JO stands there twice. A second person signs, or say that you work alone.";
    assert_eq!(says("jo", Some(" JO ")), twice);
    let none = "No initials of the second person. Type one to three letters, such as SA.";
    assert_eq!(says("JO", Some("")), none);
    assert!(says("J.O. Smith", None).starts_with("No initials of who set it."));

    let mut hand = Hand::on(bench, Scope::GearSet);
    hand.write_all(ready.sign("jo", Some("sa"), 1).unwrap());
    assert_eq!(look(&hand.bench).signed.as_deref(), Some("JO set, SA saw"));
    let frozen = hand.log().capture("b35", "B2 frozen").unwrap().value.pack_total();
    assert_eq!(frozen, hand.bench.state().0.pack(Slot::B2).map(PackFit::total));
    assert!(hand.log().capture("b35", "frozen").is_some(), "the time");
    hand.write_all(ready.sign("jo", None, 1).unwrap());
    let alone = look(&hand.bench).signed;
    assert_eq!(alone.as_deref(), Some("JO set, not seen by a second person"));

    // Where old packs go back, the step that lists them is signed.
    let reseal = procedures::plan("b", Scope::Reseal);
    let (job, sheet, _) = hand.bench.state();
    assert_eq!(freeze(&job, &sheet, &reseal, Shown::default()).unwrap().step, "b27");
    let exchange = procedures::plan("b", Scope::Exchange);
    assert_eq!(freeze(&job, &sheet, &exchange, Shown::default()), None);
}

#[test]
fn the_van_is_sorted_by_use_and_says_what_is_short() {
    let mut hand = Hand::new(Scope::GearSet);
    let kept = |tool: &str, name: &str| Guided::ToolKept {
        tool: tool.into(),
        name: name.into(),
        number: String::new(),
    };
    let facts = [kept("t1", "dial indicator"), kept("t2", "carrier puller"), kept("t3", "loupe")];
    let facts = facts.map(|fact| (BookId::Drawer, fact.into())).into();
    hand.bench.record(facts).unwrap();
    let (_, sheet, _) = Bench::demo().state();
    let load = |hand: &Hand, tin: &Tin| {
        let drawer = Drawer::fold(&hand.bench.drawer);
        let list = pack_list(&hand.plan(), &hand.course(), &hand.log(), &drawer);
        van(&list, &hand.log(), &sheet, tin, &["thrust washers".into(), "thrust washers".into()])
    };
    let tin = Bench::demo().state().2;
    let at_first = load(&hand, &tin);
    let names: Vec<&str> = at_first.groups.iter().map(|group| group.name).collect();
    let expected = ["Measure", "Turn and pull", "Bench and hand", "Consumables", "Parts to order"];
    assert_eq!(names, expected);
    assert_eq!(at_first.groups[4].items.len(), 1, "ordered once");
    assert_eq!(at_first.next.as_deref(), Some("dial indicator"));
    assert_eq!((at_first.packed, at_first.to_do.len()), (0, at_first.count));
    assert_eq!(at_first.short, at_first.not_owned.len());
    let shims: Vec<_> = at_first.groups[3].items.iter().map(|item| item.name.as_str()).collect();
    assert!(shims.iter().any(|name| name.starts_with("shims for B1")), "{shims:?}");
    assert!(!shims.contains(&"shim assortment"), "the tin says which");
    assert_eq!(at_first.doubts, Vec::<String>::new());
    let none = load(&hand, &Tin::default()).doubts;
    assert_eq!(none[0], "None for B1 in the tin. Take some, or the pack cannot change.");

    let ready = |tool: &str, how, from: &str| Guided::ToolReadied {
        tool: tool.into(),
        how,
        from: from.into(),
    };
    hand.write(ready("dial indicator", Readied::Packed, ""));
    hand.write(ready("ring wrench", Readied::Borrowed, ""));
    hand.write(ready("press", Readied::Ordered, ""));
    let then = load(&hand, &tin);
    assert_eq!((then.packed, then.short), (2, at_first.short - 2));
    assert!(then.to_do.contains(&"Ring wrench: say who lends it.".to_owned()));
    assert!(then.to_do.contains(&"Press: on order.".to_owned()));
    hand.write(ready("ring wrench", Readied::Borrowed, "Sam, back by Friday"));
    assert_eq!(load(&hand, &tin).to_do.len(), then.to_do.len() - 1);
    let ring = then.not_owned.iter().find(|item| item.name == "ring wrench").unwrap();
    assert!(ring.asked_in().starts_with("steps "), "{}", ring.asked_in());
}

#[test]
fn a_rejected_part_gives_the_wider_scope_its_reason() {
    let criteria = Criteria::parse(&procedures::text(Criteria::ADDRESS)).unwrap();
    let mut hand = Hand::new(Scope::Reseal);
    let parts = |hand: &Hand| inspection(&criteria, &hand.plan(), &hand.log());
    let before = effects(&parts(&hand), &hand.plan());
    assert_eq!(before.widening(&parts(&hand)), None);
    let open = Effect::to_judge(&parts(&hand));
    assert_eq!(open.len(), parts(&hand).len());
    hand.write(Guided::PartJudged {
        part: "taper-bearings".into(),
        verdict: PartVerdict::Reject,
        signs: vec!["etched lines".into()],
        reason: "etched lines".into(),
        photo: None,
    });
    let effect = effects(&parts(&hand), &hand.plan());
    let Some(Guided::ScopeChosen { scope, reason }) = effect.widening(&parts(&hand)) else {
        panic!("it widens")
    };
    assert_eq!((scope, reason.as_str()), (Scope::Bearings, "Tapered bearings and races rejected"));
    let says = "Tapered bearings and races: No photo of what was rejected.";
    assert!(Effect::to_judge(&parts(&hand)).contains(&says.to_owned()));
}
