"""The language in which people ask for openings: reading it, judging by it, saying what it means.

Here stand words, tree, judging and completion. Where the values come from is the caller's business: the language knows
no database, no screen and no rulebook. An opening is found only where what is asked is true of it: what nobody knows is
neither true nor false, and so is what is said of it (`hwsched.query.judging`).
"""

from hwsched.query.asking import (
    COMPARING,
    CONTAINS,
    ORDERING,
    Asked,
    Compare,
    Joined,
    Node,
    Not,
    Query,
    Sign,
    Words,
    as_text,
)
from hwsched.query.completing import Completions, completions
from hwsched.query.facts import FINDING, PLACE, STATUS, USES, WAIVED, Askable, Fact
from hwsched.query.judging import Columns, Truth, judge
from hwsched.query.parsing import parse
from hwsched.query.refusal import Fault, QueryError, Remark
from hwsched.query.saying import said_in_words

__all__ = [
    "COMPARING",
    "CONTAINS",
    "FINDING",
    "ORDERING",
    "PLACE",
    "STATUS",
    "USES",
    "WAIVED",
    "Askable",
    "Asked",
    "Columns",
    "Compare",
    "Completions",
    "Fact",
    "Fault",
    "Joined",
    "Node",
    "Not",
    "Query",
    "QueryError",
    "Remark",
    "Sign",
    "Truth",
    "Words",
    "as_text",
    "completions",
    "judge",
    "parse",
    "said_in_words",
]
