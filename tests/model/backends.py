"""Projects for tests, on SQLite and on a PostgreSQL cluster of the test's own (slow)."""

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from hwsched.model.project import Project, create_project

BACKENDS = ["sqlite", pytest.param("postgresql", marks=pytest.mark.slow)]


def programs() -> Path | None:
    """Return the folder of PostgreSQL's server programs."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    plain = shutil.which("initdb")
    return found[-1].parent if found else Path(plain).parent if plain else None


@pytest.fixture(scope="session")
def postgres_url() -> Iterator[str]:
    """URL of an empty cluster; it is thrown away at the end."""
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
    folder = Path(tempfile.mkdtemp(prefix="hwsched-pg-"))
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
    run("pg_ctl", "-D", data, "-w", "-l", str(folder / "log"), "-o", options, "start")
    try:
        yield f"postgresql://postgres@127.0.0.1:{port}"
    finally:
        run("pg_ctl", "-D", data, "-w", "-m", "immediate", "stop")
        shutil.rmtree(folder)


@pytest.fixture
def empty_place(request: pytest.FixtureRequest, backend: str, tmp_path: Path) -> str:
    """Where a new project can be made: a path, or the URL of an empty database."""
    if backend == "sqlite":
        return str(tmp_path / "yard.hwsched")
    import psycopg

    url = request.getfixturevalue("postgres_url")
    name = "t" + os.urandom(6).hex()
    with psycopg.connect(f"{url}/postgres", autocommit=True) as connection:
        connection.execute(f"CREATE DATABASE {name}")
    return f"{url}/{name}"


@pytest.fixture(params=BACKENDS)
def backend(request: pytest.FixtureRequest) -> str:
    """The kind of database."""
    return str(request.param)


@pytest.fixture
def project(empty_place: str) -> Iterator[Project]:
    """A new project on each kind of database."""
    with create_project(empty_place, "Yard", bare_unit="in") as made:
        yield made
