"""The choice of packs as integer programmes, solved by HiGHS.

Two kinds of programme:

- Status. A mean is linear in the shim counts, so "some packs put every mean inside its band" is an
  integer programme in the counts alone, and "some thicknesses do" a linear one.
- Objective. A probability is no linear function of the counts, but each check depends on the totals
  of few positions. So the totals each position can reach are enumerated, every combination of them
  that a check can see becomes a cell with the logarithm of its probability, and one cell of each
  check is chosen: the sum of logarithms is linear in that choice. Which shims make the totals, from
  a shelf that positions share, stays with the solver. First the best sum is found; then, keeping
  0.99 of the best probability, the least minutes and the fewest shims.
"""

import itertools
import math
import time
from typing import NamedTuple

import highspy
import numpy as np

from model import STEP, steps

KEPT = math.log(0.99)
# Cells less likely than this are left out, the next floor if nothing reaches it.
FLOORS = [0.5, 1e-3, 1e-9, 1e-30]
MINUTE = 1000  # A minute outweighs every shim.
LIMIT = 30.0  # Seconds for one run of the solver.


class Programme:
    """A programme under construction, and the time its solving takes."""

    def __init__(self):
        self.highs = highspy.Highs()
        for name, value in [("output_flag", False), ("threads", 1), ("mip_rel_gap", 0.0), ("mip_abs_gap", 1e-9),
                            ("mip_feasibility_tolerance", 1e-9), ("primal_feasibility_tolerance", 1e-9),
                            ("time_limit", LIMIT)]:
            self.highs.setOptionValue(name, value)
        self.lower, self.upper, self.whole, self.rows = [], [], [], []

    def add(self, lower, upper, whole=True):
        self.lower.append(lower), self.upper.append(upper), self.whole.append(whole)
        return len(self.lower) - 1

    def row(self, lower, terms, upper):
        """lower ≤ Σ factor·variable ≤ upper."""
        merged = {}
        for variable, factor in terms:
            merged[variable] = merged.get(variable, 0) + factor
        self.rows.append((lower, merged, upper))

    def pass_on(self):
        infinity = highspy.kHighsInf
        bound = lambda value: max(-infinity, min(infinity, value))
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.lower), len(self.rows)
        lp.col_cost_ = np.zeros(len(self.lower))
        lp.col_lower_, lp.col_upper_ = np.array(self.lower, float), np.array(self.upper, float)
        lp.row_lower_ = np.array([bound(row[0]) for row in self.rows])
        lp.row_upper_ = np.array([bound(row[2]) for row in self.rows])
        lp.integrality_ = [highspy.HighsVarType.kInteger if whole else highspy.HighsVarType.kContinuous
                           for whole in self.whole]
        lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        lp.a_matrix_.start_ = np.cumsum([0] + [len(row[1]) for row in self.rows])
        lp.a_matrix_.index_ = np.array([v for row in self.rows for v in row[1]], int)
        lp.a_matrix_.value_ = np.array([f for row in self.rows for f in row[1].values()], float)
        self.highs.passModel(lp)

    def minimise(self, terms):
        """The least Σ factor·variable and where it is; None if nothing is feasible. Seconds in `took`;
        TimeoutError after LIMIT of them."""
        costs = np.zeros(len(self.lower))
        for variable, factor in terms:
            costs[variable] += factor
        self.highs.changeColsCost(len(costs), np.arange(len(costs)), costs)
        start = time.perf_counter()
        self.highs.run()
        self.took = time.perf_counter() - start
        status = self.highs.getModelStatus()
        if status == highspy.HighsModelStatus.kTimeLimit:
            raise TimeoutError
        if status != highspy.HighsModelStatus.kOptimal:
            assert status in (highspy.HighsModelStatus.kInfeasible, highspy.HighsModelStatus.kUnboundedOrInfeasible), status
            return None
        return self.highs.getObjectiveValue(), np.array(self.highs.getSolution().col_value)


class Shelves:
    """What each position may hold: sizes with their counts, shared by a family."""

    def __init__(self, model):
        line = model.line
        self.frozen = [p["id"] in line.get("frozen", []) for p in model.positions]
        self.family = [p["family"] for p in model.positions]
        self.most = line["max_shims_in_pack"]
        self.counts = {}
        for stock in line["stock"]:
            sizes = self.counts.setdefault(stock["family"], {})
            size = steps(stock["thickness"])
            sizes[size] = sizes.get(size, 0) + stock["count"]
        for family, pack, frozen in zip(self.family, model.last, self.frozen):
            for size in pack if not frozen else []:
                sizes = self.counts.setdefault(family, {})
                sizes[size] = sizes.get(size, 0) + 1
        self.open = [i for i, frozen in enumerate(self.frozen) if not frozen]

    def sizes(self, i):
        return self.counts.get(self.family[i], {})

    def totals(self, i):
        """Every total of one to `most` shims, thin to thick."""
        sizes = self.sizes(i)
        step = math.gcd(*sizes) if sizes else 1
        reached = [1] + [0] * self.most  # Bit t: total t with so many shims.
        for size, count in sizes.items():
            for _ in range(min(count, self.most)):
                for shims in range(self.most, 0, -1):
                    reached[shims] |= reached[shims - 1] << size // step
        together = 0
        for bits in reached[1:]:
            together |= bits
        return [t * step for t in range(1, together.bit_length()) if together >> t & 1]


