"""Words of earlier versions, in what is known by its hash and so never rewritten.

Contents of fits and of revisions are read in the words of this version. Hashes that were taken of the old words (what a
waiver was given for, what a packet showed) are taken of them still, so that a renamed word wakes no waiver and calls no
packet out of date. Rows of tables and of the journal were rewritten by a migration.
"""

from typing import Final

# As they stand in JSON without blanks: a quotation mark within a text is escaped, so that only names and whole values
# are met.
_IN_CONTENTS: Final = (
    ('"face":"secured"', '"face":"inside"'),
    ('"secured_half_mm":', '"inside_half_mm":'),
    ('"trim_secured_mm":', '"trim_inside_mm":'),
    ('"status":"fitted"', '"status":"fits"'),
    ('"status":"not-fitted"', '"status":"does-not-fit"'),
    ('"status":"unknown"', '"status":"to-measure"'),
    ('"source":"fitted"', '"source":"worked-out"'),
    ('"rule":"unit-on-secured-side"', '"rule":"unit-on-inside"'),
    ('"feed":', '"supply_link":'),
    ('"laid":', '"present":'),
    ('"worked":', '"result":'),
)
_IN_HASHES: Final = (
    ('"inside"', '"secured"'),
    ("inside_half_mm", "secured_half_mm"),
    ("trim_inside_mm", "trim_secured_mm"),
    ("inside_limit_mm", "secured_limit_mm"),
    ("unit-on-inside", "unit-on-secured-side"),
    ('"fits"', '"fitted"'),
    ('"does-not-fit"', '"not-fitted"'),
    ('"to-measure"', '"unknown"'),
    ('"worked-out"', '"fitted"'),
    ("no combination of parts fits it", "its fit is does-not-fit"),
    ("its fit waits for facts", "its fit is to-measure"),
    ("the rule 'Voltage at the end of the wires'", "the rule supply-drop"),
    ("the rule 'Lowest voltage at every load'", "the rule circuit-voltage"),
    ("the rule 'Standby capacity'", "the rule standby-capacity"),
)


def in_present_words(content: str) -> str:
    r"""Return JSON that any version wrote in the words of this one.

    Examples
    --------
    >>> in_present_words('{"status":"fitted","note":"the \\"face\\":\\"secured\\" was it"}')
    '{"status":"fits","note":"the \\"face\\":\\"secured\\" was it"}'
    """
    for old, new in _IN_CONTENTS:
        content = content.replace(old, new)
    return content


def in_first_words(text: str) -> str:
    """Return JSON of this version as the first version would have written it; only to be hashed.

    Examples
    --------
    >>> in_first_words('["inside",{"trim_inside_mm":3.0}]')
    '["secured",{"trim_secured_mm":3.0}]'
    """
    for old, new in _IN_HASHES:
        text = text.replace(old, new)
    return text
