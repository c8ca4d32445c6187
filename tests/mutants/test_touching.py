"""Which tests a changed line has to answer to."""

import json
import os
import subprocess
import sys
from dataclasses import replace

import pytest

from tests.mutants.sites import ROOT, Mutant
from tests.mutants.touching import Touching, is_fresh, key_of, written_for

BATTERY = "hwsched/calc/power/battery.py"
IN_FUNCTION = Mutant(BATTERY, 12, "return", "return a", "return None", range(11, 14), range(10, 20), False)


@pytest.fixture
def folder(tmp_path):
    def write(test_file, tests, ran):
        held = {
            f"{test_file}::{name}": {"seconds": seconds, "passed": passed, "shared": shared}
            for name, (seconds, passed, shared) in tests.items()
        }
        contexts = {
            name if name.startswith(("fixture ", "loading")) else f"{test_file}::{name}": ran[name] for name in ran
        }
        content = {
            "touched": [BATTERY],
            "key": key_of(test_file, [BATTERY]),
            "tests": held,
            "shared_s": {"fixture sample_folder": 1.0},
            "ran": contexts,
        }
        written_for(tmp_path, test_file).write_text(json.dumps(content), encoding="utf-8")

    write(
        "tests/calc/power/test_battery.py",
        {
            "slow": (3.0, True, []),
            "quick": (0.1, True, []),
            "elsewhere": (0.1, True, []),
            "failing": (0.1, False, []),
            "shares": (0.01, True, ["fixture sample_folder"]),
        },
        {
            "slow": {BATTERY: [11, 12]},
            "quick": {BATTERY: [13]},
            "elsewhere": {BATTERY: [19, 30]},
            "failing": {BATTERY: [12]},
            "fixture sample_folder": {BATTERY: [12]},
            "loading": {BATTERY: [1, 40]},
        },
    )
    return tmp_path


@pytest.fixture
def touching(folder):
    return Touching(folder, ["tests/calc/power/test_battery.py", "tests/benchmarks/test_power.py"])


def names(found):
    return [name.split("::")[1] for name in found]


def test_the_quickest_of_those_that_run_the_statement_come_first(touching):
    """And a fixture of several tests speaks for all of them; a test that fails by itself says nothing."""
    assert names(touching.of(IN_FUNCTION)) == ["quick", "shares", "slow"]


def test_a_default_answers_to_the_tests_of_its_function(touching):
    default = replace(IN_FUNCTION, line=10, statement=range(9, 11), at_import=True)
    assert names(touching.of(default)) == ["elsewhere", "quick", "shares", "slow"]


def test_a_constant_answers_to_the_tests_of_the_lines_that_say_it(touching):
    touching._uses["WIDE_MM"] += [(BATTERY, 30), ("hwsched/calc/opening/bore.py", 12)]
    constant = replace(IN_FUNCTION, line=3, statement=range(3, 4), scope=None, at_import=True, names=("WIDE_MM",))
    assert names(touching.of(constant)) == ["elsewhere"]
    assert names(touching.of(replace(constant, names=("NOWHERE",)))) == ["elsewhere", "quick", "shares", "slow"]


def test_a_name_that_several_modules_give_is_that_of_the_module_that_is_named_beside_it(touching):
    """Of the rules, each a RULE, one answers to the tests that run it, and not to all that say RULE."""
    reach, width = "hwsched/rules/accessibility/reach_height.py", "hwsched/rules/accessibility/clear_width.py"
    places = {place for place, _ in touching.uses("RULE", reach)}
    assert {reach, "hwsched/rules/__init__.py"} <= places
    assert width not in places
    touching.by_line[width, 12] = {"tests/rules/test_egress_and_accessibility.py::width"}
    touching.by_line[reach, 12] = {"tests/rules/test_egress_and_accessibility.py::reach"}
    touching.seconds |= dict.fromkeys((*touching.by_line[width, 12], *touching.by_line[reach, 12]), 0.1)
    touching.shared_s |= dict.fromkeys((*touching.by_line[width, 12], *touching.by_line[reach, 12]), 0.0)
    limit = replace(IN_FUNCTION, file=reach, line=40, statement=range(30, 50), scope=None, at_import=True)
    assert names(touching.of(replace(limit, names=("RULE",)))) == ["reach"]


