//! Ladder, map, drawer, van list, inspection, clocks and a shop's own steps.

use job::guide::*;
use job::procedure::{Change, Changes, Plan, Scope};
use job::*;

use crate::bench::MINUTE;
use crate::guided::*;
use crate::procedures;

#[test]
fn the_ladder_numbers_what_comes_off_and_goes_back_in_reverse() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b10");
    let rungs = |hand: &Hand| ladder(&hand.plan(), &hand.log());
    let ladder = rungs(&hand);
    assert_eq!((ladder.out, ladder.next_number), (8, 9));
    let numbers: Vec<_> = ladder.rungs.iter().take(9).map(|rung| rung.number).collect();
    let expected: Vec<_> = (1..9).map(Some).chain([None]).collect();
    assert_eq!(numbers, expected);
    let back: Vec<&str> =
        ladder.going_back.iter().map(|rung| ladder.rungs[*rung].name.as_str()).collect();
    assert_eq!(back[..3], ["Anodes", "Trim tab", "Propeller"]);
    let lock = ladder.rungs.iter().find(|rung| rung.part == "prop-lock").unwrap();
    assert!(lock.one_use, "a new one goes on");
    assert_eq!((lock.step.as_str(), lock.back_in.as_deref()), ("b04a", Some("b47b")));
    hand.write(bag(&hand.log(), "b10", "shift-coupling", "bag 3", "", None).unwrap());
    assert_eq!(rungs(&hand).missing, ["9 shift coupling: no photo."]);
    hand.write(Guided::PartFitted { number: 9 });
    assert_eq!(rungs(&hand).fitted, 1);
}

#[test]
fn the_map_has_every_step_and_draws_only_to_the_right() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b28");
    let map = map(&hand.plan(), &hand.course());
    assert_eq!(map.nodes.len(), 70);
    assert!(map.links.iter().all(|(from, to)| map.nodes[*from].column < map.nodes[*to].column));
    let mut places: Vec<_> = map.nodes.iter().map(|node| (node.column, node.row)).collect();
    places.sort_unstable();
    places.dedup();
    assert_eq!(places.len(), map.nodes.len(), "no two nodes in one place");
    let node = map.nodes.iter().find(|node| node.id == "b28").unwrap();
    assert_eq!((&node.state, node.stage, node.gated), (&StepState::Open, "Shim", true));
}

#[test]
fn a_tool_is_found_by_any_of_its_numbers_and_a_wrong_one_says_so() {
    let mut hand = Hand::new(Scope::GearSet);
    let kept = |tool: &str, name: &str, number: &str| Guided::ToolKept {
        tool: tool.into(),
        name: name.into(),
        number: number.into(),
    };
    let facts = [
        kept("t1", "pinion-nut socket", "31"),
        kept("t2", "race driver", "13"),
        Guided::ToolNamed { tool: "t1".into(), other: "long socket".into() },
        Guided::ToolCorrected {
            tool: "t1".into(),
            wrong: "13".into(),
            note: "does not enter the spline, 31 fits".into(),
        },
        kept("t3", "seal hook", ""),
        Guided::ToolGone { tool: "t3".into(), why: "broken".into() },
    ];
    let facts = facts.map(|fact| (BookId::Drawer, fact.into())).into();
    hand.bench.record(facts).unwrap();
    let drawer = Drawer::fold(&hand.bench.drawer);
    let found = |text: &str| -> Vec<(String, String)> {
        let found = drawer.search(text).into_iter();
        found.map(|found| (found.tool.name.clone(), found.minds)).collect()
    };
    let wrong = "13 is wrong: does not enter the spline, 31 fits.";
    assert_eq!(
        found("13"),
        [("pinion-nut socket".into(), wrong.into()), ("race driver".into(), String::new())]
    );
    assert_eq!(found("LONG so"), [("pinion-nut socket".into(), String::new())]);
    assert_eq!(found("hook"), []);
    assert_eq!(found(" "), []);

    // The van list asks for this unit's own steps, less what is in the drawer.
    let list = |hand: &Hand| {
        pack_list(&hand.plan(), &hand.course(), &hand.log(), &Drawer::fold(&hand.bench.drawer))
    };
    let all = list(&hand);
    let item = |list: &PackList, name: &str| {
        list.tools.iter().chain(&list.consumables).find(|item| item.name == name).unwrap().clone()
    };
    let socket = item(&all, "pinion-nut socket");
    assert_eq!(socket.tool.as_deref(), Some("t1"));
    assert_eq!(socket.says, format!("no. 31; {wrong}"));
    let numbers = ["b16", "b29", "b37"].map(|id| hand.course().step(id).unwrap().number);
    assert_eq!(socket.steps, numbers, "every step that asks for it");
    assert!(!socket.short && item(&all, "ring wrench").short && item(&all, "seal hook").short);
    assert!(!item(&all, "new seals").short, "consumables are bought, not owned");
    let lent = Guided::ToolReadied {
        tool: "ring wrench".into(),
        how: Readied::Borrowed,
        from: "Sam, back by Friday".into(),
    };
    hand.write(lent);
    let then = list(&hand);
    assert_eq!((then.short, then.packed), (all.short - 1, all.packed + 1));
    hand.work_to("b46");
    assert!(list(&hand).tools.len() < all.tools.len(), "what is done asks for nothing");
}

