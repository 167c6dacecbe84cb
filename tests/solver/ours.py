"""The `shimwright advise` command, asked line by line."""

import json
import subprocess
import time


class Advise:
    """One process for all lines, so that its start is not in any time."""

    def __init__(self, program):
        self.process = subprocess.Popen([program, "advise"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def ask(self, line):
        """The answer, and the seconds from the line's last byte to the answer's."""
        text = json.dumps(line).encode() + b"\n"
        start = time.perf_counter()
        self.process.stdin.write(text)
        self.process.stdin.flush()
        answer = self.process.stdout.readline()
        seconds = time.perf_counter() - start
        return json.loads(answer), seconds

    def close(self):
        self.process.stdin.close()
        self.process.wait()
