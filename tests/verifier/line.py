"""Runs command lines of the program one after the other in one process, so that it is loaded once for all of them.

Each line of standard input is a JSON array: where to write what is printed (what is said besides goes into a
file beside it), then the words. Answered is with the exit
status, a line each. Run as a script, by `driving` alone.
"""

import json
import os
import runpy
import sys


def main() -> None:
    """Run what comes, until nothing more comes."""
    answers = os.fdopen(os.dup(1), "w")
    for line in sys.stdin:
        written, *words = json.loads(line)
        for stream, path in ((1, written), (2, f"{written}.said")):
            file = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
            os.dup2(file, stream)
            os.close(file)
        # The program takes its streams over: each run gets new ones, as in a process of its own.
        sys.stdout = os.fdopen(1, "w", encoding="utf-8", closefd=False)
        sys.stderr = os.fdopen(2, "w", encoding="utf-8", closefd=False)
        sys.argv = ["hwsched", *words]
        try:
            runpy.run_module("hwsched", run_name="__main__")
            status = 0
        except SystemExit as stop:
            status = stop.code if isinstance(stop.code, int) else 1
        sys.stdout.flush()
        sys.stderr.flush()
        answers.write(f"{status}\n")
        answers.flush()


if __name__ == "__main__":
    main()
