"""The command under test, and how its answers are compared."""

import json
import subprocess


class Group:
    def __init__(self, name):
        self.name, self.passed, self.failed = name, 0, 0

    def near(self, what, found, expected, tolerance):
        stands = found is not None and abs(found - expected) <= tolerance
        self.passed += stands
        self.failed += not stands
        if not stands:
            print(f"not as expected: {self.name}: {what}: {found}, expected {expected} within {tolerance}")

    def done(self):
        print(f"{self.name}: {self.passed} as expected, {self.failed} not")
        return self


class Bench:
    """One process for all lines."""

    def __init__(self, program):
        self.process = subprocess.Popen([program, "bench"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def ask(self, **line):
        self.process.stdin.write(json.dumps(line).encode() + b"\n")
        self.process.stdin.flush()
        answer = json.loads(self.process.stdout.readline())
        if "error" in answer:
            raise SystemExit(f"{line}: {answer['error']}")
        return answer["figures"]

    def close(self):
        self.process.stdin.close()
        self.process.wait()


def value(figure):
    return None if figure is None else float(figure["value"])


def sure(number, unit, places=9):
    """An exact quantity with at most 12 digits, as the entry grammar takes them."""
    return {"read": f"{number:.{places}f} {unit}", "u": "0"}
