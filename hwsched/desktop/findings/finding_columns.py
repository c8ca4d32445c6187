"""What a list of findings shows of each line. No widgets."""

from typing import Final

from hwsched.desktop.findings.finding_lines import FindingLine
from hwsched.desktop.grid.column import Column
from hwsched.desktop.looks.severities import COLOURS, severity_word
from hwsched.desktop.looks.tokens import colour
from hwsched.language import phrase, to_phrase
from hwsched.rules.saying import about_said, label_said
from hwsched.values import DISCIPLINES, SEVERITIES

COLUMNS: Final[tuple[Column[FindingLine], ...]] = (
    Column(
        "severity",
        to_phrase("Severity"),
        lambda line: line.first.severity,
        severity_word,
        SEVERITIES.index,
        colour=lambda severity: colour(COLOURS[severity]),
        width=10,
    ),
    Column(
        "mark",
        to_phrase("At"),
        lambda line: line.mark,
        width=10,
        note=to_phrase("The opening, or the supply of which it is said."),
    ),
    Column("rule", to_phrase("Rule"), lambda line: line.title, width=26),
    Column("said", to_phrase("Finding"), lambda line: line.said, width=60),
    Column("cure", to_phrase("Cure"), lambda line: line.cure, width=44),
    Column("building", to_phrase("Building"), lambda line: line.building, width=14),
    Column("level", to_phrase("Level"), lambda line: line.level, width=9),
    Column("about", to_phrase("About"), lambda line: about_said(line.first), width=14, standard=False),
    Column(
        "need",
        to_phrase("Missing fact"),
        lambda line: label_said(line.need) if line.need else "",
        width=26,
        standard=False,
    ),
    Column("asked", to_phrase("Asked by"), lambda line: len(line.findings), right=True, width=9, standard=False),
    Column(
        "discipline",
        to_phrase("Discipline"),
        lambda line: DISCIPLINES[line.first.discipline],
        phrase,
        width=20,
        standard=False,
    ),
    Column("basis", to_phrase("Basis"), lambda line: line.first.basis, phrase, width=40, standard=False),
    Column(
        "waived",
        to_phrase("Waived"),
        lambda line: line.waived,
        lambda waived: phrase("waived") if waived else "",
        width=9,
        standard=False,
    ),
)
