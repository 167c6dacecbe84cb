"""One pack for one target: least distance first, then fewest shims; integer programming throughout."""

import math

from cases import Dice, decimal, gears
from choice import Programme

# One unit of an instance is this many 0.001 mm in a line: enough for neighbouring totals to differ
# by more than the part of a probability that is given away, little enough for the farthest to have one.
UNIT = 5
AIM = 300
# The longest pack a line may ask for.
LONGEST = 8


def line(instance):
    """The instance as an end play to be brought to 0.300 mm by one pack, none of it in the case yet."""
    thousandths = lambda number: decimal(number, 3)
    stock = [{"family": "S", "thickness": thousandths(size * UNIT), "count": count}
             for size, count in zip(instance["sizes"], instance["counts"])]
    return {"case": instance["id"], "gears": gears(True), "arm": {"radius": "30", "on": "pinion"},
            "positions": [{"id": "S", "moves": "shaft", "mesh_sign": 0, "setting_sign": 1, "family": "S", "open_minutes": 10}],
            "checks": [{"id": "play", "kind": "end_play", "positions": ["S"],
                        "low": decimal(AIM * 10 - 5, 4), "high": decimal(AIM * 10 + 5, 4)}],
            "stock": stock, "max_shims_in_pack": instance["k"] or LONGEST,
            "trials": [{"packs": {"S": []}, "readings": {"play": [thousandths(AIM + instance["target"] * UNIT)]}}]}


def units(pack):
    """The sizes of a pack from an answer, in units of the instance."""
    return [round(float(shim) * 1000 / UNIT) for shim in pack]


def solve(instance):
    """The least error, the fewest shims that have it, and the solver's seconds."""
    programme = Programme()
    shims = [programme.add(0, count) for count in instance["counts"]]
    error = programme.add(0, math.inf, whole=False)
    made = list(zip(shims, instance["sizes"]))
    programme.row(-math.inf, made + [(error, -1)], instance["target"])
    programme.row(instance["target"], made + [(error, 1)], math.inf)
    programme.row(0, [(shim, 1) for shim in shims], instance["k"] or LONGEST)
    programme.pass_on()
    least, _ = programme.minimise([(error, 1)])
    seconds = programme.took
    programme.highs.changeColBounds(error, 0, round(least))
    fewest, _ = programme.minimise([(shim, 1) for shim in shims])
    return round(least), round(fewest), seconds + programme.took


def random(seed):
    """An instance of one to ten sizes, its target near a total that can be made: a target far from
    every total has no probability that a float can hold."""
    dice = Dice(seed * 104729 + 3)
    sizes = sorted({dice.between(2, 40) for _ in range(dice.between(1, 10))})
    counts = [dice.between(1, 3) for _ in sizes]
    most = dice.between(1, 6)
    shims = [size for size, count in zip(sizes, counts) for _ in range(count)]
    total = sum(shims.pop(dice.below(len(shims))) for _ in range(min(dice.between(1, most), len(shims))))
    # Not below the thinnest shim, where leaving the place empty is as near.
    target = max(total + dice.between(-8, 8), sizes[0])
    return {"id": f"nearest-{seed}", "sizes": sizes, "counts": counts, "target": target, "k": most}
