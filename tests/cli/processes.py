"""The command line as a process of its own, as shells and other programs start it."""

import os
import signal
import subprocess
import sys
import time

FAILURE_MARKS = ("Traceback", "Exception ignored", "Error in sys.excepthook")


def hwsched(*words, env=None, **more):
    """Run a command to its end; text comes back where nothing else is asked for."""
    return subprocess.run(
        [sys.executable, "-m", "hwsched", *map(str, words)],
        env={**os.environ, **(env or {})},
        check=False,
        **{"capture_output": "stdout" not in more, "stderr": None if "stdout" not in more else subprocess.PIPE, **more},
    )


def shell(line, *words, env=None):
    """Run a line of bash in which $hwsched is the command and $1, $2 ... the words; pipes count as in scripts."""
    return subprocess.run(
        ["bash", "-c", f"set -o pipefail; {line}", "bash", *map(str, words)],
        env={**os.environ, "hwsched": f"{sys.executable} -m hwsched", **(env or {})},
        capture_output=True,
        text=True,
        check=False,
    )


STOPPING = """
import atexit, importlib.abc, os, signal, sys
class Stop(importlib.abc.MetaPathFinder):
    def find_spec(self, name, path=None, target=None):
        if name == os.environ["STOP_AT"]:
            os.kill(os.getpid(), getattr(signal, os.environ.get("STOP_BY", "SIGINT")))
sys.meta_path.insert(0, Stop())
"""


def stopped_at(module, folder, *words, by="SIGINT"):
    """Run a command that gets a signal in the moment when it begins to import a module."""
    (folder / "sitecustomize.py").write_text(STOPPING)
    path = os.pathsep.join(filter(None, (str(folder), os.environ.get("PYTHONPATH"))))
    return hwsched(*words, env={"PYTHONPATH": path, "STOP_AT": module, "STOP_BY": by}, text=True)


def stopped_after(delay_s, *words, by=signal.SIGINT):
    """Run a command that gets a signal some time after its own code is reached."""
    code = (
        "import sys; from hwsched.__main__ import main; sys.stdout.write('up\\n'); sys.stdout.flush(); sys.exit(main())"
    )
    process = subprocess.Popen(
        [sys.executable, "-c", code, *map(str, words)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "up\n"
    time.sleep(delay_s)
    process.send_signal(by)
    out, err = process.communicate(timeout=60)
    return process.returncode, out, err
