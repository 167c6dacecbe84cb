//! Which help each screen has. There is no rest: a screen without help does not compile.

use words::t;

use super::picture::Shows;
use crate::address::Screen;

/// The help of a screen: two sentences and a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Help {
    /// The screen's name.
    pub title: &'static str,
    /// What it is for.
    pub what: &'static str,
    /// What to do there.
    pub how: &'static str,
    /// What is drawn beside.
    pub shows: Shows,
}

const fn of(title: &'static str, what: &'static str, how: &'static str, shows: Shows) -> Help {
    Help { title, what, how, shows }
}

/// The help of a screen.
pub fn help(screen: &Screen) -> Help {
    match screen {
        Screen::Bench | Screen::Card { .. } | Screen::Next { .. } => of(
            t("Bench"),
            t("Every job stands here with the next thing to do, and the blue button goes there."),
            t("Begin another one below, or go to the practice unit, the board and the settings."),
            Shows::Case,
        ),
        Screen::First => of(
            t("First opening"),
            t(
                "Lay out the practice job to see how it goes, or start a real one with your unit’s manual beside you.",
            ),
            t(
                "What you type is saved on this device at every tap; put the app on it first where that is offered.",
            ),
            Shows::Case,
        ),
        Screen::NewJob => of(
            t("New job"),
            t(
                "Choose the layout that looks like the gearcase in front of you, then its unit sheet, then name the boat.",
            ),
            t(
                "A sheet is typed once, from the unit’s own manual, and serves every unit of that kind.",
            ),
            Shows::Layout,
        ),
        Screen::Sheet { .. } => of(
            t("Unit sheet"),
            t("Type the limits from the unit’s own manual: the app has none built in."),
            t(
                "A value that looks odd is kept and warned of; what is still missing is named, with what it is needed for.",
            ),
            Shows::Packs,
        ),
        Screen::Tin => of(
            t("Shim tin"),
            t(
                "Measure each shim at two places and put it in the tin: only shims that are really here are advised.",
            ),
            t("Type what the closed micrometer reads first, so that its zero is taken off."),
            Shows::Shims,
        ),
        Screen::Job { .. } | Screen::Waits { .. } => of(
            t("Job"),
            t("The stages of the job, what waits, and where the work stands."),
            t(
                "Choose the scope first; the blue button is the next step, and what is locked says what opens it.",
            ),
            Shows::Layout,
        ),
        Screen::Step { .. } => of(
            t("Step"),
            t(
                "Read the cautions, do what the step says, and write down what it asks for as you go.",
            ),
            t("A step may be left out or opened again with a reason, which stands on the record."),
            Shows::Case,
        ),
        Screen::OwnSteps { .. } => of(
            t("Own steps"),
            t("Add a step your shop does on this unit, move one, or leave one out with a reason."),
            t("They stay with the unit sheet and come with the next job on it."),
            Shows::Case,
        ),
        Screen::OpenMap { .. } => of(
            t("Map of the job"),
            t("Which steps are open, locked, done, or stale because something under them changed."),
            t("Press one to go there; a shut gate says what is missing."),
            Shows::Case,
        ),
        Screen::Ladder { .. } => of(
            t("Bags and ladder"),
            t(
                "Every part and pack that comes off gets the next number, its place and the way it faced.",
            ),
            t(
                "Going back, tick the ladder off from its foot, so that nothing is left on the bench.",
            ),
            Shows::Packs,
        ),
        Screen::Inspect { .. } => of(
            t("Inspection"),
            t("Judge each part by its signs: reject it, watch it, or use it again with a reason."),
            t("What a verdict changes in scope, orders and price is shown below it."),
            Shows::Seals,
        ),
        Screen::Consent { .. } => of(
            t("Consent"),
            t(
                "Agree work, limit and when to stop before the case is opened, and again when inspection changes the price.",
            ),
            t("Sign on the screen or by initials; a no is kept as well as a yes."),
            Shows::Layout,
        ),
        Screen::Tools { job: Some(_) } => of(
            t("Pack list"),
            t(
                "What to take along, from the steps still to do, less what lies in your tool drawer.",
            ),
            t("Tick what is packed, borrowed or ordered."),
            Shows::Gauge,
        ),
        Screen::Tools { job: None } => of(
            t("Tool drawer"),
            t("The tools you have, found by any of their numbers, also by one that is wrong."),
            t("Put a tool in once and no pack list asks for it again."),
            Shows::Gauge,
        ),
        Screen::Freeze { .. } => of(
            t("Freeze packs"),
            t("Two people look at the tags and sign for the packs that lie in the unit."),
            t("Who works alone says so, and the record says that no second person saw it."),
            Shows::Packs,
        ),
        Screen::Checks { .. } => of(
            t("Bench checks"),
            t(
                "The measurements beside shimming: leak, runout, rolling torque, fits, seals, oil and more.",
            ),
            t("Each works alone too, and is kept in the job when it is opened from one."),
            Shows::Band,
        ),
        Screen::BenchCheck { .. } => of(
            t("Bench check"),
            t("Type what the gauge says, in its own unit, with the limit from your manual."),
            t(
                "The answer carries its uncertainty: a reading too near a limit proves nothing, and is called so.",
            ),
            Shows::Band,
        ),
        Screen::SetUp { .. } => of(
            t("Set-up"),
            t(
                "What lies in the case, what each gauge read, which shims to fit next, and what the gauges will then read.",
            ),
            t(
                "Write down the packs as found first; after a change read again what has become stale.",
            ),
            Shows::Packs,
        ),
        Screen::Reading { .. } => of(
            t("Reading"),
            t(
                "Set the gauge as drawn, rock the gear gently, and type what it reads at several places round the gear.",
            ),
            t("The band says in, out, or too near a limit to say; each digit is kept as typed."),
            Shows::Gauge,
        ),
        Screen::Influence { .. } => of(
            t("What moves what"),
            t(
                "How far each check moves when a pack gets thicker, by the gears’ geometry and by what your readings taught.",
            ),
            t("Look here before you turn a sign: one pack often moves several checks."),
            Shows::Packs,
        ),
        Screen::Record { .. } => of(
            t("Record"),
            t(
                "The whole job on paper, as found against as left; a draft for as long as anything is open or stale.",
            ),
            t("Print it, save it as a PDF, or hand it over as one file that opens anywhere."),
            Shows::Band,
        ),
        Screen::Board => of(
            t("Shop board"),
            t(
                "A lane for each job, to be read from across the shop: its stage, what it waits for, and its clock.",
            ),
            t("Press a lane to go to its next step; the owner’s name is never on it."),
            Shows::Case,
        ),
        Screen::Settings => of(
            t("Settings"),
            t("Keep a backup off this device: it is one file with everything in it."),
            t("Units and light change what is shown, never what was typed."),
            Shows::Case,
        ),
        Screen::Find => of(
            t("Find a job"),
            t(
                "Type part of the boat, the unit, a tag, the job’s number or a day; every word must stand on the job.",
            ),
            t("Jobs in the archive are found too, and open like any other."),
            Shows::Case,
        ),
        Screen::Archive { .. } => of(
            t("Tags and archive"),
            t(
                "A finished job goes off the bench and the board, and is found again by its words and tags.",
            ),
            t(
                "Its photos may leave this device once a backup has them; brought in, the backup puts them back.",
            ),
            Shows::Case,
        ),
        Screen::BringIn => of(
            t("Bring in"),
            t(
                "You see what a file changes before anything is kept, and nothing that is here is overwritten.",
            ),
            t("Where two devices wrote about the same thing, say which stands."),
            Shows::Case,
        ),
        Screen::SendJob { .. } | Screen::SendSheet { .. } => of(
            t("Send"),
            t(
                "One file that another device brings in; a unit sheet can also go as a code on the screen.",
            ),
            t("Nothing leaves this device but by your hand."),
            Shows::Case,
        ),
        Screen::Locked { .. } => of(
            t("Shop PIN"),
            t(
                "The shop has set a PIN for what goes out of this device and for the owner’s details.",
            ),
            t("Give it to go on; work at the bench needs none."),
            Shows::Closed,
        ),
        Screen::Practice => of(
            t("Practice unit"),
            t("Virtual gearcases with hidden faults: measure, decide, and be told why."),
            t("Nothing you do here touches your jobs, your tin or your sheets."),
            Shows::Gauge,
        ),
        Screen::ShortGuide | Screen::Help { .. } => of(
            t("Short guide"),
            t("The whole job on a few pages, to read or to hang up beside the bench."),
            t("Choose the paper and print it, or save it as a PDF."),
            Shows::Layout,
        ),
        Screen::States | Screen::Writing => of(
            t("For the builders"),
            t("Every part of the app in every state, and entries written for a test."),
            t("Nothing of it is needed for the work."),
            Shows::Case,
        ),
    }
}
