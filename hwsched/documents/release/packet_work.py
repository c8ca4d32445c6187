"""The plan of the work as it stands on paper: steps with their cautions and readings, tools, the test sheet."""

from collections.abc import Sequence
from typing import Final

from hwsched.attributes.of_parts import DIAMETER_MM, FORM
from hwsched.language import phrase
from hwsched.render.blocks import TICK, Block, Cell, Column, Heading, StepLine, Steps, Table
from hwsched.values import Catalogue, FitPart
from hwsched.values.piece import AT_BENCH
from hwsched.work.cautions import RECALLED
from hwsched.work.situation import Situation
from hwsched.work.step import Plan, Step, Tool
from hwsched.work.tools import WORDS

_SAME_MM: Final = 0.06
"""How far a bit of the catalogue may be off the size of a hole: less than there is between two number drills."""

TEMPLATE_STEP: Final = "mark"
"""Step at which the true-size templates are laid on."""


def steps_blocks(work: Plan, *, of_many: bool = False) -> list[Block]:
    """Return the steps in their order, each caution before the step at which it first holds.

    Parameters
    ----------
    work : Plan
        Ordered steps.
    of_many : bool
        Whether they hold for many openings: what was done at the bench then stands on the strip of each.
    """
    lines = tuple(
        StepLine(
            step.number,
            phrase(step.where) if of_many else _where(step),
            _said(work, step),
            tuple(phrase(caution.text) for caution in work.new_cautions(step)),
            tuple(
                phrase("{what}: {expected}; read ......", what=reading.what, expected=reading.expected)
                for reading in step.readings
            ),
            done=step.done,
        )
        for step in work.steps
    )
    return [Heading(phrase("Steps"), 2), Steps(lines)]


def bench_words(situation: Situation) -> str:
    """Say what of a lock point's pieces is on record as done at the bench."""
    done: dict[str, list[str]] = {}
    for role, words in AT_BENCH.items():
        for word in words:
            if (role, word) in situation.bench:
                done.setdefault(role, []).append(word)
    return "; ".join(f"{role} {', '.join(words)}" for role, words in done.items()) or phrase("nothing on record")


def _where(step: Step) -> str:
    if step.at_bench:
        return phrase("Done at the bench") if step.done else phrase("Still to do")
    return phrase(step.where)


def _said(work: Plan, step: Step) -> str:
    new = work.new_cautions(step)
    # What has been read is recalled where it hurts: lungs and mains.
    recalled = [phrase(caution.title) for caution in step.cautions if caution not in new and caution in RECALLED]
    return (
        phrase("{text} (Caution: {recalled}.)", text=step.text, recalled=", ".join(recalled)) if recalled else step.text
    )


def tests_table(work: Plan) -> Table:
    """Return the test sheet: what is tried, what is expected, and room for what was found."""
    rows: list[tuple[Cell, ...]] = [
        (number, check.text, check.expected, phrase("read ......") if check.reading is not None else "", TICK, TICK)
        for number, check in enumerate(work.checks, start=1)
    ]
    columns = (
        Column(phrase("No."), 0.2, "right"),
        Column(phrase("Test"), 3.3),
        Column(phrase("Expected"), 2.2, run_in=True),
        Column(phrase("Reading"), 1.0, run_in=True),
        Column(phrase("Pass"), 0.2, "centre"),
        Column(phrase("Fail"), 0.2, "centre"),
    )
    return Table(columns, tuple(rows), title=phrase("Test sheet"))


def tool_word(form: str) -> str:
    """Return what people call a tool of a form; empty for none."""
    return WORDS.get(form, form.replace("-", " "))


def tool_words(catalogue: Catalogue, parts: Sequence[FitPart], plans: Sequence[Plan]) -> tuple[str, ...]:
    """Return all tools of the work: those of the catalogue by number, then what no part of it is."""
    held = [part for part in parts if part.role == "tool"]
    shown = dict.fromkeys(f"{part.description or part.part} ({part.part})" for part in held)
    wanted = dict.fromkeys(tool for work in plans for tool in work.tools)
    return (*shown, *dict.fromkeys(phrase(tool.name) for tool in wanted if not _is_held(catalogue, held, tool)))


def _is_held(catalogue: Catalogue, held: Sequence[FitPart], tool: Tool) -> bool:
    for part in held:
        entry = catalogue.get(part.part)
        if entry is None or not tool.form or entry.text_of(FORM) != tool.form:
            continue
        size = entry.number_of(DIAMETER_MM)
        if tool.form == "drilling-jig":
            # Two jigs may be brought, for bores and for leads: each is known by its name.
            if tool.name in (part.description, part.part):
                return True
        elif tool.size_mm is None or size is None or abs(size - tool.size_mm) <= _SAME_MM:
            return True
    return False