#[test]
fn a_rejected_part_widens_the_scope_and_orders() {
    let criteria = Criteria::parse(&procedures::text(Criteria::ADDRESS)).unwrap();
    for layout in procedures::LAYOUTS {
        let plan = procedures::plan(layout, Scope::GearSet);
        assert!(inspection(&criteria, &plan, &GuideLog::default()).len() >= 10, "{layout}");
    }
    let mut hand = Hand::new(Scope::Reseal);
    let judge = |part: &str, verdict, reason: &str, photo: Option<&str>| Guided::PartJudged {
        part: part.into(),
        verdict,
        signs: Vec::new(),
        reason: reason.into(),
        photo: photo.map(str::to_owned),
    };
    let parts = |hand: &Hand| inspection(&criteria, &hand.plan(), &hand.log());
    let open = parts(&hand).len();
    assert_eq!(effects(&parts(&hand), &hand.plan()), Effect { open, ..Effect::default() });
    hand.write(judge("taper-bearings", PartVerdict::Reject, "etched lines", None));
    hand.write(judge("gears", PartVerdict::Watch, "", None));
    let effect = effects(&parts(&hand), &hand.plan());
    assert_eq!(effect.widens_to, Some(Scope::Bearings));
    assert_eq!(effect.orders, ["bearing with its own race"]);
    assert_eq!(
        effect.says,
        ["Tapered bearings and races rejected: the scope becomes seals and bearings, and the \
          packs are set up again."]
    );
    assert_eq!(effect.open, open - 2);
    let bearing =
        parts(&hand).into_iter().find(|part| part.criteria.part == "taper-bearings").unwrap();
    assert_eq!(bearing.missing, "No photo of what was rejected.");
    let ticked = |signs: &[&str]| {
        let signs: Vec<String> = signs.iter().map(|sign| (*sign).to_owned()).collect();
        suggest(&bearing.criteria, &signs)
    };
    assert_eq!(ticked(&["stain that wipes off", "etched lines"]), Some(PartVerdict::Reject));
    assert_eq!(ticked(&["stain that wipes off"]), Some(PartVerdict::Reuse));
    assert_eq!(ticked(&[]), None);
    let refused = hand
        .bench
        .record(vec![(
            BookId::Job("j".into()),
            judge("gears", PartVerdict::Reject, "", None).into(),
        )])
        .unwrap_err();
    assert_eq!(refused.to_string(), "Nothing typed for the reason. Type it first.");
}

