"""`shimwright bench` against general-purpose libraries: CoolProp, scipy, numpy, pint.

`python check.py PROGRAM` prints each group, and `# pass` and `# fail`. Nothing here shares code or a
formula with the product where a library has its own way to the answer: air comes from its measured
equation of state, the circle from two other solvers, units from their own tables, a lever from moments
of a force, a press fit from finite elements, uncertainty from drawn samples.
"""

import sys

import circle
import doubts
import gas
import lever
import press
import units
import warmth
from bench import Bench

CHECKS = (gas.tight, gas.density, gas.rates, circle.circle, units.conversions, units.drums, lever.lever, warmth.warmth,
          press.presses, press.stretched, doubts.doubts)


def main(program):
    bench = Bench(program)
    groups = [check(bench) for check in CHECKS]
    bench.close()
    print(f"# pass {sum(group.passed for group in groups)}")
    print(f"# fail {sum(group.failed for group in groups)}")
    return int(any(group.failed for group in groups))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
