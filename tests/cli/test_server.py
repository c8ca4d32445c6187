"""A database server at the command line: a role that may only read, services, and passwords that nobody sees."""

import json
from urllib.parse import urlsplit

import pytest
from sqlalchemy import create_engine, text

from hwsched.cli.command import run
from tests.cli.processes import FAILURE_MARKS, hwsched
from tests.cli.trying import run_forked

pytestmark = pytest.mark.slow
SECRET = "s3cr3t-w0rd"


@pytest.fixture
def yard(postgres_url):
    """A project on the server, and a role that may read it but not write."""
    engine = create_engine(postgres_url.replace("postgresql://", "postgresql+psycopg://"), isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        for line in ("DROP DATABASE IF EXISTS yard", "DROP ROLE IF EXISTS reader", "CREATE DATABASE yard"):
            connection.execute(text(line))
        connection.execute(text(f"CREATE ROLE reader LOGIN PASSWORD '{SECRET}'"))
    server = urlsplit(postgres_url)
    address = f"postgresql://{server.netloc}/yard"
    assert run(["project", "new", address, "--name", "Yard", "--quiet"]) == 0
    assert run(["survey", "add", address, "101", "--quiet"]) == 0
    inside = create_engine(address.replace("postgresql://", "postgresql+psycopg://"), isolation_level="AUTOCOMMIT")
    with inside.connect() as connection:
        connection.execute(text("GRANT SELECT ON ALL TABLES IN SCHEMA public TO reader"))
    yield server, address
    inside.dispose()
    with engine.connect() as connection:
        connection.execute(text("DROP DATABASE yard WITH (FORCE)"))
        connection.execute(text("DROP ROLE reader"))
    engine.dispose()


def test_a_role_that_may_only_read_reads_and_what_it_would_write_is_refused(yard, tmp_path):
    server, _ = yard
    address = f"postgresql://reader:{SECRET}@{server.hostname}:{server.port}/yard"
    reading = (
        ("findings", "check", address), ("opening", "show", address), ("findings", "why", address, "101"),
        ("survey", "missing", address), ("project", "history", address),
        ("release", "print", address, "schedule", "-o", str(tmp_path)), ("power", "show", address),
        ("project", "verify", address), ("project", "people", address),
    )  # fmt: skip
    for words in reading:
        done = run_forked(words, tmp_path)
        assert done.status == 0, (words, done.err)
    done = run_forked(("opening", "fit", address), tmp_path)
    assert done.status == 3
    assert not [mark for mark in FAILURE_MARKS if mark in done.err]
    assert "permission denied" in done.err


def test_a_server_is_named_as_a_service_and_the_password_stands_in_a_file(yard, tmp_path):
    server, _ = yard
    (tmp_path / "services.conf").write_text(
        f"[yard]\nhost={server.hostname}\nport={server.port}\ndbname=yard\nuser=reader\n"
    )
    passwords = tmp_path / "passwords"
    passwords.write_text(f"{server.hostname}:{server.port}:yard:reader:{SECRET}\n")
    passwords.chmod(0o600)
    env = {"PGSERVICEFILE": str(tmp_path / "services.conf"), "PGPASSFILE": str(passwords)}
    done = hwsched("findings", "check", "postgresql:///?service=yard", "--json", env=env, text=True)
    assert done.returncode == 0, done.stderr
    assert {finding["mark"] for finding in json.loads(done.stdout)["result"]["findings"]} == {"101"}


def test_a_password_in_the_query_is_not_shown_when_all_went_well(yard, tmp_path):
    server, address = yard
    engine = create_engine(address.replace("postgresql://", "postgresql+psycopg://"), isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text("DROP SCHEMA public CASCADE"))
        connection.execute(text("CREATE SCHEMA public"))
        connection.execute(text("GRANT ALL ON SCHEMA public TO reader"))
    engine.dispose()
    asked = f"postgresql://{server.hostname}:{server.port}/yard?user=reader&password={SECRET}"
    done = hwsched("project", "new", asked, "--verbose", env={"HWSCHED_LOG": str(tmp_path)}, text=True)
    assert done.returncode == 0, done.stderr
    shown = hwsched("project", "history", asked, "--json", text=True)
    again = hwsched("project", "new", asked, text=True)
    assert again.returncode == 3
    logged = "".join(path.read_text() for path in tmp_path.rglob("*") if path.is_file())
    for said in (done.stdout, done.stderr, shown.stdout, again.stderr, logged):
        assert SECRET not in said
    inside = create_engine(address.replace("postgresql://", "postgresql+psycopg://"))
    with inside.connect() as connection:
        assert connection.execute(text("SELECT name FROM project")).scalar() == "yard"
    inside.dispose()
