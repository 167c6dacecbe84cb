"""`shimwright advise` against an independent exact integer-programming solver (HiGHS).

`python check.py PROGRAM` prints what was compared, how long both took, and `# pass` and `# fail`.
What is compared, and what is not, stands in README.md.
"""

import json
import math
import statistics
import sys
from collections import Counter
from pathlib import Path

import choice
import nearest
from cases import joint, speed
from model import Model, steps
from ours import Advise

SAME = 1e-9  # Probabilities worked out twice.
EDGE = 1e-6  # Logarithms and lengths this near to a limit may fall on either side.
JOINT, FEWEST, NEAREST = 800, 500, 300
SPEEDS = [("a family each, steps of 0.01", False, 100, 20), ("two share a family, steps of 0.01", True, 100, 20),
          ("a family each, steps of 0.001", False, 10, 2)]


class Group:
    """Instances of one kind: what agreed, what did not, and the times of both."""

    def __init__(self, name):
        self.name, self.passed, self.failed, self.notes = name, 0, 0, Counter()
        self.ours, self.solvers = [], []

    def fault(self, case, sentence):
        print(f"not as expected: {case}: {sentence}")
        return False

    def count(self, stands):
        self.passed += stands is True
        self.failed += stands is False

    def times(self, ours, solvers):
        self.ours.append(ours * 1000)
        self.solvers.append(solvers * 1000)

    def report(self):
        notes = ", ".join(f"{count} {note}" for note, count in sorted(self.notes.items()))
        print(f"{self.name}: {self.passed} identical, {self.failed} not" + (f"; {notes}" if notes else ""))
        if self.ours:
            middle = [statistics.median(times) for times in (self.ours, self.solvers)]
            mean = [statistics.fmean(times) for times in (self.ours, self.solvers)]
            ratio = statistics.median(theirs / ours for ours, theirs in zip(self.ours, self.solvers))
            print(f"  time for each of {len(self.ours)}: shimwright median {middle[0]:.2f} mean {mean[0]:.2f} worst "
                  f"{max(self.ours):.1f} ms; solver median {middle[1]:.2f} mean {mean[1]:.2f} worst {max(self.solvers):.1f} ms; "
                  f"solver over shimwright: median of ratios {ratio:.1f}, of totals {sum(self.solvers) / sum(self.ours):.1f}")


def compare_nearest(group, advise, instance):
    """Error and shims; for listed instances also that the pack is one of the optimal ones."""
    error, shims, seconds = nearest.solve(instance)
    answer, took = advise.ask(nearest.line(instance))
    group.times(took, seconds)
    name = instance["id"]
    if "error" in answer:
        return group.fault(name, answer["error"])
    pack = nearest.units(answer["packs"]["S"])
    found = abs(sum(pack) - instance["target"]), len(pack)
    if found != (error, shims):
        return group.fault(name, f"{found}, the solver {(error, shims)}")
    if "optimal" in instance:
        vector = [pack.count(size) for size in instance["sizes"]]
        if (error, shims) != (instance["error"], instance["shims"]) or vector not in instance["optimal"]:
            return group.fault(name, f"{vector}, listed {instance['optimal']}")
    return True


def compare_joint(group, advise, line):
    """Status, probability, minutes and shims of a whole line."""
    answer, took = advise.ask(line)
    name = line["case"]
    if "error" in answer:
        return group.fault(name, answer["error"])
    status = answer["status"]
    group.notes[status] += 1
    model = Model(line)
    packs = [[steps(shim) for shim in answer["packs"][p["id"]]] for p in model.positions]
    probability = model.probability_of(packs)
    if abs(probability - answer["probability_all_in_band"]) > SAME:
        return group.fault(name, f"probability {answer['probability_all_in_band']}, model {probability}")
    if status == "done":
        return True

    shelves = choice.Shelves(model)
    seconds = 0.0
    for thicknesses, no in [(False, ("stock_short", "conflict")), (True, ("conflict",))]:
        inside, first = choice.means_fit(model, shelves, -EDGE, thicknesses)
        outside, _ = choice.means_fit(model, shelves, EDGE, thicknesses)
        seconds += first
        if inside != outside:
            group.notes["on the edge of a band, status not compared"] += 1
        elif inside != (status not in no):
            return group.fault(name, f"{status}, but the solver says {inside}")
    if status == "conflict":
        group.times(took, seconds)
        return True

    best = choice.chosen(model, shelves)
    if best is None:
        group.notes["hopeless: no packs above 1e-30"] += 1
        return True
    group.times(took, seconds + best.seconds)
    if abs(math.log(model.probability_of(best.packs)) - best.log) > EDGE:
        return group.fault(name, f"the solver's packs have {model.probability_of(best.packs)}, not {math.exp(best.log)}")
    if math.log(probability) < best.log + choice.KEPT - SAME:
        return group.fault(name, f"probability {probability}, the best is {math.exp(best.log)}")
    found = answer["minutes"], sum(map(len, packs))
    if found == (best.minutes, best.shims):
        return True
    # The edge of the kept part may go either way.
    around = [best.whole.cheapest(best.log + choice.KEPT + edge) for edge in (-EDGE, EDGE)]
    if found in around:
        group.notes["on the edge of the kept probability"] += 1
        return True
    return group.fault(name, f"minutes and shims {found}, the solver {(best.minutes, best.shims)}")


def main(program):
    advise = Advise(program)
    listed = json.loads((Path(__file__).parent / "stacks.json").read_text())["instances"]
    plans = [
        ("listed packs for one target", compare_nearest, listed, len(listed)),
        ("random packs for one target", compare_nearest, map(nearest.random, range(NEAREST)), NEAREST),
        ("random choices of 2 to 4 packs together", compare_joint, map(joint, range(JOINT)), FEWEST),
    ]
    for name, shared, step, cases in SPEEDS:
        lines = [speed(seed, shared, step) for seed in range(cases)]
        plans.append((f"4 positions × 40 sizes, {name}", compare_joint, lines, cases // 2))
    groups = []
    for name, compare, instances, fewest in plans:
        group = Group(name)
        groups.append(group)
        for instance in instances:
            try:
                group.count(compare(group, advise, instance))
            except TimeoutError:
                group.notes[f"the solver did not finish within {choice.LIMIT:.0f} s, not compared"] += 1
        group.report()
        sys.stdout.flush()
        compared = len(group.ours)
        if compared < fewest:
            group.count(group.fault(name, f"{compared} compared, expected {fewest} or more"))
    advise.close()
    print(f"# pass {sum(group.passed for group in groups)}")
    print(f"# fail {sum(group.failed for group in groups)}")
    return int(any(group.failed for group in groups))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
