"""The power page of a packet: what feeds the opening, run by run, with volts to find and cautions to keep."""

from hwsched.calc.power.power_limits import caution
from hwsched.documents import words
from hwsched.documents.power.power_words import STATES, far, name_of, said, states_of, volts
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.drawings.power.wiring_sheet import wiring_sheet
from hwsched.drawings.power.wiring_way import leaves_of
from hwsched.language import phrase
from hwsched.quantities import run_unit
from hwsched.render.blocks import Block, Cell, Column, Drawings, Facts, Heading, Paragraph, Table
from hwsched.values.amounts import plain_amount
from hwsched.values.power import SupplyResult
from hwsched.wiring.batteries import dues
from hwsched.wiring.goods import boxes
from hwsched.wiring.take_off import pieces_at


def power_blocks(project: ProjectView, view: OpeningView) -> list[Block]:
    """Return the blocks of an opening's power; nothing where nothing feeds it."""
    fits = [at.fit for at in view.points if at.fit is not None]
    if len(fits) < len(view.points) or all(fit.power == "none" for fit in fits):
        return []
    blocks: list[Block] = [Heading(phrase("Power"), 2), *_batteries(view)]
    if any(fit.power == "supply" for fit in fits):
        blocks += _supply(project, view)
    return blocks if len(blocks) > 1 else []


def unproved_blocks(project: ProjectView, view: OpeningView) -> list[Block]:
    """Hold the packet of an opening of which nobody knows whether it finds its voltage; nothing for any other."""
    found = project.power.circuit_of(view.given.opening.id)
    proof = (
        next((each for each in found[1].unproved if each.opening_id == view.given.opening.id), None) if found else None
    )
    if proof is None:
        return []
    missing = words.needed(proof.missing, project.catalogue)
    why = phrase("needs {missing}", missing=missing) if missing else proof.why
    return [
        Paragraph(phrase("DO NOT INSTALL. Not proved: whether every load finds its voltage; {why}.", why=why), "stop")
    ]


def _supply(project: ProjectView, view: OpeningView) -> list[Block]:
    found = project.power.circuit_of(view.given.opening.id)
    if found is None:
        return [
            Paragraph(
                phrase("Fed from a supply of its own, as listed under box contents; it is on no circuit."), "body"
            ),
            *_laid(project, view, None),
            Paragraph(f"{caution('mains-on-leaf')} {caution('separation')}", "caution"),
        ]
    supply, circuit = found
    opening_id = view.given.opening.id
    connected = [n for n in circuit.nodes if n.opening_id == opening_id and n.minimum_v is not None]
    several = len({n.node for n in connected if n.node != opening_id}) > 1
    node = circuit.node_of_devices(opening_id)
    place = (supply.supply.building, supply.supply.level, supply.supply.place)
    pairs = [
        (phrase("Supply"), f"{supply.supply.name}, {supply.supply.part or phrase(words.UNKNOWN)}"),
        (phrase("It stands"), " · ".join(part for part in place if part) or phrase("place not given")),
        (
            phrase("Circuit"),
            phrase("{name_of}, limiter {said}", name_of=name_of(circuit), said=said(circuit.limiter_a, "A")),
        ),
    ]
    if node is not None and node.minimum_v is not None:
        pairs.append(
            (
                phrase("Needs at the unit"),
                phrase("{minimum_v:g} to {maximum_v:g} V", minimum_v=node.minimum_v, maximum_v=node.maximum_v),
            )
        )
    blocks: list[Block] = [Facts(tuple(pairs), columns=4)]
    for problem in (*supply.problems, *circuit.problems):
        if problem.opening_id in ("", opening_id):
            blocks.append(Paragraph(phrase("Not worked out: {message}.", message=problem.message), "caution"))
    if node is not None and node.volts:
        states = states_of(circuit)
        columns = tuple(Column(f"{phrase(STATES[state])} [V]", 1.0, "right", 2) for state in states)
        where = (Column(phrase("At"), 1.2),) if several else ()
        rows: list[tuple[Cell, ...]] = []
        for each in connected if several else [node]:
            row: tuple[Cell, ...] = tuple(volts(each, state) for state in states)
            rows.append((*((each.name,) if several else ()), *row, "........"))
        columns = (*where, *columns, Column(phrase("Measured [V]"), 1.2))
        blocks.append(Table(columns, tuple(rows), title=phrase("Volts at the unit")))
        for each in connected:
            if each.operating:
                said_of = phrase(" at {name}", name=each.name) if several else ""
                blocks.append(
                    Paragraph(
                        phrase(
                            "Peak{said_of}: while {operating} operate.",
                            said_of=said_of,
                            operating=", ".join(each.operating),
                        ),
                        "small",
                    )
                )
            if each.may_fall_v is not None:
                blocks.append(
                    Paragraph(
                        phrase(
                            "What is not known yet may bring {name} down to {may_fall_v:.2f} V.",
                            name=each.name,
                            may_fall_v=each.may_fall_v,
                        ),
                        "caution",
                    )
                )
    blocks += _laid(project, view, supply)
    for leaf in leaves_of(circuit, opening_id):
        sheet = wiring_sheet(supply, circuit, opening_id, project.length_style, leaf=leaf, cautioned=True)
        blocks.append(Drawings((sheet,), height_mm=110.0))
    blocks.append(Paragraph(f"{caution('mains-on-leaf')} {caution('separation')}", "caution"))
    return blocks


def _laid(project: ProjectView, view: OpeningView, supply: SupplyResult | None) -> list[Block]:
    """Return what is cut and joined for the opening; from which reel says the wire list."""
    style, opening = project.length_style, view.given.opening
    counted: dict[tuple[str, str, float], int] = {}
    for kind, part, conductor, piece in pieces_at(supply, view.points):
        name = part or conductor or kind
        key = name, piece.name, far(piece.length_m, style, 2)
        counted[key] = counted.get(key, 0) + 1
    rows: list[tuple[Cell, ...]] = [(count, name, where, length) for (name, where, length), count in counted.items()]
    if supply is not None:
        at = {opening.id: (opening.building, opening.level)}
        for box in boxes(supply, project.catalogue, at):
            if opening.id in box.opening_ids:
                rows.append((1, box.part or phrase(words.UNKNOWN), phrase("junction box {text}", text=box.text), ""))
    if not rows:
        return []
    columns = (
        Column(phrase("Qty"), 0.4, "right"),
        Column(phrase("Part"), 1.2),
        Column(phrase("Where"), 3.2),
        Column(phrase("Cut to [{run_unit}]", run_unit=run_unit(style)), 0.8, "right"),
    )
    return [Table(columns, tuple(rows), title=phrase("Wire of this opening"))]


def _batteries(view: OpeningView) -> list[Block]:
    blocks: list[Block] = []
    for at in view.points:
        for due in dues([(at.given, at.fit)]):
            life = phrase(words.UNKNOWN) if due.days is None else words.days(due.days)
            pairs = (
                *(((phrase("Unit"), phrase("of the {name}", name=at.given.point.name)),) if view.several else ()),
                (phrase("Cells"), f"{plain_amount(due.count)} × {due.designation or due.cell}"),
                (phrase("Life at the surveyed use"), life),
                (
                    phrase("Change by"),
                    due.due_on.isoformat() if due.due_on else phrase("write down the day of installation"),
                ),
            )
            blocks.append(Facts(pairs))
    return blocks
