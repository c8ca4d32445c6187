"""Setting up behind an office's own certificate authority: what is trusted, what is tried, and what is said."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest

from hwsched.paths import RESOURCES

SETUP = RESOURCES.parent / ".ci" / "setup"

PYTHON = """#!/usr/bin/env bash
# Stands for the interpreter: makes the environment, whose interpreter and uv are the stand-ins beside this one.
case "$*" in
    "-m venv "*) mkdir -p "$3/bin"; cp "$STUBS/venv-python" "$3/bin/python" ;;
esac
"""
VENV_PYTHON = """#!/usr/bin/env bash
echo "pip: $* | PIP_CERT=${PIP_CERT:-} SSL_CERT_FILE=${SSL_CERT_FILE:-}" >> "$CALLS"
case "$*" in
    *install*" uv") [ "${UV_COMES:-yes}" = yes ] || { echo "no uv: certificate verify failed" >&2; exit 1; }
        cp "$STUBS/uv" "$(dirname "$0")/uv" ;;
    *" -e "*) [ "${PIP_WORKS:-yes}" = yes ] || { echo "ERROR: CERTIFICATE_VERIFY_FAILED" >&2; exit 1; } ;;
esac
"""
UV = """#!/usr/bin/env bash
echo "uv: $* | UV_SYSTEM_CERTS=${UV_SYSTEM_CERTS:-} SSL_CERT_FILE=${SSL_CERT_FILE:-}" >> "$CALLS"
[ "${UV_WORKS:-yes}" = yes ] || { echo "error: invalid peer certificate: UnknownIssuer" >&2; exit 2; }
"""


@pytest.fixture
def house(tmp_path):
    """A checkout in which nothing is set up, and stand-ins for everything that would be called."""
    if not SETUP.is_file():
        pytest.skip("not a checkout")
    root, stubs = tmp_path / "house", tmp_path / "stubs"
    (root / ".ci").mkdir(parents=True)
    stubs.mkdir()
    shutil.copy(SETUP, root / ".ci" / "setup")
    (root / "pyproject.toml").write_text("")
    for name, text in (
        ("python", PYTHON), ("venv-python", VENV_PYTHON), ("uv", UV),
        ("dpkg-query", "#!/usr/bin/env bash\necho install ok installed\n"),
    ):  # fmt: skip
        (stubs / name).write_text(text)
        (stubs / name).chmod(0o755)
    return root


def set_up(house, **env):
    stubs, calls = house.parent / "stubs", house.parent / "calls"
    calls.write_text("")
    kept = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith(("SSL_", "PIP_", "UV_", "REQUESTS_", "CURL_"))
    }
    done = subprocess.run(
        ["bash", str(house / ".ci" / "setup"), "run"],
        env={
            **kept, "PATH": f"{stubs}:{os.environ['PATH']}", "HWSCHED_PYTHON": str(stubs / "python"),
            "HWSCHED_VENV": str(house / ".venv"), "STUBS": str(stubs), "CALLS": str(calls), **env,
        },
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    return done, calls.read_text().splitlines()


def was_set_up(house):
    return bool(list((house / ".venv").glob(".hwsched-run-*")))


def test_uv_installs_and_asks_the_system_whom_to_trust(house):
    done, calls = set_up(house)
    assert done.returncode == 0, done.stderr
    (call,) = [line for line in calls if line.startswith("uv:")]
    assert "UV_SYSTEM_CERTS=true" in call
    assert f"-e {house}" in call
    assert was_set_up(house)
    assert set_up(house)[1] == [f"pip: -m compileall -q {house}/hwsched | PIP_CERT= SSL_CERT_FILE="], "once is enough"


@pytest.mark.parametrize("name", ["SSL_CERT_FILE", "REQUESTS_CA_BUNDLE", "CURL_CA_BUNDLE", "PIP_CERT"])
def test_a_named_authority_reaches_both_installers(name, house, tmp_path):
    authority = tmp_path / "office.pem"
    authority.write_text("certificate")
    done, calls = set_up(house, **{name: str(authority)})
    assert done.returncode == 0, done.stderr
    assert f"PIP_CERT={authority}" in calls[0]
    assert f"SSL_CERT_FILE={authority}" in next(line for line in calls if line.startswith("uv:"))


def test_a_folder_of_authorities_reaches_them_too(house, tmp_path):
    (tmp_path / "certs").mkdir()
    done, calls = set_up(house, SSL_CERT_DIR=f"{tmp_path / 'certs'}:/other")
    assert done.returncode == 0, done.stderr
    assert f"PIP_CERT={tmp_path / 'certs'} SSL_CERT_FILE=" in calls[0]


def test_what_a_person_has_set_for_uv_stays(house):
    _, calls = set_up(house, UV_SYSTEM_CERTS="false")
    assert "UV_SYSTEM_CERTS=false" in next(line for line in calls if line.startswith("uv:"))


@pytest.mark.parametrize("failing", [{"UV_WORKS": "no"}, {"UV_COMES": "no"}])
def test_where_uv_fails_pip_does_it_and_what_failed_is_said(failing, house):
    done, calls = set_up(house, **failing)
    assert done.returncode == 0, done.stderr
    assert any(line.startswith("pip: -m pip install") and f"-e {house}" in line for line in calls)
    assert "uv could not install the packages; trying pip alone" in done.stderr
    assert "certificate" in done.stderr
    assert was_set_up(house)


def test_where_both_fail_the_cure_is_said_and_nothing_is_taken_for_done(house):
    done, _ = set_up(house, UV_WORKS="no", PIP_WORKS="no")
    assert done.returncode != 0
    assert "UnknownIssuer" in done.stderr
    assert "CERTIFICATE_VERIFY_FAILED" in done.stderr
    assert "SSL_CERT_FILE=" in done.stderr
    assert not was_set_up(house)


def test_an_authority_that_is_not_there_is_named_before_anything_is_tried(house, tmp_path):
    done, calls = set_up(house, SSL_CERT_FILE=str(tmp_path / "none.pem"))
    assert done.returncode != 0
    assert str(tmp_path / "none.pem") in done.stderr
    assert calls == []
    assert not Path(house / ".venv").exists()


@pytest.mark.parametrize(
    ("system", "chosen"),
    [
        ("exit 0", "system"),
        # Of a version that is too old or too new, without what makes environments, or not there.
        ('case "$*" in *version_info*) exit 1;; esac', "path"),
        ('case "$*" in *ensurepip*) exit 1;; esac', "path"),
        (None, "path"),
    ],
)
def test_the_systems_own_interpreter_is_taken_where_it_suits(house, system, chosen):
    stubs = house.parent / "stubs"
    own = stubs / "own"
    shutil.copy(stubs / "python", stubs / "python3")
    for each, name in ((stubs / "python3", "path"), (own, "system")):
        if name == "path" or system is not None:
            words = (system if name == "system" else "") or ""
            each.write_text(f'{PYTHON}\n[ "$2" != venv ] || echo {name} >> "$CALLS"\n{words}\n')
            each.chmod(0o755)
    done, calls = set_up(house, HWSCHED_PYTHON="", HWSCHED_SYSTEM_PYTHON=str(own))
    assert done.returncode == 0, done.stderr
    assert calls[0] == chosen