def packs_in(programme, model, shelves):
    """Counts of shims and "stays as it is" for every open position, with the rules of packs.

    Answers (counts, stays): {position: {size: variable}} and {position: variable}."""
    counts, stays = {}, {}
    for i in shelves.open:
        last = {size: model.last[i].count(size) for size in shelves.sizes(i)}
        held = len(model.last[i])
        stay = stays[i] = programme.add(0, 1)
        counts[i] = {}
        for size, available in shelves.sizes(i).items():
            most = min(available, max(shelves.most, last[size]))
            shim = counts[i][size] = programme.add(0, most)
            # Staying means the very shims of the last build.
            programme.row(-math.inf, [(shim, 1), (stay, most - last[size])], most)
            programme.row(0, [(shim, 1), (stay, -last[size])], math.inf)
        every = [(shim, 1) for shim in counts[i].values()]
        programme.row(1, every + [(stay, 1 - min(held, 1))], math.inf)
        programme.row(-math.inf, every + [(stay, min(shelves.most - held, 0))], shelves.most)
    for family, sizes in shelves.counts.items():
        members = [i for i in shelves.open if shelves.family[i] == family]
        for size, available in sizes.items() if len(members) > 1 else []:
            programme.row(-math.inf, [(counts[i][size], 1) for i in members], available)
    return counts, stays


def means_fit(model, shelves, slack, thicknesses=False):
    """Whether some packs, or some thicknesses whatever, put every mean within `slack` of its band;
    and the seconds the solver took."""
    programme = Programme()
    if thicknesses:
        totals = {i: [(programme.add(0, math.inf, whole=False), 1 / STEP)] for i in shelves.open}
    else:
        counts, _ = packs_in(programme, model, shelves)
        totals = {i: [(shim, size / STEP) for size, shim in counts[i].items()] for i in shelves.open}
    for c, (low, high) in enumerate(model.bands):
        still = model.level[c] - sum(model.slope[c, i] * sum(model.last[i]) / STEP for i in shelves.open)
        terms = [(variable, model.slope[c, i] * factor) for i in shelves.open for variable, factor in totals[i]]
        programme.row(low - slack - still, terms, high + slack - still)
    programme.pass_on()
    return programme.minimise([]) is not None, programme.took


def candidates(model, shelves, floor):
    """For each position the totals with "changed" that every check of it alone leaves possible."""
    found = []
    for i, last in enumerate(model.last):
        before = sum(last)
        cells = [(before, False)]
        if not shelves.frozen[i]:
            cells += [(total, True) for total in shelves.totals(i)]
        for c in range(len(model.checks)):
            if model.scope(c) == [i]:
                likely = cell_logs(model, c, [i], [cells], floor)[1] > -math.inf
                cells = [cell for cell, kept in zip(cells, likely) if kept]
        found.append(cells)
    return found


def cell_logs(model, c, scope, cells, floor):
    """All combinations of the cells of some positions and the logarithm of the check's probability
    for each, −∞ where below the floor."""
    combinations = list(itertools.product(*(range(len(of)) for of in cells)))
    change = np.zeros((len(combinations), len(model.positions)))
    changed = np.zeros(change.shape)
    for axis, (i, of) in enumerate(zip(scope, cells)):
        picked = np.array([combination[axis] for combination in combinations], int)
        change[:, i] = (np.array([total for total, _ in of], float)[picked] - sum(model.last[i])) / STEP
        changed[:, i] = np.array([other for _, other in of], float)[picked]
    probability = model.probability(c, change, changed) if len(combinations) else np.zeros(0)
    logs = np.full(len(combinations), -math.inf)
    kept = probability >= floor
    logs[kept] = np.log(probability[kept])
    return combinations, logs


class Choice(NamedTuple):
    """What the solver found: the logarithm of the best probability and packs that have it, then
    the least minutes and fewest shims that keep enough of it."""

    whole: "Whole"
    log: float
    packs: list
    minutes: int
    shims: int
    seconds: float


def chosen(model, shelves):
    """The choice; None where nothing reaches the last floor."""
    took = 0.0
    for floor in FLOORS:
        whole = Whole(model, shelves, 0.98 * floor)
        best = whole.best()
        if best and best[0] >= math.log(floor):
            cheapest = whole.cheapest(best[0] + KEPT)
            return Choice(whole, *best, *cheapest, took + whole.took)
        took += whole.took
    return None


