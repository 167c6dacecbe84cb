//! Which help each screen has. There is no rest: a screen without help does not compile.

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
            "Bench",
            "Every job stands here with the next thing to do, and the blue button goes there.",
            "Begin another one below, or go to the practice unit, the board and the settings.",
            Shows::Case,
        ),
        Screen::First => of(
            "First opening",
            "Lay out the practice job to see how it goes, or start a real one with your unit’s manual beside you.",
            "What you type is saved on this device at every tap; put the app on it first where that is offered.",
            Shows::Case,
        ),
        Screen::NewJob => of(
            "New job",
            "Choose the layout that looks like the gearcase in front of you, then its unit sheet, then name the boat.",
            "A sheet is typed once, from the unit’s own manual, and serves every unit of that kind.",
            Shows::Layout,
        ),
        Screen::Sheet { .. } => of(
            "Unit sheet",
            "Type the limits from the unit’s own manual: the app has none built in.",
            "A value that looks odd is kept and warned of; what is still missing is named, with what it is needed for.",
            Shows::Packs,
        ),
        Screen::Tin => of(
            "Shim tin",
            "Measure each shim at two places and put it in the tin: only shims that are really here are advised.",
            "Type what the closed micrometer reads first, so that its zero is taken off.",
            Shows::Shims,
        ),
        Screen::Job { .. } | Screen::Waits { .. } => of(
            "Job",
            "The stages of the job, what waits, and where the work stands.",
            "Choose the scope first; the blue button is the next step, and what is locked says what opens it.",
            Shows::Layout,
        ),
        Screen::Step { .. } => of(
            "Step",
            "Read the cautions, do what the step says, and write down what it asks for as you go.",
            "A step may be left out or opened again with a reason, which stands on the record.",
            Shows::Case,
        ),
        Screen::OwnSteps { .. } => of(
            "Own steps",
            "Add a step your shop does on this unit, move one, or leave one out with a reason.",
            "They stay with the unit sheet and come with the next job on it.",
            Shows::Case,
        ),
        Screen::OpenMap { .. } => of(
            "Map of the job",
            "Which steps are open, locked, done, or stale because something under them changed.",
            "Press one to go there; a shut gate says what is missing.",
            Shows::Case,
        ),
        Screen::Ladder { .. } => of(
            "Bags and ladder",
            "Every part and pack that comes off gets the next number, its place and the way it faced.",
            "Going back, tick the ladder off from its foot, so that nothing is left on the bench.",
            Shows::Packs,
        ),
        Screen::Inspect { .. } => of(
            "Inspection",
            "Judge each part by its signs: reject it, watch it, or use it again with a reason.",
            "What a verdict changes in scope, orders and price is shown below it.",
            Shows::Seals,
        ),
        Screen::Consent { .. } => of(
            "Consent",
            "Agree work, limit and when to stop before the case is opened, and again when inspection changes the price.",
            "Sign on the screen or by initials; a no is kept as well as a yes.",
            Shows::Layout,
        ),
        Screen::Tools { job: Some(_) } => of(
            "Pack list",
            "What to take along, from the steps still to do, less what lies in your tool drawer.",
            "Tick what is packed, borrowed or ordered.",
            Shows::Gauge,
        ),
        Screen::Tools { job: None } => of(
            "Tool drawer",
            "The tools you have, found by any of their numbers, also by one that is wrong.",
            "Put a tool in once and no pack list asks for it again.",
            Shows::Gauge,
        ),
        Screen::Freeze { .. } => of(
            "Freeze packs",
            "Two people look at the tags and sign for the packs that lie in the unit.",
            "Who works alone says so, and the record says that no second person saw it.",
            Shows::Packs,
        ),
        Screen::Checks { .. } => of(
            "Bench checks",
            "The measurements beside shimming: leak, runout, rolling torque, fits, seals, oil and more.",
            "Each works alone too, and is kept in the job when it is opened from one.",
            Shows::Band,
        ),
        Screen::BenchCheck { .. } => of(
            "Bench check",
            "Type what the gauge says, in its own unit, with the limit from your manual.",
            "The answer carries its uncertainty: a reading too near a limit proves nothing, and is called so.",
            Shows::Band,
        ),
        Screen::SetUp { .. } => of(
            "Set-up",
            "What lies in the case, what each gauge read, which shims to fit next, and what the gauges will then read.",
            "Write down the packs as found first; after a change read again what has become stale.",
            Shows::Packs,
        ),
        Screen::Reading { .. } => of(
            "Reading",
            "Set the gauge as drawn, rock the gear gently, and type what it reads at several places round the gear.",
            "The band says in, out, or too near a limit to say; each digit is kept as typed.",
            Shows::Gauge,
        ),
        Screen::Influence { .. } => of(
            "What moves what",
            "How far each check moves when a pack gets thicker, by the gears’ geometry and by what your readings taught.",
            "Look here before you turn a sign: one pack often moves several checks.",
            Shows::Packs,
        ),
        Screen::Record { .. } => of(
            "Record",
            "The whole job on paper, as found against as left; a draft for as long as anything is open or stale.",
            "Print it, save it as a PDF, or hand it over as one file that opens anywhere.",
            Shows::Band,
        ),
        Screen::Board => of(
            "Shop board",
            "A lane for each job, to be read from across the shop: its stage, what it waits for, and its clock.",
            "Press a lane to go to its next step; the owner’s name is never on it.",
            Shows::Case,
        ),
        Screen::Settings => of(
            "Settings",
            "Keep a backup off this device: it is one file with everything in it.",
            "Units and light change what is shown, never what was typed.",
            Shows::Case,
        ),
        Screen::Find => of(
            "Find a job",
            "Type part of the boat, the unit, a tag, the job’s number or a day; every word must stand on the job.",
            "Jobs in the archive are found too, and open like any other.",
            Shows::Case,
        ),
        Screen::Archive { .. } => of(
            "Tags and archive",
            "A finished job goes off the bench and the board, and is found again by its words and tags.",
            "Its photos may leave this device once a backup has them; brought in, the backup puts them back.",
            Shows::Case,
        ),
        Screen::BringIn => of(
            "Bring in",
            "You see what a file changes before anything is kept, and nothing that is here is overwritten.",
            "Where two devices wrote about the same thing, say which stands.",
            Shows::Case,
        ),
        Screen::SendJob { .. } | Screen::SendSheet { .. } => of(
            "Send",
            "One file that another device brings in; a unit sheet can also go as a code on the screen.",
            "Nothing leaves this device but by your hand.",
            Shows::Case,
        ),
        Screen::Locked { .. } => of(
            "Shop PIN",
            "The shop has set a PIN for what goes out of this device and for the owner’s details.",
            "Give it to go on; work at the bench needs none.",
            Shows::Closed,
        ),
        Screen::Practice => of(
            "Practice unit",
            "Virtual gearcases with hidden faults: measure, decide, and be told why.",
            "Nothing you do here touches your jobs, your tin or your sheets.",
            Shows::Gauge,
        ),
        Screen::ShortGuide | Screen::Help { .. } => of(
            "Short guide",
            "The whole job on a few pages, to read or to hang up beside the bench.",
            "Choose the paper and print it, or save it as a PDF.",
            Shows::Layout,
        ),
        Screen::States | Screen::Writing => of(
            "For the builders",
            "Every part of the app in every state, and entries written for a test.",
            "Nothing of it is needed for the work.",
            Shows::Case,
        ),
    }
}
