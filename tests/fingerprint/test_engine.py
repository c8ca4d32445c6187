"""The fingerprint of a program: whatever a fit can follow from is in it, and where the program lies is not."""

import os
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from hwsched.fingerprint import ProgramFolders, engine, engine_of
from hwsched.fingerprint import memory as memory_module
from hwsched.paths import RESOURCES

PACKAGE = ProgramFolders().package
TABLES = sorted(path.relative_to(RESOURCES) for path in RESOURCES.rglob("*.csv"))
module = sys.modules["hwsched.fingerprint.engine"]


def write(path, text):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


@pytest.fixture
def small(tmp_path):
    """A program of a few lines, with the tables of the real one."""
    package = tmp_path / "hwsched"
    write(package / "__init__.py", '__version__ = "1"\n')
    write(package / "fingerprint" / "__init__.py", "HOW = 1\n")
    write(package / "fitting" / "__init__.py", "from hwsched.fitting.build import fit\n")
    write(
        package / "fitting" / "build.py", "from hwsched.rules import RULES\nfrom ..values import facts_read\nfit = 1\n"
    )
    write(package / "rules" / "__init__.py", "from hwsched.rules.wall import RULE\nRULES = (RULE,)\n")
    write(package / "rules" / "wall.py", "from hwsched import calc\nRULE = 4\n")
    write(package / "calc" / "__init__.py", "")
    write(package / "calc" / "bore.py", "DEEP = 1\n")
    write(package / "values" / "__init__.py", "")
    write(package / "values" / "facts_read.py", "KEY = 1\n")
    write(package / "desktop" / "window.py", "import hwsched.fitting\nWIDE = 1\n")
    shutil.copytree(RESOURCES, tmp_path / "resources", ignore=shutil.ignore_patterns("fonts", "pictures"))
    return ProgramFolders(package, tmp_path / "resources")


@pytest.mark.parametrize(
    ("file", "text", "parts"),
    [
        ("rules/wall.py", "from hwsched import calc\nRULE = 5\n", {"rules"}),
        ("rules/wall.py", "# four\nfrom hwsched import calc\n\nRULE = 4\n", set()),
        ("calc/__init__.py", '"""Says it."""\n', set()),
        ("calc/__init__.py", "from hwsched.calc.opening.bore import DEEP\n", {"calc"}),
        ("calc/opening/bore.py", "DEEP = 2\n", set()),  # nobody imports it
        ("fitting/build.py", "from hwsched.rules import RULES\nfit = 2\n", {"fitting", "values", "keys"}),
        ("values/facts_read.py", "KEY = 2\n", {"values", "keys"}),
        ("fingerprint/__init__.py", "HOW = 2\n", {"fingerprint"}),
        ("desktop/window.py", "WIDE = 2\n", set()),
        ("__init__.py", '__version__ = "2"\n', set()),
        ("rules/wall/__init__.py", "RULE = 4\n", {"rules", "calc"}),  # a folder goes before a file of its name
    ],
)
def test_what_of_a_program_counts(small, file, text, parts):
    before = engine_of(small)
    write(small.package / file, text)
    after = engine_of(small)
    names = before.parts.keys() | after.parts.keys()
    assert {name for name in names if before.parts.get(name) != after.parts.get(name)} == parts
    assert (before.key != after.key) == bool(parts)
    assert set(after.changed(before)) == parts - {"keys"}


@pytest.mark.parametrize("table", TABLES, ids=str)
def test_a_row_of_every_table_counts(small, table):
    before = engine_of(small)
    path = small.tables / table
    path.write_bytes(path.read_bytes().rstrip(b"\r\n") + b"7\n")
    after = engine_of(small)
    assert after.key != before.key
    assert after.changed(before) == ("tables",)


def test_packages_from_outside_count_with_version_and_contents(small, tmp_path):
    write(tmp_path / "quay_rules" / "salt.py", "RULE = 1\n")
    write(tmp_path / "quay_rules" / "salt.csv", "a\n1\n")
    pack = module.Pack("quay-rules", "1.0", ("hwsched.rules: quay = quay_rules.salt:RULE",), (tmp_path / "quay_rules",))
    without, with_it = engine_of(small), engine_of(replace(small, packs=(pack,)))
    assert with_it.changed(without) == ("pack quay-rules",)
    seen = {without.key, with_it.key}
    for other in (replace(pack, version="1.1"), replace(pack, points=("hwsched.rules: quay = quay_rules.salt:OTHER",))):
        seen.add(engine_of(replace(small, packs=(other,))).key)
    write(tmp_path / "quay_rules" / "salt.csv", "a\n2\n")
    seen.add(engine_of(replace(small, packs=(pack,))).key)
    write(tmp_path / "quay_rules" / "salt.py", "RULE = 2\n")
    last = engine_of(replace(small, packs=(pack,))).key
    seen.add(last)
    assert len(seen) == 6
    write(tmp_path / "quay_rules" / "salt.py", "# two\nRULE = 2\n")
    assert engine_of(replace(small, packs=(pack,))).key == last


def test_a_program_without_its_source_is_named(small):
    shutil.rmtree(small.package / "fitting")
    with pytest.raises(FileNotFoundError, match=r"hwsched\.fitting"):
        engine_of(small)


@pytest.fixture(scope="module")
def copied(tmp_path_factory):
    """The real program in another place, and its fingerprint there."""
    target = tmp_path_factory.mktemp("elsewhere")
    shutil.copytree(PACKAGE, target / "hwsched", ignore=shutil.ignore_patterns("__pycache__"))
    places = ProgramFolders(target / "hwsched", RESOURCES)
    return places, engine_of(places)


