"""Where resources, migrations and the sample lie, in a checkout and in an installed package."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent
_INSTALLED = _PACKAGE / "_data"
_BASE = _INSTALLED if _INSTALLED.is_dir() else _PACKAGE.parent

RESOURCES = _BASE / "resources"
MIGRATIONS = _BASE / "migrations"
SAMPLE = _BASE / "sample_projects"
