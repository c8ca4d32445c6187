"""Writes the JSON Schemas that travel with the package: ``python -m tests.house.schemas``."""

import json

from hwsched.cli.answering import schema_of
from hwsched.operations.opening.showing import Shown
from hwsched.paths import RESOURCES


def show_schema() -> dict:
    return dict(schema_of("hwsched opening show", Shown))


SCHEMAS = {RESOURCES / "schemas" / "show.json": show_schema}


def text(schema: dict) -> str:
    return json.dumps(schema, indent=1, ensure_ascii=False, sort_keys=True) + "\n"


if __name__ == "__main__":
    for path, make in SCHEMAS.items():
        path.parent.mkdir(exist_ok=True)
        path.write_text(text(make()), encoding="utf-8")
