"""How a person's decisions on deliveries are given at the command line; `import` and `decide` take the same ones."""

from __future__ import annotations

from typing import TypedDict

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable

    from hwsched.exchange.survey.difference import Undecided
    from hwsched.exchange.survey.facts import Answer, AnswerKey, Decisions


class Open(TypedDict):
    """A difference that is left for a person to decide; held and file are values of the fact, null for unknown."""

    delivery: int | None
    kind: str
    mark: str
    known: str | None
    where: str | None
    fact: str | None
    held: str | float | bool | None
    file: str | float | bool | None
    set_by: str | None
    evidence: str | None


def add_decisions(parser: argparse.ArgumentParser) -> None:
    """Add the options by which differences are decided."""
    parser.add_argument(
        "--same", action="append", default=[], metavar="NEW=KNOWN",
        help="the file's mark NEW is the project's opening KNOWN, which keeps its mark; may be repeated",
    )  # fmt: skip
    parser.add_argument(
        "--renamed", action="append", default=[], metavar="NEW=KNOWN",
        help="the project's opening KNOWN takes the file's mark NEW, with all that is decided of it; may be repeated",
    )  # fmt: skip
    parser.add_argument(
        "--apart", action="append", default=[], metavar="NEW", help="the file's mark NEW is an opening of its own"
    )
    parser.add_argument(
        "--proposals", choices=("ask", "take", "apart"), default="ask",
        help="ask: a mark that may be a known opening is left out; take: it is that opening; apart: it is a new one",
    )  # fmt: skip
    parser.add_argument(
        "--empty", action="append", default=[], metavar="FACT",
        help="a blank cell makes this fact unknown where a file gave it, such as hand or thickness_mm; or all",
    )  # fmt: skip
    parser.add_argument(
        "--over-hand", action="append", default=[], metavar="FACT",
        help="the file goes before what was set by hand in this fact, such as hand or thickness_mm; or all",
    )  # fmt: skip
    parser.add_argument(
        "--decide", action="append", default=[], metavar="KIND[:FACT][@MARK]=ANSWER",
        help="what becomes of differences, such as gone=file (what the file does not name is retired), "
        "changed:hand=held, by-hand:hand@105=file, any@106=held; the narrowest holds; answers: file, held, ask; may be "
        "repeated",
    )  # fmt: skip
    parser.add_argument(
        "--decisions", metavar="FILE", help="text of decisions, as --write-decisions writes it; options go before it"
    )
    parser.add_argument(
        "--write-decisions", metavar="FILE", help="write what is left to be decided as a text to be filled in"
    )


def decisions_of(arguments: argparse.Namespace) -> Decisions:
    """Return what was said; raises ValueError for a word that is none, InputRejected for a text that is none."""
    from pathlib import Path

    from hwsched.exchange.survey.decisions import read_decisions, read_word
    from hwsched.exchange.survey.facts import Decisions

    answers: dict[AnswerKey, Answer] = dict(read_word(word) for word in arguments.decide)
    said = Decisions(
        same=told(arguments.same),
        renamed=told(arguments.renamed),
        apart=frozenset(arguments.apart),
        proposals=arguments.proposals,
        emptied=frozenset(arguments.empty),
        over_hand=frozenset(arguments.over_hand),
        answers=answers,
    )
    return read_decisions(Path(arguments.decisions), said) if arguments.decisions else said


def told(entries: Iterable[str]) -> dict[str, str]:
    """Return what was said by header; from the right, for a header may hold an equals sign and an answer never does."""
    return {header.strip(): said.strip() for header, _, said in (entry.rpartition("=") for entry in entries)}


def told_words(entries: Iterable[str]) -> dict[str, dict[str, str]] | str:
    """Return what was said of words by header, or what is wrong with how it was said."""
    words: dict[str, dict[str, str]] = {}
    for named, meaning in told(entries).items():
        header, colon, word = named.rpartition(":")
        if not colon:
            return f"--word {named}={meaning} names no column: write it as HEADER:WORD=MEANING"
        words.setdefault(header.strip(), {})[word.strip()] = meaning
    return words


def write_decisions(arguments: argparse.Namespace, left: Iterable[Undecided], heading: str) -> None:
    """Write what is left to be decided as a text, where that is asked for."""
    if not arguments.write_decisions:
        return
    from pathlib import Path

    from hwsched.exchange.survey.deciding import lines_of
    from hwsched.exchange.survey.decisions import written
    from hwsched.writing import replacing

    path = Path(arguments.write_decisions)
    with replacing(path) as beside:
        beside.write_text(written(lines_of(left), heading), encoding="utf-8")
    if not arguments.json:
        print(f"Wrote {path}.")


def open_row(each: Undecided, delivery: int | None) -> Open:
    """Return what machines read of a question."""
    fact = each.fact
    return {
        "delivery": delivery,
        "kind": each.kind,
        "mark": each.mark,
        "known": each.known or None,
        "where": fact.where if fact is not None else None,
        "fact": fact.attribute if fact is not None else None,
        "held": fact.before if fact is not None else None,
        "file": fact.after if fact is not None else None,
        "set_by": (fact.source or None) if fact is not None else None,
        "evidence": each.evidence or None,
    }
