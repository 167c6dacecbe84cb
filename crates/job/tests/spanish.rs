//! What is shown turns, what is kept does not: a program of its own, since a language is learnt once.

use job::guide::{Way, bag, faced, facing, placed, titled, turned};
use job::procedure::{Plan, Procedure, Scope};
use job::{BookId, Check, Entry, Field, Guided, Kept, Position, agreed, item_words};

const SPANISH: &str = r#"
msgid ""
msgstr "Language: es\n"

msgid "Pinion depth gap"
msgstr "Distancia de profundidad del piñón"
msgid "forward low limit"
msgstr "límite mínimo del juego de avante"
msgid "gear aft"
msgstr "engranaje hacia popa"
msgid "aft"
msgstr "hacia popa"
msgid "bag {number}"
msgstr "bolsa {number}"
msgid "{check} read {values}."
msgstr "{check}, leído: {values}."
msgid "shims for {packs}"
msgstr "calzas para {packs}"
msgid "gear set, matched"
msgstr "conjunto de engranajes, emparejado"
msgid "Gear set"
msgstr "Conjunto de engranajes"
msgid "Gears and pinion, as a set"
msgstr "Engranajes y piñón, como conjunto"
msgid "Splines"
msgstr "Estrías"
msgid "{part} rejected"
msgstr "{part}: rechazo"
msgid "Scope: {scope}{because}."
msgstr "Alcance: {scope}{because}."
msgid "Step {step} done."
msgstr "Paso {step} hecho."
msgid "step"
msgstr "paso"
msgid "“{title}”"
msgstr "«{title}»"
msgid "Make safe and contain spills"
msgstr "Poner en seguridad y contener derrames"
"#;

#[test]
fn what_is_shown_turns_and_what_is_kept_does_not() {
    words::learn(SPANISH).unwrap();

    assert_eq!(Check::Depth.name(), "Distancia de profundidad del piñón");
    assert_eq!(serde_json::to_string(&Check::Depth).unwrap(), "\"depth\"");
    let low = Field::Low(Check::FORWARD);
    assert_eq!(low.facts().name(), "límite mínimo del juego de avante");
    let b2 = Position::named("B2").unwrap();
    assert_eq!((b2.thicker, b2.family), ("engranaje hacia popa", "forward race"));

    // The way a part faced is written in English, whatever language it was chosen in.
    let said = facing("", Some(Way::Aft));
    assert_eq!((said.as_str(), faced(&said).as_str()), ("aft", "hacia popa"));
    assert_eq!(turned(&said), "to the nose");
    assert_eq!(Way::of("ranuras hacia popa"), Some(Way::Aft), "as a Spanish hand types it");
    let fact = bag(&Default::default(), "b30", "pinion-nut", "bag 2", &said, None).unwrap();
    let Guided::PartBagged { part, place, facing, .. } = &fact else { panic!("{fact:?}") };
    assert_eq!((part.as_str(), place.as_str(), facing.as_str()), ("pinion-nut", "bag 2", "aft"));
    assert_eq!(placed(place), "bolsa 2");
    assert_eq!(placed("tray 2"), "tray 2", "typed words stay");

    assert_eq!(item_words("shims for B1"), "calzas para B1");
    assert_eq!(agreed("Gear set, matched"), "Conjunto de engranajes, emparejado");
    assert_eq!(agreed("New housing"), "New housing");

    let scope = |reason: &str| {
        let fact = Guided::ScopeChosen { scope: Scope::GearSet, reason: reason.to_owned() };
        let id = "a.0".to_owned();
        let (book, device) = (BookId::Job("j".to_owned()), "d".to_owned());
        Entry { id, book, counter: 1, device, at: 0, fact: fact.into() }.sentence()
    };
    assert_eq!(
        scope("Gears and pinion, as a set rejected, Splines rejected"),
        "Alcance: conjunto de engranajes: Engranajes y piñón, como conjunto: rechazo, Estrías: rechazo."
    );
    assert_eq!(scope("metal found"), "Alcance: conjunto de engranajes: metal found.");

    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/wire/entries-v1.jsonl");
    let golden = std::fs::read_to_string(path).unwrap();
    let read = golden.lines().find(|line| line.contains("\"depth\"")).unwrap();
    let Kept::Known(entry) = Kept::from_line(read) else { panic!("{read} is not read") };
    assert!(entry.sentence().starts_with("Distancia de profundidad del piñón, leído: "));
    assert_eq!(entry.to_line(), read);
}

#[test]
fn a_step_is_named_by_its_title_in_the_sentences_of_another_language() {
    words::learn(SPANISH).unwrap();
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../public/procedures/layout-b-r1.jsonl");
    let procedure = Procedure::parse("b", 1, &std::fs::read_to_string(path).unwrap()).unwrap();
    let plan = Plan::of(&procedure, Scope::Reseal, &Default::default());
    let said = words::say!("Step {step} done.", step = "b02");
    assert!(titled(&said, &plan).starts_with('«'), "{said}");
    assert!(!titled(&said, &plan).contains("b02"));
}
