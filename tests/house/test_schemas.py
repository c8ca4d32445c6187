"""The schemas in the package are those of the records as they are."""

import pytest
from jsonschema import Draft202012Validator

from tests.house.schemas import SCHEMAS, text


@pytest.mark.parametrize("path", SCHEMAS, ids=lambda path: path.name)
def test_a_schema_is_in_step(path):
    assert path.read_text(encoding="utf-8") == text(SCHEMAS[path]()), "run python -m tests.house.schemas"


@pytest.mark.parametrize("path", SCHEMAS, ids=lambda path: path.name)
def test_a_schema_is_one(path):
    Draft202012Validator.check_schema(SCHEMAS[path]())