def test_neither_place_nor_hash_seed_counts(copied):
    _, there = copied
    code = "from hwsched.fingerprint import ProgramFolders, engine_of; print(engine_of(ProgramFolders()).key)"
    for seed in ("1", "77"):
        environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(PACKAGE.parent)}
        told = subprocess.run([sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True)
        assert told.stdout.strip() == there.key


def test_a_constant_of_a_real_rule_counts_and_its_words_do_not(copied):
    places, before = copied
    path = places.package / "rules" / "holes" / "bore_wall.py"
    text = path.read_text(encoding="utf-8")
    try:
        path.write_text(f"# by hand\n\n{text}".replace('"""Rule: ', '"""Rule, as it reads: '), encoding="utf-8")
        assert engine_of(places).key == before.key
        for was, now in (("3.175", "3.2"), ("wall < limits", "wall <= limits")):
            assert was in text
            path.write_text(text.replace(was, now), encoding="utf-8")
            assert engine_of(places).changed(before) == ("rules",)
    finally:
        path.write_text(text, encoding="utf-8")


def test_all_that_fitting_loads_is_in_it():
    """The list is read from the source; what Python really loads is the proof."""
    code = "import sys, hwsched.fitting; print(*(n for n in sys.modules if n.partition('.')[0] == 'hwsched'))"
    environment = {**os.environ, "PYTHONPATH": str(PACKAGE.parent)}
    told = subprocess.run([sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True)
    reading = module._Reading(memory_module.Memory(None, ""))
    known = {name for name, _ in module._closure(PACKAGE, reading, module.FITS)}
    assert set(told.stdout.split()) <= known
    assert not {name for name in known if name.split(".")[1:2] in (["desktop"], ["documents"], ["model"], ["cli"])}


@pytest.fixture
def remembered(small, tmp_path, monkeypatch):
    """The small program seen long after it was written: returns how to ask for it, and which files were read."""
    read = []
    real = module.digest
    monkeypatch.setattr(module, "digest", lambda text, name: (read.append(name), real(text, name))[1])
    now = memory_module.time.time_ns()
    monkeypatch.setattr(memory_module.time, "time_ns", lambda: now + 10_000_000_000)

    def ask():
        read.clear()
        return engine_of(small, tmp_path / "cache" / "engine.json"), list(read)

    return small, ask


def test_a_program_that_is_as_it_was_is_not_read_again(remembered):
    _, ask = remembered
    first, read = ask()
    assert len(read) > 5
    assert ask() == (first, [])


def test_a_file_of_the_same_size_and_time_is_seen_to_differ(remembered):
    """As after an update that keeps the times of its files."""
    small, ask = remembered
    first, _ = ask()
    path = small.package / "rules" / "wall.py"
    held = path.stat()
    path.write_text(path.read_text().replace("4", "5"))
    os.utime(path, ns=(held.st_atime_ns, held.st_mtime_ns))
    assert (path.stat().st_size, path.stat().st_mtime_ns) == (held.st_size, held.st_mtime_ns)
    second, read = ask()
    assert read == ["wall.py"]
    assert second.changed(first) == ("rules",)


def test_a_file_that_is_new_is_seen(remembered):
    small, ask = remembered
    first, _ = ask()
    write(small.package / "rules" / "wall" / "__init__.py", "RULE = 4\n")
    assert ask()[0].key != first.key


def test_what_changed_a_moment_ago_is_never_taken_for_known(small, tmp_path):
    """A second change might fall into the same tick of the clock."""
    first = engine_of(small, tmp_path / "engine.json")
    assert not (tmp_path / "engine.json").exists()
    write(small.package / "rules" / "wall.py", "from hwsched import calc\nRULE = 5\n")
    assert engine_of(small, tmp_path / "engine.json").key != first.key


@pytest.mark.parametrize("text", ["", "{", "[]", '{"by": "another"}', "\x00"])
def test_a_memory_that_cannot_be_read_is_none(remembered, tmp_path, text):
    _, ask = remembered
    first, read = ask()
    for path in (tmp_path / "cache").iterdir():
        path.write_text(text)
    assert ask() == (first, read)


def test_where_nothing_can_be_kept_it_is_worked_out(small, tmp_path):
    (tmp_path / "file").write_text("x")
    assert engine_of(small, tmp_path / "file" / "engine.json") == engine_of(small)


def test_a_process_whose_files_were_exchanged_is_a_program_of_its_own(monkeypatch):
    engine.cache_clear()
    plain = engine()
    try:
        monkeypatch.setattr(module, "_BEGAN_NS", 1)
        engine.cache_clear()
        assert engine().key != plain.key
        assert engine().parts == plain.parts
    finally:
        engine.cache_clear()


@pytest.mark.parametrize(
    ("platform", "environment", "folder"),
    [
        ("linux", {}, Path.home() / ".cache" / "hwsched"),
        ("linux", {"XDG_CACHE_HOME": "/c"}, Path("/c/hwsched")),
        ("darwin", {}, Path.home() / "Library" / "Caches" / "hwsched"),
        ("win32", {"LOCALAPPDATA": "/l"}, Path("/l/hwsched")),
    ],
)
def test_where_hashes_are_kept(monkeypatch, platform, environment, folder):
    monkeypatch.setattr(memory_module.sys, "platform", platform)
    assert memory_module.folder_of_caches(environment) == folder
