//! Layout (b), forward and reverse gears with a sliding dog, its packs where they truly lie.

use super::super::drawing::{Mark, circle, flipped, moved, upright};
use super::super::scale::held;
use super::pack::{Member, Pack};
use super::pieces::*;

/// The case when the driveshaft bearing hangs in a flanged housing: a lower top face.
const FLANGED_CASE: &str = "M-46 -138V-86C-70 -76 -112 -62 -130 -28Q-138 0 -130 28C-118 52 -96 64 -70 67L-34 69L-22 106H34L52 69L176 62V-62L66 -71L50 -86V-138Z";

/// How the unit is drawn: which packs it has, which is chosen, how much thicker that one is.
pub struct LayoutB<'a> {
    /// Packs in the unit.
    pub packs: &'a [Pack],
    /// The pack that glows.
    pub chosen: Option<Pack>,
    /// How much thicker the chosen pack is drawn; less than 0 thinner.
    pub grow: f64,
}

impl LayoutB<'_> {
    /// The whole unit, back to front.
    pub fn marks(&self) -> Vec<Mark> {
        let neck = self.neck();
        let mut marks = self.case(neck);
        marks.extend(upright(self.driveshaft(neck)));
        marks.extend(ring(self.shim(Pack::B2), -100.0, 5.5 + self.grown(Pack::B2), (22.0, 40.0)));
        marks.push(shaft(-99.0, 305.0, 9.5));
        marks.extend(self.forward_gear());
        marks.extend(self.carrier());
        marks.extend(self.reverse_gear());
        marks.extend(self.washer());
        marks.extend(both(RACE, &[(-18.0, 9.5), (-18.0, 20.0), (18.0, 20.0), (18.0, 9.5)]));
        let sink = self.sink();
        marks.extend(moved(pinion(self.gear_ink(Member::Pinion)), 0.0, sink));
        marks.extend(moved(vec![pinion_nut()], 0.0, sink));
        marks.extend(axes((-140.0, 214.0), (-160.0, 70.0)));
        marks.extend(self.ghost());
        marks
    }

    fn has(&self, pack: Pack) -> bool {
        self.packs.contains(&pack)
    }

    /// The place of the depth pack; the common one where none is named.
    fn neck(&self) -> Pack {
        let places = [Pack::B1b, Pack::B1c, Pack::B1d];
        places.into_iter().find(|pack| self.has(*pack)).unwrap_or(Pack::B1)
    }

    fn grown(&self, pack: Pack) -> f64 {
        if self.chosen == Some(pack) { self.grow } else { 0.0 }
    }

    fn shim(&self, pack: Pack) -> &'static str {
        if self.chosen == Some(pack) { HOT_SHIM } else { SHIM }
    }

    fn gear_ink(&self, member: Member) -> &'static str {
        if self.chosen.map(Pack::member) == Some(member) { HOT_GEAR } else { GEAR }
    }

    /// How far down the pinion is drawn from its place.
    fn sink(&self) -> f64 {
        self.grown(Pack::B1) + self.grown(Pack::B1d) - self.grown(Pack::B1b) - self.grown(Pack::B1c)
    }

    /// How far aft the reverse gear is drawn from its place.
    fn reverse_aft(&self) -> f64 {
        self.grown(Pack::B3b) - self.grown(Pack::B3)
    }

    fn case(&self, neck: Pack) -> Vec<Mark> {
        match neck {
            Pack::B1b => nose_case(NOSE_CASE, &[(28.0, -150.0), (22.5, -89.5)]),
            Pack::B1c => nose_case(FLANGED_CASE, &[(28.5, -138.0), (22.5, -94.0)]),
            Pack::B1d => nose_case(NOSE_CASE, &[(17.0, -150.0), (22.5, -103.5)]),
            _ => nose_case(NOSE_CASE, &[(13.0, -150.0), (22.5, -136.5)]),
        }
    }

    /// The driveshaft lying down, its top to the right.
    fn driveshaft(&self, neck: Pack) -> Vec<Mark> {
        let (grow, shim) = (self.grown(neck), self.shim(neck));
        let axle = shaft(58.0, 102.0, 9.0);
        let collar = ring(STEEL, 94.0, 4.5, (9.0, 14.0));
        let low_needles = needles(68.0, 22.0, (9.0, 22.0), (11.0, 19.0));
        match neck {
            Pack::B1b => {
                let clamp = ring(STEEL, 127.0, 13.0, (14.0, 28.0));
                let thread = threads(127.0, 28.0);
                let running = [vec![axle], taper(126.0, 96.0, (9.0, 28.0)), clamp, thread].concat();
                let pack = ring(shim, 89.7, 5.8 + grow, (22.8, 28.0));
                [low_needles, moved(running, grow, 0.0), pack].concat()
            }
            Pack::B1c => {
                let housing = both(STEEL, &HOUSING);
                let running =
                    [vec![axle], housing, taper(129.0, 99.0, (9.0, 22.5)), collar].concat();
                let pack = ring(shim, 138.0, 5.5 + grow, (28.5, 46.0));
                [low_needles, moved(running, grow, 0.0), pack].concat()
            }
            Pack::B1d => {
                let high_needles = needles(112.0, 22.0, (9.0, 16.5), (10.5, 15.0));
                let pack = ring(shim, 64.5 - grow, 6.0 + grow, (9.0, 15.0));
                [vec![axle], high_needles, taper(103.0, 71.0, (9.0, 22.5)), pack].concat()
            }
            _ => driveshaft(shim, grow),
        }
    }

    fn forward_gear(&self) -> Vec<Mark> {
        let gear = gear(self.gear_ink(Member::Forward), 11.0, -93.0, 20.0);
        moved([gear, taper(-94.0, -54.0, (20.0, 40.5))].concat(), self.grown(Pack::B2), 0.0)
    }

    /// The carrier with its needles and seals; it goes aft with the pack at its seat.
    fn carrier(&self) -> Vec<Mark> {
        let seated = self.has(Pack::B3b);
        // The pack at the seat holds the flange off; without the pack behind the gear the face
        // itself carries the bearing.
        let flange = if seated { 181.8 } else { 176.0 };
        let face = if self.has(Pack::B3) { 82.0 } else { 75.0 };
        let profile = [
            (52.0, 51.5),
            (flange, 51.5),
            (flange, 62.0),
            (flange + 8.0, 62.0),
            (flange + 8.0, 18.0),
            (89.0, 18.0),
            (89.0, 24.0),
            (face, 24.0),
            (face, 40.5),
            (52.0, 40.5),
        ];
        let seals = [ring(SEAL, 150.0, 7.0, (9.5, 18.0)), ring(SEAL, 160.0, 7.0, (9.5, 18.0))];
        let needles = [ring(RACE, 96.0, 30.0, (9.5, 18.0)), ring(ROLLER, 99.0, 24.0, (11.5, 16.0))];
        let carrier = [both(STEEL, &profile), needles.concat(), seals.concat()].concat();
        let grow = self.grown(Pack::B3b);
        let mut marks = moved(carrier, grow, 0.0);
        if seated {
            marks.extend(ring(self.shim(Pack::B3b), 176.2, 5.5 + grow, (52.5, 62.0)));
        }
        marks
    }

    fn reverse_gear(&self) -> Vec<Mark> {
        let gear = flipped(gear(self.gear_ink(Member::Reverse), 11.0, -74.0, 20.0));
        let races = [ring(RACE, 54.0, 20.0, (20.0, 26.0)), ring(RACE, 54.0, 20.0, (34.0, 40.5))];
        let balls = [-30.0, 30.0].map(|y| circle(ROLLER, (64.0, y), 6.5));
        let aft = self.reverse_aft();
        let mut marks = moved([gear, races.concat(), balls.to_vec()].concat(), aft, 0.0);
        if self.has(Pack::B3) {
            let grow = self.grown(Pack::B3);
            marks.extend(ring(self.shim(Pack::B3), 75.0 - grow, 6.2 + grow, (24.5, 40.0)));
        }
        marks
    }

    /// The thrust washer between a shoulder of the propshaft and the carrier; the gap that is left
    /// is the end play.
    fn washer(&self) -> Vec<Mark> {
        if !self.has(Pack::B4) {
            return Vec::new();
        }
        let width = held(5.0 + self.grown(Pack::B4), 2.5, 7.0);
        let shoulder = ring(STEEL, 76.5, 5.0, (9.5, 16.0));
        let washer = ring(self.shim(Pack::B4), 81.5, width, (9.5, 21.0));
        [shoulder, washer].concat()
    }

    /// Where the chosen member lay before the change.
    fn ghost(&self) -> Vec<Mark> {
        match self.chosen.map(Pack::member) {
            _ if self.grow == 0.0 => Vec::new(),
            Some(Member::Pinion) => vec![pinion_body(GHOST)],
            Some(Member::Forward) => gear_body(GHOST, 11.0, -93.0, 20.0),
            Some(Member::Reverse) => flipped(gear_body(GHOST, 11.0, -74.0, 20.0)),
            Some(Member::Float) | None => Vec::new(),
        }
    }
}

/// The flanged housing of the driveshaft bearing, lying down, above the axis.
const HOUSING: [(f64, f64); 8] = [
    (151.5, 13.0),
    (151.5, 46.0),
    (143.7, 46.0),
    (143.7, 28.0),
    (96.0, 28.0),
    (96.0, 22.5),
    (129.5, 22.5),
    (129.5, 13.0),
];
