"""Projects for tests, on SQLite and on a PostgreSQL cluster of the run's own (slow).

Tables are made and a yard is furnished once a worker and kind of database; each test works on a copy of its own.
"""

import copy
import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from hwsched.model.project import Project, create_project, open_project

ROOM = 2 * 1024**3
BACKENDS = ["sqlite", pytest.param("postgresql", marks=pytest.mark.slow)]


def programs() -> Path | None:
    """Return the folder of PostgreSQL's server programs."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    plain = shutil.which("initdb")
    return found[-1].parent if found else Path(plain).parent if plain else None


def quick_folder() -> Path | None:
    """Return a folder that lies in memory, where there is one with room; None for the usual one."""
    memory = Path("/dev/shm")
    return memory if memory.is_dir() and shutil.disk_usage(memory).free > ROOM else None


def on_server(url: str, command: str, since_15: str = "") -> None:
    """Tell a cluster something that concerns whole databases; what PostgreSQL knows only since 15 stands apart."""
    import psycopg

    with psycopg.connect(f"{url}/postgres", autocommit=True) as connection:
        connection.execute(command + (since_15 if connection.info.server_version >= 150_000 else ""))


def new_database(place: str, template: str = "template1") -> None:
    """Make a database that is a copy of another one."""
    url, _, name = place.rpartition("/")
    on_server(url, f"CREATE DATABASE {name} TEMPLATE {template}", " STRATEGY FILE_COPY")


@contextmanager
def cluster() -> Iterator[str]:
    """Start an empty cluster and tell its URL; it is thrown away at the end."""
    bin_folder = programs()
    if bin_folder is None:
        pytest.skip("PostgreSQL's server programs are not installed")
    owner = None
    if os.geteuid() == 0:
        # The server refuses to run as root.
        try:
            owner = pwd.getpwnam("postgres")
        except KeyError:
            pytest.skip("PostgreSQL does not run as root, and there is no user postgres")
    folder = Path(tempfile.mkdtemp(prefix="hwsched-pg-", dir=quick_folder()))
    if owner:
        os.chown(folder, owner.pw_uid, owner.pw_gid)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]

    def run(program: str, *arguments: str) -> None:
        subprocess.run(
            [str(bin_folder / program), *arguments],
            check=True,
            cwd=folder,
            user="postgres" if owner else None,
            stdout=subprocess.DEVNULL,
            timeout=60,
        )

    data = str(folder / "data")
    run("initdb", "-D", data, "-A", "trust", "-U", "postgres", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync")
    options = f"-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={folder} -c fsync=off"
    # Nothing of it is read after a crash, nor used long enough to be tidied.
    options += " -c full_page_writes=off -c synchronous_commit=off -c autovacuum=off"
    run("pg_ctl", "-D", data, "-w", "-l", str(folder / "log"), "-o", options, "start")
    try:
        yield f"postgresql://postgres@127.0.0.1:{port}"
    finally:
        run("pg_ctl", "-D", data, "-w", "-m", "immediate", "stop")
        shutil.rmtree(folder)


@pytest.fixture
def address(request: pytest.FixtureRequest, backend: str, tmp_path: Path) -> Iterator[str]:
    """Where a project can be made, or is where `project` is asked for too: a path, or the URL of a database."""
    if backend == "sqlite":
        yield str(tmp_path / "yard.hwsched")
        return
    url = request.getfixturevalue("postgres_url")
    name = "t" + os.urandom(6).hex()
    yield f"{url}/{name}"
    # Left there, some hundred of them would fill the memory in which they lie.
    on_server(url, f"DROP DATABASE IF EXISTS {name} WITH (FORCE)")


@pytest.fixture
def empty_place(backend: str, address: str) -> str:
    """Where a test makes its project itself: a path, or the URL of an empty database."""
    if backend == "postgresql":
        new_database(address)
    return address


@pytest.fixture(params=BACKENDS)
def backend(request: pytest.FixtureRequest) -> str:
    """The kind of database."""
    return str(request.param)


@dataclass
class Template:
    """A project that nobody has open, to be copied, and what its making gave."""

    place: str
    stated: Any = None

    def copy_to(self, place: str) -> None:
        """Put a copy where there is nothing yet."""
        if place.startswith("postgresql"):
            new_database(place, self.place.rpartition("/")[2])
        else:
            shutil.copy(self.place, place)


ITSELF = object()
"""Stands for the project where furnishing it gave back nothing else."""


@dataclass
class Templates:
    """The projects that one worker has made to be copied."""

    folder: Path
    held: dict[tuple[str, Callable[[Project], Any] | None], Template] = field(default_factory=dict)

    def of(self, backend: str, server: str, furnish: Callable[[Project], Any] | None) -> Template:
        """Return the project of that kind, furnished so; made where it is the first time."""
        key = backend, furnish
        if key not in self.held:
            empty = self.of(backend, server, None) if furnish is not None else None
            name = f"yard{len(self.held)}"
            made = Template(f"{server}/{name}" if server else str(self.folder / f"{name}.hwsched"))
            if empty is None or furnish is None:
                if server:
                    new_database(made.place)
                create_project(made.place, "Yard", bare_unit="in").close()
            else:
                empty.copy_to(made.place)
                with open_project(made.place) as project:
                    stated = furnish(project)
                    made.stated = ITSELF if stated is project else stated
            self.held[key] = made
        return self.held[key]


FURNISHINGS: dict[tuple[str, str], Callable[[Project], Any]] = {}
"""What `furnished` was put on, by module and name."""
_GIVEN = pytest.StashKey[dict[str, Any]]()


def furnished(furnish: Callable[[Project], Any]) -> Any:
    """Make a fixture of a function that fills a new project, and is to give the same each time.

    It is called once a worker and kind of database; the tests have copies of its project, and of what it returns.
    """
    name = furnish.__name__
    FURNISHINGS[furnish.__module__, name] = furnish

    @pytest.fixture(name=name)
    def filled(request: pytest.FixtureRequest, project: Project) -> Any:
        stated = request.node.stash.get(_GIVEN, {})
        if name not in stated:
            # A test that asks for two: the second is filled into what the first has made.
            return furnish(project)
        return project if stated[name] is ITSELF else copy.deepcopy(stated[name])

    filled.__doc__ = furnish.__doc__
    return filled


@pytest.fixture
def project(request: pytest.FixtureRequest, backend: str, address: str, templates: Templates) -> Iterator[Project]:
    """A project on each kind of database: new, or furnished where the test asks for that."""
    module = request.module.__name__
    name = next((each for each in request.fixturenames if (module, each) in FURNISHINGS), "")
    server = request.getfixturevalue("postgres_url") if backend == "postgresql" else ""
    template = templates.of(backend, server, FURNISHINGS.get((module, name)))
    request.node.stash[_GIVEN] = {name: template.stated}
    template.copy_to(address)
    with open_project(address) as opened:
        yield opened
