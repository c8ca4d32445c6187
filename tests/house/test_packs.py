"""Rules and part kinds from another package: the guide's worked example is built, installed and used."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from openpyxl import Workbook

PACK = Path(__file__).parent / "example_pack"
GUIDE = Path(__file__).parents[2] / "resources" / "handbook" / "packages.md"


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """Folder into which pip has installed the example."""
    target = tmp_path_factory.mktemp("site")
    command = [sys.executable, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-deps"]
    command += ["--no-build-isolation", "--no-index", "--target", str(target), str(PACK)]
    subprocess.run(command, check=True, capture_output=True, text=True)
    return target


def run(site, *arguments):
    environment = {**os.environ, "PYTHONPATH": str(site)}
    return subprocess.run(
        [sys.executable, "-m", "hwsched", *map(str, arguments)], env=environment, capture_output=True, text=True
    )


def test_the_guide_shows_the_example_as_it_is():
    guide = GUIDE.read_text(encoding="utf-8")
    for name in ("pyproject.toml", "quay_rules/salt_air.py", "quay_rules/rain_hood.py"):
        assert (PACK / name).read_text(encoding="utf-8") in guide


def findings_of(check):
    """Return the findings that a check for machines told."""
    return json.loads(check.stdout)["result"]["findings"]


ONE_AFTER_THE_OTHER = """
import contextlib, io, json, sys
from hwsched.cli.command import run
told = []
for words in json.load(sys.stdin):
    with contextlib.redirect_stdout(io.StringIO()) as out, contextlib.redirect_stderr(io.StringIO()) as err:
        status = run(words)
    told.append((status, out.getvalue(), err.getvalue()))
print(json.dumps(told))
"""


def run_all(site, *lines):
    """Run command lines one after the other in one process that finds what is installed there."""
    environment = {**os.environ, "PYTHONPATH": str(site)}
    done = subprocess.run(
        [sys.executable, "-c", ONE_AFTER_THE_OTHER], input=json.dumps([[*map(str, line)] for line in lines]),
        env=environment, capture_output=True, text=True, check=True,
    )  # fmt: skip
    return [subprocess.CompletedProcess((), *each) for each in json.loads(done.stdout)]


def test_an_installed_rule_is_in_the_rulebook_and_speaks(installed, corner_file):
    check = ("findings", "check", corner_file, "--json")
    plain = findings_of(run("", *check))
    assert not [f for f in plain if f["rule"] == "quay-rain-hood"]
    told, before, fit, checked, switched, after = run_all(
        installed,
        ("findings", "rules", "quay-rain-hood", "--json"),
        check,
        ("opening", "fit", corner_file),
        check,
        ("project", "settings", corner_file, "--rule-off", "quay-rain-hood"),
        check,
    )
    assert told.returncode == 0, told.stderr
    (rule,) = json.loads(told.stdout)["result"]
    assert (rule["id"], rule["limits"][0]["value"]) == ("quay-rain-hood", 40.0)
    # What was worked out without the package does not count before it is worked out with it.
    assert "Worked out by an earlier version: " in before.stderr
    rules = {f["rule"] for f in findings_of(before)}
    assert "fit-out-of-date" in rules
    assert "quay-rain-hood" not in rules
    assert fit.returncode == 0
    assert checked.stderr == ""
    spoken = [f for f in findings_of(checked) if f["rule"] == "quay-rain-hood"]
    assert spoken
    assert spoken[0]["values"] == {"needed_mm": 40.0, "overhang_mm": 0.0}
    assert switched.returncode == 0
    assert not [f for f in findings_of(after) if f["rule"] == "quay-rain-hood"]


def test_an_installed_kind_has_its_sheet(installed, tmp_path, corner_file):
    book = Workbook()
    sheet = book.active
    sheet.title = "Rain hoods"
    sheet.append(["Part number", "Description", "Overhang [mm]"])
    sheet.append(["QR-50", "Rain hood, 50 mm", 50])
    book.save(tmp_path / "hoods.xlsx")
    without = run("", "parts", "import", corner_file, tmp_path / "hoods.xlsx")
    assert without.returncode != 0
    assert "Rain hoods" in without.stderr or "part kind" in without.stderr
    with_it = run(installed, "parts", "import", corner_file, tmp_path / "hoods.xlsx", "--json")
    assert with_it.returncode == 0, with_it.stderr
    assert json.loads(with_it.stdout)["result"]["counts"]["added_count"] == 1


def test_a_package_that_cannot_be_taken_in_is_named(tmp_path):
    info = tmp_path / "broken_pack-1.0.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: broken-pack\nVersion: 1.0\n")
    for value, said in (
        ("no_such_module:RULE", "cannot be loaded"),
        ("json:dumps", "accepted: a Rule"),
        ("hwsched.rules.power.supply_drop:RULE", "'supply-drop' is taken already by hwsched"),
    ):
        (info / "entry_points.txt").write_text(f"[hwsched.rules]\nbad = {value}\n")
        told = run(tmp_path, "findings", "rules")
        assert told.returncode != 0
        assert "broken-pack, entry point bad of hwsched.rules" in told.stderr
        assert said in told.stderr


def test_a_rule_of_supplies_comes_from_outside_and_one_of_what_nobody_judges_does_not(tmp_path):
    (tmp_path / "shelf_pack.py").write_text(
        "from hwsched.rules.rule import SUPPLIES, Rule, Subject\n"
        "said = dict(title='T', discipline='power', severity='note', basis='b', cure='C.', judge=lambda *_: ())\n"
        "LABELLED = Rule(id='supply-labelled', subject=SUPPLIES, **said)\n"
        "SHELF = Rule(id='shelf-filled', subject=Subject('shelf', 'each shelf', str), **said)\n"
    )
    info = tmp_path / "shelf_pack-1.0.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: shelf-pack\nVersion: 1.0\n")
    (info / "entry_points.txt").write_text("[hwsched.rules]\nshelf = shelf_pack:LABELLED\n")
    told = run(tmp_path, "findings", "rules", "supply-labelled")
    assert told.returncode == 0, told.stderr
    assert "each supply with its circuits" in told.stdout
    (info / "entry_points.txt").write_text("[hwsched.rules]\nshelf = shelf_pack:SHELF\n")
    told = run(tmp_path, "findings", "rules")
    assert told.returncode != 0
    assert "rule shelf-filled judges 'shelf'; accepted: opening, supply, record" in told.stderr