class Whole:
    """The whole choice as one programme."""

    def __init__(self, model, shelves, floor):
        self.model, self.shelves, self.took = model, shelves, 0.0
        self.programme = programme = Programme()
        self.counts, self.stays = packs_in(programme, model, shelves)
        cells = candidates(model, shelves, floor)
        picks = []
        for i, of in enumerate(cells):
            picks.append([programme.add(0, 1) for _ in of])
            programme.row(1, [(pick, 1) for pick in picks[i]], 1)
            if not shelves.frozen[i]:
                self._link(i, of, picks[i])
        self.logs = []
        for c in range(len(model.checks)):
            self._check(c, cells, picks, floor)
        self.opens = self._opens()
        programme.pass_on()

    def _opens(self):
        """A variable for each position that is opened, with its minutes."""
        programme, positions = self.programme, self.model.positions
        place = {position["id"]: i for i, position in enumerate(positions)}
        opened = [programme.add(0, 1, whole=False) for _ in positions]
        for i, stay in self.stays.items():
            programme.row(1, [(opened[i], 1), (stay, 1)], math.inf)
        for i, position in enumerate(positions):
            for first in position.get("after", []):
                programme.row(0, [(opened[place[first]], 1), (opened[i], -1)], math.inf)
        return [(variable, position["open_minutes"]) for variable, position in zip(opened, positions)]

    def _link(self, i, cells, picks):
        """The picked total is that of the shims; a changed pack of the same total has other shims."""
        programme, last = self.programme, self.model.last[i]
        made = [(shim, size) for size, shim in self.counts[i].items()]
        programme.row(0, made + [(pick, -total) for pick, (total, _) in zip(picks, cells)], 0)
        unchanged = [(pick, 1) for pick, (_, changed) in zip(picks, cells) if not changed]
        programme.row(0, unchanged + [(self.stays[i], -1)], 0)
        for pick in (p for p, (total, changed) in zip(picks, cells) if changed and total == sum(last)):
            differs = [(pick, -1)]
            for size, shim in self.counts[i].items():
                more, fewer = programme.add(0, 1), programme.add(0, 1)
                most, held = programme.upper[shim], last.count(size)
                programme.row(0, [(shim, 1), (more, -(held + 1))], math.inf)
                programme.row(-math.inf, [(shim, 1), (fewer, most - held + 1)], most)
                differs += [(more, 1), (fewer, 1)]
            programme.row(0, differs, math.inf)

    def _check(self, c, cells, picks, floor):
        programme, scope = self.programme, self.model.scope(c)
        combinations, logs = cell_logs(self.model, c, scope, [cells[i] for i in scope], floor)
        if not scope:
            self.logs.append((programme.add(1, 1), max(logs[0], -1e6)))
            return
        marginal = [[[] for _ in picks[i]] for i in scope]
        for combination, log in zip(combinations, logs):
            if log == -math.inf:
                continue
            if len(scope) == 1:
                cell = picks[scope[0]][combination[0]]
            else:
                cell = programme.add(0, 1, whole=False)
                for axis, pick in enumerate(combination):
                    marginal[axis][pick].append((cell, 1))
            self.logs.append((cell, log))
        if len(scope) > 1:
            for axis, i in enumerate(scope):
                for pick, terms in zip(picks[i], marginal[axis]):
                    programme.row(0, terms + [(pick, -1)], 0)

    def _solve(self, terms):
        answer = self.programme.minimise(terms)
        self.took += self.programme.took
        return answer

    def best(self):
        """The best logarithm and its packs; None where nothing is possible."""
        answer = self._solve([(cell, -log) for cell, log in self.logs])
        return answer and (-answer[0], self._packs(answer[1]))

    def cheapest(self, least):
        """The least minutes and the fewest shims of packs whose logarithm is at least `least`."""
        highs = self.programme.highs
        cells, logs = zip(*self.logs)
        highs.addRow(least, highspy.kHighsInf, len(cells), np.array(cells), np.array(logs))
        shims = [(shim, 1) for sizes in self.counts.values() for shim in sizes.values()]
        answer = self._solve(shims + [(variable, MINUTE * minutes) for variable, minutes in self.opens])
        highs.deleteRows(1, np.array([highs.getNumRow() - 1]))
        minutes = sum(minutes for variable, minutes in self.opens if answer[1][variable] > 0.5)
        return minutes, sum(map(len, self._packs(answer[1])))

    def _packs(self, values):
        packs = [list(pack) for pack in self.model.last]
        for i, sizes in self.counts.items():
            packs[i] = [size for size, shim in sizes.items() for _ in range(round(values[shim]))]
        return packs