def test_a_line_that_no_test_runs(touching):
    assert touching.of(replace(IN_FUNCTION, statement=range(50, 51))) == {}


def test_a_function_that_runs_as_its_module_is_loaded_answers_to_the_tests_of_the_module(touching):
    assert names(touching.of(replace(IN_FUNCTION, statement=range(40, 41)))) == ["elsewhere", "quick", "shares", "slow"]


def test_what_was_measured_holds_until_the_texts_change(folder):
    path = written_for(folder, "tests/calc/power/test_battery.py")
    assert is_fresh(folder, "tests/calc/power/test_battery.py")
    assert not is_fresh(folder, "tests/calc/opening/test_bore.py")
    content = json.loads(path.read_text(encoding="utf-8"))
    path.write_text(json.dumps(content | {"touched": [BATTERY, "hwsched/calc/opening/cable.py"]}), encoding="utf-8")
    assert not is_fresh(folder, "tests/calc/power/test_battery.py")


def test_the_sample_is_made_anew_where_an_earlier_program_s_would_not_count(touching):
    """Battery and strike rule take part in fits; of a page the sample needs nothing where it does not run the line."""
    assert touching.makes_sample(replace(IN_FUNCTION, statement=range(50, 51)))
    rule = replace(IN_FUNCTION, file="hwsched/rules/lock_and_cylinder/strike_fit.py")
    assert touching.makes_sample(rule)
    page = replace(IN_FUNCTION, file="hwsched/documents/release/packet.py")
    assert not touching.makes_sample(page)
    touching.by_sample.add((page.file, 12))
    assert touching.makes_sample(page)


TREE = """
import pytest, time


@pytest.fixture(scope="module")
def made():
    {wait}
    return 1


def test_first(made):
    assert made == 1


def test_second(made):
    assert made == 1
"""


def run_in(folder, wait, *words):
    (folder / "test_made.py").write_text(TREE.format(wait=wait), encoding="utf-8")
    command = [sys.executable, "-m", "pytest", "-q", "-p", "tests.mutants.touching", "-p", "no:cacheprovider", *words]
    environment = {**os.environ, "PYTHONPATH": f"{ROOT}{os.pathsep}{folder}"}
    return subprocess.run(
        [*command, f"--rootdir={folder}", "-c", os.devnull, str(folder / "test_made.py")],
        cwd=folder, env=environment, capture_output=True, text=True, check=False,
    )  # fmt: skip


@pytest.mark.slow
def test_the_first_test_does_not_pay_for_what_it_shares(tmp_path):
    """A second of waiting is the fixture's, neither the first test's nor the second's."""
    done = run_in(tmp_path, "time.sleep(1.0)", f"--write-touched={tmp_path / 'written'}")
    assert done.returncode == 0, done.stdout
    content = json.loads(next((tmp_path / "written").iterdir()).read_text(encoding="utf-8"))
    assert content["shared_s"]["fixture made"] >= 1.0
    assert len(content["tests"]) == 2
    assert all(each["seconds"] < 0.5 for each in content["tests"].values())


@pytest.mark.slow
@pytest.mark.parametrize(
    ("least_s", "shared_s", "fails"), [(0.2, 300.0, False), (20.0, 0.2, True)], ids=["in its time", "beyond it"]
)
def test_what_is_shared_has_a_time_of_its_own(tmp_path, least_s, shared_s, fails):
    """Half a second of work; the test that comes first has a fifth of one, or what is shared has."""
    listed = tmp_path / "given.json"
    listed.write_text(json.dumps({"test_made.py::test_first": 0.0}), encoding="utf-8")
    wait = "end = time.process_time() + 0.5\n    while time.process_time() < end: pass"
    (tmp_path / "shorter.py").write_text(
        f"import tests.mutants.touching as t\nt.SHARED_S, t.LEAST_S = {shared_s}, {least_s}\n", encoding="utf-8"
    )
    done = run_in(tmp_path, wait, "-p", "shorter", f"--only-tests={listed}")
    assert ("1 passed" in done.stdout) != fails, done.stdout
    assert ("TooLong" in done.stdout) == fails, done.stdout
