"""What a verb answers machines, held against the schema that it prints of itself."""

import json
from typing import Any

from jsonschema import Draft202012Validator

from hwsched.cli.command import run

ENVELOPE = {"ok", "result", "problems", "change_set", "version"}


def closed(schema: Any) -> Any:
    """Return a schema in which an object with declared properties has no others."""
    if isinstance(schema, list):
        return [closed(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    made = {name: closed(each) for name, each in schema.items()}
    if "properties" in made and not isinstance(made["properties"].get("type"), str):
        made.setdefault("additionalProperties", False)
    return made


def schema(capsys: Any, *verb: str) -> Any:
    """Return the schema that a verb prints of its answer."""
    capsys.readouterr()
    assert run([*verb, "--schema"]) == 0
    return json.loads(capsys.readouterr().out)


def answer(capsys: Any, *words: str, status: int = 0) -> Any:
    """Run a verb for machines; returns its envelope, which is as its schema says, and nothing more."""
    declared = closed(schema(capsys, *words[:2]))
    assert run([*words, "--json"]) == status, capsys.readouterr().err
    told = json.loads(capsys.readouterr().out)
    assert set(told) == ENVELOPE
    assert told["ok"] == (status in (0, 1, 5))
    Draft202012Validator(declared).validate(told)
    return told


def result(capsys: Any, *words: str, status: int = 0) -> Any:
    """Run a verb for machines; returns its result."""
    return answer(capsys, *words, status=status)["result"]
