"""Packets of many doors in one file, in the order in which they are walked, behind a contents page in that order.

The order is that of the view's openings; `hwsched.operations.release.walking_order` makes it.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cached_property
from itertools import groupby
from typing import Final, overload

from hwsched.documents import words
from hwsched.documents.release.packet import PACKET, section_count
from hwsched.documents.release.packet_facts import situations
from hwsched.documents.release.packet_work import tool_words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import Block, Cell, Column, Document, Heading, Paragraph, Section, Table
from hwsched.values.revision import letter_at
from hwsched.work.plan import plan

_ANCHOR: Final = "packet "
_POWER: Final = {"battery": to_phrase("batteries"), "supply": to_phrase("supply"), "none": to_phrase("none")}
_COLUMNS: Final = (
    Column(to_phrase("No."), 0.4, "right"),
    Column(to_phrase("Mark"), 1.0),
    Column(to_phrase("Location"), 2.2),
    Column(to_phrase("Lock"), 1.5),
    Column(to_phrase("Power"), 0.9),
    Column(to_phrase("Carry"), 1.1),
    Column(to_phrase("Page"), 0.5),
)

_CARRY: Final = (
    Column(to_phrase("Carry"), 0.4),
    Column(to_phrase("Doors"), 0.4, "right"),
    Column(to_phrase("Tools"), 6.0),
)


def build(project: ProjectView, _: OpeningView | None) -> Document:
    """Build all packets of a project with their contents page."""
    return Document(phrase("Install packets"), project.title, project.revision, project.date, _Sections(project))


class _Sections(Sequence[Section]):
    """Contents page and packets, each made when it is its turn: those of a whole project would fill the memory."""

    def __init__(self, project: ProjectView) -> None:
        self._project = project

    def __len__(self) -> int:
        return self._count

    @cached_property
    def _count(self) -> int:
        return 1 + sum(section_count(self._project, view) for view in self._project.openings)

    def __iter__(self) -> Iterator[Section]:
        yield _contents(self._project)
        for number, view in enumerate(self._project.openings, start=1):
            yield from _packet(self._project, view, number)

    @overload
    def __getitem__(self, index: int) -> Section: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Section]: ...
    def __getitem__(self, index: int | slice) -> Section | Sequence[Section]:
        return tuple(self)[index]


def _packet(project: ProjectView, view: OpeningView, number: int) -> Iterator[Section]:
    """Return the sections of a packet: it begins on paper of its own, and its heading has a name."""
    made = PACKET.build(project, view)
    for section in made.sections:
        first, *rest = section.blocks
        if isinstance(first, Heading) and first.level == 1:
            first = replace(first, anchor=f"{_ANCHOR}{number}")
        yield replace(section, blocks=(first, *rest), subtitle=made.subtitle, whole_sheets=True)


def _contents(project: ProjectView) -> Section:
    carried = {view.given.opening.id: _carried(project, view) for view in project.openings if view.ready}
    every = _common(list(carried.values()))
    lists = _lists(carried.values(), every)
    held = sum(not view.ready for view in project.openings)
    blocks: list[Block] = [
        Heading(phrase("Contents")),
        Paragraph(phrase("The packets follow in this order, each on sheets of its own.")),
    ]
    if held:
        blocks.append(
            Paragraph(phrase("{held} of these openings may not be installed: their sheets say why.", held=held), "stop")
        )
    numbered = list(enumerate(project.openings, start=1))
    for (building, level), group in groupby(numbered, key=lambda each: _place(each[1])):
        title = words.place(building, level)
        rows = [
            _row(view, number, lists.get(_rest(carried[view.given.opening.id], every), "") if view.ready else None)
            for number, view in group
        ]
        blocks += [
            Heading(title, 2),
            Table(words.said(_COLUMNS), tuple(rows), title=title, leads_to=(0, _ANCHOR), pages_in=len(_COLUMNS) - 1),
        ]
    if carried:
        doors = Counter(_rest(tools, every) for tools in carried.values())
        tools = [(name, doors[each], "; ".join(each)) for each, name in lists.items()]
        if every:
            tools.insert(0, (phrase("all"), len(carried), "; ".join(every)))
        title = phrase("To carry besides the boxes")
        blocks += [Heading(title, 2), Table(words.said(_CARRY), tuple(tools), title=title)]
    return Section(tuple(blocks), whole_sheets=True)


def _place(view: OpeningView) -> tuple[str | None, str | None]:
    return view.given.opening.building, view.given.opening.level


def _row(view: OpeningView, number: int, carry: str | None) -> tuple[Cell, ...]:
    opening = view.given.opening
    locks = dict.fromkeys(
        words.item_word("lock_form", at.lock.lock_form if at.lock is not None else None) for at in situations(view)
    )
    fits = [at.fit for at in view.points if at.fit is not None and at.fit.status == "fits"]
    powers = dict.fromkeys(phrase(_POWER[fit.power]) for fit in fits)
    return (
        number,
        view.mark,
        words.location(opening.room_from, opening.room_to) or phrase(words.UNKNOWN),
        ", ".join(locks),
        ", ".join(powers) or phrase(words.UNKNOWN),
        phrase("DO NOT INSTALL") if carry is None else carry,
        None,
    )


def _carried(project: ProjectView, view: OpeningView) -> tuple[str, ...]:
    parts = [part for at in view.points if at.fit is not None for part in at.fit.parts]
    return tool_words(project.catalogue, parts, [plan(situation) for situation in situations(view)])


def _rest(tools: tuple[str, ...], every: Sequence[str]) -> tuple[str, ...]:
    return tuple(sorted(tool for tool in tools if tool not in every))


def _lists(carried: Iterable[tuple[str, ...]], every: Sequence[str]) -> dict[tuple[str, ...], str]:
    """Name what some doors want and others do not: A, B, C in the order of the walk; nothing where that is none."""
    found = dict.fromkeys(rest for tools in carried if (rest := _rest(tools, every)))
    return {rest: letter_at(place) for place, rest in enumerate(found, start=1)}


def _common(lists: Sequence[tuple[str, ...]]) -> tuple[str, ...]:
    """Return what all lists have, in the order of the first."""
    if not lists:
        return ()
    rest = [frozenset(each) for each in lists[1:]]
    return tuple(tool for tool in lists[0] if all(tool in each for each in rest))


BOUND_PACKETS: Final = DocumentKind(
    "bound-packets", to_phrase("Install packets in one file, with contents"), ("pdf",), False, build, coded=True
)
"""Not among the documents: it says nothing that the packets do not say."""
