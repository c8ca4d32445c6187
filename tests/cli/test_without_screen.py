"""A machine without a screen: every verb but the desktop runs without Qt, and without solvers where it can."""

import json
import re
import shutil
import subprocess
import sys
import tomllib

import pytest
from packaging.markers import default_environment
from packaging.requirements import Requirement

from hwsched.paths import RESOURCES
from tests.once import made_once

LOCKED = RESOURCES / "server" / "requirements.txt"
SCREEN = {"pyside6-essentials", "pypdfium2"}
ASKED = {
    "project history": [], "project list": ["settings"], "survey list": ["openings"], "survey missing": [],
    "survey edit": ["M004", "leaf", "thickness_mm", "45 mm"], "opening fit": [], "opening show": ["M004"],
    "opening list": ["fits"], "power show": [], "parts cost": [], "findings check": [], "findings why": ["M004"],
    "findings rules": None, "release list": ["pick-lines"],
}  # fmt: skip
"""Verbs with their words behind the project; None: it takes no project."""
SOLVING = {"survey missing", "opening list", "power show", "parts cost", "findings check", "release list"}
"""Those that ask what supplies give where only some openings operate together: arrays are loaded for that search."""


def run_without(words, *absent):
    code = (
        "import sys\n"
        f"sys.modules.update(dict.fromkeys({absent!r}))\n"
        "from hwsched.cli.command import run\n"
        f"sys.exit(run({words!r}))"
    )
    return subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)


ASKING = """
import contextlib, io, json, sys
sys.modules.update(dict.fromkeys(("PySide6", "highspy", *sys.argv[2:])))
from hwsched.cli.command import run
said = {}
for spelling, line in json.loads(sys.argv[1]).items():
    out, err = io.TextIOWrapper(io.BytesIO(), "utf-8"), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        status = run(line)
    said[spelling] = status, err.getvalue()
json.dump(said, sys.stdout)
"""
"""Runs lines one after another where neither Qt nor a solver can be loaded: a module that lacks one fails each time."""


@pytest.fixture(scope="module")
def asked(pytestconfig, tmp_path_factory, sample_folder):
    """Status and complaint of each verb, all run in one process."""

    def ask(folder):
        project = shutil.copy(sample_folder / "quayside-works.hwsched", folder)
        lines = {verb: verb.split() + ([] if words is None else [project, *words]) for verb, words in ASKED.items()}
        said = {}
        for verbs, absent in ((lines.keys() - SOLVING, ("numpy",)), (SOLVING, ())):
            asked = json.dumps({verb: lines[verb] for verb in lines if verb in verbs})
            done = subprocess.run(
                [sys.executable, "-c", ASKING, asked, *absent], capture_output=True, text=True, check=False
            )
            assert done.returncode == 0, done.stderr
            said |= json.loads(done.stdout)
        (folder / "said.json").write_text(json.dumps(said), encoding="utf-8")

    folder = made_once(pytestconfig, tmp_path_factory, "without-screen", ask)
    return json.loads((folder / "said.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("spelling", ASKED)
def test_a_verb_loads_neither_qt_nor_a_solver(spelling, asked):
    status, complaint = asked[spelling]
    assert status == 0, complaint


def test_the_help_of_every_verb_loads_no_database():
    """Somebody who asks what a verb wants waits for it."""
    code = (
        "import sys\n"
        "from hwsched.cli import ENTRIES\n"
        "from hwsched.cli.parsing import parser_of\n"
        "for entry in ENTRIES:\n"
        "    parser_of(entry, entry.load()).format_help()\n"
        "    loaded = {'sqlalchemy', 'openpyxl', 'reportlab', 'numpy'} & sys.modules.keys()\n"
        "    assert not loaded, (entry.spelling, loaded)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_documents_are_printed_without_qt(sample_file, tmp_path):
    words = ["release", "print", str(sample_file), "pick-list", "-o", str(tmp_path / "out")]
    done = run_without(words, "PySide6")
    assert done.returncode == 0, done.stderr
    assert {path.name for path in (tmp_path / "out").iterdir()} == {"pick-list.pdf", "pick-list.xlsx"}


def test_only_the_desktop_says_what_it_lacks(sample_file):
    done = run_without(["project", "desktop", str(sample_file)], "PySide6")
    assert done.returncode == 4
    assert "PySide6" in done.stderr
    # All in one process: each of its own would take a minute.
    code = (
        "import sys\nsys.modules['PySide6'] = None\n"
        "from hwsched.cli import ENTRIES\nfrom hwsched.cli.command import run\n"
        "sys.exit(max(run([*each.spelling.split(), '--help']) for each in ENTRIES))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def locked():
    """Name to what is pinned, as far as it is meant for this machine."""
    found = {}
    for line in LOCKED.read_text(encoding="utf-8").splitlines():
        if re.match(r"[A-Za-z]", line):
            wanted = Requirement(line.rstrip("\\ "))
            if wanted.marker is None or wanted.marker.evaluate(dict(default_environment())):
                found[wanted.name.lower()] = wanted
    return found


def test_the_locked_requirements_are_those_of_the_package_without_the_screen():
    project = tomllib.loads((RESOURCES.parent / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    pinned = locked()
    for each in (*project["dependencies"], *project["optional-dependencies"]["office"]):
        wanted = Requirement(each)
        if wanted.marker is not None and not wanted.marker.evaluate():
            continue
        if wanted.name.lower() in SCREEN:
            assert wanted.name.lower() not in pinned
            continue
        (pin,) = pinned[wanted.name.lower()].specifier
        assert wanted.specifier.contains(pin.version), each
    assert "--hash=sha256:" in LOCKED.read_text(encoding="utf-8")