#[test]
fn leak_stages_are_a_clock_with_marks() {
    let mut hand = Hand::new(Scope::Reseal);
    hand.work_to("b43");
    hand.write(Guided::ClockStarted {
        clock: "leak".into(),
        step: "b43".into(),
        label: "pressure, working stage".into(),
        marks: vec![0, 1, 5, 10],
    });
    hand.bench.at += 5 * MINUTE;
    let view = &clocks(&hand.log(), &hand.moment())[0];
    let passed: Vec<bool> = view.marks.iter().map(|(.., passed)| *passed).collect();
    assert_eq!((view.left, passed), (5, vec![true, true, true, false]));
    assert_eq!(view.percent, 50);
    hand.write(Guided::ClockStopped { clock: "leak".into(), reason: "hose slipped".into() });
    assert!(clocks(&hand.log(), &hand.moment()).is_empty());
    assert_eq!(usual_minutes("cooling from"), Some((30, 90)));
    assert_eq!(usual_minutes("first lube check due"), None);
}

#[test]
fn a_shop_adds_drops_and_moves_steps_of_its_own() {
    let procedure = procedures::procedure("b");
    let own = Change::Added {
        step: "own-1".into(),
        after: "b10a".into(),
        title: "Photograph the skeg".into(),
        why: "Old damage is not ours".into(),
        caution: String::new(),
        records: vec!["photo:skeg from both sides".into()],
    };
    let dropped = Change::Dropped { step: "b34b".into(), reason: "no pattern here".into() };
    let moved = Change::Moved { step: "b20".into(), after: "b14".into() };
    let changes = Changes(vec![own.clone(), dropped, moved]);
    let plan = Plan::of(&procedure, Scope::GearSet, &changes);
    assert_eq!(plan.set_aside, Vec::<String>::new());
    let at = |id: &str| plan.index(id).unwrap();
    assert_eq!(at("own-1"), at("b10a") + 1);
    assert!(plan.comes_before(at("own-1"), plan.steps.len() - 1), "the paper waits for it");
    assert_eq!(plan.index("b34b"), None);
    assert!(plan.comes_before(at("b33"), at("b35")), "order goes through what was dropped");
    assert_eq!(at("b20"), at("b14") + 1);

    let says = |change: Change| plan.changed(&change).unwrap_err().to_string();
    let drop = |step: &str| Change::Dropped { step: step.into(), reason: "no".into() };
    assert_eq!(
        says(drop("b16")),
        "“Hold the driveshaft by its splines, loosen the pinion nut” takes off or fits parts. \
         Skip it in the job, with a reason."
    );
    assert!(says(drop("b30")).ends_with("Keep it."), "a gate reads the depth gap");
    assert!(says(drop("b02")).contains("makes the rest safe"));
    let early = Change::Moved { step: "b36".into(), after: "b02".into() };
    assert!(says(early).ends_with("hang together. Keep their order."));
    assert_eq!(says(own), "Step own-1 is there already. Give the new one another name.");

    // A change that fits no more is set aside and said; one for another scope is not.
    let odd = Changes(vec![drop("b02"), drop("b34b")]);
    let reseal = Plan::of(&procedure, Scope::Reseal, &odd);
    assert_eq!(reseal.set_aside.len(), 1);
}

#[test]
fn own_steps_are_kept_in_the_sheets_book() {
    let mut hand = Hand::new(Scope::GearSet);
    let sheet = BookId::Sheet("s".into());
    let opened = Fact::SheetOpened { name: "Invented".into(), layout: "b".into() };
    let own = Guided::StepAdded {
        step: "own-1".into(),
        after: "b01".into(),
        title: "Ask for the key".into(),
        why: String::new(),
        caution: String::new(),
        records: vec!["text:where the key hangs".into()],
    };
    hand.bench.record(vec![(sheet.clone(), opened), (sheet, own.into())]).unwrap();
    hand.finish("b01").unwrap();
    assert_eq!(hand.next().as_deref(), Some("own-1"));
    hand.finish("own-1").unwrap();
    assert_eq!(hand.next().as_deref(), Some("b02"));
}
