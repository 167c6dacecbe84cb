"""Random lines of `advise`, the same for every run; all data invented."""


class Dice:
    """A linear congruential generator (Knuth's constants, from memory)."""

    def __init__(self, seed):
        self.state = seed % 2**64

    def below(self, end):
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) % 2**64
        return (self.state >> 33) % end

    def between(self, low, high):
        return low + self.below(high - low + 1)

    def chance(self, percent):
        return self.below(100) < percent

    def pick(self, items):
        return items[self.below(len(items))]


def decimal(number, places):
    """A whole number of 10^-places as decimal text."""
    sign, digits = "-" if number < 0 else "", str(abs(number)).rjust(places + 1, "0")
    return f"{sign}{digits[:-places]}.{digits[-places:]}"


def hundredths(number):
    return decimal(number, 2)


def position(name, moves, mesh, setting, minutes, family=None):
    return {"id": name, "moves": moves, "mesh_sign": mesh, "setting_sign": setting,
            "family": family or name, "open_minutes": minutes}


def depth(low, high):
    return {"id": "depth", "kind": "depth_gap", "low": hundredths(low), "high": hundredths(high)}


def lash(mesh, low, high):
    return {"id": f"lash-{mesh}", "kind": "backlash", "mesh": mesh, "low": hundredths(low), "high": hundredths(high)}


def play(positions, low, high):
    return {"id": "play", "kind": "end_play", "positions": positions, "low": hundredths(low), "high": hundredths(high)}


def gears(known):
    found = {"pinion_teeth": 14, "pinion_pitch_radius": "24",
             "driven": [{"id": "forward", "teeth": 21}, {"id": "reverse", "teeth": 21}]}
    if known:
        found |= {"normal_pressure_angle": "20", "spiral_angle": "35"}
    return found


def shape(dice, seed):
    """Positions and checks of one of five layouts."""
    minutes = lambda: dice.pick([10, 20, 20, 50])
    sign = lambda: dice.pick([1, -1])
    pinion = position("P", "pinion", sign(), 0, minutes())
    forward = position("F", "forward", sign(), 0, minutes())
    reverse = position("R", "reverse", sign(), 0, minutes())
    match seed % 5:
        case 0:
            return ([pinion, forward, reverse],
                    [depth(62, 68), lash("forward", 27, 48), lash("reverse", 35, 70)])
        case 1:
            return ([pinion, position("G", "forward", 1, 1, minutes()), position("S", "shaft", 0, 1, minutes())],
                    [depth(62, 70), lash("forward", 27, 48), play(["G", "S"], 2, 10)])
        case 2:
            washer = position("W", "washer", 0, 1, minutes())
            return ([pinion, forward, reverse, washer],
                    [depth(60, 70), lash("forward", 27, 48), lash("reverse", 35, 70), play(["W"], 15, 30)])
        case 3:
            # Two packs of which only the difference counts for the play.
            return ([position("U", "forward", 1, 1, minutes()), position("V", "forward", -1, -1, minutes())],
                    [lash("forward", 27, 48), play(["U", "V"], 2, 20)])
        case _:
            return ([forward, position("R", "reverse", 1, 1, minutes()), position("W", "washer", 0, 1, minutes())],
                    [lash("forward", 27, 48), lash("reverse", 35, 70), play(["R", "W"], 15, 30)])


def joint(seed):
    """A case whose packs are to be chosen together."""
    dice = Dice(seed * 7919 + 17)
    positions, checks = shape(dice, seed)
    ids = [one["id"] for one in positions]
    if dice.chance(40):
        for one in positions[1:]:
            one["family"] = "shared"
    if dice.chance(40):
        positions[0]["after"] = [ids[1]]
    families = list(dict.fromkeys(one["family"] for one in positions))
    sizes = [5, 8, 10, 12, 15, 20, 25, 30, 40, 50]
    stock = [{"family": family, "thickness": hundredths(dice.pick(sizes)), "count": dice.between(1, 3)}
             for family in families for _ in range(dice.between(2, 5))]
    trials = []
    for _ in range(dice.between(1, 2)):
        packs = {one: [hundredths(dice.between(30, 60))] + ([hundredths(dice.between(4, 20))] if dice.chance(60) else [])
                 for one in ids}
        readings = {}
        for check in checks:
            middle = round((float(check["low"]) + float(check["high"])) * 50)
            level = max(middle + dice.between(-18, 18), 0)
            readings[check["id"]] = [hundredths(level + dice.below(2)) for _ in range(dice.between(1, 4))]
        trials.append({"packs": packs, "readings": readings})
    return {"case": f"joint-{seed}", "gears": gears(dice.chance(60)), "arm": {"radius": "30", "on": "pinion"},
            "positions": positions, "checks": checks, "stock": stock, "max_shims_in_pack": dice.between(2, 4),
            "frozen": [ids[-1]] if dice.chance(15) else [], "trials": trials}


def speed(seed, shared, step):
    """Four positions and forty stock sizes each, those of `crates/gearing/examples/speed`."""
    dice = Dice(seed)
    size = lambda low, high: decimal((low + dice.below(high - low)) // step * step, 4)
    families = ["a", "b", "b", "d"] if shared else ["a", "b", "c", "d"]
    moves = ["pinion", "forward", "shaft" if shared else "reverse", "washer"]
    positions = [position(f"P{i}", moves[i], int(moves[i] not in ("shaft", "washer")), int(i == 3 or shared and i > 0),
                          [60, 50, 20, 10][i], families[i]) for i in range(4)]
    packs = {f"P{i}": [size(4000, 7000), size(500, 2500)] for i in range(4)}
    stock = [{"family": family, "thickness": size(300, 12000), "count": 1 + dice.below(3)}
             for family in "abcd" for _ in range(40)]
    middle = play(["P1", "P2"], 2, 10) if shared else lash("reverse", 35, 70)
    checks = [depth(62, 68), lash("forward", 27, 48), middle, play(["P3"], 15, 45) | {"id": "float"}]
    readings = {}
    for check, (low, high) in zip(checks, [(50, 80), (15, 70), (5, 80), (5, 60)]):
        level = low + dice.below(high - low)
        readings[check["id"]] = [hundredths(level + dice.below(2)) for _ in range(4)]
    return {"case": f"speed-{seed}", "gears": gears(False), "arm": {"radius": "30", "on": "pinion"},
            "positions": positions, "checks": checks, "stock": stock, "max_shims_in_pack": 4,
            "trials": [{"packs": packs, "readings": readings}]}
