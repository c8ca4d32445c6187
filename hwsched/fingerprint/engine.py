"""The fingerprint of the program at work, by subsystem: who takes part is read from the imports."""

import hashlib
import importlib.util
import os
import time
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from typing import Final

from hwsched import __version__, outside
from hwsched.fingerprint.memory import Memory, Stamp, folder_of_caches, stamp_of, stamps_of
from hwsched.fingerprint.source import digest
from hwsched.paths import RESOURCES

_BEGAN_NS: Final = time.time_ns()
_PACKAGE: Final = Path(__file__).resolve().parent.parent
FITS: Final = ("hwsched.fitting", "hwsched.fingerprint")
"""What a fit is built by: all that they import takes part. The hashing itself does too: it may change its mind."""
FINDINGS: Final = (*FITS, "hwsched.operations.findings.checking")
"""What findings are made by: circuits, waivers and packets too."""
KEYS: Final = "hwsched.values.facts_read"
"""The module that hashes the facts that were read; its own hash says whether two such hashes can be compared."""


@dataclass(frozen=True, slots=True)
class Pack:
    """A package from outside that adds to a family."""

    name: str
    version: str
    points: tuple[str, ...]
    """What it adds, as it declares it."""
    places: tuple[Path, ...]
    """Folders and files of its own."""


@dataclass(frozen=True, slots=True)
class ProgramFolders:
    """Where a program lies."""

    package: Path = _PACKAGE
    tables: Path = RESOURCES
    packs: tuple[Pack, ...] = ()


@dataclass(frozen=True, slots=True)
class Engine:
    """A program, as far as a fit can depend on it."""

    key: str
    """32 hexadecimal digits: equal where every part is."""
    program: str
    """Version of the program, for people; it is not in the key."""
    parts: Mapping[str, str] = field(default_factory=dict)
    """Subsystem to the hash of its code, or of its tables; ``keys`` for the hashing of facts that were read."""

    def changed(self, other: "Engine") -> tuple[str, ...]:
        """Name the subsystems in which two programs differ."""
        names = sorted((self.parts.keys() | other.parts.keys()) - {"keys"})
        return tuple(name for name in names if self.parts.get(name) != other.parts.get(name))


@cache
def engine(roots: tuple[str, ...] = FITS) -> Engine:
    """Return the program at work, worked out once in a process.

    Parameters
    ----------
    roots : tuple of str
        Modules that make what it is asked for.

    Where files were exchanged since this process began, nobody knows any more what it runs: it is then a program of its
    own, whose results no other takes for its own.

    Raises
    ------
    OSError
        Where the program's own source cannot be read.
    """
    folder = folder_of_caches()
    places = ProgramFolders(packs=_packs())
    name = hashlib.sha256(f"{places.package} {roots}".encode("utf-8", "surrogateescape")).hexdigest()[:16]
    found, newest_ns = _dated(places, folder / f"engine-{name}.json" if folder is not None else None, roots)
    # The source was changed while this process ran: what is loaded is no longer what lies there, so that its results
    # are known as this process's own.
    if _BEGAN_NS < newest_ns <= time.time_ns():
        return replace(found, key=_hash([(found.key, str(_BEGAN_NS)), ("process", str(os.getpid()))]))
    return found


def engine_of(places: ProgramFolders, memory: Path | None = None, roots: tuple[str, ...] = FITS) -> Engine:
    """Return the program that lies at some place.

    Parameters
    ----------
    places : ProgramFolders
        Its package, its tables and the packages from outside that are installed beside it.
    memory : Path, optional
        File in which hashes are kept for the next time; without it every file is read.
    roots : tuple of str
        As `engine`.

    Raises
    ------
    OSError
        Where its source cannot be read.
    """
    return _dated(places, memory, roots)[0]


def _dated(places: ProgramFolders, memory: Path | None, roots: tuple[str, ...]) -> tuple[Engine, int]:
    """Return a program, and when a file of it was changed last [ns]."""
    own = sorted(Path(__file__).parent.glob("*.py"))
    # What this program remembers belongs to the code that wrote it down: another hashing may read it otherwise.
    held = Memory(memory, repr([stamp_of(path) for path in own]))
    about = repr([(pack.name, pack.version, pack.points, list(map(str, pack.places))) for pack in places.packs])
    found = held.last(about)
    if isinstance(found, dict):
        return Engine(found["key"], __version__, found["parts"]), found["newest_ns"]
    reading = _Reading(held)
    by_part: dict[str, list[tuple[str, str]]] = {}
    for module, hashed in _closure(places.package, reading, roots):
        part = module.split(".")[1] if module.count(".") else places.package.name
        by_part.setdefault(part, []).append((module, hashed))
        if module == KEYS:
            # Its own line beside its part: whether two hashes of facts compare hangs on this module alone.
            by_part["keys"] = [(module, hashed)]
    for name, hashed in _tables(places.tables, reading):
        by_part.setdefault("tables", []).append((name, hashed))
    for pack in places.packs:
        by_part[f"pack {pack.name}"] = [(pack.version, repr(pack.points)), *_contents(pack.places, reading)]
    parts = {part: _hash(sorted(said)) for part, said in sorted(by_part.items())}
    # It is in its part already, and must not count twice.
    key = _hash([(part, hashed) for part, hashed in parts.items() if part != "keys"])
    newest_ns = max(max(stamp[1:3]) for stamp, *_ in reading.files.values())
    held.keep(about, {"key": key, "parts": parts, "newest_ns": newest_ns}, reading.files, reading.folders)
    return Engine(key, __version__, parts), newest_ns


def _hash(said: Iterable[tuple[str, str]]) -> str:
    return hashlib.sha256("\n".join(f"{name} {each}" for name, each in said).encode()).hexdigest()[:32]


class _Reading:
    """The files that were read, and the folders that were listed, each with what tells whether it is as it was."""

    def __init__(self, memory: Memory) -> None:
        self._memory = memory
        self.files: dict[str, tuple[Stamp, str, tuple[str, ...]]] = {}
        self.folders: dict[str, Stamp] = {}

    def file(self, path: Path) -> tuple[str, tuple[str, ...]]:
        stamp = stamp_of(path)
        found = self._memory.file(str(path), stamp) or digest(path.read_bytes(), path.name)
        self.files[str(path)] = (stamp, *found)
        return found

    def list(self, folder: Path) -> list[Path]:
        self.folders |= stamps_of([folder])
        # A folder has no order of its own, and the hash must not hang on the disk.
        return sorted(folder.iterdir())

    def below(self, folder: Path) -> Iterator[Path]:
        """Yield the files in a folder and in those below it, compiled ones left out."""
        for path in self.list(folder):
            if path.is_dir():
                if path.name != "__pycache__":
                    yield from self.below(path)
            else:
                yield path


def _closure(package: Path, reading: _Reading, roots: tuple[str, ...]) -> list[tuple[str, str]]:
    """Return every module that the roots import, at whatever remove, with its hash; in the order of their names."""
    modules: dict[str, Path] = {}
    for name, path in _modules(package, reading):
        modules.setdefault(name, path)
    waiting, found = list(roots), dict[str, str]()
    while waiting:
        name = waiting.pop()
        # What is no module is something that stands in one.
        if name in found or name not in modules:
            continue
        path = modules[name]
        found[name], imported = reading.file(path)
        # A package is run before what lies in it.
        waiting += [name.rpartition(".")[0], *(_absolute(each, name, path) for each in imported)]
    missing = [root for root in roots if root not in found]
    if missing:
        raise FileNotFoundError(f"the program's own source is not at {package}: {', '.join(missing)} is missing")
    return sorted(found.items())


def _modules(package: Path, reading: _Reading) -> Iterator[tuple[str, Path]]:
    top = package.parent
    for path in reading.below(package):
        if path.suffix == ".py":
            words = path.relative_to(top).with_suffix("").parts
            # Where a folder and a file have one name, the folder is what is imported; it comes first.
            yield ".".join(words[:-1] if words[-1] == "__init__" else words), path


def _absolute(name: str, module: str, path: Path) -> str:
    dots = len(name) - len(name.lstrip("."))
    if not dots:
        return name
    # A leading dot counts from the package that the module lies in, two from the one above.
    words = module.split(".")
    here = words if path.name == "__init__.py" else words[:-1]
    return ".".join([*here[: len(here) - dots + 1], *filter(None, [name[dots:]])])


def _tables(folder: Path, reading: _Reading) -> Iterator[tuple[str, str]]:
    for path in reading.below(folder):
        if path.suffix == ".csv":
            # By its place below the folder, with the same strokes everywhere: the same program gets one key wherever
            # it lies.
            yield path.relative_to(folder).as_posix(), reading.file(path)[0]


def _contents(places: Iterable[Path], reading: _Reading) -> Iterator[tuple[str, str]]:
    for place in places:
        for path in reading.below(place) if place.is_dir() else [place]:
            yield path.relative_to(place.parent).as_posix(), reading.file(path)[0]


def _packs() -> tuple[Pack, ...]:
    """Return the packages that add to a family; what they import from yet other packages is not looked at."""
    by_name: dict[str, list[outside.Point]] = {}
    for point in outside.points():
        by_name.setdefault(point.package, []).append(point)
    return tuple(
        Pack(
            name,
            each[0].version,
            tuple(f"{point.group}: {point.name} = {point.value}" for point in each),
            tuple(dict.fromkeys(place for point in each for place in _places_of(point.module))),
        )
        for name, each in sorted(by_name.items())
    )


def _places_of(module: str) -> tuple[Path, ...]:
    """Return where the package of a module lies; nothing where there is none, which the family itself will tell."""
    try:
        spec = importlib.util.find_spec(module.partition(".")[0])
    except (ImportError, ValueError):
        return ()
    if spec is None:
        return ()
    if spec.submodule_search_locations:
        return tuple(map(Path, spec.submodule_search_locations))
    return (Path(spec.origin),) if spec.has_location and spec.origin else ()
